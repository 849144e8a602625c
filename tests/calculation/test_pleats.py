"""Pleats: worked by hand, and the flat strip folded again crease by crease."""

from __future__ import annotations

import itertools
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.pieces.pleats import (
    PleatedSizes,
    Pleats,
    pleat_layers,
    pleat_lines,
    pleated_length,
    worked_pleated_strip,
)
from generator.calculation.worked import End
from generator.errors import CalculationError

HALF = Fraction(1, 2)
ENDS = dict.fromkeys(("left", "right", "top", "bottom"), End("seam", HALF))
PLEATS = st.builds(
    Pleats,
    st.sampled_from(["knife", "box", "inverted"]),
    st.integers(1, 12),
    st.fractions(min_value=Fraction(1, 8), max_value=6, max_denominator=8),
)
SECTIONS = st.fractions(min_value=4, max_value=60, max_denominator=8)


class FoldedCloth:
    """A strip with creases: each turns the cloth round; every flat place has a place on the folded strip."""

    def __init__(self, strip: PleatedSizes) -> None:
        self.creases = sorted(
            place for line in strip.lines for place in (line.fold - HALF, (line.fold + line.onto) / 2 - HALF)
        )
        self.flat = strip.flat

    def plies(self) -> list[tuple[Fraction, Fraction]]:
        bounds = [Fraction(0), *self.creases, self.flat]
        at, way, plies = Fraction(0), 1, []
        for before, after in itertools.pairwise(bounds):
            end = at + way * (after - before)
            plies.append((min(at, end), max(at, end)))
            at, way = end, -way
        return plies

    def place(self, flat: Fraction) -> Fraction:
        at, way, before = Fraction(0), 1, Fraction(0)
        for crease in [*self.creases, self.flat]:
            if flat <= crease:
                break
            at, way, before = at + way * (crease - before), -way, crease
        return at + way * (flat - before)

    def thickest(self) -> int:
        plies = self.plies()
        edges = sorted({end for ply in plies for end in ply})
        middles = [(before + after) / 2 for before, after in itertools.pairwise(edges)]
        return max(sum(near < middle < far for near, far in plies) for middle in middles)


@given(SECTIONS, PLEATS)
def test_the_strip_folded_from_its_lines_has_the_finished_length(section: Fraction, pleats: Pleats) -> None:
    strip = worked_pleated_strip(section, Fraction(6), pleats, ENDS)
    cloth = FoldedCloth(strip)
    assert cloth.place(strip.flat) == section
    for line in strip.lines:
        assert cloth.place(line.fold - HALF) == line.finished
        assert cloth.place(line.onto - HALF) == line.finished
        assert cloth.place((line.fold + line.onto) / 2 - HALF) == line.under


@given(SECTIONS, PLEATS)
def test_no_place_is_thicker_than_told(section: Fraction, pleats: Pleats) -> None:
    strip = worked_pleated_strip(section, Fraction(6), pleats, ENDS)
    assert FoldedCloth(strip).thickest() <= strip.layers


@pytest.mark.parametrize("style", ["knife", "box", "inverted"])
@pytest.mark.parametrize("eighths", [2, 4, 5, 8, 9, 13, 16])
def test_the_thickest_place_of_many_pleats_is_as_thick_as_told(style: str, eighths: int) -> None:
    pleats = Pleats(style, 12, Fraction(eighths, 8))  # type: ignore[arg-type]
    strip = worked_pleated_strip(Fraction(12), Fraction(6), pleats, ENDS)
    assert FoldedCloth(strip).thickest() == strip.layers


@given(SECTIONS, PLEATS)
def test_folds_keep_the_distance_of_the_pleats(section: Fraction, pleats: Pleats) -> None:
    strip = worked_pleated_strip(section, Fraction(6), pleats, ENDS)
    folds = 1 if pleats.style == "knife" else 2
    firsts = strip.lines[::folds]
    assert all(after.finished - before.finished == strip.width for before, after in itertools.pairwise(firsts))
    assert len(strip.lines) == folds * pleats.number


@given(SECTIONS, PLEATS)
def test_what_reaches_beyond_an_end_is_told(section: Fraction, pleats: Pleats) -> None:
    strip = worked_pleated_strip(section, Fraction(6), pleats, ENDS)
    plies = FoldedCloth(strip).plies()
    outside = max(-min(near for near, _ in plies), max(far for _, far in plies) - section)
    assert strip.beyond == outside


def test_deep_knife_pleats_stay_inside_the_strip_while_they_can() -> None:
    # 10 pleats 2 deep on 20: w = 2, so the first fold stands 2 in along and its inner crease at the very edge
    strip = worked_pleated_strip(Fraction(20), Fraction(6), Pleats("knife", 10, Fraction(2)), ENDS)
    assert (strip.lines[0].finished, strip.lines[0].under, strip.lines[-1].finished) == (2, 0, 20)
    assert strip.beyond == 0


def test_a_box_pleat_is_twice_its_depth_wide() -> None:
    # one box pleat 2 deep in the middle of 10: its folds at 3 and 7, both inner creases at 5; flat 10 + 8.
    # From the left cut edge, seam 1/2: onto 3 1/2, fold 7 1/2; then 4 in of face to 11 1/2, laid on 15 1/2.
    left, right = pleat_lines(Fraction(10), Pleats("box", 1, Fraction(2)), HALF)
    assert (left.onto, left.fold, left.finished, left.under) == (Fraction(7, 2), Fraction(15, 2), 3, 5)
    assert (right.fold, right.onto, right.finished, right.under) == (Fraction(23, 2), Fraction(31, 2), 7, 5)


def test_no_pleats_hide_nothing() -> None:
    none = Pleats("knife", 0, Fraction(1))
    assert pleated_length(Fraction(10), none) == 10
    assert pleat_layers(Fraction(10), none) == 1
    assert pleat_lines(Fraction(10), none, HALF) == ()


@pytest.mark.parametrize(
    ("work", "message"),
    [
        (
            lambda: pleated_length(Fraction(10), Pleats("knife", -1, Fraction(1))),
            "the number of pleats is less than nothing",
        ),
        (
            lambda: pleated_length(Fraction(10), Pleats("box", 1, Fraction(0))),
            "the depth of a pleat must be more than nothing, not 0",
        ),
        (
            lambda: worked_pleated_strip(Fraction(10), Fraction(6), Pleats("knife", 0, Fraction(1)), ENDS),
            "a pleated strip has at least one pleat; for a plain strip write kind: strip",
        ),
    ],
)
def test_pleats_that_cannot_be_folded_are_refused(work: Callable[[], object], message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        work()
    assert str(refusal.value) == message
