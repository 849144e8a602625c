"""The source of the tool, each file read and parsed once for all tests of the house."""

from __future__ import annotations

import ast
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
CALCULATION = ROOT / "generator" / "calculation"
FILES = sorted((ROOT / "generator").rglob("*.py"))


@cache
def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def name_of(path: Path) -> str:
    """A file as it is told in a message."""
    return str(path.relative_to(ROOT))
