"""A small room on disk, and the command line run in it as a person would."""

from __future__ import annotations

import contextlib
import io
import sys
from dataclasses import dataclass
from pathlib import Path

import pytest

from generator.cli import main

CUSHION = """\
title: Slip cushion
kind: cushion
summary: |
  A square cushion with an envelope back.
sizes:
  small:
    side: 12 in or 30 cm
  medium:
    side: 16 in or 40 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
      margin: 3/4 in to 1 1/2 in or 2 cm to 3 cm
    edges:
      all: seam 1/2 in or 1.5 cm
  back:
    kind: envelope back
    finished across: front.across
    finished along: side
    overlap: 4 in or 10 cm
    hem: 1 in or 2.5 cm
    edges:
      all: seam 1/2 in or 1.5 cm
steps:
  - use: as usual
edges that meet:
  - join: front.all
    to: back.all
"""


@dataclass(frozen=True)
class Told:
    """What the command line said, and its exit code."""

    code: int
    out: str
    err: str

    @property
    def lines(self) -> list[str]:
        return self.out.splitlines()


def room(folder: Path, **projects: str) -> Path:
    """A room with these projects; a name's underscores stand for hyphens."""
    (folder / "projects").mkdir(exist_ok=True)
    for name, text in projects.items():
        (folder / "projects" / f"{name.replace('_', '-')}.yaml").write_text(text, encoding="utf-8")
    return folder


def run(folder: Path, *words: str) -> Told:
    """Run tuckwright in a folder with these words."""
    out, err = io.StringIO(), io.StringIO()
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(folder)
        patch.setattr(sys, "argv", ["tuckwright", *words])
        with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
            try:
                main()
                code: int | str | None = 0
            except SystemExit as left:
                code = left.code
    assert code is None or isinstance(code, int)
    assert "Traceback" not in out.getvalue() + err.getvalue()
    assert "fault of its own" not in err.getvalue()
    return Told(code or 0, out.getvalue(), err.getvalue())
