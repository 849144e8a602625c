"""``tuckwright view``: a room comes in, and a browser on this machine shows it as it is written, until Ctrl-C."""

from __future__ import annotations

import signal
import sys
import time
from pathlib import Path
from tempfile import TemporaryDirectory
from threading import Thread

import click

from generator.commands.room_folder import project_files, room_folder
from generator.commands.told import told
from generator.errors import printable
from generator.publishing.watching import changes
from generator.rendering import addresses
from generator.viewing.room_now import RoomNow
from generator.viewing.server import View

_CTRL_C = 130
_A_MOMENT = 1.5


@click.command(
    name="view", help="Show the room in a browser on this machine while you write; every save shows at once."
)
@click.argument("project", required=False, metavar="[PROJECT]")
@click.option("--port", type=click.IntRange(0, 65535), default=0, help="The port; any that is free without it.")
@click.option("--theme", default="", metavar="NAME", help="How it looks; the room's own theme without it.")
def command(project: str | None, port: int, theme: str) -> None:
    """Serve the room until Ctrl-C."""
    for ended in (signal.SIGTERM, signal.SIGHUP):
        # Whoever ends it so leaves no more behind than Ctrl-C.
        signal.signal(ended, signal.default_int_handler)
    folder = room_folder()
    (first, *_) = project_files(folder, (project,) if project else ())
    with TemporaryDirectory(prefix="tuckwright-", ignore_cleanup_errors=True) as out:
        try:
            view = View(RoomNow(folder, theme, Path(out)), port)
        except OSError as fault:
            raise click.BadParameter(f"{port}: {fault.strerror}; take another, or none", param_hint="--port") from fault
        _serve(folder, view, addresses.project_page(first.stem) if project else "")


def _serve(folder: Path, view: View, page: str) -> None:
    Thread(target=view.serve_forever, daemon=True).start()
    try:
        click.echo(f"The room as it is written: {view.address}{page}")
        click.echo("Open it in a browser on this machine. Ctrl-C ends it.", err=True)
        _go_on(folder, view)
    except KeyboardInterrupt:
        click.echo("\nEnded; nothing was published.", err=True)
        sys.exit(_CTRL_C)
    finally:
        view.leave()


def _go_on(folder: Path, view: View) -> None:
    """Have pages read again whenever a file is saved, and tell what is wrong with the projects that were."""
    for paths in changes(folder):
        if not paths:
            continue
        view.saved()
        # The page that is looked at comes first: what is to be said needs every size worked.
        time.sleep(_A_MOMENT)
        for path in sorted(map(Path, paths)):
            if path.suffix == ".yaml" and path.parent.name == "projects" and path.is_file():
                _tell(path.stem, view)


def _tell(project: str, view: View) -> None:
    findings = view.now.findings(addresses.project_page(project))
    lines = [line for level, line in told(findings) if level != "note"]
    click.echo("\n".join(lines) if lines else f"{printable(project)}: nothing to mend", err=True)
