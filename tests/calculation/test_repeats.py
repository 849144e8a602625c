"""Drops on cloth with a pattern: worked by hand, and beside every place where each of them could begin."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from cloth_by_other_routes import assert_can_be_cut, length_by_trying_everything, random_items

from generator.calculation.cutting.cloth import Buying
from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.cutting.repeats import matched_drops
from generator.calculation.laid import CutItem, LaidStrip, Match
from generator.errors import CalculationError


def cloth_for(straight: int, shifted: int, cut: int, repeat: int) -> Fraction:
    drops = matched_drops(straight, shifted, Fraction(cut), Fraction(repeat))
    assert [sort for sort, _ in drops].count(True) == shifted
    assert len(drops) == straight + shifted
    return sum((height for _, height in drops), Fraction(0))


def by_trying_every_place(straight: int, shifted: int, cut: int, repeat: int) -> int:
    """The least cloth when each drop may begin at any whole place where its part of the pattern lies, in any order."""

    @cache
    def to_end(top: int, straight: int, shifted: int) -> int:
        if not straight + shifted:
            return 0
        ends = [
            place + cut - top + to_end(place + cut, straight - (begin == 0), shifted - (begin != 0))
            for left, begin in ((straight, 0), (shifted, repeat // 2))
            if left
            for place in range(top, top + 2 * repeat)
            if place % repeat == begin
        ]
        return min(ends)

    # The cloth may begin at any place of the pattern; what lies before the first drop costs nothing.
    return min(to_end(first, straight, shifted) for first in range(repeat))


@pytest.mark.parametrize("seed", range(20))
def test_no_order_and_no_places_need_less_and_none_of_theirs_are_short(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    for _ in range(200):
        straight, shifted = chance.randint(0, 4), chance.randint(0, 4)
        cut, repeat = chance.randint(1, 25), 2 * chance.randint(1, 8)
        assert cloth_for(straight, shifted, cut, repeat) == by_trying_every_place(straight, shifted, cut, repeat)


def test_a_drop_of_whole_repeats_loses_nothing() -> None:
    assert cloth_for(4, 0, 36, 12) == 4 * 36
    # In a half drop it loses half a repeat at the one change: 36 + 42 + 36 + 36.
    assert cloth_for(2, 2, 36, 12) == 150


def test_a_drop_of_a_half_repeat_changes_as_often_as_it_can() -> None:
    # C 42, R 12: like ones 48 apart, unlike ones 42. Three and one: shifted between two others, then 48 and 42.
    assert cloth_for(3, 1, 42, 12) == 42 + 42 + 48 + 42
    assert [sort for sort, _ in matched_drops(3, 1, Fraction(42), Fraction(12))] == [False, True, False, False]


@pytest.mark.parametrize("repeat", [0, -3])
def test_a_pattern_that_does_not_repeat_is_refused(repeat: int) -> None:
    with pytest.raises(CalculationError) as refusal:
        matched_drops(1, 0, Fraction(20), Fraction(repeat))
    assert str(refusal.value) == ("the pattern repeat must be more than 0; measure from one place to the next like it")


def begins(strips: Sequence[LaidStrip], piece: str) -> list[tuple[bool, Fraction]]:
    return [
        (placed.label.endswith("half a repeat on"), placed.top)
        for strip in strips
        for placed in strip.placed
        if placed.piece == piece
    ]


@pytest.mark.parametrize("seed", range(60))
def test_in_a_layout_all_drops_of_a_piece_match_and_nothing_is_bought_short(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    rest = random_items(seed, chance.randint(0, 4), (2, 16), turnable=[True, False])
    half_drop, later = chance.random() < 0.5, chance.random() < 0.3
    width, cut, repeat = 24, chance.randint(3, 30), 2 * chance.randint(1, 6)
    match = Match(Fraction(repeat), half_drop)
    drops = [
        CutItem("drop", "Drop", Fraction(chance.randint(5, 24)), Fraction(cut), chance.randint(1, 3), later=later),
        CutItem("drop", "Drop, half a repeat on", Fraction(9), Fraction(cut), chance.randint(0, 3), later=later),
    ]
    drops = [replace(drops[0], match=match), replace(drops[1], match=replace(match, shifted=half_drop))]
    layout = cutting_layout([*rest, *drops], Fraction(width), buying=Buying(Fraction(3)))
    assert_can_be_cut(layout, [*rest, *drops])
    tops = begins(layout.strips, "drop")
    for shifted, top in tops:
        wanted = Fraction(repeat, 2) if shifted and half_drop else Fraction(0)
        begun = min(top for _, top in tops) if not half_drop else next(top for other, top in tops if not other)
        assert (top - begun - wanted) % repeat == 0
    # By hand: as many strips as the drops need side by side, spaced by the pattern; all else by trying everything.
    if half_drop:
        spaced = by_trying_every_place(drops[0].quantity, drops[1].quantity, cut, repeat)
    else:
        plain = length_by_trying_everything([replace(item, match=None) for item in drops], Fraction(width))
        spaced = by_trying_every_place(int(plain / cut), 0, cut, repeat)
    assert layout.possible == spaced + length_by_trying_everything(rest, Fraction(width))
    assert layout.proven in ("shortest", "purchase")


def test_nine_drops_with_a_repeat_of_27_are_bought_as_26_and_three_quarter_yards() -> None:
    drop = CutItem("curtain", "Curtain", Fraction(54), Fraction(189, 2), 9, match=Match(Fraction(27)))
    buying = Buying(Fraction(9, 2), straighten=Fraction(1))
    layout = cutting_layout([drop], Fraction(54), buying=buying)
    # Eight times four repeats and one drop: 864 + 94 1/2; with the inch 959 1/2, which is 26.65 yd.
    assert (layout.length, buying.bought(layout.length) / 36, layout.narrowest) == (
        Fraction(1917, 2),
        Fraction(107, 4),
        54,
    )
    assert [strip.top for strip in layout.strips] == [108 * number for number in range(9)]
    assert layout.proven == "shortest"
