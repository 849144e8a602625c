"""The search for the shortest strips beside a plain table of all layouts, over many small cloths."""

from __future__ import annotations

import random
from collections.abc import Iterator
from functools import cache
from itertools import product

import pytest

from generator.calculation.cutting.layout_bounds import StripBounds
from generator.calculation.cutting.layout_kinds import Counts, LayoutKind, StripTable, kind_of
from generator.calculation.cutting.layout_search import SearchBudget, SearchTooLongError, StripSearch
from generator.calculation.cutting.layout_strips import shortest_strips
from generator.calculation.cutting.layout_weights import SCALE, strip_weights


def cloths(seeds: range) -> Iterator[tuple[StripTable, Counts]]:
    """Draw narrow cloths with a few kinds of small pieces, so that widths, heights and rests often come out even."""
    for seed in seeds:
        drawn = random.Random(seed)  # noqa: S311 - test cases, not secrets
        width = drawn.randint(4, 10)
        kinds: set[LayoutKind] = set()
        for _ in range(drawn.randint(1, 4)):
            kind = kind_of(drawn.randint(1, width), drawn.randint(1, 6), width, turnable=drawn.random() < 0.4)
            if kind is not None:
                kinds.add(kind)
        counts = tuple(drawn.randint(1, 3) for _ in kinds)
        yield StripTable(sorted(kinds, reverse=drawn.random() < 0.5), width), counts


def shortest_by_table(table: StripTable, counts: Counts) -> int:
    """Second route: for every number of pieces left, try every filling of one more strip at every height."""

    @cache
    def low_enough(take: Counts) -> int | None:
        for height in table.heights:
            ways = [[way for way in kind.ways if way.along <= height] for kind in table.kinds]
            if any(taken and not lying for taken, lying in zip(take, ways, strict=True)):
                continue
            narrow = sum(
                taken * min(way.across for way in lying) for taken, lying in zip(take, ways, strict=True) if taken
            )
            if narrow <= table.width:
                return height
        return None

    @cache
    def shortest(left: Counts) -> int:
        if not any(left):
            return 0
        return min(
            height + shortest(tuple(count - taken for count, taken in zip(left, take, strict=True)))
            for take in product(*(range(count + 1) for count in left))
            if any(take) and (height := low_enough(take)) is not None
        )

    return shortest(counts)


@pytest.mark.parametrize("seed", range(0, 400, 100))
def test_the_search_finds_the_shortest_strips_and_proves_that_there_are_none_shorter(seed: int) -> None:
    for table, counts in cloths(range(seed, seed + 100)):
        length = shortest_by_table(table, counts)
        area = tuple(kind.area * SCALE // table.width for kind in table.kinds)
        for weights in ([(0,) * len(counts)], [area, strip_weights(table, counts)]):
            for limit in (length - 1, length):
                assert (
                    StripSearch(table, StripBounds(table, weights), SearchBudget(10**6)).shortest(counts, limit) is None
                )
            for limit in (length + 1, length + 4, 10 * length + 10):
                search = StripSearch(table, StripBounds(table, weights), SearchBudget(10**6))
                assert search.shortest(counts, limit) == length
                strips = search.strips(counts)
                assert sum(strip.height for strip in strips) == length
                assert tuple(map(sum, zip(*(strip.take for strip in strips), strict=True))) == counts
        assert shortest_strips(table, counts).length == length


@pytest.mark.parametrize("seed", range(0, 100, 50))
def test_what_is_proven_about_a_rest_holds_when_it_is_asked_again(seed: int) -> None:
    # One search asked with rising limits remembers what it has proven; the answer must not change for it.
    for table, counts in cloths(range(1000 + seed, 1050 + seed)):
        length = shortest_by_table(table, counts)
        search = StripSearch(table, StripBounds(table, [strip_weights(table, counts)]), SearchBudget(10**6))
        answers = [search.shortest(counts, limit) for limit in (1, length - 1, length, length + 1, length, length + 7)]
        assert answers == [None, None, None, length, None, length]


def test_no_bound_of_a_rest_is_longer_than_its_shortest_layout() -> None:
    for table, counts in cloths(range(300, 340)):
        weights = [tuple(kind.area * SCALE // table.width for kind in table.kinds), strip_weights(table, counts)]
        bounds = StripBounds(table, weights)
        for left in product(*(range(count + 1) for count in counts)):
            assert bounds.length(left) <= shortest_by_table(table, left)


def test_no_pieces_take_no_cloth_where_any_is_allowed() -> None:
    table = StripTable([kind for kind in [kind_of(3, 2, 5, turnable=False)] if kind], 5)
    search = StripSearch(table, StripBounds(table, [(0,)]), SearchBudget(10))
    assert [search.shortest((0,), limit) for limit in (0, 1, 5)] == [None, 0, 0]


def test_as_many_looks_are_spent_as_were_given() -> None:
    budget = SearchBudget(2)
    budget.spend()
    budget.spend()
    with pytest.raises(SearchTooLongError):
        budget.spend()
