"""Handouts of projects longer or stranger than those of the demo room: whatever there is, all of it is told."""

from __future__ import annotations

import re
from functools import cache

import pytest
from opened_pdf import figures_and_headings, page_count, pages_of, texts, whole_text
from room_setting import setting
from stranger_projects import STRANGERS, stranger

from generator.calculation.worked import TuckSet
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import style_of
from generator.drawing.turn_picture import heights_of_turns, sketch_turns
from generator.lengths import Edition, on_ruler
from generator.rendering.handout.pictures import HIGHEST, Drawer
from generator.rendering.handout.sheet import PICTURE_WIDTH, render_handout
from tests.room import demo_room

MM = 72 / 25.4
# Each in one edition: to set them takes seconds.
EACH = [(name, ("inch", "metric")[number % 2]) for number, name in enumerate(STRANGERS)]
EVERY = pytest.mark.parametrize(("name", "edition"), EACH)


@cache
def handout(name: str, edition: str, theme: str = "plain") -> bytes:
    return render_handout(stranger(name, edition), setting(theme), "Letter" if edition == "inch" else "A4")


def told_marks(tucks: TuckSet, edition: Edition) -> str:
    """What the table of marks should say: number and distance, and the depth where depths differ."""
    unequal = len(set(tucks.depths)) > 1
    rows = zip(tucks.marks, tucks.depths, strict=True)
    return " ".join(
        f"{number} {on_ruler(mark, edition)}" + (f" {on_ruler(depth, edition)} {edition.unit} deep" if unequal else "")
        for number, (mark, depth) in enumerate(rows, 1)
    )


def plain(text: str) -> str:
    return text.replace("\N{FRACTION SLASH}", "/")


@EVERY
def test_every_mark_is_told_once(name: str, edition: str) -> None:
    worksheet, told = stranger(name, edition), plain(whole_text(handout(name, edition)))
    sets = [tucks for panel in worksheet.panels.values() for tucks in (panel.across, panel.cross) if tucks is not None]
    assert sets
    for tucks in sets:
        wanted = told_marks(tucks, worksheet.edition)
        alike = sum(told_marks(other, worksheet.edition) == wanted for other in sets)
        assert told.count(wanted) == alike, wanted


@EVERY
def test_every_row_is_told_once(name: str, edition: str) -> None:
    worksheet, told = stranger(name, edition), plain(whole_text(handout(name, edition)))
    for panel in worksheet.panels.values():
        rows = panel.rows.rows if panel.rows else ()
        # In a table of their own the numbers follow each other; in the picture each stands behind its name.
        table = " ".join(f"{row.number} {on_ruler(row.ruled, worksheet.edition)}" for row in rows)
        built = r"row {} {}".format
        pictured = [
            re.search(built(row.number, re.escape(on_ruler(row.ruled, worksheet.edition)).replace("/", " ?/ ?")), told)
            for row in rows
        ]
        assert told.count(table) == 1 if len(rows) > 30 else all(pictured)
        assert not (len(rows) > 30 and any(pictured))


@EVERY
def test_every_turn_is_drawn_as_it_is_sewn(name: str, edition: str) -> None:
    worksheet = stranger(name, edition)
    for theme, width in (("plain", PICTURE_WIDTH), ("harbour", PICTURE_WIDTH), ("large-print", 178.0)):
        style = style_of(setting(theme).theme)
        for panel, worked in worksheet.panels.items():
            if worked.rows is None:
                continue
            wanted = {}
            for row in worked.rows.rows:
                letters = "".join({"toward": "T", "away": "A", "upright": "U"}[word] for word in row.words)
                wanted[row.start, letters] = letters[:1] if len(set(letters)) == 1 else letters
            found = heights_of_turns(worksheet, panel, style, width)
            canvas = sketch_turns(worked.rows, style, DrawnSize(width, found.least), "turns")
            drawn = "".join(label.words for label in canvas.labels if label.words in ("T", "A", "U"))
            assert drawn == "".join(wanted.values())
            assert {str(row.number) for row in worked.rows.rows} <= {label.words for label in canvas.labels}


@EVERY
def test_pictures_stand_in_their_acts_on_an_even_number_of_pages(name: str, edition: str) -> None:
    pdf = handout(name, edition)
    assert page_count(pdf) % 2 == 0
    told, heading = texts(pdf), (0, "")
    pictures = 0
    for kind, page, words in figures_and_headings(pdf):
        if kind == "H2":
            heading = (page, words)
        elif heading[0]:
            pictures += 1
            goes_on = "goes on" in told[page - 1] and page == heading[0] + 1
            # An act that no page holds is the only one that is parted between its pictures.
            parted = name == "a hundred and twenty by hand" and heading[0] < page <= heading[0] + 2
            assert page == heading[0] or goes_on or parted, (words, heading)
    assert pictures > 5


@EVERY
def test_no_letter_and_no_line_is_too_small_to_be_read(name: str, edition: str) -> None:
    for page in pages_of(handout(name, edition)):
        small = {letter["text"] for letter in page.chars if letter["upright"] and letter["size"] < 8.95}
        # Digits of built fractions are smaller.
        assert small <= set("0123456789\N{FRACTION SLASH}/")
        lines = [
            line["linewidth"]
            for line in (*page.lines, *page.curves, *page.rects)
            if line["stroke"] and not line["fill"]
        ]
        assert min(lines, default=1) > 0.3 * MM - 0.01


@EVERY
def test_no_length_is_finer_than_the_ruler_and_warnings_stand_on_page_one(name: str, edition: str) -> None:
    told = [plain(text) for text in texts(handout(name, edition))]
    assert re.findall(r"/(?:32|64)\b", " ".join(told)) == []
    worksheet = stranger(name, edition)
    warnings = [one for one in worksheet.cautions.values() if one.level == "warning"]
    assert warnings
    for warning in warnings:
        first = warning.text.split(".")[0].replace("*", "")
        assert first in told[0].replace("\N{RIGHT SINGLE QUOTATION MARK}", "'")
        assert not any(first in text for text in told[1:])


@pytest.mark.parametrize("theme", ["plain", "harbour", "large-print"])
def test_turns_and_rows_are_drawn_as_large_as_they_are_shown(theme: str) -> None:
    smaller = set()
    for name in STRANGERS:
        worksheet = stranger(name)
        drawer = Drawer(worksheet, style_of(setting(theme).theme))
        widths = (178.0,) if theme == "large-print" else (PICTURE_WIDTH, 178.0)
        for key in drawer.shown(*(figure for step in worksheet.steps for figure in step.figures)):
            if (
                key.startswith(("turns ", "ruled rows "))
                and min(drawer.heights(key, one).least for one in widths) >= HIGHEST
            ):
                smaller.add(name)
    # Eight rows of 120 letters do not stand on a page in larger letters: they are made smaller, and none is left out.
    longest = {"a hundred and twenty", "a hundred and twenty by hand"}
    assert smaller <= (set() if theme == "plain" else longest)


def test_the_cells_of_marks_end_level_whether_whole_or_with_a_fraction() -> None:
    # The awning's marks lie 1 1/4 in apart from 2 1/2 in on: every fourth is a whole number.
    worksheet = demo_room().worksheet("awning-cushion", "deck", "inch")
    marks = worksheet.panels["front"].across.marks
    assert {mark.denominator for mark in marks} == {1, 2, 4}
    pages = pages_of(render_handout(worksheet, setting(), "Letter"))
    [(page, [title])] = [(page, found) for page in pages if (found := page.search("Fold marks, in"))]
    cells = [rect for rect in page.rects if 45 < rect["width"] < 50 and 24 < rect["height"] < 40]
    ends = {round(cell["bottom"]) for cell in cells if cell["top"] > title["top"]}
    assert len(ends) == -(-len(marks) // 10)
