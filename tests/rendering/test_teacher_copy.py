from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from functools import cache

import pytest
from mooring_room import worksheets
from opened_pdf import page_count, texts, words_outside
from room_setting import setting

from generator.errors import CalculationError
from generator.rendering.environment import template
from generator.rendering.teacher_copy import render_teacher_copy, side_by_side, taught_steps
from generator.rendering.typeset import time_words


@cache
def inch() -> list[str]:
    return texts(render_teacher_copy(worksheets("inch"), setting(), "Letter"))


@cache
def metric() -> list[str]:
    return texts(render_teacher_copy(worksheets("metric"), setting(), "A4"))


def test_the_first_page_has_the_check_numbers_of_every_size_side_by_side() -> None:
    # Small: mark 7 at 2 + 6 x 1 1/2 = 11, less 6 x 3/4: 6 1/2. The whole panel: 23 1/2 - 14 x 3/4 = 13.
    # Medium: mark 1 at 1/2 + 7/8 + 3/8 = 1 3/4; mark 7 at 10 3/4, less 4 1/2: 6 1/4; the whole 32 - 15 = 17.
    # Large: margin 1 3/8, mark 1 at 2 1/4; mark 7 at 11 1/4, less 4 1/2: 6 3/4; the whole 39 - 18 = 21.
    assert "Check 1 6: 6 1/2 in ± 1/8 in 6: 6 1/4 in ± 1/8 in 6: 6 3/4 in ± 1/8 in" in inch()[0]
    assert "Whole panel 14: 13 in ± 3/16 in 20: 17 in ± 1/4 in 24: 21 in ± 1/4 in" in inch()[0]
    assert "Tucks 14 20 24" in inch()[0]
    assert "Front, cut 23 1/2 × 13 3/4 in 32 × 18 1/4 in 39 × 22 1/2 in" in inch()[0]
    assert "First and last mark 2 in and 21 1/2 in" in inch()[0]


def test_a_length_never_borrows_the_unit_of_its_tolerance() -> None:
    # Metric small: mark 7 at 5.5 + 24 = 29.5 cm, less 6 x 2: 17.5 cm, within millimetres.
    assert "6: 17.5 cm ± 2 mm" in metric()[0]


def test_each_edition_is_told_on_every_page_of_its_copy() -> None:
    for pages, edition in ((inch(), "inch edition"), (metric(), "metric edition")):
        assert len(pages) == 2
        assert all(edition in page for page in pages)
    assert "never read them across" in " ".join(inch()[0].split())


def test_the_second_page_tells_what_to_show_at_every_step_and_where_to_stop() -> None:
    words = inch()[1]
    for step in worksheets("inch")[0].steps:
        assert f"{step.number}. {step.title.split(':')[0]}" in words
    assert "guide set on a scrap" in " ".join(words.split())
    assert words.count("A good place to stop") == 1


def test_times_are_told_from_the_quickest_size_to_the_slowest() -> None:
    first, *others = worksheets("inch")
    slow = [replace(step, minutes=step.minutes + 100) for step in others[-1].steps]
    told = taught_steps([first, *others[:-1], replace(others[-1], steps=tuple(slow))])
    for one, step, slowest in zip(told, first.steps, slow, strict=True):
        assert (one.step, one.most, one.only) == (step, slowest.minutes, ())
        assert one.least <= step.minutes
    text = " ".join(texts(render_teacher_copy([first, replace(first, steps=tuple(slow))], setting(), "A4"))[1].split())
    quick, late = first.steps[0].minutes, slow[0].minutes
    assert f"about {time_words(quick)} to {time_words(late)}" in text


def test_a_step_that_only_one_size_has_stands_in_its_place() -> None:
    first, second = worksheets("inch")[:2]
    extra = replace(second.steps[1], title="Join the breadths", standard="join breadths")
    more = replace(second, steps=(second.steps[0], extra, *second.steps[1:]))
    told = taught_steps([first, more])
    assert [one.step.title for one in told[:3]] == [first.steps[0].title, "Join the breadths", first.steps[1].title]
    assert [one.only for one in told[:3]] == [(), (second.size_label,), ()]


def test_a_stop_stands_after_the_step_that_ends_a_session() -> None:
    (stop,) = [step for step in worksheets("inch")[0].steps if step.session_ends]
    before, after = inch()[1].split("A good place to stop")
    assert f"{stop.number}. {stop.title.split(':')[0]}" in before
    assert f"{stop.number + 1}. " in after


def test_every_standard_step_of_the_tool_has_something_to_show() -> None:
    told = template(setting().theme, "sheets/teaching.html").module.teaching
    for step in worksheets("inch")[0].steps:
        assert not step.standard or step.standard in told
    assert all(len(words) == 2 and all(words) for words in told.values())


def test_many_sizes_go_on_further_pages() -> None:
    many = [replace(sheet, size_label=f"Size {place}") for place in range(3) for sheet in worksheets("inch")]
    pdf = render_teacher_copy(many, setting(), "Letter")
    assert page_count(pdf) == 4
    assert words_outside(pdf) == []


def test_a_size_without_a_number_has_a_dash() -> None:
    bare = replace(worksheets("inch")[0], pieces={"back": worksheets("inch")[0].pieces["back"]})
    groups = side_by_side([worksheets("inch")[1], bare]).groups
    cells = dict(groups[1].rows)["Tucks"]
    assert [str(cell) for cell in cells] == ["20", ""]


def test_two_editions_never_stand_side_by_side() -> None:
    with pytest.raises(CalculationError, match="a sheet speaks one edition"):
        render_teacher_copy(worksheets(), setting(), "A4")


def test_a_step_of_ones_own_is_shown_by_what_it_is_done_with() -> None:
    first = worksheets("inch")[0]
    own = [
        replace(first.steps[0], standard="", title="Staple the corner", tools=("scissors", "stapler"), cautions=()),
        replace(first.steps[0], standard="", title="Look at it", tools=(), cautions=()),
    ]
    page = texts(render_teacher_copy((replace(first, steps=tuple(own)),), setting(), "Letter"))[1]
    assert "The first four staples" in page
    assert "Left out in a hurry" in page


def test_the_times_of_beginners_are_told_as_the_room_has_them() -> None:
    # The room says nothing of beginners, so they take twice as long.
    assert "slowest; beginners take 2 times as long." in " ".join(inch())
    assert [replace(one, beginners=Fraction(1)).beginners_words for one in worksheets("inch")] == ["", "", ""]
    assert (
        replace(worksheets("inch")[0], beginners=Fraction(5, 2)).beginners_words == "beginners take 2.5 times as long"
    )
