"""Pieces worked on from a panel as sewn, strips longer than the cloth, and random cushions worked forwards again."""

from __future__ import annotations

import tempfile
from fractions import Fraction
from pathlib import Path

from hypothesis import given, settings
from hypothesis import strategies as st
from rooms_on_disk import CUSHION, inches, put, sheet, warnings

from generator.calculation.worked_piece import Lengths
from generator.calculation.worksheet.figures import figures
from generator.lengths import read_length

FRILL = """\
  frill:
    kind: gathered strip
    edge: 4 * side
    fullness: 2
    drop: 2 in or 5 cm
    edges:
      top: seam 1/2 in or 1.5 cm
      left: seam 1/2 in or 1.5 cm
      right: seam 1/2 in or 1.5 cm
      bottom: hem 1/4 in or 6 mm
  back:
"""


def test_the_back_is_worked_again_to_the_front_as_sewn(tmp_path: Path) -> None:
    # The front measures 15 7/8: each half is (15 7/8 + 4) / 2 + 1/2 + 2 = 12 7/16.
    found = sheet(tmp_path, CUSHION, "medium", across="15 7/8")
    assert (found.pieces["back"].cut_across, found.pieces["back"].finished_across) == tuple(inches("12 7/16, 15 7/8"))
    assert found.as_sewn == {"front.across": Fraction(127, 8)}
    assert figures(found)["as_sewn"] == {"front.across": "15 7/8"}
    assert found.size_note == "Worked again to what was sewn: front 15 7/8 in across."
    assert warnings(found) == []


def test_the_front_keeps_its_own_numbers_when_it_has_been_sewn(tmp_path: Path) -> None:
    sewn, planned = (sheet(tmp_path, CUSHION, "medium", **told) for told in ({"across": "15 7/8"}, {}))
    assert sewn.panels["front"] == planned.panels["front"]
    assert sewn.pieces["front"].cut_across == planned.pieces["front"].cut_across


def test_edges_that_meet_are_compared_with_the_front_as_sewn(tmp_path: Path) -> None:
    # The back's length is the side, 16, and does not follow the front: 2 x 16 + 2 x 15 3/4 = 63 1/2 against 64.
    found = sheet(tmp_path, CUSHION, "medium", along="15 3/4")
    [told] = warnings(found)
    assert "'front.all' is 63 1/2 in and 'back.all' is 64 in: 1/2 in apart" in told


def test_a_strip_longer_than_the_cloth_is_wide_is_cut_in_equal_lengths(tmp_path: Path) -> None:
    # 4 x 16 x 2 = 128, and two seams: 129 long; 2 + 1/2 + 2 x 1/4 = 3 high.  Lengths from 44 in of cloth:
    # (129 - 1) / (44 - 1) = 2.98, so 3, with two joins of two allowances: (129 + 2 x 1) / 3 = 43 2/3, up to 43 11/16.
    frill = sheet(tmp_path, put(CUSHION, ("  back:\n", FRILL)), "medium").pieces["frill"]
    assert [frill.cut_across, frill.cut_along] == inches("129, 3")
    assert frill.lengths == Lengths(3, *inches("43 11/16, 3, 1/2"), slanting=False)


def test_a_strip_that_fits_the_cloth_is_cut_in_one(tmp_path: Path) -> None:
    # 2 x 16 x 1 1/4 = 40 and two seams: 41, less than 44.
    short = put(FRILL, ("fullness: 2", "fullness: 1 1/4"), ("4 * side", "2 * side"))
    frill = sheet(tmp_path, put(CUSHION, ("  back:\n", short)), "medium").pieces["frill"]
    assert (frill.lengths, frill.cut_across) == (None, 41)


def test_a_panel_wider_than_the_cloth_is_joined_from_breadths(tmp_path: Path) -> None:
    # 32 across on 20 in of cloth: two breadths, and a join of 1/4 in on both sides takes 1/2 in: together 32 1/2.
    text = put(CUSHION, ("width: 44 in", "width: 20 in"))
    panel = sheet(tmp_path, text, "medium").panels["front"]
    assert (len(panel.breadths), len(panel.joins)) == (2, 1)
    assert sum(panel.breadths) == Fraction(65, 2)
    assert max(panel.breadths) <= 20
    # The seam lies at the foot of its tuck: half a take-up beside the fold mark.
    [join] = panel.joins
    side = -1 if join.foot == "left" else 1
    assert join.at == panel.across.marks[join.tuck - 1] + side * Fraction(3, 8)


@given(
    side=st.integers(8 * 8, 30 * 8).map(lambda eighths: Fraction(eighths, 8)),
    depth=st.sampled_from([Fraction(1, 4), Fraction(3, 8), Fraction(1, 2)]),
    visible=st.integers(0, 6).map(lambda eighths: Fraction(eighths, 8)),
    seam=st.sampled_from([Fraction(1, 4), Fraction(1, 2), Fraction(5, 8)]),
)
@settings(max_examples=30)
def test_a_random_cushion_comes_out_at_its_printed_size(
    side: Fraction, depth: Fraction, visible: Fraction, seam: Fraction
) -> None:
    text = put(
        CUSHION,
        ("side: 16 in", f"side: {side} in"),
        ("depth: 3/8 in", f"depth: {depth} in"),
        ("spacing: 1 1/2 in", f"spacing: {3 * depth + visible} in"),
        ("margin: 3/4 in to 1 1/2 in", "margin: 5/8 in to 4 in"),
        ("spacing: 3 in", f"spacing: {8 * depth} in"),
        ("first: 1 in to 3 in", "first: 1/2 in to 12 in"),
        ("all: seam 1/2 in", f"all: seam {seam} in"),
        ("all: seam 1/2 in", f"all: seam {seam} in"),
    )
    with tempfile.TemporaryDirectory() as folder:
        found = figures(sheet(Path(folder), text, "medium"))
    front = found["pieces"]["front"]
    marks = [read_length(mark, "in") for mark in front["tucks"]["marks"]]
    # Forwards from the printed marks: fold and stitch one tuck after the other, and see how much is left.
    left, sewn = read_length(front["cut"]["across"], "in"), []
    for stitched, mark in enumerate(marks):
        sewn.append(mark - stitched * 2 * depth - depth - seam)
        left -= 2 * depth
    assert [read_length(place, "in") for place in front["tucks"]["stitching"]] == sewn
    assert read_length(front["finished"]["across"], "in") == left - 2 * seam
    assert abs(left - 2 * seam - side) <= Fraction(1, 16)
    [meeting] = found["meetings"]
    assert meeting["join_length"] == meeting["to_length"]
