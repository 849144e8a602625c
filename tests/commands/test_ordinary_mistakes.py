"""Ordinary mistakes at the command line are told as such, never as a fault of the tool, and nothing is half written."""

from __future__ import annotations

import resource
import signal
import subprocess
import sys
from pathlib import Path

import pytest
from room_here import CUSHION, room

from tests.room import run


def ran(folder: Path, *words: str, **options: object) -> tuple[int, str]:
    """The real command in a process of its own: its exit code and what it complained of."""
    done = subprocess.run(
        [sys.executable, "-m", "generator", *words],
        cwd=folder,
        text=True,
        check=False,
        **{"stdout": subprocess.DEVNULL, "stderr": subprocess.PIPE, **options},  # type: ignore[call-overload]
    )
    assert "Traceback" not in done.stderr
    assert "fault of its own" not in done.stderr
    return done.returncode, done.stderr


@pytest.mark.parametrize("words", [("figures", "slip-cushion", "medium"), ("check",), ("schema",)])
def test_a_full_device_to_print_to_is_told(tmp_path: Path, words: tuple[str, ...]) -> None:
    room(tmp_path, slip_cushion=CUSHION)
    with Path("/dev/full").open("w") as full:
        code, told = ran(tmp_path, *words, stdout=full)
    assert code == 1
    assert told == "what is printed could not be written: No space left on device; make room, or print it elsewhere\n"


def no_room_on_the_disk() -> None:
    """No file may grow beyond nothing."""
    signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
    resource.setrlimit(resource.RLIMIT_FSIZE, (0, 0))


def test_a_full_disk_leaves_no_empty_project_behind(tmp_path: Path) -> None:
    (tmp_path / "projects").mkdir()
    code, told = ran(tmp_path, "start", "my-cushion", preexec_fn=no_room_on_the_disk, stderr=subprocess.PIPE)
    assert code == 1
    assert told.startswith(f"{tmp_path}/projects/my-cushion.yaml could not be written: ")
    assert list((tmp_path / "projects").iterdir()) == []


def test_a_project_that_is_there_stays_as_it_is(tmp_path: Path) -> None:
    room(tmp_path, slip_cushion=CUSHION)
    told = run(tmp_path, "start", "slip-cushion")
    assert (told.code, told.err) == (
        1,
        f"{tmp_path}/projects/slip-cushion.yaml is there already and stays as it is; choose another name\n",
    )
    assert (tmp_path / "projects/slip-cushion.yaml").read_text(encoding="utf-8") == CUSHION
    assert [path.name for path in (tmp_path / "projects").iterdir()] == ["slip-cushion.yaml"]


def test_an_output_with_a_name_of_300_letters_is_told(tmp_path: Path) -> None:
    room(tmp_path, slip_cushion=CUSHION)
    told = run(tmp_path, "sheet", "slip-cushion", "small", "-o", f"{'a' * 300}.pdf")
    assert told.code == 1
    assert "could not be written: " in told.err


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (
            ("sheet", "slip-cushion", "-o", "x.pdf", "--with", "side=9", "--with", "side=10"),
            "'side' is given twice; give it once",
        ),
        (("sheet", "slip-cushion", "-o", "x.pdf", "--with", "side=-1"), "less than nothing"),
        (
            ("explore", "--finished", "12", "--spacing", "0"),
            "nothing cannot be worked with; write a length such as 3/8",
        ),
        (("explore", "--finished", "12", "--depth", "0"), "nothing cannot be worked with; write a length such as 3/8"),
        (("explore", "--finished", "0"), "nothing cannot be worked with; write a length such as 3/8"),
        (
            ("sample", "--tucks", "8", "--depth", "0", "--flat", "10", "--finished", "6"),
            "nothing cannot be worked with; write a length such as 3/8",
        ),
        (
            ("sample", "--tucks", "8", "--depth", "1/4", "--flat", "22", "--finished", "17", "1/2"),
            "17 1/2 came as two words; put them in quotation marks: --finished '17 1/2'",
        ),
        (("explore", "--finished", "12", "1/2"), "put them in quotation marks: --finished '12 1/2'"),
    ],
)
def test_a_value_that_cannot_be_meant_is_told(tmp_path: Path, words: tuple[str, ...], says: str) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), *words)
    assert told.code in (1, 2)
    assert says in " ".join(told.err.replace("│", " ").split())
    assert told.out == ""


def test_names_of_files_cannot_move_the_cursor(tmp_path: Path) -> None:
    (tmp_path / "projects").mkdir()
    (tmp_path / "projects" / "\x1b[2Jcushion.yaml").write_text(CUSHION, encoding="utf-8")
    for words in (("figures", "none", "small"), ("check",), ("sheet", "x\x1b[2J", "small", "-o", "x.pdf")):
        told = run(tmp_path, *words)
        assert told.code == 1
        assert "\x1b" not in told.out + told.err


@pytest.mark.parametrize(
    ("meeting", "says"),
    [
        ("join: front.top\n    to: strip.top\n", "2 in apart; make them equal, or write 'ease: 2 in'"),
        (
            "join: front.top\n    to: strip.top\n    ease: 1 in\n",
            "with an ease of 1 in they are 1 in apart; make them equal, ",
        ),
        ("join: strip.top\n    to: front.top\n", "name the longer one first under 'join' and write 'ease: 2 in'"),
    ],
)
def test_an_ease_that_is_wrong_is_told_with_the_right_one(tmp_path: Path, meeting: str, says: str) -> None:
    strip = "  strip:\n    kind: rectangle\n    finished across: side - 2 in\n    finished along: 3 in\n"
    text = CUSHION.replace("steps:", f"{strip}steps:").replace("edges that meet:\n", f"edges that meet:\n  - {meeting}")
    text = text.replace("title: Slip cushion", "title: Slip cushion\neditions: inch")
    told = run(room(tmp_path, slip_cushion=text), "check")
    assert says in told.out
