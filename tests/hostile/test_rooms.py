"""Rooms with files that are no files, that lead elsewhere or have tricks for names, and with files of other systems."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from generator.rendering.addresses import project_page, size_page

from .checked_room import GOOD, Checked, checked, room, spoilt


def a_pipe(folder: Path) -> None:
    os.mkfifo(folder / "projects" / "cushion.yaml")


def a_device(folder: Path) -> None:
    (folder / "projects" / "cushion.yaml").symlink_to("/dev/zero")


def a_folder(folder: Path) -> None:
    (folder / "projects" / "cushion.yaml").mkdir()


def a_link_to_nothing(folder: Path) -> None:
    (folder / "projects" / "cushion.yaml").symlink_to(folder / "nothing")


def a_link_to_itself(folder: Path) -> None:
    (folder / "projects" / "cushion.yaml").symlink_to(folder / "projects" / "cushion.yaml")


def a_link_to_passwords(folder: Path) -> None:
    (folder / "projects" / "cushion.yaml").symlink_to("/etc/passwd")


def a_link_to_a_good_project_elsewhere(folder: Path) -> None:
    elsewhere = folder.parent / "elsewhere.yaml"
    elsewhere.write_text(GOOD, encoding="utf-8")
    (folder / "projects" / "cushion.yaml").symlink_to(elsewhere)


OUT = "the file is a link that leads out of the room; put the file itself here"
NO_FILE = "the file cannot be read: it is no ordinary file"


@pytest.mark.parametrize(
    ("made", "says"),
    [
        (a_pipe, NO_FILE),
        (a_device, OUT),
        (a_folder, NO_FILE),
        (a_link_to_nothing, "the file cannot be read: No such file or directory"),
        (a_link_to_itself, "the file is a link that leads to itself; put the file itself here"),
        (a_link_to_passwords, OUT),
        (a_link_to_a_good_project_elsewhere, OUT),
    ],
)
def test_what_is_no_file_of_the_room_is_not_read(tmp_path: Path, made: Callable[[Path], None], says: str) -> None:
    folder = tmp_path / "room"
    (folder / "projects").mkdir(parents=True)
    made(folder)
    done = checked(folder)
    assert done.printed.splitlines()[0] == f"projects/cushion.yaml:1:1: {says}"
    assert (done.code, done.untouched) == (1, True)
    assert "root:" not in done.printed


def test_a_link_inside_the_room_is_followed(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    (folder / "projects" / "again.yaml").symlink_to(folder / "projects" / "cushion.yaml")
    done = checked(folder)
    assert "2 projects checked: 0 errors" in done.printed


def test_a_room_file_that_is_a_device_is_not_read(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    (folder / "site").mkdir()
    (folder / "site" / "site.yaml").symlink_to("/dev/zero")
    done = checked(folder)
    assert done.printed == f"site/site.yaml:1:1: {OUT}\n"
    assert done.code == 1


def test_a_bomb_in_the_room_file_is_told(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    (folder / "site").mkdir()
    (folder / "site" / "site.yaml").write_text("a: &a [x, x]\nb: [*a, *a]\n", encoding="utf-8")
    done = checked(folder)
    assert done.printed.startswith("site/site.yaml:1:4: anchors (&) and aliases (*) are not used in these files")
    assert (done.code, done.untouched) == (1, True)


def test_file_names_that_move_the_cursor_are_refused_and_shown_plainly(tmp_path: Path) -> None:
    names = ("cus\nhion", "\x1b[2Jcushion", "cush\u202eion", "cush\x07ion")
    for name in names:
        room(tmp_path / "room", GOOD, f"{name}.yaml")
    done = checked(tmp_path / "room")
    shown = [
        f"projects/{name}.yaml:1:1: the name of the file holds a character that cannot be shown; use small letters, "
        "digits and hyphens"
        for name in ("?[2Jcushion", "cus?hion", "cush?ion", "cush?ion")
    ]
    assert done.printed.splitlines() == [*shown, "4 projects checked: 4 errors, 0 warnings, 0 notes"]
    assert done.code == 1


NAMES = ("con", "nul", "..", "...", "-rf", "a b", "<b>", "{{7*7}}", "&amp;", "'", "ｃushion", "a" * 200)


def test_file_names_that_play_tricks_are_checked_like_others(tmp_path: Path) -> None:
    for name in NAMES:
        room(tmp_path / "room", GOOD, f"{name}.yaml")
    done = checked(tmp_path / "room")
    # A name that begins with a dot is one that a system or an editor has left.
    shown = [name for name in NAMES if not name.startswith(".")]
    assert f"{len(shown)} projects checked: 0 errors" in done.printed


@pytest.mark.parametrize("name", NAMES)
def test_a_file_name_that_plays_tricks_has_a_page_of_its_own_inside_the_site(name: str) -> None:
    folder, inner, page = project_page(name).split("/")
    assert (folder, page) == ("projects", "index.html")
    assert inner != name
    assert inner.isascii()
    assert len(inner) <= 60


def test_sizes_that_look_alike_are_two_sizes_with_two_pages(tmp_path: Path) -> None:
    look_alike = "sm\N{CYRILLIC SMALL LETTER A}ll"
    done = checked(room(tmp_path / "room", spoilt("  medium:\n", f"  {look_alike}:\n")))
    assert "1 project checked: 0 errors" in done.printed
    assert size_page("cushion", "small", "inch") != size_page("cushion", look_alike, "inch")


def test_a_project_named_above_the_room_is_not_found(tmp_path: Path) -> None:
    folder = room(tmp_path / "room")
    (tmp_path / "secret.yaml").write_text("password: swordfish\n", encoding="utf-8")
    done = checked(folder, "../../secret")
    assert done.code == 1
    assert done.printed == "there is no project '../../secret'; there are: cushion\n"


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> Checked:
    """The good project as it is."""
    return checked(room(tmp_path_factory.mktemp("plain") / "room"))


@pytest.mark.parametrize(
    ("mark", "line_end"), [("\ufeff", "\n"), ("", "\r\n"), ("\ufeff", "\r\n")], ids=["a mark", "line ends", "both"]
)
def test_a_file_from_another_system_comes_to_the_same(tmp_path: Path, plain: Checked, mark: str, line_end: str) -> None:
    content = (mark + GOOD.replace("\n", line_end)).encode()
    done = checked(room(tmp_path / "room", content))
    assert done.printed == plain.printed
    assert "1 project checked: 0 errors" in done.printed
