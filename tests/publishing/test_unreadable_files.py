"""What cannot be read or written is told with its name, what is wrong and what to do; the site stays as it was."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from small_room import Speech, bytes_of, edit, left_over, ran
from test_faults import without_the_powers_of_root

from generator.publishing.room_files import OWN_THEMES

UNWRITTEN = "could not be written: the folder may not be written; check whose it is"


@pytest.mark.parametrize(
    "name",
    [
        "projects",
        "projects/flag.yaml",
        "site/pages",
        "site/pages/how-to-measure.md",
        "site/site.yaml",
        "site/as-is/CNAME",
        "themes/plain/css",
        "themes/plain/css/handout.css",
        "themes/plain/templates/handout.html",
    ],
)
def test_a_file_or_folder_that_may_not_be_read_is_named(room: Path, name: str) -> None:
    (room / "site/as-is").mkdir()
    (room / "site/as-is/CNAME").write_text("loft.example\n", encoding="utf-8")
    shutil.copytree(OWN_THEMES, room / "themes")
    before, mode = bytes_of(room), (room / name).stat().st_mode
    (room / name).chmod(0)
    try:
        code, out, told = ran(room, "publish", "--workers", "1", preexec_fn=without_the_powers_of_root)
        checked, found, complaint = ran(room, "check", preexec_fn=without_the_powers_of_root)
    finally:
        (room / name).chmod(mode)
    assert (code, out, checked) == (1, "", 1)
    for words in (told, found + complaint):
        assert name in words
        assert "be read: " in words
        assert "fault of" not in words
        assert "Traceback" not in words
    assert (bytes_of(room), left_over(room)) == (before, [])


def test_what_was_published_cannot_be_written_down(room: Path) -> None:
    before = bytes_of(room)
    edit(room / "site/pages/how-to-measure.md", "Lay", "Put")
    (room / ".tuckwright").chmod(0o555)
    try:
        code, _, told = ran(room, "publish", "--workers", "1", preexec_fn=without_the_powers_of_root)
    finally:
        (room / ".tuckwright").chmod(0o755)
    assert code == 1
    assert UNWRITTEN in told
    assert "fault of" not in told
    assert (bytes_of(room), left_over(room)) == (before, [])


@pytest.mark.parametrize("words", [("sheet", "flag", "small"), ("class", "flags")])
@pytest.mark.parametrize("length", [251, 300])
def test_a_name_that_is_too_long_is_told_and_one_that_fits_is_written(
    room: Path, speak: Speech, words: tuple[str, ...], length: int
) -> None:
    name = "x" * (length - len(".pdf")) + ".pdf"
    code, _, told = speak(room, *words, "-o", name)
    if length == 300:
        assert code == 1
        assert "could not be written: the name is too long; choose a shorter one" in told
        assert name not in told
    else:
        assert "too long" not in told
        assert (room / name).exists() == (code == 0)
