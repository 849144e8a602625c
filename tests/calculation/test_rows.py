"""Rows: a case worked by hand, the panel sewn and trimmed again as a second route, and every refusal."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise
from math import pi, sqrt

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as some
from row_panels import SEAM, even_tucks, signed, uneven_tucks, written

from generator.calculation.count_rule import CountRule
from generator.calculation.turning.layers import LayerLimits
from generator.calculation.turning.plans import drawn_plan, turn_plan
from generator.calculation.turning.rows import RowWish, choose_rows, cut_along, length_needed
from generator.calculation.turning.turns import row_words
from generator.calculation.worked import End, RowSet, TuckSet
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE, Edition, on_step

WISH = RowWish(
    finished_along=Fraction(16),
    ends=(SEAM, SEAM),
    plan=turn_plan("linked cells"),
    spacing=Fraction(3),
    first=(Fraction(2), Fraction(3)),
)
TUCKS = even_tucks(12, Fraction(1, 2), Fraction(1))


def refusal(wish: RowWish, tucks: TuckSet = TUCKS, edition: Edition = INCH) -> str:
    with pytest.raises(CalculationError) as refused:
        choose_rows(wish, tucks, edition)
    return str(refused.value)


def swung(before: str, after: str) -> float:
    """Swing in half turns, from the signs."""
    return 0.0 if before == after else 0.5 if "." in (before, after) else 1.0


def float_range(spacing: float, before: str, after: str, depths: tuple[Fraction, ...]) -> tuple[float, float]:
    """Second route: least and planned draw-in of one interval in floating point, from the signs of its two rows."""
    ways = [(float(depth), swung(*signs)) for depth, *signs in zip(depths, before, after, strict=True)]
    least = min(spacing - sqrt(spacing**2 - 4 * depth**2 * half_turns) for depth, half_turns in ways)
    most = max(spacing - sqrt(spacing**2 - (pi * half_turns * depth) ** 2) for depth, half_turns in ways)
    return least, most


def test_sixteen_inches_with_five_rows_are_worked_by_hand() -> None:
    rows = choose_rows(WISH, TUCKS, INCH)
    # An interval loses 3 - sqrt(9 - (pi/2)^2) = 0.4441 planned and 3 - sqrt(9 - 1) = 0.1716 at least.
    # 16 + 2 x 1/2 + 4 x 0.4441 = 18.776, cut 18 7/8, so 1 7/8 extra.
    assert rows.extra == Fraction(15, 8)
    assert cut_along(rows, Fraction(16), WISH.ends, INCH) == Fraction(151, 8)
    # The rows lie in the middle of the cut: (18 7/8 - 12) / 2 = 3 7/16, then every 3 in.
    assert [row.ruled for row in rows.rows] == [Fraction(55 + 48 * number, 16) for number in range(5)]
    # First row when all is sewn: (16 - 4 x 2.5559) / 2 = 2.888, to the ruler 2 7/8.
    assert rows.first == Fraction(23, 8)
    # In all 0.686 to 1.776 is lost: 11/16 is 0.6875, so 5/8 below; 1 13/16 is 1.8125 above.
    assert (rows.draw_in_least, rows.draw_in_most) == (Fraction(5, 8), Fraction(29, 16))


def test_where_the_rows_end_up_is_worked_by_hand() -> None:
    rows = choose_rows(WISH, TUCKS, INCH)
    # Row 1 was ruled 3 7/16 - 1/2 - 15/16 = 2 in below the middle line of the trimming; the four intervals below it
    # push it down by half of what they lose, 0.343 to 0.888: 2.343 to 2.888, outward 2 5/16 and 2 15/16.
    assert (rows.rows[0].least, rows.rows[0].most) == (Fraction(37, 16), Fraction(47, 16))
    # The middle row: two intervals either way, 8 -+ (0.888 - 0.343) / 2 = 7.727 to 8.273, outward 7 11/16 and 8 5/16.
    assert (rows.rows[2].least, rows.rows[2].most) == (Fraction(123, 16), Fraction(133, 16))
    # The last row mirrors the first.
    assert (rows.rows[4].least, rows.rows[4].most) == (16 - Fraction(47, 16), 16 - Fraction(37, 16))


def test_every_row_knows_its_turns_its_start_and_its_words() -> None:
    rows = choose_rows(WISH, TUCKS, INCH).rows
    assert [row.number for row in rows] == [1, 2, 3, 4, 5]
    assert [written(row.turns)[:3] for row in rows] == ["><>", "<><", "><>", "<><", "><>"]
    assert [row.words[0] for row in rows] == ["toward", "away", "toward", "away", "toward"]
    assert {row.start for row in rows} == {"right"}


def test_sewn_back_and_forth_the_words_follow_the_end_where_the_row_begins() -> None:
    rows = choose_rows(replace(WISH, plan=turn_plan("ripples"), start="left", back_and_forth=True), TUCKS, INCH).rows
    assert [row.start for row in rows] == ["left", "right", "left", "right", "left"]
    # Row 1 all right from the left is toward; row 2 all left from the right is toward again.
    assert {word for row in rows for word in row.words} == {"toward"}


def test_rows_that_lie_alike_cost_nothing_and_stay_where_they_are_ruled() -> None:
    wish = replace(WISH, plan=turn_plan("one way"))
    rows = choose_rows(wish, TUCKS, INCH)
    # (16 - 4 x 3) / 2 = 2 in from the finished edges, 1/2 in more from the cut ones.
    assert (rows.extra, rows.first, rows.draw_in_most) == (0, 2, 0)
    assert [row.ruled for row in rows.rows] == [Fraction(5, 2) + 3 * number for number in range(5)]
    assert all(row.least == row.most == row.ruled - Fraction(1, 2) for row in rows.rows)
    assert cut_along(rows, wish.finished_along, wish.ends, INCH) == 17


def test_as_many_rows_as_fit_are_used() -> None:
    # Six rows would leave (16 - 5 x 2.5559) / 2 = 1.61 in, five leave 2.89.
    assert len(choose_rows(replace(WISH, first=(Fraction(3, 2), Fraction(3))), TUCKS, INCH).rows) == 6
    assert len(choose_rows(WISH, TUCKS, INCH).rows) == 5


def test_a_wished_number_of_rows_is_kept() -> None:
    wish = replace(WISH, first=(Fraction(1), Fraction(8)))
    for number in range(1, 7):
        assert len(choose_rows(replace(wish, number=CountRule(exactly=number)), TUCKS, INCH).rows) == number
    assert len(choose_rows(replace(wish, number=CountRule(2, 1)), TUCKS, INCH).rows) == 5
    assert len(choose_rows(replace(wish, number=CountRule(4)), TUCKS, INCH).rows) == 4


def test_a_single_row_lies_in_the_middle() -> None:
    rows = choose_rows(replace(WISH, first=(Fraction(1), Fraction(8)), number=CountRule(exactly=1)), TUCKS, INCH)
    assert [(row.ruled, row.least, row.most) for row in rows.rows] == [(Fraction(17, 2), 8, 8)]
    assert rows.extra == 0


def test_edges_hold_the_tucks_as_the_rows_next_to_them() -> None:
    rows = choose_rows(replace(WISH, number=CountRule(2), first=(Fraction(1), Fraction(5))), TUCKS, INCH)
    assert (rows.top, rows.bottom) == (rows.rows[0].turns, rows.rows[-1].turns)
    assert rows.top != rows.bottom


def test_an_edge_that_holds_the_tucks_the_other_way_draws_in_too() -> None:
    wish = replace(WISH, plan=turn_plan("one way"), first=(Fraction(3), Fraction(5)), top_held="left")
    rows = choose_rows(wish, TUCKS, INCH)
    # Four rows leave (16 - 9) / 2 = 3 1/2 in. At the top it is ruled sqrt(3.5^2 + (pi/2)^2) = 3.836: 0.336 is lost,
    # 16 + 1 + 0.336 = 17.336, cut 17 3/8, extra 3/8, of which 0.039 to spare.
    assert rows.extra == Fraction(3, 8)
    assert rows.draw_in_most == Fraction(3, 8)
    # 1/2 + 0.039 / 2 + 3.836 = 4.356, on the ruler 4 3/8.
    assert rows.rows[0].ruled == Fraction(35, 8)
    assert (rows.top, rows.bottom) == (signed("<" * 12), signed(">" * 12))


def test_a_free_edge_holds_nothing() -> None:
    rows = choose_rows(replace(WISH, top_held="free", ends=(SEAM, End("raw"))), TUCKS, INCH)
    assert (rows.top, rows.bottom) == ((), ())


def test_a_measured_draw_in_overrides_the_computed_one() -> None:
    rows = choose_rows(replace(WISH, measured_draw_in=Fraction(1, 4)), TUCKS, INCH)
    # Five rows leave (16 - 4 x 2 3/4) / 2 = 2 1/2 in; the extra is 4 x 1/4 = 1, on a step already.
    assert (rows.measured, rows.extra, rows.draw_in_least, rows.draw_in_most) == (True, 1, 1, 1)
    assert [row.ruled for row in rows.rows] == [3 + 3 * number for number in range(5)]
    assert [row.least for row in rows.rows] == [Fraction(5, 2) + Fraction(11, 4) * number for number in range(5)]
    assert all(row.least == row.most for row in rows.rows)


def test_with_a_sample_rows_may_be_closer_than_the_arc() -> None:
    # pi x 1/2 = 1.571 in is too close to compute; 2 x 1/2 = 1 in is the least of all.
    close = replace(WISH, spacing=Fraction(5, 4))
    assert refusal(close) == (
        "rows 1 1/4 in apart are too close for tucks 1/2 in deep: at least 1 5/8 in is needed and 3 in is better; "
        "rule the rows further apart, or make the tucks shallower, or give the draw-in of a sewn sample"
    )
    assert choose_rows(replace(close, measured_draw_in=Fraction(1, 2)), TUCKS, INCH).draw_in_most > 0


def test_spacings_off_the_ruler_are_ruled_on_it_each_by_itself() -> None:
    wish = replace(WISH, plan=turn_plan("one way"), spacing=Fraction(31, 10), first=(Fraction(1), Fraction(3)))
    rows = choose_rows(wish, TUCKS, INCH).rows
    # 3.1, 6.2, 9.3, 12.4 from the first, to sixteenths: 50, 99, 149, 198.
    assert [(row.ruled - rows[0].ruled) * 16 for row in rows] == [0, 50, 99, 149, 198]


def test_a_metric_panel_is_ruled_in_millimetres_and_cut_in_half_centimetres() -> None:
    seam = End("seam", 15 * MILLIMETRE)
    wish = replace(
        WISH,
        finished_along=400 * MILLIMETRE,
        ends=(seam, seam),
        spacing=75 * MILLIMETRE,
        first=(30 * MILLIMETRE, 70 * MILLIMETRE),
    )
    rows = choose_rows(wish, even_tucks(12, 10 * MILLIMETRE, 20 * MILLIMETRE), METRIC)
    # 75 - sqrt(75^2 - (10 pi)^2) = 75 - 68.103 = 6.897 an interval; six rows leave (400 - 5 x 68.103) / 2 = 29.7, too
    # little, so five with 63.8; 400 + 30 + 27.59 = 457.59, cut 46 cm; rows from (460 - 300) / 2 = 80 mm on.
    assert cut_along(rows, wish.finished_along, wish.ends, METRIC) == 460 * MILLIMETRE
    assert [row.ruled / MILLIMETRE for row in rows.rows] == [80, 155, 230, 305, 380]


def test_the_deepest_tuck_sets_the_extra() -> None:
    deep = Fraction(1, 2)
    tucks = uneven_tucks((Fraction(1, 4), deep, Fraction(1, 4)), (Fraction(1), Fraction(1)))
    assert choose_rows(WISH, tucks, INCH).extra == choose_rows(WISH, TUCKS, INCH).extra


def test_on_a_ring_no_tuck_is_alone() -> None:
    tucks = even_tucks(12, Fraction(1, 2), Fraction(1), ring=True)
    rows = choose_rows(replace(WISH, plan=turn_plan("linked cells", lone="upright")), tucks, INCH).rows
    assert {sign for row in rows for sign in written(row.turns)} == {"<", ">"}
    assert refusal(WISH, even_tucks(13, Fraction(1, 2), Fraction(1), ring=True)) == (
        "13 tucks do not close the plan 'linked cells' on itself; the number must be an even number"
    )


@pytest.mark.parametrize(
    ("end", "layers"), [(SEAM, 4), (End("hem", Fraction(1, 2), Fraction(1, 2)), 9), (End("raw"), 3)]
)
def test_the_thickest_place_may_be_the_edge(end: End, layers: int) -> None:
    assert choose_rows(replace(WISH, ends=(end, end), first=(Fraction(1), Fraction(3))), TUCKS, INCH).layers == layers


def sewn_and_trimmed(rows: RowSet, wish: RowWish, losses: list[Fraction]) -> tuple[list[Fraction], Fraction]:
    """Second route: shorten the cut interval by interval, trim both ends alike, measure from the finished edge."""
    needed = length_needed(wish.finished_along, wish.ends)
    cut = needed + rows.extra
    flat = [row.ruled for row in rows.rows]
    places, lost = [], Fraction(0)
    for place, loss in zip(flat, losses, strict=False):
        lost += loss
        places.append(place - lost)
    trim = (cut - sum(losses) - needed) / 2
    return [place - trim - wish.ends[0].first for place in places], trim


SIGNS = some.integers(1, 4).flatmap(
    lambda width: some.lists(some.text("<>.", min_size=width, max_size=width), min_size=1, max_size=4)
)


@settings(max_examples=150, deadline=None)
@given(
    lines=SIGNS,
    depth=some.integers(4, 16).map(lambda steps: Fraction(steps, 16)),
    depths_apart=some.integers(16, 48).map(lambda quarters: Fraction(quarters, 4)),
    finished=some.integers(40, 400).map(lambda quarters: Fraction(quarters, 4)),
    edition=some.sampled_from((INCH, METRIC)),
    shares=some.lists(some.fractions(0, 1, max_denominator=8), min_size=3, max_size=3),
)
def test_a_panel_sewn_and_trimmed_has_its_rows_where_they_were_told(
    lines: list[str],
    depth: Fraction,
    depths_apart: Fraction,
    finished: Fraction,
    edition: Edition,
    shares: list[Fraction],
) -> None:
    scale = Fraction(1) if edition is INCH else 25 * MILLIMETRE
    depth, finished, tucks = depth * scale, finished * scale, even_tucks(6, depth * scale, 2 * depth * scale)
    spacing = depth * depths_apart
    wish = replace(
        WISH, plan=drawn_plan("\n".join(lines)), finished_along=finished, spacing=spacing, first=(depth, finished)
    )
    assume(spacing > Fraction(1, 2))
    rows = choose_rows(wish, tucks, edition)
    signs = [written(row.turns) for row in rows.rows]
    losses = [Fraction(0)]
    for number, ((before, after), (one, other)) in enumerate(zip(pairwise(rows.rows), pairwise(signs), strict=True)):
        least, most = float_range(float(after.ruled - before.ruled), one, other, tucks.depths)
        losses.append(Fraction(least) + (Fraction(most) - Fraction(least)) * shares[number % 3])
    losses.append(Fraction(0))
    places, trim = sewn_and_trimmed(rows, wish, losses)
    allowed = Fraction(1, 10**6)
    # What is cut is enough, nothing falls short, and every row lies in its range.
    assert trim >= -allowed
    assert rows.draw_in_least - allowed <= sum(losses) <= rows.draw_in_most + allowed
    for row, place in zip(rows.rows, places, strict=True):
        assert 0 <= row.least <= row.most <= finished
        if 0 <= place <= finished:
            assert row.least - allowed <= place <= row.most + allowed
        assert row.words == row_words(row.turns, row.start)
        assert len(row.words) == tucks.count
        assert on_step(row.ruled, edition.mark)
    if rows.extra:
        assert on_step(cut_along(rows, finished, wish.ends, edition), edition.cut_step)


@settings(max_examples=100, deadline=None)
@given(
    finished=some.integers(16, 200).map(lambda halves: Fraction(halves, 2)),
    least=some.integers(1, 16).map(lambda quarters: Fraction(quarters, 4)),
    depths_apart=some.integers(6, 12),
)
def test_no_further_row_would_fit(finished: Fraction, least: Fraction, depths_apart: int) -> None:
    assume(least <= finished / 2)
    spacing = Fraction(depths_apart, 2)
    rows = choose_rows(replace(WISH, finished_along=finished, spacing=spacing, first=(least, finished)), TUCKS, INCH)
    interval = sqrt(spacing**2 - (pi / 2) ** 2)
    left = [(float(finished) - (number - 1) * interval) / 2 for number in range(1, 500)]
    # Brute force: the first number of rows that leaves too little is one more than is used.
    assert next(number for number, first in enumerate(left) if first < least) == len(rows.rows)


@pytest.mark.parametrize(
    ("wish", "message"),
    [
        (
            replace(WISH, first=(Fraction(2), Fraction(5, 2))),
            "rows 3 in apart do not fit a finished length of 16 in (asked for: any number): nearest are 5 rows with "
            "the first 2 7/8 in from the edge and 6 rows with the first 1 5/8 in from the edge; the first row may be "
            "2 in to 2 1/2 in from the edge; change that range, the spacing or the number",
        ),
        (
            replace(WISH, number=CountRule(exactly=9)),
            "rows 3 in apart do not fit a finished length of 16 in (asked for: exactly 9 rows): no such number of "
            "rows has room; the first row may be 2 in to 3 in from the edge; change that range, the spacing or the "
            "number",
        ),
        (
            replace(WISH, number=CountRule(exactly=1)),
            "rows 3 in apart do not fit a finished length of 16 in (asked for: exactly 1 row): nearest is 1 row with "
            "the first 8 in from the edge; the first row may be 2 in to 3 in from the edge; change that range, the "
            "spacing or the number",
        ),
        (
            replace(WISH, measured_draw_in=Fraction(3)),
            "if every interval loses 3 in, nothing is left of rows 3 in apart; give the draw-in of one interval, "
            "not of the whole sample",
        ),
        (
            replace(WISH, measured_draw_in=Fraction(-1, 8)),
            "a measured draw-in is less than nothing; give what one interval lost, or nothing",
        ),
        (
            replace(WISH, first=(Fraction(3), Fraction(2))),
            "the range of the first row must run from nothing or more to at least as much",
        ),
        (
            replace(WISH, spacing=Fraction(0)),
            "the finished length and the spacing of the rows must be more than nothing",
        ),
        (
            replace(WISH, ends=(SEAM, End("caught hem"))),
            "the bottom edge cannot be a caught hem: no tuck lies along it to hold it; write a hem with its width",
        ),
    ],
)
def test_rows_that_cannot_be_are_refused_with_a_remedy(wish: RowWish, message: str) -> None:
    assert refusal(wish) == message


def test_endless_rows_are_refused() -> None:
    assert refusal(replace(WISH, finished_along=Fraction(10_000), plan=turn_plan("one way"))) == (
        "more than 1000 rows would fit; rule them further apart"
    )


def test_a_panel_without_tucks_has_no_rows() -> None:
    plain = replace(TUCKS, depths=(), take_ups=(), marks=(), stitching=())
    assert refusal(WISH, plain) == "a panel without tucks has nothing to turn; take its rows out"


def test_facing_pairs_without_room_are_refused_in_a_row_and_at_no_edge() -> None:
    blind = even_tucks(6, Fraction(1, 2), Fraction(3, 8))
    assert refusal(WISH, blind) == (
        "tucks 1 and 2: two tucks that are turned to each other have less room between them than one of them is deep; "
        "give them a wider spacing, or make them shallower"
    )
    assert choose_rows(replace(WISH, plan=turn_plan("ripples")), blind, INCH).layers == 6


def test_too_many_layers_are_refused_at_the_row_and_at_the_edge() -> None:
    blind = even_tucks(12, Fraction(1, 2), Fraction(3, 32))
    ripples = replace(WISH, plan=turn_plan("ripples"))
    # 1/2 over 3/32: six tucks over one point, 13 layers.
    assert refusal(ripples, blind).startswith("row 1 goes through 13 layers of cloth and the most is 9;")
    hem = End("hem", Fraction(1, 2), Fraction(1, 2))
    overlapping = even_tucks(6, Fraction(1, 2), Fraction(3, 4))
    assert refusal(replace(WISH, ends=(SEAM, hem), first=(Fraction(1), Fraction(3))), overlapping).startswith(
        "the bottom edge goes through 15 layers of cloth and the most is 9;"
    )
    assert refusal(replace(ripples, limits=LayerLimits(2, 2))).startswith("row 1 goes through 3 layers")
