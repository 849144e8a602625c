"""``tuckwright sheet``: a project and a size, listed or a student's own, come in; one handout is written as a PDF."""

from __future__ import annotations

from pathlib import Path
from pkgutil import resolve_name
from typing import TypedDict, Unpack

import click

from generator.commands.figures_command import EDITION
from generator.commands.output_file import chosen_paper, refuse_to_overwrite, write_whole
from generator.commands.working import edition_of, measures, opened, split, with_own_cloth, worked
from generator.definitions.own_size import own_size
from generator.definitions.project import Project
from generator.lengths import Edition
from generator.publishing.inputs import theme_folder


class SheetOptions(TypedDict):
    """What may be said about a sheet, each as it was typed."""

    own: tuple[str, ...]
    edition: str | None
    paper: str | None
    theme: str | None
    sewn: tuple[str, ...]
    cloth: tuple[str, ...]


@click.command(name="sheet", help="Write one handout as a PDF, also in a size that the file does not list.")
@click.argument("project")
@click.argument("size", required=False)
@click.option("--with", "own", multiple=True, metavar="NAME=VALUE", help="A size of one's own, such as --with side=17.")
@click.option("-o", "--output", type=click.Path(path_type=Path), required=True, metavar="FILE.pdf", help="The PDF.")
@click.option("--edition", type=EDITION, help="inch or metric; the project's first edition without it.")
@click.option("--paper", help="Letter or A4; the room's first paper without it.")
@click.option("--theme", metavar="NAME", help="How it looks, such as large-print; the room's theme without it.")
@click.option("--sewn", multiple=True, metavar="PANEL.across=LENGTH", help="Work on from a panel as sewn; repeatable.")
@click.option("--cloth", multiple=True, metavar="CLOTH.width=LENGTH", help="Lay out on cloth at hand, or .length=.")
def command(project: str, size: str | None, output: Path, **how: Unpack[SheetOptions]) -> None:
    """Write the handout of one size."""
    refuse_to_overwrite(output)
    listed, shared, folder = opened(project)
    edition = edition_of(listed, how["edition"], shared.room)
    definition = with_own_cloth(listed, how["cloth"], edition)
    definition, size = _sized(definition, size, how["own"], edition)
    worksheet = worked(definition, size, edition, shared, measures(how["sewn"], edition, "--sewn"))
    paper = chosen_paper(shared.room.papers, how["paper"])
    theme = theme_folder(folder, how["theme"] or shared.room.theme)
    one_sheet, own = (
        resolve_name("generator.publishing.single"),
        bool(how["own"] or how["cloth"] or how["sewn"]),
    )
    stamp = one_sheet.stamp_of_sheet(listed, shared, folder, own=own)
    write_whole(output, one_sheet.one_handout(worksheet, shared.room, theme, paper, stamp))
    click.echo(f"Wrote {output}: {definition.title}, {size}, {edition.name} edition, on {paper}")


def _sized(project: Project, size: str | None, own: tuple[str, ...], edition: Edition) -> tuple[Project, str]:
    """Return the project and the name of the size wanted; a size of one's own is added to the project."""
    if bool(size) == bool(own):
        listed = ", ".join(project.sizes)
        raise click.UsageError(f"name one size ({listed}), or give a size of your own: --with NAME=VALUE")
    if size:
        return project, size
    wanted = own_size(project.sizes, split(own, "--with"), edition)
    return project.with_sizes([wanted]), wanted.label
