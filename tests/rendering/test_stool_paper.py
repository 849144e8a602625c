"""The paper of the stool's top, beside a circle drawn by whoever knows nothing but the printed numbers.

They are: the finished circle and its seam (cut table and file), the frame of a tile, and how the tiles lie.
"""

from __future__ import annotations

import io
from math import hypot
from pathlib import Path

import pdfplumber
import pytest
from opened_pdf import texts
from room_setting import setting

from generator.rendering.paper_pattern import render_paper_pattern
from tests.room import opened_room

ROOT = Path(__file__).resolve().parents[2]
POINTS, CLOSE = 72, 0.1
INCH = 1 / 2.54


@pytest.mark.parametrize(
    ("size", "edition", "across", "seam", "frame", "tiles"),
    [
        ("middle", "inch", 14, 0.625, (6.5, 9), (3, 2)),
        ("large", "metric", 40 * INCH, 1.5 * INCH, (16 * INCH, 22 * INCH), (3, 2)),
    ],
)
def test_a_circle_drawn_by_hand_lies_on_the_printed_line(
    size: str, edition: str, across: float, seam: float, frame: tuple[float, float], tiles: tuple[int, int]
) -> None:
    sheet = next(
        one
        for one in opened_room(ROOT).worksheets("capstan-stool")
        if (one.size, one.edition.name) == (size, edition)
    )  # fmt: skip
    pdf = render_paper_pattern(sheet, setting(), "Letter")
    told = texts(pdf)
    assert "aper pattern: top" in told[0]
    wide, high = (number * side for number, side in zip(tiles, frame, strict=True))
    radius = across / 2 + seam
    seen = 0
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        for number, page in enumerate(read.pages[1 : 1 + tiles[0] * tiles[1]]):
            (box,) = [one for one in page.rects if not one["fill"] and abs(one["width"] - frame[0] * POINTS) < 1]
            column, row = number % tiles[0], number // tiles[0]
            middle = (
                box["x0"] + (wide / 2 - column * frame[0]) * POINTS,
                box["top"] + (high / 2 - row * frame[1]) * POINTS,
            )
            for line in (one for one in page.curves if not one["fill"] and len(one["pts"]) > 3):
                spots = [
                    (x, y)
                    for x, y in line["pts"]
                    if box["x0"] <= x <= box["x1"] and box["top"] <= y <= box["bottom"]
                ]  # fmt: skip
                away = [hypot(x - middle[0], y - middle[1]) / POINTS for x, y in spots]
                if away and min(away) > across / 2 + seam / 2:
                    assert max(abs(one - radius) for one in away) * POINTS < CLOSE
                    seen += len(away)
    assert seen > 40
