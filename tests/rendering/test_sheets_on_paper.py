"""Every kind of sheet beside the handout on paper: its letters, its lines, its margins, and on how many pages it is."""

from __future__ import annotations

import io
from functools import cache
from itertools import pairwise
from pathlib import Path

import pdfplumber
import pytest
from opened_pdf import page_count
from room_setting import setting

from generator.definitions.vocabulary import SHEETS_BESIDE, SHEETS_OF_PROJECT, SHEETS_OF_SIZE
from generator.rendering.sheet_kinds import SheetOrder, project_orders, room_orders, size_orders
from tests.room import opened_room

ROOT = Path(__file__).resolve().parents[2]
MM = 72 / 25.4
# A built fraction begins a little before its place [pt].
HAIR = 2.5
THEMES = ("plain", "harbour", "large-print")
# Two panels, pieces that wait, three cloths; and one of the smallest.
PROJECTS = {"customs-tote": "parcels", "quay-cushion": "small"}
# The paper pattern fills its paper, and has a test of its own.
EVERY = [(theme, kind) for theme in THEMES for kind in SHEETS_BESIDE if kind != "paper pattern"]


@cache
def orders(edition: str) -> tuple[SheetOrder, ...]:
    room = opened_room(ROOT)
    sizes = {name: [room.worksheet(name, size, edition) for size in room.project(name).sizes] for name in PROJECTS}
    found = list(room_orders(sizes, SHEETS_BESIDE))
    for name, worksheets in sizes.items():
        found += project_orders(worksheets, SHEETS_OF_PROJECT)
        [one] = [worksheet for worksheet in worksheets if worksheet.size == PROJECTS[name]]
        found += size_orders(one, SHEETS_OF_SIZE)
    return tuple(found)


@cache
def sheets(theme: str, kind: str) -> tuple[bytes, ...]:
    """The sheets of a kind, inches on Letter and centimetres on A4."""
    return tuple(
        order.render(setting(theme), paper)
        for edition, paper in (("inch", "Letter"), ("metric", "A4"))
        for order in orders(edition)
        if order.name == kind
    )


ALL_SHEETS = pytest.mark.parametrize(("theme", "kind"), EVERY, ids=[f"{theme} {kind}" for theme, kind in EVERY])


@ALL_SHEETS
def test_no_letter_is_too_small(theme: str, kind: str) -> None:
    least = 16 if theme == "large-print" else 9
    for pdf in sheets(theme, kind):
        with pdfplumber.open(io.BytesIO(pdf)) as read:
            # Digits of fractions are smaller in drawings; turned letters are measured across.
            small = [
                letter["text"]
                for page in read.pages
                for letter in page.chars
                if letter["upright"] and letter["size"] < least - 0.05 and letter["text"] not in "0123456789⁄"
            ]
        assert small == []


@ALL_SHEETS
def test_no_line_is_finer_than_a_third_of_a_millimetre(theme: str, kind: str) -> None:
    for pdf in sheets(theme, kind):
        with pdfplumber.open(io.BytesIO(pdf)) as read:
            widths = [
                line["linewidth"]
                for page in read.pages
                for line in (*page.lines, *page.curves, *page.rects)
                # A shape that is filled in its own colour is no line.
                if line["stroke"] and not line["fill"]
            ]
        assert [width for width in widths if width < 0.3 * MM - 0.01] == []


@ALL_SHEETS
def test_the_edge_with_the_punch_is_left_free(theme: str, kind: str) -> None:
    for pdf in sheets(theme, kind):
        with pdfplumber.open(io.BytesIO(pdf)) as read:
            for number, page in enumerate(read.pages, 1):
                inner, outer = (20, 12) if kind != "wall card" else (13, 13)
                left, right = (inner, outer) if number % 2 else (outer, inner)
                for word in page.extract_words():
                    assert word["x0"] >= left * MM - HAIR, (number, word["text"])
                    assert word["x1"] <= page.width - right * MM + HAIR, (number, word["text"])


@ALL_SHEETS
def test_what_stands_at_the_foot_of_a_page_does_not_run_into_each_other(theme: str, kind: str) -> None:
    for pdf in sheets(theme, kind):
        with pdfplumber.open(io.BytesIO(pdf)) as read:
            for page in read.pages:
                words = page.extract_words()
                last = max(word["bottom"] for word in words)
                ends = sorted((word["x0"], word["x1"]) for word in words if abs(word["bottom"] - last) < 1)
                assert len(ends) > 3
                assert all(left[1] <= right[0] + 0.5 for left, right in pairwise(ends))


@ALL_SHEETS
def test_leaves_are_printed_on_both_sides_but_those_that_are_cut(theme: str, kind: str) -> None:
    for pdf in sheets(theme, kind):
        assert page_count(pdf) == 1 or page_count(pdf) % 2 == 0 or kind in ("marking strip", "wall card")
