from __future__ import annotations

import io
import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pdfplumber
import pytest
from mooring_room import worksheets
from opened_pdf import letter_sizes, page_count, texts, whole_text, words_outside
from room_setting import setting

from generator.calculation.worked_project import Worksheet
from generator.errors import CalculationError
from generator.rendering.wall_card import render_wall_card

KINDS = ("bag", "cushion", "runner")


def projects(number: int, edition: str = "inch", *, kinds: bool = False) -> Mapping[str, Sequence[Worksheet]]:
    """So many projects, alike but for their titles: Cushion 01, Cushion 02 ..., if asked for of three kinds in turn."""
    return {
        f"cushion-{place}": [
            replace(sheet, title=f"Cushion {place:02d}", kind=KINDS[place % 3] if kinds else sheet.kind)
            for sheet in worksheets(edition)
        ]
        for place in range(1, number + 1)
    }


@cache
def card(
    number: int, theme: str = "plain", paper: str = "Letter", edition: str = "inch", *, kinds: bool = False
) -> bytes:
    return render_wall_card(projects(number, edition, kinds=kinds), setting(theme), paper)


def test_with_room_enough_everything_is_there() -> None:
    text = whole_text(card(1))
    # F 12, depth 3/8, pitch 3/4, 14 tucks: L = 12 + 14 x 3/4 + 2 x 1/2 = 23 1/2; the along is cut longer for draw-in.
    assert "Stool 23 1/2 × 13 3/4 14 × 3/8 7/8" in text
    assert "face 44 wide" in text
    assert "3/8 hides 3/4" in text
    assert "Buy, yd" in text
    assert "inch edition" in text


def test_the_metric_card_speaks_of_centimetres_and_metres() -> None:
    text = whole_text(card(1, edition="metric"))
    # F 30, depth 1, pitch 2, 13 tucks: L = 30 + 13 x 2 + 2 x 1.5 = 59.
    assert "Stool 59 ×" in text
    assert "13 × 1 " in text
    assert "Lengths in centimetres, cloth in metres" in text
    assert "inch" not in text


def test_a_tuck_that_is_shallower_by_one_step_lets_out_two() -> None:
    # The finest mark of the room's rulers is 1/16 in and 1 mm; a tuck hides twice its depth.
    assert "one of the next tucks 1/16 in shallower for each 1/8 in" in whole_text(card(1))
    assert "one of the next tucks 1 mm shallower for each 2 mm" in whole_text(card(1, edition="metric"))


@pytest.mark.parametrize(
    ("theme", "paper"),
    [("plain", "Letter"), ("large-print", "Letter"), ("harbour", "A4")],
)
def test_few_projects_are_one_page_and_nothing_spills(theme: str, paper: str) -> None:
    assert page_count(card(5, theme, paper)) == 1
    assert words_outside(card(5, theme, paper)) == []


@pytest.mark.parametrize("number", [1, 12, 17])
def test_the_letters_are_as_large_as_the_page_allows_and_never_too_small(number: int) -> None:
    one = card(number)
    assert page_count(one) == 1
    assert len(re.findall(r"Cushion \d\d", whole_text(one))) == number
    # The foot of a page and the heads of columns are smaller than the card's own letters, never below 8 pt.
    assert min(letter_sizes(one)) >= 6
    assert max(letter_sizes(one)) >= 20


@pytest.mark.parametrize("number", [1, 3, 4, 9, 17])
def test_no_column_runs_into_the_next(number: int) -> None:
    with pdfplumber.open(io.BytesIO(card(number))) as read:
        [page] = read.pages
        words = page.extract_words()
    tops = {round(word["top"]) for word in words if word["text"] == "Size"}
    assert len(tops) == 1
    rows: dict[int, list[tuple[float, float]]] = {}
    for word in words:
        rows.setdefault(round(word["bottom"]), []).append((word["x0"], word["x1"]))
    assert all(left[1] <= right[0] + 1 for row in rows.values() for left, right in pairwise(sorted(row)))


def test_what_is_left_out_is_told_and_everything_else_is_there() -> None:
    told = {number: whole_text(card(number)) for number in (12, 17, 22)}
    assert [("hides" in text, "Buy, yd" in text) for text in told.values()] == sorted(
        [("hides" in text, "Buy, yd" in text) for text in told.values()], reverse=True
    )
    for text in told.values():
        named = text.split("Not on this card:")[1]
        assert ("hides" in text) != ("what tucks hide" in named)
        assert ("Buy, yd" in text) != ("cloth to buy" in named)


def test_a_room_too_large_for_one_page_has_a_card_for_each_kind_and_no_project_is_lost() -> None:
    many = card(36, kinds=True)
    pages = texts(many)
    assert page_count(many) == len(pages) == 3
    for kind, page in zip(KINDS, pages, strict=True):
        assert f"{kind.capitalize()} inch edition" in page
        assert "Not on this card:" in page
        assert len(re.findall(r"Cushion \d\d", page)) == 12
    assert {int(found) for page in pages for found in re.findall(r"Cushion (\d\d)", page)} == set(range(1, 37))


def test_a_kind_too_large_for_one_page_is_shared_out_over_several() -> None:
    pages = texts(card(40))
    assert len(pages) > 1
    named = [int(found) for page in pages for found in re.findall(r"Cushion (\d\d)", page)]
    assert named == list(range(1, 41))


def test_inches_and_centimetres_are_never_mixed_on_one_card() -> None:
    with pytest.raises(
        CalculationError, match="a sheet speaks one edition; worksheets of inch and metric came together"
    ):
        render_wall_card({"mooring": worksheets()}, setting(), "A4")
