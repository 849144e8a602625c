"""``tuckwright sheet``: a project and a size, listed or a student's own, come in; one sheet is written as a PDF."""

from __future__ import annotations

from pathlib import Path
from pkgutil import resolve_name
from typing import Unpack

import click

from generator.commands.figures_command import EDITION
from generator.commands.further_sheet import HANDOUT, WHOLE_ROOM, SheetOptions, further_sheet, read_kind
from generator.commands.output_file import chosen_paper, refuse_to_overwrite, write_whole
from generator.commands.working import (
    edition_of,
    measures,
    opened,
    own_size_option,
    with_own_cloth,
    with_own_size,
    worked,
)
from generator.definitions.vocabulary import SHEETS_OF_SIZE
from generator.publishing.inputs import theme_folder


@click.command(name="sheet", help="Write one sheet as a PDF, also in a size that the file does not list.")
@click.argument("project", required=False)
@click.argument("size", required=False)
@click.option("--kind", default=HANDOUT, callback=read_kind, help="Such as 'marking strip'; the handout without it.")
@own_size_option
@click.option("-o", "--output", type=click.Path(path_type=Path), required=True, metavar="FILE.pdf", help="The PDF.")
@click.option("--edition", type=EDITION, help="inch or metric; the project's first edition without it.")
@click.option("--paper", help="Letter or A4; the room's first paper without it.")
@click.option("--theme", metavar="NAME", help="How it looks, such as large-print; the room's theme without it.")
@click.option("--sewn", multiple=True, metavar="PANEL.across=LENGTH", help="Work on from a panel as sewn; repeatable.")
@click.option("--cloth", multiple=True, metavar="CLOTH.width=LENGTH", help="Lay out on cloth at hand, or .length=.")
def command(project: str | None, size: str | None, output: Path, **how: Unpack[SheetOptions]) -> None:
    """Write the handout of one size, or another kind of sheet."""
    refuse_to_overwrite(output)
    kind = how["kind"]
    if kind not in (HANDOUT, *SHEETS_OF_SIZE):
        if size:
            raise click.UsageError(f"the {kind} is not about one size; leave out '{size}'")
        told = further_sheet(project, output, how)
    elif project is None:
        raise click.UsageError(f"name a project and a size; without them there are sheets of {WHOLE_ROOM}")
    else:
        told = _sheet_of_size(project, size, output, how)
    click.echo(f"Wrote {output}: {told}")


def _sheet_of_size(project: str, size: str | None, output: Path, how: SheetOptions) -> str:
    """Write a sheet of one size, and return what it is."""
    listed, shared, folder = opened(project)
    edition = edition_of(listed, how["edition"], shared.room)
    definition = with_own_cloth(listed, how["cloth"], edition)
    definition, size = with_own_size(definition, size, how["own"], edition)
    worksheet = worked(definition, size, edition, shared, measures(how["sewn"], edition, "--sewn"))
    paper = chosen_paper(shared.room.papers, how["paper"])
    theme = theme_folder(folder, how["theme"] or shared.room.theme)
    single, own = resolve_name("generator.publishing.printing"), bool(how["own"] or how["cloth"] or how["sewn"])
    stamp = single.stamp_of_sheet(listed, shared, folder, own=own)
    write_whole(output, single.one_sheet(how["kind"], {listed.name: [worksheet]}, shared.room, theme, paper, stamp))
    kind = "" if how["kind"] == HANDOUT else f"{how['kind']}, "
    return f"{kind}{definition.title}, {size}, {edition.name} edition, on {paper}"
