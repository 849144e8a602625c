"""The slipway smock worked by hand, and its paper beside an outline drawn by whoever knows only the printed numbers.

They are: the points of the project file in one size, the seam allowances, the frame of a tile, and how the tiles lie.
The curve of the armhole is a cubic through three points; its slopes are worked out here as the guide tells them.
"""

from __future__ import annotations

import io
from fractions import Fraction
from itertools import pairwise
from math import cos, hypot, pi, sin, sqrt
from pathlib import Path

import numpy as np
import pdfplumber
import pytest
from opened_pdf import texts
from room_setting import setting
from scipy.integrate import quad
from scipy.interpolate import CubicHermiteSpline
from shapely import unary_union
from shapely.geometry import LineString
from shapely.geometry import box as shapely_box

from generator.calculation.worked_project import Worksheet
from generator.lengths import read_length
from generator.rendering.paper_pattern import render_paper_pattern
from tests.room import demo_room

ROOT = Path(__file__).resolve().parents[2]
POINTS, CLOSE = 72, 0.1
CM = 1 / 2.54


def smock(size: str, edition: str) -> Worksheet:
    return next(
        one
        for one in demo_room().worksheets("slipway-smock")
        if (one.size, one.edition.name) == (size, edition)
    )  # fmt: skip


def inches(text: str) -> Fraction:
    return read_length(text, "in")


def test_the_front_of_medium_is_cut_30_by_34_1_4() -> None:
    # Half (36 + 8) / 4 = 11: 22 across, 30 along. Pitch 1, eight of them, margins (22 - 8) / 2 = 7. Beside the shape
    # 5/8 + 1 1/8 = 1 3/4: across 22 + 9 x 1/2 + 2 x 1 3/4 = 30. Above it the shoulder's 5/8 reach
    # 5/8 x root of (1 + 1/100) = 0.628 up: 3/4, and 1 1/8 of room; below 1 1/4 and 1 1/8: 30 + 1 7/8 + 2 3/8 = 34 1/4.
    front = smock("medium", "inch").pieces["front"]
    assert [front.cut_across, front.cut_along] == [30, inches("34 1/4")]
    assert front.panel is not None
    assert front.panel.released is not None
    # The first mark at 1 3/4 + 7 + 1/4 = 9, the last 8 x 1 1/2 further. Stitched to 8 + 1 7/8.
    assert [front.panel.across.marks[0], front.panel.across.marks[-1]] == [9, 21]
    assert set(front.panel.released.stops) == {(inches("9 7/8"),)}
    # Below 22 + 9 x 1/2 = 26 1/2.
    assert front.edges["bottom"].finished == inches("26 1/2")
    assert front.panel.released.free == {"bottom": inches("4 1/2")}


def test_the_metric_front_of_medium_is_worked_anew() -> None:
    # 56 across, 76 along: 56 + 9 x 1.2 + 2 x (1.5 + 2.6) = 75. Marks 4.1 + 16.8 + 0.6 = 21.5 and 21.5 + 8 x 4 = 53.5.
    front = smock("medium", "metric").pieces["front"]
    assert front.cut_across == read_length("75 cm", "cm")
    assert front.panel is not None
    marks = front.panel.across.marks
    assert [marks[0], marks[-1]] == [read_length("21.5 cm", "cm"), read_length("53.5 cm", "cm")]
    assert front.edges["bottom"].finished == read_length("66.8 cm", "cm")


@pytest.mark.parametrize(
    ("size", "edition", "head", "out", "drops"),
    [("medium", "inch", 22.5, 5, (4, 2)), ("large", "metric", 58 * CM, 12.5 * CM, (10 * CM, 5 * CM))],
)
def test_the_neck_lets_the_head_through(
    size: str, edition: str, head: float, out: float, drops: tuple[float, float]
) -> None:
    # Two half ovals, 5 wide and 4 and 2 deep, by the elliptic integral: 7.09 and 5.75, twice.
    def quarter(deep: float) -> float:
        return float(quad(lambda t: sqrt((out * cos(t)) ** 2 + (deep * sin(t)) ** 2), 0, pi / 2)[0])

    round_it = 2 * sum(quarter(deep) for deep in drops)
    worked = smock(size, edition)
    assert float(worked.measures["over the head"]) == pytest.approx(round_it, abs=0.15)
    assert worked.measures["over the head"] >= head + 1


def test_tucks_that_end_in_the_neck_bring_no_layers_to_the_shoulder() -> None:
    # A French seam folds each allowance in two: two plies of front and two of back; at the sides the same.
    worked = smock("small", "inch")
    assert worked.thickest["front"].layers < 8
    text = next(step.text for step in worked.steps if step.title.startswith("Sew a French seam"))
    assert "Thick: up to" not in text


def test_bindings_of_neck_and_armholes_close_to_a_round() -> None:
    texts_of = [step.text for step in smock("small", "inch").steps if step.title.startswith("Bind")]
    assert len(texts_of) == 2
    assert all("When you come round" in text for text in texts_of)
    assert not any("Let both ends reach a little over" in text for text in texts_of)


def front_by_hand(unit: float, shoulders: float, half: float, underarm: float, hip: float) -> list[LineString]:
    """The cut lines of the right half, edge by edge, from the printed numbers [in], from the middle and the top."""
    inch = unit == 1
    out, deep, fall, through = (5, 4, 0.25, 6) if inch else (12.5 * CM, 10 * CM, 0.6 * CM, 15 * CM)
    seam, hem = (0.625, 1.25) if inch else (1.5 * CM, 3.1 * CM)
    neck = LineString([(out * sin(t), deep * cos(t)) for t in np.linspace(0, pi / 2, 4000)])
    shoulder = LineString([(out, 0), (shoulders / 2, fall)]).parallel_offset(seam, "right")
    spots = np.array([(shoulders / 2, fall), (shoulders / 2, through), (half, underarm)])
    chords = [round(hypot(*(after - before)) * 64) / 64 for before, after in pairwise(spots)]
    slopes = [(after - before) / chord for (before, after), chord in zip(pairwise(spots), chords, strict=True)]
    middle = (slopes[0] * chords[1] + slopes[1] * chords[0]) / sum(chords)
    at = [0, chords[0], sum(chords)]
    curve = CubicHermiteSpline(at, spots, [(0, 1), middle, (1, 0)])
    armhole = LineString(curve(np.linspace(0, at[-1], 6000)))
    side = LineString([(half + seam, underarm), (half + seam, hip + hem)])
    bottom = LineString([(half + seam, hip + hem), (0, hip + hem)])
    return [neck, shoulder, armhole, side, bottom]


@pytest.mark.parametrize(
    ("size", "edition", "numbers", "frame", "tiles"),
    [
        ("small", "inch", (1, 14, 10, 9, 28), (6.5, 9), (4, 4)),
        ("large", "metric", (CM, 41 * CM, 30.5 * CM, 28 * CM, 79 * CM), (16 * CM, 22 * CM), (4, 4)),
    ],
)
def test_an_outline_drawn_by_hand_lies_on_the_printed_line(
    size: str,
    edition: str,
    numbers: tuple[float, float, float, float, float],
    frame: tuple[float, float],
    tiles: tuple[int, int],
) -> None:
    by_hand = front_by_hand(*numbers)
    lines: list[list[tuple[float, float]]] = []
    pdf = render_paper_pattern(smock(size, edition), setting(), "Letter")
    assert "aper pattern: front" in texts(pdf)[0]
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        for number, page in enumerate(read.pages[1 : 1 + tiles[0] * tiles[1]]):
            (box,) = [one for one in page.rects if not one["fill"] and abs(one["width"] - frame[0] * POINTS) < 1]
            column, row = number % tiles[0], number // tiles[0]
            for line in (one for one in (*page.curves, *page.lines) if not one["fill"] and len(one["pts"]) > 1):
                inside = (LineString(line["pts"])).intersection(
                    shapely_box(box["x0"], box["top"], box["x1"], box["bottom"])
                )
                for part in getattr(inside, "geoms", [inside]):
                    if part.length:
                        lines.append(
                            [
                                (
                                    (x - box["x0"]) / POINTS + (column - tiles[0] / 2) * frame[0],
                                    (y - box["top"]) / POINTS + row * frame[1],
                                )
                                for x, y in part.coords
                            ]
                        )
    # The paper tells no zero from the top: both are laid on each other at the lower cut line, the longest level one.
    level = [line for line in lines if len(line) == 2 and abs(line[0][1] - line[1][1]) < 1e-3]
    lowest = max(line[0][1] for line in level if abs(line[0][0] - line[1][0]) > 1)
    moved = [[(x, y - lowest + by_hand[-1].coords[0][1]) for x, y in line] for line in lines]
    printed = unary_union([LineString(line) for line in moved])
    for edge in by_hand:
        # Corners, where two allowances meet, are left out: a little more than a seam allowance from either end.
        for at in np.arange(0.7, edge.length - 0.7, 0.1):
            assert printed.distance(edge.interpolate(at)) * POINTS < CLOSE, (edge.coords[0], at)
