"""Pictures in a page are lighter than they were drawn, and show the same."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest

from generator.drawing.catalogue import draw_for_page, figure_keys, page_keys
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.publishing.make.sheets import drawn
from generator.rendering import page_svg
from generator.rendering.handout.pictures import Drawer
from generator.rendering.page_svg import inline_svg, light_path
from tests.room import demo_room

# A tenth of a point, of which half is cut or added; what lies on a straight way may be left out besides.
FINE = 0.08


def places(path: str) -> list[list[tuple[float, float]]]:
    """The outlines that a path draws, by what the standard says of its letters (SVG 2, 9.3: capitals are places)."""
    outlines: list[list[tuple[float, float]]] = []
    at = (0.0, 0.0)
    for letter, numbers in re.findall(r"([A-Za-z])([^A-Za-z]*)", path):
        found = [float(number) for number in re.findall(r"-?(?:\d+\.?\d*|\.\d+)", numbers)]
        pairs = list(zip(found[::2], found[1::2], strict=True)) if letter in "MLml" else []
        pairs += [(one, at[1] if letter == "H" else 0.0) for one in found if letter in "Hh"]
        pairs += [(at[0] if letter == "V" else 0.0, one) for one in found if letter in "Vv"]
        for number, (along, down) in enumerate(pairs):
            at = (along, down) if letter.isupper() else (at[0] + along, at[1] + down)
            if letter in "Mm" and number == 0:
                outlines.append([])
            outlines[-1].append(at)
        if letter in "Zz":
            at = outlines[-1][0]
            outlines[-1].append(at)
    return outlines


def distance(point: tuple[float, float], outline: list[tuple[float, float]]) -> float:
    """How far a point lies from an outline of straight lines."""
    least = min(abs(complex(*point) - complex(*corner)) for corner in outline)
    for start, end in pairwise(outline):
        way, to = complex(*end) - complex(*start), complex(*point) - complex(*start)
        share = (to * way.conjugate()).real / abs(way) ** 2 if way else 0.0
        if 0 < share < 1:
            least = min(least, abs(to - share * way))
    return least


@pytest.mark.parametrize(
    ("drawn_path", "light"),
    [
        ("M1 2L1 9", "m1 2v7"),
        ("M0 0L4 4L8 8L8 4z", "m0 0l8 8v-4z"),
        # There and back on one line is not straight on.
        ("M0 0L9 0L3 0", "m0 0h9h-6"),
        ("M0.04 0L0.96 -0.5M5 5L5 5", "m0 0l1-.5m4 5.5h0"),
        # After a closed outline the next begins from where that one began.
        ("M1 1L2 1L2 2zM4 4L5 4", "m1 1h1v1zm3 3h1"),
        ("M0 0C1 1 2 2 3 3", "M0 0C1 1 2 2 3 3"),
    ],
)
def test_a_path_is_written_from_place_to_place(drawn_path: str, light: str) -> None:
    assert light_path(drawn_path) == light


def test_every_line_of_every_picture_stays_where_it_was_drawn() -> None:
    worksheet = demo_room().worksheets("quay-cushion")[0]
    pictures = drawn(Drawer(worksheet, Style()))
    assert set(pictures) == {key for key in page_keys(figure_keys(worksheet)) if not key.startswith("surface ")}
    compared = 0
    for key, (picture,) in pictures.items():
        as_drawn = draw_for_page(worksheet.wordless, key, Style())
        before, after = (re.findall(r' d="([^"]*)"', svg) for svg in (as_drawn.svg, inline_svg(picture, "")))
        assert len(before) == len(after)
        for told, light in zip(before, after, strict=True):
            for outline, lighter in zip(places(told), places(light), strict=True):
                assert max(distance(point, lighter) for point in outline) < FINE
                assert max(distance(point, outline) for point in lighter) < FINE
                compared += 1
    assert compared > 500


def test_a_picture_on_a_page_has_its_colours_by_name_alone() -> None:
    svg = (
        '<svg viewBox="0 0 9 9" xmlns="http://www.w3.org/2000/svg" version="1.1">\n'
        '  <path class="line-ink" d="M0 0L9 9" fill="none" stroke="#1c1c1c" stroke-width="1.2"/>\n'
        '  <path d="M0 0L9 9" fill="none" stroke="#123456"/>\n'
        '  <text class="fill-accent" font-size="9px" font-family="\'Fira Sans\'" text-anchor="start" fill="#0b4f8a"'
        ' x="1.239" y="2">1 in</text>\n</svg>\n'
    )
    found = inline_svg(page_svg.light(Picture("key", svg, 1.0, 1.0, "A line", "", "")), "")
    assert found == (
        '<svg viewBox="0 0 9 9" font-family="\'Fira Sans\'" role="img" aria-label="A line" width="96" height="96">'
        '<path class="line-ink" stroke-width="1.2" d="m0 0l9 9"/>'
        '<path fill="none" stroke="#123456" d="m0 0l9 9"/>'
        '<text class="fill-accent" font-size="9px" x="1.2" y="2">1 in</text></svg>\n'
    )
