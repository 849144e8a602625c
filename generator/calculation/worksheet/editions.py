"""What changed between published editions of a project: figures and words come in, what reads otherwise goes out.

Of every sheet its printed numbers are kept, each under a name that a person reads, and a fingerprint of each text, so
that the file in the repository stays small and shows in plain text what changed.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from typing import Any

from generator.calculation.worksheet.edition_numbers import LISTED, Numbers, printed_numbers
from generator.calculation.worksheet.edition_texts import WORDS, same_but_for_numbers
from generator.errors import CalculationError

SheetName = tuple[str, str]

_AS_PRINTED, _REWORDED = "as printed then", "reworded"
_LONGEST_MARK = 40


@dataclass(frozen=True, slots=True)
class PublishedEdition:
    """The numbers of all sheets of a project as they were published under an edition mark.

    ``day`` is when, as ``2031-03-14``. ``sheets`` maps size and edition to what was printed: numbers, what they are by
    piece and how they read, and fingerprints of texts; an edition of earlier versions has none of these. ``about`` is
    the fingerprint of what the project says of its corrections.
    """

    project: str
    mark: str
    day: str
    sheets: Mapping[SheetName, Numbers]
    about: str = ""

    @property
    def with_words(self) -> bool:
        """Whether its words were kept too."""
        return any(_has_words(numbers) for numbers in self.sheets.values())


@dataclass(frozen=True, slots=True)
class ChangedNumber:
    """One number or text that reads otherwise: where it stands, what it is, what it was and what it is now.

    ``piece`` is empty for what belongs to the whole sheet. A number that was not there, or is no longer, is empty. Of a
    text is only told that it reads otherwise.
    """

    project: str
    size: str
    edition: str
    piece: str
    what: str
    was: str
    now: str

    @property
    def of_words(self) -> bool:
        """Whether it is a text, and no number."""
        return f"{self.piece}: {self.what}".startswith(WORDS)


def checked_mark(mark: str) -> str:
    """Return an edition mark without spaces around it.

    Parameters
    ----------
    mark : str
        As a person wrote it.

    Raises
    ------
    CalculationError
        If it is empty, longer than 40 letters or more than one line, or would be taken for the word that sheets bear
        without a mark.

    Examples
    --------
    >>> checked_mark(" 2031-03 b ")
    '2031-03 b'
    """
    bare = mark.strip()
    if not bare:
        raise CalculationError("a published edition needs a mark; write for example '2031-03 b'")
    if len(bare) > _LONGEST_MARK or not bare.isprintable():
        raise CalculationError(
            f"an edition mark is one line of {_LONGEST_MARK} letters at most; write for example '2031-03 b'"
        )
    if bare.lower().startswith("draft"):
        raise CalculationError(
            f"'{bare}' cannot be an edition mark: sheets without one say draft; write for example '2031-03 b'"
        )
    return bare


def published_edition(
    project: str, mark: str, day: str, figures_of_sheets: Iterable[Mapping[str, Any]]
) -> PublishedEdition:
    """Return what is kept of the sheets of a project.

    Raises
    ------
    CalculationError
        If the mark is none or the day is no day.
    """
    mark = checked_mark(mark)
    if not re.fullmatch(r"\d{4}-(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])", day, re.ASCII):
        raise CalculationError(f"'{day}' is not a day; write year, month and day, for example 2031-03-14")
    sheets = {(sheet["size"], sheet["edition"]): printed_numbers(sheet) for sheet in figures_of_sheets}
    return PublishedEdition(project, mark, day, sheets)


def with_published(editions: Sequence[PublishedEdition], new: PublishedEdition) -> tuple[PublishedEdition, ...]:
    """Return all published editions with one more at the end; the numbers of the newest under its mark add nothing.

    Raises
    ------
    CalculationError
        If the mark was used before, for other numbers or for an edition that another has followed.
    """
    taken = next((edition for edition in editions if edition.mark == new.mark), None)
    if taken is None:
        return (*editions, new)
    again = "choose a new mark, so that a printed sheet can be told from this one"
    if taken.sheets != new.sheets:
        raise CalculationError(f"other sheets of '{new.project}' were published under the mark '{new.mark}'; {again}")
    if taken is not editions[-1]:
        raise CalculationError(
            f"'{new.project}' was published under '{editions[-1].mark}' since it bore the mark '{new.mark}'; {again}"
        )
    return tuple(editions)


def changed_numbers(older: PublishedEdition, newer: PublishedEdition) -> tuple[ChangedNumber, ...]:
    """Return every number and text of the older edition that reads otherwise in the newer one.

    Parameters
    ----------
    older, newer : PublishedEdition
        Two editions of one project.

    Returns
    -------
    tuple of ChangedNumber
        In the order of the older sheets. A sheet that is new has nothing to correct; one that is gone is told. Of an
        edition that kept no words it is not known what it said.

    References
    ----------
    Derived above.
    """
    changed: list[ChangedNumber] = []
    for (size, edition), was in older.sheets.items():
        now = newer.sheets.get((size, edition))
        if now is None:
            gone = ("", "this sheet", "published", "no longer published")
            changed.append(ChangedNumber(older.project, size, edition, *gone))
            continue
        for name in (*_changed(was, now, words=False), *(_changed(was, now, words=True) if _has_words(was) else ())):
            piece, _, what = name.partition(": ")
            told = _reworded if name.startswith(WORDS) else _narrowed
            read = told(what, was.get(name, ""), now.get(name, ""))
            changed.append(ChangedNumber(older.project, size, edition, piece, *read))
    return tuple(changed)


def alike_together(changes: Sequence[ChangedNumber]) -> tuple[ChangedNumber, ...]:
    """Return the changes of one sheet with the texts that changed alike told as one, after the numbers."""
    alike: dict[tuple[str, str], list[ChangedNumber]] = {}
    for change in changes:
        if change.of_words:
            alike.setdefault((change.was, change.now), []).append(change)
    begun = WORDS.removeprefix(": ")
    texts = (
        replace(found[0], what=begun + "; ".join(one.what.removeprefix(begun) for one in found))
        for found in alike.values()
    )
    return (*(change for change in changes if not change.of_words), *texts)


def _has_words(numbers: Numbers) -> bool:
    return any(name.startswith(WORDS) for name in numbers)


def _changed(was: Numbers, now: Numbers, *, words: bool) -> list[str]:
    """The names of numbers, or of texts, that read otherwise.

    Where numbers of a sheet changed, a text that differs by its numbers alone tells nothing new.
    """
    names = [name for name in dict.fromkeys((*was, *now)) if name.startswith(WORDS) is words]
    changed = [name for name in names if was.get(name) != now.get(name)]
    if not words or not _changed(was, now, words=False):
        return changed
    return [name for name in changed if not same_but_for_numbers(was.get(name, ""), now.get(name, ""))]


def _reworded(what: str, was: str, now: str) -> tuple[str, str, str]:
    """Of a text not its fingerprints, but that it reads otherwise."""
    return what, _AS_PRINTED if was else "", _REWORDED if now else ""


def _narrowed(what: str, was: str, now: str) -> tuple[str, str, str]:
    """Of a list of numbers only those that changed, with their places in the list."""
    before, after = was.split(LISTED), now.split(LISTED)
    places = [place for place, pair in enumerate(zip(before, after, strict=False)) if pair[0] != pair[1]]
    if len(before) != len(after) or len(before) == 1 or len(places) == len(before):
        return what, was, now
    told = LISTED.join(str(place + 1) for place in places)
    old, new = (LISTED.join(numbers[place] for place in places) for numbers in (before, after))
    return f"{what} (number {told})", old, new
