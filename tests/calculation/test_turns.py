"""Words of a row: by hand from both ends, from the geometry of needle and fold, and folded and unfolded."""

from __future__ import annotations

import re
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as some
from row_panels import signed

from generator.calculation.turning.plans import turn_plan
from generator.calculation.turning.turns import row_words, spoken_row, starting_hand
from generator.calculation.worked import Hand, Turn

TURNS = some.lists(some.sampled_from(Turn), max_size=40).map(tuple)
HANDS = some.sampled_from(("left", "right"))
WORDS = some.sampled_from(("toward", "away", "upright"))
SWAPPED = {"toward": "away", "away": "toward", "upright": "upright"}


def unfolded(sentence: str) -> tuple[str, ...]:
    """Read a spoken row as a beginner would: one word for each tuck."""
    if sentence == "no tucks":
        return ()
    words: list[str] = []
    for part in sentence.split("; then "):
        if alike := re.fullmatch(r"all (\d+) (\w+)", part):
            words += [alike[2]] * int(alike[1])
        elif turn := re.fullmatch(r"(\w+), (\w+) and so on in turn for (\d+) tucks, ending with (\w+)", part):
            told = [turn[1 + number % 2] for number in range(int(turn[3]))]
            assert told[-1] == turn[4]
            words += told
        elif repeat := re.fullmatch(r"(\d+) times: (.+)", part):
            words += groups(repeat[2]) * int(repeat[1])
        else:
            words += groups(part)
    return tuple(words)


def groups(text: str) -> list[str]:
    words = []
    for group in text.split(", "):
        number, _, word = group.rpartition(" ")
        words += [word] * int(number or 1)
    return words


def told_at_the_machine(turns: tuple[Turn, ...], start: Hand) -> tuple[str, ...]:
    """Second route: feet 10 apart, folds 1 beside them; does the fold lie on sewn or unsewn cloth?"""
    feet = [10 * number for number in range(len(turns))]
    needle_way = 1 if start == "left" else -1
    fold_of = {Turn.LEFT: -1, Turn.RIGHT: 1, Turn.UPRIGHT: 0}
    words = []
    for foot, turn in sorted(zip(feet, turns, strict=True), key=lambda tuck: needle_way * tuck[0]):
        sewn_by = needle_way * (foot + fold_of[turn]) - needle_way * foot
        words.append("toward" if sewn_by > 0 else "away" if sewn_by < 0 else "upright")
    return tuple(words)


def test_begun_at_the_left_a_tuck_turned_right_lies_toward() -> None:
    # The needle runs to the right, so what lies right of a tuck is not yet sewn and nearer to the sewer.
    assert row_words(signed("><<>."), "left") == ("toward", "away", "away", "toward", "upright")


def test_begun_at_the_right_the_same_row_is_told_from_its_other_end() -> None:
    assert row_words(signed("><<>."), "right") == ("upright", "away", "toward", "toward", "away")


@given(TURNS, HANDS)
def test_the_words_agree_with_needle_and_fold(turns: tuple[Turn, ...], start: Hand) -> None:
    assert row_words(turns, start) == told_at_the_machine(turns, start)


@given(TURNS)
def test_from_the_other_end_the_words_are_reversed_and_swapped(turns: tuple[Turn, ...]) -> None:
    from_left, from_right = row_words(turns, "left"), row_words(turns, "right")
    assert from_right == tuple(SWAPPED[word] for word in reversed(from_left))
    assert from_left == tuple(SWAPPED[word] for word in reversed(from_right))


@pytest.mark.parametrize("start", ["left", "right"])
@pytest.mark.parametrize("count", [2, 3, 12, 17])
def test_in_linked_cells_each_row_begins_with_the_other_turn_than_the_row_before(count: int, start: Hand) -> None:
    begun = [row_words(row, start)[0] for row in turn_plan("linked cells").turns(6, count)]
    assert all(SWAPPED[before] == after for before, after in pairwise(begun))


def test_sewn_back_and_forth_every_other_row_begins_at_the_other_end() -> None:
    assert [starting_hand(row, "left", back_and_forth=True) for row in range(1, 5)] == ["left", "right"] * 2
    assert [starting_hand(row, "left", back_and_forth=False) for row in range(1, 5)] == ["left"] * 4


@pytest.mark.parametrize(
    ("turns", "start", "sentence"),
    [
        ("", "left", "no tucks"),
        (">", "left", "toward"),
        (".", "left", "upright"),
        ("><", "left", "toward, away"),
        (">>>>>>>>>>>>", "right", "all 12 away"),
        ("><>", "left", "toward, away, toward"),
        ("><" * 8 + ">", "left", "toward, away and so on in turn for 17 tucks, ending with toward"),
        (">><<" * 3, "right", "3 times: 2 toward, 2 away"),
        (">>><<" * 4, "left", "4 times: 3 toward, 2 away"),
        (">>><<" * 4 + ">", "left", "4 times: 3 toward, 2 away; then 1 toward"),
        ("." + "><" * 4 + ".", "left", "1 upright; then toward, away and so on in turn for 8 tucks, ending with away; "
         "then 1 upright"),
        (">>><<", "left", "3 toward, 2 away"),
        ("<" + ">><<" * 3, "left", "1 away; then 3 times: 2 toward, 2 away"),
    ],
)  # fmt: skip
def test_a_row_is_told_in_few_words(turns: str, start: Hand, sentence: str) -> None:
    assert spoken_row(row_words(signed(turns), start)) == sentence


@given(some.lists(WORDS, max_size=60))
def test_a_spoken_row_unfolds_to_the_same_words(words: list[str]) -> None:
    assert unfolded(spoken_row(words)) == tuple(words)


@given(some.lists(WORDS, max_size=3), some.lists(WORDS, min_size=1, max_size=8), some.integers(1, 12))
def test_a_repeat_unfolds_to_the_same_words(lead: list[str], repeat: list[str], times: int) -> None:
    words = tuple(lead + repeat * times + lead)
    assert unfolded(spoken_row(words)) == words


@pytest.mark.parametrize("count", [12, 17, 30, 200])
@pytest.mark.parametrize("name", ["linked cells", "ripples", "bands", "diamonds", "slants", "zigzags", "one way"])
def test_every_row_of_a_known_plan_is_told_in_one_short_sentence(name: str, count: int) -> None:
    for start in ("left", "right"):
        for row in turn_plan(name, lone="upright").turns(8, count):
            words = row_words(row, start)
            assert unfolded(spoken_row(words)) == words
            assert len(spoken_row(words)) <= 110


def test_a_list_that_ends_as_it_begins_is_not_repeated() -> None:
    # '3 times: 1 toward, 2 away, 1 toward' would hide that two toward lie side by side.
    words = ("toward", "away", "away", "toward") * 3
    assert spoken_row(words) == "1 toward; then 2 times: 2 away, 2 toward; then 2 away, 1 toward"


def changes(words: tuple[str, ...]) -> int:
    """Groups of equal words, counted where one follows another."""
    return (1 if words else 0) + sum(before != after for before, after in pairwise(words))


def groups_to_read(sentence: str) -> int:
    """Groups that a listener must keep in mind: two of a turn and turn about, one more for counting repeats."""
    cost = 0
    for part in sentence.split("; then "):
        repeat = re.fullmatch(r"\d+ times: (.+)", part)
        cost += 2 if " and so on in turn " in part else len((repeat[1] if repeat else part).split(", ")) + bool(repeat)
    return cost


def fewest_groups(words: tuple[str, ...]) -> int:
    """Second route: try every beginning, every length of a repeat and every number of times, and count."""
    costs = [changes(words)]
    for lead in range(min(8, len(words)) + 1):
        rest = words[lead:]
        for length in range(4, len(rest) + 1):
            if rest[0] != rest[1] and all(rest[place] == rest[place % 2] for place in range(length)):
                costs.append(changes(words[:lead]) + 2 + changes(rest[length:]))
        for period in range(3, 25):
            for times in range(2, len(rest) // period + 1):
                unit = rest[:period]
                if unit[0] != unit[-1] and rest[: times * period] == unit * times:
                    costs.append(changes(words[:lead]) + changes(unit) + 1 + changes(rest[times * period :]))
    return min(costs)


@given(some.lists(WORDS, max_size=9), some.lists(WORDS, min_size=1, max_size=7), some.integers(1, 6))
def test_no_telling_of_a_row_has_fewer_groups_to_keep_in_mind(lead: list[str], repeat: list[str], times: int) -> None:
    words = (*lead, *repeat * times, *lead[:2])
    if len(set(words)) > 1:
        assert groups_to_read(spoken_row(words)) == fewest_groups(words)


def worded(signs: str) -> tuple[str, ...]:
    return tuple({">": "toward", "<": "away", ".": "upright"}[sign] for sign in signs)


@pytest.mark.parametrize(
    ("signs", "sentence"),
    [
        ("><><.", "toward, away and so on in turn for 4 tucks, ending with away; then 1 upright"),
        # Turn and turn about would begin each of these, but what comes after it would be long.
        ("><><." * 2, "2 times: toward, away, toward, away, upright"),
        ("><><." * 3, "3 times: toward, away, toward, away, upright"),
        # Four in turn are enough, three are only listed.
        ("><><", "toward, away and so on in turn for 4 tucks, ending with away"),
        ("><>", "toward, away, toward"),
        # Of two tellings as short as each other the one that begins to repeat sooner, not '2 toward; then away'.
        (">>" + "<><>", "1 toward; then toward, away and so on in turn for 5 tucks, ending with toward"),
        # Up to eight tucks may come before.
        (
            ">><<>>.." + "><" * 4,
            "2 toward, 2 away, 2 toward, 2 upright; then toward, away and so on in turn for 8 tucks, ending with away",
        ),
        (">><<>><." + "<<>" * 3, "2 toward, 2 away, 2 toward, 1 away, 1 upright; then 3 times: 2 away, 1 toward"),
        # A repeat of twenty-four tucks is still told as one, one of three as well.
        (">" * 12 + "<" * 11 + "." + ">" * 12 + "<" * 11 + ".", "2 times: 12 toward, 11 away, 1 upright"),
        (">><" * 2, "2 times: 2 toward, 1 away"),
    ],
)
def test_turn_and_turn_about_and_repeats_are_told_where_they_are_shorter(signs: str, sentence: str) -> None:
    assert spoken_row(worded(signs)) == sentence
