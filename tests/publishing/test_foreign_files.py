"""Nothing is taken out of the published site that no run has put there; other files for the web have a folder."""

from __future__ import annotations

from pathlib import Path

import pytest
from small_room import Silent, Speech, bytes_of, edit, made_room, published, site_of

from generator.errors import FaultyFileError, PublishError
from generator.publishing.jobs import Order
from generator.publishing.publish import publish
from generator.rendering.addresses import TAKEN


@pytest.mark.parametrize("name", ["CNAME", ".nojekyll", ".git/HEAD", "projects/flag/notes.txt", "mine/"])
def test_what_no_run_has_written_stops_publishing_before_the_work(room: Path, speak: Speech, name: str) -> None:
    path = site_of(room) / name
    if name.endswith("/"):
        path.mkdir()
    else:
        path.parent.mkdir(exist_ok=True)
        path.write_text("mine", encoding="utf-8")
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    before = bytes_of(room)
    code, out, told = speak(room, "publish")
    assert (code, out) == (1, "")
    shown = ".git/" if name.startswith(".git") else name
    assert f"site/public holds what was not published from here: {shown}. Every run puts a new folder" in told
    assert "move to site/as-is, whose files are copied into every site" in told
    assert told.count("\n") == 1
    assert (bytes_of(room), path.exists()) == (before, True)


class Meanwhile(Silent):
    """Puts a file into the published site while a run is at work."""

    def __init__(self, path: Path) -> None:
        self.path = path

    def done(self, label: str) -> None:
        self.path.write_text("mine", encoding="utf-8")


def test_what_is_put_there_while_a_run_is_at_work_does_not_vanish_either(room: Path) -> None:
    edit(room / "site/pages/how-to-measure.md", "Lay", "Put")
    path = site_of(room) / "CNAME"
    with pytest.raises(PublishError, match="holds what was not published from here: CNAME"):
        publish(Order(room, workers=1), Meanwhile(path))
    assert path.read_text(encoding="utf-8") == "mine"
    path.unlink()
    assert published(room).made == ["page: how-to-measure"]


@pytest.mark.parametrize("name", [".DS_Store", "projects/Thumbs.db"])
def test_what_the_windows_of_a_machine_leave_behind_stops_nothing(room: Path, name: str) -> None:
    (site_of(room) / name).write_bytes(b"\0")
    edit(room / "site/pages/how-to-measure.md", "Lay", "Put")
    assert published(room).made == ["page: how-to-measure"]
    assert not (site_of(room) / name).exists()


def as_is(room: Path, name: str, content: str = "mine") -> Path:
    path = room / "site/as-is" / name
    path.parent.mkdir(parents=True, exist_ok=True)
    path.write_text(content, encoding="utf-8")
    return path


def test_files_as_they_are_come_with_the_site_stay_with_it_and_go_with_their_original(room: Path) -> None:
    as_is(room, "CNAME", "loft.example\n")
    as_is(room, ".well-known/security.txt")
    assert published(room).made == ["as is"]
    assert (site_of(room) / "CNAME").read_text(encoding="utf-8") == "loft.example\n"
    assert (site_of(room) / ".well-known/security.txt").is_file()
    assert published(room).current
    edit(room / "site/pages/how-to-measure.md", "Lay", "Put")
    assert published(room).made == ["page: how-to-measure"]
    assert (site_of(room) / "CNAME").is_file()
    as_is(room, "CNAME", "attic.example\n")
    assert published(room).made == ["as is"]
    for path in (room / "site/as-is").rglob("*"):
        if path.is_file():
            path.unlink()
    published(room)
    assert not (site_of(room) / "CNAME").exists()


@pytest.mark.parametrize("name", ["index.html", "Index.HTML", "projects/mine.html", "assets/screen.css", "sitemap.xml"])
def test_a_file_as_it_is_cannot_take_the_place_of_a_page(room: Path, name: str) -> None:
    as_is(room, name)
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    with pytest.raises(FaultyFileError) as refusal:
        published(room)
    (finding,) = refusal.value.findings
    part = name.partition("/")[0]
    assert str(finding) == f"site/as-is/{name}:1:1: the tool writes '{part}' itself; give the file another name"
    assert bytes_of(room) == before


def test_every_name_that_the_tool_writes_is_kept_free_for_it(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    edit(room / "site/site.yaml", "  welcome: Come in.\n", "  welcome: Come in.\n  web address: https://loft.example\n")
    published(room)
    assert {path.name for path in site_of(room).iterdir()} <= TAKEN | {"robots.txt"}


def test_a_room_says_itself_what_search_engines_may_read_or_the_site_says_that_they_may_read_all(
    tmp_path: Path,
) -> None:
    room = made_room(tmp_path / "room")
    edit(room / "site/site.yaml", "  welcome: Come in.\n", "  welcome: Come in.\n  web address: https://loft.example\n")
    file = site_of(room) / "robots.txt"
    published(room)
    usual = "User-agent: *\nAllow: /\n\nSitemap: https://loft.example/sitemap.xml\n"
    assert file.read_text(encoding="utf-8") == usual
    as_is(room, "robots.txt", "User-agent: *\nDisallow: /\n")
    assert published(room).made == ["site", "as is"]
    assert file.read_text(encoding="utf-8") == "User-agent: *\nDisallow: /\n"
    assert published(room).current
    (room / "site/as-is/robots.txt").unlink()
    published(room)
    assert file.read_text(encoding="utf-8") == usual


def test_a_room_without_an_address_has_no_file_for_search_engines(room: Path) -> None:
    assert not (site_of(room) / "robots.txt").exists()


def test_a_link_among_the_files_as_they_are_is_refused(room: Path) -> None:
    (room / "site/as-is").mkdir()
    (room / "site/as-is/CNAME").symlink_to(room / "site/site.yaml")
    with pytest.raises(FaultyFileError) as refusal:
        published(room)
    assert str(refusal.value) == ("site/as-is/CNAME:1:1: a link is not copied into the site; put the file itself here")


def test_a_published_site_that_is_a_link_is_refused_and_nothing_behind_it_changes(room: Path, tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / "elsewhere/thesis.txt").write_text("mine", encoding="utf-8")
    site_of(room).rename(tmp_path / "former")
    site_of(room).symlink_to(tmp_path / "elsewhere")
    with pytest.raises(FaultyFileError, match="site/public:1:1: the published site may be no link"):
        published(room)
    assert [path.name for path in (tmp_path / "elsewhere").iterdir()] == ["thesis.txt"]


def test_a_site_whose_manifest_is_gone_is_told_how_to_begin_anew(room: Path) -> None:
    (room / ".tuckwright/published.json").unlink()
    with pytest.raises(PublishError, match=r"not known: \.tuckwright/published\.json is missing or damaged"):
        published(room)
