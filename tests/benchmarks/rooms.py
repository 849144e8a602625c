"""Rooms to measure with: a folder comes in, a room with projects of the demo room, or with many, stands there."""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from pathlib import Path

from tests.room import ROOT, part_of_demo

ALL_BUT_PROJECTS = ("site/site.yaml", "site/body", "site/pages", "themes")
MODEL = "quay-cushion"
KINDS = ("cushion", "sample", "other")
LEVELS = ("first project", "some practice", "experienced")


def room_of(folder: Path, projects: Sequence[str], copies: int = 1) -> Path:
    """Make a room with so many copies of projects of the demo room, and themes of its own that can be changed."""
    part_of_demo(folder, *ALL_BUT_PROJECTS)
    for project in projects:
        text = (ROOT / "projects" / f"{project}.yaml").read_text(encoding="utf-8")
        for number in range(copies):
            name = f"{project}-{number}" if copies > 1 else project
            (folder / "projects" / f"{name}.yaml").write_text(text, encoding="utf-8")
    return folder


def grown_room(folder: Path, projects: int, sizes: int) -> Path:
    """Make a room with so many projects of so many sizes, no two alike, on one paper in both editions."""
    part_of_demo(folder, *ALL_BUT_PROJECTS)
    change(folder / "site" / "site.yaml", lambda text: re.sub(r"(?m)^papers:.*$", "papers: Letter", text))
    model = (ROOT / "projects" / f"{MODEL}.yaml").read_text(encoding="utf-8")
    for number in range(projects):
        (folder / "projects" / f"cushion-{number:03}.yaml").write_text(_grown(model, number, sizes), encoding="utf-8")
    return folder


def _grown(model: str, number: int, sizes: int) -> str:
    """Return the model with a title, a kind, a level, a depth and sizes of its own."""
    inches = [12 + 2 * size + number % 4 for size in range(sizes)]
    lines = "".join(
        f"  size-{side}:\n    label: Square of {side}\n    side: {side} in or {5 * (side // 2)} cm\n" for side in inches
    )
    text = re.sub(r"(?ms)^sizes:\n.*?(?=^#|^\w)", f"sizes:\n{lines}\n", model, count=1)
    text = re.sub(r"(?m)^title: .*$", f"title: Cushion {number}", text, count=1)
    text = re.sub(r"(?m)^kind: .*$", f"kind: {KINDS[number % len(KINDS)]}", text, count=1)
    text = re.sub(r"(?m)^level: .*$", f"level: {LEVELS[number % len(LEVELS)]}", text, count=1)
    return text.replace("colour: sea blue", f"colour: {('sea blue', 'sea green', 'sand')[number % 3]}")


def change(path: Path, changed: Callable[[str], str]) -> str:
    """Change a file, and return what it said before."""
    before = path.read_text(encoding="utf-8")
    path.write_text(changed(before), encoding="utf-8")
    return before
