"""Settings for drawing and fonts, in the working folder or of the machine, change no sheet and give no traceback."""

from __future__ import annotations

import os
import subprocess
import sys
from collections.abc import Mapping
from pathlib import Path

import pytest

from .checked_room import room

BENT = b"lines.linewidth: 9\nfigure.dpi: 30\nsvg.fonttype: path\npath.sketch: 5, 60, 3\ntext.usetex: True\n"
NO_TEXT = b"\xff\xfe\x00svg.fonttype: \xe9\n"
FONTS = """\
<?xml version="1.0"?><!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">
<fontconfig>
  <dir>/usr/share/fonts</dir>
  <match target="scan"><edit name="weight" mode="assign"><int>200</int></edit></match>
</fontconfig>
"""


def sheet(folder: Path, **environment: str) -> bytes:
    """The handout of the good project, written by the real command in its room."""
    ran = subprocess.run(
        [sys.executable, "-m", "generator", "sheet", "cushion", "small", "-o", "sheet.pdf"],
        cwd=folder,
        env={**os.environ, "TUCKWRIGHT_TRACE": "1", **environment},
        capture_output=True,
        text=True,
        check=False,
    )
    assert ran.stderr == ""
    assert ran.returncode == 0
    return (folder / "sheet.pdf").read_bytes()


@pytest.fixture(scope="module")
def plain(tmp_path_factory: pytest.TempPathFactory) -> bytes:
    """The sheet as it is without any settings."""
    return sheet(room(tmp_path_factory.mktemp("plain") / "room"))


def machine(folder: Path, settings: bytes) -> Mapping[str, str]:
    """An environment that names settings wherever the drawing library looks for them."""
    (folder / "matplotlib" / "stylelib").mkdir(parents=True)
    for path in ("matplotlibrc", "matplotlib/matplotlibrc", "matplotlib/stylelib/own.mplstyle"):
        (folder / path).write_bytes(settings)
    (folder / "fonts.conf").write_text(FONTS, encoding="utf-8")
    return {
        "MATPLOTLIBRC": str(folder / "matplotlibrc"),
        "MPLCONFIGDIR": str(folder / "matplotlib"),
        "XDG_CONFIG_HOME": str(folder),
        "MPLBACKEND": "no-such-thing",
        "FONTCONFIG_FILE": str(folder / "fonts.conf"),
    }


@pytest.mark.parametrize("settings", [BENT, NO_TEXT], ids=["bent", "no text"])
def test_settings_and_lists_of_fonts_of_the_room_and_of_the_machine_change_nothing(
    tmp_path: Path, plain: bytes, settings: bytes
) -> None:
    folder = room(tmp_path / "room")
    (folder / "matplotlibrc").write_bytes(settings)
    (folder / ".tuckwright" / "matplotlib").mkdir(parents=True)
    for name in ("fontlist-v390.json", "fontlist-v3110.json", "fontlist-v400.json"):
        (folder / ".tuckwright" / "matplotlib" / name).write_text("{", encoding="utf-8")
    (folder / ".tuckwright" / "matplotlib" / "matplotlibrc").write_bytes(settings)
    (tmp_path / "machine").mkdir()
    assert sheet(folder, **machine(tmp_path / "machine", settings)) == plain


def test_settings_of_the_room_alone_change_nothing(tmp_path: Path, plain: bytes) -> None:
    folder = room(tmp_path / "room")
    (folder / "matplotlibrc").write_bytes(BENT)
    assert sheet(folder) == plain


def test_a_person_without_a_folder_for_caches_gets_the_same_sheet(tmp_path: Path, plain: bytes) -> None:
    (tmp_path / "file").write_text("no folder", encoding="utf-8")
    assert sheet(room(tmp_path / "room"), XDG_CACHE_HOME=str(tmp_path / "file")) == plain
