"""The command line as a whole: what it says of slips, and how quickly it is there."""

from __future__ import annotations

import statistics
import subprocess
import sys
import time
from pathlib import Path

import pytest
from room_here import CUSHION, room

from generator.cli import COMMANDS
from tests.room import run

HEAVY = ("matplotlib", "weasyprint", "jinja2", "numpy")
# Runs the tool and then tells which of the heavy modules have been loaded.
WITNESS = f"""
import sys
from generator.cli import main
sys.argv = ["tuckwright", *sys.argv[1:]]
try:
    main()
except SystemExit as left:
    print(left.code, [name for name in {HEAVY!r} if name in sys.modules], file=sys.stderr)
"""


@pytest.mark.parametrize(
    ("words", "code", "says"),
    [
        (("figure",), 2, "Error: there is no command 'figure'; did you mean 'figures'?"),
        (("zzz",), 2, f"Error: there is no command 'zzz'; there are: {', '.join(COMMANDS)}"),
        (("figures", "slip", "medium"), 1, "there is no project 'slip'; there are: slip-cushion"),
        (("figures", "slip-cushon", "medium"), 1, "there is no project 'slip-cushon'; did you mean 'slip-cushion'?"),
        (
            ("figures", "slip-cushion", "med"),
            2,
            "Error: Invalid value for SIZE: 'slip-cushion' has no size 'med'; did you mean 'medium'?",
        ),
        (
            ("figures", "slip-cushion", "tall"),
            2,
            "Error: Invalid value for SIZE: 'slip-cushion' has no size 'tall'; did you mean 'small'?",
        ),
        (
            ("figures", "slip-cushion"),
            2,
            "Error: name one size (small, medium), or give a size of your own: --with NAME=VALUE",
        ),
        (
            ("figures", "slip-cushion", "medium", "--json", "--csv"),
            2,
            "Error: --json and --csv exclude each other; choose one",
        ),
        (
            ("figures", "slip-cushion", "medium", "--sewn", "front.width=3"),
            2,
            "Error: Invalid value for --sewn: 'front.width' is not sewn; there are: front.across, front.along",
        ),
        (
            ("figures", "slip-cushion", "medium", "--sewn", "front.across"),
            2,
            "Error: Invalid value for --sewn: 'front.across': write name=value, for example width=17",
        ),
        (("check", "nothing-here"), 1, "there is no project 'nothing-here'; there are: slip-cushion"),
    ],
)
def test_a_slip_is_told_with_a_hint(tmp_path: Path, words: tuple[str, ...], code: int, says: str) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), *words)
    assert (told.code, told.out, told.err.splitlines()[-1]) == (code, "", says)


def test_an_option_that_is_not_there_is_told_with_the_nearest(tmp_path: Path) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), "figures", "slip-cushion", "medium", "--jsn")
    assert told.code == 2
    assert "--jsn" in told.err
    assert "--json" in told.err


def test_an_edition_that_the_project_lacks_is_refused(tmp_path: Path) -> None:
    inch = CUSHION.replace("kind: cushion", "kind: cushion\neditions: inch")
    told = run(room(tmp_path, slip_cushion=inch), "figures", "slip-cushion", "small", "--edition", "metric")
    assert told.code == 2
    assert told.err.splitlines()[-1] == (
        "Error: Invalid value for --edition: 'slip-cushion' has no metric edition; it has: inch"
    )


def test_outside_any_room_the_way_in_is_told(tmp_path: Path) -> None:
    told = run(tmp_path, "check")
    assert told.code == 1
    assert told.err == (
        f"there is no folder 'projects' in {tmp_path} or above it; `tuckwright start my-first-panel` makes one here\n"
    )


def test_a_room_without_projects_says_how_to_begin(tmp_path: Path) -> None:
    told = run(room(tmp_path), "check")
    assert told.code == 1
    assert told.err == f"{tmp_path / 'projects'} holds no project; `tuckwright start my-first-panel` writes one\n"


def test_the_overview_lists_every_command_and_a_first_time_through(tmp_path: Path) -> None:
    told = run(tmp_path)
    assert told.code == 0
    listed = [line.split()[0] for line in told.out.split("Commands:")[1].splitlines() if line[2:3].strip()]
    assert listed == list(COMMANDS)
    for word in ("start", "check", "figures", "publish"):
        assert f"tuckwright {word}" in told.out
    assert run(tmp_path, "--help").out == told.out


def python(*words: str, folder: Path) -> subprocess.CompletedProcess[str]:
    return subprocess.run([sys.executable, *words], cwd=folder, capture_output=True, text=True, check=True)


@pytest.mark.parametrize(
    "words",
    [("--help",), ("figures", "slip-cushion", "medium", "--json"), ("check",), ("explore", "--finished", "20")],
)
def test_what_needs_no_drawing_loads_none(tmp_path: Path, words: tuple[str, ...]) -> None:
    told = python("-c", WITNESS, *words, folder=room(tmp_path, slip_cushion=CUSHION))
    assert told.stdout
    assert told.stderr.splitlines()[-1] == "0 []"


def test_the_witness_sees_what_is_loaded(tmp_path: Path) -> None:
    told = python("-c", "import jinja2\n" + WITNESS, "--help", folder=tmp_path)
    assert told.stderr.splitlines()[-1] == "0 ['jinja2']"


def test_help_is_there_at_once(tmp_path: Path) -> None:
    # Both kinds of run in turn, so that a busy machine slows both alike.
    bare, helped = [], []
    for _ in range(7):
        for times, words in ((bare, ("-c", "pass")), (helped, ("-m", "generator", "--help"))):
            begun = time.perf_counter()
            python(*words, folder=tmp_path)
            times.append(time.perf_counter() - begun)
    assert statistics.median(helped) <= 6 * statistics.median(bare)
