"""What a step says on the handout: its words without the lists that stand there as tables and pictures."""

from __future__ import annotations

from pathlib import Path

from rooms_on_disk import CUSHION, put, sheet

from tests.room import opened_room

ROOM = Path(__file__).resolve().parents[3]

TECHNIQUE = """\
title: "Mark the folds: [piece]"
about: panel
gives: marked
figures:
work:
text:
  - when: paper
    say: |
      Make all marks of the table. [marks]
  - when: screen
    say: |
      Make these marks:

      [marks]
  - say: |
      Count them.
"""


def test_a_list_stands_in_the_text_of_a_page_and_by_itself_on_paper(tmp_path: Path) -> None:
    folder = tmp_path / "site" / "techniques"
    folder.mkdir(parents=True)
    (folder / "mark-folds.yaml").write_text(TECHNIQUE, encoding="utf-8")
    (step,) = (one for one in sheet(tmp_path, put(CUSHION), "medium").steps if one.standard == "mark folds")
    assert step.text.startswith("Make these marks:\n\nMarks (in, from the cut edge): 1: ")
    assert step.printed == "Make all marks of the table. Count them."
    assert step.lists == ("marks",)


def test_a_step_of_the_project_says_the_same_on_both(tmp_path: Path) -> None:
    own = [step for step in sheet(tmp_path, put(CUSHION), "medium").steps if not step.standard]
    assert own
    assert all(step.printed == step.text and step.lists == () for step in own)


def test_no_list_is_told_twice_on_paper(tmp_path: Path) -> None:
    steps = sheet(tmp_path, put(CUSHION), "medium").steps
    shown = [word for step in steps for word in step.lists]
    assert {"cuts", "marks", "check points", "ruled rows", "rows"} <= set(shown)
    assert not any(words in step.printed for step in steps for words in ("Marks (", "Rows (", "After tuck", "- **Row"))


def test_a_piece_that_no_sum_tells_keeps_its_table() -> None:
    # The piping of a seat pad is cut from a square on the bias: its side grows with the root of the length.
    later = [
        step
        for step in opened_room(ROOM).worksheet("bosun-seat-pad", "chair", "inch").steps
        if "own measure" in step.lists
    ]
    told = later[0].printed
    assert "piping: cut" in told
    assert "bottom: cut" not in told
    assert "boxing: cut" not in told
