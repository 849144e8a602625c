"""What a sample says and what a ring needs."""

from __future__ import annotations

from fractions import Fraction

import pytest
from tuck_panels import inches

from generator.calculation.panel.sample import (
    carried_take_up,
    sample_draw_in,
    sample_shrinkage,
    sample_take_up,
    thickness_doubt,
    unlikely_take_up,
)
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE


def test_ten_tucks_on_twelve_inches_take_up_what_is_missing() -> None:
    # (12 - 9 9/16) / 10 = 2 7/16 / 10 = 39/160.
    assert sample_take_up(10, inches("12"), inches("9 9/16")) == Fraction(39, 160)


def test_the_difference_from_twice_the_depth_carries_to_the_metric_depth() -> None:
    # 39/160 - 1/4 = -1/160 at 1/8 in; at 3 mm: 6 mm - 1/160 in.
    assert carried_take_up(Fraction(39, 160), inches("1/8"), 3 * MILLIMETRE) == 6 * MILLIMETRE - Fraction(1, 160)


def test_a_sample_carried_to_its_own_depth_is_itself() -> None:
    assert carried_take_up(Fraction(39, 160), inches("1/8"), inches("1/8")) == Fraction(39, 160)


def test_draw_in_is_shared_by_the_intervals() -> None:
    assert sample_draw_in(inches("6"), inches("5 1/2"), 2) == inches("1/4")
    assert sample_draw_in(inches("6"), inches("6")) == 0


def test_shrinkage_is_a_share_of_the_length_before_washing() -> None:
    # 10 in become 9 7/10: 3 in a hundred; 9 7/10 / (1 - 3/100) is 10 again.
    shrinkage = sample_shrinkage(inches("10"), Fraction(97, 10))
    assert shrinkage == Fraction(3, 100)
    assert Fraction(97, 10) / (1 - shrinkage) == 10


def test_thick_cloth_leaves_a_doubt_that_grows_with_the_tucks() -> None:
    # 0.3 mm, 17 tucks: 0.3 x 17 x 0.3 = 1.53 mm wider, 2 x 17 x 0.3 = 10.2 mm narrower.
    least, most = thickness_doubt(17, Fraction(3, 10) * MILLIMETRE)
    assert (least / MILLIMETRE, most / MILLIMETRE) == (Fraction(-153, 100), Fraction(102, 10))


REFUSALS = {
    "the number of tucks on a sample must be 1 or more, not 0": lambda: sample_take_up(0, inches("3"), inches("2")),
    "a sample grows shorter when it is tucked: 2 in flat cannot finish at 3 in; were the two measures "
    "exchanged?": lambda: sample_take_up(4, inches("2"), inches("3")),
    "the take-up carried over to this depth must be more than nothing, not -1/8": lambda: carried_take_up(
        inches("1/8"), inches("1/4"), inches("1/8")
    ),
    "rows never move apart: 5 in before sewing cannot be 6 in after": lambda: sample_draw_in(inches("5"), inches("6")),
    "the number of intervals must be 1 or more, not 0": lambda: sample_draw_in(inches("6"), inches("5"), 0),
    "cloth does not grow in the wash: 5 in before cannot be 6 in after": lambda: sample_shrinkage(
        inches("5"), inches("6")
    ),
    "the length after the rows must be more than nothing, not 0": lambda: sample_draw_in(inches("5"), inches("0")),
    "the length after washing must be more than nothing, not 0": lambda: sample_shrinkage(inches("5"), inches("0")),
    "the thickness of the cloth cannot be less than nothing, it is -1": lambda: thickness_doubt(1, -inches("1")),
}


@pytest.mark.parametrize("text", REFUSALS)
def test_measures_that_cannot_be_are_refused(text: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        REFUSALS[text]()
    assert str(refusal.value) == text


def test_a_sample_whose_tucks_were_miscounted_is_told() -> None:
    # Eighty tucks written for eight: (10 - 4) / 80 = 3/40 in each, where twice 3/8 in is 3/4 in.
    assert unlikely_take_up(sample_take_up(80, inches("10"), inches("4")), inches("3/8"), INCH) == (
        "the sample says that a tuck 3/8 in deep takes up 1/16 in, but twice its depth is 3/4 in; "
        "count its tucks and measure again"
    )


def test_what_thick_cloth_does_to_a_take_up_is_not_told() -> None:
    # Thickness t changes a take-up by -0.3 t to 2 t: 1.5 mm of wool adds 3 mm at most to twice 6 mm.
    assert unlikely_take_up(15 * MILLIMETRE, 6 * MILLIMETRE, METRIC) == ""
    assert unlikely_take_up(Fraction(15001, 1000) * MILLIMETRE, 6 * MILLIMETRE, METRIC) != ""


def test_half_the_depth_or_an_eighth_whichever_is_more_is_not_told() -> None:
    # Depth 1/2: 1 in more or less 1/4. Depth 1/8: 1/4 more or less 1/8, though half the depth is 1/16.
    assert unlikely_take_up(inches("1 1/4"), inches("1/2"), INCH) == ""
    assert unlikely_take_up(inches("1 17/64"), inches("1/2"), INCH) != ""
    assert unlikely_take_up(inches("1/8"), inches("1/8"), INCH) == ""
    assert unlikely_take_up(inches("7/64"), inches("1/8"), INCH) != ""


def test_cloth_that_keeps_its_length_does_not_shrink() -> None:
    assert sample_shrinkage(inches("10"), inches("10")) == 0
