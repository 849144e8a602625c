"""Pieces side by side on stripes: moved to their stripe wherever the stripes may lie at the selvage."""

from __future__ import annotations

import random
from fractions import Fraction

import pytest

from generator.calculation.cutting.stripes import side_by_side


def number_that_fit(across: int, repeat: int, width: int) -> int:
    """How many pieces fit, one after the other on the same stripe, where the stripes lie worst at the selvage."""
    least = width
    for begins in range(1, repeat + 1):
        # The stripe comes up at ``begins``; just before the selvage it was lost by as little as one likes.
        number, right = 0, begins
        while right + across <= width:
            number, right = number + 1, right + across
            right += -(right - begins) % repeat
        least = min(least, number)
    return least


@pytest.mark.parametrize("seed", range(40))
def test_as_many_fit_as_do_wherever_the_stripes_lie(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    for _ in range(100):
        across, repeat, width = chance.randint(1, 40), chance.randint(1, 15), chance.randint(1, 120)
        room, usable = side_by_side(Fraction(across), Fraction(repeat), Fraction(width))
        assert max(0, int(usable // (across + room))) == number_that_fit(across, repeat, width)


def test_alike_they_never_need_more_than_each_by_itself() -> None:
    for across in range(1, 30):
        for repeat in range(1, 12):
            room, usable = side_by_side(Fraction(across), Fraction(repeat), Fraction(60))
            assert 60 // (across + repeat) <= usable // (across + room)
