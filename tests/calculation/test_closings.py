"""Elastic for an edge: worked by hand, by a second route, and what cannot be."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as draw

from generator.calculation.pieces.closings import elastic_length, least_casing
from generator.errors import CalculationError
from generator.lengths import CENTIMETRE, INCH, METRIC, read_length


@pytest.mark.parametrize(
    ("edge", "shorter", "lap", "cut"),
    [
        # 44 x 9/10 + 1 = 40.6, to 1/8: 40 5/8.
        ("44", 10, "1", "40 5/8"),
        # 37 3/4 x 9/10 + 1 = 34.975, to 1/8: 35.
        ("37 3/4", 10, "1", "35"),
        # 26 x 0.85 + 1/2 = 22.6, to 1/8: 22 5/8.
        ("26", 15, "1/2", "22 5/8"),
        ("26", 0, "1", "27"),
    ],
)
def test_elastic_is_shorter_than_its_edge_by_a_share_and_longer_by_its_lap(
    edge: str, shorter: int, lap: str, cut: str
) -> None:
    length = elastic_length(read_length(edge, "in"), Fraction(shorter, 100), read_length(lap, "in"), INCH)
    assert length == read_length(cut, "in")


def test_metric_elastic_goes_to_its_own_ruler() -> None:
    # 110 x 9/10 + 2.5 = 101.5 cm, which lies between two steps of 5 mm and is one itself.
    assert elastic_length(110 * CENTIMETRE, Fraction(1, 10), Fraction(5, 2) * CENTIMETRE, METRIC) == (
        Fraction(203, 2) * CENTIMETRE
    )


@given(edge=draw.integers(40, 960), shorter=draw.integers(0, 40), lap=draw.integers(1, 16))
def test_stretched_as_far_as_it_was_shortened_it_reaches_round_the_edge(edge: int, shorter: int, lap: int) -> None:
    # The other way: sewn to a ring its round is L - lap; stretched by E / (E (1 - s)) it must be the edge again.
    length, over = Fraction(edge, 8), Fraction(lap, 8)
    ring = elastic_length(length, Fraction(shorter, 100), over, INCH) - over
    assert abs(ring / (1 - Fraction(shorter, 100)) - length) <= Fraction(1, 16) / (1 - Fraction(shorter, 100))


def test_a_casing_leaves_the_elastic_room_to_slide() -> None:
    # 3/8 + 1/4 = 5/8; with the first turn of 1/4 it takes 1/4 + 3/8 + 1/4 = 7/8, as the 4-H sheet says.
    assert least_casing(read_length("3/8", "in"), INCH) == read_length("5/8", "in")
    assert least_casing(CENTIMETRE, METRIC) == Fraction(8, 5) * CENTIMETRE


@pytest.mark.parametrize(
    ("edge", "lap", "told"),
    [
        ("0", "1", "the edge of an elastic must be more than nothing"),
        ("1", "1", "the ends of the elastic lap by as much as it is long; write a shorter 'lap'"),
    ],
)
def test_an_elastic_that_cannot_be_is_refused(edge: str, lap: str, told: str) -> None:
    with pytest.raises(CalculationError, match=told):
        elastic_length(read_length(edge, "in"), Fraction(1, 10), read_length(lap, "in"), INCH)
