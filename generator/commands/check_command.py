"""``tuckwright check``: project files come in, every finding is printed; exit code 1 on an error."""

from __future__ import annotations

import sys
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

import click

from generator.calculation.worksheet.sheet import load_room_context
from generator.commands.room_folder import project_files, room_folder
from generator.commands.told import told
from generator.commands.working import the_room
from generator.definitions.room import Room
from generator.errors import Finding, TuckwrightError
from generator.publishing.checking import findings_of_classes, findings_of_project, findings_of_room, opened_theme


@click.command(name="check", help="Read and work every project in every size and edition, and print every finding.")
@click.argument("projects", nargs=-1, metavar="[PROJECT ...]")
@click.option("--notes", is_flag=True, help="Print notes too, such as how a lone inch value was read in metric.")
def command(projects: tuple[str, ...], *, notes: bool) -> None:
    """Print every finding, errors first in each project, and a line that counts them."""
    folder = room_folder()
    room = the_room(folder)
    levels: Counter[str] = Counter()
    files = project_files(folder, projects)
    for findings in _found(folder, room, files, whole=not projects):
        for level, line in told(findings):
            levels[level] += 1
            if level != "note" or notes:
                click.echo(line)
    click.echo(_counted(files, levels))
    sys.exit(1 if levels["error"] else 0)


def _found(folder: Path, room: Room, files: Sequence[Path], *, whole: bool) -> Iterator[Iterable[Finding]]:
    """Give the findings of the room, of each project and, where the ``whole`` room is checked, of its classes."""
    of_room = findings_of_room(folder, room)
    sound = not _errors(of_room)
    yield of_room
    try:
        theme = opened_theme(folder, room)
    except TuckwrightError:
        theme = None
    for path in files:
        found = [finding for finding in findings_of_project(path, room, folder, theme) if finding not in of_room]
        sound &= not _errors(found)
        yield found
    if whole and sound:
        yield findings_of_classes(folder, load_room_context(room, folder), theme)


def _errors(findings: Iterable[Finding]) -> bool:
    return any(finding.level == "error" for finding in findings)


def _counted(files: list[Path], levels: Counter[str]) -> str:
    counts = ", ".join(
        f"{levels[level]} {level}{'' if levels[level] == 1 else 's'}" for level in ("error", "warning", "note")
    )
    return f"{len(files)} project{'' if len(files) == 1 else 's'} checked: {counts}"
