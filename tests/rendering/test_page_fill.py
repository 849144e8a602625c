from __future__ import annotations

import pytest
from weasyprint import HTML, Document

from generator.rendering.page_fill import FigurePlaces, better_places, units_of, wasted, white_left

# Paper of 4 by 12 in with margins of 1 in: 10 in of text a page. A line is half an inch high.
PAGE = "<style>@page{size:4in 12in;margin:1in}body{margin:0;font:24px/48px sans-serif}"
RULES = (
    "h3,p,figure{margin:0;font:inherit}h3{break-after:avoid}figure{break-inside:avoid}.new{break-before:page}</style>"
)
FIRST_PAGE = "<p>sheet</p>"


def figure(high: float) -> str:
    return f"<figure style='height:{high}in'></figure>"


def lines(number: int) -> str:
    return "<p>text</p>" * number


def step(number: int, *content: str) -> str:
    return f"<article id='step-{number}'{' class=new' if number == 1 else ''}><h3>Step</h3>{''.join(content)}</article>"


def set_on_pages(*steps: str) -> Document:
    return HTML(string=PAGE + RULES + FIRST_PAGE + "".join(steps)).render()


def test_the_white_at_the_foot_of_a_page_is_measured_against_its_text():
    # A heading and 7 lines of 1/2 in are 4 in; the figure of 7 in finds no room in the 6 in below them.
    document = set_on_pages(step(1, lines(7), figure(7)))
    assert white_left(document, first=1) == pytest.approx([0.95, 0.6])
    assert wasted(document) == pytest.approx(0.6**2)


def test_what_stands_on_a_page_is_told_with_its_step():
    units = [unit for unit in units_of(set_on_pages(step(1, lines(1), figure(2)))) if unit.page == 2]
    assert [(unit.part, unit.step) for unit in units] == [("head", 1), ("text", 1), ("figure", 1)]
    assert [unit.high for unit in units] == pytest.approx([0.5, 0.5, 2])


def test_a_figure_that_finds_no_room_below_its_text_goes_further_up():
    # Heading, 5 lines and the figure are 9 4/5 in, two lines go on; below its text the figure would leave 6 in white.
    places = better_places(set_on_pages(step(1, lines(7), figure(6.8))), [1.0])
    assert places == FigurePlaces(early={1: (1, 5)})


def test_a_figure_may_begin_the_page_on_which_its_text_goes_on():
    # Step 1 leaves 3 in for the heading and 5 lines of step 2; the figure of 9 1/2 in fills the next page.
    places = better_places(set_on_pages(step(1, lines(13)), step(2, lines(8), figure(9.5)), step(3, lines(4))), [1.0])
    assert places == FigurePlaces(early={2: (1, 5)})


def test_a_figure_is_drawn_smaller_where_that_is_enough():
    # Step 1 takes 6 in of 10, the next heading half an inch; 3 1/2 in are left for 3 3/5 in, of which 9/10 are 3.24.
    document = set_on_pages(step(1, lines(11)), step(2, figure(3.6)), step(3, lines(4)))
    assert better_places(document, [1.0, 0.9]) == FigurePlaces(smaller={2: 0.9})


def test_a_sheet_that_is_well_filled_stays_as_it_is():
    assert better_places(set_on_pages(step(1, lines(3), figure(7)), step(2, lines(3))), [1.0]) is None


def test_a_figure_that_would_not_fit_anywhere_better_stays():
    assert better_places(set_on_pages(step(1, lines(18)), step(2, lines(1), figure(9))), [1.0]) is None
