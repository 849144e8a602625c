from __future__ import annotations

import re
from pathlib import Path

import pytest
from small_room import ROOM, made_room

from generator.errors import FaultyFileError
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import workshop_of
from generator.publishing.opened import OpenRoom, open_room
from generator.publishing.page_jobs import GuidesJob, WordsJob
from generator.publishing.room_pages import make_guides, make_words

TITLES = {"care": "Care", "how-to-measure": "How to measure", "teach": "Teach 1/2 a day"}
GROUPS = """\
guides:
  - title: For students
    pages: how-to-measure, care
"""


def opened(folder: Path, room: str) -> OpenRoom:
    made_room(folder)
    (folder / "site/site.yaml").write_text(room, encoding="utf-8")
    return open_room(workshop_of(folder, "", read_inputs(folder, "")))


def guides(folder: Path, room: str) -> str:
    make_guides(opened(folder, room), GuidesJob(TITLES, folder))
    page = (folder / "pages/index.html").read_text(encoding="utf-8")
    main = page[page.index("<main") : page.index("</main>")]
    return " ".join(re.sub("<[^>]+>", " ", main).split())


def test_pages_stand_in_the_groups_of_the_room_and_the_others_follow(tmp_path: Path) -> None:
    assert guides(tmp_path / "room", ROOM + GROUPS) == "Guides For students How to measure Care More Teach 1/2 a day"


def test_pages_without_groups_stand_in_one_list(tmp_path: Path) -> None:
    assert guides(tmp_path / "room", ROOM) == "Guides Care How to measure Teach 1/2 a day"


def test_a_page_that_is_not_there_is_told_with_its_place_and_the_nearest(tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError) as refusal:
        guides(tmp_path / "room", ROOM + GROUPS.replace("care", "caer"))
    (finding,) = refusal.value.findings
    assert str(finding) == "site/site.yaml:7:5: there is no page 'caer' in site/pages; did you mean 'care'?"


def test_a_page_in_another_encoding_is_told_with_its_line(tmp_path: Path) -> None:
    room = opened(tmp_path / "room", ROOM)
    (room.folder / "site/pages/care.md").write_bytes("# Care\n\nCaf\xe9 curtain\n".encode("latin-1"))
    with pytest.raises(FaultyFileError) as refusal:
        make_words(room, WordsJob("care", tmp_path))
    (finding,) = refusal.value.findings
    told = "this page is no text in UTF-8; save it again with that encoding"
    assert str(finding) == f"site/pages/care.md:3:1: {told}"


def test_every_page_has_the_same_few_ways_to_others(tmp_path: Path) -> None:
    room = opened(tmp_path / "room", ROOM)
    make_words(room, WordsJob("how-to-measure", tmp_path))
    page = (tmp_path / "pages/how-to-measure.html").read_text(encoding="utf-8")
    ways = re.findall(r'<a href="([^"]+)"', page[page.index("<nav") : page.index("</nav>")])
    assert ways == [
        "../index.html",
        "../gallery.html",
        "../reference/index.html",
        "index.html",
        "../classes/index.html",
        "../corrections.html",
        "../reference/cautions.html",
    ]
