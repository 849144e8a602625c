"""The usual steps on the command line, and what is refused where steps cannot be sewn."""

from __future__ import annotations

from pathlib import Path

import pytest
from room_here import CUSHION, room

from tests.room import run

BY_HAND = """\
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks
    on: front
  - use: join pieces, turn out
    on: front, back
  - use: fill
"""


def with_steps(text: str) -> str:
    begin = CUSHION.index("steps:")
    return CUSHION[:begin] + text + CUSHION[CUSHION.index("edges that meet:") :]


def test_the_usual_steps_are_printed_as_a_file_can_have_them(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    here = room(tmp_path, slip_cushion=with_steps(""))
    told = run(here, "steps", "slip-cushion")
    assert told.lines == [
        "steps:",
        "  - use: cut",
        "  - use: mark folds, crease, stitch tucks",
        "    on: front",
        "  - use: envelope back",
        "    on: back",
        "  - use: join pieces, neaten, turn out",
        "    on: front, back",
        "  - use: fill",
    ]
    pasted = room(tmp_path, slip_cushion=with_steps(told.out))
    assert run(pasted, "check").lines[-1].startswith("1 project checked: 0 errors, 0 warnings")


def test_what_the_steps_of_a_file_lack_is_printed_alone(tmp_path: Path) -> None:
    here = room(tmp_path, slip_cushion=with_steps(BY_HAND))
    assert run(here, "steps", "slip-cushion", "--missing").lines == [
        "steps:",
        "  - use: envelope back",
        "    on: back",
        "  - use: neaten",
        "    on: front, back",
    ]


def test_a_recipe_that_cannot_be_sewn_has_its_figures_and_no_sheet(tmp_path: Path) -> None:
    here = room(tmp_path, slip_cushion=with_steps(BY_HAND))
    assert run(here, "figures", "slip-cushion", "small").code == 0
    refused = run(here, "sheet", "slip-cushion", "small", "-o", "small.pdf")
    assert refused.code == 1
    assert "no step makes 'back'; 'join pieces' needs it. Write above line 37:" in refused.err
    assert not (tmp_path / "small.pdf").exists()


def test_as_usual_stands_by_itself(tmp_path: Path) -> None:
    here = room(tmp_path, slip_cushion=with_steps("steps:\n  - use: as usual, fill\n"))
    told = run(here, "check").lines[0]
    assert told.endswith("'as usual' stands by itself; write the other steps below it, each as a step of its own")
