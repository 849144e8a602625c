"""This version beside an older one: ``python -m tests.benchmarks.against FOLDER [PROJECT ...]``.

FOLDER is a clone of the older version with its environment in ``.venv``. Each version publishes the demo room that it
has, with those projects that both have, or with the projects named: from nothing, after a word of a step was changed,
and after a style sheet of the handouts was. What is told is how long processors worked, of all processes together, the
two versions in turn. Pictures of finished things are new and counted apart: the newer version is measured without them.
All projects take about half an hour on two cores.
"""

from __future__ import annotations

import shutil
import tempfile
from collections.abc import Callable
from pathlib import Path

import click

from tests.benchmarks.clock import Clock
from tests.benchmarks.cost import cost_of
from tests.benchmarks.publish import EDITED, apart, line
from tests.benchmarks.rooms import change
from tests.room import ROOT

SHARED = ("site/site.yaml", "site/pages", "themes")
WORD = ("should stand like pages", "should stand like leaves")


def room_of(version: Path, folder: Path, projects: list[str]) -> Path:
    """Make a room with projects of the demo room of a version, and themes of its own that can be changed."""
    for name in SHARED:
        source, place = version / name, folder / name
        place.parent.mkdir(parents=True, exist_ok=True)
        shutil.copytree(source, place) if source.is_dir() else shutil.copy(source, place)
    (folder / "projects").mkdir()
    for project in projects:
        shutil.copy(version / "projects" / f"{project}.yaml", folder / "projects")
    return folder


def both(what: str, goal: str, rooms: dict[Path, Path], clock: Clock, without: float = 0.0) -> None:
    """Publish both rooms, the older version first, and compare how long processors worked."""
    worked = {
        version: cost_of([str(version / ".venv/bin/tuckwright"), "publish"], room, clock).worked
        for version, room in rooms.items()
    }
    old, new = worked.values()
    line(what, new - without, "the older version", old, goal)


def edited(rooms: dict[Path, Path], file: str, changed: Callable[[str], str]) -> None:
    """Change a file of both rooms, which must change."""
    for room in rooms.values():
        assert change(room / file, changed) != (room / file).read_text(encoding="utf-8")


@click.command(help=__doc__)
@click.argument("folder", type=click.Path(exists=True, file_okay=False, path_type=Path))
@click.argument("projects", nargs=-1)
def main(folder: Path, projects: tuple[str, ...]) -> None:
    """Measure and print."""
    older = folder.resolve()
    known = [{path.stem for path in (version / "projects").glob("*.yaml")} for version in (older, ROOT)]
    chosen = sorted({EDITED, *projects} if projects else known[0] & known[1])
    with tempfile.TemporaryDirectory() as aside, Clock() as clock:
        rooms = {
            version: room_of(version, Path(aside) / name, chosen) for name, version in (("old", older), ("new", ROOT))
        }
        drawn = clock.right(lambda: apart("floor", rooms[ROOT], "pictures"))
        click.echo(f"{len(chosen)} projects, {older} beside {ROOT}")
        click.echo(f"pictures of {len(chosen)} finished things and all plans, counted apart: {drawn:.2f} s")
        both("work from nothing", "<= 0.5", rooms, clock, drawn)
        edited(rooms, f"projects/{EDITED}.yaml", lambda text: text.replace(*WORD))
        both("work after one word of one step", "<= 0.3", rooms, clock)
        edited(rooms, "themes/plain/css/handout.css", lambda text: f"{text}\n/* */")
        both("work after a style sheet", "<= 0.6", rooms, clock)


if __name__ == "__main__":
    main()
