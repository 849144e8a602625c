"""The figures of a class, key by key: every key that others read, and what stands under it, counted by hand."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from class_on_disk import CLASS, PRICES, the_class
from rooms_on_disk import put

from generator.calculation.making.classes import Kit
from generator.calculation.worksheet.class_figures import class_figures

SPARE = CLASS + "cut beforehand: front\nspare kits:\n  small: 1\nbring: thread\n"


@pytest.fixture(name="found")
def figures_of_the_class(tmp_path: Path) -> dict[str, Any]:
    """Three of medium, one of small with its own cloth, and a spare kit of small."""
    return class_figures(the_class(tmp_path, SPARE, site=PRICES), {Kit("small", "inch"): 3})


def test_what_the_class_is(found: dict[str, Any]) -> None:
    kept = {key: found[key] for key in ("class", "title", "project", "edition", "unit", "paper", "bring", "lent")}
    assert kept == {
        "class": "mornings",
        "title": "Two mornings",
        "project": "jetty",
        "edition": "inch",
        "unit": "in",
        "paper": "A4",
        "bring": ["thread"],
        "lent": [],
    }


def test_each_kit_is_counted(found: dict[str, Any]) -> None:
    # The cloth of the one who brings her own is not cut; her kit is packed and the spare one is both.
    keys = ("size", "edition", "unit", "places", "own_cloth", "spare", "packed", "cut")
    assert [[kit[key] for key in keys] for kit in found["kits"]] == [
        ["medium", "inch", "in", 3, 0, 0, 3, 3],
        ["small", "inch", "in", 1, 1, 1, 2, 1],
    ]
    assert [kit["supplies"] for kit in found["kits"]] == [
        [{"item": "Square cushion pad, 16 in each way", "amount": "1"}],
        [{"item": "Square cushion pad, 12 in each way", "amount": "1"}],
    ]


def test_each_kit_is_told_as_if_alone(found: dict[str, Any]) -> None:
    # 35 1/4 of cloth for the medium size and 1 to straighten it, up to an eighth of a yard: 1 1/8 yd, at £12.
    medium = found["kits"][0]
    assert list(medium) == [
        *("size", "edition", "unit", "own_measures", "places", "own_cloth", "spare", "packed", "cut"),
        *("pieces", "supplies", "cloth_alone", "cost_alone"),
    ]
    assert medium["cloth_alone"] == {"face": "1 1/8 yd"}
    assert [(piece["piece"], piece["cut_beforehand"]) for piece in medium["pieces"]] == [
        ("front", True),
        ("back", False),
    ]


def test_each_bag_has_its_slip_in_full(found: dict[str, Any]) -> None:
    keys = ["number", "among", "size", "edition", "student", "own_cloth", "spare"]
    assert [list(slip) for slip in found["slips"]] == [keys] * 5
    assert [list(slip.values()) for slip in found["slips"]] == [
        [1, 5, "medium", "inch", "Ines", False, False],
        [2, 5, "medium", "inch", "Ode", False, False],
        [3, 5, "medium", "inch", "", False, False],
        [4, 5, "small", "inch", "", True, False],
        [5, 5, "small", "inch", "", False, True],
    ]


def test_the_print_run_names_its_columns(found: dict[str, Any]) -> None:
    # Two copies of three pages: two sheets each on both sides, three on one.
    small = next(line for line in found["print_run"] if line["size"] == "small")
    assert small == {
        "size": "small",
        "edition": "inch",
        "paper": "A4",
        "copies": 2,
        "pages": 3,
        "sheets_both_sides": 4,
        "sheets_one_side": 6,
    }


def test_the_timetable_and_the_cost_name_their_keys(found: dict[str, Any]) -> None:
    table = found["timetable"]
    assert list(table) == ["size", "edition", "sessions", "left_over", "cut_beforehand"]
    first = table["sessions"][0]
    assert (list(first), first["day"], first["starts"], first["ends"]) == (
        ["day", "starts", "ends", "steps", "spare"],
        "2031-03-08",
        "9:30",
        "12:30",
    )
    assert list(first["steps"][0]) == ["at", "minutes", "step", "title", "begun", "goes_on"]
    assert (list(found["cost"]), found["cost"]["unpriced"]) == (["whole", "lines", "unpriced"], [])


def test_what_has_no_price_is_named_beside_the_whole_of_the_rest(tmp_path: Path) -> None:
    # 2 1/2 yd at £12 are £30, four pads at £6.50 £26.
    cost = class_figures(the_class(tmp_path, site=put(PRICES, ("  thread: £2 each\n", ""))), {})["cost"]
    assert (cost["whole"], cost["unpriced"]) == ("£56.00", ["thread"])


def test_a_class_without_prices_has_no_whole(tmp_path: Path) -> None:
    assert class_figures(the_class(tmp_path), {})["cost"]["whole"] == ""


def test_findings_are_told_with_their_level(tmp_path: Path) -> None:
    # The edition of the class is inch, that of the second place metric.
    mixed = put(CLASS, ("    own cloth: yes\n", "    own cloth: yes\n    edition: metric\n"))
    told = class_figures(the_class(tmp_path, mixed), {})["findings"]
    assert [list(finding) for finding in told] == [["level", "text"]] * len(told)
    assert {finding["level"] for finding in told} == {"warning"}


def test_the_note_of_a_class_is_kept(tmp_path: Path) -> None:
    assert the_class(tmp_path).note.strip() == "Doors at nine."
