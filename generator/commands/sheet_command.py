"""``tuckwright sheet``: a project and a size, listed or a student's own, come in; one handout is written as a PDF."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Any

import click

from generator.calculation.worksheet.sheet import Shelf
from generator.commands.figures_command import EDITION
from generator.commands.working import edition_of, measures, opened, split, with_own_cloth, worked
from generator.definitions.project import Project
from generator.errors import PublishError
from generator.lengths import Edition
from generator.publishing.inputs import theme_folder
from generator.publishing.later import later
from generator.publishing.surroundings import prepare_surroundings

_ONE_SHEET = "generator.publishing.one_sheet"
_PDF = b"%PDF-"


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
def command(project: str, size: str | None, output: Path, **options: Any) -> None:
    """Write the handout of one size."""
    _refuse_to_overwrite(output)
    definition, shelf, folder = opened(project)
    edition = edition_of(definition, options["edition"], shelf.room)
    definition = with_own_cloth(definition, options["cloth"], edition)
    definition, size = _sized(definition, size, options["own"], edition)
    worksheet = worked(definition, size, edition, shelf, measures(options["sewn"], edition, "--sewn"))
    paper = _paper(shelf, options["paper"])
    theme = theme_folder(folder, options["theme"] or shelf.room.theme)
    prepare_surroundings(folder)
    _write(output, later(_ONE_SHEET).one_handout(worksheet, shelf.room, theme, paper))
    click.echo(f"Wrote {output}: {definition.title}, {size}, {edition.name} edition, on {paper}")


def _sized(project: Project, size: str | None, own: tuple[str, ...], edition: Edition) -> tuple[Project, str]:
    """Return the project and the name of the size wanted; a size of one's own is added to the project."""
    if bool(size) == bool(own):
        listed = ", ".join(project.sizes)
        raise click.UsageError(f"name one size ({listed}), or give a size of your own: --with NAME=VALUE")
    if size:
        return project, size
    values = split(own, "--with")
    read = project.with_size("own size", values, edition).sizes["own size"].values
    name = ", ".join(f"{key} {value.text}" for key, value in read.items())
    return project.with_size(name, values, edition), name


def _paper(shelf: Shelf, wanted: str | None) -> str:
    papers = shelf.room.papers
    if wanted is None:
        return papers[0]
    known = {paper.lower(): paper for paper in papers}
    if wanted.lower() not in known:
        raise click.BadParameter(
            f"'{wanted}' is no paper of the room; it has: {', '.join(papers)}", param_hint="--paper"
        )
    return known[wanted.lower()]


def _refuse_to_overwrite(output: Path) -> None:
    """Refuse a place where something stands that is not a PDF, or where nothing can be written."""
    if not output.parent.is_dir():
        raise PublishError(f"there is no folder {output.parent}; make it, or name another")
    if not output.exists():
        return
    if not output.is_file():
        raise PublishError(f"{output} is no file that can be written; name a file such as {output.name or 'sheet'}.pdf")
    with output.open("rb") as file:
        if file.read(len(_PDF)) not in (_PDF, b""):
            raise PublishError(f"{output} is there already and is no PDF; it stays as it is, so name another file")


def _write(output: Path, sheet: bytes) -> None:
    """Write the whole sheet beside its place and put it there in one step."""
    part = output.with_name(f".{output.name}.{os.getpid()}")
    try:
        part.write_bytes(sheet)
        part.replace(output)
    except OSError as fault:
        raise PublishError(f"{output} could not be written: {fault.strerror}") from fault
    finally:
        part.unlink(missing_ok=True)
