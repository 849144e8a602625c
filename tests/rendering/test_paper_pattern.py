"""The paper of a shape, measured in the PDF in points: squares, frames, and every corner of its cut line."""

from __future__ import annotations

import io
from functools import cache
from math import hypot

import pdfplumber
import pytest
from opened_pdf import texts
from room_setting import setting
from shapes_room import shapes

from generator.calculation.worked_piece import Shaped
from generator.drawing.paper_pattern import PaperTile, papers_of, plan_paper
from generator.lengths import INCH, METRIC
from generator.rendering.handout.tables import cut_rows
from generator.rendering.paper_pattern import render_paper_pattern

POINTS, CLOSE = 72, 0.1
FRAMES = {"inch": (6.5, 9.0), "metric": (16 / 2.54, 22 / 2.54)}
CASES = [("inch", "Letter"), ("inch", "A4"), ("metric", "A4"), ("metric", "Letter")]


@cache
def pages(edition: str, paper: str) -> list[dict[str, list[dict[str, object]]]]:
    """The rectangles, and the lines and curves drawn with a pen, of every page."""
    pdf = render_paper_pattern(shapes(edition), setting(), paper)
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        return [
            {
                "rectangles": [one for one in page.rects if not one["fill"]],
                "lines": [one for one in (*page.curves, *page.lines) if not one["fill"]],
                "room": [float(page.width), float(page.height)],  # type: ignore[dict-item]
            }
            for page in read.pages
        ]


def squares_of(page: dict[str, list[dict[str, object]]]) -> list[list[float]]:
    return [[float(one["width"]), float(one["height"])] for one in page["rectangles"]]  # type: ignore[arg-type]


def tiles(edition: str) -> list[tuple[Shaped, PaperTile] | None]:
    """What each page should hold: squares before the tiles of each shape."""
    ruler = INCH if edition == "inch" else METRIC
    found: list[tuple[Shaped, PaperTile] | None] = []
    for _, _, shape in papers_of(shapes(edition)):
        found += [None, *((shape, tile) for tile in plan_paper(shape, ruler))]
    return found


@pytest.mark.parametrize(("edition", "paper"), CASES)
def test_squares_frames_and_the_cut_line_lie_within_a_tenth_of_a_point(edition: str, paper: str) -> None:
    wide, high = (side * POINTS for side in FRAMES[edition])
    drawn, wanted = pages(edition, paper), tiles(edition)
    assert len(drawn) == len(wanted)
    for page, held in zip(drawn, wanted, strict=True):
        if held is None:
            (inch, five) = sorted(squares_of(page))[:2]
            assert inch == pytest.approx([72, 72], abs=CLOSE)
            assert five == pytest.approx([5 / 2.54 * 72] * 2, abs=CLOSE)
            continue
        shape, tile = held
        (frame,) = [one for one in page["rectangles"] if abs(float(one["width"]) - wide) < 1]  # type: ignore[arg-type]
        assert [frame["width"], frame["height"]] == pytest.approx([wide, high], abs=CLOSE)
        # The frame and its tabs lie on the paper, a quarter of an inch from its edges at least.
        assert min(float(frame["x0"]), float(frame["top"])) > 18  # type: ignore[arg-type]
        assert float(frame["x1"]) + 36 < page["room"][0] - 18  # type: ignore[operator,arg-type]
        corner = float(frame["x0"]), float(frame["top"])  # type: ignore[arg-type]
        spots = [spot for line in page["lines"] for spot in line["pts"]]  # type: ignore[attr-defined]
        for spot in shape.cut:
            if tile.holds(spot):
                x, y = (
                    at + float(place - edge) * POINTS
                    for at, place, edge in zip(corner, spot, (tile.left, tile.top), strict=True)
                )
                assert min(hypot(x - to_x, y - to_y) for to_x, to_y in spots) < CLOSE, (tile.name, spot)


@pytest.mark.parametrize("edition", FRAMES)
def test_every_corner_of_a_shape_lies_on_one_tile_and_neighbours_meet(edition: str) -> None:
    ruler = INCH if edition == "inch" else METRIC
    for _, _, shape in papers_of(shapes(edition)):
        laid = {tile.name: tile for tile in plan_paper(shape, ruler)}
        for spot in shape.cut:
            assert sum(tile.holds(spot) for tile in laid.values()) == 1
        for tile in laid.values():
            assert not tile.beside or laid[tile.beside].left == tile.right
            assert not tile.below or laid[tile.below].top == tile.bottom


def test_as_few_tiles_as_can_be() -> None:
    # A circle cut 15 in through: 15 / 6 1/2 is 3 across, 15 / 9 is 2 down. In metric 38 cm: 38 / 16 is 3, 38 / 22 is 2.
    for edition, ruler in (("inch", INCH), ("metric", METRIC)):
        named = {piece.name: plan_paper(shape, ruler) for piece, _, shape in papers_of(shapes(edition))}
        assert [tile.name for tile in named["top"]] == ["A1", "A2", "A3", "B1", "B2", "B3"]
        # 5 and 6 with seams of 1/2: one tile.
        assert [(tile.name, tile.beside, tile.below) for tile in named["pocket"]] == [("A1", "", "")]


def test_the_paper_says_how_it_is_joined_measured_and_laid() -> None:
    told = texts(render_paper_pattern(shapes("inch"), setting(), "Letter"))
    assert "From frame to frame the whole paper is 19 1/2 in across and 18 in down." in told[0]
    assert "top row A1 A2 A3 next row B1 B2 B3" in told[0]
    assert "tile A1; right joins A2 and below joins B1. The frame is 6" in told[1]
    assert "tab: glue B1 here" in told[1]
    whole = " ".join(told)
    for words in ("right shoulder, 2", "neck, 14", "bottom, 22 in", "rim, 44 in", "top, cut 1", "grain"):
        assert words in whole, words


def test_notches_stand_on_the_cut_line_an_eighth_deep_and_dots_where_no_allowance_is() -> None:
    for piece, _, shape in papers_of(shapes("inch")):
        for notch in shape.notches:
            (x, y), (to_x, to_y) = notch.outer, notch.inner
            if notch.dot:
                assert notch.edge in ("neck", "right armhole", "left armhole"), piece.name
            else:
                assert hypot(float(x - to_x), float(y - to_y)) == pytest.approx(1 / 8, abs=1e-5)
    top = papers_of(shapes("inch"))[0][2]
    # A circle of 14: four quarter marks, the first at its highest point, cut from 1/2 to 3/8 outside.
    first, second, third, fourth = top.notches
    assert [float(one) for one in (*first.outer, *first.inner)] == pytest.approx([7, -0.5, 7, -0.375], abs=0.01)
    assert [float(one) for one in second.at] == pytest.approx([14, 7], abs=0.01)
    assert [float(one) for one in third.at] == pytest.approx([7, 14], abs=0.01)
    assert [float(one) for one in fourth.at] == pytest.approx([0, 7], abs=0.01)


def test_the_cut_table_says_of_shapes_that_they_are_cut_to_the_paper() -> None:
    notes = {str(row.label): str(row.note) for row in cut_rows(shapes("inch"))}
    assert {label for label, note in notes.items() if "cut to the paper" in note} == {"top", "yoke", "pocket"}
