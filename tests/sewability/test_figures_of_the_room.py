"""The figures of every project as a program reads them: the promised keys, and every length as exact text."""

from __future__ import annotations

import json
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path
from typing import Any

from sewable_room import every_sheet, sheets_of

from generator.calculation.worksheet.figures import figures

PROMISED = {
    "": {"project", "size", "edition", "unit", "pieces", "cloth", "thread", "findings"},
    "piece": {"kind", "cloth", "quantity", "cut", "finished"},
    "tucks": {"count", "depth", "spacing", "take_up", "marks", "stitching"},
    "rows": {"ruled", "finished", "start", "turns"},
    "checkpoint": {"after", "from", "to", "expect", "within"},
    "cloth": {"width", "length", "buy", "lower_bound"},
    "thread": {"length", "spools"},
    "finding": {"level", "piece", "text"},
}
LENGTHS = {
    "across",
    "along",
    "depth",
    "spacing",
    "pitch",
    "take_up",
    "margins",
    "marks",
    "stitching",
    "ruled",
    "finished",
    "extra",
    "expect",
    "within",
    "width",
    "lower_bound",
    "narrowest_width",
    "breadths",
    "positions",
    "buttonhole",
    "pleats",
    "join_length",
    "to_length",
}


def texts(value: Any) -> Iterator[str]:
    if isinstance(value, list):
        for one in value:
            yield from texts(one)
    else:
        assert isinstance(value, str), f"{value!r} is no text"
        yield value


def lengths(value: Any, key: str = "") -> Iterator[str]:
    """Every text that stands under a key of lengths."""
    if isinstance(value, dict):
        for name, inner in value.items():
            yield from lengths(inner, name)
    elif key in LENGTHS:
        yield from texts(value)
    elif isinstance(value, list):
        for one in value:
            yield from lengths(one, key if isinstance(one, list) else "")


def exact(text: str) -> Fraction:
    """A whole number, a decimal or a mixed number; anything else is no exact text."""
    return sum((Fraction(part) for part in text.split(" ")), Fraction(0))


def holds(found: dict[str, Any], what: str) -> None:
    assert set(found) >= PROMISED[what]


@every_sheet
def test_the_promised_keys_are_there(path: Path) -> None:
    for sheet in sheets_of(path):
        found = json.loads(json.dumps(figures(sheet)))
        holds(found, "")
        holds(found["thread"], "thread")
        for piece in found["pieces"].values():
            holds(piece, "piece")
            for sort in ("tucks", "cross_tucks"):
                if sort in piece:
                    holds(piece[sort], "tucks")
            if "rows" in piece:
                holds(piece["rows"], "rows")
                assert all(len(pair) == 2 for pair in piece["rows"]["finished"])
            for point in piece.get("checkpoints", []):
                holds(point, "checkpoint")
        for use in found["cloth"].values():
            holds(use, "cloth")
        for finding in found["findings"]:
            holds(finding, "finding")


@every_sheet
def test_every_length_is_exact_text_and_no_number_is_a_float(path: Path) -> None:
    for sheet in sheets_of(path):
        text = json.dumps(figures(sheet))
        found = json.loads(text, parse_float=no_float)
        told = list(lengths(found))
        assert told
        assert all(exact(length) >= 0 for length in told)
        for name, piece in sheet.pieces.items():
            cut = found["pieces"][name]["cut"]
            assert exact(cut["across"]) * sheet.edition.unit_length == piece.cut_across
            if piece.panel is not None:
                tucks = found["pieces"][name]["tucks"]
                for key, lengths_of in (
                    ("marks", piece.panel.across.marks),
                    ("stitching", piece.panel.across.stitching),
                ):
                    assert [exact(text) * sheet.edition.unit_length for text in tucks[key]] == list(lengths_of)


def no_float(number: str) -> None:
    raise AssertionError(f"{number} is a float")
