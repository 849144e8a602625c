"""What lies ready: every tool that a step's words need is in its list, and nothing that no word of it needs."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from sewable_room import ROOM, SHARED, every_sheet, named, sheets_of

from generator.definitions.vocabulary import TOOLS, tool_name

# Words that cannot be followed without one of these tools; what is done 'by hand' needs the needle.
NEEDED = {
    r"\b[Uu]npick(?! that tuck only)": {"unpicker"},
    r"(?<!wheel )\bby hand\b|\bhand needle\b|\b[Cc]atch (?:one|it to)\b": {"needle"},
    r"\b[Bb]aste\b": {"needle", "machine"},
    r"\b[Pp]in (?:it|them|and|both|the|line|from|a|two)\b|, pin[,.]| and pin\b": {"pins"},
    r"\bblunt\b": {"blunt point"},
    r"\blift the staples\b": {"staple lifter"},
    r"\bsafety pin\b": {"safety pin"},
    r"\bzip foot\b": {"zip foot"},
    r"\b[Ss]et a guide\b|\bguide\b": {"guide"},
    r"\bmeasuring tape\b|\bthe tape\b": {"tape"},
    r"\bzigzag\b|\bback stitch\b|\b[Ss]titch close\b": {"machine"},
    r"\b[Ii]ron\b(?! comes| off| of| the scrap| a mark)|\b[Pp]ress (?:it|flat|them|and|as|the seam)\b": {"iron"},
    r"\b[Tt]rim\b(?! it\b)|\b[Cc]lip\b|\bnotch\b|\b[Cc]ut off\b": {"scissors"},
    r"\bthe pen\b": {"marking pen"},
    r"\bMeasure\b|\bmeasure it\b": {"ruler", "tape"},
}
# Words of which one at least stands in a step that lists the tool.
USED = {
    "iron": r"[Ii]ron|[Pp]ress",
    "scissors": r"[Cc]ut|[Tt]rim|[Cc]lip|[Nn]otch|[Gg]rade",
    "awl": r"\bawl\b|[Ss]et one half",
    "stapler": r"[Ss]taple",
    "drill": r"\b[Dd]rill",
    "staple lifter": r"[Ll]ift the staples",
    "needle": r"by hand|hand needle|[Bb]aste|[Cc]atch|[Ss]ew (?:one|each|the|a|it|on)|[Ss]ew them|strong thread",
    "machine": r"\bthe machine off|[Ss]ew|[Ss]titch|[Bb]aste|with seams of",
    "zip foot": r"zip foot",
    "guide": r"\bguide\b",
    "ruler": r"\bruler\b|[Mm]easure|[Rr]ule\b|from the|wide|long|turn \d|\bby \d|deep|apart|\d (?:in|cm|mm)",
    "tape": r"\btape\b|[Mm]easure|round|long|from the",
    "marking pen": r"\bpen\b|[Mm]ark\b|[Dd]raw|[Ww]rite|[Rr]ule\b",
    "pins": r"\b[Pp]in",
    "safety pin": r"safety pin",
    "unpicker": r"[Uu]npick",
    "blunt point": r"\bblunt\b",
}
# What is said about an iron without taking it up.
IDLE = re.compile(
    r"keep the iron off|[Kk]eep the iron off the (?:marks|tucks)[^.]*|Do not press[^.]*"
    r"|Press the seam flat with your fingers|press (?:it )?there with your thumbnail"
    r"|press the lower edge from the inside|not be pressed|and press the place|before you press|by hand, or"
)


@every_sheet
def test_every_tool_that_words_ask_for_lies_ready(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            text = IDLE.sub("", step.text)
            for words, tools in NEEDED.items():
                found = re.search(words, text)
                assert found is None or tools & set(step.tools), f"{named(sheet, step)}: '{found[0]}' needs {tools}"


@every_sheet
def test_nothing_lies_ready_that_no_word_of_the_step_asks_for(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            for tool in step.tools:
                assert re.search(USED[tool], step.text), f"{named(sheet, step)}: what is the {tool} for?"


@every_sheet
def test_nothing_is_bought_that_no_step_names(path: Path) -> None:
    for sheet in sheets_of(path):
        told = " ".join((*(step.text for step in sheet.steps), *(step.title for step in sheet.steps))).lower()
        for line in sheet.supplies:
            words = re.findall(r"[a-z]{3,}", line.item.lower())
            assert any(re.search(rf"\b{word.rstrip('s')}", told) for word in words), line.item


@every_sheet
def test_a_pen_is_tried_before_it_marks_and_its_lines_are_taken_out(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            if step.standard == "mark folds":
                assert step.text.index("Try the pen first") < step.text.index("Mark every place"), named(sheet, step)
                panel = sheet.pieces[step.pieces[0]]
                # A blind is hemmed before it is marked.
                rodded = sheet.panels[panel.name].rods is not None
                hidden = not rodded and all(
                    side in panel.edges and panel.edges[side].allowance for side in ("top", "bottom")
                )
                sheer = sheet.cloths[panel.cloth].weight == "sheer"
                assert ("hidden for good" in step.text) == (hidden and not sheer), named(sheet, step)
        standard = {step.standard: step.text for step in sheet.steps}
        assert ("take the lines out" in standard.get("sew rows", "")) == ("rule rows" in standard)
        assert not any(line.item.lower().startswith("marking pen") for line in sheet.supplies)


def test_a_tool_is_called_by_what_a_student_looks_for() -> None:
    assert tool_name("needle") == "hand needle"
    assert tool_name("marking pen") == "marking pen"
    assert tool_name("marking pen", whole=True) == "marking pen (one whose lines come out again)"
    # A word that a room's lists bring stays what it is.
    assert tool_name("thimble") == "thimble"


@pytest.mark.parametrize("tool", sorted(set(USED) - {"awl", "drill", "stapler", "staple lifter"}))
def test_every_tool_of_the_standard_steps_is_used_by_one(tool: str) -> None:
    used = {
        name
        for technique in SHARED.techniques.values()
        for name in (*technique.tools, *(one for part in technique.parts for one in part.tools))
    }
    assert tool in used
    assert tool in TOOLS


def test_what_the_room_lends_are_tools() -> None:
    assert set(ROOM.lends) <= {tool_name(tool, whole=False) for tool in TOOLS}
