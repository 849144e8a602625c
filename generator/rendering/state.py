"""How a sheet stands to the newest: a worksheet and its editions come in, what its pages tell of them goes out."""

from __future__ import annotations

import re

from markupsafe import Markup

from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked_project import Worksheet
from generator.rendering import addresses
from generator.rendering.cards import SheetEditions
from generator.rendering.sharing import as_data
from generator.rendering.typeset import typeset

_TURNS = re.compile(r"(from the (?:left|right): )((?:toward|away|upright)(?: (?:toward|away|upright))*)")


def state_words(worksheet: Worksheet, editions: SheetEditions | None) -> dict[str, object]:
    """Return what the templates of a sheet's pages need to tell how it stands to the newest.

    Without editions, nothing can be compared with it.
    """
    known = editions or SheetEditions(addresses.sheet_name(worksheet.project, worksheet.size, worksheet.edition.name))
    return {
        "editions": known,
        "newest": addresses.NEWEST,
        "corrections": f"{addresses.CORRECTIONS}#{addresses.corrections_anchor(worksheet.project)}",
        "told_number": read_number,
        "given_data": _by_numbers(known),
    }


def _by_numbers(editions: SheetEditions) -> Markup:
    """What is otherwise since each edition, by the fingerprint of its numbers, for a script.

    Where no edition is kept, the numbers themselves stand under an empty fingerprint.
    """
    printed = {"": [[piece, what, _plain(read)] for piece, what, read in editions.printed]} if editions.printed else {}
    return as_data(
        printed
        | {
            one.numbers: [
                one.mark,
                [[change.piece, change.what, _plain(change.was), _plain(change.now)] for change in one.changes],
            ]
            for one in editions.given
        }
    )


def read_number(read: str) -> Markup:
    """Return how a number reads; the turns of a row as a short sentence."""
    return typeset(_plain(read))


def _plain(read: str) -> str:
    turns = _TURNS.fullmatch(read)
    return f"{turns[1]}{spoken_row(turns[2].split())}" if turns else read
