"""Plain tucks that are pressed: how each lies, what shows between them, and both by counting places on the panel."""

from __future__ import annotations

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as draw

from generator.calculation.panel.findings import covered_finding, tuck_findings
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.turning.layers import row_layers
from generator.calculation.turning.pressed import pressed_turns, pressed_words, spaces_shown
from generator.calculation.worked import End, TuckSet, Turn
from generator.errors import CalculationError
from generator.lengths import INCH

RAW = (End("raw"), End("raw"))
WAYS = ("left", "right", "outward", "inward")


def panel(depths: list[Fraction], pitches: list[Fraction]) -> TuckSet:
    wide = Fraction(9)
    return laid_out(tuple(depths), tuple(2 * depth for depth in depths), tuple(pitches), RAW, (wide, wide))


def signs(way: str, count: int) -> str:
    return "".join(turn.value for turn in pressed_turns(way, count))


@pytest.mark.parametrize(
    ("way", "count", "lie"),
    [
        ("left", 3, "<<<"),
        ("right", 2, ">>"),
        ("outward", 1, ">"),
        ("outward", 4, "<<>>"),
        ("outward", 5, "<<>>>"),
        ("inward", 1, ">"),
        ("inward", 4, ">><<"),
        ("inward", 5, ">>><<"),
        ("standing", 4, ""),
        ("left", 0, ""),
    ],
)
def test_tucks_lie_as_the_word_says(way: str, count: int, lie: str) -> None:
    assert signs(way, count) == lie


@pytest.mark.parametrize(("hangs_by", "down"), [("left", ">>>"), ("right", "<<<")])
def test_down_is_away_from_the_edge_that_it_hangs_by(hangs_by: str, down: str) -> None:
    assert "".join(turn.value for turn in pressed_turns("down", 3, hangs_by)) == down
    up = pressed_turns("up", 3, hangs_by)
    assert "".join(turn.value for turn in up) == down.translate({60: 62, 62: 60})
    side = "right" if hangs_by == "left" else "left"
    assert (
        pressed_words(pressed_turns("down", 3, hangs_by), hangs_by) == f"all to the {side}, which is down as it hangs"
    )


@pytest.mark.parametrize("hangs_by", ["top", "bottom"])
def test_what_hangs_by_its_top_or_bottom_has_no_tucks_that_lie_up_or_down(hangs_by: str) -> None:
    with pytest.raises(CalculationError, match="tucks cannot be pressed 'down'"):
        pressed_turns("down", 3, hangs_by)


def test_a_way_that_there_is_not_is_refused_with_those_that_there_are() -> None:
    with pytest.raises(CalculationError) as refusal:
        pressed_turns("flat", 3)
    assert str(refusal.value) == "tucks cannot be pressed 'flat'; write left, right, outward, inward or standing"


def test_unequal_tucks_show_what_is_left_of_each_pitch_by_hand() -> None:
    # Depths 1/4, 3/8, 1/2, 1 in from stitching to stitching. To the right the first two lie on the pitches: 3/4, 5/8.
    # To the left the last two do: 5/8, 1/2. Inward (two right, one left) the pair 2 and 3 faces: 1 - 3/8 - 1/2 = 1/8.
    eighth = Fraction(1, 8)
    tucks = panel([2 * eighth, 3 * eighth, 4 * eighth], [Fraction(1)] * 2)
    shown = {way: [space / eighth for space in spaces_shown(tucks, pressed_turns(way, 3))] for way in WAYS}
    assert shown == {"right": [6, 5], "left": [5, 4], "inward": [6, 1], "outward": [8, 5]}


@given(
    way=draw.sampled_from(WAYS),
    sizes=draw.lists(draw.tuples(draw.integers(1, 6), draw.integers(2, 12)), min_size=2, max_size=9),
)
def test_what_shows_is_counted_place_by_place(way: str, sizes: list[tuple[int, int]]) -> None:
    """The second route: every sixteenth of the panel is asked which flaps lie over it."""
    depths, pitches = [deep for deep, _ in sizes], [apart for _, apart in sizes[1:]]
    tucks = panel([Fraction(deep, 16) for deep in depths], [Fraction(apart, 16) for apart in pitches])
    turns = pressed_turns(way, len(sizes))
    faced = [
        place
        for place in range(len(pitches))
        if (turns[place], turns[place + 1]) == (Turn.RIGHT, Turn.LEFT)
        and pitches[place] < max(depths[place : place + 2])
    ]
    if faced:
        with pytest.raises(
            CalculationError, match=f"tucks {faced[0] + 1} and {faced[0] + 2}: two tucks that are turned"
        ):
            spaces_shown(tucks, turns)
        return
    feet = [sum(pitches[:place]) for place in range(len(sizes))]
    flaps = [
        range(foot, foot + deep) if turn is Turn.RIGHT else range(foot - deep, foot)
        for foot, deep, turn in zip(feet, depths, turns, strict=True)
    ]
    covers = {place: sum(place in flap for flap in flaps) for place in range(-6, feet[-1] + 6)}
    for place, space in enumerate(spaces_shown(tucks, turns)):
        own = [flaps[place], flaps[place + 1]]
        between = range(feet[place], feet[place + 1])
        bare = sum(not any(spot in flap for flap in own) for spot in between)
        assert max(space, Fraction(0)) == Fraction(bare, 16)
    assert row_layers(tucks, turns) == 1 + 2 * max(covers.values())


def test_pressed_to_each_other_too_close_is_refused() -> None:
    with pytest.raises(CalculationError, match="tucks 1 and 2: two tucks that are turned to each other have less room"):
        spaces_shown(panel([Fraction(1)] * 2, [Fraction(3, 4)]), pressed_turns("inward", 2))


def test_what_nothing_shows_of_is_told_with_what_to_do() -> None:
    assert covered_finding((Fraction(1, 4), Fraction(0)), INCH) == ""
    assert covered_finding((), INCH) == ""
    assert covered_finding((Fraction(-1, 8), Fraction(-1, 4)), INCH) == (
        "between tucks 2 and 3 nothing shows: as they are pressed, cloth lies on cloth there by 1/4 in; "
        "space them wider to show"
    )


def test_pressed_tucks_are_warned_of_as_they_lie_and_not_as_they_could() -> None:
    # 1/2 and 1/4 in deep, 3/8 in apart: to the right the deep one covers, to the left the shallow one leaves 1/8 in.
    tucks = rounded(panel([Fraction(1, 2), Fraction(1, 4)], [Fraction(3, 8)]), INCH)
    told = {
        way: tuck_findings(tucks, INCH, shown=spaces_shown(tucks, pressed_turns(way, 2))) for way in ("left", "right")
    }
    assert told["left"] == ()
    assert len(told["right"]) == 1
    assert "by 1/8 in" in told["right"][0]
    assert len(tuck_findings(tucks, INCH)) == 1


def test_which_way_is_told_in_groups() -> None:
    assert pressed_words(pressed_turns("right", 1)) == "to the right"
    assert pressed_words(pressed_turns("inward", 7)) == "tucks 1 to 4 to the right, tucks 5 to 7 to the left"
