"""Sizes side by side: the worksheets of one edition come in, the rows of a table go out, one column a size."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from generator.calculation.worked_project import Worksheet
from generator.rendering import addresses
from generator.rendering.setting import SizeLink, size_link
from generator.rendering.tables import in_order, piece_size
from generator.rendering.typeset import said, time_words, typeset


@dataclass(frozen=True, slots=True)
class SizeChoice:
    """One size to choose: where it lies, the measure that decides, how it is taken, and what cloth the size takes.

    ``source`` tells where body measures come from, and which size to take between two.
    """

    link: SizeLink
    measure: Markup
    called: str
    how: str
    cloths: tuple[str, ...]
    source: str = ""

    @property
    def machine(self) -> str:
        """The path of its page for the machine."""
        return addresses.machine_page(self.link.project, self.link.size, self.link.edition)


@dataclass(frozen=True, slots=True)
class Comparison:
    """A table of sizes: a link for each column, the choices in order, rows of numbers, and rows of what to buy."""

    sizes: tuple[SizeLink, ...]
    choices: tuple[SizeChoice, ...]
    rows: tuple[tuple[str, tuple[Markup, ...]], ...]
    supplies: tuple[tuple[str, tuple[Markup, ...]], ...]


def compared(worksheets: Sequence[Worksheet]) -> Comparison:
    """Return the sizes of one edition side by side."""
    return Comparison(
        tuple(size_link(worksheet) for worksheet in worksheets),
        tuple(map(_choice, worksheets)),
        (*_piece_rows(worksheets), *_tuck_rows(worksheets), ("Time, about", _times(worksheets))),
        (*_cloth_rows(worksheets), *_supply_rows(worksheets), ("Thread", _threads(worksheets))),
    )


def _choice(worksheet: Worksheet) -> SizeChoice:
    deciding = worksheet.deciding
    cloths = tuple(cloth.buy_text for cloth in worksheet.cloths.values())
    link = size_link(worksheet)
    if deciding is None:
        return SizeChoice(link, typeset(""), "", "", cloths, worksheet.size_source)
    measure = said(deciding.length, worksheet.edition)
    return SizeChoice(link, measure, deciding.name, deciding.how, cloths, worksheet.size_source)


def _piece_rows(worksheets: Sequence[Worksheet]) -> list[tuple[str, tuple[Markup, ...]]]:
    rows = []
    for name in in_order(name for worksheet in worksheets for name in worksheet.pieces):
        found = [(worksheet.pieces.get(name), worksheet.edition) for worksheet in worksheets]
        label = next(piece.label for piece, _ in found if piece is not None)
        for word, cut in (("finished", False), ("cut", True)):
            cells = tuple(
                Markup("") if piece is None else piece_size(piece, edition, cut=cut) for piece, edition in found
            )
            if any(cells):
                rows.append((f"{label}, {word}", cells))
    return rows


def _tuck_rows(worksheets: Sequence[Worksheet]) -> list[tuple[str, tuple[Markup, ...]]]:
    rows = []
    for name in in_order(name for worksheet in worksheets for name in worksheet.panels):
        panels = [worksheet.panels.get(name) for worksheet in worksheets]
        label = next(worksheet.pieces[name].label for worksheet in worksheets if name in worksheet.pieces)
        counts = tuple(escape("" if panel is None else panel.across.count) for panel in panels)
        rows.append((f"{label}, tucks", counts))
        if any(panel is not None and panel.rows is not None for panel in panels):
            rows.append((f"{label}, rows", tuple(escape(len(p.rows.rows) if p and p.rows else "") for p in panels)))
    return rows


def _cloth_rows(worksheets: Sequence[Worksheet]) -> list[tuple[str, tuple[Markup, ...]]]:
    rows = []
    for name in in_order(name for worksheet in worksheets for name in worksheet.cloths):
        cloths = [worksheet.cloths.get(name) for worksheet in worksheets]
        label = next(cloth.label for cloth in cloths if cloth is not None)
        rows.append((label, tuple(typeset("" if cloth is None else cloth.buy_text) for cloth in cloths)))
    return rows


def _supply_rows(worksheets: Sequence[Worksheet]) -> list[tuple[str, tuple[Markup, ...]]]:
    amounts = [{line.item: line.amount for line in worksheet.notions} for worksheet in worksheets]
    items = in_order(item for listed in amounts for item in listed)
    return [(item, tuple(typeset(listed.get(item, "")) for listed in amounts)) for item in items]


def _times(worksheets: Sequence[Worksheet]) -> tuple[Markup, ...]:
    return tuple(escape(time_words(worksheet.minutes)) for worksheet in worksheets)


def _threads(worksheets: Sequence[Worksheet]) -> tuple[Markup, ...]:
    return tuple(typeset(worksheet.thread.length_text) for worksheet in worksheets)
