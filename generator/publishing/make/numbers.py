"""First the numbers: a project's file comes in, its worksheets in every size and edition go out, or all its faults."""

from __future__ import annotations

import pickle
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from enum import Enum
from fractions import Fraction
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.definitions.project import Project, load_project
from generator.errors import FaultyFileError, Finding, Place
from generator.publishing.checking import worked_between, worked_sizes
from generator.publishing.editions import against_editions, editions_of_sheets, unkept
from generator.publishing.jobs import Stamp, WorkedProject, WorkedSize
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output, key_of
from generator.rendering.between import deciding
from generator.rendering.cards import SheetEditions
from generator.rendering.setting import SizeLink, size_link


def work_project(room: OpenRoom, output: Output, path: Path, mark: str = "", day: str = "") -> WorkedProject:
    """Return the worksheets of a project, packed; with a mark, its numbers are to be kept under it.

    Raises
    ------
    FaultyFileError
        With all that is wrong in any size.
    """
    with output.timed("numbers"):
        project = load_project(path, room.shared.room, room.folder)
        worksheets = _worked(project, room)
        made = worked_between(project, room.shared, room.folder, room.theme)
    links = tuple(map(_named, worksheets))
    with output.timed("numbers"):
        about = tuple((change.day.isoformat(), change.text.text) for change in project.changes)
        against, kept = against_editions(room.folder, worksheets, mark, day, about)
        editions = editions_of_sheets(room.folder, worksheets, kept)
    sizes = (
        _packed(worksheet, links, against.stamp, editions[worksheet.size, worksheet.edition.name], leads=not number)
        for number, worksheet in enumerate(worksheets)
    )
    between = _between(worksheets, made.worksheets, against.stamp)
    return WorkedProject(tuple(sizes), against, kept, between, made.left_out)


def _between(named: Sequence[Worksheet], made: Sequence[Worksheet], stamp: Stamp) -> tuple[WorkedSize, ...]:
    """Sizes between the named ones, packed; each leads to the named ones before and after it, which have pictures."""
    stamp = replace(stamp, standing="between")
    return tuple(
        _packed(worksheet, _beside(worksheet, named), stamp, unkept(worksheet), leads=False) for worksheet in made
    )


def _beside(worksheet: Worksheet, named: Sequence[Worksheet]) -> tuple[SizeLink, ...]:
    """The named sizes of the same edition next to one between them, the smaller first."""
    ordered = sorted((one for one in named if one.edition == worksheet.edition), key=deciding)
    before = [one for one in ordered if deciding(one) <= deciding(worksheet)][-1:]
    after = [one for one in ordered if deciding(one) > deciding(worksheet)][:1]
    return tuple(_named(one) for one in (*before, *after))


def _named(worksheet: Worksheet) -> SizeLink:
    """A link to a size; what it comes to is its page's to tell, and changes without the others."""
    return replace(size_link(worksheet), finished="", minutes=0)


def _worked(project: Project, room: OpenRoom) -> list[Worksheet]:
    worksheets, faults = [], list[Finding]()
    for worksheet, findings in worked_sizes(project, room.shared, room.folder, room.theme):
        if worksheet is None:
            faults += findings
        else:
            worksheets.append(worksheet)
    if faults:
        raise FaultyFileError(dict.fromkeys(faults))
    return worksheets


def _packed(
    worksheet: Worksheet, links: tuple[SizeLink, ...], stamp: Stamp, editions: SheetEditions, *, leads: bool
) -> WorkedSize:
    """Return a worksheet for the way to whoever draws it; pictures of the first one stand for the whole project."""
    named = (f"{link.label} {link.page}" for link in links)
    given = "".join(_written(editions))
    key, wordless = keys_of_worksheet(worksheet, *named, stamp.mark, stamp.standing, given)
    packed = (pickle.dumps(worksheet), pickle.dumps(links))
    return WorkedSize(
        worksheet.size,
        worksheet.edition.name,
        key,
        key_of_pictures(worksheet) if leads else "",
        *packed,
        stamp,
        editions,
        wordless,
    )


def key_of_pictures(worksheet: Worksheet) -> str:
    """Return the key of all that pictures of the finished thing show or tell; texts and steps are not part of it."""
    cloths = {name: cloth.colour for name, cloth in worksheet.cloths.items()}
    shown = (worksheet.kind, worksheet.edition, worksheet.pieces, worksheet.laid_out, worksheet.attached, cloths)
    return key_of("".join(_written((*shown, worksheet.closures, worksheet.size_label))))


def keys_of_worksheet(worksheet: Worksheet, *more: str) -> tuple[str, str]:
    """Return the key of every value in a worksheet, with whatever else its page says, and that without texts of steps.

    Two worksheets have the same first key exactly when they would give the same page and the same sheets. Where a
    finding or a piece stands in its file is left out: a remark added above it changes no sheet.
    """
    wordless = key_of("".join(_written(worksheet.wordless)))
    texts = (text for step in worksheet.steps for text in (step.text, step.printed))
    return key_of(wordless, *texts, *more), wordless


def _written(value: object) -> Iterator[str]:
    """Every value in a form that is the same in every run; what has no such form is refused."""
    if isinstance(value, Place):
        return
    if value is None or isinstance(value, str | int):
        yield f"{value!r} "
    elif isinstance(value, Fraction):
        yield f"{value} "
    elif isinstance(value, Enum):
        yield f"{value.value!r} "
    elif isinstance(value, tuple | frozenset):
        parts = ["".join(_written(inner)) for inner in value]
        yield f"({''.join(parts if isinstance(value, tuple) else sorted(parts))})"
    elif isinstance(value, Mapping):
        yield "{"
        for key, inner in value.items():
            yield from _written(key)
            yield from _written(inner)
        yield "}"
    elif is_dataclass(value):
        yield f"{type(value).__name__}("
        for field in fields(value):
            yield from _written(getattr(value, field.name))
        yield ")"
    else:
        raise TypeError(f"a worksheet cannot hold a {type(value).__name__}")
