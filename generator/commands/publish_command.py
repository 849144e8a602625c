"""``tuckwright publish``: projects come in, the site stands in ``site/public``; says how far it is and what it did."""

from __future__ import annotations

import os
import sys
import time
from contextlib import nullcontext
from datetime import UTC, datetime
from pkgutil import resolve_name
from typing import Any

import click

from generator.calculation.worksheet.editions import checked_mark
from generator.commands.edition_words import edition_lines
from generator.commands.room_folder import project_files, room_folder
from generator.commands.told import told
from generator.errors import CalculationError, FaultyFileError, TuckwrightError, printable
from generator.publishing.jobs import Order, Published
from generator.publishing.manifest import is_size
from generator.publishing.publish import publish
from generator.publishing.room_files import passed_over
from generator.publishing.stale import reasons

_CTRL_C = 130
_DEAREST = 5


class ProgressLines:
    """Tells how far a run is by a line for each thing that is done: for a log."""

    def expect(self, number: int, what: str) -> None:
        """Nothing is told before there is something to tell."""

    def done(self, label: str) -> None:
        """Tell what is done."""
        click.echo(printable(f"  {label}"), err=True)


@click.command(name="publish", help="Build the whole site and every sheet into site/public; only what changed is made.")
@click.argument("projects", nargs=-1, metavar="[PROJECT ...]")
@click.option("--theme", default="", metavar="NAME", help="How it looks; the room's own theme without it.")
@click.option(
    "--mark", default="", metavar="MARK", help="Keep the numbers published now under an edition mark: 2031-03."
)
@click.option("--watch", is_flag=True, help="Go on: publish again whenever a file is saved, until Ctrl-C.")
@click.option("--why", nargs=2, metavar="PROJECT SIZE", help="Publish nothing; tell why this size would be made again.")
@click.option("--workers", type=click.IntRange(1), help="How many processes work; one a core without it.")
@click.option("--profile", is_flag=True, help="Tell at the end how long each kind of work took, and which functions.")
def command(
    projects: tuple[str, ...],
    theme: str,
    mark: str,
    workers: int | None,
    why: tuple[str, str] | None,
    *,
    watch: bool,
    profile: bool,
) -> None:
    """Publish the room, or some of its projects."""
    folder = room_folder()
    files = project_files(folder, projects)
    named = tuple(path.stem for path in files) if projects else ()
    checked = _mark(mark, other="--watch" if watch else "--why" if why else "")
    order = Order(folder, theme, named, workers or 0, checked, _today(), profile)
    try:
        if why:
            _tell_why(order, *why)
        elif watch:
            _go_on(order, profile=profile)
        elif not _published(order, profile=profile):
            sys.exit(1)
    except KeyboardInterrupt:
        click.echo("\nStopped. What was published before still stands.", err=True)
        sys.exit(_CTRL_C)


def _mark(written: str, *, other: str) -> str:
    """Return the edition mark to keep numbers under, empty for none."""
    if not written:
        return ""
    if other:
        raise click.UsageError(f"--mark keeps what is published once, so it does not go with {other}")
    try:
        return checked_mark(written)
    except CalculationError as fault:
        raise click.BadParameter(str(fault), param_hint="--mark") from fault


def _today() -> str:
    """Return the day of a new edition; like other tools that write dates, take the one that the environment sets."""
    try:
        return datetime.fromtimestamp(int(os.environ["SOURCE_DATE_EPOCH"]), UTC).date().isoformat()
    except (KeyError, ValueError, OverflowError, OSError):
        return datetime.now().astimezone().date().isoformat()


def _published(order: Order, *, profile: bool) -> bool:
    """Publish once and tell what was done, or what is wrong; return whether it was done."""
    start = time.perf_counter()
    try:
        with _report() as report:
            done = publish(order, report)
    except FaultyFileError as fault:
        for _, line in told(fault.findings):
            click.echo(line, err=True)
        click.echo("Nothing was published; what was published before still stands.", err=True)
        return False
    except TuckwrightError as fault:
        click.echo(str(fault), err=True)
        return False
    click.echo(_summary(order, done))
    for _, line in told(passed_over(order.folder)):
        click.echo(line, err=True)
    for line in edition_lines(order, done):
        click.echo(line)
    if profile:
        _tell_times(done, time.perf_counter() - start)
    return True


def _report() -> Any:
    """A bar on a terminal, lines in a log."""
    if not sys.stderr.isatty():
        return nullcontext(ProgressLines())
    return resolve_name("generator.commands.progress_bar:ProgressBar")()


def _summary(order: Order, done: Published) -> str:
    home = order.site / "index.html"
    if done.current:
        return f"Nothing has changed; the site stands as it was: {home}"
    made, kept = (sum(map(is_size, entries)) for entries in (done.made, done.kept))
    return f"{_counted(done.projects, 'project')} published, {_counted(made, 'sheet')} made, {kept} kept: {home}"


def _counted(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"


def _tell_times(done: Published, wall: float) -> None:
    """Tell how long each kind of work took over all workers, and how long a person waited."""
    for work, seconds in sorted(done.seconds.items(), key=lambda item: -item[1]):
        click.echo(f"{work:>12} {seconds:8.2f} s")
    click.echo(f"{'waited':>12} {wall:8.2f} s")
    dearest = sorted(done.functions.items(), key=lambda item: -item[1])[:_DEAREST]
    if dearest:
        click.echo("The functions that took most, of all workers together and without what they call:")
    for name, seconds in dearest:
        click.echo(f"{seconds:12.2f} s {name}")


def _tell_why(order: Order, project: str, size: str) -> None:
    for edition, reason in reasons(order, project, size).items():
        click.echo(f"{project}, size {size}, {edition}: {reason}")


def _go_on(order: Order, *, profile: bool) -> None:
    """Publish now and after every change; a fault is told and waits to be mended."""
    for _ in resolve_name("generator.publishing.watching:changes")(order.folder):
        _published(order, profile=profile)
        click.echo("Watching for changes; Ctrl-C ends it.", err=True)
