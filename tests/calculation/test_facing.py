"""Facing pairs: gap, meeting and overlap by hand, from the folds' places, and refused where there is no room."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as some
from row_panels import even_tucks, signed, uneven_tucks

from generator.calculation.turning.facing import facing_gap, facing_gaps, facing_words
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE

EIGHTHS = some.integers(1, 16).map(lambda eighths: Fraction(eighths, 8))


def test_tucks_of_a_quarter_marked_an_inch_apart_just_meet() -> None:
    # Common practice, no source: pitch 1 - 2 x 1/4 = 1/2 in, two depths of 1/4 in fill it.
    spacing, depth = Fraction(1), Fraction(1, 4)
    assert facing_gap(spacing - 2 * depth, depth, depth) == 0


@pytest.mark.parametrize(
    ("pitch", "left", "right", "gap"),
    [
        (Fraction(3, 4), Fraction(1, 4), Fraction(1, 4), Fraction(1, 4)),
        (Fraction(3, 4), Fraction(1, 2), Fraction(3, 8), Fraction(-1, 8)),
        (Fraction(1, 2), Fraction(1, 2), Fraction(1, 2), Fraction(-1, 2)),
    ],
)
def test_the_gap_is_what_two_depths_leave_of_the_pitch(
    pitch: Fraction, left: Fraction, right: Fraction, gap: Fraction
) -> None:
    assert facing_gap(pitch, left, right) == gap


@given(some.lists(EIGHTHS, min_size=2, max_size=8), some.data())
def test_the_gaps_are_the_distances_from_fold_to_fold(depths: list[Fraction], choice: some.DataObject) -> None:
    turns = choice.draw(some.text("<>.", min_size=len(depths), max_size=len(depths)))
    tucks = uneven_tucks(tuple(depths), (Fraction(2),) * (len(depths) - 1))
    # Second route: the place of each fold on the panel.
    folds = [
        foot + {"<": -1, ">": 1, ".": 0}[turn] * depth
        for foot, turn, depth in zip(tucks.stitching, turns, depths, strict=True)
    ]
    expected = {
        (right, right + 1): folds[right] - folds[right - 1]
        for right in range(1, len(folds))
        if turns[right - 1 : right + 1] == "><"
    }
    assert facing_gaps(tucks, [signed(turns)]) == expected


def test_on_a_ring_the_last_tuck_faces_the_first() -> None:
    tucks = even_tucks(4, Fraction(1, 4), Fraction(3, 4), ring=True)
    assert facing_gaps(tucks, [signed("<..>")]) == {(4, 1): Fraction(1, 4)}
    assert facing_gaps(even_tucks(4, Fraction(1, 4), Fraction(3, 4)), [signed("<..>")]) == {}


@pytest.mark.parametrize(
    ("gap", "words"),
    [
        (Fraction(0), "the folds meet"),
        (Fraction(1, 4), "the folds leave a gap of 1/4 in"),
        (
            Fraction(-1, 8),
            "the folds overlap by 1/8 in: five layers, and the tuck turned last lies on top",
        ),
    ],
)
def test_the_gap_is_told_in_words(gap: Fraction, words: str) -> None:
    assert facing_words(gap, INCH) == words


def test_a_small_metric_gap_is_told_in_millimetres() -> None:
    assert facing_words(6 * MILLIMETRE, METRIC) == "the folds leave a gap of 6 mm"


def test_a_pair_without_room_is_refused_with_its_tucks() -> None:
    tucks = uneven_tucks((Fraction(1, 4), Fraction(1, 2), Fraction(1)), (Fraction(3, 4), Fraction(3, 4)))
    with pytest.raises(CalculationError) as refusal:
        facing_gaps(tucks, [signed("<><")])
    assert str(refusal.value) == (
        "tucks 2 and 3: two tucks that are turned to each other have less room between them than one of them is deep; "
        "give them a wider spacing, or make them shallower"
    )


def test_a_pitch_of_just_the_depth_is_the_least() -> None:
    assert facing_gap(Fraction(1), Fraction(1), Fraction(1, 4)) == Fraction(-1, 4)
    with pytest.raises(CalculationError):
        facing_gap(Fraction(63, 64), Fraction(1), Fraction(1, 4))


def test_two_tucks_of_a_ring_face_each_other_across_its_closing() -> None:
    ring = even_tucks(2, Fraction(1, 4), Fraction(3, 4), ring=True)
    assert facing_gaps(ring, [signed("<>")]) == {(2, 1): Fraction(1, 4)}
