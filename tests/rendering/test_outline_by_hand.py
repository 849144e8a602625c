"""The skiff's lining drawn again from the numbers of its project, and laid on its printed half paper."""

from __future__ import annotations

import io
from itertools import pairwise
from math import dist, hypot

import pdfplumber
import pytest
from room_setting import setting
from shapely.geometry import LineString, Point, Polygon

from generator.rendering.paper_pattern import render_paper_pattern
from tests.room import demo_room

Place = tuple[float, float]
# Length, width and seam, as they stand in the project [in].
NUMBERS = {("cup", "inch"): (12.0, 8.0, 3 / 8), ("tea", "metric"): (40 / 2.54, 25 / 2.54, 1 / 2.54)}
FRAME = {"inch": (6.5, 9.0), "metric": (16 / 2.54, 22 / 2.54)}


def curve(spots: list[Place], first: Place | None, last: Place | None, parts: int = 4000) -> list[Place]:
    """A curve through points: at each the slope of the parabola through its neighbours, an end told or without bend."""
    chords = [dist(one, other) for one, other in pairwise(spots)]
    slopes = [((b[0] - a[0]) / h, (b[1] - a[1]) / h) for (a, b), h in zip(pairwise(spots), chords, strict=True)]
    ways = [
        tuple((s[k] * h2 + t[k] * h1) / (h1 + h2) for k in (0, 1))
        for (s, t), (h1, h2) in zip(pairwise(slopes), pairwise(chords), strict=True)
    ]
    begin = first or tuple((3 * slopes[0][k] - ways[0][k]) / 2 for k in (0, 1))
    end = last or tuple((3 * slopes[-1][k] - ways[-1][k]) / 2 for k in (0, 1))
    found: list[Place] = []
    tangents = [begin, *ways, end]
    for k, ((a, b), h) in enumerate(zip(pairwise(spots), chords, strict=True)):
        for step in range(parts + 1):
            t = step / parts
            # Hermite's cubic with the tangents times the chord.
            weights = (2 * t**3 - 3 * t**2 + 1, t**3 - 2 * t**2 + t, -2 * t**3 + 3 * t**2, t**3 - t**2)
            found.append(
                tuple(  # type: ignore[arg-type]
                    weights[0] * a[i]
                    + weights[1] * h * tangents[k][i]
                    + weights[2] * b[i]
                    + weights[3] * h * tangents[k + 1][i]
                    for i in (0, 1)
                )
            )
    return found


def skiff(long: float, wide: float) -> Polygon:
    """Half of the seam line and its mirror image, as the words of the project tell it."""
    side = curve([(wide / 3, 0), (wide / 2, long * 2 / 5), (0, long)], None, (-1, 0))
    right = [(0.0, 0.0), (wide / 3, 0.0), *side]
    return Polygon([*right, *((-x, y) for x, y in reversed(right))])


@pytest.mark.parametrize(("size", "edition"), NUMBERS)
def test_the_printed_half_paper_is_the_outline_drawn_from_its_numbers(size: str, edition: str) -> None:
    long, wide, seam = NUMBERS[size, edition]
    seam_line = skiff(long, wide)
    cut = LineString(seam_line.buffer(seam, quad_segs=2000, join_style="mitre").exterior.coords)
    sheet = next(one for one in demo_room().worksheets("skiff-mat") if one.size == size and one.edition.name == edition)
    pdf = render_paper_pattern(sheet, setting(), "Letter")
    # The lining comes after the squares and the tiles of the mat; its first tile begins at the fold, its stern and bow
    # as far from the frame above and below.
    across, down = FRAME[edition]
    rows = -(-(long + 2 * seam) // down)
    top = (long - rows * down) / 2
    met = 0
    with pdfplumber.open(io.BytesIO(pdf)) as read:
        tiles = [page for page in read.pages if "lining, tile" in (page.extract_text() or "").lower()]
        assert len(tiles) == rows
        for row, page in enumerate(tiles):
            (frame,) = [one for one in page.rects if not one["fill"] and abs(one["width"] - across * 72) < 1]
            heavy = max(float(one["linewidth"]) for one in page.curves)
            for line in (one for one in page.curves if one["linewidth"] == heavy and not one["fill"]):
                for x, y in line["pts"]:
                    spot = (x - frame["x0"]) / 72, (y - frame["top"]) / 72 + top + row * down
                    if hypot(*spot) > 0 and spot[0] >= 0:
                        met += 1
                        assert cut.distance(Point(spot)) * 72 < 0.1, (row, spot)
    assert met > 20
