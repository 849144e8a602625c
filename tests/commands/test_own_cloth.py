"""A student's own cloth on the command line: laid out again, and compared with what is there.

The cushion of 16 in: front 20 tucks of 3/8 in, cut 16 + 15 + 1 = 32 in by 17 in; two backs of 10 + 1/2 + 2 = 12 1/2 in
by 17 in. On 44 in: front and nothing beside it (32 + 12 1/2 is 44 1/2), so two strips, 34 in. On 45 in: front and one
back, and the other back below, 34 in as well; on 57 in all three side by side, 17 in.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from room_here import CUSHION, room

from tests.room import Answer, run


def figures(folder: Path, *cloth: str) -> Answer:
    options = [word for name in cloth for word in ("--cloth", name)]
    return run(room(folder, slip_cushion=CUSHION), "figures", "slip-cushion", "medium", *options)


@pytest.mark.parametrize(("width", "length"), [("44", "34"), ("45", "34"), ("57", "17")])
def test_a_cloth_at_hand_is_laid_out_again(width: str, length: str, tmp_path: Path) -> None:
    line = next(line for line in figures(tmp_path, f"face.width={width}").lines if line.startswith("  face (cotton)"))
    assert line.split()[2:4] == [width, length]


def test_what_is_certain_of_the_layout_is_what_the_figures_for_programs_say(tmp_path: Path) -> None:
    # On 44 in the front fills a strip, and both backs lie side by side in the next: 34 in, nothing is shorter.
    told = figures(tmp_path, "face.width=44")
    assert "  face: No layout cut across, down and across is shorter." in told.lines
    programs = run(tmp_path, "figures", "slip-cushion", "medium", "--json", "--cloth", "face.width=44")
    assert json.loads(programs.out)["cloth"]["face"]["proven"] == "shortest"


def test_a_cloth_too_short_is_told_with_what_lacks(tmp_path: Path) -> None:
    said = figures(tmp_path, "face.length=30")
    assert (
        "the piece of 'face' is 5 in too short when it is washed and straightened: the layout needs 34 in" in said.out
    )


def test_a_cloth_long_enough_is_no_warning(tmp_path: Path) -> None:
    assert "too short" not in figures(tmp_path, "face.length=35").out


def test_a_cloth_that_is_not_there_is_refused_with_those_that_are(tmp_path: Path) -> None:
    said = figures(tmp_path, "fac.width=36")
    assert said.code == 2
    assert "'fac.width' is no measure of a cloth; there are: face.width, face.length" in said.err
