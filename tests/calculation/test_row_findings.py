"""What is said about rows that can be sewn: each warning whole, and silence where all is well."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from row_panels import SEAM, even_tucks, uneven_tucks

from generator.calculation.turning.plans import drawn_plan, turn_plan
from generator.calculation.turning.row_findings import edge_note
from generator.calculation.turning.rows import RowWish, choose_rows, row_findings
from generator.calculation.worked import End, TuckSet
from generator.lengths import INCH, METRIC, MILLIMETRE, Edition

WISH = RowWish(
    finished_along=Fraction(16),
    ends=(SEAM, SEAM),
    plan=turn_plan("linked cells"),
    spacing=Fraction(3),
    first=(Fraction(2), Fraction(3)),
)
TUCKS = even_tucks(12, Fraction(1, 2), Fraction(1))


def said(wish: RowWish, tucks: TuckSet = TUCKS, edition: Edition = INCH) -> tuple[str, ...]:
    return row_findings(wish, choose_rows(wish, tucks, edition), tucks, edition)


def test_nothing_is_said_where_all_is_well() -> None:
    assert said(WISH) == ()


def test_close_rows_are_told_with_the_spacing_that_is_better() -> None:
    wish = replace(WISH, spacing=Fraction(5, 2))
    assert said(wish) == (
        "rows 2 1/2 in apart are close for tucks 1/2 in deep: the length draws in much and unevenly; sew a sample "
        "first, or rule them 3 in apart",
    )


def test_a_sample_settles_close_rows() -> None:
    assert said(replace(WISH, spacing=Fraction(5, 2), measured_draw_in=Fraction(1, 4))) == ()


def test_a_sample_that_lost_less_than_the_straight_way_is_doubted() -> None:
    # The straight way costs 3 - sqrt(9 - 1) = 0.1716, on the ruler 3/16.
    assert said(replace(WISH, measured_draw_in=Fraction(1, 8))) == (
        "a draw-in of 1/8 in was measured in an interval and less than 3/16 in is hardly possible; measure the sample "
        "again, from the first row to the last",
    )


def test_a_panel_of_which_only_some_tucks_swing_may_ripple() -> None:
    rest = (
        "some tucks swing over and others lie as they did, so the panel may ripple and draw in less than is planned; "
        "sew a sample, and let the panel settle flat before it is trimmed"
    )
    assert f"between the rows {rest}" in said(replace(WISH, plan=turn_plan("slants")))
    # Rows 1 to 2 swing all, 2 to 3 half, 3 to 1 half, 1 to 2 all.
    mixed = replace(WISH, plan=drawn_plan("><\n<>\n>>"))
    assert f"in 2 of the 4 intervals {rest}" in said(mixed)


def test_an_edge_that_turns_the_tucks_over_close_to_its_row_is_told() -> None:
    # Five rows alike leave 2 in; six depths are 3 in.
    wish = replace(WISH, plan=turn_plan("one way"), bottom_held="left")
    assert said(wish) == (
        "the bottom edge lays the tucks otherwise than the row 2 in from it, and 3 in would be needed to turn them "
        "over; hold the edge as the next row, or keep the first row further from it",
    )
    roomy = replace(wish, first=(Fraction(3), Fraction(4)), top_held="left", bottom_held="right")
    assert said(roomy) == ()


def test_rows_that_could_be_trimmed_off_are_told() -> None:
    # 60 in of rows 1 3/4 in apart, tucks of 1/4 in: 37 intervals of 0.0729 to 0.1862 in, 2.70 to 6.89 in all.
    wish = replace(WISH, finished_along=Fraction(60), spacing=Fraction(7, 4), first=(Fraction(3, 4), Fraction(3, 2)))
    tucks = even_tucks(12, Fraction(1, 4), Fraction(1, 2))
    assert len(choose_rows(wish, tucks, INCH).rows) == 38
    assert said(wish, tucks) == (
        "the length draws in by 2 11/16 to 6 15/16 in: with the least of it the outer rows would be trimmed off; "
        "keep the first row further from the edge, or sew a sample and give its draw-in",
    )


@pytest.mark.parametrize("kind", ["fold", "selvage"])
def test_an_edge_that_cannot_be_trimmed_is_told(kind: str) -> None:
    wish = replace(WISH, ends=(End(kind), SEAM))
    assert said(wish) == (
        f"the top edge is a {kind} and the panel is trimmed at both ends after the rows are sewn; finish that edge "
        "with a seam or a hem, or choose a plan that does not draw in",
    )
    assert said(replace(wish, plan=turn_plan("one way"))) == ()


def test_a_bottom_edge_that_cannot_be_trimmed_is_told_by_its_name() -> None:
    assert said(replace(WISH, ends=(SEAM, End("fold"))))[0].startswith("the bottom edge is a fold and the panel")


def test_overlapping_pairs_are_told() -> None:
    # Pitch 3/4 in, depth 1/2 in: 1/4 in overlap, five layers.
    assert said(WISH, even_tucks(12, Fraction(1, 2), Fraction(3, 4))) == (
        "in a facing pair the folds overlap by 1/4 in: five layers, and the tuck turned last lies on top",
    )


def test_a_metric_class_reads_centimetres() -> None:
    wish = replace(
        WISH, finished_along=400 * MILLIMETRE, spacing=55 * MILLIMETRE, first=(20 * MILLIMETRE, 90 * MILLIMETRE)
    )
    assert said(wish, even_tucks(12, 10 * MILLIMETRE, 20 * MILLIMETRE), METRIC) == (
        "rows 5.5 cm apart are close for tucks 1 cm deep: the length draws in much and unevenly; sew a sample first, "
        "or rule them 6 cm apart",
    )


@pytest.mark.parametrize(
    ("spacing", "drawn", "text"),
    [
        # Rows 1 and 2 swing the tuck of 3/8 over, rows 2 and 3 that of 1/2: six depths are 2 1/4 and 3 in; 2 is less.
        ("2", ">>\n<>\n<<", "rows 2 in apart are close for tucks 1/2 in deep: {}, or rule them 3 in apart"),
        # First the tuck of 1/2 from standing, 3 x 1/2 = 1 1/2, then that of 3/8 over, 2 1/4; 1 1/4 is less than both.
        ("5/4", ">>\n>.\n<.", "rows 1 1/4 in apart are close for tucks 3/8 in deep: {}, or rule them 2 1/4 in apart"),
    ],
)
def test_the_hardest_interval_says_how_far_apart_is_better(spacing: str, drawn: str, text: str) -> None:
    wish = replace(WISH, plan=drawn_plan(drawn), spacing=Fraction(spacing))
    tucks = uneven_tucks((Fraction(3, 8), Fraction(1, 2)), (Fraction(1),))
    rest = "the length draws in much and unevenly; sew a sample first"
    assert text.format(rest) in said(wish, tucks)


def test_a_sample_is_doubted_by_the_interval_that_must_lose_most() -> None:
    # Rows 1 and 2 swing every tuck: 0.1716 at least. The others leave half of them as they lay: nothing at least.
    mixed = replace(WISH, plan=drawn_plan("><\n<>\n>>"), measured_draw_in=Fraction(1, 8))
    assert any(text.startswith("a draw-in of 1/8 in was measured in an interval") for text in said(mixed))


def test_a_sample_that_lost_nothing_is_believed_where_no_tuck_swings() -> None:
    assert said(replace(WISH, plan=turn_plan("one way"), measured_draw_in=Fraction(0))) == ()


def test_either_outer_row_may_be_the_one_that_is_trimmed_off() -> None:
    rows = choose_rows(WISH, TUCKS, INCH)
    first, *between, last = rows.rows

    def told(top: Fraction, bottom: Fraction) -> bool:
        placed = replace(rows, rows=(replace(first, least=top), *between, replace(last, most=bottom)))
        return any("would be trimmed off" in text for text in row_findings(WISH, placed, TUCKS, INCH))

    half, finished = Fraction(1, 2), WISH.finished_along
    assert not told(half, finished - half)
    assert told(Fraction(0), finished - half)
    assert told(half, finished)


def test_an_outer_row_that_may_end_up_nearer_than_asked_is_told() -> None:
    # Five rows 3 in apart lose 0.686 to 1.776 in: (16 - 12 + 1.776) / 2 = 2.888 is planned, 2 7/8. 1 7/8 in are cut
    # extra, row 1 is ruled at 3 7/16; with the least draw-in it lies at 3 7/16 - 1/2 - (1 7/8 - 0.686) / 2 = 2.343, on
    # the ruler 2 5/16.
    rows = choose_rows(WISH, TUCKS, INCH)
    assert edge_note(WISH, rows, INCH) == ""
    narrow = replace(WISH, first=(Fraction(5, 2), Fraction(3)))
    assert edge_note(narrow, choose_rows(narrow, TUCKS, INCH), INCH) == (
        "the rows are planned 2 7/8 in from the edges, but by how much the length draws in the outer ones may end up "
        "2 5/16 in from them, less than the 2 1/2 in asked for; ask for more, or sew a sample and give its draw-in"
    )
    measured = replace(narrow, measured_draw_in=Fraction(4, 9))
    assert edge_note(measured, choose_rows(measured, TUCKS, INCH), INCH) == ""
