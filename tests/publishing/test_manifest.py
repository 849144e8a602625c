"""The manifest tells what was published; it is read as a stranger's file, and nothing in it leads out of the site."""

from __future__ import annotations

import json
import os
import shutil
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from small_room import Speech, bytes_of, edit, published, site_of

from generator.errors import PublishError
from generator.publishing.manifest import Manifest, own_files, read_manifest

SHEET = "projects/flag/small/flag-small-inch-a4.pdf"
PAGE = "projects/flag/small/inch.html"


def manifest_of(room: Path) -> Path:
    return room / ".tuckwright" / "published.json"


def spoilt(room: Path, change: Callable[[dict[str, Any]], object]) -> None:
    """Change what the manifest holds."""
    found = json.loads(manifest_of(room).read_text(encoding="utf-8"))
    change(found)
    manifest_of(room).write_text(json.dumps(found), encoding="utf-8")


def test_nothing_of_the_manifest_is_served(room: Path) -> None:
    assert manifest_of(room).is_file()
    assert [path.name for path in site_of(room).rglob(".*")] == []


@pytest.mark.parametrize(
    "content",
    [
        b"",
        b"{",
        b"\xff\xfe\x00",
        b"[]",
        b'"form"',
        b'{"form": 4, "entries": 7}',
        b'{"form": 4, "rest": "", "projects": {"flag": 3}, "entries": {}}',
        b'{"form": 4, "rest": "", "projects": {}, "entries": {"site": ["", "", {"index.html": [1, 2, 3, 4]}, null]}}',
        b'{"form": 4, "rest": "", "projects": {}, "entries": {"site": ["", "", {}, {"card": 1}]}}',
        b"[" * 100_000,
        b'{"form": ' + b"9" * 5000 + b"}",
    ],
)
def test_a_damaged_manifest_is_told_before_anything_is_made_and_mended_as_told(
    room: Path, content: bytes, speak: Speech
) -> None:
    before = bytes_of(room)
    manifest_of(room).write_bytes(content)
    assert read_manifest(room) == Manifest()
    code, out, told = speak(room, "publish")
    assert (code, out) == (1, "")
    assert "Traceback" not in told
    assert "site/public holds what was not published from here" in told
    assert "If nothing there is yours, remove the folder" in told
    assert bytes_of(room) == before


def test_a_room_without_its_site_is_published_whatever_the_manifest_says(room: Path) -> None:
    before = bytes_of(room)
    shutil.rmtree(site_of(room))
    manifest_of(room).write_bytes(b"\xff{")
    published(room)
    assert bytes_of(room) == before


@pytest.mark.parametrize("form", ["a folder", "huge", "a link"])
def test_a_manifest_that_is_no_plain_file_of_a_usual_size_counts_as_none(room: Path, form: str) -> None:
    path = manifest_of(room)
    if form == "huge":
        os.truncate(path, 300_000_000)
    else:
        path.rename(room / "elsewhere.json")
        if form == "a folder":
            path.mkdir()
        else:
            path.symlink_to(room / "elsewhere.json")
    assert read_manifest(room) == Manifest()


@pytest.mark.parametrize(
    "name",
    [
        "../outside.html",
        "/etc/outside.html",
        "projects/../../outside.html",
        "./a.html",
        "a\nb.html",
        "a\\b",
        "",
        "a//b",
    ],
)
def test_a_manifest_with_a_name_that_leads_out_of_the_site_is_not_believed(room: Path, name: str) -> None:
    def forge(found: dict[str, Any]) -> None:
        entry = next(entry for entry in found["entries"].values() if SHEET in entry[2])
        entry[2][name] = entry[2][SHEET]

    spoilt(room, forge)
    (room / "site" / "outside.html").write_text("mine", encoding="utf-8")
    assert read_manifest(room) == Manifest()
    assert own_files(room, site_of(room)) == {".manifest.json"}
    with pytest.raises(PublishError, match="holds what was not published from here"):
        published(room)
    assert (room / "site" / "outside.html").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize("entry", ["flag/overview", "sheets of the room"])
def test_a_manifest_that_tells_nothing_of_a_page_gives_a_clear_message(room: Path, entry: str) -> None:
    spoilt(room, lambda found: found["entries"][entry].__setitem__(3, None))
    edit(room / "site/pages/how-to-measure.md", "Lay", "Put")
    before = bytes_of(room)
    with pytest.raises(PublishError, match=r"published\.json, which tells what was published, is damaged; remove it"):
        published(room)
    assert bytes_of(room) == before


@pytest.mark.parametrize("file", [SHEET, PAGE])
def test_a_file_with_other_content_of_the_same_size_is_made_again(room: Path, file: str) -> None:
    before = bytes_of(room)
    path = site_of(room) / file
    content = path.read_bytes()
    path.write_bytes(content.replace(b"8", b"9", 1) if file == PAGE else bytes(len(content)))
    assert path.stat().st_size == len(content)
    assert published(room).made == ["flag/inch/small"]
    assert bytes_of(room) == before


def test_a_file_with_other_content_is_found_though_its_time_was_put_back(room: Path) -> None:
    before = bytes_of(room)
    path = site_of(room) / PAGE
    found, content = path.stat(), path.read_bytes()
    # Another file in its place, as an editor leaves it.
    path.with_name("new").write_bytes(content.replace(b"8", b"9", 1))
    path.with_name("new").rename(path)
    os.utime(path, ns=(found.st_atime_ns, found.st_mtime_ns))
    assert published(room).made == ["flag/inch/small"]
    assert bytes_of(room) == before


def test_a_room_that_was_copied_or_whose_files_were_touched_is_current(room: Path, tmp_path: Path) -> None:
    copied = Path(shutil.copytree(room, tmp_path / "copied", copy_function=shutil.copyfile))
    os.utime(site_of(copied) / SHEET)
    assert published(copied).current


def test_a_link_in_the_place_of_a_file_is_not_followed(room: Path, tmp_path: Path) -> None:
    path = site_of(room) / SHEET
    path.rename(tmp_path / "sheet.pdf")
    path.symlink_to(tmp_path / "sheet.pdf")
    with pytest.raises(PublishError, match=f"holds what was not published from here: {SHEET}"):
        published(room)


def test_a_site_of_the_former_tool_is_taken_over(room: Path) -> None:
    before = bytes_of(room)
    files = {name: (site_of(room) / name).stat().st_size for name in before}
    former = {"form": 3, "rest": "", "projects": {}, "entries": {"site": {"looks": "", "content": "", "files": files}}}
    (site_of(room) / ".manifest.json").write_text(json.dumps(former), encoding="utf-8")
    shutil.rmtree(room / ".tuckwright")
    assert published(room).kept == []
    assert bytes_of(room) == before


def test_a_run_that_was_killed_before_it_wrote_down_what_it_did_is_known_by_the_next(room: Path) -> None:
    former = manifest_of(room).read_bytes()
    (room / "site/pages/care.md").write_text("# Care\n", encoding="utf-8")
    published(room)
    manifest_of(room).rename(room / ".tuckwright" / "published-next.json")
    manifest_of(room).write_bytes(former)
    assert "page: care" in published(room).made
    assert published(room).current
