"""``tuckwright figures``: a project and a size come in, its numbers are printed, for people or for programs."""

from __future__ import annotations

import csv
import io
import json
from collections.abc import Iterator
from typing import Any, TypedDict, Unpack

import click

from generator.calculation.worksheet.figures import figures
from generator.commands.figures_text import figures_text
from generator.commands.working import (
    edition_of,
    measures,
    opened,
    own_size_option,
    with_own_cloth,
    with_own_size,
    worked,
)

EDITION = click.Choice(["inch", "metric"])


class FiguresOptions(TypedDict):
    """What may be said about the figures, each as it was typed."""

    own: tuple[str, ...]
    edition: str | None
    sewn: tuple[str, ...]
    cloth: tuple[str, ...]


@click.command(name="figures", help="Print the numbers of one project in one size, also in one that is not listed.")
@click.argument("project")
@click.argument("size", required=False)
@own_size_option
@click.option("--edition", type=EDITION, help="inch or metric; the project's first edition without it.")
@click.option("--json", "as_json", is_flag=True, help="Print JSON; its keys stay the same from version to version.")
@click.option("--csv", "as_csv", is_flag=True, help="Print a table for a spreadsheet: what, which, value, unit.")
@click.option(
    "--sewn", multiple=True, metavar="PANEL.across=LENGTH", help="Work on from a panel as sewn; may be repeated."
)
@click.option("--cloth", multiple=True, metavar="CLOTH.width=LENGTH", help="Lay out on cloth at hand, or .length=.")
def command(project: str, size: str | None, *, as_json: bool, as_csv: bool, **how: Unpack[FiguresOptions]) -> None:
    """Print the figures in one of three forms."""
    if as_json and as_csv:
        raise click.UsageError("--json and --csv exclude each other; choose one")
    definition, shared, _folder = opened(project)
    wanted = edition_of(definition, how["edition"], shared.room)
    definition, size = with_own_size(with_own_cloth(definition, how["cloth"], wanted), size, how["own"], wanted)
    worksheet = worked(definition, size, wanted, shared, measures(how["sewn"], wanted, "--sewn"))
    if as_json:
        click.echo(json.dumps(figures(worksheet), indent=2, ensure_ascii=False))
    elif as_csv:
        click.echo(_csv(figures(worksheet)), nl=False)
    else:
        click.echo(figures_text(worksheet))


def _csv(found: dict[str, Any]) -> str:
    """One line a number: its path in the figures and its value."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\n")
    writer.writerow(["project", "size", "edition", "unit", "figure", "value"])
    head = [found["project"], found["size"], found["edition"], found["unit"]]
    for name, value in _leaves({key: found[key] for key in list(found)[4:]}, ""):
        writer.writerow([*head, name, value])
    return out.getvalue()


def _leaves(value: Any, name: str) -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        for key, inner in value.items():
            yield from _leaves(inner, f"{name}: {key}" if name else str(key))
    elif isinstance(value, list):
        for number, inner in enumerate(value, 1):
            yield from _leaves(inner, f"{name} {number}")
    else:
        yield name, str(value)
