"""What is cut to an outline is drawn with it: the finished thing, the surface of its panel."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from shapely.geometry import Point, Polygon

from generator.calculation.worked_project import Worksheet
from generator.drawing.style import Style
from generator.drawing.surface import sketch_surface
from generator.drawing.things.forms import form_of
from generator.drawing.things.shapes import piece_shape
from tests.room import opened_room, write_room

MAT = """\
title: Hatch mat
kind: mats
summary: |
  A mat.
sizes:
  one:
    wide: 14 in or 35 cm
cloths:
  face:
    label: cotton
    width: 54 in or 137 cm
pieces:
  top:
    kind: tucked panel
    outline: half circle
    finished across: wide
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 2 in or 5 cm
      margin: 1/2 in to 2 in or 1.5 cm to 5 cm
    edges: bound 1/4 in or 6 mm
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks, cut to shape
    on: top
"""


@cache
def mat() -> Worksheet:
    with TemporaryDirectory() as folder:
        files = {"site/site.yaml": "room:\n  name: Net loft\n", "projects/mat.yaml": MAT}
        return opened_room(write_room(Path(folder), files)).worksheet("mat", "one", "inch")


def half_circle(radius: float) -> Polygon:
    whole = Point(radius, radius).buffer(radius, quad_segs=256)
    return whole.intersection(Polygon([(0, 0), (2 * radius, 0), (2 * radius, radius), (0, radius)]))


def test_the_finished_thing_has_the_outline_of_its_piece() -> None:
    worksheet = mat()
    (lying,) = worksheet.laid_out.seen
    drawn = Polygon(piece_shape(worksheet, lying, form_of(worksheet)).covers)
    assert drawn.symmetric_difference(half_circle(7)).area < 0.05
    assert form_of(worksheet).name == "flat"


def test_the_surface_of_a_panel_is_covered_outside_its_outline() -> None:
    canvas = sketch_surface(mat(), "top", Style())
    (covered,) = [
        Polygon(one.outlines[0]).buffer(0) for one in canvas._layers if one.fill == Style().paper and one.outlines
    ]
    (image,) = canvas._images
    (left, top), (right, bottom) = image.corner, image.opposite
    scale = (right - left) / 14
    inside, outside = ((left + x * scale, top + y * scale) for x, y in ((7, 3.5), (1, 1)))
    assert not covered.contains(Point(inside))
    assert covered.contains(Point(outside))
    seen = Polygon([(left, top), (right, top), (right, bottom), (left, bottom)]).difference(covered)
    assert seen.area / scale**2 == pytest.approx(half_circle(7).area, abs=0.1)
