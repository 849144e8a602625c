"""Lengths that no layout beats, and the tables behind them: counted by hand."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.cutting.layout_bounds import StripBounds, lower_bound
from generator.calculation.cutting.layout_kinds import LayoutKind, LayoutWay, StripTable, kind_of
from generator.calculation.cutting.layout_weights import SCALE
from generator.calculation.worked import CutItem

CLOTH = Fraction(44)


def piece(across: int, along: int, quantity: int = 1, *, turnable: bool = False) -> CutItem:
    return CutItem("front", "Front", Fraction(across), Fraction(along), quantity, turnable)


@pytest.mark.parametrize(
    ("items", "bound"),
    [
        ([piece(5, 30)], 30),  # the longest piece; its area is 150 / 44
        ([piece(5, 30, turnable=True)], 5),  # turned, 30 across
        ([piece(22, 10, 4)], 20),  # 4 x 220 / 44; two lie side by side
        ([piece(23, 10, 3)], 30),  # wider than half: one above the other
        ([piece(23, 10, 3), piece(2, 4)], 30),
        ([piece(23, 10, 3, turnable=True)], Fraction(690, 44)),  # turned, 10 across, four side by side
        ([piece(5, 30, 0), piece(11, 8, 4)], 8),  # what nobody cuts is no bound
        ([piece(50, 3)], Fraction(150, 44)),  # wider than the cloth, where it cannot lie: its area at least
        ([piece(50, 3, 2, turnable=True)], 50),  # turned, 3 across and 50 along
    ],
)
def test_no_layout_is_shorter_than_area_longest_piece_or_wide_pieces_stacked(
    items: list[CutItem], bound: Fraction
) -> None:
    assert lower_bound(items, CLOTH) == bound


def kind(*ways: tuple[int, int]) -> LayoutKind:
    return LayoutKind(tuple(sorted(LayoutWay(along, across) for along, across in ways)))


HIGH, LOW = kind((5, 6)), kind((3, 4))
TABLE = StripTable((HIGH, LOW), 10)


@pytest.mark.parametrize(
    ("counts", "length"),
    [
        ((0, 0), 0),
        ((1, 0), 5),  # 6 of 10
        ((2, 0), 10),  # 12 of 10: a second strip
        ((1, 1), 5),  # 6 and 4 fill one
        ((2, 2), 10),  # 12 and 8 are 20
        ((2, 3), 13),  # 12 and 12 are 24: two high strips and a low one
        ((0, 5), 6),  # 20: two low ones
        ((0, 6), 9),
    ],
)
def test_pieces_poured_into_strips_highest_first_are_no_longer_than_any_layout(
    counts: tuple[int, ...], length: int
) -> None:
    # 6 by 5 high and 4 by 3 high on a width of 10; without weights only the pouring counts.
    assert StripBounds(TABLE, [(0, 0)]).length(counts) == length


def test_the_heaviest_weights_count_and_a_part_of_a_unit_is_a_unit() -> None:
    bounds = StripBounds(TABLE, [(SCALE, 0), (3 * SCALE + 1, 0), (0, 2 * SCALE)])
    assert bounds.heaviest((4, 1)) == ((3 * SCALE + 1, 0), 12 * SCALE + 4)
    # 4 x 3 and a trifle is 13, less than 15 that four high ones pour into (24 of 10: three strips of 5).
    assert bounds.length((4, 1)) == 15
    assert StripBounds(TABLE, [(4 * SCALE + 1, 0)]).length((4, 0)) == 17


def test_the_highest_kinds_come_first_and_of_equals_the_widest() -> None:
    kinds = (kind((3, 4)), kind((5, 2)), kind((5, 6)), kind((3, 4), (4, 3)))
    # Lowest way 3, 5, 5, 3; narrowest 4, 2, 6, 3.
    assert StripTable(kinds, 10).hardest_first == [2, 1, 0, 3]


def test_a_kind_is_harder_where_every_way_it_lies_would_hold_the_other() -> None:
    assert kind((5, 6)).harder_than(kind((5, 4)))
    assert kind((5, 6)).harder_than(kind((4, 6)))
    assert not kind((5, 6)).harder_than(kind((5, 6)))
    assert not kind((5, 6)).harder_than(kind((6, 5)))
    # Turned over it holds the other too, unless the other is too long for that.
    assert kind((4, 6), (6, 4)).harder_than(kind((4, 4)))
    assert not kind((4, 6), (6, 4)).harder_than(kind((3, 5)))
    assert kind((4, 6), (6, 4)).harder_than(kind((3, 5), (5, 3)))


def test_in_a_strip_that_is_too_low_a_kind_never_fits() -> None:
    assert TABLE.across(3)[0] > TABLE.width
    assert (TABLE.across(3)[1], TABLE.along(3)[1]) == (4, 3)
    assert (TABLE.across(5), TABLE.along(5)) == ([6, 4], [5, 3])


def test_a_piece_lies_only_as_the_cloth_is_wide_enough_for() -> None:
    assert kind_of(6, 5, 10, turnable=True) == kind((5, 6), (6, 5))
    assert kind_of(6, 5, 5, turnable=True) == kind((6, 5))
    assert kind_of(6, 5, 6, turnable=False) == kind((5, 6))
    assert kind_of(6, 5, 5, turnable=False) is None
