"""Turn plans: their cells by hand, their rules, and what happens at the edges of a panel."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as some
from row_panels import signed, written

from generator.calculation.turning.plans import PLANS, TurnPlan, drawn_plan, turn_plan
from generator.calculation.worked import Turn
from generator.errors import CalculationError

LINES = some.integers(1, 7).flatmap(
    lambda width: some.lists(some.text("<>.", min_size=width, max_size=width), min_size=1, max_size=5)
)


def chart(plan: TurnPlan, rows: int, count: int) -> list[str]:
    return [written(row) for row in plan.turns(rows, count)]


@pytest.mark.parametrize(
    ("name", "group", "drawn"),
    [
        ("linked cells", 2, ["><><><", "<><><>"]),
        ("ripples", 2, [">>>>>>", "<<<<<<"]),
        ("bands", 2, [">><<>>", "<<>><<"]),
        ("bands", 3, [">>><<<", "<<<>>>"]),
        ("slants", 2, [">><<>>", "<>><<>", "<<>><<", "><<>><"]),
        ("zigzags", 2, [">><<>>", "<>><<>", "<<>><<", "<>><<>"]),
        ("diamonds", 2, [">><<>>", "<><><>", "<<>><<", "<><><>"]),
        ("diamonds", 3, [">>><<<", "<>><<>", "<<><>>", "<<<>>>", "<<><>>", "<>><<>"]),
        ("scattered pairs", 2, ["><..><", "..><.."]),
        ("one way", 2, [">>>>>>", ">>>>>>"]),
    ],
)
def test_a_plan_is_turned_as_it_is_described(name: str, group: int, drawn: list[str]) -> None:
    assert chart(turn_plan(name, group), len(drawn), 6) == drawn


@pytest.mark.parametrize("name", PLANS)
def test_every_plan_carries_its_name_and_says_what_it_is(name: str) -> None:
    plan = turn_plan(name)
    assert plan.name == name
    assert plan.description.endswith(".")
    assert {len(row) for row in plan.cell} == {plan.columns}


@pytest.mark.parametrize("group", [1, 2, 3, 5])
@pytest.mark.parametrize("name", PLANS)
def test_a_plan_is_facing_where_neighbours_are_turned_to_each_other(name: str, group: int) -> None:
    rows = chart(turn_plan(name, group), 40, 60)
    assert turn_plan(name, group).facing == any("><" in row for row in rows)


@pytest.mark.parametrize("group", [1, 2, 3, 5])
def test_slants_move_along_by_one_tuck_a_row(group: int) -> None:
    rows = chart(turn_plan("slants", group), 4 * group, 40)
    assert all(below[1:] == above[:-1] for above, below in pairwise(rows))


@pytest.mark.parametrize("group", [2, 3, 4])
def test_whole_diamonds_are_alike_from_both_edges(group: int) -> None:
    plan = turn_plan("diamonds", group)
    mirrored = str.maketrans("<>", "><")
    for count in (count for count in range(1, 40) if plan.rule.allows(count)):
        assert all(row == row[::-1].translate(mirrored) for row in chart(plan, 2 * group, count))


@pytest.mark.parametrize("group", [2, 3])
def test_a_band_is_never_broken_off(group: int) -> None:
    plan = turn_plan("bands", group)
    whole = {">" * group, "<" * group}
    allowed = [count for count in range(1, 30) if plan.rule.allows(count)]
    assert allowed == list(range(group, 30, group))
    for count in allowed:
        row = chart(plan, 1, count)[0]
        assert {row[start : start + group] for start in range(0, count, group)} <= whole


def test_each_plan_tells_which_numbers_of_tucks_it_needs() -> None:
    rules = {name: str(turn_plan(name, 2).rule) for name in PLANS}
    assert rules == {
        "linked cells": "any number",
        "ripples": "any number",
        "bands": "an even number",
        "diamonds": "a multiple of 4",
        "slants": "any number",
        "zigzags": "any number",
        "scattered pairs": "an even number",
        "one way": "any number",
    }


def test_on_a_ring_the_whole_repeat_must_close() -> None:
    assert str(turn_plan("linked cells").ring_rule) == "an even number"
    assert str(turn_plan("slants", 3).ring_rule) == "a multiple of 6"
    assert str(turn_plan("ripples").ring_rule) == "any number"


def test_with_an_even_number_linked_cells_leave_both_edge_tucks_alone_in_alternate_rows() -> None:
    assert chart(turn_plan("linked cells"), 3, 4) == ["><><", "<><>", "><><"]
    assert chart(turn_plan("linked cells", lone="upright"), 3, 4) == ["><><", ".><.", "><><"]
    assert chart(turn_plan("linked cells", lone="in"), 3, 4) == ["><><", ">><<", "><><"]


def test_with_an_odd_number_linked_cells_leave_one_edge_tuck_alone_in_each_row() -> None:
    assert chart(turn_plan("linked cells", lone="upright"), 2, 5) == ["><><.", ".><><"]
    assert chart(turn_plan("linked cells", lone="in"), 2, 5) == ["><><<", ">><><"]


def test_lone_edge_tucks_change_nothing_where_no_pair_is_broken() -> None:
    assert chart(turn_plan("ripples", lone="upright"), 2, 4) == [">>>>", "<<<<"]


@pytest.mark.parametrize(
    ("name", "lone", "count", "lies"),
    [
        ("linked cells", "out", 4, ("out", "out")),
        ("linked cells", "out", 5, ("out", "out")),
        ("linked cells", "in", 5, ("in", "in")),
        ("linked cells", "upright", 4, ("in", "in")),
        ("one way", "out", 4, ("in", "out")),
        ("ripples", "upright", 4, ("out", "out")),
        ("scattered pairs", "out", 4, ("in", "in")),
        ("linked cells", "upright", 1, ("upright", "upright")),
        ("ripples", "out", 0, ("upright", "upright")),
    ],
)
def test_the_edge_tucks_lie_at_worst(name: str, lone: str, count: int, lies: tuple[str, str]) -> None:
    assert turn_plan(name, lone=lone).lies(count) == lies


@given(LINES, some.integers(1, 20), some.integers(0, 30))
def test_a_drawn_plan_repeats_over_the_panel(lines: list[str], rows: int, count: int) -> None:
    turns = drawn_plan("\n".join(lines)).turns(rows, count)
    assert len(turns) == rows
    for row in range(1, rows + 1):
        for tuck in range(1, count + 1):
            sign = lines[(row - 1) % len(lines)][(tuck - 1) % len(lines[0])]
            assert turns[row - 1][tuck - 1] is Turn(sign)


def test_spaces_and_empty_lines_around_do_not_count_in_a_drawn_plan() -> None:
    plan = drawn_plan("\n  > < .\n  . > <  \n\n")
    assert plan.cell == (signed("><."), signed(".><"))
    assert plan.facing
    assert str(plan.rule) == "any number"


def test_a_drawn_plan_without_facing_pairs_has_no_lone_tucks() -> None:
    assert not drawn_plan("><"[::-1] + ".").facing
    assert drawn_plan("< .", lone="upright").turns(1, 3) == (signed("<.<"),)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        ("> <\n> x", "line 2 of the drawn plan has a sign 'x'; only < (left), > (right) and . (upright) are signs"),
        (
            "\n> < >\n< >",
            "line 3 of the drawn plan has 2 signs and line 2 has 3; every line needs one sign for each tuck of the "
            "repeat",
        ),
        ("  \n", "nothing is drawn in the drawn plan; write one line a row with the signs < > ."),
        ("<" * 2001, "line 1 of the drawn plan has more than 2000 signs; draw one repeat"),
    ],
)
def test_a_plan_that_cannot_be_read_is_refused(text: str, message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        drawn_plan(text)
    assert str(refusal.value) == message


def test_an_unknown_plan_is_refused_with_the_known_ones() -> None:
    with pytest.raises(CalculationError) as refusal:
        turn_plan("ripple")
    assert str(refusal.value) == (
        "there is no turn plan 'ripple'; there are: linked cells, ripples, bands, diamonds, slants, zigzags, "
        "scattered pairs, one way, or draw your own"
    )


@pytest.mark.parametrize("group", [0, -1, 51])
def test_a_group_that_cannot_be_is_refused(group: int) -> None:
    with pytest.raises(CalculationError) as refusal:
        turn_plan("bands", group)
    assert str(refusal.value) == f"a group of {group} tucks cannot be turned; give a group of 1 to 50"


def test_another_way_to_lie_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        drawn_plan("><", lone="outward")  # a slip of the pen
    assert str(refusal.value) == "lone edge tucks cannot lie 'outward'; give out, in or upright"


def test_groups_of_fifty_and_lines_of_two_thousand_signs_are_the_most() -> None:
    assert turn_plan("bands", 50).columns == 100
    assert drawn_plan(">" * 2000).columns == 2000
    with pytest.raises(CalculationError, match=r"^a group of 51 tucks cannot be turned; give a group of 1 to 50$"):
        turn_plan("bands", 51)
    with pytest.raises(CalculationError, match=r"^line 1 of the drawn plan has more than 2000 signs; draw one repeat$"):
        drawn_plan(">" * 2001)
