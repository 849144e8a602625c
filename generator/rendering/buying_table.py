"""The buying table: worksheets of all projects in one edition come in, a PDF for the counter of the shop goes out.

Each project has a block with a column for each size: cloths with their width and length, notions, thread, the cut sizes
of the other pieces; above them is a line to write how many are wanted.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import count, islice

from markupsafe import Markup, escape

from generator.calculation.worked_project import ClothUse, Worksheet
from generator.calculation.worksheet.class_shopping import kit_supplies
from generator.lengths import Edition, say_length
from generator.rendering.one_page import columns_across, edition_values, sheet_html, sheet_paper
from generator.rendering.pdf import write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.tables import cut_list, in_order
from generator.rendering.typeset import as_sentence, typeset

_NUMBER = re.compile(r"\d+(?:\.\d+)?(?:/\d+)?(?: \d+/\d+)?", re.ASCII)
_LEFT_OPEN = "…"
_LETTERS_A_SIZE = 12


@dataclass(frozen=True, slots=True)
class BuyingRow:
    """One thing to buy or to cut, with what each size needs of it; empty where a size needs none."""

    label: Markup
    cells: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class BuyingBlock:
    """One project in as many sizes as stand side by side."""

    title: str
    sizes: tuple[str, ...]
    buy: tuple[BuyingRow, ...]
    cut: tuple[BuyingRow, ...]


def render_buying_table(projects: Mapping[str, Sequence[Worksheet]], setting: Setting, paper: str) -> bytes:
    """Return the buying table of all projects: pages to be printed on both sides, the last one perhaps for notes."""
    every = sorted(projects.values(), key=lambda sizes: sizes[0].title.casefold())
    most = max(2, columns_across(setting, paper, _LETTERS_A_SIZE) - 2)
    blocks = [block for sizes in every for block in _blocks(sizes, most)]
    values = {**edition_values([worksheet for sizes in every for worksheet in sizes]), "blocks": blocks}

    def even(document: Document) -> bool:
        return len(document.pages) % 2 == 0

    versions = (sheet_html("buying_table", setting, {**values, "notes_page": notes}) for notes in (False, True))
    return write_fitting_pdf(versions, even, sheet_paper(setting, paper))


def _blocks(worksheets: Sequence[Worksheet], most: int) -> Iterator[BuyingBlock]:
    sizes = iter(worksheets)
    for number in count():
        some = list(islice(sizes, most))
        if not some:
            return
        title = worksheets[0].title if not number else f"{worksheets[0].title}, further sizes"
        yield BuyingBlock(
            title,
            tuple(one.size_label for one in some),
            (*_cloths(some), *_notions(some), *_thread(some)),
            _pieces(some),
        )


def _cloths(worksheets: Sequence[Worksheet]) -> list[BuyingRow]:
    needed = [[(_cloth_words(use, one.edition), use.buy_text) for use in one.cloths.values()] for one in worksheets]
    return _rows(needed)


def _cloth_words(use: ClothUse, edition: Edition) -> str:
    label = f", {use.label}" if use.label not in ("", use.name) else ""
    return f"{as_sentence(use.name)}{label}, {say_length(use.width, edition)} wide"


def _notions(worksheets: Sequence[Worksheet]) -> list[BuyingRow]:
    """The notions; one whose numbers alone differ from size to size is one row with these numbers in the cells."""
    needed = [[(as_sentence(line.item), line.amount) for line in kit_supplies(one, ())] for one in worksheets]
    texts: dict[str, set[tuple[str, ...]]] = {}
    for item, _ in (pair for pairs in needed for pair in pairs):
        texts.setdefault(_NUMBER.sub(_LEFT_OPEN, item), set()).add(tuple(_NUMBER.findall(item)))
    return _rows([[told_apart(item, amount, texts) for item, amount in pairs] for pairs in needed])


def told_apart(item: str, amount: str, texts: Mapping[str, set[tuple[str, ...]]]) -> tuple[str, str]:
    """Return the common words of a thing and what one size needs of it.

    ``texts`` has, for each text with its numbers left open, the numbers of all sizes.

    Examples
    --------
    >>> told_apart("Pad, 17 in each way", "1", {"Pad, … in each way": {("13 1/2",), ("17",)}})
    ('Pad, … in each way', '1 of 17')
    >>> told_apart("Cord 1/4 in thick", "120 in", {"Cord … in thick": {("1/4",)}})
    ('Cord 1/4 in thick', '120 in')
    """
    left_open = _NUMBER.sub(_LEFT_OPEN, item)
    every = texts[left_open]
    if len(every) < 2:
        return item, amount
    differing = [len(set(column)) > 1 for column in zip(*every, strict=True)]
    numbers = _NUMBER.findall(item)
    own = [number for number, differs in zip(numbers, differing, strict=True) if differs]
    shown = iter(_LEFT_OPEN if differs else number for number, differs in zip(numbers, differing, strict=True))
    return _NUMBER.sub(lambda _: next(shown), item), f"{amount} of {' and '.join(own)}"


def _thread(worksheets: Sequence[Worksheet]) -> list[BuyingRow]:
    """The spools, in the colours that the project tells."""
    return _rows(
        [
            [(f"Spools of thread{words}", f"{spools} ({length})") for words, length, spools in one.thread.lines]
            for one in worksheets
        ]
    )


def _pieces(worksheets: Sequence[Worksheet]) -> tuple[BuyingRow, ...]:
    """The cut sizes of all pieces but the tucked panels, which the wall card has."""
    needed = []
    for one in worksheets:
        panels = {piece.label for piece in one.pieces.values() if piece.panel is not None}
        lines = [line for use in one.cloths.values() for line in cut_list(use, one.edition)]
        needed.append(
            [(line.label, f"{line.number} of {line.size.striptags()}") for line in lines if line.label not in panels]
        )
    return tuple(_rows(needed))


def _rows(needed: Sequence[Sequence[tuple[str, str]]]) -> list[BuyingRow]:
    """Rows of equal words, in the order in which they are first met; a size that needs two of a kind has both."""
    labels = in_order(label for pairs in needed for label, _ in pairs)
    return [
        BuyingRow(
            typeset(as_sentence(label)),
            tuple(
                Markup("; ").join(typeset(told) for own, told in pairs if own == label) or escape("–")
                for pairs in needed
            ),
        )
        for label in labels
    ]
