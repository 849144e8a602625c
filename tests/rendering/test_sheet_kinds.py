from __future__ import annotations

from functools import cache

import pytest
from mooring_room import two_mornings, worksheets
from opened_pdf import fonts_inside, opened, page_count, tags, told_figures, words_outside
from room_setting import setting
from shapes_room import shapes

from generator.rendering.sheet_kinds import SHEETS, SheetOrder, class_orders, project_orders, room_orders, size_orders

PAPERS = {"Letter": (612.0, 792.0), "A4": (595.28, 841.89)}
"""US Letter is 8 1/2 by 11 in of 72 pt; A4 (ISO 216) is 210 by 297 mm."""


# What is printed at true size takes as many pages as it is long, and stands nearer to the edges of its paper.
TRUE_SIZE = ("marking strip", "paper pattern")


def every_order() -> list[SheetOrder]:
    sizes = [order for worksheet in worksheets() for order in size_orders(worksheet)]
    return [
        *room_orders({"mooring": worksheets()}),
        *project_orders(worksheets()),
        *sizes[:2],
        sizes[-1],
        *size_orders(shapes("inch"), ("paper pattern",)),
        *class_orders(two_mornings()),
    ]


ORDERS = every_order()
SHOWN = [(order, "Letter" if place % 2 else "A4") for place, order in enumerate(ORDERS)]
NAMES = [order.address(paper) for order, paper in SHOWN]
ONE_OF_EACH = [
    order for place, order in enumerate(ORDERS) if order.name not in {other.name for other in ORDERS[:place]}
]


@cache
def rendered(order: int, paper: str) -> bytes:
    return ORDERS[order].render(setting(), paper)


SHEETS_SHOWN = pytest.mark.parametrize(
    ("order", "paper"), [(place, paper) for place, (_, paper) in enumerate(SHOWN)], ids=NAMES
)


def test_every_kind_of_sheet_is_made() -> None:
    assert {order.name for order in ORDERS} == set(SHEETS)


def test_no_two_sheets_share_an_address() -> None:
    sizes = [order for worksheet in worksheets() for order in size_orders(worksheet)]
    orders = [*(order for order in ORDERS if order.kind.needs != "size"), *sizes]
    addresses = [order.address(paper) for order in orders for paper in PAPERS]
    assert len(set(addresses)) == len(addresses)


def test_addresses_say_what_the_sheet_is() -> None:
    assert ORDERS[0].address("Letter") == "sheets/wall-inch-letter.pdf"
    named = {order.address("A4") for order in ORDERS}
    assert "projects/mooring/mooring-teacher-metric-a4.pdf" in named
    assert "projects/mooring/mooring-care-a4.pdf" in named
    assert "projects/mooring/mooring-sign-up-a4.pdf" in named
    assert "projects/mooring/small/mooring-small-inch-a4-strip.pdf" in named
    assert "projects/mooring/small/mooring-small-inch-a4-rescue.pdf" in named
    assert "classes/two-mornings-class-a4.pdf" in named


@SHEETS_SHOWN
def test_a_sheet_has_the_size_of_its_paper(order: int, paper: str) -> None:
    for page in opened(rendered(order, paper)).pages:
        assert [float(edge) for edge in page.mediabox[2:]] == pytest.approx(PAPERS[paper], abs=0.05)


@SHEETS_SHOWN
def test_a_sheet_keeps_to_its_pages(order: int, paper: str) -> None:
    name = ORDERS[order].name
    if name not in ("class pack", *TRUE_SIZE):
        assert page_count(rendered(order, paper)) == (2 if name in ("teacher's copy", "buying table") else 1)


@SHEETS_SHOWN
def test_a_sheet_is_tagged_and_says_its_language_and_title(order: int, paper: str) -> None:
    pdf = opened(rendered(order, paper))
    assert bool(pdf.Root.MarkInfo.Marked)
    assert str(pdf.Root.Lang) == "en"
    assert bool(pdf.Root.ViewerPreferences.DisplayDocTitle)
    title = str(pdf.docinfo.Title)
    assert ("edition" in title) == (ORDERS[order].name not in ("sign up form", "care sheet"))
    wanted = {"/Figure"} if ORDERS[order].name in TRUE_SIZE else {"/Table", "/TR", "/TH"}
    assert {"/H1", *wanted} <= tags(rendered(order, paper))


@SHEETS_SHOWN
def test_the_fonts_of_a_sheet_are_inside_it(order: int, paper: str) -> None:
    found = fonts_inside(rendered(order, paper))
    assert found
    assert all(found)


@SHEETS_SHOWN
def test_no_word_of_a_sheet_lies_outside_its_margins(order: int, paper: str) -> None:
    if ORDERS[order].name not in TRUE_SIZE:
        assert words_outside(rendered(order, paper)) == []


@pytest.mark.parametrize("order", ONE_OF_EACH, ids=[order.name for order in ONE_OF_EACH])
def test_in_large_print_no_word_lies_outside_the_margins_either(order: SheetOrder) -> None:
    if order.name not in TRUE_SIZE:
        assert words_outside(order.render(setting("large-print"), "A4")) == []


@pytest.mark.parametrize("order", ONE_OF_EACH, ids=[order.name for order in ONE_OF_EACH])
def test_the_same_sheet_has_the_same_bytes(order: SheetOrder) -> None:
    place = ORDERS.index(order)
    assert order.render(setting(), SHOWN[place][1]) == rendered(place, SHOWN[place][1])


def test_the_pictures_of_a_sheet_are_told_in_words() -> None:
    place = [order.name for order in ORDERS].index("class pack")
    told = told_figures(rendered(place, SHOWN[place][1]))
    assert told
    assert all(alt.startswith("Cutting layout on firm cotton") for alt in told)


def test_what_is_printed_at_true_size_is_cut_out_of_its_paper() -> None:
    assert {name for name, kind in SHEETS.items() if kind.cut_out} == set(TRUE_SIZE)
