"""Plain pieces wider than their cloth: whole widths and parts, beside every way of dividing and sharing them."""

from __future__ import annotations

import random
from collections.abc import Iterator
from fractions import Fraction
from functools import cache

import pytest

from generator.calculation.cutting.joins import inner_fold_joins
from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.cutting.widths import joined_widths
from generator.calculation.laid import CutItem
from generator.errors import CalculationError

MARK, HALF = Fraction(1, 16), Fraction(1, 2)


def widths_needed(size: int, width: int, copies: int) -> int:
    """The widths of cloth that some copies need as they are laid out, with a seam of one at each join."""
    wholes, whole, part = joined_widths(Fraction(size), Fraction(width), Fraction(1), 1, Fraction(1, 4))
    items = [CutItem("curtain", "whole", whole, Fraction(10), wholes * copies)]
    items += [CutItem("curtain", "part", part, Fraction(10), copies)] if part else []
    layout = cutting_layout(items, Fraction(width))
    assert layout.proven in ("shortest", "purchase")
    return int(layout.possible / 10)


def by_dividing_every_way(size: int, width: int, copies: int) -> int:
    """The least widths when each copy, with as few joins as it can, is divided into any whole inches from 4 on."""
    number = next(number for number in range(1, 99) if number * width - 2 * (number - 1) >= size)
    ways = list(divided(size + 2 * (number - 1), number, width))

    @cache
    def best(free: tuple[int, ...], copies: int) -> int:
        if not copies:
            return 0
        return min(added + best(after, copies - 1) for parts in ways for added, after in placed(free, parts, width))

    return best((), copies)


def divided(left: int, parts: int, most: int) -> Iterator[tuple[int, ...]]:
    """Every way of dividing a length into so many parts of 4 at least, the widest first."""
    if parts == 1 and 4 <= left <= most:
        yield (left,)
    if parts > 1:
        for first in range(4, min(left, most) + 1):
            yield from ((first, *rest) for rest in divided(left - first, parts - 1, first))


def placed(free: tuple[int, ...], parts: tuple[int, ...], width: int) -> set[tuple[int, tuple[int, ...]]]:
    """Every way of cutting parts from what is free of widths and from new ones: how many new, what is free then."""
    if not parts:
        return {(0, free)}
    first, rest = parts[0], parts[1:]
    found = {(added + 1, after) for added, after in placed(tuple(sorted((*free, width - first))), rest, width)}
    for place, room in enumerate(free):
        if room >= first:
            found |= placed(tuple(sorted((*free[:place], room - first, *free[place + 1 :]))), rest, width)
    return found


@pytest.mark.parametrize("width", [9, 10, 12])
@pytest.mark.parametrize("copies", [1, 2, 3])
def test_copies_share_widths_wherever_any_way_of_dividing_them_would(width: int, copies: int) -> None:
    for size in range(width + 1, 3 * width - 4):
        assert widths_needed(size, width, copies) == by_dividing_every_way(size, width, copies), size


@pytest.mark.parametrize("seed", range(200))
def test_joined_they_are_as_wide_as_asked_and_never_more_than_the_ruler_shows_wider(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    width, allowance = Fraction(chance.randint(600, 1000), 17), Fraction(chance.randint(2, 16), 16)
    size, parts = Fraction(chance.randint(16 * 60, 16 * 400), 16), chance.choice([1, 2])
    wholes, whole, part = joined_widths(size, width, allowance, parts, MARK)
    pieces = [whole] * wholes + ([part] * parts if part else [])
    joined = sum(pieces) - 2 * allowance * (len(pieces) - 1)
    assert 0 <= joined - size <= (parts + wholes) * MARK
    assert all(4 * allowance <= piece <= width and piece % MARK == 0 for piece in pieces)
    # One join fewer would not do; parts at both sides take one more.
    fewer = len(pieces) - (parts if part else 1)
    assert fewer * width - 2 * allowance * (fewer - 1) < size


def test_whole_widths_that_are_just_enough_have_no_part() -> None:
    assert joined_widths(Fraction(89), Fraction(45), HALF, 1, MARK) == (2, 45, 0)


def test_a_pair_of_110_on_45_takes_five_widths_and_not_six() -> None:
    # Two wholes and 22 each: 22 + 22 = 44 come from one width.
    wholes, whole, part = joined_widths(Fraction(110), Fraction(45), HALF, 1, MARK)
    drop = Fraction(90)
    items = [CutItem("curtain", "whole", whole, drop, 2 * wholes), CutItem("curtain", "part", part, drop, 2)]
    assert cutting_layout(items, Fraction(45)).length == 5 * drop


@pytest.mark.parametrize(("width", "allowance"), [(45, 0), (4, "1/2")])
def test_cloth_that_is_all_seam_is_refused(width: int, allowance: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        joined_widths(Fraction(110), Fraction(width), Fraction(allowance), 1, MARK)
    assert str(refusal.value) == (
        "widths are joined with a seam allowance of more than 0, on cloth that is eight allowances wide at least"
    )


@pytest.mark.parametrize("seed", range(40))
def test_pleated_lengths_are_as_few_as_the_inner_folds_allow_and_end_at_them(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    cut, width, allowance = Fraction(60), Fraction(chance.randint(10, 40)), HALF
    places = sorted(chance.sample(range(1, 60), chance.randint(2, 9)))
    folds = [(Fraction(place - 1), Fraction(place + 1)) for place in places]
    found = inner_fold_joins(cut, folds, width, allowance, MARK)
    ways = [
        [
            right - left + allowance * ((left > 0) + (right < 60))
            for left, right in zip((0, *chosen), (*chosen, 60), strict=True)
        ]
        for mask in range(2 ** len(places))
        for chosen in [[place for bit, place in enumerate(places) if mask >> bit & 1]]
    ]
    possible = [way for way in ways if max(way) <= width]
    if found is None:
        assert not possible
        return
    assert list(found) in possible
    fewest = min(len(way) for way in possible)
    assert len(found) == fewest
    assert sum(each**2 for each in found) == min(sum(each**2 for each in way) for way in possible if len(way) == fewest)
