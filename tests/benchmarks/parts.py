"""What pictures, own sizes and search add to a build: ``python -m tests.benchmarks.parts [PROJECT ...]``.

A small room is published from nothing five times, by one worker: whole, without each of the three in turn, and whole
again, so that a machine which grows faster or slower meanwhile is seen. Pictures and search are left out of a copy of
the tool, own sizes of a copy of the projects. Linux only. Not a test: nothing fails.
"""

from __future__ import annotations

import re
import shutil
import tempfile
from collections.abc import Callable, Mapping
from pathlib import Path

import click

from tests.benchmarks.clock import Clock
from tests.benchmarks.cost import cost_of
from tests.benchmarks.publish import TOOL
from tests.benchmarks.rooms import change, room_of
from tests.room import ROOT

MODEL = ("quay-cushion",)
PICTURES, OWN_SIZES, SEARCH = "pictures", "own sizes", "search"
# What is taken out of the tool, and what stands there then.
EDITS: Mapping[str, tuple[tuple[str, str, str], ...]] = {
    PICTURES: (
        (
            "generator/publishing/make/pictures.py",
            "    worksheet = shown_alone(pickle.loads(packed))",
            "    return ThingPictures()\n    worksheet = shown_alone(pickle.loads(packed))",
        ),
        (
            "generator/publishing/make/pictures.py",
            "content, high = plan_file(turn_plan(name).cell)",
            'content, high = b"", 240',
        ),
    ),
    SEARCH: (("generator/publishing/tasks.py", '        Page("pages:make_search", _search),\n', ""),),
}
_BETWEEN = re.compile(r"(?m)^between:\n(?: .*\n)+")


def tool_without(part: str, folder: Path) -> list[str]:
    """Copy the tool without a part, and return how it publishes."""
    for name in ("generator", "themes"):
        shutil.copytree(ROOT / name, folder / name, ignore=shutil.ignore_patterns("__pycache__"))
    for file, stands, instead in EDITS[part]:
        before = change(folder / file, lambda text, old=stands, new=instead: text.replace(old, new))  # type: ignore[misc]
        assert stands in before, f"{file} has changed: {stands!r} is not in it"
    return ["env", f"PYTHONPATH={folder}", *TOOL]


def small_room(folder: Path, projects: tuple[str, ...], changed: Callable[[str], str]) -> Path:
    """Make a room of some projects on one paper, without sheets beside the handout."""
    room = room_of(folder, projects)
    change(
        room / "site/site.yaml",
        lambda text: re.sub(
            r"(?m)^(papers|sheets):.*$", lambda line: {"papers": "papers: A4"}.get(line[1], "sheets:"), text
        ),
    )
    for project in projects:
        change(room / "projects" / f"{project}.yaml", changed)
    return room


def weights(site: Path) -> dict[str, int]:
    """Return how many bytes of a site belong to each part; ``whole`` is all of it."""
    files = [file for file in site.rglob("*") if file.is_file() and not file.name.startswith(".")]
    printed = {file.parent for file in files if file.suffix == ".pdf"}
    is_of = {
        PICTURES: lambda file: file.suffix == ".webp" or file.name == "share.jpg",
        OWN_SIZES: lambda file: file.parent.parent.parent.name == "projects" and file.parent not in printed,
        SEARCH: lambda file: file.name in ("words.js", "all.html"),
    }
    found = {part: sum(file.stat().st_size for file in files if holds(file)) for part, holds in is_of.items()}
    return {"whole": sum(file.stat().st_size for file in files), **found}


@click.command(help=__doc__)
@click.argument("projects", nargs=-1)
def main(projects: tuple[str, ...]) -> None:
    """Measure and print."""
    chosen = projects or MODEL
    with tempfile.TemporaryDirectory() as place, Clock() as clock:
        folder = Path(place)
        for number, left_out in enumerate(("", PICTURES, OWN_SIZES, SEARCH, "")):
            tool = tool_without(left_out, folder / f"tool {number}") if left_out in EDITS else TOOL
            changed = (lambda text: _BETWEEN.sub("", text)) if left_out == OWN_SIZES else str
            room = small_room(folder / f"room {number}", chosen, changed)
            cost = cost_of([*tool, "--workers", "1"], room, clock)
            weight = weights(room / "site/public")
            assert not left_out or left_out == PICTURES or weight[left_out] == 0, f"{left_out} are still there"
            told = ", ".join(f"{part} {size / 1000:.0f} kB" for part, size in weight.items())
            name = f"without {left_out}" if left_out else "whole"
            click.echo(f"{name:<18} worked {cost.worked:6.1f} s, waited {cost.waited:6.1f} s; {told}")


if __name__ == "__main__":
    main()
