"""A room may come from a stranger: no file that lies in it is run as code, and none of them bends a drawing."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest
from small_room import bytes_of, made_room, site_of

SCRIPT = [str(Path(sys.executable).with_name("tuckwright"))]
MODULE = [sys.executable, "-m", "generator"]
# Modules that the tool, its helper processes or its libraries load; each says here that it was run.
LOADED = ("multiprocessing", "threading", "json", "click", "tempfile", "matplotlib", "weasyprint", "sitecustomize")
STYLE = b"lines.linewidth: 40\nsvg.fonttype: path\nfigure.dpi: 20\n\xff\n"
WITNESS = "import pathlib\npathlib.Path({!r}).touch()\nraise SystemExit('code of the room was run')\n"


def with_files_that_lead_astray(room: Path) -> Path:
    """Put files into the folder of a room that Python or a library would take for its own."""
    for name in LOADED:
        (room / f"{name}.py").write_text(WITNESS.format(str(room / "was run")), encoding="utf-8")
    (room / "matplotlibrc").write_bytes(STYLE)
    return room


@pytest.mark.parametrize(
    ("command", "path"),
    [(SCRIPT, ""), (MODULE, ""), (MODULE, f"/nowhere{os.pathsep}")],
    ids=["script", "module", "an empty place in the path of modules"],
)
def test_a_room_with_files_that_look_like_code_is_published_as_without_them(
    published_once: Path, tmp_path: Path, command: list[str], path: str
) -> None:
    room = with_files_that_lead_astray(made_room(tmp_path / "room"))
    kept = {name: value for name, value in os.environ.items() if name not in ("PYTHONPATH", "PYTHONSAFEPATH")}
    if path:
        # What lies in an empty place of PYTHONPATH is run before any program; only what is loaded later is ours.
        for name in ("sitecustomize", "threading"):
            (room / f"{name}.py").unlink()
        kept["PYTHONPATH"] = path
    done = subprocess.run(
        [*command, "publish", "--workers", "2"], cwd=room, env=kept, capture_output=True, text=True, timeout=300
    )
    assert not (room / "was run").exists()
    assert (done.returncode, "2 projects published" in done.stdout) == (0, True), done.stderr
    assert bytes_of(room) == bytes_of(published_once)
    assert (site_of(room) / "index.html").is_file()
