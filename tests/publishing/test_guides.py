from __future__ import annotations

import re
from pathlib import Path

import pytest
from small_room import ROOM, made_room, opened

from generator.errors import FaultyFileError
from generator.publishing.make.pages import make_guides, make_words
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output

TITLES = {"care": "Care", "how-to-measure": "How to measure", "teach": "Teach 1/2 a day"}
GROUPS = """\
guides:
  - title: For students
    pages: how-to-measure, care
"""


def opened_room(folder: Path, room: str) -> OpenRoom:
    made_room(folder)
    (folder / "site/site.yaml").write_text(room, encoding="utf-8")
    return opened(folder)


def guides(folder: Path, room: str) -> str:
    make_guides(opened_room(folder, room), Output(folder), TITLES)
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
    room = opened_room(tmp_path / "room", ROOM)
    (room.folder / "site/pages/care.md").write_bytes("# Care\n\nCaf\xe9 curtain\n".encode("latin-1"))
    with pytest.raises(FaultyFileError) as refusal:
        make_words(room, Output(tmp_path), "care")
    (finding,) = refusal.value.findings
    told = "the file is not UTF-8 text from here on; save it as UTF-8"
    assert str(finding) == f"site/pages/care.md:3:4: {told}"


def test_every_page_has_the_same_few_ways_to_others(tmp_path: Path) -> None:
    room = opened_room(tmp_path / "room", ROOM)
    make_words(room, Output(tmp_path), "how-to-measure")
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
