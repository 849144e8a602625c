"""Words in square brackets: a text with one word comes in, the text a student reads is compared with one by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, inches, project, put, room_shared, sheet

from generator.calculation.worked import BreadthJoin, End
from generator.calculation.worked_piece import EdgeWork, Piece
from generator.calculation.worksheet.brackets import filled_brackets
from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.scope import Scope
from generator.calculation.worksheet.step_context import StepContext
from generator.lengths import INCH
from generator.publishing.checking import findings_of_project

HALF = inches("1/2")[0]
TWO_SEAMS = put(
    CUSHION,
    (
        "  - join: front.all\n    to: back.all\n",
        "  - join: front.top\n    to: back.top\n  - join: front.left\n    to: front.right\n",
    ),
)


@pytest.fixture(name="context")
def context_of_the_cushion(tmp_path: Path) -> StepContext:
    """The cushion with two meetings: front to back, and the sides of the front to each other."""
    made = sheet(tmp_path, TWO_SEAMS, "medium")
    room = room_shared(tmp_path)
    scope = Scope(project(tmp_path, TWO_SEAMS, room), "medium", INCH, room.room, worked_piece)
    return StepContext(scope, made.pieces, made.cloths, made.meetings, made.closures, {})


def said(context: StepContext, word: str, pieces: Sequence[Piece]) -> str:
    return filled_brackets(f"[{word}]", context, pieces)


def test_names_are_told_as_a_list_each_once(context: StepContext) -> None:
    front, back = context.pieces["front"], context.pieces["back"]
    lid = replace(back, name="lid", label="lid")
    assert said(context, "pieces", []) == ""
    assert said(context, "pieces", [front]) == "front"
    assert said(context, "pieces", [front, back]) == "front and back"
    assert said(context, "pieces", [front, back, front, lid]) == "front, back and lid"
    assert (said(context, "piece", [back, front]), said(context, "other", [back, front])) == ("back", "front")
    assert said(context, "other", [back]) == ""
    assert said(context, "cut later", [front, replace(back, after_panel=True)]) == "back"


def test_a_word_that_is_not_known_stays_as_it_is(context: StepContext) -> None:
    assert filled_brackets("[a link](b) and [piece]", context, [context.pieces["back"]]) == "[a link](b) and back"


@pytest.mark.parametrize(
    "word",
    [
        "marks",
        "cross marks",
        "sample",
        "depths",
        "check points",
        "ruled rows",
        "rows",
        "joins",
        "stripe colours",
        "trim",
    ],
)
def test_what_is_told_of_a_panel_is_empty_without_one(context: StepContext, word: str) -> None:
    assert said(context, word, [context.pieces["back"]]) == ""


@pytest.mark.parametrize("word", ["lengths", "pleats", "left hem", "top hem"])
def test_what_is_told_of_a_piece_is_empty_without_one(context: StepContext, word: str) -> None:
    assert said(context, word, []) == ""


def test_each_list_of_a_panel_has_its_word(context: StepContext) -> None:
    front = context.pieces["front"]
    assert front.panel is not None
    join = BreadthJoin(8, "left", inches("13")[0], 6, 6, hidden=True, text="Hidden.")
    joined = replace(
        front, panel=replace(front.panel, breadths=tuple(inches("13 1/2, 20")), joins=(join,), join_allowance=HALF)
    )
    assert said(context, "joins", [joined]) == (
        "- Breadths, from the left: 13 1/2 in, 20 in. Sew them with 1/2 in seams.\n"
        "- Seam 13 in from the left cut edge. Hidden."
    )
    assert said(context, "sample", [front]) == "The 20 tucks take up just twice their depth."
    assert said(context, "depths", [front]) == "- Tucks 1 to 20: 3/8 in deep"
    assert said(context, "ruled rows", [front]).startswith(
        "Rows (in, from the top cut edge): row 1: 1 5/8 · row 2: 4 5/8"
    )
    assert said(context, "rows", [front]).startswith("- **Row 1**, start at the right: ")
    assert said(context, "marks", [front]).startswith("Marks (in, from the cut edge): 1: 1 3/4 · 2: 3 1/4 · ")
    assert said(context, "cross marks", [front]) == ""
    crossed = replace(front, panel=replace(front.panel, cross=front.panel.across))
    assert said(context, "cross marks", [crossed]) == said(context, "marks", [front])
    # Without stripes there are no colours to tell; without a stripe to fold on, the same one.
    assert (said(context, "stripe colours", [front]), said(context, "stripe", [front])) == ("", "the same stripe")


def test_the_hems_of_the_first_piece_are_told(context: StepContext) -> None:
    end = End("hem", HALF, HALF)
    sides = {"left": replace(end, first=HALF / 2), "top": end}
    hemmed = replace(
        context.pieces["back"], edges={name: EdgeWork(name, HALF, one, HALF) for name, one in sides.items()}
    )
    both = [hemmed, context.pieces["front"]]
    assert said(context, "left hem", both) == "turn 1/4 in, then 1/2 in"
    assert said(context, "top hem", both) == "turn 1/2 in, and 1/2 in again"


def test_the_findings_of_a_project_are_those_of_all_its_sizes_and_editions(tmp_path: Path) -> None:
    # 2 in and 5 cm of overlap gape in every size. A spoilt size hides none of the others: half a cover of 16 is
    # (16 + 2) / 2 + 1/2 + 2 = 11 1/2, one of 12 is 9 1/2.
    text = put(CUSHION, ("overlap: lap", "overlap: 2 in or 5 cm"))
    room = room_shared(tmp_path)
    project(tmp_path, text, room)
    path = tmp_path / "projects" / "jetty.yaml"
    told = findings_of_project(path, room.room, tmp_path)
    assert [(one.level, one.size, one.edition) for one in told if one.level != "note"] == [
        ("warning", size, edition) for edition in ("inch", "metric") for size in ("small", "medium")
    ]
    project(tmp_path, put(text, ("width: 44 in", "width: 11 in")), room)
    found = findings_of_project(path, room.room, tmp_path)
    # The front is 15 in wide in the smaller size, so that its steps lack the joining of breadths.
    errors = [one for one in found if one.level == "error" and "joins the breadths" not in one.text]
    assert [(one.text, one.size, one.edition) for one in errors] == [
        (
            "back is 11 1/2 in across, but the cloth is only 11 in wide; take a wider cloth, or "
            "write it as two pieces that meet in a seam",
            "medium",
            "inch",
        )
    ]
