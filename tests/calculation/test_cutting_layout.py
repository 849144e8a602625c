"""The cutting layout beside every way of cutting, laid out as rectangles, and worked by hand."""

from __future__ import annotations

import math
import random
from dataclasses import replace
from fractions import Fraction

import pytest
from cloth_by_other_routes import assert_can_be_cut, length_by_trying_everything, random_items
from hypothesis import given, settings
from hypothesis import strategies as draw

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem
from generator.errors import CalculationError
from generator.lengths import INCH, METRE, METRIC, MILLIMETRE

CLOTH = Fraction(44)


def piece(across: str | int, along: str | int, quantity: int = 1, *, turnable: bool = False) -> CutItem:
    return CutItem("front", "Front", Fraction(across), Fraction(along), quantity, turnable)


some_items = draw.lists(
    draw.tuples(draw.integers(1, 24), draw.integers(1, 24), draw.integers(1, 3), draw.booleans()),
    min_size=1,
    max_size=5,
).map(
    lambda sizes: [
        CutItem(f"piece {place}", f"Piece {place}", Fraction(across, 2), Fraction(along, 2), quantity, turnable)
        for place, (across, along, quantity, turnable) in enumerate(sizes)
    ]
)


@pytest.mark.parametrize("seed", range(60))
def test_no_way_of_cutting_across_down_and_across_is_shorter_for_few_pieces(seed: int) -> None:
    items = random_items(seed, 1 + seed % 6, (2, 20), turnable=[True, False])
    cloth = Fraction(20 + seed % 9)
    layout = cutting_layout(items, cloth)
    assert layout.possible == length_by_trying_everything(items, cloth)
    assert layout.proven in ("shortest", "purchase")
    assert (layout.proven == "shortest") == (layout.length == layout.possible)
    assert INCH.buy_step * (layout.steps_above + 1) > layout.length - layout.possible
    assert_can_be_cut(layout, items)


@pytest.mark.parametrize("seed", range(30))
def test_of_layouts_that_buy_the_same_the_easiest_is_taken(seed: int) -> None:
    """Later in strips of its own before nothing in stacks, that before the shortest; the least purchase before all."""
    chance = random.Random(seed)  # noqa: S311
    items = [replace(item, later=chance.random() < 0.4) for item in random_items(seed, 5, (3, 20), turnable=[False])]
    cloth = Fraction(24)
    times = [[item for item in items if item.later is later] for later in (False, True)]
    own = [half for half in times if half]

    def in_own_strips(*, stacked: bool) -> Fraction:
        return sum((length_by_trying_everything(half, cloth, stacked=stacked) for half in own), Fraction(0))

    ways = [
        in_own_strips(stacked=False),
        in_own_strips(stacked=True),
        length_by_trying_everything(items, cloth, stacked=False),
        length_by_trying_everything(items, cloth),
    ]
    free = length_by_trying_everything(items, cloth, apart=False)
    least = min(map(steps, ways))
    layout = cutting_layout(items, cloth)
    assert layout.length == next(length for length in ways if steps(length) == least)
    assert layout.apart_costs == least - steps(free)
    assert_can_be_cut(layout, items)


def steps(length: Fraction) -> int:
    return math.ceil(length / INCH.buy_step)


@settings(max_examples=80, deadline=None)
@given(items=some_items, halves=draw.integers(24, 60))
def test_every_layout_can_be_cut_and_keeps_the_grain(items: list[CutItem], halves: int) -> None:
    assert_can_be_cut(cutting_layout(items, Fraction(halves, 2)), items)


@settings(max_examples=40, deadline=None)
@given(items=some_items, halves=draw.integers(24, 60))
def test_the_purchase_stays_at_the_narrowest_width_and_grows_below_it(items: list[CutItem], halves: int) -> None:
    layout = cutting_layout(items, Fraction(halves, 2))
    assert steps(cutting_layout(items, layout.narrowest).length) == steps(layout.length)
    narrower = layout.narrowest - Fraction(1, 16)
    least = max(min(item.across, item.along) if item.turnable else item.across for item in items)
    if narrower >= least:
        assert steps(cutting_layout(items, narrower).length) > steps(layout.length)
    else:
        assert layout.narrowest == least


def test_two_sizes_fill_two_strips() -> None:
    # 24 + 16 = 40 of 44 in: each strip holds a front and a back, 30 high; the back leaves 10 in to trim.
    items = [
        CutItem("front", "Front", Fraction(24), Fraction(30), 2),
        CutItem("back", "Back", Fraction(16), Fraction(20), 2),
    ]
    layout = cutting_layout(items, CLOTH)
    assert [(strip.top, strip.along) for strip in layout.strips] == [(0, 30), (30, 30)]
    assert [(placed.piece, placed.copy, placed.left, placed.top) for placed in layout.placed] == [
        ("front", 1, 0, 0),
        ("back", 1, 24, 0),
        ("front", 2, 0, 30),
        ("back", 2, 24, 30),
    ]
    assert (layout.length, layout.proven, layout.narrowest) == (60, "shortest", 40)
    # Both fronts are wider than half the cloth, so they cannot lie side by side: 30 + 30.
    assert layout.lower_bound == 60


def test_the_bound_is_the_area_up_to_the_next_length_that_can_be() -> None:
    # Five of 10 x 10 on 44: area 500/44 = 11 4/11. Every length is a multiple of 10, so none is less than 20.
    layout = cutting_layout([piece(10, 10, 5)], CLOTH)
    assert (layout.lower_bound, layout.length, layout.proven) == (20, 20, "shortest")


def test_turning_saves_cloth_only_where_the_grain_may_run_either_way() -> None:
    # 12 across and 20 along, two side by side: 24 across, 20 long. Turned: 20 + 20 = 40 across, 12 long.
    assert cutting_layout([piece(12, 20, 2)], CLOTH).length == 20
    turned = cutting_layout([piece(12, 20, 2, turnable=True)], CLOTH)
    assert turned.length == 12
    assert [placed.turned for placed in turned.placed] == [True, True]


def test_a_piece_exactly_as_wide_as_the_cloth_fits() -> None:
    layout = cutting_layout([piece(44, 15)], CLOTH)
    assert (layout.length, layout.narrowest, layout.lower_bound) == (15, 44, 15)


def test_odd_fractions_of_washed_cloth_stay_exact() -> None:
    # 44 in less 3 % are 42 17/25; thirds of an inch: 4 x 10 2/3 = 42 2/3, which is less by 1/75.
    layout = cutting_layout([piece("32/3", "7/3", 4)], Fraction(44 * 97, 100))
    assert (layout.length, layout.narrowest) == (Fraction(7, 3), Fraction(128, 3))


def test_the_same_pieces_are_laid_out_the_same_every_time() -> None:
    # Few looks: a search that is broken off in the middle must break off at the same place.
    items = random_items(3, 40, (4, 24), turnable=[True, False])
    assert cutting_layout(items, CLOTH, looks=50_000) == cutting_layout(items, CLOTH, looks=50_000)


def test_nothing_to_cut_takes_no_cloth() -> None:
    layout = cutting_layout([piece(10, 10, 0)], CLOTH)
    assert (layout.length, layout.placed, layout.strips, layout.lower_bound) == (0, (), (), 0)
    assert layout.proven == "shortest"


def test_equal_pieces_of_two_names_are_all_cut() -> None:
    items = [
        CutItem("front", "Front", Fraction(20), Fraction(9), 2),
        CutItem("back", "Back", Fraction(20), Fraction(9), 1),
    ]
    layout = cutting_layout(items, CLOTH)
    assert [(placed.piece, placed.copy) for placed in layout.placed] == [("front", 1), ("front", 2), ("back", 1)]
    assert layout.length == 18


@pytest.mark.parametrize("turnable", [[False], [True]])
def test_two_hundred_pieces_are_laid_out_well(turnable: list[bool]) -> None:
    items = random_items(1, 200, (4, 24), turnable=turnable)
    layout = cutting_layout(items, CLOTH, looks=500_000)
    assert layout.length <= layout.lower_bound * Fraction(106, 100)
    assert_can_be_cut(layout, items)


def test_thirty_kits_of_four_pieces_are_stacked_as_high_as_can_be_cut_down() -> None:
    items = [
        CutItem("front", "Front", Fraction(109, 4), Fraction(31, 2), 30),
        CutItem("back", "Back", Fraction(25, 2), Fraction(17), 60),
        CutItem("band", "Band", Fraction(40), Fraction(3), 30),
    ]
    layout = cutting_layout(items, CLOTH)
    # A front of 27 1/4 leaves 16 3/4 beside it, room for a back of 12 1/2. Within 60 in three fronts are 46 1/2 high
    # and three backs beside them 51; two backs would be 34. Ten such strips hold all fronts and half of the backs, 510;
    # of 30 backs left three lie side by side, 10 x 17 = 170; a band fills its own strip, 30 x 3 = 90.
    assert layout.length == 510 + 170 + 90
    assert max(strip.along for strip in layout.strips) <= 60


@pytest.mark.parametrize("seed", range(12))
def test_no_strip_is_too_high_to_be_cut_down(seed: int) -> None:
    items = [replace(item, quantity=12) for item in random_items(seed, 6, (3, 30), turnable=[True, False])]
    tall = [*items, CutItem("tall", "Tall", Fraction(9), Fraction(61 + seed), 1)]
    for edition in (INCH, METRIC):
        limit = 60 if edition is INCH else Fraction(15000, 254)
        for pieces, most in ((items, limit), (tall, Fraction(61 + seed))):
            layout = cutting_layout(pieces, CLOTH, edition, looks=400_000)
            assert max(strip.along for strip in layout.strips) <= most
            assert_can_be_cut(layout, pieces)


def test_a_class_of_a_thousand_pieces_is_laid_out_too() -> None:
    items = [piece(30, 20, 600), CutItem("back", "Back", Fraction(12), Fraction(20), 600)]
    # A front and a back fill a strip (42 of 44): 600 strips of 20.
    assert cutting_layout(items, CLOTH).length == 12_000


def test_a_locked_piece_wider_than_the_cloth_is_refused_with_three_remedies() -> None:
    with pytest.raises(CalculationError) as refusal:
        cutting_layout([piece("91/2", 30)], CLOTH)
    assert str(refusal.value) == (
        "Front is 45 1/2 in across, but the cloth is only 44 in wide; "
        "take a wider cloth, cut it the other way of the grain, or write it as two pieces that meet in a seam"
    )


def test_a_piece_too_wide_both_ways_is_refused_without_the_advice_to_turn_it() -> None:
    with pytest.raises(CalculationError) as refusal:
        cutting_layout([piece(50, 46, turnable=True)], CLOTH)
    assert str(refusal.value) == (
        "Front is 50 in across (46 in when turned), but the cloth is only 44 in wide; "
        "take a wider cloth, or write it as two pieces that meet in a seam"
    )


def test_a_refusal_speaks_the_unit_of_the_edition() -> None:
    wide = CutItem("front", "Front", 1500 * MILLIMETRE, 2 * METRE, 1)
    with pytest.raises(CalculationError) as refusal:
        cutting_layout([wide], 1400 * MILLIMETRE, METRIC)
    assert str(refusal.value) == (
        "Front is 150 cm across, but the cloth is only 140 cm wide; take a wider cloth, or write it as two pieces that "
        "meet in a seam"
    )


@pytest.mark.parametrize(("across", "quantity"), [(0, 1), (-2, 1), (2, -1)])
def test_sizes_and_quantities_that_cannot_be_are_refused(across: int, quantity: int) -> None:
    with pytest.raises(CalculationError) as refusal:
        cutting_layout([piece(across, 5, quantity)], CLOTH)
    assert str(refusal.value) == "Front cannot be cut: its sizes must be more than 0, its quantity 0 or more"


def test_cloth_without_width_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        cutting_layout([piece(1, 1)], Fraction(0))
    assert str(refusal.value) == "the cloth has no usable width; give the width between its selvages"


def test_strips_that_wait_for_the_sewn_panel_lie_after_those_that_are_cut_at_once() -> None:
    # A strip of 9 in that waits, one of 7 in that does not: the lower one is cut first.
    flounce = CutItem("flounce", "Flounce", Fraction(37), Fraction(9), 2, later=True)
    band = CutItem("band", "Band", Fraction(49), Fraction(7), 1)
    layout = cutting_layout([flounce, band], Fraction(54))
    assert [(placed.piece, placed.copy, placed.top) for placed in layout.placed] == [
        ("band", 1, 0),
        ("flounce", 1, 7),
        ("flounce", 2, 16),
    ]
    assert [(strip.top, strip.along) for strip in layout.strips] == [(0, 7), (7, 9), (16, 9)]


def test_of_pieces_of_one_size_those_that_wait_take_the_last_places() -> None:
    waiting = CutItem("back", "Back", Fraction(20), Fraction(10), 2, later=True)
    front = CutItem("front", "Front", Fraction(20), Fraction(10), 2)
    layout = cutting_layout([waiting, front], Fraction(44))
    assert [(placed.piece, placed.copy, placed.left, placed.top) for placed in layout.placed] == [
        ("front", 1, 0, 0),
        ("front", 2, 20, 0),
        ("back", 1, 0, 10),
        ("back", 2, 20, 10),
    ]
