"""The layouts of the demo room, placed again from nothing but their JSON."""

from __future__ import annotations

import json
from collections import Counter
from fractions import Fraction
from itertools import combinations
from pathlib import Path
from typing import Any

import pytest
from sewable_room import every_sheet, sheets_of

from generator.calculation.worksheet.figures import figures
from generator.lengths import read_length
from tests.room import ROOT

Rectangle = tuple[Fraction, Fraction, Fraction, Fraction]


def placed_again(cloth: dict[str, Any], unit: str) -> list[tuple[str, bool, Rectangle]]:
    """Every piece with its time and its corners, strip by strip as often as it is cut."""

    def at(text: str) -> Fraction:
        return read_length(text, unit)

    return [
        (
            piece["piece"],
            stack["later"],
            (
                at(stack["from"]),
                at(strip["from"]) + again * at(strip["height"]) + at(piece["from"]),
                at(stack["from"]) + at(piece["across"]),
                at(strip["from"]) + again * at(strip["height"]) + at(piece["from"]) + at(piece["along"]),
            ),
        )
        for strip in cloth["strips"]
        for again in range(strip["times"])
        for stack in strip["stacks"]
        for piece in stack["pieces"]
    ]


def overlap(one: Rectangle, other: Rectangle) -> bool:
    return one[0] < other[2] and other[0] < one[2] and one[1] < other[3] and other[1] < one[3]


@every_sheet
def test_pieces_lie_on_the_cloth_and_none_on_another(path: Path) -> None:
    for sheet in sheets_of(path):
        told = json.loads(json.dumps(figures(sheet)))
        for name, cloth in told["cloth"].items():
            use = sheet.cloths[name]
            placed = placed_again(cloth, told["unit"])
            length = read_length(cloth["length"], told["unit"])
            assert len(placed) == len(use.layout.placed)
            for _, _, (left, top, right, bottom) in placed:
                assert 0 <= left < right <= use.layout.width
                assert 0 <= top < bottom <= length
            assert max(corners[3] for _, _, corners in placed) == length
            assert not any(overlap(one[2], other[2]) for one, other in combinations(placed, 2))


@every_sheet
def test_what_waits_shares_no_stack_with_what_does_not(path: Path) -> None:
    for sheet in sheets_of(path):
        for cloth in figures(sheet)["cloth"].values():
            for strip in cloth["strips"]:
                for stack in strip["stacks"]:
                    times = {sheet.pieces[piece["piece"]].after_panel for piece in stack["pieces"]}
                    assert times == {stack["later"]}
                assert [stack["later"] for stack in strip["stacks"]] == sorted(
                    stack["later"] for stack in strip["stacks"]
                )


@every_sheet
def test_every_shop_length_leaves_the_straightening_that_it_promises(path: Path) -> None:
    for sheet in sheets_of(path):
        told = figures(sheet)
        for name, cloth in told["cloth"].items():
            use = sheet.cloths[name]
            number, unit = cloth["buy"].rsplit(" ", 1)
            washed = read_length(f"{number} {unit}") * (1 - use.shrinkage_along)
            kept = read_length(cloth["straighten"], told["unit"])
            length, over = (read_length(cloth[key], told["unit"]) for key in ("length", "left_over"))
            assert kept == read_length("1 in" if told["unit"] == "in" else "2.5 cm")
            assert washed - length - kept == over >= 0
            # One step less would not do.
            assert (read_length(f"{number} {unit}") - use.buying.step) * (1 - use.shrinkage_along) < length + kept


@every_sheet
def test_every_copy_of_every_piece_is_laid_out(path: Path) -> None:
    """Also straps and ties, of which a thing has several: as many as the file makes, times the parts of each."""
    for sheet in sheets_of(path):
        told = figures(sheet)
        for name, cloth in told["cloth"].items():
            wanted = {
                piece.name: piece.quantity * sum(cut.number for cut in piece.cuts)
                for piece in sheet.pieces.values()
                if piece.cloth == name and piece.cuts
            }
            assert Counter(piece for piece, _, _ in placed_again(cloth, told["unit"])) == wanted


@pytest.mark.parametrize(
    ("project", "size", "cloth", "length"),
    [
        # Two skirts, 28 3/4 by 19 1/8, cannot lie side by side on 56 in: 38 1/4. All else stands beside them in stacks,
        # which makes the two strips an inch higher together.
        ("net-loft-pinafore", "6 to 7", "lawn", "39 1/4"),
        # The cover is 16 3/4 long, and both ends lie beside it, one below the other.
        ("pier-bolster", "neck", "cover", "16 3/4"),
    ],
)
def test_layouts_with_stacks_are_as_short_as_they_can_be(project: str, size: str, cloth: str, length: str) -> None:
    [sheet] = [
        one for one in sheets_of(ROOT / "projects" / f"{project}.yaml") if (one.size, one.edition.unit) == (size, "in")
    ]
    assert figures(sheet)["cloth"][cloth]["length"] == length
    assert figures(sheet)["cloth"][cloth]["proven"] == "shortest"
