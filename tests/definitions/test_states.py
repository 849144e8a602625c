"""States, and what techniques say that they give and need."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.definitions.making_words import NEEDS, SORTS
from generator.definitions.states import states
from generator.definitions.technique_names import TECHNIQUES
from generator.definitions.techniques import load_techniques
from generator.errors import FaultyFileError

OWN = load_techniques([TECHNIQUES])


def test_states_stand_in_the_order_of_the_work() -> None:
    told = list(states())
    order = ["cut", "joined", "marked", "creased", "tucked", "ruled", "turned", "trimmed", "shaped", "sewn"]
    assert [state for state in told if state in order] == order
    assert told.index("sewn") < told.index("turned out") < told.index("filled") < told.index("closed")


@pytest.mark.parametrize("name", states())
def test_a_state_is_told_in_two_sentences_that_name_the_thing(name: str) -> None:
    state = states()[name]
    assert "it" in state.does.split()
    assert "it" in state.done.split()


def test_every_technique_of_the_tool_says_what_it_gives() -> None:
    assert [name for name, technique in OWN.items() if not technique.head.gives] == []


def test_every_state_of_a_piece_and_every_sort_of_seam_has_a_technique() -> None:
    given = {state for technique in OWN.values() for state in technique.head.gives}
    assert {name for name, state in states().items() if state.of == "piece"} - given == {"one first"}
    assert set(SORTS) - {sort for technique in OWN.values() for sort in technique.head.sews} == set()


def technique(folder: Path, name: str, *keys: str) -> Path:
    lines = ["title: A thing to do", "about: piece", *keys, "text:", "  - say: Do it."]
    (folder / f"{name}.yaml").write_text("\n".join(lines) + "\n", encoding="utf-8")
    return folder


def test_a_rooms_technique_that_says_nothing_does_what_the_one_did_whose_place_it_takes(tmp_path: Path) -> None:
    known = load_techniques([TECHNIQUES, technique(tmp_path, "gather")])
    assert known["gather"].head == OWN["gather"].head
    assert known["gather"].title == "A thing to do"


def test_a_rooms_technique_says_what_it_gives_itself(tmp_path: Path) -> None:
    known = load_techniques([TECHNIQUES, technique(tmp_path, "draw-up", "gives: gathered", "needs: ends", "keeps: no")])
    head = known["draw up"].head
    assert (head.gives, head.needs, head.keeps) == (("gathered",), ("ends",), False)


def test_a_word_that_is_no_state_is_refused(tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError) as refused:
        load_techniques([technique(tmp_path, "draw-up", "gives: gatherd")], tmp_path)
    assert str(refused.value) == "draw-up.yaml:3:8: 'gatherd' is no state; did you mean 'gathered'?"


def test_every_need_is_needed_by_a_technique() -> None:
    assert {need for technique in OWN.values() for need in technique.head.needs} >= set(NEEDS)
