"""What can be cut from remnants, beside every way of sharing pieces out and of cutting each remnant."""

from __future__ import annotations

import random
from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import combinations, product

import pytest
from cloth_by_other_routes import length_by_trying_everything, random_items

from generator.calculation.cutting.remnants import LiesOn, Remnant, cut_from_remnants
from generator.calculation.laid import CutItem
from generator.lengths import INCH


def turned(item: CutItem) -> CutItem:
    return replace(item, across=item.along, along=item.across)


def fits(items: Sequence[CutItem], remnant: Remnant) -> bool:
    """Whether some pieces can be cut from one remnant, the first cuts across it or along it."""
    for pieces, width, length in (
        (list(items), remnant.across, remnant.along),
        ([turned(item) for item in items], remnant.along, remnant.across),
    ):
        narrow = all(min(item.across, item.along if item.turnable else item.across) <= width for item in pieces)
        if narrow and length_by_trying_everything(pieces, width) <= length:
            return True
    return False


def by_sharing_every_way(items: Sequence[CutItem], remnants: Sequence[Remnant]) -> bool:
    return any(
        all(
            fits([item for item, at in zip(items, chosen, strict=True) if at == place], remnant)
            for place, remnant in enumerate(remnants)
        )
        for chosen in product(range(len(remnants)), repeat=len(items))
    )


def assert_lie_apart(lying: Sequence[LiesOn], items: Sequence[CutItem], remnants: Sequence[Remnant]) -> None:
    by_label = {item.label: item for item in items}
    assert sorted(one.label for one in lying) == sorted(item.label for item in items for _ in range(item.quantity))
    for one in lying:
        remnant, item = remnants[one.remnant], by_label[one.label]
        assert 0 <= one.left < one.left + one.across <= remnant.across
        assert 0 <= one.top < one.top + one.along <= remnant.along
        sizes = {(item.across, item.along)} | ({(item.along, item.across)} if item.turnable else set())
        assert (one.across, one.along) in sizes
    for one, other in combinations(lying, 2):
        apart = (
            one.remnant != other.remnant
            or one.left + one.across <= other.left
            or other.left + other.across <= one.left
            or one.top + one.along <= other.top
            or other.top + other.along <= one.top
        )
        assert apart


@pytest.mark.parametrize("seed", range(120))
def test_yes_and_no_are_those_of_trying_everything(seed: int) -> None:
    chance = random.Random(seed)  # noqa: S311
    items = random_items(seed, chance.randint(1, 5), (2, 12), turnable=[True, False])
    remnants = [
        Remnant(Fraction(chance.randint(6, 20)), Fraction(chance.randint(6, 20))) for _ in range(chance.randint(1, 3))
    ]
    found = cut_from_remnants(items, remnants, INCH)
    assert found.certain
    assert (found.lying is not None) == by_sharing_every_way(items, remnants)
    if found.lying is not None:
        assert_lie_apart(found.lying, items, remnants)


@pytest.mark.parametrize("seed", range(4))
def test_many_pieces_are_never_refused_for_certain_where_they_were_not_all_tried(seed: int) -> None:
    items = random_items(seed, 16, (2, 9), turnable=[True, False])
    area = sum((item.across * item.along for item in items), Fraction(0))
    roomy = [Remnant(Fraction(30), area / 20), Remnant(Fraction(20), Fraction(20)), Remnant(Fraction(9), Fraction(9))]
    found = cut_from_remnants(items, roomy, INCH)
    assert found.lying is not None
    assert_lie_apart(found.lying, items, roomy)
    half = Fraction(-(-area // 40))
    tight = [Remnant(Fraction(20), half), Remnant(Fraction(20), half)]
    found = cut_from_remnants(items, tight, INCH)
    assert found.lying is not None or not found.certain
    small = [Remnant(Fraction(20), area / 41), Remnant(Fraction(20), area / 41)]
    assert cut_from_remnants(items, small, INCH) == (None, True)


def test_with_few_looks_nothing_is_certain() -> None:
    items = random_items(2, 9, (3, 9), turnable=[True])
    area = sum((item.across * item.along for item in items), Fraction(0))
    found = cut_from_remnants(items, [Remnant(Fraction(18), area / 17)], INCH, looks=20)
    assert found == (None, False)


def test_what_waits_shares_no_stack_with_what_does_not() -> None:
    # 10 and 4 high in a strip 14 high of cloth 6 wide: only one below the other.
    now, later = CutItem("a", "A", Fraction(6), Fraction(10), 1), CutItem("b", "B", Fraction(5), Fraction(4), 1)
    remnant = Remnant(Fraction(6), Fraction(14))
    lying = cut_from_remnants([now, replace(later, later=True)], [remnant], INCH).lying
    # Two strips of their own do.
    assert lying is not None
    assert [(one.label, one.top) for one in lying] == [("A", 0), ("B", 10)]


def test_cloth_without_end_is_as_good_as_cloth_that_holds_everything_in_a_row() -> None:
    items = random_items(5, 7, (2, 9), turnable=[True, False])
    endless = Remnant(Fraction(99_999_999), Fraction(99_999_999))
    found = cut_from_remnants(items, [endless], INCH)
    assert found.lying is not None
    assert_lie_apart(found.lying, items, [endless])
    assert max(one.left + one.across for one in found.lying) <= 7 * 9
