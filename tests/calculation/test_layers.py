"""Layers: published tucks, hand counts, and brute force at every point of the panel."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from row_panels import even_tucks, signed, uneven_tucks

from generator.calculation.turning.layers import (
    LayerLimits,
    crossed_layers,
    edge_layers,
    refuse_too_thick,
    row_layers,
)
from generator.calculation.worked import End, TuckSet, Turn
from generator.errors import CalculationError

EIGHTHS = some.integers(1, 20).map(lambda eighths: Fraction(eighths, 8))


def layers_at(tucks: TuckSet, turns: tuple[Turn, ...], place: Fraction) -> int:
    """Second route: ask every flap whether it covers one place, on a ring also once round either way."""
    layers = 1
    rounds = (-1, 0, 1) if tucks.ring else (0,)
    for foot, depth, turn in zip(tucks.stitching, tucks.depths, turns, strict=True):
        for turn_round in rounds:
            beside = place - foot - turn_round * tucks.finished
            if (turn is Turn.RIGHT and 0 < beside < depth) or (turn is Turn.LEFT and 0 < -beside < depth):
                layers += 2
    return layers


def test_touching_tucks_lie_three_deep_everywhere() -> None:
    # Home and School Sewing, ch. XXI: touching tucks take their depth three times, twice in the tuck, once to rest on.
    # Hand Sewing Lessons, Model 6: tucks of 1/2 in, 1/2 in from stitching to stitching, meet the next stitching.
    assert row_layers(even_tucks(9, Fraction(1, 2), Fraction(1, 2)), signed(">" * 9)) == 3


@pytest.mark.parametrize(
    ("turns", "depth", "pitch", "layers"),
    [
        ("....", Fraction(1, 2), Fraction(1, 2), 1),
        (">.<.", Fraction(1, 4), Fraction(1, 2), 3),
        ("><><", Fraction(1, 4), Fraction(1, 2), 3),  # the folds meet
        ("><><", Fraction(3, 8), Fraction(1, 2), 5),  # they overlap by 1/4 in
        (">>>>", Fraction(9, 8), Fraction(1, 2), 7),  # three pitches begin within one depth
        (">>..", Fraction(9, 8), Fraction(1, 2), 5),  # the bound is 7, but only two tucks lie
        ("<>><", Fraction(1, 2), Fraction(1, 2), 5),
    ],
)
def test_layers_are_counted_by_hand(turns: str, depth: Fraction, pitch: Fraction, layers: int) -> None:
    assert row_layers(even_tucks(len(turns), depth, pitch), signed(turns)) == layers


@pytest.mark.parametrize("ring", [False, True])
@settings(deadline=None)
@given(some.lists(some.tuples(EIGHTHS, EIGHTHS, some.sampled_from("<>.")), min_size=1, max_size=7))
def test_the_thickest_place_is_found_by_trying_every_point(
    ring: bool, sewn: list[tuple[Fraction, Fraction, str]]
) -> None:
    depths = tuple(depth for depth, _, _ in sewn)
    tucks = uneven_tucks(depths, tuple(pitch for _, pitch, _ in sewn[1:]), Fraction(5, 2), ring)
    turns = signed("".join(turn for _, _, turn in sewn))
    # All feet and folds lie on eighths, so the middles of all eighths are every case there is.
    middles = [Fraction(2 * place + 1, 16) for place in range(-40, int(tucks.finished * 8) + 40)]
    assert row_layers(tucks, turns) == max(layers_at(tucks, turns, place) for place in middles)


@given(EIGHTHS, EIGHTHS)
def test_many_tucks_one_way_reach_the_bound(depth: Fraction, pitch: Fraction) -> None:
    # Over any point lie as many flaps as pitches begin within one depth; each adds two layers to the panel's one.
    assert row_layers(even_tucks(30, depth, pitch), signed(">" * 30)) == 1 + 2 * ceil(depth / pitch)


def test_on_a_ring_tucks_lie_over_the_closing() -> None:
    turns = signed(">>>")
    assert row_layers(even_tucks(3, Fraction(1), Fraction(1, 2)), turns) == 5
    assert row_layers(even_tucks(3, Fraction(5, 4), Fraction(1, 2), ring=True), turns) == 7


def test_nine_layers_lie_where_flat_tucks_cross() -> None:
    flat = row_layers(even_tucks(5, Fraction(1, 4), Fraction(1)), signed("<" * 5))
    assert crossed_layers(flat, flat) == 9


@pytest.mark.parametrize(
    ("kind", "layers"),
    [("seam", 4), ("hem", 9), ("bound", 7), ("turnover", 3), ("raw", 3), ("fold", 3), ("selvage", 3)],
)
def test_an_edge_across_flat_tucks_adds_its_own_layers(kind: str, layers: int) -> None:
    assert edge_layers(3, End(kind, Fraction(1, 2), Fraction(1, 2))) == layers


def test_a_place_at_the_limit_can_be_sewn_and_one_above_it_not() -> None:
    refuse_too_thick("row 2", 9, LayerLimits())
    with pytest.raises(CalculationError) as refusal:
        refuse_too_thick("row 2", 11, LayerLimits())
    assert str(refusal.value) == (
        "row 2 goes through 11 layers of cloth and the most is 9; give the tucks a wider spacing, make them "
        "shallower, or choose a plan that lays fewer over each other"
    )


def test_a_room_may_set_its_own_limit() -> None:
    with pytest.raises(CalculationError, match="row 1 goes through 7 layers of cloth and the most is 5;"):
        refuse_too_thick("row 1", 7, LayerLimits(warn=3, refuse=5))
