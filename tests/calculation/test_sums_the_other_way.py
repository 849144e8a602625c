"""Sums that have a way back or another way round: worked both ways on random numbers."""

from __future__ import annotations

from fractions import Fraction
from itertools import accumulate, product

from hypothesis import assume, given, settings
from hypothesis import strategies as st
from ply_by_ply import worked_forwards
from row_panels import SEAM, even_tucks, signed

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem
from generator.calculation.panel.run_steps import RunWish
from generator.calculation.panel.runs import work_runs
from generator.calculation.panel.sample import carried_take_up, sample_draw_in, sample_shrinkage, sample_take_up
from generator.calculation.panel.wish import TuckWish
from generator.calculation.turning.layers import crossed_layers, row_layers
from generator.calculation.turning.plans import PLANS, turn_plan
from generator.calculation.turning.row_wish import RowWish
from generator.calculation.turning.rows import choose_rows, cut_along
from generator.calculation.turning.trimming import trimming
from generator.calculation.worked import TuckSet, Turn
from generator.errors import CalculationError
from generator.lengths import INCH

EIGHTHS = st.integers(1, 160).map(lambda eighths: Fraction(eighths, 8))
SMALL = st.integers(1, 8).map(lambda eighths: Fraction(eighths, 8))


@given(st.integers(1, 30), SMALL, EIGHTHS)
def test_a_sample_sewn_of_tucks_of_a_take_up_tells_that_take_up(
    count: int, take_up: Fraction, finished: Fraction
) -> None:
    # Forwards: what shows and what the tucks hide make the flat cloth.
    assert sample_take_up(count, finished + count * take_up, finished) == take_up


@given(SMALL, SMALL, SMALL)
def test_a_take_up_carried_to_another_depth_and_back_is_itself(
    take_up: Fraction, one: Fraction, other: Fraction
) -> None:
    assume(take_up + 2 * (other - one) > 0)
    there = carried_take_up(take_up, one, other)
    assert carried_take_up(there, other, one) == take_up
    assert there - 2 * other == take_up - 2 * one


@given(EIGHTHS, st.integers(1, 6), SMALL)
def test_intervals_that_each_lose_as_much_tell_that_draw_in(after: Fraction, intervals: int, lost: Fraction) -> None:
    assert sample_draw_in(after + intervals * lost, after, intervals) == lost


@given(EIGHTHS, st.integers(0, 20))
def test_cloth_cut_for_its_shrinkage_comes_out_as_long_as_wanted(wanted: Fraction, per_cent: int) -> None:
    cut = wanted / (1 - Fraction(per_cent, 100))
    assert sample_shrinkage(cut, wanted) == Fraction(per_cent, 100)


@settings(max_examples=60)
@given(
    st.sampled_from(sorted(PLANS)),
    st.integers(20, 200).map(lambda quarters: Fraction(quarters, 4)),
    st.integers(24, 64).map(lambda sixteenths: Fraction(sixteenths, 16)),
)
def test_a_panel_sewn_and_trimmed_as_told_has_its_length(plan: str, finished: Fraction, spacing: Fraction) -> None:
    # Tucks 3/8 in deep, cut as told, drawn in by anything between least and most, then trimmed: the same length stays.
    wish = RowWish(finished, (SEAM, SEAM), turn_plan(plan), spacing, (Fraction(1), Fraction(6)))
    try:
        rows = choose_rows(wish, even_tucks(12, Fraction(3, 8), Fraction(3, 4)), INCH)
    except CalculationError:
        assume(False)
    cut = cut_along(rows, finished, (SEAM, SEAM), INCH)
    leave = cut - rows.extra
    trimmed = trimming(rows, leave, INCH)
    assert leave >= finished + 2 * SEAM.first
    assert 0 <= trimmed.least <= trimmed.most
    # Told outward, to the ruler: what falls off is never more than told, and never less.
    assert 0 <= leave - (cut - rows.draw_in_least - 2 * trimmed.most) < 2 * INCH.mark
    if rows.extra >= rows.draw_in_most:
        assert 0 <= (cut - rows.draw_in_most - 2 * trimmed.least) - leave < 2 * INCH.mark


def cloth_over(tucks: TuckSet, turns: tuple[Turn, ...], place: Fraction) -> list[str]:
    """The points of the flat cloth that come to lie over one place: the panel's own, and both sides of every flap."""
    over = ["panel"]
    for number, (foot, depth, turn) in enumerate(zip(tucks.stitching, tucks.depths, turns, strict=True)):
        past = place - foot if turn is Turn.RIGHT else foot - place
        if turn is not Turn.UPRIGHT and 0 < past < depth:
            over += [f"tuck {number} up to its fold", f"tuck {number} back from it"]
    return over


@given(SMALL, SMALL, SMALL, SMALL)
def test_layers_at_a_crossing_are_all_points_of_the_cloth_that_come_to_lie_there(
    depth: Fraction, pitch: Fraction, cross_depth: Fraction, cross_pitch: Fraction
) -> None:
    # Folding both ways, a point of the cloth lies over a place if it does so across and along: the pairs of both.
    one, other = even_tucks(6, depth, pitch), even_tucks(6, cross_depth, cross_pitch)
    turned = signed(">" * 6)
    across, along = (
        [cloth_over(tucks, turned, Fraction(place, 16)) for place in range(1, int(tucks.finished * 16), 2)]
        for tucks in (one, other)
    )
    pairs = set(product(max(across, key=len), max(along, key=len)))
    assert len(pairs) == crossed_layers(row_layers(one, turned), row_layers(other, turned))


PIECES = st.lists(st.tuples(st.integers(4, 44), st.integers(4, 40), st.integers(1, 2)), min_size=1, max_size=4)


@settings(max_examples=40)
@given(PIECES, PIECES)
def test_two_kits_laid_out_together_never_take_more_than_each_by_itself(
    one: list[tuple[int, int, int]], other: list[tuple[int, int, int]]
) -> None:
    kits = [
        [
            CutItem(f"{kit} {place}", "Piece", Fraction(across), Fraction(along), number)
            for place, (across, along, number) in enumerate(pieces)
        ]
        for kit, pieces in (("one", one), ("other", other))
    ]
    together, *apart = (cutting_layout(items, Fraction(44)) for items in (kits[0] + kits[1], *kits))
    assert together.proven != "open"
    assert together.possible <= sum(layout.possible for layout in apart)
    assert together.lower_bound <= together.possible <= together.length


RUNS = st.lists(
    st.tuples(
        st.integers(1, 4).map(lambda quarters: Fraction(quarters, 4)),  # depth
        st.integers(3, 8).map(lambda halves: Fraction(halves, 2)),  # pitch in the run
        st.integers(1, 4),  # tucks
        st.integers(3, 8).map(lambda halves: Fraction(halves, 2)),  # pitch to the next run
    ),
    min_size=1,
    max_size=4,
)


@settings(max_examples=60)
@given(RUNS, SMALL)
def test_runs_of_any_tucks_folded_ply_by_ply_lie_as_their_runs_ask(
    runs: list[tuple[Fraction, Fraction, int, Fraction]], margin: Fraction
) -> None:
    # Everything lies on quarters, so nothing is rounded. The pitches are walked run by run, and the finished width is
    # their sum and a margin at either end.
    pitches = [pitch for _, inside, number, after in runs for pitch in [*[inside] * (number - 1), after]][:-1]
    margin += 1
    finished = sum(pitches, Fraction(0)) + 2 * margin
    wish = TuckWish(finished, Fraction(0), Fraction(0), (SEAM, SEAM), (margin, margin), (margin, margin))
    asked = [RunWish((depth,), inside, after, number) for depth, inside, number, after in runs]
    tucks = work_runs(asked, wish, INCH)
    assert list(tucks.depths) == [depth for depth, _, number, _ in runs for _ in range(number)]
    stitching = tuple(accumulate(pitches, initial=margin))
    assert worked_forwards(tucks) == (finished, stitching)
    assert tucks.cut == finished + 2 * sum(tucks.depths, Fraction(0)) + 2 * SEAM.first
