"""The command line: words typed come in, a command runs, an exit code goes out.

Exit code 0: done; 1: a fault in a file or in the work; 2: a wrong command line. A command's module is loaded only when
that command runs, so that the overview and the figures come at once.
"""

from __future__ import annotations

import difflib
import errno
import importlib
import os
import re
import sys
import traceback
from collections.abc import Sequence

import click

from generator.errors import TuckwrightError, printable

COMMANDS = {
    "publish": "Build the whole site and every sheet into site/public.",
    "view": "Show the room in a browser on this machine while you write.",
    "check": "Read and work every project in every size, and print every finding.",
    "steps": "Print the usual steps of a project, to be pasted into its file.",
    "figures": "Print the numbers of one project in one size.",
    "sheet": "Write one handout as a PDF, also in a size that the file does not list.",
    "explore": "List what fits: tuck plans a finished size or a cloth, sizes of a project the cloth that you have.",
    "sample": "Work out the true take-up from a sewn sample.",
    "class": "Work out what a class needs: cloth, kits, print run, timetable.",
    "start": "Write a new, commented project file.",
    "schema": "Print the JSON Schema of the project file, for editors.",
}
_LONGEST_SHOWN = 160
_REMEDIES = {
    errno.EACCES: "let yourself read and write it, or put a copy of your own there",
    errno.EPERM: "let yourself read and write it, or put a copy of your own there",
    errno.ENOSPC: "the disk is full, so make room and run the command again",
    errno.EROFS: "the disk is read-only, so work in another folder",
    errno.ENAMETOOLONG: "choose a shorter name",
    errno.ENOTDIR: "a file stands where a folder should be; move it away",
    errno.EISDIR: "a folder stands where a file should be; move it away",
}
OVERVIEW = """\
Instruction sheets for sewn tucks: one project file gives the site and a handout in every size.

\b
  A first time through
    tuckwright start my-cushion          write projects/my-cushion.yaml; open it and change it
    tuckwright check my-cushion          see whether it can be sewn, and what to mend
    tuckwright figures my-cushion small  read the numbers
    tuckwright publish                   build the site and the sheets into site/public
"""


class CommandTable(click.Group):
    """The commands, each loaded from its own module when it is called."""

    def list_commands(self, ctx: click.Context) -> list[str]:
        """Return the names in the order in which a project needs them."""
        return list(COMMANDS)

    def get_command(self, ctx: click.Context, cmd_name: str) -> click.Command | None:
        """Return the command of a name, or None."""
        if cmd_name not in COMMANDS:
            return None
        module = importlib.import_module(f"generator.commands.{cmd_name}_command")
        command: click.Command = module.command
        return command

    def resolve_command(
        self, ctx: click.Context, args: list[str]
    ) -> tuple[str | None, click.Command | None, list[str]]:
        """Find the command, or say which one may have been meant."""
        if args and not args[0].startswith("-") and args[0] not in COMMANDS:
            near = difflib.get_close_matches(args[0], COMMANDS, n=1)
            hint = f"; did you mean '{near[0]}'?" if near else f"; there are: {', '.join(COMMANDS)}"
            ctx.fail(f"there is no command '{args[0]}'{hint}")
        return super().resolve_command(ctx, args)

    def format_commands(self, ctx: click.Context, formatter: click.HelpFormatter) -> None:
        """List the commands without loading any of them."""
        with formatter.section("Commands"):
            formatter.write_dl(list(COMMANDS.items()))


@click.group(cls=CommandTable, help=OVERVIEW, invoke_without_command=True, context_settings={"max_content_width": 110})
@click.version_option(package_name="tuckwright", message="tuckwright %(version)s")
@click.pass_context
def overview(ctx: click.Context) -> None:
    """Print the overview where no command is named."""
    if ctx.invoked_subcommand is None:
        click.echo(ctx.get_help())


def _refuse_lengths_in_two_words(words: Sequence[str]) -> None:
    """Refuse a length such as 17 1/2 that the shell has made two words of."""
    for option, whole, part in zip(words, words[1:], words[2:], strict=False):
        if option.startswith("-") and re.fullmatch(r"\d+", whole) and re.fullmatch(r"\d+/\d+", part):
            both = f"{option} '{whole} {part}'"
            click.echo(f"Error: {whole} {part} came as two words; put them in quotation marks: {both}", err=True)
            sys.exit(2)


def _leave_output() -> None:
    """Write nothing more to the output: what waits for it would fail again at the end."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())


def _words(fault: OSError) -> str:
    """Return what the system refused, and what to do."""
    if fault.filename is None:
        return f"what is printed could not be written: {fault.strerror}; make room, or print it elsewhere"
    name = printable(os.fsdecode(fault.filename))
    shown = name if len(name) <= _LONGEST_SHOWN else f"{name[:_LONGEST_SHOWN]} ..."
    remedy = _REMEDIES.get(fault.errno or 0, "look whether it is there and yours")
    return f"{shown}: {fault.strerror}; {remedy}"


def main() -> None:
    """Run the command line; a person never sees a traceback unless TUCKWRIGHT_TRACE asks for one."""
    try:
        _refuse_lengths_in_two_words(sys.argv[1:])
        overview(prog_name="tuckwright")
    except TuckwrightError as fault:
        click.echo(printable(str(fault), lines=True), err=True)
        sys.exit(1)
    except BrokenPipeError:
        # The reader of our output (less, head) has gone: there is nobody left to tell.
        _leave_output()
        sys.exit(1)
    except OSError as fault:
        _leave_output()
        click.echo(_words(fault), err=True)
        sys.exit(1)
    except Exception as fault:
        if os.environ.get("TUCKWRIGHT_TRACE"):
            traceback.print_exc()
        click.echo(
            f"tuckwright has a fault of its own ({type(fault).__name__}: {fault}). Your files are untouched. "
            "Please report it with the output of the same command after TUCKWRIGHT_TRACE=1.",
            err=True,
        )
        sys.exit(1)
