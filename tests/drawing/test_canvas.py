"""What is drawn on a canvas comes out as slim SVG whose words stay words."""

import re
import xml.etree.ElementTree as ElementTree

import numpy as np
import pytest

from generator.drawing.canvas import Canvas
from generator.drawing.labels import text_width
from generator.drawing.style import Style

STYLE = Style()
SVG = "{http://www.w3.org/2000/svg}"


def drawn(key: str = "trial") -> Canvas:
    canvas = Canvas(4, 2, STYLE, key)
    canvas.rectangle((0.5, 0.5), (3.5, 1.5), fill=STYLE.cloth, pen=STYLE.cut)
    for step in range(20):
        canvas.line(((0.6 + step / 10, 0.5), (0.6 + step / 10, 1.5)), STYLE.fold)
    canvas.dots([(1, 1), (2, 1)], 0.05)
    canvas.arrow((1, 1.8), (3, 1.8), STYLE.measure, both=True)
    canvas.image(np.zeros((4, 8, 3), dtype=np.uint8), (3, 0), (3.4, 0.2))
    with canvas.clipped(((2, 1), (3, 1), (3, 1.4))):
        canvas.area(((2, 1), (3, 1), (3, 1.4), (2, 1.4)), STYLE.shade)
    canvas.text("1 3/8 & <more>", 1, 0.25)
    canvas.text("upwards", 0.2, 1, turned=True, bold=True)
    return canvas


def paths(canvas: Canvas) -> list[ElementTree.Element]:
    return ElementTree.fromstring(canvas.picture("", "").svg).findall(f".//{SVG}path")  # noqa: S314


def test_the_picture_has_the_size_of_the_canvas_in_points():
    picture = drawn().picture("alt", "caption", "more")
    root = ElementTree.fromstring(picture.svg)  # noqa: S314
    assert (root.get("width"), root.get("height"), root.get("viewBox")) == ("288pt", "144pt", "0 0 288 144")
    assert (picture.width, picture.height, picture.key) == (4, 2, "trial")
    assert (picture.alt, picture.caption, picture.text) == ("alt", "caption", "more")


def test_words_stay_words():
    root = ElementTree.fromstring(drawn().picture("", "").svg)  # noqa: S314
    assert [text.text for text in root.iter(f"{SVG}text")] == ["1", "3", "⁄", "8", "\u00a0&\u00a0<more>", "upwards"]


def test_a_word_stands_with_its_capitals_around_its_place():
    root = ElementTree.fromstring(drawn().picture("", "").svg)  # noqa: S314
    first, *_, turned = root.iter(f"{SVG}text")
    # Half of a capital of Fira Sans, 0.689 em, below the middle: 18 pt + 0.3445 x 9 pt.
    half = text_width("1 3/8 & <more>", 9) / 2 * 72
    assert (float(first.get("x", "")), float(first.get("y", ""))) == pytest.approx((72 - half, 18 + 3.1), abs=2e-3)
    assert turned.get("text-anchor") == "middle"
    assert turned.get("transform", "").startswith("rotate(-90 ")
    assert turned.get("font-weight") == "700"


def test_y_runs_downwards_in_inches():
    canvas = Canvas(4, 2, STYLE, "one line")
    canvas.line(((1, 0.5), (3, 1.5)), STYLE.cut)
    assert [path.get("d") for path in paths(canvas)] == ["M72 36L216 108"]
    assert [path.get("class") for path in paths(canvas)] == ["line-ink"]


def test_all_lines_of_one_pen_are_one_path():
    canvas = Canvas(4, 2, STYLE, "many lines")
    for step in range(50):
        canvas.line(((step / 20, 0), (step / 20, 1)), STYLE.fold)
        canvas.line(((step / 20, 1), (step / 20, 2)), STYLE.tack)
    assert [path.get("d", "").count("M") for path in paths(canvas)] == [50, 50]


def test_an_area_hides_what_was_drawn_before_it():
    canvas = Canvas(4, 2, STYLE, "cover")
    canvas.line(((0, 1), (4, 1)), STYLE.cut)
    canvas.rectangle((1, 0), (2, 2), fill=STYLE.cloth)
    canvas.line(((0, 0.5), (4, 0.5)), STYLE.cut)
    assert [path.get("fill") for path in paths(canvas)] == ["none", STYLE.cloth, "none"]


def test_a_dashed_line_has_its_dashes_in_points():
    canvas = Canvas(4, 2, STYLE, "dashes")
    canvas.line(((0, 1), (4, 1)), STYLE.tack)
    assert paths(canvas)[0].get("stroke-dasharray") == "8,2,1.5,2"


def test_the_same_drawing_gives_the_same_bytes():
    assert drawn().picture("", "").svg == drawn().picture("", "").svg


def test_two_pictures_share_no_id():
    found = [re.findall(r'\sid="([^"]+)"', drawn(key).picture("", "").svg) for key in ("front", "back")]
    assert len(found[0]) == len(found[1]) == len(set(found[0] + found[1])) / 2 > 0


def test_the_svg_carries_no_style_sheet_no_groups_and_no_date():
    svg = drawn().picture("", "").svg
    assert not re.search(r"<style|style=|<g[ >]|<metadata|<\?xml|<!DOCTYPE|<!--|Date|[Mm]atplotlib", svg)


def test_only_pixels_need_the_link_name_space():
    canvas = Canvas(1, 1, STYLE, "plain")
    canvas.line(((0, 0), (1, 1)), STYLE.cut)
    assert "xlink" not in canvas.picture("", "").svg
    assert 'xlink:href="data:image/png;base64' in drawn().picture("", "").svg


def test_pixels_keep_their_corners_and_their_upright():
    svg = drawn().picture("", "").svg
    # From (3, 0) to (3.4, 0.2) in: 28.8 by 14.4 pt for 8 by 4 pixels, so 3.6 pt a pixel, from (216, 0).
    assert re.search(r'transform="matrix\(3\.6 0 0 3\.6 216 0\)"', svg)


def test_a_label_over_a_line_or_off_the_paper_is_found():
    canvas = Canvas(2, 1, STYLE, "faults")
    canvas.line(((0, 0.5), (2, 0.5)), STYLE.cut)
    canvas.text("on a line", 1, 0.5)
    canvas.text("off", 0, 0.2)
    assert canvas.crossings() == ("'off' leaves the paper", "a line runs through 'on a line'")


def test_a_label_on_a_dot_is_found():
    canvas = Canvas(2, 1, STYLE, "dot")
    canvas.dots([(1, 0.5)], 0.1)
    canvas.text("on a dot", 1, 0.5)
    assert "a line runs through 'on a dot'" in canvas.crossings()
