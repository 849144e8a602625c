"""Fullness as printed sources give it; the source stands beside each check."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.fullness import PUBLISHED_FULLNESS, PublishedFullness, fullness_of, gathered_length
from generator.lengths import YARD

TABLE = {row.use: row for row in PUBLISHED_FULLNESS}


@pytest.mark.parametrize(
    ("use", "least", "most", "source"),
    [
        # L. I. Baldt, Clothing for Women, Lippincott 1916: a frill is 1 1/3 to 1 1/2 times its edge, on the bias
        # 1 1/4 to 1 1/3 times
        ("frill on the straight", Fraction(4, 3), Fraction(3, 2), "Baldt"),
        ("frill on the bias", Fraction(5, 4), Fraction(4, 3), "Baldt"),
        # Butterick, The New Dressmaker, 1921, ch. 28: chiffon and side pleating three times, taffeta about twice
        ("chiffon", Fraction(3), Fraction(3), "New Dressmaker"),
        ("taffeta", Fraction(2), Fraction(2), "New Dressmaker"),
        ("side pleating", Fraction(3), Fraction(3), "New Dressmaker"),
        # NIMI, CITS Dress Making, Trade Theory, p. 250: each tier is 1 1/2 to 2 times the one above
        ("tier below a tier", Fraction(3, 2), Fraction(2), "NIMI"),
        # Every Woman's Encyclopaedia (1910-12): honeycombing takes about twice the finished width
        ("honeycombing", Fraction(2), Fraction(2), "Encyclopaedia"),
        # Construction of Clothing; Priscilla Smocking Book, 1916: drawn up to about a quarter; coarse 4 to 4 1/2 times
        ("smocking", 1 / Fraction(1, 4), Fraction(9, 2), "Priscilla"),
    ],
)
def test_the_table_says_what_the_source_says(use: str, least: Fraction, most: Fraction, source: str) -> None:
    row: PublishedFullness = TABLE[use]
    assert (row.least, row.most) == (least, most)
    assert source in row.source


def test_a_flounce_of_three_yards_on_a_band_of_two_is_half_as_full_again() -> None:
    # E. E. Goodwin, Goodwin's Course in Sewing, book III
    assert fullness_of(3 * YARD, 2 * YARD) == TABLE["flounce on a band"].least == Fraction(3, 2)
    assert gathered_length(2 * YARD, Fraction(3, 2)) == 3 * YARD


def test_three_tiers_grow_by_their_fullness_each_time() -> None:
    # NIMI, CITS Dress Making, Trade Theory, p. 250: at 1 1/2 a top of 80 gives tiers of 120 and 180, at 2 160 and 320
    for fullness, second, third in ((Fraction(3, 2), 120, 180), (Fraction(2), 160, 320)):
        assert gathered_length(Fraction(80), fullness) == second
        assert gathered_length(Fraction(second), fullness) == third
