"""What the acts of a handout hold, and what they do not tell or show again."""

from __future__ import annotations

import pytest
from room_setting import setting

from generator.drawing.style import style_of
from generator.rendering.handout.acts import PrintedAct, acts_of
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.repeats import paragraphs_of, told_short
from tests.built_site import PROJECTS
from tests.room import demo_room

LONG = "Fold the edge along its mark. " + "Press it well, from one end to the other. " * 5


def acts(project: str, size: str, edition: str) -> dict[int, PrintedAct]:
    sheet = demo_room().worksheet(project, size, edition)
    return {act.number: act for act in acts_of(sheet, Drawer(sheet, style_of(setting().theme)))}


def test_gathering_is_told_and_shown_once_and_the_next_strip_is_sent_to_it_with_its_own_length() -> None:
    # The pinafore is gathered at its frills, and later at its skirt: the two pictures differ by their lengths only.
    first, second = (act for act in acts("net-loft-pinafore", "4 to 5", "metric").values() if "Gather" in act.title)
    assert first.pictures == ("assembly frill shoulder frill",)
    assert "Leave the thread ends long." in first.text
    assert second.pictures == ()
    assert paragraphs_of(second.text)[0].endswith(f"on each side of the seam line (how: step {first.number}).")
    assert "Leave the thread ends long." not in second.text
    assert "until the edge measures 33 cm" in second.text


def test_a_second_panel_is_creased_as_the_first_and_bears_its_own_marks_and_turns() -> None:
    tote = acts("customs-tote", "parcels", "inch")
    first, second = (act for act in tote.values() if act.title.startswith("Crease the folds"))
    assert (first.pictures, second.pictures) == (("creasing front",), ())
    assert second.text == f"Fold 1 first: wrong sides together, top mark to bottom mark (how: step {first.number})."
    assert [act.pictures for act in tote.values() if act.title.startswith("Mark the folds")] == [
        ("fold marks front",),
        ("fold marks pocket",),
    ]


def test_what_differs_by_a_word_is_told_in_full() -> None:
    told = {LONG.strip(): 3}
    assert told_short(LONG, told) == "Fold the edge along its mark (how: step 3)."
    other = LONG.replace("one end", "the left end")
    assert told_short(other, told) == other.strip()


def test_further_words_of_the_same_step_are_not_sent_there_twice() -> None:
    told = {LONG.strip(): 3, "It slips? Press it again.": 3}
    assert told_short(f"{LONG}\n\nTurn 2 in.\n\nIt slips? Press it again.", told) == (
        "Fold the edge along its mark (how: step 3).\n\nTurn 2 in."
    )


@pytest.mark.parametrize("again", ["Sew on the seam line. Fasten both ends.", f"- {LONG.strip()}"])
def test_a_few_words_and_lists_are_told_each_time(again: str) -> None:
    assert told_short(again, {again: 3}) == again


@pytest.mark.parametrize("name", PROJECTS)
def test_an_act_sends_to_one_that_came_before_and_tells_all(name: str) -> None:
    for sheet in demo_room().worksheets(name):
        printed = {act.number: act.text for act in acts_of(sheet, Drawer(sheet, style_of(setting().theme)))}
        for step in sheet.steps:
            missing = [one for one in paragraphs_of(step.printed or step.text) if one not in printed[step.number]]
            for one in missing:
                sent = [number for number in range(1, step.number) if f"(how: step {number})" in printed[step.number]]
                assert any(one in printed[number] for number in sent), (sheet.size, step.number, one)
