"""``tuckwright class FILE``: a class comes in; what to buy, pack, print and when to do what is printed."""

from __future__ import annotations

import difflib
import json
from pathlib import Path
from pkgutil import resolve_name
from typing import TypedDict, Unpack

import click

from generator.calculation.making.classes import Kit
from generator.calculation.worksheet.class_figures import class_figures
from generator.calculation.worksheet.class_work import ClassSheet, class_sheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context
from generator.commands.class_text import class_text
from generator.commands.output_file import chosen_paper, refuse_to_overwrite, write_whole
from generator.commands.room_folder import project_files, room_folder
from generator.commands.working import the_room
from generator.definitions.class_plan import load_class
from generator.definitions.project import Project, load_project
from generator.errors import TuckwrightError
from generator.publishing.inputs import theme_folder
from generator.rendering.addresses import handout_file


class PackOptions(TypedDict):
    """What may be said about a class pack, each as it was typed."""

    paper: str | None
    theme: str | None
    everything: bool
    one_sided: bool


@click.command(name="class", help="Work out what a class needs: cloth and supplies, kits, timetable, print run.")
@click.argument("file")
@click.option("--json", "as_json", is_flag=True, help="Print JSON; its keys stay the same from version to version.")
@click.option("-o", "--output", type=click.Path(path_type=Path), metavar="FILE.pdf", help="Write the class pack.")
@click.option("--paper", help="Of the class pack: Letter or A4; the paper of the class without it.")
@click.option("--theme", metavar="NAME", help="Of the class pack, such as large-print; the room's without it.")
@click.option("--everything", is_flag=True, help="With all handouts and sheets of the class behind the pack.")
@click.option("--one-sided", is_flag=True, help="For a printer that prints one side; no page is left blank.")
def command(file: str, output: Path | None, *, as_json: bool, **how: Unpack[PackOptions]) -> None:
    """Print the class, or write its pack; FILE is a name in site/classes or a path."""
    if output is None and any(how.values()):
        told = "--paper, --theme, --everything and --one-sided belong to the class pack; name its file with -o"
        raise click.UsageError(told)
    if output is not None and as_json:
        raise click.UsageError("--json is printed and -o writes a PDF; choose one")
    if output is not None:
        refuse_to_overwrite(output)
    folder = room_folder()
    sheet, project, shared = _opened(folder, file)
    if output is not None:
        _write_pack(folder, (sheet, project, shared), output, how)
        return
    pages = {work.kit: number for work in sheet.kits if (number := _pages(folder, sheet, work.kit)) is not None}
    figures = class_figures(sheet, pages) if as_json else None
    click.echo(json.dumps(figures, indent=2, ensure_ascii=False) if figures else class_text(sheet, pages))


def _write_pack(folder: Path, opened: tuple[ClassSheet, Project, RoomContext], output: Path, how: PackOptions) -> None:
    """Write the class pack: everything on paper for whoever teaches, with the names of the students."""
    (sheet, _, shared), printing = opened, resolve_name("generator.publishing.printing")
    wanted = chosen_paper(tuple(dict.fromkeys((sheet.paper, *shared.room.papers))), how["paper"])
    look = theme_folder(folder, how["theme"] or shared.room.theme)
    papers = printing.class_papers(printing.TaughtClass(*opened, folder, look, wanted), everything=how["everything"])
    both_sides = not how["one_sided"]
    write_whole(output, resolve_name("generator.rendering.joined:joined")(papers, both_sides=both_sides))
    pages = sum(paper.copies * paper.pages for paper in papers)
    leaves = sum(paper.paper(both_sides=both_sides) for paper in papers)
    sides = "on both sides" if both_sides else "on one side"
    click.echo(
        f"Wrote {output}: the pack of {sheet.title}, on {wanted}; {pages} pages, "
        f"{leaves} {'sheet' if leaves == 1 else 'sheets'} of paper printed {sides}. "
        "It names your students: keep it to yourself."
    )


def _pages(folder: Path, sheet: ClassSheet, kit: Kit) -> int | None:
    """How many pages the handout of a kit has, as it was published last."""
    file = handout_file(sheet.project, kit.size, kit.edition, sheet.paper)
    number: int | None = resolve_name("generator.rendering.joined:pages_of")(folder / "site" / "public" / file)
    return number


def _opened(folder: Path, file: str) -> tuple[ClassSheet, Project, RoomContext]:
    """Return the class of a name, checked against its project and worked out, its project, and its room."""
    path = _class_file(folder, file)
    room = the_room(folder)
    project_name = load_class(path, root=folder).project
    try:
        project_file = project_files(folder, (project_name,))[0]
    except TuckwrightError as fault:
        raise TuckwrightError(f"{path.name}: {fault}") from fault
    project = load_project(project_file, room, folder)
    shared = load_room_context(room, folder)
    return class_sheet(load_class(path, project, folder), project, shared), project, shared


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
