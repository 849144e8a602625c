"""Gathered strips, worked by hand and drawn up again."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.pieces.fullness import (
    PUBLISHED_FULLNESS,
    gathered_length,
    worked_gathered_strip,
)
from generator.calculation.worked import End
from generator.errors import CalculationError

SEAM, HEM = End("seam", Fraction(1, 2)), End("hem", Fraction(1, 4), Fraction(1, 4))
ENDS = {"left": HEM, "right": HEM, "top": SEAM, "bottom": HEM}
EDGES = st.fractions(min_value=Fraction(1, 2), max_value=300, max_denominator=16)
FULLNESS = st.fractions(min_value=1, max_value=5, max_denominator=8)


@given(EDGES, FULLNESS)
def test_a_strip_drawn_up_by_its_fullness_is_the_edge_again(edge: Fraction, fullness: Fraction) -> None:
    strip = worked_gathered_strip(edge, fullness, Fraction(2), ENDS)
    assert strip.flat / fullness == edge
    assert strip.flat - strip.drawn_up == edge
    assert strip.cut_across - strip.flat == 1  # two ends hemmed twice 1/4 in


def test_a_frill_is_gathered_between_its_hemmed_ends() -> None:
    # 24 1/2 x 1 1/2 = 36 3/4 flat, 37 3/4 cut; drop 3 + 1/2 + 1/2 = 4
    frill = worked_gathered_strip(Fraction(49, 2), Fraction(3, 2), Fraction(3), ENDS)
    assert (frill.flat, frill.cut_across, frill.cut_along) == (Fraction(147, 4), Fraction(151, 4), 4)


def test_a_fullness_below_one_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        gathered_length(Fraction(20), Fraction(3, 4))
    assert str(refusal.value) == (
        "a fullness of less than 1 makes the strip shorter than its edge; write 1 1/2 for half as much again"
    )


def test_an_edge_of_nothing_is_refused() -> None:
    with pytest.raises(CalculationError) as refusal:
        gathered_length(Fraction(0), Fraction(2))
    assert str(refusal.value) == "the edge of a gathered strip must be more than nothing, not 0"


def test_the_table_of_fullness_names_each_use_once_and_runs_upward() -> None:
    assert len({row.use for row in PUBLISHED_FULLNESS}) == len(PUBLISHED_FULLNESS)
    assert all(1 < row.least <= row.most for row in PUBLISHED_FULLNESS)
    assert all(row.source for row in PUBLISHED_FULLNESS)


# Baldt 1916; The New Dressmaker 1921, ch. 28; NIMI, CITS Dress Making, Trade Theory, p. 250; Goodwin III (3 yd on 2);
# Every Woman's Encyclopaedia, Construction of Clothing and Priscilla Smocking Book (to a quarter; coarse 4 to 4 1/2).
AS_PUBLISHED = {
    "frill on the straight": ("4/3", "3/2"),
    "frill on the bias": ("5/4", "4/3"),
    "taffeta": ("2", "2"),
    "chiffon": ("3", "3"),
    "side pleating": ("3", "3"),
    "tier below a tier": ("3/2", "2"),
    "flounce on a band": ("3/2", "3/2"),
    "honeycombing": ("2", "2"),
    "smocking": ("4", "9/2"),
}


def test_every_fullness_is_the_one_that_its_book_gives() -> None:
    assert {row.use: (str(row.least), str(row.most)) for row in PUBLISHED_FULLNESS} == AS_PUBLISHED
