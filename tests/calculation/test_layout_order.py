"""What a layout looks like on the table, at its edges: which strip first, which piece first, how narrow, how small."""

from __future__ import annotations

from fractions import Fraction

import pytest

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem, Layout
from generator.errors import CalculationError

CLOTH = Fraction(44)


def piece(name: str, across: str | int, along: str | int, quantity: int = 1) -> CutItem:
    return CutItem(name, name.capitalize(), Fraction(across), Fraction(along), quantity)


def laid(layout: Layout) -> list[tuple[str, int, int]]:
    return [(placed.piece, int(placed.left), int(placed.top)) for placed in layout.placed]


def test_the_highest_strip_is_cut_first() -> None:
    layout = cutting_layout([piece("low", 44, 3), piece("high", 44, 7), piece("middle", 44, 5)], CLOTH)
    assert [(strip.top, strip.along) for strip in layout.strips] == [(0, 7), (7, 5), (12, 3)]
    assert laid(layout) == [("high", 0, 0), ("middle", 0, 7), ("low", 0, 12)]


def test_of_strips_equally_high_the_one_of_the_wider_pieces_comes_first() -> None:
    # 30 in beside 22 in does not fit, two of 22 in do.
    layout = cutting_layout([piece("narrow", 22, 5, 2), piece("wide", 30, 5)], CLOTH)
    assert laid(layout) == [("wide", 0, 0), ("narrow", 0, 5), ("narrow", 22, 5)]


def test_in_a_strip_the_highest_piece_lies_first_and_then_the_widest() -> None:
    layout = cutting_layout([piece("wide", 20, 5), piece("narrow", 10, 5), piece("high", 8, 7)], CLOTH)
    assert laid(layout) == [("high", 0, 0), ("wide", 8, 0), ("narrow", 28, 0)]


def test_twenty_pieces_tell_how_narrow_the_cloth_may_be() -> None:
    # Twenty of 3 in: fifteen and five on 45 in. The step of 4 1/2 in that is bought holds four strips, of five: 15 in.
    layout = cutting_layout([piece("label", 3, 1, 20)], Fraction(45))
    assert (layout.length, layout.narrowest) == (2, 15)


def test_pieces_and_cloths_may_be_smaller_than_an_inch() -> None:
    layout = cutting_layout([piece("label", "1/2", "3/4", 3)], Fraction(1))
    # Two lie side by side, the third below. The area asks for 1 1/8, and every length is a whole number of quarters.
    assert (layout.length, layout.narrowest, layout.lower_bound) == (Fraction(3, 2), Fraction(1, 2), Fraction(5, 4))
    assert cutting_layout([piece("label", 1, 1)], Fraction(1)).length == 1


def test_a_piece_that_is_cut_no_times_takes_no_cloth() -> None:
    layout = cutting_layout([piece("front", 10, 30, 0), piece("back", 10, 8)], CLOTH)
    assert (layout.length, [placed.piece for placed in layout.placed]) == (8, ["back"])


def test_a_piece_as_long_as_the_cloth_is_wide_may_be_cut_the_other_way() -> None:
    with pytest.raises(CalculationError) as refusal:
        cutting_layout([piece("front", 50, 44)], CLOTH)
    assert str(refusal.value) == (
        "Front is 50 in across, but the cloth is only 44 in wide; take a wider cloth, cut it the other way of the "
        "grain, or write it as two pieces that meet in a seam"
    )


def test_only_a_strip_of_nothing_but_later_pieces_waits() -> None:
    # The strip 5 high holds a piece that is cut later and one that is not, the one 7 high only later ones.
    later = CutItem("back", "Back", Fraction(20), Fraction(5), 1, later=True)
    waiting = CutItem("lining", "Lining", Fraction(44), Fraction(7), 1, later=True)
    layout = cutting_layout([later, piece("front", 22, 5), waiting, piece("band", 44, 3)], CLOTH)
    assert laid(layout) == [("front", 0, 0), ("back", 22, 0), ("band", 0, 5), ("lining", 0, 8)]
