"""What sheets were before: kept editions and the numbers of now come in, what is otherwise since each mark goes out."""

from __future__ import annotations

import json
from collections.abc import Sequence

from generator.calculation.worksheet.edition_numbers import Numbers, fingerprint
from generator.calculation.worksheet.editions import PublishedEdition, changed_numbers
from generator.rendering import addresses
from generator.rendering.cards import GivenEdition, SheetEditions, SheetTold


def sheet_editions(editions: Sequence[PublishedEdition], now: PublishedEdition) -> dict[tuple[str, str], SheetEditions]:
    """Return for each sheet of now in which editions it was given out before, and what is otherwise since.

    Parameters
    ----------
    editions : sequence of PublishedEdition
        Those that are kept of the project, in the order of publishing.
    now : PublishedEdition
        The numbers of now; its mark and day do not count.
    """
    found: dict[tuple[str, str], SheetEditions] = {}
    for name, numbers in now.sheets.items():
        given = tuple(_given(edition, name, numbers) for edition in reversed(editions) if name in edition.sheets)
        found[name] = SheetEditions(addresses.sheet_name(now.project, *name), fingerprint(numbers), given)
    return found


def _given(edition: PublishedEdition, name: tuple[str, str], numbers: Numbers) -> GivenEdition:
    then = edition.sheets[name]
    was, now = (PublishedEdition(edition.project, "", "", {name: sheet}) for sheet in (then, numbers))
    return GivenEdition(edition.mark, fingerprint(then), changed_numbers(was, now), was.with_words)


def newest_list(sheets: Sequence[SheetTold]) -> bytes:
    """Return the list of the newest sheets as JSON: by its name the mark of each one and its numbers' fingerprint."""
    told = {one.sheet: [one.mark, one.numbers] for one in sheets}
    return (json.dumps(told, sort_keys=True, ensure_ascii=False) + "\n").encode()
