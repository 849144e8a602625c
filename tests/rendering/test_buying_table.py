from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from functools import cache

import pytest
from mooring_room import worksheets
from opened_pdf import page_count, whole_text, words_outside
from room_setting import setting

from generator.calculation.worked_project import Worksheet
from generator.errors import CalculationError
from generator.rendering.buying_table import render_buying_table


def projects(number: int, edition: str = "inch") -> Mapping[str, Sequence[Worksheet]]:
    return {
        f"cushion-{place}": [replace(sheet, title=f"Cushion {place:02d}") for sheet in worksheets(edition)]
        for place in range(1, number + 1)
    }


@cache
def table(number: int, theme: str = "plain", paper: str = "Letter", edition: str = "inch") -> bytes:
    return render_buying_table(projects(number, edition), setting(theme), paper)


def test_a_block_has_the_cloths_the_notions_and_the_other_pieces_of_each_size() -> None:
    text = whole_text(table(1))
    sizes = worksheets("inch")
    assert "Stool" in text
    assert "Chair" in text
    assert "Bench" in text
    assert "44 in wide" in text
    assert " ".join(sheet.cloths["face"].buy_text for sheet in sizes) in text
    # Pads of 12, 16 and 20 in stand in one row.
    assert "Pad, … in each way 1 of 12 1 of 16 1 of 20" in text


@pytest.mark.parametrize(("theme", "paper"), [("plain", "Letter"), ("large-print", "A4"), ("harbour", "Letter")])
@pytest.mark.parametrize("number", [1, 9])
def test_the_pages_are_even_and_nothing_spills(number: int, theme: str, paper: str) -> None:
    one = table(number, theme, paper)
    assert page_count(one) % 2 == 0
    assert words_outside(one) == []
    assert whole_text(one).count("how many of a size") >= number


def test_a_project_of_many_sizes_goes_on_in_a_further_block() -> None:
    sizes = [replace(sheet, size_label=f"size {number}") for number in range(1, 5) for sheet in worksheets("inch")[:2]]
    text = whole_text(render_buying_table({"many": sizes}, setting(), "Letter"))
    assert "further sizes" in text
    assert all(f"Size {number}" in text for number in range(1, 5))


def test_inches_and_centimetres_are_never_mixed() -> None:
    with pytest.raises(CalculationError, match="a sheet speaks one edition"):
        render_buying_table({"mooring": worksheets()}, setting(), "A4")
