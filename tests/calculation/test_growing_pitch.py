"""Runs whose pitch grows, and runs told by what shows: by hand, and forwards from the marks, ply by ply."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as draw
from ply_by_ply import worked_forwards
from tuck_panels import inches, wish_of

from generator.calculation.panel.run_steps import RunWish, graduated_pitches
from generator.calculation.panel.runs import work_runs
from generator.calculation.panel.wish import TuckWish
from generator.calculation.turning.pressed import pressed_turns, spaces_shown
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, read_length

QUARTER = Fraction(1, 4)


def wish(finished: str, margin: tuple[str, str] = ("2", "2")) -> TuckWish:
    seam = End("seam", inches("1/2"))
    return replace(wish_of(finished, "0", "0", margin), ends=(seam, seam))


def test_five_tucks_from_1_to_1_3_4_in_apart_by_hand() -> None:
    # Pitches 1, 1 1/4, 1 1/2, 1 3/4: 4 x (1 + 1 3/4) / 2 = 5 1/2, and margins of 2: 9 1/2. Cut 9 1/2 + 2 1/2 + 1 = 13.
    # Marks 1/2 + 2 + 1/4 = 2 3/4, then 1 + 1/2, 1 1/4 + 1/2 and so on farther.
    run = RunWish((QUARTER,), Fraction(1), number=5, last_pitch=inches("1 3/4"))
    tucks = work_runs((run,), wish("9 1/2"), INCH)
    assert tucks.marks == tuple(map(inches, ("2 3/4", "4 1/4", "6", "8", "10 1/4")))
    assert (tucks.cut, tucks.finished) == (13, inches("9 1/2"))
    assert worked_forwards(tucks) == (tucks.finished, tucks.stitching)


def test_it_falls_as_it_grows_and_mirrors() -> None:
    # From 1 3/4 down to 1 to the middle, where the last pitch lies once more: 2 x 4 1/8 + 1, and margins of 2.
    run = RunWish((QUARTER,), inches("1 3/4"), number=4, last_pitch=Fraction(1))
    tucks = work_runs((run,), wish("13 1/4"), INCH, mirror=True)
    assert tucks.pitches == tuple(map(inches, ("1 3/4", "1 3/8", "1", "1", "1", "1 3/8", "1 3/4")))
    assert worked_forwards(tucks) == (tucks.finished, tucks.stitching)


def test_steps_lie_on_the_ruler_of_the_metric_edition_too() -> None:
    # 2.5 to 4 cm in five tucks: steps of 5 mm.
    run = RunWish((read_length("6 mm"),), read_length("2.5 cm"), number=5, last_pitch=read_length("4 cm"))
    found = graduated_pitches(run, 5, METRIC)
    assert found == tuple(map(read_length, ("2.5 cm", "3 cm", "3.5 cm", "4 cm")))


def test_what_shows_is_the_same_beside_tucks_of_unequal_depth_by_hand() -> None:
    # 1/4 shows beside tucks of 1/4, 3/8, 1/2 pressed to the right: the left one of each pair lies on it: 1/2 and 5/8.
    plain, whole = RunWish((QUARTER, inches("1/2")), QUARTER, number=3), wish("20", ("2", "18"))
    right, left = (work_runs((replace(plain, covers=side),), whole, INCH) for side in ("left", "right"))
    assert right.pitches == tuple(map(inches, ("1/2", "5/8")))
    assert left.pitches == tuple(map(inches, ("5/8", "3/4")))


@given(
    sizes=draw.lists(draw.tuples(draw.integers(2, 6), draw.integers(1, 4)), min_size=1, max_size=4),
    shown=draw.integers(0, 8),
    way=draw.sampled_from(["left", "right"]),
    mirror=draw.booleans(),
)
def test_what_was_asked_for_shows_between_all_tucks(
    sizes: list[tuple[int, int]], shown: int, way: str, mirror: bool
) -> None:
    """Second route: the panel is worked from its marks, its tucks are laid over, and what shows is measured there."""
    space = Fraction(shown + 1, 16)
    plain = [RunWish((Fraction(deep, 16),), space, number=count) for deep, count in sizes]
    runs = [replace(run, covers="left") if way == "right" else replace(run, covers="right") for run in plain]
    tucks = work_runs(runs, wish("60", ("1", "60")), INCH, mirror=mirror)
    assert set(spaces_shown(tucks, pressed_turns(way, tucks.count))) <= {space}
    assert worked_forwards(tucks) == (tucks.finished, tucks.stitching)


@given(first=draw.integers(8, 40), step=draw.integers(-2, 4).filter(bool), number=draw.integers(3, 12))
def test_all_pitches_come_to_their_mean_times_their_number(first: int, step: int, number: int) -> None:
    """Second route: (n - 1)(p_1 + p_last) / 2 is what the pitches come to one by one."""
    last = first + step * (number - 2)
    if last < 1:
        return
    run = RunWish((QUARTER,), Fraction(first, 16), last_pitch=Fraction(last, 16))
    found = graduated_pitches(run, number, INCH)
    assert sum(found) == (number - 1) * (found[0] + found[-1]) / 2
    assert {after - before for before, after in pairwise(found)} == ({Fraction(step, 16)} if number > 2 else set())


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (2, "a pitch that grows needs at least three tucks; give the run a number of 3 or more"),
        (
            9,
            "the pitches of 9 tucks from 1 in to 1 3/4 in would lie between two marks of the room's ruler; those of "
            "8 tucks go up in steps of 1/8 in",
        ),
        (None, "a run whose pitch grows needs its number of tucks; only one of even pitch may be open"),
    ],
)
def test_pitches_that_no_ruler_shows_are_refused(number: int | None, told: str) -> None:
    run = RunWish((QUARTER,), Fraction(1), number=number, last_pitch=inches("1 3/4"))
    with pytest.raises(CalculationError) as refusal:
        work_runs((run,), wish("20"), INCH)
    assert str(refusal.value) == told
