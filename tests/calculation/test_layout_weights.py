"""The weights that prove a layout shortest, beside every strip that can be cut."""

from __future__ import annotations

from itertools import product

import pytest
from cloth_by_other_routes import random_items

from generator.calculation.cutting.layout_kinds import StripTable, kind_of
from generator.calculation.cutting.layout_search import SearchBudget, SearchTooLongError
from generator.calculation.cutting.layout_strips import shorter_strips, shortest_strips
from generator.calculation.cutting.layout_weights import SCALE, fullest_strip, strip_weights

WIDTH = 30


def table_of(seed: int, number: int) -> StripTable:
    items = random_items(seed, number, (3, 20), turnable=[True, False])
    kinds = [kind_of(int(item.across), int(item.along), WIDTH, turnable=item.turnable) for item in items]
    return StripTable(sorted({kind for kind in kinds if kind is not None}), WIDTH)


@pytest.mark.parametrize("seed", range(12))
def test_no_strip_that_can_be_cut_weighs_more_than_its_height(seed: int) -> None:
    table = table_of(seed, 5)
    counts = (2,) * len(table.kinds)
    weights = strip_weights(table, counts)
    for height in table.heights:
        across = table.across(height)
        for take in product(range(3), repeat=len(counts)):
            if sum(map(int.__mul__, take, across)) <= WIDTH:
                assert sum(map(int.__mul__, take, weights)) <= height * SCALE


@pytest.mark.parametrize("seed", range(12))
def test_the_fullest_strip_is_the_best_of_all_fillings(seed: int) -> None:
    table = table_of(seed, 5)
    counts = (2,) * len(table.kinds)
    worths = [kind.area for kind in table.kinds]
    across = table.across(table.heights[-1])
    fitting = [take for take in product(range(3), repeat=len(counts)) if sum(map(int.__mul__, take, across)) <= WIDTH]
    best = max(sum(map(int.__mul__, take, worths)) for take in fitting)
    found = fullest_strip(worths, across, counts, WIDTH)
    assert tuple(found.take) in fitting
    assert sum(map(int.__mul__, found.take, worths)) == found.worth == found.most == best


@pytest.mark.parametrize("seed", range(6))
def test_a_proof_holds_just_below_the_shortest_length_and_a_layout_just_above(seed: int) -> None:
    table = table_of(seed, 7)
    counts = (1,) * len(table.kinds)
    length = shortest_strips(table, counts).length
    assert shorter_strips(table, counts, length, SearchBudget(100_000)) is None
    strips = shorter_strips(table, counts, length + 1, SearchBudget(100_000))
    assert strips is not None
    assert sum(strip.height for strip in strips) == length
    assert [sum(taken) for taken in zip(*(strip.take for strip in strips), strict=True)] == list(counts)


def test_a_search_without_looks_left_gives_up() -> None:
    table = table_of(0, 7)
    with pytest.raises(SearchTooLongError):
        shorter_strips(table, (1,) * len(table.kinds), 1_000, SearchBudget(0))
