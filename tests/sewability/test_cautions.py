"""Cautions: each says what can happen, what comes of it and what to do, before the act, under a name of its own."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from sewable_room import ROOM, ROOT, SHARED, every_sheet, named, sheets_of

from generator.definitions.cautions import cautions_of
from generator.definitions.room import load_room
from generator.definitions.vocabulary import CAUTIONS, TOOLS
from generator.errors import FaultyFileError

OWN = {name: rule for name, rule in cautions_of(ROOM).items() if name not in ROOM.cautions}
# What could kill or maim; our judgement, beside the place where it is said.
GRAVE = {"small children", "small parts", "lamp", "stove", "magnets", "blind cords", "pillows near babies", "furniture"}
# What each must warn of, in a word that a reader looks for.
TOLD = {
    "stapler": ("eye", "lift"),
    "awl": ("pierce", "running needle"),
    "pins": ("count",),
    "machine": ("pin", "switch off"),
    "furniture": ("fire", "smoke", "filling"),
    "lamp": ("heat", "electrician"),
    "stove": ("stove", "flame"),
    "small children": ("chok", "neck"),
    "small parts": ("chok",),
    "magnets": ("swallowed", "doctor", "pacemaker"),
    "blind cords": ("strangle", "headrail"),
    "drill": ("eye", "cable"),
    "hammer": ("finger",),
    "rotary cutter": ("close the blade",),
}


@pytest.mark.parametrize("name", sorted(OWN))
def test_a_caution_of_the_tool_has_all_its_parts(name: str) -> None:
    rule = OWN[name]
    assert rule.hazard
    assert rule.consequence
    assert rule.avoid
    assert rule.short
    assert rule.source
    assert rule.level in ("warning", "caution", "notice")


def test_levels_are_warnings_where_something_could_kill_or_maim() -> None:
    warned = {name for name, rule in OWN.items() if rule.level == "warning"}
    assert warned == GRAVE | {"rotary cutter", "starch", "stapler", "drill", "hot knife"}
    assert {name for name, rule in OWN.items() if rule.level == "notice"} == {"sold"}


@pytest.mark.parametrize("name", sorted(TOLD))
def test_a_caution_warns_of_what_hurts(name: str) -> None:
    told = OWN[name].told(lambda text: text.text).lower()
    assert [word for word in TOLD[name] if word not in told] == []


def test_every_word_for_a_place_and_every_dangerous_tool_has_a_caution() -> None:
    when = {word for rule in OWN.values() for word in rule.when}
    assert set(CAUTIONS) <= when
    harmless = {"scissors", "needle", "ruler", "marking pen", "tape", "guide", "safety pin", "unpicker", "zip foot"}
    harmless |= {"blunt point", "staple lifter", "pinking shears"}
    assert set(TOOLS) - harmless <= when


def test_no_two_cautions_are_called_alike_and_each_name_is_in_its_own_text() -> None:
    shorts = [rule.short for rule in OWN.values()]
    assert len(set(shorts)) == len(shorts)
    for name, rule in OWN.items():
        words = set(re.findall(r"[a-z]+", rule.told(lambda text: text.text).lower()))
        stems = [word.rstrip("s") for word in rule.short.split() if word not in ("of", "the")]
        assert any(any(found.startswith(stem) for found in words) for stem in stems), f"{name}: '{rule.short}'"


@every_sheet
def test_what_the_finished_thing_can_do_is_told_first(path: Path) -> None:
    for sheet in sheets_of(path):
        asked = {name for name, rule in SHARED.cautions.items() if set(rule.when) & set(CAUTIONS)}
        assert set(sheet.told_first) == asked & set(sheet.cautions)
        if any(closure.kind == "magnet" for closure in sheet.closures):
            assert "magnets" in sheet.told_first


@every_sheet
def test_pins_are_counted_at_every_step_that_pins(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            assert ("pins" in step.tools) == ("pins" in step.cautions), named(sheet, step)


def room_with(tmp_path: Path, caution: str) -> Path:
    path = tmp_path / "site.yaml"
    path.write_text(f"room:\n  name: Loft\ncautions:\n  kettle:\n    when: iron\n{caution}", encoding="utf-8")
    return path


def test_a_rooms_own_caution_is_told_in_its_three_parts(tmp_path: Path) -> None:
    parts = "    level: warning\n    hazard: Steam\n    consequence: It scalds.\n    avoid: Use the jug.\n"
    found = load_room(room_with(tmp_path, parts), tmp_path).cautions["kettle"]
    assert (found.told(lambda text: text.text), found.level) == ("**Steam.** It scalds. Use the jug.", "warning")


@pytest.mark.parametrize(
    ("caution", "messages"),
    [
        ("    hazard: Steam\n", ["5:5: 'avoid' is missing here", "5:5: 'consequence' is missing here"]),
        (
            "    hazard: Steam\n    consequence: It scalds.\n    avoid: Go.\n    level: waring\n",
            ["9:12: 'waring' is no level of a caution; did you mean 'warning'?"],
        ),
    ],
)
def test_a_caution_that_says_too_little_is_refused(tmp_path: Path, caution: str, messages: list[str]) -> None:
    with pytest.raises(FaultyFileError) as refused:
        load_room(room_with(tmp_path, caution), tmp_path)
    assert sorted(str(finding) for finding in refused.value.findings) == [f"site.yaml:{text}" for text in messages]


def test_the_demo_room_keeps_a_caution_of_its_own() -> None:
    stairs = load_room(ROOT / "site" / "site.yaml", ROOT).cautions["stairs"]
    assert "spiral" in stairs.told(lambda text: text.text)
