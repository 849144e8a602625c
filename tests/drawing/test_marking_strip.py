"""The marking strip is true: an inch of it is an inch of cloth, also in the PDF that is printed."""

import re
from fractions import Fraction
from itertools import pairwise

import pikepdf
import pytest
import weasyprint
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import joined, panel_of, piece_of, tuck_set_of, worksheet_of

from generator.calculation.worked import Panel
from generator.drawing.canvas import Canvas
from generator.drawing.marking_strip import (
    Tile,
    draw_marking_strip,
    plan_marking_strip,
    sketch_control,
    sketch_tile,
)
from generator.drawing.style import SMALLEST_TEXT, Style, read_style
from generator.lengths import INCH, METRIC, Edition

PLAIN = Style()
LARGE = read_style({"small": 12, "text": 14, "strong": 16})
# Between margins of 20 and 12 mm: A4 is 210 mm wide (ISO 216), Letter 11 in long.
ROOM = ((210 - 32) / 25.4, 10.0)


def tiles_of(panel: Panel, edition: Edition):
    return plan_marking_strip(panel.across, edition, panel.joins)


def test_the_tiles_cover_the_cut_cloth_from_edge_to_edge():
    # 27 1/4 in in stretches of 6 1/4 in: five. Fifths lie at 5.45, 10.9, 16.35 and 21.8 in, down to a quarter inch.
    tiles = tiles_of(panel_of(17), INCH)
    places = [Fraction(0), Fraction(21, 4), Fraction(43, 4), Fraction(65, 4), Fraction(87, 4), Fraction(109, 4)]
    assert [(tile.start, tile.end) for tile in tiles] == list(pairwise(places))
    assert tiles[0].marks == tuple((step + 1, Fraction(13, 8) + Fraction(3, 2) * step) for step in range(3))
    assert {(tile.number, tile.of) for tile in tiles} == {(number, 5) for number in range(1, 6)}


def test_metric_tiles_begin_at_half_centimetres():
    # 69.215 cm in stretches of 15 1/2 cm: five. Fifths at 13.843, 27.686, 41.529, 55.372, down to half a centimetre.
    tiles = tiles_of(panel_of(17), METRIC)
    starts = [tile.start * Fraction(254, 100) for tile in tiles]
    assert starts == [0, Fraction(27, 2), Fraction(55, 2), Fraction(83, 2), 55]


def test_a_mark_on_a_join_is_on_both_tiles():
    # Two tucks 7 3/4 in apart, first mark 1 5/8, cut 3 1/4 + 7 3/4 = 11 in: two tiles of 5 1/2; with three tucks
    # 3 7/8 in apart the cut is the same, and the second mark stands at 5 1/2, where the tiles meet.
    first, second = tiles_of(panel_of(3, spacing=Fraction(31, 8)), INCH)
    assert first.end == second.start == Fraction(11, 2)
    assert (2, Fraction(11, 2)) in first.marks
    assert (2, Fraction(11, 2)) in second.marks


def drawn_tiles(panel, edition, style):
    for tile in tiles_of(panel, edition):
        yield tile, sketch_tile(tile, "front, medium", edition, style, key=f"strip {tile.number}")


@pytest.mark.parametrize("style", [PLAIN, LARGE], ids=["plain", "large print"])
@pytest.mark.parametrize("edition", [INCH, METRIC], ids=["inch", "metric"])
@pytest.mark.parametrize("count", [1, 2, 7, 17, 40, 120, 200])
def test_every_tile_fits_on_letter_and_a4_and_no_words_cross(count, edition, style):
    for tile, canvas in drawn_tiles(panel_of(count), edition, style):
        assert canvas.crossings() == ()
        assert canvas.width <= ROOM[0]
        assert canvas.height <= ROOM[1]
        assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT
        numbers = {label.words for label in canvas.labels if label.bold}
        assert {str(tuck) for tuck, _ in tile.marks} <= numbers


@settings(max_examples=25, deadline=None)
@given(count=st.integers(1, 60), depth=st.integers(1, 30), room=st.integers(1, 40))
def test_no_words_cross_on_any_strip(count, depth, room):
    depth = Fraction(depth, 16)
    for _, canvas in drawn_tiles(panel_of(count, depth, 2 * depth + Fraction(room, 16)), INCH, PLAIN):
        assert canvas.crossings() == ()


@pytest.mark.parametrize("style", [PLAIN, LARGE], ids=["plain", "large print"])
def test_the_control_measure_has_six_inches_and_fifteen_centimetres(style):
    canvas = sketch_control(style, "control")
    [(start, end)] = [(start, end) for start, end in canvas.segments if start[1] == end[1]]
    assert end[0] - start[0] == pytest.approx(6)
    ticks = [(start[0], end[1] > start[1]) for start, end in canvas.segments if start[0] == end[0]]
    inches = sorted(x - start[0] for x, below in ticks if not below)
    assert inches == pytest.approx([half / 2 for half in range(13)])
    assert sorted(x - start[0] for x, below in ticks if below) == pytest.approx([cm / 2.54 for cm in range(16)])
    assert {label.words for label in canvas.labels} == {*"012345", "6 in", "10", "15 cm"}
    assert canvas.crossings() == ()
    assert canvas.width <= ROOM[0]


def lines_in_pdf(svg: str, width: float, height: float, tmp_path) -> list[tuple[float, float, float, float]]:
    """Every straight line of a PDF made from a picture, in points on the page, as its own transforms place it."""
    target = tmp_path / "strip.pdf"
    image = tmp_path / "strip.svg"
    image.write_text(svg, encoding="utf-8")
    weasyprint.HTML(
        string="<style>@page { size: 8.5in 11in; margin: 0.5in }</style>"
        f'<img src="{image.as_uri()}" style="width:{width}in;height:{height}in">'
    ).write_pdf(target)
    with pikepdf.open(target) as document:
        page = document.pages[0]
        return list(walked(page, page.Resources, pikepdf.Matrix()))


def walked(content, resources, matrix):
    saved, here = [], (0.0, 0.0)
    for operands, operator in pikepdf.parse_content_stream(content):
        name = str(operator)
        if name == "q":
            saved.append(matrix)
        elif name == "Q":
            matrix = saved.pop()
        elif name == "cm":
            matrix = pikepdf.Matrix(*(float(number) for number in operands)) @ matrix
        elif name == "Do":
            form = resources.XObject[str(operands[0])]
            if form.get("/Subtype") == "/Form":
                inner = pikepdf.Matrix(*(float(number) for number in form.get("/Matrix", (1, 0, 0, 1, 0, 0))))
                yield from walked(form, form.get("/Resources", resources), inner @ matrix)
        elif name in ("m", "l"):
            place = matrix.transform(tuple(float(number) for number in operands))
            if name == "l":
                yield (*here, *place)
            here = place


def test_six_inches_of_a_tile_are_432_points_in_the_pdf(tmp_path):
    tile = Tile(1, 2, Fraction(0), Fraction(13, 2), ((1, Fraction(1, 4)), (2, Fraction(25, 4))))
    canvas = sketch_tile(tile, "front", INCH, PLAIN, key="true size")
    picture = canvas.picture("", "")
    lines = lines_in_pdf(picture.svg, picture.width, picture.height, tmp_path)
    tall = sorted(
        {round(x, 4) for x, y, other, end in lines if abs(x - other) < 1e-6 and abs(abs(end - y) - 21.6) < 0.01}
    )
    assert len(tall) == 2, "two fold marks of 0.3 in"
    assert tall[1] - tall[0] == pytest.approx(432, abs=0.1)


def test_the_control_measure_is_true_in_the_pdf(tmp_path):
    picture = sketch_control(PLAIN, "control").picture("", "")
    lines = lines_in_pdf(picture.svg, picture.width, picture.height, tmp_path)
    level = [abs(other - x) for x, y, other, end in lines if abs(y - end) < 1e-6]
    assert level == pytest.approx([6 * 72], abs=0.1)
    last = max(x for x, y, other, end in lines if abs(x - other) < 1e-6 and end < y)
    first = min(x for x, y, other, end in lines if abs(x - other) < 1e-6)
    assert last - first in (pytest.approx(6 * 72, abs=0.1), pytest.approx(15 / 2.54 * 72, abs=0.1))


def test_every_tile_says_what_it_is_of_and_how_long_all_are_when_they_are_joined():
    worksheet = worksheet_of(piece_of(panel_of(17)))
    pictures = draw_marking_strip(worksheet, "front", PLAIN, "Edition mark 2031-04")
    for number, picture in enumerate(pictures[1:], 1):
        words = " ".join(re.findall(r"<text[^>]*>([^<]*)</text>", picture.svg))
        for told in (f"Strip {number} of 5, joined: 27", worksheet.title, worksheet.size_label, "front"):
            assert told in words
        for told in (f"{worksheet.edition.name} edition, in inches", "Edition mark 2031-04"):
            assert told in words
    assert "Joined, the strip is 27 1/4 in from cut edge to cut edge" in pictures[-1].caption


def test_the_pictures_are_the_control_measure_and_then_every_tile():
    pictures = draw_marking_strip(worksheet_of(piece_of(panel_of(17))), "front", PLAIN)
    assert [picture.key for picture in pictures] == [
        "marking strip front control",
        *(f"marking strip front {number}" for number in range(1, 6)),
    ]
    assert pictures[1].alt == "Strip 1 of 5 at true size, with fold marks 1 at 1 5/8, 2 at 3 1/8, 3 at 4 5/8."
    assert pictures[1].caption.startswith("Lay line 1 of the next strip on line 1 of this one")


def test_a_tile_holds_only_its_own_marks():
    first, second = (
        {label.words for label in canvas.labels}
        for canvas in [canvas for _, canvas in drawn_tiles(panel_of(17), INCH, PLAIN)][:2]
    )
    assert "1 5/8" in first
    assert "1 5/8" not in second
    assert "6 1/8" in second


def test_a_join_between_breadths_is_marked_on_its_tile():
    def triangles(canvas: Canvas) -> int:
        return sum(len(outline) == 3 for layer in canvas._layers if layer.fill for outline in layer.outlines)

    tiles = tiles_of(joined(panel_of(17), 9), INCH)
    canvases = [sketch_tile(tile, "front", INCH, PLAIN, key="strip") for tile in tiles]
    # The join lies at 13 1/4 in: on the third tile, from 10 3/4 to 16 1/4 in.
    assert [triangles(canvas) for canvas in canvases] == [0, 0, 1, 0, 0]
    assert all(canvas.crossings() == () for canvas in canvases)


def test_a_plain_panel_has_no_strip():
    assert draw_marking_strip(worksheet_of(piece_of(Panel(tuck_set_of(0)))), "front", PLAIN) == ()


def test_the_same_strip_gives_the_same_bytes():
    worksheet = worksheet_of(piece_of(panel_of(7)))
    pictures = draw_marking_strip(worksheet, "front", PLAIN)
    assert pictures == draw_marking_strip(worksheet, "front", PLAIN)
    assert not any(re.search(r'font-size="[0-5](\.\d+)?px"', picture.svg) for picture in pictures)
