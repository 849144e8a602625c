"""What was drawn is kept: nothing is drawn twice, and a file that somebody has changed counts as none."""

from __future__ import annotations

import hashlib
import json
import os
import shutil
import zlib
from dataclasses import replace
from pathlib import Path

import pytest
from small_room import bytes_of, edit, made_room, opened, published, site_of

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.publishing import kept_files
from generator.publishing.kept_pictures import kept_drawers, kept_heights
from generator.publishing.make import sheets
from generator.publishing.room import OpenRoom
from generator.publishing.room_files import OWN_THEMES
from generator.rendering.handout import measuring
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.sheet import render_handouts

# As it is before handouts are set only once in all tests: those that are not set would draw nothing.
HANDOUTS = sheets.handouts


@pytest.fixture
def drawn_room(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A room with themes of its own, published with all that is drawn for it."""
    monkeypatch.setattr(sheets, "handouts", HANDOUTS)
    room = made_room(tmp_path)
    shutil.copytree(OWN_THEMES, room / "themes")
    published(room)
    return room


def tablet(folder: Path) -> tuple[OpenRoom, Worksheet]:
    room = opened(folder)
    project = load_project(folder / "projects/tablet.yaml", room.shared.room, folder)
    return room, worked_sheet(project, "only", room.shared.room.edition("inch"), room.shared)


def kept(room: Path) -> dict[Path, bytes]:
    return {path: path.read_bytes() for path in sorted((room / ".tuckwright/pictures").iterdir())}


def sealed(path: Path, text: str) -> bytes:
    """A file as the tool writes it; whoever knows how may write one too."""
    held = zlib.compress(text.encode())
    return hashlib.sha256(path.name.encode() + held).digest() + held


def drawn_by(folder: Path) -> tuple[str, int]:
    """A picture of the tablet, and how much its drawer knew before it was asked."""
    room, worksheet = tablet(folder)
    with kept_drawers(room, {"tablet": worksheet}) as drawers:
        known = drawers["tablet"].drawn.number
        return drawers["tablet"].for_pages()["fold marks front"].svg, known


def test_a_word_or_a_style_sheet_draws_nothing_again(drawn_room: Path) -> None:
    room = drawn_room
    before = {path: path.stat().st_ino for path in kept(room) if b'"pages"' in kept_files.read_kept(path)}
    assert len(before) == 3
    edit(room / "projects/flag.yaml", "Hold it up to the light", "Hold it up to a lamp")
    assert {"flag/inch/small", "flag/inch/large"} <= set(published(room).made)
    with (room / "themes/plain/css/handout.css").open("a", encoding="utf-8") as file:
        file.write("p { letter-spacing: 0.1mm; }\n")
    assert "tablet/inch/only" in published(room).made
    now = {path: path.stat().st_ino for path in kept(room) if b'"pages"' in kept_files.read_kept(path)}
    assert now == before


def set_with_heights(folder: Path, monkeypatch: pytest.MonkeyPatch, text: str = "") -> tuple[dict[str, bytes], int]:
    """The handout of the tablet, as a process sets it that has measured nothing, and how much it measured."""
    room, worksheet = tablet(folder)
    if text:
        worksheet = replace(worksheet, steps=(replace(worksheet.steps[0], text=text, printed=""), *worksheet.steps[1:]))
    measuring.known_heights.cache_clear()
    by_name, found = measuring._heights_by_name, list[str]()
    with monkeypatch.context() as patch, kept_heights(room, "tablet") as heights:
        patch.setattr(measuring, "_heights_by_name", lambda document: found.extend(told := by_name(document)) or told)
        sheets = render_handouts(worksheet, room.setting, ("Letter", "A4"), Drawer(worksheet, room.style), heights)
    return sheets, len(found)


def test_only_a_paragraph_that_was_changed_is_measured_again(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = made_room(tmp_path)
    first, measured = set_with_heights(folder, monkeypatch)
    assert measured > 20
    assert set_with_heights(folder, monkeypatch) == (first, 0)
    changed, measured_again = set_with_heights(folder, monkeypatch, "Fold the cloth once, and look at it.")
    # Beside the pictures and below them.
    assert measured_again == 2
    shutil.rmtree(folder / ".tuckwright")
    assert set_with_heights(folder, monkeypatch, "Fold the cloth once, and look at it.")[0] == changed != first


@pytest.mark.parametrize("forged", ["low", "high", "negative", "words", "cut"])
def test_heights_that_somebody_has_forged_spoil_no_sheet(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, forged: str
) -> None:
    folder = made_room(tmp_path)
    first, _ = set_with_heights(folder, monkeypatch)
    [path] = kept(folder)
    heights = json.loads(kept_files.read_kept(path))
    lies = {"low": 0.1, "high": 19_000.0, "negative": -5.0, "words": "much", "cut": 3.0}
    path.write_bytes(sealed(path, json.dumps(dict.fromkeys(heights, lies[forged])))[: -9 if forged == "cut" else None])
    assert set_with_heights(folder, monkeypatch)[0] == first


def test_a_picture_that_is_kept_is_the_one_that_was_drawn(room: Path) -> None:
    first, known = drawn_by(room)
    again, known_again = drawn_by(room)
    assert (known, known_again > 0) == (0, True)
    assert again == first


@pytest.mark.parametrize("spoil", ["cut", "turned", "renamed", "empty"])
def test_a_file_that_was_spoiled_is_found_and_made_anew(drawn_room: Path, spoil: str) -> None:
    room = drawn_room
    site = bytes_of(room)
    before = kept(room)
    paths = list(before)
    for path, other in zip(paths, [*paths[1:], paths[0]], strict=True):
        content = before[path]
        spoiled = {
            "cut": content[:-9],
            "turned": content[:90] + bytes([content[90] ^ 1]) + content[91:],
            "renamed": before[other],
            "empty": b"",
        }[spoil]
        path.write_bytes(spoiled)
    for page in site_of(room).rglob("inch.html"):
        page.unlink()
    published(room)
    assert bytes_of(room) == site
    assert kept(room) == before


@pytest.mark.parametrize(
    "forged",
    [
        '<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><image href="https://elsewhere.example/"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><path style="x:1" d="M0 0"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><path fill="url(https://elsewhere.example/)" d="M0 0"/></svg>',
        '<svg xmlns="http://www.w3.org/2000/svg"><a>b</a></svg>',
    ],
)
def test_a_forged_picture_that_is_no_drawing_is_not_shown(tmp_path: Path, forged: str) -> None:
    folder = made_room(tmp_path)
    first, _ = drawn_by(folder)
    [path] = kept(folder)
    held = json.loads(kept_files.read_kept(path))
    held["tablet"]["pages"]["fold marks front"]["svg"] = forged
    path.write_bytes(sealed(path, json.dumps(held)))
    assert drawn_by(folder) == (first, 0)


@pytest.mark.parametrize("text", ["{", "[]", '{"tablet": {}}', '{"tablet": 3}', "[" * 100_000])
def test_a_file_that_holds_something_else_counts_as_none(tmp_path: Path, text: str) -> None:
    folder = made_room(tmp_path)
    first, _ = drawn_by(folder)
    [path] = kept(folder)
    path.write_bytes(sealed(path, text))
    assert drawn_by(folder) == (first, 0)


def test_a_length_that_is_none_counts_as_none(tmp_path: Path) -> None:
    folder = made_room(tmp_path)
    room, worksheet = tablet(folder)
    with kept_drawers(room, {"tablet": worksheet}) as drawers:
        drawers["tablet"].heights("fold marks front", 77.0)
    [path] = kept(folder)
    held = json.loads(kept_files.read_kept(path))
    for heights in held["tablet"]["heights"].values():
        heights["least"] = float("nan")
    path.write_bytes(sealed(path, json.dumps(held)))
    with kept_drawers(room, {"tablet": worksheet}) as drawers:
        assert drawers["tablet"].drawn.number == 0


def test_what_is_packed_too_tight_is_not_unpacked_without_end(tmp_path: Path) -> None:
    path = tmp_path / ("0" * 32)
    held = zlib.compress(bytes(200_000_000), 9)
    path.write_bytes(hashlib.sha256(path.name.encode() + held).digest() + held)
    assert len(kept_files.read_kept(path)) <= 80_000_000


def test_what_was_used_longest_ago_goes_first(tmp_path: Path) -> None:
    for number in range(4):
        path = kept_files.kept_file(tmp_path, str(number) * 32)
        kept_files.keep_file(path, os.urandom(1000))
        os.utime(path, (number, number))
    kept_files.read_kept(kept_files.kept_file(tmp_path, "0" * 32))
    left = kept_files.kept_file(tmp_path, ".tuckwright-1")
    left.write_bytes(b"half")
    os.utime(left, (9, 9))
    kept_files.sweep(tmp_path, 2_200)
    assert sorted(path.name[0] for path in kept_files.kept_file(tmp_path, "").iterdir()) == ["0", "3"]


def test_a_folder_that_may_not_be_written_only_draws_again(tmp_path: Path) -> None:
    folder = made_room(tmp_path)
    (folder / ".tuckwright").write_text("no folder", encoding="utf-8")
    assert drawn_by(folder)[1] == 0
    assert drawn_by(folder)[1] == 0
