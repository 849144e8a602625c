"""``tuckwright schema``: the JSON Schema of the project file goes to the screen."""

from __future__ import annotations

import json

import click

from generator.definitions.schema import project_schema


@click.command(name="schema", help="Print the JSON Schema of the project file, for completion and checks in an editor.")
def command() -> None:
    """Print the schema."""
    click.echo(json.dumps(project_schema(), indent=2, ensure_ascii=False))
