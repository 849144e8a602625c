"""Whatever stands in the texts of a project, the page shows it as text: nothing in it runs, loads or leads astray."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from tinyhtml5.parser import HTMLParser

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import load_project
from generator.definitions.room import Room
from generator.definitions.theme import load_theme
from generator.lengths import INCH
from generator.rendering.cards import ThingPictures
from generator.rendering.pages import render_project
from generator.rendering.setting import Setting
from generator.rendering.words import printed_words, read_words

from .checked_room import GOOD, room

THEMES = Path(__file__).resolve().parents[2] / "themes"
TRICKS = (
    "<script>alert(1)</script>",
    "<img src=x onerror=alert(1)>",
    "<svg/onload=alert(1)>",
    "<iframe src=//elsewhere.example></iframe>",
    "[press](javascript:alert(1))",
    "[press](JaVaScRiPt:alert(1))",
    "[press](&#106;avascript:alert(1))",
    "[press](data:text/html;base64,PHNjcmlwdD4=)",
    "[press](file:///etc/passwd)",
    "[press](//elsewhere.example)",
    "<javascript:alert(1)>",
    "![picture](https://elsewhere.example/seen.png)",
    "[later][there]\n\n      [there]: javascript:alert(1)",
    "$(touch owned) `touch owned` ${7*7} #{7*7}",
)


def worksheet_with(folder: Path, trick: str) -> Worksheet:
    """The good project with a trick in its summary, in the note of a size and in a step."""
    text = GOOD.replace("  A square cushion that can be sewn.\n", f"  {trick}\n")
    text = text.replace("      All {{ front.number }} tucks should stand.\n", f"      {trick}\n")
    path = room(folder, text) / "projects" / "cushion.yaml"
    shared = load_room_context(Room(), folder)
    return worked_sheet(load_project(path, root=folder), "small", INCH, shared)


@pytest.mark.parametrize("trick", TRICKS)
def test_a_trick_in_a_text_stays_text(tmp_path: Path, trick: str) -> None:
    sheet = worksheet_with(tmp_path, trick)
    own = next(step.text for step in sheet.steps if step.title == "Look")
    assert trick.split("\n")[0] in own
    for text in (sheet.summary, own):
        for html in (read_words(text), printed_words(text, "https://room.example/")):
            tags = re.findall(r"<[^>]*>", str(html))
            assert {re.sub(r"[</>]| .*", "", tag) for tag in tags} <= {"p", "span", "em", "code", "pre", "a"}
            assert not [tag for tag in tags if re.search(r"\b(src|srcset|style|on\w+)=", tag)]
            assert all(link.startswith("https://") for link in re.findall('href="([^"]*)"', " ".join(tags)))


@pytest.mark.parametrize("trick", ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>'])
def test_a_trick_in_a_title_is_a_heading_and_nothing_else(tmp_path: Path, trick: str) -> None:
    text = GOOD.replace("title: Good cushion", f"title: '{trick}'")
    project = load_project(room(tmp_path, text) / "projects" / "cushion.yaml", root=tmp_path)
    sheets = [worked_sheet(project, size, INCH, load_room_context(Room(), tmp_path)) for size in project.sizes]
    setting = Setting(
        theme=load_theme(THEMES / "plain"), room="The loft", place="by the harbour", welcome="", edition_mark="a"
    )
    parser = HTMLParser(namespace_html_elements=False)
    page = parser.parse(render_project(sheets, ThingPictures(), setting))
    assert parser.errors == []
    assert ["".join(heading.itertext()) for heading in page.iter("h1")] == [trick]
    assert [image.attrib["src"] for image in page.iter("img") if image.attrib["src"] == "x"] == []
    assert [script.text for script in page.iter("script") if script.text] == []
