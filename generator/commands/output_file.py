"""A PDF that a command writes where it was told: a path and bytes come in, a whole file or a plain refusal goes out."""

from __future__ import annotations

from collections.abc import Sequence
from pathlib import Path

import click

from generator.errors import PublishError
from generator.publishing.write import not_written, put_whole

_PDF = b"%PDF-"
_LONGEST = 120


def chosen_paper(papers: Sequence[str], wanted: str | None) -> str:
    """Return the paper asked for, in capitals or not, the first of the papers where none is."""
    if wanted is None:
        return papers[0]
    known = {paper.lower(): paper for paper in papers}
    if wanted.lower() not in known:
        raise click.BadParameter(
            f"'{wanted}' is no paper of the room; it has: {', '.join(papers)}", param_hint="--paper"
        )
    return known[wanted.lower()]


def refuse_to_overwrite(output: Path) -> None:
    """Refuse a place where something stands that is not a PDF, or where nothing can be written."""
    try:
        _refuse(output)
    except OSError as fault:
        raise PublishError(f"{_shown(output)} {not_written(fault)}") from fault


def _refuse(output: Path) -> None:
    if not output.parent.is_dir():
        raise PublishError(f"there is no folder {output.parent}; make it, or name another")
    if not output.exists():
        return
    if not output.is_file():
        raise PublishError(f"{output} is no file that can be written; name a file such as {output.name or 'sheet'}.pdf")
    with output.open("rb") as file:
        if file.read(len(_PDF)) not in (_PDF, b""):
            raise PublishError(f"{output} is there already and is no PDF; it stays as it is, so name another file")


def write_whole(output: Path, sheet: bytes) -> None:
    """Write the whole sheet beside its place and put it there in one step."""
    try:
        put_whole(output, sheet)
    except OSError as fault:
        raise PublishError(f"{_shown(output)} {not_written(fault)}") from fault


def _shown(output: Path) -> str:
    """A path as far as a person needs it to know which is meant."""
    return str(output) if len(str(output)) <= _LONGEST else f"{str(output)[:_LONGEST]}..."
