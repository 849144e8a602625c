from __future__ import annotations

from pathlib import Path

import pytest
from small_room import Speech, bytes_of, made_room

from generator.errors import FaultyFileError
from generator.publishing.inputs import read_inputs
from generator.publishing.room_files import OWN_THEMES, files_below, theme_folders

OUT = "the file is a link that leads out of the room; put the file itself here"
RING = "the file is a link that leads to itself; put the file itself here"
PLACES = (
    "projects/secret.yaml",
    "site/pages/secret.md",
    "site/techniques/secret.yaml",
    "site/body/secret.yaml",
    "site/classes/secret.yaml",
    "site/editions/flag.json",
    "themes/mine/css/screen.css",
)


@pytest.fixture
def secret(tmp_path: Path) -> Path:
    """A file that is no business of the room."""
    path = tmp_path / "secret"
    path.write_text("# Secret\n\nThe key lies under the mat.\n", encoding="utf-8")
    return path


def told(room: Path) -> list[str]:
    with pytest.raises(FaultyFileError) as refusal:
        read_inputs(room, "")
    return [str(finding) for finding in refusal.value.findings]


@pytest.mark.parametrize("place", PLACES)
def test_a_file_that_is_a_link_out_of_the_room_is_refused(tmp_path: Path, secret: Path, place: str) -> None:
    room = made_room(tmp_path / "room")
    (room / place).parent.mkdir(parents=True, exist_ok=True)
    (room / place).symlink_to(secret)
    assert told(room) == [f"{place}:1:1: {OUT}"]


@pytest.mark.parametrize(
    "place", ["site/pages", "site/techniques", "site/body", "site/classes", "site/editions", "projects", "themes"]
)
def test_a_folder_that_is_a_link_out_of_the_room_is_refused(tmp_path: Path, place: str) -> None:
    room = made_room(tmp_path / "room")
    elsewhere = tmp_path / "elsewhere"
    elsewhere.mkdir()
    if (room / place).exists():
        (room / place).rename(tmp_path / "taken away")
    (room / place).symlink_to(elsewhere)
    assert told(room) == [f"{place}:1:1: {OUT}"]


def test_a_site_folder_or_a_theme_elsewhere_is_refused(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    (room / "site").rename(tmp_path / "site elsewhere")
    (room / "site").symlink_to(tmp_path / "site elsewhere")
    (tmp_path / "fancy").mkdir()
    (room / "themes").mkdir()
    (room / "themes" / "fancy").symlink_to(tmp_path / "fancy")
    assert told(room)[0] == f"site:1:1: {OUT}"
    assert told(room)[-1] == f"themes/fancy:1:1: {OUT}"


def test_every_link_is_told_at_once_and_the_published_site_stays(room: Path, secret: Path, speak: Speech) -> None:
    before = bytes_of(room)
    for place in PLACES[:2]:
        (room / place).symlink_to(secret)
    code, out, complaint = speak(room, "publish")
    assert (code, out) == (1, "")
    assert complaint.splitlines() == [f"{place}:1:1: {OUT}" for place in PLACES[:2]]
    assert bytes_of(room) == before


def test_a_link_behind_a_link_that_stays_inside_is_found(tmp_path: Path, secret: Path) -> None:
    room = made_room(tmp_path / "room")
    (room / "drawer").mkdir()
    (room / "drawer" / "theme.yaml").symlink_to(secret)
    (room / "themes").mkdir()
    (room / "themes" / "mine").symlink_to(room / "drawer")
    assert told(room) == [f"themes/mine/theme.yaml:1:1: {OUT}"]


def test_links_in_a_ring_come_to_an_end(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    pages = room / "site" / "pages"
    (pages / "up").symlink_to(pages.parent / "pages")
    (pages / "round.md").symlink_to(pages / "round.md")
    assert told(room) == [f"site/pages/round.md:1:1: {RING}"]


def test_a_link_that_stays_inside_the_room_is_followed_and_a_change_behind_it_is_seen(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    (room / "drawer.md").write_text("# Drawer\n", encoding="utf-8")
    (room / "site" / "pages" / "drawer.md").symlink_to(room / "drawer.md")
    before = read_inputs(room, "").pages["drawer"]
    (room / "drawer.md").write_text("# Another drawer\n", encoding="utf-8")
    assert read_inputs(room, "").pages["drawer"] != before


def test_a_theme_may_be_a_link_to_one_of_the_tool(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    (room / "themes").mkdir()
    (room / "themes" / "ours").symlink_to(OWN_THEMES / "plain")
    assert set(read_inputs(room, "").projects) == {"flag", "tablet"}
    assert theme_folders(room)["ours"] == room / "themes" / "ours"
    assert room / "themes/ours/theme.yaml" in files_below(room / "themes")
