"""``tuckwright steps``: a project comes in, its usual steps are printed, or those that its file lacks."""

from __future__ import annotations

import click

from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.recipes import usual_lines
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.commands.working import edition_of, opened
from generator.errors import FaultyFileError


@click.command(name="steps", help="Print the usual steps of a project, to be pasted into its file.")
@click.argument("project")
@click.option("--missing", is_flag=True, help="Print only what the steps of the file lack.")
def command(project: str, *, missing: bool) -> None:
    """Print the steps of the size that has most of them; what another size does not need, it leaves out by itself."""
    definition, shared, _folder = opened(project)
    recipes = []
    for size in definition.sizes:
        scope = Scope(definition, size, edition_of(definition, None, shared.room), shared.room, worked_piece)
        try:
            recipes.append(usual_lines(scope, shared.techniques, missing=missing))
        except AlreadyReportedError:
            raise FaultyFileError(scope.findings) from None
    longest = max(recipes, key=lambda lines: sum(len(line.uses) for line in lines))
    if not longest:
        click.echo("Nothing is missing.")
        return
    click.echo("\n".join(["steps:", *(text for line in longest for text in line.written())]))
