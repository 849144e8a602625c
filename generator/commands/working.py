"""One worksheet for the command line: words come in, the worksheet of a project, size and edition goes out."""

from __future__ import annotations

import difflib
from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import click

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, load_room_context, worked_sheet
from generator.commands.room_folder import project_files, room_folder
from generator.definitions.own_size import own_size
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.project import Project, load_project
from generator.definitions.reading import constant
from generator.definitions.room import Room, load_room
from generator.errors import FaultyFileError, LengthError, TuckwrightError
from generator.lengths import INCH, METRIC, Edition, read_length, write_length


def opened(project: str) -> tuple[Project, RoomContext, Path]:
    """Return a project by its name, with what all projects of the room share, and the room's folder."""
    folder = room_folder()
    room = the_room(folder)
    return load_project(project_files(folder, (project,))[0], room, folder), load_room_context(room, folder), folder


def the_room(folder: Path) -> Room:
    """Return the settings of the room; a room without site.yaml has the defaults."""
    return load_room(folder / "site" / "site.yaml", root=folder)


def room_here() -> Room:
    """Return the settings of the room around this folder; the defaults where there is none."""
    try:
        folder = room_folder()
    except FaultyFileError:
        raise
    except TuckwrightError:
        return Room()
    return the_room(folder)


def edition_of(project: Project, name: str | None, room: Room) -> Edition:
    """Return the edition asked for, or the project's first; one that the project does not have is refused."""
    wanted = name or project.editions[0]
    if wanted not in project.editions:
        raise click.BadParameter(
            f"'{project.name}' has no {wanted} edition; it has: {', '.join(project.editions)}", param_hint="--edition"
        )
    return room.edition(wanted)


def size_of(project: Project, size: str) -> str:
    """Return a size that the project has; any other is refused with the nearest."""
    if size in project.sizes:
        return size
    near = difflib.get_close_matches(size, project.sizes, n=1)
    hint = f"did you mean '{near[0]}'?" if near else f"it has: {', '.join(project.sizes)}"
    raise click.BadParameter(f"'{project.name}' has no size '{size}'; {hint}", param_hint="SIZE")


def measures(pairs: tuple[str, ...], edition: Edition, option: str) -> dict[str, Fraction]:
    """Return the lengths of 'name=length' pairs; a bare number is in the edition's unit."""
    found = {}
    for name, text in split(pairs, option).items():
        try:
            found[name] = read_length(text, edition.unit)
        except LengthError as fault:
            raise click.BadParameter(str(fault), param_hint=option) from fault
    return found


def split(pairs: tuple[str, ...], option: str) -> dict[str, str]:
    """Return 'name=value' pairs as a mapping; a pair without its sign is refused."""
    found = {}
    for pair in pairs:
        name, sign, value = pair.partition("=")
        if not sign or not name.strip() or not value.strip():
            raise click.BadParameter(f"'{pair}': write name=value, for example width=17", param_hint=option)
        if name.strip() in found:
            raise click.BadParameter(f"'{name.strip()}' is given twice; give it once", param_hint=option)
        found[name.strip()] = value.strip()
    return found


def with_own_cloth(project: Project, pairs: tuple[str, ...], edition: Edition) -> Project:
    """Return the project laid out on cloth at hand: 'face.width=42' and 'face.length=60' for the cloth 'face'."""
    cloths = dict(project.cloths)
    for name, text in split(pairs, "--cloth").items():
        cloth, _, side = name.partition(".")
        if cloth not in cloths or side not in ("width", "length"):
            known = ", ".join(f"{known}.width, {known}.length" for known in project.cloths)
            raise click.BadParameter(f"'{name}' is no measure of a cloth; there are: {known}", param_hint="--cloth")
        length = measures((f"{name}={text}",), edition, "--cloth")[name]
        both = constant(" or ".join(write_length(length, ruler, unit=True) for ruler in (INCH, METRIC)))
        told = cloths[cloth]
        cloths[cloth] = replace(told, width=both) if side == "width" else replace(told, length=both)
    return replace(project, cloths=cloths)


own_size_option = click.option(
    "--with", "own", multiple=True, metavar="NAME=VALUE", help="A size of one's own, such as --with side=17."
)


def with_own_size(project: Project, size: str | None, own: tuple[str, ...], edition: Edition) -> tuple[Project, str]:
    """Return the project and the name of the size wanted; a size of one's own is added to the project."""
    if bool(size) == bool(own):
        listed = ", ".join(project.sizes)
        raise click.UsageError(f"name one size ({listed}), or give a size of your own: --with NAME=VALUE")
    if size:
        return project, size
    wanted = own_size(project.sizes, split(own, "--with"), edition)
    return project.with_sizes([wanted]), wanted.label


def worked(
    project: Project, size: str, edition: Edition, shared: RoomContext, sewn: Mapping[str, Fraction] | None = None
) -> Worksheet:
    """Return the worksheet of a size that the project has; a measure as sewn must be one of a panel."""
    known = {
        f"{name}.{side}"
        for name, piece in project.pieces.items()
        if isinstance(piece, TuckedPanel)
        for side in ("across", "along")
    }
    for name in sewn or {}:
        if name not in known:
            raise click.BadParameter(
                f"'{name}' is not sewn; there are: {', '.join(sorted(known))}", param_hint="--sewn"
            )
    return worked_sheet(project, size_of(project, size), edition, shared, sewn)
