from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache

import pytest
from mooring_room import worksheets
from opened_pdf import page_count, whole_text, words_outside
from room_setting import setting

from generator.calculation.worked_project import Worksheet
from generator.errors import CalculationError
from generator.rendering.room_sheet import LEFT_OUT_FIRST, render_room_sheet, told_at_once

TOLD = {
    "finished sizes": "finished sizes",
    "tuck table": "the tuck table",
    "notions": "notions",
    "middle sizes": "sizes between the smallest and the largest",
}


def projects(number: int, edition: str = "inch") -> Mapping[str, Sequence[Worksheet]]:
    """So many projects, alike but for their titles: Cushion 01, Cushion 02 ..."""
    return {
        f"cushion-{place}": [replace(sheet, title=f"Cushion {place:02d}") for sheet in worksheets(edition)]
        for place in range(1, number + 1)
    }


@cache
def rendered(number: int, theme: str, paper: str, edition: str) -> bytes:
    return render_room_sheet(projects(number, edition), setting(theme), paper)


def wall(number: int, theme: str = "plain", paper: str = "Letter", edition: str = "inch") -> bytes:
    return rendered(number, theme, paper, edition)


@cache
def wall_text(number: int, theme: str = "plain") -> str:
    return whole_text(wall(number, theme))


@pytest.mark.parametrize(
    ("theme", "paper"),
    [("plain", "Letter"), ("plain", "A4"), ("large-print", "Letter"), ("large-print", "A4"), ("harbour", "Letter")],
)
@pytest.mark.parametrize("number", [1, 12, 60])
def test_the_wall_is_exactly_one_page(number: int, theme: str, paper: str) -> None:
    assert page_count(wall(number, theme, paper)) == 1
    assert words_outside(wall(number, theme, paper)) == []


def test_with_room_enough_everything_is_there() -> None:
    text = whole_text(wall(1))
    # F 12, depth 3/8, pitch 3/4, 14 tucks: L = 12 + 14 x 3/4 + 2 x 1/2 = 23 1/2; the along is cut longer for draw-in.
    assert "Stool 12 × 12 in 23 1/2 × 13 3/4 in face 7/8 yd" in text
    assert "1 Pad, 12 · 16 · 20 in each way; 1 Scissors; spools of thread: 1" in text
    # 3/8 in deep: 3/4 in a tuck, 3 3/4 in five, 7 1/2 in ten.
    assert "3/8 in 3/4 3 3/4 4 1/2 6 7 1/2" in text
    assert "Nothing is left out here." in text
    assert "inch edition" in text


def left_out(text: str) -> str:
    found = re.search(r"Left out for want of room: (.*?)\. The page of each size", text)
    return found[1] if found else ""


@pytest.mark.parametrize(
    ("number", "theme"), [(60, "plain"), (12, "large-print"), (60, "large-print"), (60, "harbour")]
)
def test_what_is_left_out_is_told_in_the_stated_order(number: int, theme: str) -> None:
    told = left_out(wall_text(number, theme))
    parts = [told.index(TOLD[part]) for part in LEFT_OUT_FIRST if TOLD[part] in told]
    assert parts
    assert parts == sorted(parts)
    assert [TOLD[part] in told for part in LEFT_OUT_FIRST] == sorted(
        [TOLD[part] in told for part in LEFT_OUT_FIRST], reverse=True
    )


@pytest.mark.parametrize(("number", "theme"), [(60, "plain"), (60, "large-print")])
def test_projects_that_have_no_room_are_counted_and_named(number: int, theme: str) -> None:
    text = wall_text(number, theme)
    shown = re.findall(r"Cushion (\d\d)(?!”)", text)
    lacking = re.search(r"(\d+) projects, from “Cushion (\d\d)” to the end of the alphabet", text)
    assert lacking is not None
    assert shown == [f"{place:02d}" for place in range(1, number - int(lacking[1]) + 1)]
    assert int(lacking[2]) == len(shown) + 1


def test_what_is_told_as_left_out_is_not_on_the_page_and_the_rest_is() -> None:
    text = wall_text(60)
    assert "Stool" in text
    assert "Bench" in text
    for gone in ("Chair", "Finished", "Pad", "Cloth that tucks hide"):
        assert gone not in text


def test_the_metric_wall_speaks_of_centimetres() -> None:
    text = whole_text(wall(1, edition="metric"))
    # F 30, depth 1, pitch 2, 13 tucks: L = 30 + 13 x 2 + 2 x 1.5 = 59.
    assert "Stool 30 × 30 cm 59 ×" in text
    assert "metric edition" in text
    assert " in " not in text.split("Cloth that tucks hide, cm")[1].split("Numbers")[0].replace("twice the depth", "")


def test_inches_and_centimetres_are_never_mixed_on_one_wall() -> None:
    with pytest.raises(
        CalculationError, match="a sheet speaks one edition; worksheets of inch and metric came together"
    ):
        render_room_sheet({"mooring": worksheets()}, setting(), "A4")


@pytest.mark.parametrize(
    ("texts", "told"),
    [
        (["1 pad, 13 1/2 in", "1 pad, 17 in", "1 pad, 21 1/4 in"], "1 pad, 13 1/2 · 17 · 21 1/4 in"),
        (["3 buttons, 7/8 in", "4 buttons, 7/8 in"], "3 · 4 buttons, 7/8 in"),
        (["1 zip, 30.5 cm"], "1 zip, 30.5 cm"),
        (["1 zip", "2 zips"], ""),
    ],
)
def test_texts_that_differ_in_numbers_alone_are_told_at_once(texts: list[str], told: str) -> None:
    assert told_at_once(texts) == told
