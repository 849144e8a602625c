"""How many rows fit and where they lie at the edges of what can be asked: each worked by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from row_panels import SEAM, even_tucks, signed

from generator.calculation.count_rule import CountRule
from generator.calculation.turning.layers import LayerLimits
from generator.calculation.turning.plans import drawn_plan, turn_plan
from generator.calculation.turning.rows import RowWish, choose_rows, cut_along, length_needed
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import INCH

ONE_WAY = RowWish(
    finished_along=Fraction(16),
    ends=(SEAM, SEAM),
    plan=turn_plan("one way"),
    spacing=Fraction(3),
    first=(Fraction(2), Fraction(3)),
)
TUCKS = even_tucks(12, Fraction(1, 2), Fraction(1))
HEM = End("hem", Fraction(1, 4), Fraction(1))


def refusal(wish: RowWish) -> str:
    with pytest.raises(CalculationError) as refused:
        choose_rows(wish, TUCKS, INCH)
    return str(refused.value)


def test_the_intervals_are_counted_from_the_first_row_of_the_repeat() -> None:
    # Right, left, standing: the first two rows swing over whole, 3 - sqrt(9 - (pi/2)^2) = 0.444; two rows leave
    # (16 - 2.556) / 2 = 6.722, on the ruler 6 3/4. Half a swing would cost 0.105 and leave 6.552.
    three = replace(ONE_WAY, plan=drawn_plan(">>\n<<\n.."), first=(Fraction(1), Fraction(8)))
    assert choose_rows(replace(three, number=CountRule(exactly=2)), TUCKS, INCH).first == Fraction(27, 4)
    # The second interval is half a swing, 2.895 long: (16 - 2.556 - 2.895) / 2 = 5.275, on the ruler 5 1/4; the third
    # as well: 3.827, on the ruler 3 13/16.
    assert choose_rows(replace(three, number=CountRule(exactly=3)), TUCKS, INCH).first == Fraction(21, 4)
    assert choose_rows(replace(three, number=CountRule(exactly=4)), TUCKS, INCH).first == Fraction(61, 16)


def test_a_row_may_lie_half_an_inch_from_both_edges() -> None:
    # 13 - 4 x 3 = 1.
    wish = replace(ONE_WAY, finished_along=Fraction(13), first=(Fraction(1, 2), Fraction(1)))
    assert len(choose_rows(wish, TUCKS, INCH).rows) == 5


def test_no_row_lies_on_the_very_edge() -> None:
    # 12 = 4 x 3 leaves nothing beside five rows; four leave 1 1/2.
    wish = replace(ONE_WAY, finished_along=Fraction(12), first=(Fraction(0), Fraction(1)))
    assert refusal(wish) == (
        "rows 3 in apart do not fit a finished length of 12 in (asked for: any number): nearest is 4 rows with the "
        "first 1 1/2 in from the edge; the first row may be 0 in to 1 in from the edge; change that range, the spacing "
        "or the number"
    )


def test_a_small_piece_has_one_row_and_a_fixed_first_row_is_kept() -> None:
    small = replace(ONE_WAY, finished_along=Fraction(1), first=(Fraction(0), Fraction(1)))
    assert [row.ruled for row in choose_rows(small, TUCKS, INCH).rows] == [1]
    # 16 - 4 x 3 leaves 2 either side, which is all that it may be.
    fixed = replace(ONE_WAY, first=(Fraction(2), Fraction(2)))
    assert len(choose_rows(fixed, TUCKS, INCH).rows) == 5


def test_a_length_of_nothing_is_refused() -> None:
    text = "the finished length and the spacing of the rows must be more than nothing"
    assert refusal(replace(ONE_WAY, finished_along=Fraction(0))) == text
    assert refusal(replace(ONE_WAY, spacing=Fraction(0))) == text


def test_fifty_thousand_turns_are_worked_and_no_more() -> None:
    # 100 tucks in 500 rows an inch apart on 500 in, the first 1/2 in from the edge; on 501 in a row more.
    many = even_tucks(100, Fraction(1, 4), Fraction(1))
    wish = replace(ONE_WAY, finished_along=Fraction(500), spacing=Fraction(1), first=(Fraction(1, 2), Fraction(1, 2)))
    assert len(choose_rows(wish, many, INCH).rows) == 500
    with pytest.raises(CalculationError) as refused:
        choose_rows(replace(wish, finished_along=Fraction(501)), many, INCH)
    assert str(refused.value) == (
        "100 tucks in 501 rows are more than 50000 turns, which is not worked out; rule the rows further apart, or "
        "space the tucks wider"
    )


@pytest.mark.parametrize(("top", "bottom"), [(SEAM, End("raw")), (End("raw"), SEAM)])
def test_only_the_edge_that_something_is_sewn_across_holds_the_tucks(top: End, bottom: End) -> None:
    rows = choose_rows(replace(ONE_WAY, ends=(top, bottom)), TUCKS, INCH)
    right = signed(">" * 12)
    assert (rows.top, rows.bottom) == (right if top is SEAM else (), right if bottom is SEAM else ())


def test_a_bottom_edge_that_turns_the_tucks_draws_in_below_the_rows() -> None:
    wish = replace(ONE_WAY, first=(Fraction(3), Fraction(5)), bottom_held="left")
    rows = choose_rows(wish, TUCKS, INCH)
    # Four rows leave (16 - 9) / 2 = 3 1/2. At the bottom that is ruled sqrt(3.5^2 + (pi/2)^2) = 3.836 and loses 0.336,
    # the straight way 3.836 - sqrt(3.836^2 - 1) = 0.133. Cut 17.336 up to 17 3/8, spare 0.039.
    assert (rows.extra, rows.draw_in_least, rows.draw_in_most) == (Fraction(3, 8), Fraction(1, 8), Fraction(3, 8))
    # 1/2 + 0.019 + 3.5 = 4.019, on the ruler 4.
    assert rows.rows[0].ruled == 4
    # 4 - 1/2 - 3/16 = 3.3125 from the trimmed edge, pushed down by half of 0.133 to half of 0.336: 3.379 to 3.481.
    assert (rows.rows[0].least, rows.rows[0].most) == (Fraction(27, 8), Fraction(7, 2))


def test_what_a_held_bottom_edge_loses_is_counted_from_where_its_row_is_ruled() -> None:
    # Four rows leave (18 3/4 - 9) / 2 = 4 7/8, ruled sqrt(4.875^2 + (pi/2)^2) = 5.1218: 0.2468, so 1/4; at 4 7/8
    # it would be 0.26 and 3/8.
    wish = replace(ONE_WAY, finished_along=Fraction(75, 4), first=(Fraction(4), Fraction(5)), bottom_held="left")
    assert choose_rows(wish, TUCKS, INCH).extra == Fraction(1, 4)


def test_half_of_what_is_cut_to_spare_lies_above_the_rows() -> None:
    wish = replace(ONE_WAY, finished_along=Fraction(33, 2), first=(Fraction(3), Fraction(5)), top_held="left")
    # Four rows leave 3 3/4, ruled sqrt(3.75^2 + (pi/2)^2) = 4.0657: 0.3157 lost, 3/8 extra, 0.0593 to spare.
    # 1/2 + 0.0297 + 4.0657 = 4.5954, on the ruler 4 5/8 (4.5938 lies halfway).
    assert choose_rows(wish, TUCKS, INCH).rows[0].ruled == Fraction(37, 8)


def test_different_edges_have_their_own_allowances() -> None:
    # Seam 1/2 at the top, hem of 1/4 and 1 at the bottom: 16 + 1/2 + 1 1/4. Rows from 1/2 + 2 on.
    ends = (SEAM, HEM)
    assert length_needed(Fraction(16), ends) == cut_along(None, Fraction(16), ends, INCH) == Fraction(71, 4)
    rows = choose_rows(replace(ONE_WAY, ends=ends), TUCKS, INCH).rows
    assert [row.ruled for row in rows] == [Fraction(5, 2) + 3 * number for number in range(5)]
    turned_over = choose_rows(replace(ONE_WAY, ends=(HEM, SEAM)), TUCKS, INCH).rows
    assert [row.ruled for row in turned_over] == [Fraction(13, 4) + 3 * number for number in range(5)]


@pytest.mark.parametrize(("name", "place"), [("top", 0), ("bottom", 1)])
def test_no_tuck_lies_along_an_edge_to_hold_a_caught_hem(name: str, place: int) -> None:
    ends = [SEAM, SEAM]
    ends[place] = End("caught hem")
    with pytest.raises(CalculationError) as refused:
        length_needed(Fraction(16), (ends[0], ends[1]))
    assert str(refused.value) == (
        f"the {name} edge cannot be a caught hem: no tuck lies along it to hold it; write a hem with its width"
    )


def test_the_thickest_row_counts_and_the_top_edge_is_named() -> None:
    raw = (End("raw"), End("raw"))
    standing = replace(ONE_WAY, plan=drawn_plan(">>\n.."), ends=raw)
    assert choose_rows(standing, TUCKS, INCH).layers == 3
    assert refusal(replace(ONE_WAY, ends=(HEM, SEAM), limits=LayerLimits(5, 8))).startswith(
        "the top edge goes through 9 layers of cloth and the most is 8;"
    )
