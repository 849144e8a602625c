"""Seams that shut in their own edges and rolled hems: cut, layers, thread, steps by hand; what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, put, sheet
from test_plain_pieces_by_hand import extra, sizes, with_piece

from generator.calculation.pieces.enclosed import felled_seam, french_seam
from generator.calculation.worked import End
from generator.calculation.worked_project import SheetStep
from generator.lengths import INCH, METRIC, read_length

BAG = """\
title: Rope-locker bag
kind: bag
summary: |
  A bag of two halves.
sizes:
  medium:
    wide: 10 in or 25 cm
    high: 14 in or 35 cm
cloths:
  lawn:
    label: lawn
    width: 44 in or 112 cm
    weight: light
pieces:
  front:
    kind: tucked panel
    finished across: wide
    finished along: high
    tucks:
      depth: 1/4 in or 6 mm
      spacing: 1 1/2 in or 4 cm
      margin: 3/4 in to 1 1/2 in or 2 cm to 4 cm
    rows:
      plan: ripples
      spacing: 3 in or 7.5 cm
      first: 1 in to 3 in or 3 cm to 7 cm
    edges:
      left: SEAM
      right: SEAM
      top: hem 1/2 in or 1 cm
      bottom: seam 1/2 in or 1.5 cm
  back:
    kind: rectangle
    finished across: front.across
    finished along: high
    edges:
      left: SEAM
      right: SEAM
      top: rolled hem
      bottom: seam 1/2 in or 1.5 cm
edges that meet:
  - join: front.left
    to: back.right
  - join: front.right
    to: back.left
  - join: front.bottom
    to: back.bottom
steps:
  - use: as usual
"""
FRENCH = "french seam 5/8 in or 1.5 cm"
FELLED = "felled seam 5/8 in or 1.5 cm"


def bag(finish: str) -> str:
    return BAG.replace("SEAM", finish)


def step_called(steps: tuple[SheetStep, ...], title: str) -> SheetStep:
    return next(step for step in steps if step.title.startswith(title))


@pytest.mark.parametrize("finish", [FRENCH, FELLED])
def test_the_allowance_is_cut_and_four_layers_lie_in_the_seam(tmp_path: Path, finish: str) -> None:
    found = sheet(tmp_path, bag(finish), "medium")
    back = found.pieces["back"]
    # Across 10 + 2 x 5/8 = 11 1/4; along 14 + a rolled hem of 1/8 and 1/8 + a seam of 1/2 = 14 3/4.
    assert [back.cut_across, back.cut_along] == inches("11 1/4, 14 3/4")
    assert back.edges["top"].end == End("hem", *inches("1/8, 1/8"), way="rolled hem")
    # Each side brings its cloth and its allowance, folded: 2 + 2. The bottom, where tucks end, has 3 + 1.
    lines = {meeting.join: meeting.lines for meeting in found.meetings}
    assert lines == {"front.left": 2, "front.right": 2, "front.bottom": 1}


def test_layers_of_a_french_seam_are_told_at_its_edge(tmp_path: Path) -> None:
    # The tucks run up to the French seam at the bottom: 2 x 3 of the front and 2 x 1 of the back are 8, over the 7 of
    # the room.
    text = put(bag("seam 5/8 in or 1.5 cm"), ("bottom: seam 1/2 in or 1.5 cm", "bottom: french seam 1/2 in or 1.2 cm"))
    text = text.replace("bottom: seam 1/2 in or 1.5 cm", "bottom: french seam 1/2 in or 1.2 cm")
    text = put(text, ("top: hem 1/2 in or 1 cm", "top: raw"))
    assert sheet(tmp_path, text, "medium").thickest["front"].layers == 8


@pytest.mark.parametrize(
    ("finish", "technique", "words"),
    [
        (FRENCH, "Sew a French seam", "first line 3/8 in from the raw edges, second 1/4 in from the fold"),
        (FELLED, "Sew a felled seam", "first line 3/8 in"),
    ],
)
def test_the_recipe_sews_it_by_itself_and_neatens_only_the_other(
    tmp_path: Path, finish: str, technique: str, words: str
) -> None:
    found = sheet(tmp_path, bag(finish), "medium")
    step = step_called(found.steps, technique)
    expected = words if finish == FRENCH else "first line 5/8 in from the raw edges; trim one to 1/4 in"
    assert expected in step.text
    assert "the left edge of the front, to the right edge of the back" in step.text
    neat = step_called(found.steps, "Neaten")
    # Only the seam at the bottom is neatened: one stretch of 10 in.
    assert found.steps.index(neat) > found.steps.index(step)
    joined = [one for one in step.joined if one.sorts]
    assert [one.layers[0].right_side_up for one in joined] == [finish == FELLED] * len(joined)


def test_a_french_seam_that_is_sewn_last_needs_no_neatening(tmp_path: Path) -> None:
    text = bag(FRENCH).replace("bottom: seam 1/2 in or 1.5 cm", "bottom: bound")
    text = text.replace("  - join: front.bottom\n    to: back.bottom\n", "")
    titles = [step.title for step in sheet(tmp_path, text.replace("bottom: bound", "bottom: raw"), "medium").steps]
    assert any(title.startswith("Sew a French seam") for title in titles)
    assert not any(title.startswith("Neaten") for title in titles)


ADVICE = "give it at least 1/2 in, better 5/8 in"
ONE = "give 'front.left' and 'back.right' the same finish, with the same width"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            bag("french seam 3/8 in or 1 cm"),
            f"a french seam of 3/8 in is too narrow to shut in its own edges; {ADVICE}",
        ),
        (
            bag("felled seam 3/8 in or 1 cm"),
            f"a felled seam of 3/8 in is too narrow to shut in its own edges; {ADVICE}",
        ),
        (
            put(bag(FRENCH), (f"right: {FRENCH}\n      top: rolled hem", "right: seam 5/8 in\n      top: rolled hem")),
            f"a french seam shuts in both edges: {ONE}",
        ),
        (
            put(bag(FRENCH), ("  - join: front.left\n    to: back.right\n", "")),
            "'front.left' is to be closed by a french seam and meets no other edge; write under 'edges that meet' what "
            "it is sewn to",
        ),
        (
            put(bag(FRENCH), ("top: hem 1/2 in or 1 cm", "top: rolled hem")),
            "a rolled hem cannot go over tucks, and they run into 'front.top'; write 'bound', or a hem",
        ),
    ],
)
def test_what_cannot_be_shut_in_is_refused(tmp_path: Path, text: str, told: str) -> None:
    assert any(told in fault for fault in faults(tmp_path, text, "medium")), faults(tmp_path, text, "medium")


def test_tucks_on_both_sides_and_a_curve_are_refused(tmp_path: Path) -> None:
    both = bag("seam 1/2 in or 1.5 cm").replace("bottom: seam 1/2 in or 1.5 cm", f"bottom: {FRENCH}")
    first, _, rest = both.partition("  back:\n    kind: rectangle\n")
    tucks = first[first.index("    tucks:") : first.index("    edges:")]
    two = f"{first}  back:\n    kind: tucked panel\n{rest.replace('    edges:', tucks + '    edges:', 1)}"
    two = two.replace("top: rolled hem", "top: hem 1/2 in or 1 cm")
    assert any(
        "tucks run into both 'front.bottom' and 'back.bottom', so a french seam would be twelve layers thick" in fault
        for fault in faults(tmp_path, two, "medium")
    )
    rounds = put(
        with_piece(f"kind: rectangle\noutline: circle\nfinished across: 10 in or 25 cm\nedges: {FRENCH}\nquantity: 2"),
        ("edges that meet:\n", "edges that meet:\n  - join: extra.rim\n    to: extra.rim\n"),
    )
    assert any(
        "a french seam lies flat on a straight edge only" in fault for fault in faults(tmp_path, rounds, "medium")
    )


def test_a_rolled_hem_is_turned_twice_by_an_eighth(tmp_path: Path) -> None:
    piece = extra(
        tmp_path, "kind: rectangle\nfinished across: 10 in or 25 cm\nfinished along: 6 in or 15 cm\nedges: rolled hem"
    )
    assert sizes(piece) == inches("10 1/2, 6 1/2, 10, 6")
    metric = sheet(
        tmp_path,
        with_piece(
            "kind: rectangle\nfinished across: 10 in or 25 cm\nfinished along: 6 in or 15 cm\nedges: rolled hem"
        ),
        "medium",
        "metric",
    )
    # 3 mm twice at both sides.
    assert metric.pieces["extra"].cut_across == read_length("26.2 cm")


@pytest.mark.parametrize(
    ("edition", "allowance"), [(INCH, "1/2 in"), (INCH, "7/8 in"), (METRIC, "1.2 cm"), (METRIC, "2 cm")]
)
def test_the_lines_laid_out_along_the_cloth(edition: object, allowance: str) -> None:
    # From the raw edge: to the first line, where the cloth folds, then to the second line, which is the finished line.
    a = read_length(allowance)
    french = french_seam(a, edition)  # type: ignore[arg-type]
    assert french.first + french.second == a
    # The trimmed edge, at most as wide as the fold, does not reach the second line.
    assert french.second >= read_length("1/8 in") * 2 - read_length("1 mm")
    # Of the wide allowance the fell shows and the rest is turned in beneath it: together they are the allowance, and
    # what is trimmed lies beneath the fell or beside what is turned in.
    felled = felled_seam(a, edition)  # type: ignore[arg-type]
    assert felled.shows + felled.second == a == felled.first
