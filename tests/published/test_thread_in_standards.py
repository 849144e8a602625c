"""Thread as standards and trade notes count it; the source stands beside each check."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.thread import (
    LEAST_RATIO,
    lockstitch_geometry,
    stitching_thread,
    thread_ratio,
    thread_with_waste,
)
from generator.lengths import METRE


def test_a_lockstitch_takes_two_and_a_half_times_its_seam() -> None:
    # Coats, Standard Stitch Type Classification Guide: ISO 4915 type 301, thread to seam 2.5 to 1
    assert stitching_thread(METRE) == Fraction("2.5") * METRE


def test_the_geometry_of_thin_cloth_gives_less_than_practice() -> None:
    # A. K. Das, textile calculation notes: 2 + 2 T S; T 0.01 in, S 10 per in gives 2.2
    assert lockstitch_geometry(Fraction("0.01"), Fraction(10)) == Fraction("2.2")
    assert thread_ratio(Fraction("0.01"), Fraction(10)) == LEAST_RATIO


def test_the_geometry_of_thick_cloth_is_used() -> None:
    # The same formula: T 0.05 in, S 10 per in gives 2 + 2 x 0.05 x 10 = 3
    assert thread_ratio(Fraction("0.05"), Fraction(10)) == 3


def test_fifteen_to_twenty_per_cent_are_added_for_waste() -> None:
    # "Estimating Thread Consumption", thread maker's bulletin
    assert thread_with_waste(Fraction(100), Fraction("0.15")) == 115
    assert thread_with_waste(Fraction(100), Fraction("0.20")) == 120
