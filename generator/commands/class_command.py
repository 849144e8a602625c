"""``tuckwright class FILE``: a class comes in; what to buy, pack, print and when to do what is printed."""

from __future__ import annotations

import difflib
import json
from pathlib import Path

import click

from generator.calculation.worksheet.class_figures import class_figures
from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.calculation.worksheet.sheet import shelf_of
from generator.commands.class_text import class_text
from generator.commands.room_folder import project_files, room_folder
from generator.commands.working import the_room
from generator.definitions.class_plan import load_class
from generator.definitions.project import load_project
from generator.errors import TuckwrightError


@click.command(name="class", help="Work out what a class needs: cloth and supplies, kits, timetable, print run.")
@click.argument("file")
@click.option("--json", "as_json", is_flag=True, help="Print JSON; its keys stay the same from version to version.")
def command(file: str, *, as_json: bool) -> None:
    """Print the class; FILE is a name in site/classes or a path."""
    sheet = _opened(file)
    click.echo(json.dumps(class_figures(sheet), indent=2, ensure_ascii=False) if as_json else class_text(sheet))


def _opened(file: str) -> ClassSheet:
    """Return the class of a name, checked against its project and worked out."""
    folder = room_folder()
    path = _class_file(folder, file)
    room = the_room(folder)
    project_name = load_class(path, root=folder).project
    try:
        project_file = project_files(folder, (project_name,))[0]
    except TuckwrightError as fault:
        raise TuckwrightError(f"{path.name}: {fault}") from fault
    project = load_project(project_file, room, folder)
    return class_sheet(load_class(path, project, folder), project, shelf_of(room, folder))


def _class_file(folder: Path, name: str) -> Path:
    """Return the file of a class named by its file's name, with or without .yaml, or by a path."""
    path = Path(name)
    if path.suffix == ".yaml" and path.is_file():
        return path
    by_name = {file.stem: file for file in sorted((folder / "site" / "classes").glob("*.yaml"))}
    wanted = path.name.removesuffix(".yaml")
    if wanted in by_name:
        return by_name[wanted]
    near = difflib.get_close_matches(wanted, by_name, n=1)
    hint = f"did you mean '{near[0]}'?" if near else f"there are: {', '.join(by_name) or 'none'}"
    raise TuckwrightError(f"there is no class '{name}' in {folder / 'site' / 'classes'}; {hint}")
