"""``tuckwright check``: project files come in, every finding is printed; exit code 1 on an error."""

from __future__ import annotations

import sys
from collections import Counter
from pathlib import Path

import click

from generator.calculation.worksheet.sheet import findings_of_project
from generator.commands.room_folder import project_files, room_folder
from generator.commands.told import told
from generator.commands.working import the_room


@click.command(name="check", help="Read and work every project in every size and edition, and print every finding.")
@click.argument("projects", nargs=-1, metavar="[PROJECT ...]")
@click.option("--notes", is_flag=True, help="Print notes too, such as how a lone inch value was read in metric.")
def command(projects: tuple[str, ...], *, notes: bool) -> None:
    """Print every finding, errors first in each project, and a line that counts them."""
    folder = room_folder()
    room = the_room(folder)
    levels: Counter[str] = Counter()
    files = project_files(folder, projects)
    for path in files:
        for level, line in told(findings_of_project(path, room, folder)):
            levels[level] += 1
            if level != "note" or notes:
                click.echo(line)
    click.echo(_counted(files, levels))
    sys.exit(1 if levels["error"] else 0)


def _counted(files: list[Path], levels: Counter[str]) -> str:
    counts = ", ".join(
        f"{levels[level]} {level}{'' if levels[level] == 1 else 's'}" for level in ("error", "warning", "note")
    )
    return f"{len(files)} project{'' if len(files) == 1 else 's'} checked: {counts}"
