"""Breadths and joins: worked by hand, sewn together again, and beside every choice of feet."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import chain, combinations, pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as draw
from tuck_panels import even_panel, inches, seam

from generator.calculation.cutting.joins import breadth_joins
from generator.calculation.panel.marks import laid_out
from generator.calculation.worked import BreadthJoin, End, TuckSet, Turn
from generator.errors import CalculationError
from generator.lengths import METRIC

LEFT, RIGHT, UPRIGHT = Turn.LEFT, Turn.RIGHT, Turn.UPRIGHT
QUARTER = Fraction(1, 4)


def panel(count: int, depth: str = "1/2", pitch: str = "1") -> TuckSet:
    """Seams of 1/2 in, margins of 1 in: the first mark at 1 1/2 in and a depth."""
    return even_panel(count, depth, pitch, (seam(), seam()), ("1", "1"))


def rows(*drawn: str) -> tuple[tuple[Turn, ...], ...]:
    return tuple(tuple(Turn(sign) for sign in row) for row in drawn)


def sewn_together(breadths: Sequence[Fraction], allowance: Fraction) -> tuple[Fraction, list[Fraction]]:
    """Sew breadths to each other from the left; return the width of the joined cloth and where the seams lie."""
    width, seams = breadths[0], []
    for breadth in breadths[1:]:
        width -= allowance
        seams.append(width)
        width += breadth - allowance
    return width, seams


def place_when_tucked(tucks: TuckSet, at: Fraction) -> Fraction:
    """Fold every tuck and return where a place of the flat cloth comes to lie, from the left finished edge."""
    hidden = sum(
        (
            min(max(at - (mark - take_up / 2), Fraction(0)), take_up)
            for mark, take_up in zip(tucks.marks, tucks.take_ups, strict=True)
        ),
        Fraction(0),
    )
    return at - hidden - tucks.left_allowance


def choices(tucks: TuckSet, turns: tuple[tuple[Turn, ...], ...]) -> list[tuple[Fraction, int]]:
    """Every foot with the number of rows in which its tuck turns over it."""
    feet = []
    for place, (mark, take_up) in enumerate(zip(tucks.marks, tucks.take_ups, strict=True)):
        feet.append((mark - take_up / 2, sum(row[place] is LEFT for row in turns)))
        feet.append((mark + take_up / 2, sum(row[place] is RIGHT for row in turns)))
    return feet


def widths(tucks: TuckSet, places: Sequence[Fraction], allowance: Fraction) -> list[Fraction]:
    cuts = [Fraction(0), *places, tucks.cut]
    return [right - left + allowance * ((left > 0) + (right < tucks.cut)) for left, right in pairwise(cuts)]


def test_a_panel_that_fits_the_cloth_has_one_breadth_and_no_join() -> None:
    tucks = panel(10)
    # 1 + 9 x 1 + 1 = 11 finished, 10 in hidden, seams 1 in: 22.
    assert breadth_joins(tucks, (), Fraction(22), QUARTER) == ((Fraction(22),), ())


def test_two_breadths_meet_at_the_foot_nearest_to_the_middle() -> None:
    # L 22, marks 2, 4, ..., 20, left feet 1 1/2, 3 1/2, ... 9 1/2, 11 1/2: both lie 1/2 beside the middle or 1 1/2; all
    # turn left. 11 1/2: 11 3/4 and 10 3/4.
    breadths, joins = breadth_joins(panel(10), rows("<" * 10), Fraction(20), QUARTER)
    assert breadths == (Fraction(47, 4), Fraction(43, 4))
    assert joins == (
        BreadthJoin(
            6,
            "left",
            Fraction(23, 2),
            1,
            1,
            hidden=True,
            text="Join at the left foot of tuck 6, which hides the seam in every row. "
            "Press both allowances into the tuck.",
            in_tuck=True,
        ),
    )


def test_right_feet_are_used_where_tucks_turn_right() -> None:
    _, joins = breadth_joins(panel(10), rows(">" * 10, ">" * 10), Fraction(20), QUARTER)
    # Right feet 2 1/2, 4 1/2, ..., 10 1/2, 12 1/2: 10 1/2 is nearest to the middle, 11.
    assert [(join.tuck, join.foot, join.at, join.hidden) for join in joins] == [(5, "right", Fraction(21, 2), True)]


def test_a_join_that_rows_uncover_is_in_the_ditch() -> None:
    _, joins = breadth_joins(panel(10), rows("<" * 10, ">" * 10, "<" * 10), Fraction(20), Fraction(1, 2))
    # 1/2 in is more than 1/2 - 1/8.
    assert (joins[0].foot, joins[0].covered, joins[0].rows, joins[0].hidden) == ("left", 2, 3, False)
    assert joins[0].text == (
        "Join at the left foot of tuck 6, in the ditch: stitch the tuck a thread outside the seam. "
        "The tuck covers the seam in 2 of 3 rows. Press the allowances open."
    )


def test_the_edges_hide_a_seam_as_rows_do_and_are_not_counted_as_rows() -> None:
    # Five rows, of which three turn the tucks left, and two edges that do: three of five, not five of seven.
    turns, edges = rows("<" * 10, ">" * 10, "<" * 10, ">" * 10, "<" * 10), rows("<" * 10, "<" * 10)
    _, joins = breadth_joins(panel(10), turns, Fraction(20), QUARTER, held=edges)
    assert (joins[0].foot, joins[0].covered, joins[0].rows, joins[0].hidden) == ("left", 3, 5, False)
    assert "The tuck covers the seam in 3 of 5 rows." in joins[0].text
    # Two rows turn them left, three right; with both edges the left foot is covered in four places, the right in three.
    fewer = rows("<" * 10, ">" * 10, ">" * 10, ">" * 10, "<" * 10)
    assert breadth_joins(panel(10), fewer, Fraction(20), QUARTER, held=edges)[1][0].foot == "left"
    # An edge that does not hold the tucks is not there.
    assert breadth_joins(panel(10), fewer, Fraction(20), QUARTER, held=((), ()))[1][0].foot == "right"


def test_a_seam_that_shows_at_an_edge_only_is_not_hidden() -> None:
    turns, edges = rows("<" * 10, "<" * 10), rows("<" * 10, ">" * 10)
    _, joins = breadth_joins(panel(10), turns, Fraction(20), QUARTER, held=edges)
    assert (joins[0].covered, joins[0].rows, joins[0].hidden) == (2, 2, False)
    assert "The tuck covers the seam in every row, but not at both edges." in joins[0].text


def test_without_rows_a_join_is_in_the_ditch() -> None:
    _, joins = breadth_joins(panel(10), (), Fraction(20), Fraction(3, 8))
    assert (joins[0].covered, joins[0].rows, joins[0].hidden) == (0, 0, False)
    assert joins[0].text == (
        f"Join at the {joins[0].foot} foot of tuck {joins[0].tuck}, in the ditch: stitch the tuck a thread outside the "
        "seam. Press both allowances into the tuck."
    )


def test_a_tuck_that_hides_the_seam_is_preferred_to_equal_breadths() -> None:
    # Only tuck 4 lies one way in both rows; its left foot is at 7 1/2.
    _, joins = breadth_joins(panel(10), rows("<><<<><><>", "><><><><><"), Fraction(20), QUARTER)
    hiding = [place for place, (one, two) in enumerate(zip("<><<<><><>", "><><><><><", strict=True), 1) if one == two]
    assert joins[0].tuck in hiding
    assert joins[0].hidden


def test_upright_tucks_hide_nothing() -> None:
    _, joins = breadth_joins(panel(10), ((UPRIGHT,) * 10,), Fraction(20), QUARTER)
    assert (joins[0].covered, joins[0].rows, joins[0].hidden) == (0, 1, False)


def test_a_tuck_that_holds_a_caught_hem_carries_no_join() -> None:
    tucks = even_panel(2, "1/2", "6", (End("caught hem"), End("caught hem")), ("3/4", "3/4"))
    with pytest.raises(CalculationError):
        breadth_joins(tucks, rows("<<"), tucks.cut - 1, QUARTER)
    three = even_panel(3, "1/2", "6", (End("caught hem"), End("caught hem")), ("3/4", "3/4"))
    _, joins = breadth_joins(three, rows("<<<"), three.cut - 1, QUARTER)
    assert [join.tuck for join in joins] == [2]


def test_the_other_foot_is_used_where_it_saves_a_breadth() -> None:
    # Two tucks, marks 2 and 12 (pitch 9): left feet 1 1/2 and 11 1/2, right feet 2 1/2 and 12 1/2, L 2 + 10 + 2 = 14.
    # All turn left. Cloth of 12 1/4, allowance 1/4: from 2 1/2 (11 3/4 left) one join does, and from 11 1/2 (11 3/4).
    breadths, joins = breadth_joins(panel(2, pitch="9"), rows("<<"), Fraction(12), QUARTER)
    assert (breadths, joins[0].foot, joins[0].at) == ((Fraction(47, 4), Fraction(11, 4)), "left", Fraction(23, 2))
    # Both turn right on cloth of 11 3/4: the right foot at 12 1/2 would need 12 3/4, the one at 2 1/2 leaves 11 3/4.
    _, joins = breadth_joins(panel(2, pitch="9"), rows(">>"), Fraction(47, 4), QUARTER)
    assert (joins[0].foot, joins[0].at) == ("right", Fraction(5, 2))


@given(
    count=draw.integers(4, 9),
    signs=draw.lists(draw.sampled_from("<>."), min_size=27, max_size=27),
    sixteenths=draw.integers(90, 300),
)
def test_no_other_choice_of_feet_needs_fewer_or_hides_more_or_is_more_equal(
    count: int, signs: list[str], sixteenths: int
) -> None:
    tucks, width = panel(count, depth="3/8"), Fraction(sixteenths, 16)
    turns = rows(*("".join(signs[9 * row : 9 * row + count]) for row in range(3)))
    breadths, joins = breadth_joins(tucks, turns, width, QUARTER)

    feet = choices(tucks, turns)
    covered = dict(feet)
    worse = {
        at
        for (left, over_left), (right, over_right) in zip(feet[::2], feet[1::2], strict=True)
        for at, less in ((left, over_left < over_right), (right, over_right < over_left))
        if less
    }

    def rank(places: Sequence[Fraction]) -> tuple[int, int, int, Fraction]:
        shown = sum(covered[at] < len(turns) for at in places)
        squares = sum((breadth**2 for breadth in widths(tucks, places, QUARTER)), Fraction(0))
        return len(places), shown, len(worse.intersection(places)), squares

    subsets = chain.from_iterable(combinations(sorted(covered), size) for size in range(len(joins) + 1))
    fitting = [places for places in subsets if max(widths(tucks, places, QUARTER)) <= width]
    assert rank([join.at for join in joins]) == min(rank(places) for places in fitting)
    assert list(breadths) == widths(tucks, [join.at for join in joins], QUARTER)
    assert [join.covered for join in joins] == [covered[join.at] for join in joins]


@given(
    count=draw.integers(3, 40),
    eighths=draw.integers(1, 6),
    pitch=draw.integers(2, 12),
    width=draw.integers(40, 400),
    allowance=draw.integers(1, 4),
)
def test_breadths_sewn_together_again_give_the_cloth_with_every_seam_on_a_stitching_line(
    count: int, eighths: int, pitch: int, width: int, allowance: int
) -> None:
    tucks = even_panel(count, f"{eighths}/8", f"{pitch}/4", (seam(), End("hem", QUARTER, QUARTER)), ("1", "2"))
    cloth, beyond = Fraction(width, 8), Fraction(allowance, 8)
    breadths, joins = breadth_joins(tucks, rows("<" * count), cloth, beyond)
    joined, seams = sewn_together(breadths, beyond)
    assert joined == tucks.cut
    assert seams == [join.at for join in joins]
    assert all(breadth <= cloth for breadth in breadths)
    assert sum(breadths) == tucks.cut + 2 * beyond * len(joins)
    for join in joins:
        assert place_when_tucked(tucks, join.at) == tucks.stitching[join.tuck - 1]


def test_feet_out_of_reach_are_refused() -> None:
    # Marks 2 and 32 (pitch 29): from the right foot of tuck 1 at 2 1/2 to the left foot of tuck 2 at 31 1/2: 29 + 1/2.
    with pytest.raises(CalculationError) as refusal:
        breadth_joins(panel(2, pitch="29"), rows("<<"), Fraction(20), QUARTER)
    assert str(refusal.value) == (
        "breadths of cloth can be joined at the foot of a tuck only: from the right foot of tuck 1 to the left foot of "
        "tuck 2 a breadth of 29 1/2 in is needed, but the cloth is only 20 in wide; "
        "take a wider cloth, a closer spacing or a narrower join allowance"
    )


def test_a_plain_panel_wider_than_the_cloth_has_no_foot_to_join_at() -> None:
    plain = even_panel(0, "1/2", "1", (seam(), seam()), ("15", "15"))
    with pytest.raises(CalculationError) as refusal:
        breadth_joins(plain, (), Fraction(20), QUARTER, edition=METRIC)
    assert str(refusal.value) == (
        "breadths of cloth can be joined at the foot of a tuck only: from the left cut edge to the right cut edge a "
        "breadth of 78.7 cm is needed, but the cloth is only 50.8 cm wide; "
        "take a wider cloth, a closer spacing or a narrower join allowance"
    )


def test_a_join_without_allowance_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        breadth_joins(panel(10), (), Fraction(20), inches("0"))
    assert str(refusal.value) == "breadths are joined with a seam allowance of more than 0"


def test_a_panel_that_fits_the_cloth_needs_no_allowance() -> None:
    assert breadth_joins(panel(10), (), Fraction(22), Fraction(0)) == ((Fraction(22),), ())


def test_an_allowance_that_comes_too_near_the_fold_is_pressed_open() -> None:
    # 1/2 - 1/8 is 0.375.
    _, joins = breadth_joins(panel(10), (), Fraction(20), Fraction(38, 100))
    assert joins[0].text.endswith("Press the allowances open.")


def test_of_two_joins_as_good_the_left_one_is_taken() -> None:
    # 10 1/2 and 11 1/2 lie as far from the middle, 11.
    _, joins = breadth_joins(panel(10), (), Fraction(20), QUARTER)
    assert (joins[0].at, joins[0].foot, joins[0].tuck) == (Fraction(21, 2), "right", 5)


def test_a_join_close_to_the_edge_takes_its_allowance_on_both_sides() -> None:
    # Raw edges, margins 1/2, pitch 9: feet at 1/2, 1 1/2, 10 1/2 and 11 1/2 on 12 in. Only tuck 1 is turned, to the
    # left: only its left foot hides a seam.
    raw = even_panel(2, "1/2", "9", (End("raw"), End("raw")), ("1/2", "1/2"))
    breadths, joins = breadth_joins(raw, rows("<."), Fraction(47, 4), QUARTER)
    assert (breadths, joins[0].tuck, joins[0].hidden) == ((Fraction(3, 4), Fraction(47, 4)), 1, True)


def test_the_allowances_are_pressed_by_the_depth_of_their_own_tuck() -> None:
    # Depths 1/4 and 1/2, pitch 9, margins 1, seams 1/2: left feet at 1 1/2 and 11 on 13 1/2 in; cloth of 12 joins at
    # 11 in.
    depths = (QUARTER, Fraction(1, 2))
    ends = (seam(), seam())
    uneven = laid_out(depths, [2 * depth for depth in depths], (Fraction(9),), ends, (Fraction(1), Fraction(1)))
    _, joins = breadth_joins(uneven, rows("<<"), Fraction(12), Fraction(3, 8))
    assert (joins[0].tuck, joins[0].at) == (2, 11)
    assert joins[0].text.endswith("Press both allowances into the tuck.")


def test_a_foot_that_is_just_in_reach_is_no_fault() -> None:
    # From the left edge to the right foot of tuck 1 at 2 1/2 in, and 1/4: 2 3/4, just as wide as the cloth.
    with pytest.raises(CalculationError, match="from the right foot of tuck 1 to the left foot of tuck 2"):
        breadth_joins(panel(2, pitch="29"), rows("<<"), Fraction(11, 4), QUARTER)
