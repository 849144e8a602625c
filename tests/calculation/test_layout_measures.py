"""Measures of widths: what makes them prove anything, tried on every pair of widths."""

from __future__ import annotations

from fractions import Fraction

import pytest
from cloth_by_other_routes import length_by_trying_everything, random_items
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.cutting.layout_items import in_units, sorted_items
from generator.calculation.cutting.layout_measures import WidthMeasure, all_measures, least_length, measures
from generator.calculation.cutting.layout_pieces import LayoutPieces, LayoutWay, kind_of
from generator.lengths import INCH

SIZES = st.lists(st.tuples(st.integers(1, 30), st.integers(1, 9), st.integers(1, 3)), min_size=1, max_size=5)


def pieces_of(sizes: list[tuple[int, int, int]], width: int) -> LayoutPieces:
    kinds: dict[tuple[int, int], int] = {}
    for across, along, number in sizes:
        kinds[across, along] = kinds.get((across, along), 0) + number
    return LayoutPieces(
        [kind_of([LayoutWay(along, across)], width) for across, along in kinds], list(kinds.values()), width
    )


@given(sizes=SIZES, width=st.integers(30, 50))
def test_two_widths_side_by_side_are_worth_no_more_than_both_together(
    sizes: list[tuple[int, int, int]], width: int
) -> None:
    for measure in all_measures(pieces_of(sizes, width)):
        worth = [measure.of(across) for across in range(width + 1)]
        assert worth[0] == 0
        assert worth == sorted(worth)
        assert all(
            worth[one] + worth[other] <= worth[one + other]
            for one in range(width + 1)
            for other in range(width + 1 - one)
        )


@given(sizes=SIZES, width=st.integers(30, 50))
def test_the_best_measure_asks_for_the_longest_cloth(sizes: list[tuple[int, int, int]], width: int) -> None:
    pieces = pieces_of(sizes, width)

    def asked(measure: WidthMeasure) -> Fraction:
        return Fraction(measure.total, measure.whole)

    plain, best = measures(pieces)
    area = sum(across * along * number for across, along, number in sizes)
    assert (plain.total, plain.whole) == (area, width)
    assert asked(best) == max(map(asked, all_measures(pieces)))


@pytest.mark.parametrize("seed", range(40))
def test_no_layout_beats_the_least_length(seed: int) -> None:
    items = random_items(seed, 5, (2, 20), turnable=[True, False])
    found = in_units(items, Fraction(24), INCH)
    pieces = sorted_items(found, found.items, stacked=True, apart=False).pieces
    assert least_length(pieces) * found.unit <= length_by_trying_everything(items, Fraction(24))


def test_pieces_of_more_than_half_the_width_count_whole() -> None:
    # 23 of 44 twice and 21 once: no two of 23 lie side by side, a 21 fits beside one. 10 + 10, and the 21 is 10 high.
    assert least_length(pieces_of([(23, 10, 2), (21, 10, 1)], 44)) == 20
    # Three of 15 are more than 44, so a strip holds two: four take two strips by count, 14 by area.
    assert least_length(pieces_of([(15, 10, 4)], 44)) == 20


def test_a_layout_tells_its_bound() -> None:
    front = random_items(1, 4, (23, 30), turnable=[False])
    # Nothing lies beside anything else.
    assert cutting_layout(front, Fraction(44)).lower_bound == sum(item.along for item in front)
