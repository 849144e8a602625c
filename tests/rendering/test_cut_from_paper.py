"""Layouts cut out of paper by whoever knows nothing but the words: the order of cutting and the cut table.

The cloth is a rectangle as wide as is told and as long as the check of the order asks for; every sentence cuts it, in
its order. What comes off must be the pieces of the cut table of the handout.
"""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

import pytest

from generator.lengths import read_length, say_length
from generator.rendering.handout.tables import cut_rows
from tests.room import opened_room

ROOT = Path(__file__).resolve().parents[2]
NUMBER = r"\d+(?:[ .]\d+)?(?:/\d+)?"
LENGTH = rf"(?P<{{}}>{NUMBER}) (?:in|cm)"
ORDER = re.compile(
    r"Measure along the shorter selvage.*?(?=Measure along the shorter selvage|What stays whole waits|Pin a slip)"
)
CHECK = re.compile(rf"is the cloth ({NUMBER}) (in|cm) long at least\?")
ACROSS = re.compile(rf"Cuts? (\d+)(?: to (\d+))? across at ({NUMBER}(?:(?:, | and ){NUMBER})*) (?:in|cm)\.")
DOWN = re.compile(
    rf"(?:(?P<name>\d+[a-z]) down at (?P<at>{NUMBER}) (?:in|cm) from the left selvage|"
    "What reaches to the right selvage)"
    r"(?P<rest>.*?)(?=\d+[a-z] down at|What reaches|What is left of it|Cuts? \d|Strips? \d|$)"
)
PIECE = re.compile(
    rf"(?:at (?P<bottom>{NUMBER}) (?:in|cm): |what is left: |: )?(?P<label>[a-z][a-z ]*), (?P<across>{NUMBER}) by "
    rf"(?P<along>{NUMBER}) (?:in|cm)(?:, trimmed to (?P<trimmed>{NUMBER}) (?:in|cm) wide)?"
)


@dataclass(frozen=True)
class Paper:
    """A piece of paper that has been cut off: across and along."""

    label: str
    across: Fraction
    along: Fraction


def cut_out(order: str, width: Fraction, unit: str) -> list[Paper]:
    """Do what the sentences say, with a rectangle."""

    def said(text: str) -> Fraction:
        return read_length(text, unit)

    length = said(CHECK.search(order)[1])
    done = Fraction(0)
    pieces: list[Paper] = []
    strips = list(ACROSS.finditer(order))
    for place, across in enumerate(strips):
        first, last = int(across[1]), int(across[2] or across[1])
        places = [said(one) for one in re.split(", | and ", across[3])]
        assert len(places) == last - first + 1
        here = order[across.end() : strips[place + 1].start() if place + 1 < len(strips) else len(order)]
        for bottom in places:
            height = bottom - done
            assert height > 0
            assert bottom <= length
            pieces += cut_strip(here, width, height, unit)
            done = bottom
    return pieces


def cut_strip(told: str, width: Fraction, height: Fraction, unit: str) -> list[Paper]:
    """Cut a strip down from the left selvage, and each stack across from its top."""
    left = Fraction(0)
    pieces = []
    for down in DOWN.finditer(told):
        right = read_length(down["at"], unit) if down["at"] else width
        assert left < right <= width
        top = Fraction(0)
        for piece in PIECE.finditer(down["rest"]):
            bottom = read_length(piece["bottom"], unit) if piece["bottom"] else height
            assert top < bottom <= height
            across = read_length(piece["trimmed"], unit) if piece["trimmed"] else right - left
            assert across <= right - left
            pieces.append(Paper(piece["label"], across, bottom - top))
            # What the sentence says that this piece measures is what has been cut.
            assert (read_length(piece["across"], unit), read_length(piece["along"], unit)) == (across, bottom - top)
            top = bottom
        left = right
    return pieces


@pytest.mark.parametrize(
    ("project", "size", "edition", "label", "cut", "finished"),
    [
        # 30 and a hem of 4 and one of 2 and five tucks of 1 are 41 in; 36 and four turns of 1/2 are 38 in.
        ("gull-window-curtain", "parlour", "inch", "curtain", "41 × 38", "30 × 36"),
        # Seams of 1.5 cm on all sides.
        ("ferry-runner", "long table", "metric", "lining", "183 × 43", "180 × 40"),
    ],
)
def test_a_piece_on_its_side_is_told_as_it_is_sewn(
    project: str, size: str, edition: str, label: str, cut: str, finished: str
) -> None:
    rows = cut_rows(opened_room(ROOT).worksheet(project, size, edition))
    row = next(row for row in rows if row.label.striptags().partition(",")[0] == label)
    assert (row.size.striptags(), row.finished.striptags()) == (cut, finished)
    assert "on its side in the picture" in row.note


def test_what_parts_come_to_when_joined_is_told_once() -> None:
    # The panel of the widest headboard, 60 by 28 in, is of two breadths; its boards are of one piece each.
    rows = cut_rows(opened_room(ROOT).worksheet("harbour-headboard", "wide", "inch"))
    parts = [row.finished.striptags() for row in rows if row.piece == "panel"]
    assert parts == ["2 make 60 × 28", ""]
    assert all(" make " not in row.finished for row in rows if row.piece != "panel")
    # The mats are four, and each is bound with two lengths: the finished binding goes once round a mat of 20 by 14 in.
    [binding] = [
        row
        for row in cut_rows(opened_room(ROOT).worksheet("tide-table-mats", "feast", "inch"))
        if row.piece == "binding"
    ]
    assert binding.number == 8
    assert binding.finished.striptags() == "2 make 68 × 1/2"


@pytest.mark.parametrize(
    ("project", "size", "edition", "waiting"),
    [
        ("net-loft-pinafore", "6 to 7", "inch", set()),  # two strips of stacks, narrower pieces trimmed
        ("customs-tote", "parcels", "metric", {"back", "bag lining"}),  # what waits stays whole beside what is cut
        ("bosun-seat-pad", "stool", "inch", {"bottom", "boxing", "piping"}),  # five strips, a cut off, some wait
    ],
)
def test_following_the_printed_order_cuts_the_pieces_of_the_printed_list(
    project: str, size: str, edition: str, waiting: set[str]
) -> None:
    worksheet = opened_room(ROOT).worksheet(project, size, edition)
    text = " ".join(re.sub(r"\*\*|^ *- ", "", worksheet.steps[0].text, flags=re.MULTILINE).split())
    unit = CHECK.search(text)[2]
    widths = [
        read_length(say_length(cloth.layout.width, worksheet.edition), unit) for cloth in worksheet.cloths.values()
    ]
    orders = ORDER.findall(text)
    assert len(orders) == len(widths) > 0
    cut = Counter(piece for order, width in zip(orders, widths, strict=True) for piece in cut_out(order, width, unit))
    wanted: Counter[Paper] = Counter()
    for row in cut_rows(worksheet):
        label = row.label.striptags().partition(",")[0]
        if label not in waiting:
            across, along = row.size.striptags().split(" × ")
            wanted[Paper(label, read_length(across, unit), read_length(along, unit))] += row.number
    assert sum(wanted.values()) > 3
    assert {(one.label, frozenset((one.across, one.along)), times) for one, times in cut.items()} == {
        (one.label, frozenset((one.across, one.along)), times) for one, times in wanted.items()
    }
