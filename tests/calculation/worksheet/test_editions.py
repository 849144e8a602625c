from __future__ import annotations

import copy
from typing import Any

import pytest

from generator.calculation.worksheet.edition_files import read_editions, write_editions
from generator.calculation.worksheet.edition_numbers import printed_numbers
from generator.calculation.worksheet.edition_standing import standing
from generator.calculation.worksheet.editions import (
    ChangedNumber,
    PublishedEdition,
    changed_numbers,
    published_edition,
    with_published,
)
from generator.errors import CalculationError

SHEET: dict[str, Any] = {
    "project": "neck-roll",
    "size": "bed",
    "edition": "inch",
    "unit": "in",
    "measures": {"girth": "20"},
    "numbers": {"buttons": "3"},
    "pieces": {
        "band": {
            "kind": "tucked panel",
            "cloth": "face",
            "quantity": 1,
            "cut": {"across": "27 1/4", "along": "15 1/2"},
            "finished": {"across": "13 1/2", "along": "14 1/2"},
            "tucks": {"count": 3, "depth": "3/8", "spacing": "1 1/2", "marks": ["1 5/8", "3 1/8", "4 5/8"]},
            "rows": {
                "plan": "ripples",
                "ruled": ["2", "5"],
                "start": ["left", "right"],
                "turns": ["toward toward toward", "toward toward toward"],
                "spoken": ["all 3 toward", "all 3 toward"],
            },
            "checkpoints": [{"after": 2, "from": "the cut edge", "to": "fold mark 3", "expect": "3 1/8"}],
        }
    },
    "closures": [{"kind": "buttons", "number": 2, "on": "band.left", "positions": ["2", "7"], "buttonhole": "1"}],
    "cloth": {"face": {"label": "crisp cotton", "width": "44", "length": "45", "buy": "1 3/8 yd"}},
    "thread": {"length": "62 yd", "spools": 1},
    "minutes": 205,
    "findings": [{"level": "warning", "piece": "band", "text": "Take care."}],
}


def edition(mark: str, *sheets: dict[str, Any], day: str = "2031-03-14") -> PublishedEdition:
    return published_edition("neck-roll", mark, day, sheets or (SHEET,))


def changed(**at: Any) -> tuple[ChangedNumber, ...]:
    """What a sheet shows whose values at some paths ('pieces/band/quantity') are others than in SHEET."""
    other = copy.deepcopy(SHEET)
    for path, value in at.items():
        *way, last = path.split("/")
        place = other
        for key in way:
            place = place[int(key)] if isinstance(place, list) else place[key]
        place[int(last) if isinstance(place, list) else last] = value
    return changed_numbers(edition("a"), edition("b", other))


def test_the_same_numbers_are_no_change() -> None:
    assert changed() == ()


def test_wording_and_times_are_no_change() -> None:
    words = {
        "cloth/face/label": "cotton",
        "findings": [],
        "minutes": 300,
        "pieces/band/rows/plan": "waves",
        "pieces/band/rows/spoken": ["toward", "toward"],
        "pieces/band/checkpoints/0/from": "the left edge",
        "pieces/band/kind": "panel",
    }
    assert changed(**words) == ()


@pytest.mark.parametrize(
    ("path", "value", "piece", "told"),
    [
        ("pieces/band/cut/across", "27 1/2", "band", ("cut across", "27 1/4", "27 1/2")),
        ("pieces/band/finished/along", "14", "band", ("finished along", "14 1/2", "14")),
        ("pieces/band/quantity", 2, "band", ("how many", "1", "2")),
        ("pieces/band/tucks/depth", "1/2", "band", ("depth", "3/8", "1/2")),
        ("pieces/band/tucks/marks/1", "3 1/4", "band", ("fold marks (number 2)", "3 1/8", "3 1/4")),
        ("pieces/band/tucks/marks", ["1 5/8", "3"], "band", ("fold marks", "1 5/8, 3 1/8, 4 5/8", "1 5/8, 3")),
        ("pieces/band/rows/ruled/0", "2 1/2", "band", ("rows ruled at (number 1)", "2", "2 1/2")),
        (
            "pieces/band/rows/turns/1",
            "away away away",
            "band",
            ("turns of row 2", "from the right: toward toward toward", "from the right: away away away"),
        ),
        ("pieces/band/checkpoints/0/expect", "3", "band", ("check after tuck 2", "3 1/8", "3")),
        ("pieces/band/checkpoints", [], "band", ("check after tuck 2", "3 1/8", "")),
        ("closures/0/positions/1", "8", "", ("buttons on band.left, places (number 2)", "7", "8")),
        ("cloth/face/buy", "1 1/2 yd", "", ("face, cloth to buy", "1 3/8 yd", "1 1/2 yd")),
        ("thread/spools", 2, "", ("spools of thread", "1", "2")),
        ("measures/girth", "21", "", ("girth", "20", "21")),
        ("numbers/buttons", "4", "", ("buttons", "3", "4")),
    ],
)
def test_a_number_that_reads_otherwise_is_told_with_its_place(
    path: str, value: Any, piece: str, told: tuple[str, str, str]
) -> None:
    assert changed(**{path: value}) == (ChangedNumber("neck-roll", "bed", "inch", piece, *told),)


def test_a_piece_that_is_new_is_told_and_a_sheet_that_is_new_is_not() -> None:
    with_frill = copy.deepcopy(SHEET)
    with_frill["pieces"]["frill"] = {"quantity": 2}
    metric = {**SHEET, "edition": "metric"}
    found = changed_numbers(edition("a"), edition("b", with_frill, metric))
    assert found == (ChangedNumber("neck-roll", "bed", "inch", "frill", "how many", "", "2"),)


def test_a_sheet_that_is_gone_is_told() -> None:
    found = changed_numbers(edition("a"), edition("b", {**SHEET, "size": "seat"}))
    assert [(one.size, one.what, one.now) for one in found] == [("bed", "this sheet", "no longer published")]


def test_a_measure_and_a_piece_of_the_same_name_are_kept_apart() -> None:
    numbers = printed_numbers({"measures": {"how many": "7"}, "pieces": {"band": {"quantity": 1}}})
    assert numbers == {": how many": "7", "band: how many": "1"}


def test_published_editions_come_back_from_their_file_as_they_were() -> None:
    kept = (edition("2031-03 a"), edition("2031-03 b", {**SHEET, "size": "2 to 3 ½"}))
    assert read_editions(write_editions(kept), "neck-roll") == kept
    assert write_editions(read_editions(write_editions(kept), "neck-roll")) == write_editions(kept)


def test_the_same_numbers_under_the_same_mark_add_nothing() -> None:
    first = edition("a")
    assert with_published((first,), edition("a", day="2031-04-01")) == (first,)
    assert with_published((first,), edition("b"))[-1].mark == "b"


def test_other_numbers_under_the_same_mark_are_refused() -> None:
    with pytest.raises(CalculationError) as refused:
        with_published((edition("a"),), edition("a", {**SHEET, "numbers": {"buttons": "4"}}))
    assert str(refused.value) == (
        "other sheets of 'neck-roll' were published under the mark 'a'; choose a new mark, "
        "so that a printed sheet can be told from this one"
    )


@pytest.mark.parametrize("day", ["14 March", "2031-13-01", "2031-3-1", "2031-01-32", ""])
def test_a_day_that_is_no_day_is_refused(day: str) -> None:
    with pytest.raises(CalculationError, match="is not a day; write year, month and day"):
        edition("a", day=day)


def test_a_mark_of_an_edition_that_others_have_followed_is_refused_and_the_last_is_named() -> None:
    later = [edition(mark, {**SHEET, "numbers": {}}) for mark in "bc"]
    with pytest.raises(CalculationError) as refused:
        with_published((edition("a"), *later), edition("a"))
    assert str(refused.value) == (
        "'neck-roll' was published under 'c' since it bore the mark 'a'; choose a new mark, "
        "so that a printed sheet can be told from this one"
    )


@pytest.mark.parametrize("mark", ["x" * 41, "two\nlines", "a\tb", "bell\a", "Draft 2", "draft"])
def test_a_mark_that_a_sheet_cannot_bear_is_refused(mark: str) -> None:
    with pytest.raises(CalculationError, match="mark"):
        edition(mark)


def test_numbers_that_were_never_published_are_a_draft() -> None:
    assert standing((), edition("now")).draft
    assert standing((), edition("now")).mark == ""


def test_numbers_stand_as_published_until_one_reads_otherwise_or_a_sheet_comes_or_goes() -> None:
    kept = (edition("a", {**SHEET, "numbers": {"buttons": "9"}}), edition("b"))
    same, other = standing(kept, edition("now")), standing(kept, edition("now", {**SHEET, "numbers": {"buttons": "4"}}))
    assert (same.draft, same.mark) == (False, "b")
    assert (other.draft, other.mark, [(one.was, one.now) for one in other.changed]) == (True, "b", [("3", "4")])
    more = standing(kept, edition("now", SHEET, {**SHEET, "size": "seat"}))
    assert (more.draft, more.changed, more.added) == (True, (), (("seat", "inch"),))
    less = standing((edition("a", SHEET, {**SHEET, "size": "seat"}),), edition("now"))
    assert (less.draft, [one.size for one in less.changed]) == (True, ["seat"])


def test_an_edition_without_a_mark_is_refused() -> None:
    with pytest.raises(CalculationError, match="a published edition needs a mark"):
        edition(" ")


@pytest.mark.parametrize(
    "text",
    [
        "",
        "{}{",
        '{"mark": 1}',
        "[7]",
        '[{"mark": "a"}]',
        '[{"mark": "a", "day": "", "sheets": 1}]',
        '[{"mark": 7, "day": "2031-03-14", "sheets": {}}]',
        '[{"mark": "a", "day": "2031-03-14", "sheets": []}]',
        '[{"mark": "a", "day": "2031-03-14", "sheets": {"bed": {"inch": {"band: depth": 3}}}}]',
        '[{"mark": "a", "day": "2031-03-14", "sheets": {"bed": {"inch": {"band: depth": "\\ud800"}}}}]',
        '[{"mark": "a", "day": "2031-03-14", "sheets": {}}, {"mark": "a", "day": "2031-03-15", "sheets": {}}]',
        "[" * 100_000,
    ],
)
def test_a_spoilt_file_is_told(text: str) -> None:
    with pytest.raises(CalculationError, match="the published editions of 'neck-roll' cannot be read"):
        read_editions(text, "neck-roll")
