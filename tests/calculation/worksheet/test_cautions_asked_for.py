"""Cautions that a project or a step asks for, by name or in its own words, without a tool."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, put
from rooms_on_disk import sheet as worked

from generator.calculation.worked_project import Worksheet


def sheet(folder: Path, text: str, site: str = "") -> Worksheet:
    return worked(folder, text, "medium", site=site)


CLOSE = "  - title: Close the cover\n"
LADDER = """\
    cautions:
      - level: warning
        hazard: Fall
        consequence: A chair tips when you reach up from it.
        avoid: Stand on a step ladder.
        short: ladder
"""
SITE = """\
cautions:
  low beam:
    hazard: Low beam
    consequence: You hit your head on it.
    avoid: Stoop under it.
"""


def test_a_step_tells_a_caution_in_its_own_words_and_under_its_own_name(tmp_path: Path) -> None:
    told = sheet(tmp_path, put(CUSHION, (CLOSE, CLOSE + LADDER)))
    assert [step.cautions for step in told.steps if "ladder" in step.cautions] == [told.steps[-1].cautions]
    ladder = told.cautions["ladder"]
    assert (ladder.level, ladder.hazard, ladder.short) == ("warning", "Fall", "ladder")
    assert ladder.consequence == "A chair tips when you reach up from it."
    assert ladder.avoid == "Stand on a step ladder."
    assert ladder.text == "**Fall.** A chair tips when you reach up from it. Stand on a step ladder."
    assert told.told_first == ()


def test_without_a_short_name_a_caution_is_called_after_its_hazard(tmp_path: Path) -> None:
    told = sheet(tmp_path, put(CUSHION, (CLOSE, CLOSE + put(LADDER, ("        short: ladder\n", "")))))
    assert "fall" in told.steps[-1].cautions


def test_an_own_caution_of_the_project_is_told_first_and_at_the_last_step(tmp_path: Path) -> None:
    own = "cautions:\n  - lamp\n  - hazard: Salt water\n    consequence: It takes the colour out.\n    avoid: Rinse.\n"
    told = sheet(tmp_path, put(CUSHION, ("sizes:\n", own + "sizes:\n")))
    assert told.told_first == ("lamp", "salt water")
    assert [step.number for step in told.steps if "salt water" in step.cautions] == [len(told.steps)]
    assert told.cautions["salt water"].level == "caution"


def test_a_step_asks_for_a_caution_of_the_tool_or_the_room_by_its_name(tmp_path: Path) -> None:
    asked = put(CUSHION, (CLOSE, f"{CLOSE}    cautions: low beam, blind cords\n"))
    told = sheet(tmp_path, asked, site=SITE)
    # Those of the tool stand before those of the room.
    assert told.steps[-1].cautions == ("blind cords", "low beam")
    assert "low beam" not in sheet(tmp_path, CUSHION, site=SITE).cautions


def test_every_step_of_a_line_tells_what_the_line_asks_for(tmp_path: Path) -> None:
    asked = put(CUSHION, ("rule rows, sew rows, trim\n", "rule rows, sew rows, trim\n    cautions: hammer\n"))
    told = sheet(tmp_path, asked)
    assert [step.standard for step in told.steps if "hammer" in step.cautions] == ["rule rows", "sew rows", "trim"]


def test_a_length_in_what_to_avoid_is_told_for_the_size(tmp_path: Path) -> None:
    caution = put(LADDER, ("Stand on a step ladder.", "Keep {{ side }} away."))
    assert sheet(tmp_path, put(CUSHION, (CLOSE, CLOSE + caution))).cautions["ladder"].avoid == "Keep 16 in away."


@pytest.mark.parametrize(
    ("cautions", "message"),
    [
        ("    cautions: hamer\n", "'hamer' is no caution; did you mean 'hammer'?"),
        ("    cautions:\n      hazard: Fall\n", "a list is wanted here: words with commas, or one line each with a -"),
        ("    cautions:\n      - hazard: Fall\n        avoid: Stand.\n", "'consequence' is missing here"),
        (
            put(LADDER, ("short: ladder", "short: hammer")),
            "there is a caution 'hammer' already; ask for it by its name, or give this one another 'short'",
        ),
        (
            LADDER + put(LADDER.partition("\n")[2], ("        hazard: Fall", "        hazard: Slip")),
            "two cautions are called 'ladder' and say different things; give each its own 'short'",
        ),
    ],
)
def test_what_is_no_caution_is_told_with_its_place(tmp_path: Path, cautions: str, message: str) -> None:
    told = faults(tmp_path, put(CUSHION, (CLOSE, CLOSE + cautions)), "medium")
    assert [text for text in told if "projects/jetty.yaml:" in text and text.endswith(message)], told


def test_the_same_caution_may_stand_in_two_steps(tmp_path: Path) -> None:
    cut = "  - use: cut\n"
    told = sheet(tmp_path, put(CUSHION, (CLOSE, CLOSE + LADDER), (cut, cut + LADDER)))
    assert [step.number for step in told.steps if "ladder" in step.cautions] == [1, len(told.steps)]
