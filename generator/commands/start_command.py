"""``tuckwright start NAME``: a name comes in, a new commented project file is written; nothing is ever overwritten."""

from __future__ import annotations

import re
from pathlib import Path

import click

from generator.definitions.starter import starter_text
from generator.errors import TuckwrightError
from generator.publishing.room_files import refuse_links_out
from generator.publishing.write import not_written, put_new

_NAME = re.compile(r"[a-z0-9]+(-[a-z0-9]+)*")
_ROOM = """\
# The room: what is the same for all projects. Only the name must be here.
room:
  name: My sewing room
"""
_NEXT = """\
Open {path} in a program for plain text and change it. Then:
  tuckwright check {name}          what does not fit, and where
  tuckwright figures {name} small  the numbers of one size
  tuckwright sheet {name} small -o {name}-small.pdf"""


@click.command(name="start", help="Write projects/NAME.yaml, a commented project file to change.")
@click.argument("name")
@click.option("--short", is_flag=True, help="Sixteen lines without remarks; the tool completes what they leave out.")
def command(name: str, short: bool) -> None:
    """Write the starter under a new name."""
    if not _NAME.fullmatch(name) or len(name) > 60:
        plain = re.sub(r"[^a-z0-9]+", "-", name.lower()).strip("-")[:60] or "my-panel"
        raise click.BadParameter(
            f"'{name}': a project's name is small letters, digits and hyphens, for example '{plain}'", param_hint="NAME"
        )
    folder = _folder()
    refuse_links_out(folder)
    path = folder / "projects" / f"{name}.yaml"
    title = name.replace("-", " ").capitalize()
    _write_new(path, starter_text(title, short=short))
    click.echo(f"Wrote {_from_here(path)}")
    room = folder / "site" / "site.yaml"
    if not room.exists():
        _write_new(room, _ROOM)
        click.echo(f"Wrote {_from_here(room)}")
    click.echo(_NEXT.format(name=name, path=_from_here(path)))


def _folder() -> Path:
    """The room above, or a new one here."""
    here = Path.cwd()
    return next((folder for folder in (here, *here.parents) if (folder / "projects").is_dir()), here)


def _from_here(path: Path) -> Path:
    """The way to a file from where the person stands."""
    return path.relative_to(Path.cwd()) if path.is_relative_to(Path.cwd()) else path


def _write_new(path: Path, text: str) -> None:
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        put_new(path, text.encode())
    except FileExistsError:
        raise TuckwrightError(f"{path} is there already and stays as it is; choose another name") from None
    except OSError as fault:
        raise TuckwrightError(f"{path} {not_written(fault)}") from fault
