"""Which hem a rod runs through, and how it is told."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, sheet

from generator.calculation.worksheet.casings import casing_side, casing_words

SEAMS = "      all: seam 1/2 in or 1.5 cm\n"
EXTRA = """\
  extra:
    kind: rectangle
    finished across: 10 in or 25 cm
    finished along: 8 in or 20 cm
    edges:
"""
NARROW, BROAD = "hem 1/2 in or 1 cm", "hem 1/2 in then 1 1/2 in or 1 cm then 4 cm"


@pytest.mark.parametrize(
    ("edges", "side"),
    [
        # A curtain that lies upright: its top is broad, its sides are narrow.
        ({"top": BROAD, "left": NARROW, "right": NARROW}, "top"),
        # One that lies on its side: what hangs at the top lies at the left.
        ({"left": BROAD, "right": BROAD, "top": NARROW, "bottom": NARROW}, "left"),
        # Both broad: the top comes first.
        ({"left": BROAD, "top": BROAD}, "top"),
        # No broad hem: the first that there is.
        ({"left": NARROW}, "left"),
        # No hem at all.
        ({}, "top"),
    ],
)
def test_a_rod_runs_through_the_broad_hem_at_the_top_or_at_the_left(
    tmp_path: Path, edges: dict[str, str], side: str
) -> None:
    lines = "".join(f"      {name}: {finish}\n" for name, finish in edges.items())
    extra = f"{EXTRA}{lines}{SEAMS}"
    piece = sheet(tmp_path, put(CUSHION, ("edges that meet:", f"{extra}edges that meet:")), "medium").pieces["extra"]
    assert casing_side(piece) == side
    told = {
        "top": "at the top edge of the piece",
        "left": "at the left edge of the piece, which is the top when it hangs",
    }
    assert casing_words(piece, side) == told[side]
