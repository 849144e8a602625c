"""Kept editions: the files of a room and the numbers of now come in, how they stand to each other goes out.

What a run keeps under a mark is written by :func:`keep` when the site stands in its place.
"""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import replace
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.edition_files import nested, read_editions, write_editions
from generator.calculation.worksheet.edition_numbers import Numbers, printed_numbers
from generator.calculation.worksheet.edition_standing import standing
from generator.calculation.worksheet.edition_texts import kept_words, text_fingerprint
from generator.calculation.worksheet.editions import (
    PublishedEdition,
    SheetName,
    published_edition,
    with_published,
)
from generator.calculation.worksheet.figures import figures
from generator.errors import CalculationError, FaultyFileError, Finding, Place, PublishError
from generator.publishing.jobs import AgainstEditions, Stamp
from generator.publishing.room_files import edition_file
from generator.publishing.write import not_written, put_whole
from generator.rendering.cards import SheetEditions
from generator.rendering.given_editions import sheet_editions

Told = tuple[str, str]


def kept_editions(room: Path, project: str) -> tuple[PublishedEdition, ...]:
    """Return the editions of a project that its room keeps, the newest last.

    Raises
    ------
    FaultyFileError
        If the file cannot be read, with its place.
    """
    path = edition_file(room, project)
    if not path.exists():
        return ()
    shown = str(path.relative_to(room))
    try:
        return read_editions(path.read_text(encoding="utf-8"), project)
    except UnicodeDecodeError as fault:
        told = "the file is no text in UTF-8; take it from the repository again"
        raise FaultyFileError([Finding("error", told, Place(shown))]) from fault
    except CalculationError as fault:
        cause = fault.__cause__
        place = Place(shown, cause.lineno, cause.colno) if isinstance(cause, json.JSONDecodeError) else Place(shown)
        raise FaultyFileError([Finding("error", str(fault), place)]) from fault


def against_editions(
    room: Path, worksheets: Sequence[Worksheet], mark: str = "", day: str = "", about: Sequence[Told] = ()
) -> tuple[AgainstEditions, str]:
    """Return how all sheets of a project stand to its kept editions.

    With a mark the sheets of now are to be kept under it: the second value is then the new text of the file, empty
    where the newest edition has the same numbers and words and nothing new is said ``about`` corrections.

    Raises
    ------
    CalculationError
        If the mark was used before.
    """
    project = worksheets[0].project
    kept, text = kept_editions(room, project), ""
    printed = _printed(worksheets)
    now = PublishedEdition(project, "", "", printed, text_fingerprint(*map(" ".join, about)) if about else "")
    if mark and (standing(kept, now).draft or not kept[-1].with_words or kept[-1].about != now.about):
        dated = published_edition(project, mark, day, ())
        kept = with_published(kept, replace(dated, sheets=now.sheets, about=now.about))
        text = write_editions(kept)
    found = standing(kept, now)
    stamp = Stamp(found.mark, "draft" if found.draft else "kept")
    draft = nested(printed) if found.draft and found.mark else {}
    return AgainstEditions(stamp, found.changed, found.added, draft, tuple(about)), text


def editions_of_sheets(
    room: Path, worksheets: Sequence[Worksheet], new_text: str = ""
) -> dict[tuple[str, str], SheetEditions]:
    """Return by size and edition under which marks each sheet was given out, and what is otherwise since.

    ``new_text`` is that of the file of kept editions which this run will write, empty where it stays as it is.
    """
    project = worksheets[0].project
    kept = read_editions(new_text, project) if new_text else kept_editions(room, project)
    return sheet_editions(kept, PublishedEdition(project, "", "", _printed(worksheets)))


def unkept(worksheet: Worksheet) -> SheetEditions:
    """Return the name of a sheet that no edition keeps, its numbers and their fingerprint."""
    (found,) = sheet_editions((), PublishedEdition(worksheet.project, "", "", _printed([worksheet]))).values()
    told = ((name.partition(": "), read) for name, read in printed_numbers(figures(worksheet)).items())
    return replace(found, printed=tuple((piece, what, read) for (piece, _, what), read in told))


def _printed(worksheets: Sequence[Worksheet]) -> dict[SheetName, Numbers]:
    """What the sheets of a project say in numbers and words, as it is kept."""
    return {
        (sheet.size, sheet.edition.name): {**printed_numbers(figures(sheet)), **kept_words(sheet)}
        for sheet in worksheets
    }


def keep(room: Path, texts: Mapping[str, str]) -> None:
    """Write the files of kept editions, each in one step.

    Raises
    ------
    PublishError
        If a file cannot be written.
    """
    for project, text in texts.items():
        path = edition_file(room, project)
        try:
            path.parent.mkdir(exist_ok=True)
            put_whole(path, text.encode())
        except OSError as fault:
            told = "The site is published, but its numbers are not kept; run the command again"
            raise PublishError(f"{path.relative_to(room)} {not_written(fault)}. {told}") from fault
