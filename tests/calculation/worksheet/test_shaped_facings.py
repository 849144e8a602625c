"""Facings cut to the shape of an edge on a worksheet: sizes, edges, steps and thread by hand; what is refused."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, put, sheet

from generator.calculation.worked import End
from generator.calculation.worked_project import SheetStep, Worksheet

YOKE = """\
    kind: rectangle
    outline:
      mirror: yes
      start: 0, 3 in or 0, 8 cm
      edges:
        - neck: quarter oval across to 4 in, 0 or 10 cm, 0
        - shoulder: line to 8 in, 0 or 20 cm, 0
        - side: line to 8 in, 10 in or 20 cm, 25 cm
        - bottom: line to 0, 10 in or 0, 25 cm
    edges:
      neck: seam 3/8 in or 1 cm
      bottom: hem 1/2 in or 1 cm
"""
TOP = f"""\
title: Net-mender's top
kind: garment
summary: |
  A yoke of two halves.
sizes:
  medium:
    wide: 8 in or 20 cm
cloths:
  linen:
    label: linen
    width: 54 in or 137 cm
pieces:
  front:
{YOKE}  back:
{YOKE}  front facing:
    kind: shaped facing
    along: front.neck
    width: 2 in or 5 cm
  back facing:
    kind: shaped facing
    along: back.neck
    width: 2 in or 5 cm
edges that meet:
  - join: front.shoulder
    to: back.shoulder
  - join: front facing.shoulder
    to: back facing.shoulder
  - join: front.neck
    to: front facing.neck
  - join: back.neck
    to: back facing.neck
  - join: front.side
    to: back.side
steps:
  - use: as usual
"""


def titles(found: Worksheet) -> list[str]:
    return [step.title for step in found.steps]


def called(found: Worksheet, title: str) -> SheetStep:
    return next(step for step in found.steps if step.title.startswith(title))


def test_a_facing_has_the_edges_and_allowances_of_what_it_faces(tmp_path: Path) -> None:
    facing = sheet(tmp_path, TOP, "medium").pieces["front facing"]
    assert list(facing.edges) == ["neck", "right shoulder", "free", "left shoulder"]
    ends = {name: edge.end for name, edge in facing.edges.items()}
    seams = inches("3/8, 1/2")
    assert [ends[name] for name in ("neck", "right shoulder", "left shoulder")] == [
        End("seam", seams[0]),
        *[End("seam", seams[1])] * 2,
    ]
    assert ends["free"] == End("raw")
    # The neck arrives upright, so each end lies on the level shoulder and is as long as the facing is wide.
    assert [facing.edges[name].finished for name in ("right shoulder", "left shoulder")] == inches("2, 2")
    # Across 2 x (4 + 2) at the shoulders; along 3 and 2.
    assert [facing.finished_across, facing.finished_along] == pytest.approx([12, 5], abs=1 / 500)
    assert facing.measures["width"] == 2


def test_what_meets_is_as_long_on_both_sides(tmp_path: Path) -> None:
    meetings = {one.join: one for one in sheet(tmp_path, TOP, "medium").meetings}
    assert meetings["front.neck"].join_length == meetings["front.neck"].to_length
    # Both ends of 2 in, twice.
    assert meetings["front facing.shoulder"].join_length == 4
    # The seam and its understitching.
    assert [meetings[name].lines for name in ("front.neck", "front facing.shoulder", "front.shoulder")] == [2, 1, 1]


def test_as_usual_joins_the_ends_neatens_the_free_edge_and_then_faces(tmp_path: Path) -> None:
    found = sheet(tmp_path, TOP, "medium")
    ends, shoulders = (_first(found, f"shoulder edge of the {name}") for name in ("front facing", "front"))
    neat = titles(found).index("Neaten the free edge: front facing")
    face = titles(found).index("Face the edge: front facing")
    assert max(ends, shoulders, neat) < face
    assert ends < neat


def _first(found: Worksheet, words: str) -> int:
    return next(place for place, step in enumerate(found.steps) if f"{words}," in step.text)


def test_a_hem_at_an_edge_with_a_name_of_its_own_is_told_by_it(tmp_path: Path) -> None:
    text = TOP.replace(
        "    kind: shaped facing\n", "    kind: shaped facing\n    edges:\n      free: hem 1/4 in or 6 mm\n"
    )
    told = [step.title + step.text for step in sheet(tmp_path, text, "medium").steps if "hem" in step.title.lower()]
    assert any("free edge" in one for one in told), told


def test_the_step_tells_what_the_curve_wants(tmp_path: Path) -> None:
    text = called(sheet(tmp_path, TOP, "medium"), "Face the edge: front facing").text
    assert "3/8 in from the edge" in text
    assert "Along the hollow curve" in text
    assert "Along the outward curve" not in text
    assert "corner" not in text
    assert "Understitch" in text
    assert "a few stitches by hand at each seam" in text


def test_the_free_edge_takes_thread_as_it_is_neatened(tmp_path: Path) -> None:
    # Overlock takes 14 times its seam, pinking none. The free edges and, as nothing shuts them in, every plain seam.
    lengths = []
    for way in ("overlock", "pinked"):
        text = TOP.replace("    kind: shaped facing\n", f"    kind: shaped facing\n    neaten: {way}\n")
        found = sheet(tmp_path / way, text, "medium")
        lengths.append(found.thread.length)
        free = found.pieces["front facing"].edges["free"].finished
    assert lengths[0] - lengths[1] == 14 * Fraction(6, 5) * (2 * free + 4)


def test_a_free_edge_that_is_hemmed_is_not_neatened(tmp_path: Path) -> None:
    hem = "    kind: shaped facing\n    edges:\n      free: hem 1/4 in or 6 mm\n"
    found = sheet(tmp_path, TOP.replace("    kind: shaped facing\n", hem), "medium")
    assert not any(title.startswith("Neaten the free edge") for title in titles(found))
    assert found.pieces["front facing"].edges["free"].allowance == Fraction(1, 2)


def test_a_facing_of_a_rectangle_is_a_strip_with_its_edges(tmp_path: Path) -> None:
    text = TOP.replace("along: front.neck", "along: plain.top").replace("front facing.neck", "front facing.top")
    text = text.replace("join: front.neck", "join: plain.top").replace(
        "  - join: front facing.shoulder\n    to: back facing.shoulder\n", ""
    )
    text = put(
        text,
        (
            "  back:\n",
            "  plain:\n    kind: rectangle\n    finished across: 6 in or 15 cm\n    finished along: 4 in\n  back:\n",
        ),
    )
    facing = sheet(tmp_path, text, "medium").pieces["front facing"]
    assert list(facing.edges) == ["top", "right", "free", "left"]
    # 6 and two seams of 1/2 across; a seam of 1/2 and 2 along.
    assert [facing.cut_across, facing.cut_along] == inches("7, 2 1/2")


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (
            ("along: front.neck", "along: front.neck and back.neck"),
            "a facing is traced from one piece; write one for each, and join their ends",
        ),
        (
            ("along: front.neck", "along: front.neck and front.bottom"),
            "the edges of one facing follow each other round the piece; write a facing for each of these",
        ),
        (
            ("along: front.neck", "along: front.all"),
            "a rectangle has no edge 'all'; it has: neck, right shoulder, right side, bottom, left side, left shoulder",
        ),
        (("along: front.neck", "along: fron.neck"), "there is no piece 'fron'; did you mean 'front'?"),
        (
            ("along: front.neck\n    width: 2 in or 5 cm", "along: front.neck\n    width: 5 in or 13 cm"),
            "the free edge of a facing 5 in wide does not meet 'right shoulder', at which it should end",
        ),
        (
            ("      neck: seam 3/8 in or 1 cm", "      neck: bound 1/4 in or 6 mm"),
            "'front.neck' is finished by itself (bound), and an edge that is faced has a seam; write a seam there",
        ),
        (("neck: quarter oval across to 4 in", "free: quarter oval across to 4 in"), "has no edge 'neck'"),
    ],
)
def test_what_a_facing_refuses(tmp_path: Path, change: tuple[str, str], told: str) -> None:
    text = TOP.replace(*change, 1)
    found = faults(tmp_path, text, "medium")
    assert any(told in one for one in found), found


def test_a_rim_that_goes_right_round_is_refused(tmp_path: Path) -> None:
    round_one = "  plate:\n    kind: circle\n    diameter: 9 in or 23 cm\n  back:\n"
    text = put(TOP, ("  back:\n", round_one)).replace("along: front.neck", "along: plate.rim")
    found = faults(tmp_path, text, "medium")
    assert any("a facing ends at the edges beside the one it faces, and here none is left" in one for one in found)


def test_corners_of_two_shapes_that_are_sewn_to_each_other_all_round_are_not_warned_of(tmp_path: Path) -> None:
    # Front and back on each other at shoulder and side: their corner is turned out. The neck, which nothing joins to
    # another neck, is told where it makes a point.
    sloping = TOP.replace("- shoulder: line to 8 in, 0 or 20 cm, 0", "- shoulder: line to 8 in, 4 in or 20 cm, 10 cm")
    told = [str(one) for one in sheet(tmp_path, sloping, "medium").findings if "does not run on" in str(one)]
    assert any("the edge 'neck'" in one for one in told)
    assert not any("the edge 'side'" in one or "the edge 'shoulder'" in one for one in told)
