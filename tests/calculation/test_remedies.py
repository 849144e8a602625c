"""How a check point is put right, told in a line: each number worked by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tuck_panels import even_panel, inches, seam

from generator.calculation.panel.leeway import leeway_of
from generator.calculation.panel.marks import rounded
from generator.calculation.panel.remedies import check_rule, moved_marks, remedy
from generator.calculation.panel.tolerance import check_points
from generator.calculation.worked import End, TuckSet
from generator.calculation.worked_checks import Checks, Leeway
from generator.lengths import INCH, METRIC

CAUGHT = End("caught hem")


def panel(count: int, *ends: End) -> TuckSet:
    return rounded(even_panel(count, "3/8", "3/4", ends or (seam(), seam()), ("3/4", "3/4")), INCH)  # type: ignore[arg-type]


def told(tucks: TuckSet, leeway: Leeway) -> list[str]:
    points = check_points(tucks, INCH, 6, leeway)
    return [remedy(tucks, point, Checks(points, (), leeway), INCH) for point in points]


def test_what_is_off_is_shared_out_a_mark_to_a_tuck() -> None:
    # A tuck takes cloth twice: 1/8 off is one tuck 1/16 otherwise, 2 mm one tuck 1 mm.
    assert check_rule(Leeway(()), INCH) == (
        "For each 1/8 in too narrow stitch one of the next tucks 1/16 in shallower; "
        "for each 1/8 in too wide, 1/16 in deeper. Then set the guide back."
    )
    assert "each 2 mm too short stitch one of the next tucks 1 mm shallower" in check_rule(
        Leeway((), sides=("top", "bottom")), METRIC
    )


def test_a_row_says_which_tucks_are_left_and_what_they_can_take() -> None:
    # 20 tucks, 1/16 each, twice: 14 left take 1 3/4, 8 take 1, 2 take 1/4.
    tucks = panel(20)
    rows = told(tucks, replace(leeway_of(tucks, INCH), leaves_out=False))
    assert rows[:2] == ["tucks 7 to 20: up to 1 3/4 in", "tucks 13 to 20: up to 1 in"]
    assert rows[2] == "tucks 19 and 20: up to 1/4 in. More? As after tuck 20"
    assert rows[3].startswith("Sew one tuck again for each 1/8 in: 1/16 in shallower or deeper.")
    assert "leave one out" not in " ".join(rows)
    assert "whole tuck" not in " ".join(rows)


def test_a_tuck_may_be_left_out_where_no_turn_changes() -> None:
    # Depth 3/8: a whole tuck gives back 3/4.
    tucks = panel(20)
    rows = told(tucks, replace(leeway_of(tucks, INCH), leaves_out=True))
    assert "leave one out, it gives back 3/4 in" in rows[2]
    assert "a whole tuck gives back 3/4 in" in rows[3]


def test_the_last_mark_wins_half_towards_a_caught_hem() -> None:
    tucks = panel(20, CAUGHT, CAUGHT)
    leeway = replace(leeway_of(tucks, INCH), hem=inches("1/2"))
    assert "Or move the last mark 1/8 in towards the far edge for each 1/16 in" in told(tucks, leeway)[2]
    assert moved_marks(leeway).endswith("towards the hem that its tuck holds.")
    assert moved_marks(Leeway(())) == "Moving the marks wins nothing back."


def test_tucks_that_cannot_change_unseen_say_so() -> None:
    tucks = panel(20)
    stiff = replace(leeway_of(tucks, INCH), changes=(Fraction(0),) * 20)
    rows = told(tucks, stiff)
    assert rows[0] == "The rest cannot change unseen: do as after tuck 20"
    assert "Unpick one tuck for each" not in rows[-1]


def test_what_is_too_long_is_trimmed_at_its_ends_and_what_is_too_wide_at_its_sides() -> None:
    tucks = panel(20)
    leeway = leeway_of(tucks, INCH)
    assert "Too wide: trim the sides" in told(tucks, leeway)[-1]
    assert "Too long: trim the ends" in told(tucks, replace(leeway, sides=("top", "bottom")))[-1]
