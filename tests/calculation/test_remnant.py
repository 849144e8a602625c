"""What fits a remnant, and on how narrow a cloth, worked by hand and beside every width in turn."""

from __future__ import annotations

from fractions import Fraction

import pytest
from cloth_by_other_routes import length_by_trying_everything, random_items

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.cutting.remnant import fits_remnant, narrowest_width
from generator.calculation.worked import CutItem
from generator.errors import CalculationError

BACK = CutItem("back", "Back", Fraction(25, 2), Fraction(17), 2)


def test_two_backs_fit_a_remnant_exactly_as_large_as_they_are() -> None:
    layout = fits_remnant([BACK], Fraction(25), Fraction(17))
    assert layout is not None
    assert [(placed.left, placed.top) for placed in layout.placed] == [(0, 0), (Fraction(25, 2), 0)]


@pytest.mark.parametrize(("width", "length"), [("399/16", "17"), ("25", "271/16"), ("12", "100")])
def test_a_remnant_too_small_by_a_sixteenth_does_not_do(width: str, length: str) -> None:
    assert fits_remnant([BACK], Fraction(width), Fraction(length)) is None


def test_a_remnant_narrow_and_long_takes_the_pieces_one_below_the_other() -> None:
    layout = fits_remnant([BACK], Fraction(13), Fraction(34))
    assert layout is not None
    assert [(placed.left, placed.top) for placed in layout.placed] == [(0, 0), (0, 17)]


@pytest.mark.parametrize("seed", range(10))
def test_the_narrowest_width_is_the_first_that_does_of_all_widths(seed: int) -> None:
    items = random_items(seed, 5, (2, 16), turnable=[True, False])
    length = cutting_layout(items, Fraction(40)).length + seed % 3
    least = max(min(item.across, item.along) if item.turnable else item.across for item in items)
    first = next(
        width for width in range(int(least), 41) if length_by_trying_everything(items, Fraction(width)) <= length
    )
    assert narrowest_width(items, Fraction(40), length) == first


def test_a_longer_cloth_may_be_narrower() -> None:
    # Four of 10 x 6: side by side 40, two and two 20, one below the other 10.
    band = CutItem("band", "Band", Fraction(10), Fraction(6), 4)
    widths = [narrowest_width([band], Fraction(44), Fraction(length)) for length in (6, 11, 12, 23, 24)]
    assert widths == [40, 40, 20, 20, 10]


def test_nothing_to_cut_needs_no_width() -> None:
    assert narrowest_width([], Fraction(44), Fraction(10)) == 0


def test_a_length_too_short_even_at_full_width_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        narrowest_width([BACK], Fraction(44), Fraction(16))
    assert str(refusal.value) == (
        "the pieces need 17 in of cloth 44 in wide, but only 16 in is there; take a longer piece or fewer pieces"
    )
