"""Cautions of the finished thing are told at the step from which they matter, and creases are not laid aside."""

from __future__ import annotations

import pytest

from generator.calculation.worksheet.cautions import told_at
from tests.making_up.test_finished_sizes import sheet_of


@pytest.mark.parametrize(
    ("name", "caution", "title"),
    [
        ("pier-bolster", "pillows near babies", "Put the form in"),
        ("pier-bolster", "small parts", "Sew on the buttons"),
        ("lantern-sleeve", "lamp", "Fit it to the shade: sleeve"),
        # What is about using the thing, and about no act, stands at the last step.
        ("bosun-seat-pad", "furniture", "Close the opening: boxing"),
    ],
)
def test_a_caution_stands_at_the_step_that_makes_it_matter(name: str, caution: str, title: str) -> None:
    sheet = sheet_of(name)
    assert [step.title for step in sheet.steps if caution in step.cautions] == [title]
    assert caution in sheet.told_first


def test_a_caution_whose_state_no_step_gives_waits_for_the_last() -> None:
    states = [{"cut"}, {"sewn", "filled"}, {"filled"}, set[str]()]
    places = ["pillows near babies", "blind cords", "sold"]
    assert told_at(states, places) == {2: ("pillows near babies",), 4: ("blind cords", "sold")}


def test_creases_and_gathers_do_not_keep() -> None:
    loose = {step.standard for step in sheet_of("net-loft-pinafore").steps if not step.keeps}
    assert loose == {"crease", "gather"}
