"""Whatever stops the publishing of a room is told by ``check``, in the same words."""

from __future__ import annotations

import shutil
from collections.abc import Callable
from pathlib import Path

import pytest
from small_room import Speech, edit, left_over, made_room, published, site_of
from test_class_pages import CLASS, with_classes

from generator.publishing.room_files import OWN_THEMES

STANDS = "Nothing was published; what was published before still stands."


def unknown_theme(room: Path) -> None:
    edit(room / "site/site.yaml", "papers: A4", "papers: A4\ntheme: fancy")


def size_that_is_not_there(room: Path) -> None:
    with_classes(room, flags=CLASS.replace("size: large", "size: huge"))


def project_that_is_not_there(room: Path) -> None:
    with_classes(room, flags=CLASS.replace("project: flag", "project: flagg"))


def broken_editions(room: Path) -> None:
    (room / "site/editions").mkdir()
    (room / "site/editions/flag.json").write_text('[\n {"mark": }\n]', encoding="utf-8")


def page_in_another_encoding(room: Path) -> None:
    (room / "site/pages/care.md").write_bytes("# Care\n\nCaf\xe9 curtain\n".encode("latin-1"))


def guide_that_is_not_there(room: Path) -> None:
    edit(room / "site/site.yaml", "papers: A4", "papers: A4\nguides:\n  - title: For all\n    pages: caer")


def foreign_file(room: Path) -> None:
    (site_of(room) / "CNAME").write_text("loft.example", encoding="utf-8")
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")


def page_as_it_is(room: Path) -> None:
    (room / "site/as-is").mkdir()
    (room / "site/as-is/index.html").write_text("mine", encoding="utf-8")


def link_out(room: Path) -> None:
    (room / "site/pages/secret.md").symlink_to("/etc/hostname")


def own_theme(room: Path) -> Path:
    """A theme of the room that has a fault in no file yet."""
    shutil.copytree(OWN_THEMES / "plain", room / "themes/ours")
    edit(room / "site/site.yaml", "papers: A4", "papers: A4\ntheme: ours")
    return room / "themes/ours"


def broken_theme(room: Path) -> None:
    edit(own_theme(room) / "theme.yaml", "palette:", "pallete:")


def broken_template(room: Path) -> None:
    edit(own_theme(room) / "templates/classes.html", "{% block main %}", "{% block main %}{% if %}")


def broken_style(room: Path) -> None:
    path = own_theme(room) / "css/handout.css"
    path.write_text(path.read_text(encoding="utf-8") + "\nh1 { colour: red; }\n", encoding="utf-8")


def room_without_its_letters(room: Path) -> None:
    edit(room / "site/site.yaml", "The Test Loft", "The 山 Loft")


def template_without_its_letters(room: Path) -> None:
    edit(own_theme(room) / "templates/sheets/base.html", "</body>", "山</body>")


CASES: dict[Callable[[Path], None], str] = {
    unknown_theme: "there is no theme 'fancy'; there are:",
    size_that_is_not_there: "site/classes/flags.yaml:18:5: the project has no size 'huge'",
    project_that_is_not_there: "site/classes/flags.yaml:2:10: there is no project 'flagg'; did you mean 'flag'?",
    broken_editions: "site/editions/flag.json:2:11: the published editions of 'flag' cannot be read",
    page_in_another_encoding: "site/pages/care.md:3:4: the file is not UTF-8 text from here on",
    guide_that_is_not_there: "there is no page 'caer' in site/pages",
    foreign_file: "site/public holds what was not published from here: CNAME.",
    page_as_it_is: "site/as-is/index.html:1:1: the tool writes 'index.html' itself",
    link_out: "site/pages/secret.md:1:1: the file is a link that leads out of the room",
    broken_theme: "did you mean 'palette'",
    broken_template: "templates/classes.html",
    broken_style: "colour",
    room_without_its_letters: "site/site.yaml:2:13: no font of the theme 'plain' has the letter '山'",
    template_without_its_letters: "no font of the theme 'ours' has the letter '山' (U+5C71)",
}


@pytest.mark.parametrize("spoil", CASES, ids=lambda spoil: spoil.__name__)
def test_what_stops_publishing_is_told_by_check(room: Path, speak: Speech, spoil: Callable[[Path], None]) -> None:
    spoil(room)
    code, out, complaint = speak(room, "check")
    assert code == 1
    assert CASES[spoil] in out + complaint
    code, out, complaint = speak(room, "publish", "--workers", "1")
    assert code == 1
    assert CASES[spoil] in complaint
    assert "fault of" not in complaint
    assert left_over(room) == []


def test_a_room_that_can_be_published_has_nothing_to_tell(room: Path, speak: Speech) -> None:
    with_classes(room, flags=CLASS)
    own_theme(room)
    assert speak(room, "check") == (0, "2 projects checked: 0 errors, 0 warnings, 0 notes\n", "")


def test_a_file_with_another_ending_is_told_and_what_a_system_leaves_behind_is_not(
    tmp_path: Path, speak: Speech
) -> None:
    room = made_room(tmp_path / "room")
    (room / "projects/flag.yaml").rename(room / "projects/flag.yml")
    for name in ("._tablet.yaml", ".#tablet.yaml"):
        (room / "projects" / name).write_bytes(b"\0\5\x16\7")
    (room / "site/pages/._how-to-measure.md").write_bytes(b"\0\5\x16\7")
    warning = "projects/flag.yml:1:1: warning: this file is not read: its name must end in .yaml; rename it"
    code, out, complaint = speak(room, "check")
    assert (code, out, complaint) == (0, f"{warning}\n1 project checked: 0 errors, 1 warning, 0 notes\n", "")
    assert published(room).projects == 1
    code, out, complaint = speak(room, "publish")
    assert code == 0
    assert warning in complaint
