"""What is cut to an outline is drawn with it: the finished thing, the surface of its panel."""

from __future__ import annotations

from fractions import Fraction
from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory

import pytest
from shapely.geometry import Point, Polygon

from generator.calculation.laid import PlacedItem
from generator.calculation.worked_project import Worksheet
from generator.drawing.layout import sketch_layout
from generator.drawing.layout_shapes import cut_line_on, shapes_cut
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


BIB = """\
title: Bib
kind: other
summary: |
  A bib.
sizes:
  one:
    wide: 10 in or 25 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: rectangle
    outline: half circle
    finished across: wide
    edges: raw
  back:
    kind: rectangle
    finished across: wide
    finished along: wide
    edges: raw
steps:
  - use: cut
  - title: Baste them
    does: baste front on back
    on: front
    minutes: 2
    text: Baste.
"""


def test_the_layout_shows_a_shape_in_its_rectangle() -> None:
    with TemporaryDirectory() as folder:
        files = {"site/site.yaml": "room:\n  name: Net loft\n", "projects/bib.yaml": BIB}
        worksheet = opened_room(write_room(Path(folder), files)).worksheet("bib", "one", "inch")
    (canvas,) = sketch_layout(
        worksheet.cloths["face"], worksheet.edition, Style(), key="x", shapes=shapes_cut(worksheet)
    )
    drawn = [line for one in canvas._layers if one.pen == Style().trim for line in one.outlines if len(line) > 20]
    assert len(drawn) == 1
    shape = Polygon(drawn[0])
    (left, top, right, bottom) = shape.bounds
    # As wide as twice its height, and as large as half a circle is.
    assert right - left == pytest.approx(2 * (bottom - top), rel=0.01)
    assert shape.area == pytest.approx(3.14159 / 8 * (right - left) ** 2, rel=0.01)
    assert canvas.crossings() == ()


def test_a_turned_shape_lies_turned_in_its_rectangle() -> None:
    # A flag 6 across and 4 along, its point at the right: turned clockwise it points down, 4 across and 6 along.
    flag = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (6, 2), (0, 4))]
    nothing = Fraction(0)
    lies = PlacedItem("flag", "flag", 1, nothing, nothing, Fraction(4), Fraction(6), turned=True)
    assert cut_line_on(lies, flag, (1.0, 1.0), 0.5) == [(3.0, 1.0), (2.0, 4.0), (1.0, 1.0)]
