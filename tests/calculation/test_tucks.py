"""The formulas of tucks and of the ends of a panel: hand-worked values, edges and refusals."""

from __future__ import annotations

import pytest
from tuck_panels import NONE, inches

from generator.calculation.panel.tucks import (
    cut_width,
    finished_width,
    pitch,
    spacing_for,
    tuck_take_up,
    visible_space,
)
from generator.calculation.panel_ends import edge_play, end_allowance, first_mark, foot_room, least_margin
from generator.calculation.refused import exact, more_than_nothing, not_negative, whole_number
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE


def test_no_tucks_hide_no_cloth() -> None:
    assert tuck_take_up(0, inches("3/8")) == 0


def test_the_spacing_gives_back_the_pitch_it_was_made_from() -> None:
    # 1/2 + 3/4 + 1/2 = 1 3/4; 1 3/4 - 1 = 3/4.
    assert pitch(spacing_for(inches("3/4"), inches("1"), inches("1")), inches("1")) == inches("3/4")


def test_blind_tucks_show_less_than_nothing() -> None:
    assert visible_space(inches("3/8"), inches("1/2")) == -inches("1/8")


ALLOWANCES = [
    (End("seam", inches("1/2")), "1/2"),
    (End("hem", inches("1/4"), inches("1")), "1 1/4"),
    (End("turnover", inches("3")), "3"),
    (End("bound", inches("3/8")), "0"),
    (End("fold"), "0"),
    (End("selvage"), "0"),
    (End("raw"), "0"),
    (End("caught hem"), "1 1/8"),
]


@pytest.mark.parametrize(("end", "allowance"), ALLOWANCES, ids=[end.kind for end, _ in ALLOWANCES])
def test_every_end_has_its_allowance_and_first_mark(end: End, allowance: str) -> None:
    # Margin 3/4, tuck 3/8 deep: a caught hem is 3/4 + 3/8 deep; the mark lies 3/4 + 3/8 inside the finished edge.
    margin, take_up = inches("3/4"), inches("3/4")
    assert end_allowance(end, margin, take_up) == inches(allowance)
    assert first_mark(end, margin, take_up) == inches(allowance) + inches("1 1/8")


LEAST = [
    ("out", End("seam", inches("1/2")), "1/2"),
    ("out", End("turnover", inches("3")), "1/2"),
    ("out", End("bound", inches("1/4")), "5/8"),
    ("out", End("hem", inches("1/4"), inches("1")), "1 3/8"),
    ("out", End("caught hem"), "3/8"),
    ("out", End("raw"), "3/8"),
    ("out", End("selvage"), "3/8"),
    ("out", End("fold"), "3/8"),
    ("in", End("seam", inches("1/2")), "3/8"),
    ("upright", End("seam", inches("1/2")), "3/8"),
    ("upright", End("hem", inches("1/4"), inches("1")), "1 1/8"),
    ("in", End("hem", inches("1/8"), inches("1/8")), "3/8"),
    ("in", End("hem", inches("1/2")), "5/8"),
]


@pytest.mark.parametrize(("lies", "end", "least"), LEAST, ids=[f"{end.kind} {lies}" for lies, end, _ in LEAST])
def test_the_least_margin_leaves_room_for_what_is_sewn_at_the_edge(lies: str, end: End, least: str) -> None:
    # d 3/8. Out: seam, turnover d + 1/8; bound d + 1/4; hem last d + 1; ready edges d. Else foot room 3/8.
    # A double hem needs its width + 1/8: 1 1/8, 1/4 (less than foot room), 5/8.
    assert least_margin(end, inches("3/8"), lies, INCH) == inches(least)  # type: ignore[arg-type]


def test_the_metric_edition_has_its_own_foot_room_and_play() -> None:
    assert (foot_room(METRIC), edge_play(METRIC)) == (CENTIMETRE, 3 * MILLIMETRE)
    seam = End("seam", 15 * MILLIMETRE)
    assert least_margin(seam, CENTIMETRE, "out", METRIC) == 13 * MILLIMETRE
    assert least_margin(seam, CENTIMETRE, "in", METRIC) == CENTIMETRE


REFUSALS = {
    "the number of tucks must be 0 or more, not -1": lambda: tuck_take_up(-1, inches("3/8")),
    "the depth of a tuck must be more than nothing, not 0": lambda: tuck_take_up(1, NONE),
    "a spacing of 3/4 in leaves nothing between tucks that take up 3/4 in each: "
    "the spacing must be more than 3/4 in": lambda: pitch(inches("3/4"), inches("3/4")),
    "the pitch must be more than nothing, not 0": lambda: spacing_for(NONE, inches("1"), inches("1")),
    "a margin cannot be less than nothing, it is -1": lambda: finished_width(2, inches("1"), (-inches("1"), NONE)),
    "an allowance cannot be less than nothing, it is -1": lambda: cut_width(NONE, NONE, (-inches("1"), NONE)),
    "a caught hem needs a tuck to hold it; write 'hem' or 'seam' for a plain panel": lambda: end_allowance(
        End("caught hem"), inches("1"), NONE
    ),
    "the take-up of a tuck must be more than nothing, not 0": lambda: first_mark(End("raw"), inches("1"), NONE),
    "a margin cannot be less than nothing, it is -1/2": lambda: end_allowance(End("raw"), -inches("1/2"), inches("1")),
    "the take-up of a tuck cannot be less than nothing, it is -1": lambda: end_allowance(
        End("raw"), NONE, -inches("1")
    ),
    "the depth of a tuck must be more than nothing, not -1/4": lambda: least_margin(
        End("raw"), -inches("1/4"), "out", INCH
    ),
    "the spacing must be more than nothing, not 0": lambda: pitch(NONE, inches("3/4")),
}


@pytest.mark.parametrize("text", REFUSALS)
def test_lengths_that_cannot_be_are_refused(text: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        REFUSALS[text]()
    assert str(refusal.value) == text


def test_floats_are_refused() -> None:
    with pytest.raises(TypeError, match=r"^the depth of a tuck is an exact Fraction of an inch, not a float$"):
        tuck_take_up(2, 0.375)  # type: ignore[arg-type]
    with pytest.raises(TypeError, match=r"^the number of tucks is counted in whole numbers, not in float$"):
        tuck_take_up(2.0, inches("3/8"))  # type: ignore[arg-type]


def test_exact_numbers_pass_the_door_unchanged() -> None:
    half = inches("1/2")
    assert [exact(half, "x"), more_than_nothing(half, "x"), not_negative(NONE, "x"), whole_number(3, "x")] == [
        half,
        half,
        0,
        3,
    ]
