"""The sheet for the wall: worksheets of all projects in one edition come in, a PDF of exactly one page goes out.

It never spills. Where room is short it is set smaller first; then it leaves out, in this order, the finished sizes, the
tuck table, the notions, the sizes between the smallest and the largest of each project, and projects from the end of
the alphabet. The page says what was left out.
"""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from markupsafe import Markup

from generator.calculation.panel.tucks import tuck_take_up
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.class_shopping import kit_supplies
from generator.lengths import Edition
from generator.rendering.one_page import columns_across, edition_values, sheet_html, sheet_paper
from generator.rendering.pdf import page_of, write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS
from generator.rendering.tables import piece_size
from generator.rendering.typeset import bare, said, typeset

LEFT_OUT_FIRST = ("finished sizes", "tuck table", "notions", "middle sizes")
_COUNTS = (1, 5, 6, 8, 10, 12, 14, 16, 18, 20, 24, 30)
_MOST_DEPTHS = 6
# The type of the wall [pt]: large letters are never set smaller, and in one column; others not below the smallest.
_LARGE, _SMALLEST = 12.0, 7.2
_TIGHTEST_LINE, _MARGINS = 1.15, 1.4
_FEW = 3
_NUMBER = re.compile(r"(\d+(?:\.\d+)?(?:/\d+)?(?: \d+/\d+)?)", re.ASCII)


@dataclass(frozen=True, slots=True)
class WallSize:
    """One size as the wall tells it; ``cut`` is that of the tucked panels."""

    label: str
    finished: Markup
    cut: Markup
    cloth: Markup


@dataclass(frozen=True, slots=True)
class WallProject:
    """One project as the wall tells it; ``notions`` tell all its sizes at once."""

    title: str
    notions: Markup
    sizes: tuple[WallSize, ...]

    @property
    def ends(self) -> tuple[WallSize, ...]:
        """The first and the last size."""
        return self.sizes if len(self.sizes) < 2 else (self.sizes[0], self.sizes[-1])


@dataclass(frozen=True, slots=True)
class TuckTable:
    """The cloth that rows of equal tucks hide: numbers of tucks across, a row for each depth used in the room."""

    counts: tuple[int, ...]
    rows: tuple[tuple[Markup, tuple[Markup, ...]], ...]


def render_room_sheet(projects: Mapping[str, Sequence[Worksheet]], setting: Setting, paper: str) -> bytes:
    """Return the sheet for the wall.

    Parameters
    ----------
    projects : Mapping of str to sequence of Worksheet
        The sizes of each project, all in one edition.
    setting : Setting
        The room, its theme and the edition mark.
    paper : str
        ``Letter`` or ``A4``.

    Returns
    -------
    bytes
        A tagged PDF of one page.

    Raises
    ------
    CalculationError
        If two editions come together.
    PublishError
        If a letter or a font is missing.
    """
    worksheets = [worksheet for sizes in projects.values() for worksheet in sizes]
    counts = columns_across(setting, paper, 8.6) - 1
    values = {
        **edition_values(worksheets),
        "every": sorted((_project(sizes) for sizes in projects.values()), key=lambda told: told.title.casefold()),
        "table": _tuck_table(worksheets, worksheets[0].edition, counts),
        "columns": _columns(setting, len(projects)),
    }
    set_so_far: list[Document] = []
    lines = _most_lines(setting, paper, values["columns"])

    def keeps_to_one_page(document: Document) -> bool:
        set_so_far.append(document)
        return len(document.pages) == 1

    versions = (sheet_html("room_sheet", setting, version) for version in _versions(values, set_so_far, lines))
    return write_fitting_pdf(versions, keeps_to_one_page, sheet_paper(setting, paper))


def _columns(setting: Setting, projects: int) -> int:
    large = float(setting.theme.measures["small"].removesuffix("pt")) > _LARGE
    return 1 if large or projects <= _FEW else 2


def _versions(values: dict[str, Any], set_so_far: list[Document], lines: int) -> Iterator[dict[str, Any]]:
    """Every way to set the page, the fullest first, without those that cannot fit on so many lines.

    A page that spilled tells how many projects it had room for.
    """
    every: list[WallProject] = values["every"]
    ladder = [("", 0), *(("tight", number) for number in range(len(LEFT_OUT_FIRST) + 1))]
    for fit, number in ladder:
        left_out = LEFT_OUT_FIRST[:number]
        if _least_lines(every, left_out) <= lines:
            yield {**values, "shown": every, "left_out": left_out, "fit": fit}
    kept = len(every)
    while kept:
        if set_so_far:
            begun = sum(page_of(set_so_far[-1], f"project-{number}") == 1 for number in range(1, kept + 1))
            kept = min(kept - 1, begun)
        while _least_lines(every[:kept], LEFT_OUT_FIRST) > lines:
            kept -= 1
        yield {**values, "shown": every[:kept], "left_out": LEFT_OUT_FIRST, "fit": "tight"}


def _least_lines(projects: Sequence[WallProject], left_out: Sequence[str]) -> int:
    """How many lines projects take at least: one for the title, for each size and for the notions."""
    fixed = 1 if "notions" in left_out else 2
    return sum(fixed + len(told.ends if "middle sizes" in left_out else told.sizes) for told in projects)


def _most_lines(setting: Setting, paper: str, columns: int) -> int:
    """How many lines a page could hold if it held nothing else."""
    small = float(setting.theme.measures["small"].removesuffix("pt"))
    line = _TIGHTEST_LINE * (small if small > _LARGE else _SMALLEST)
    return int(columns * (PAPERS[paper][1] - _MARGINS) * 72 / line)


def _project(worksheets: Sequence[Worksheet]) -> WallProject:
    sizes = tuple(_size(worksheet) for worksheet in worksheets)
    return WallProject(worksheets[0].title, typeset(_notions(worksheets)), sizes)


def _size(worksheet: Worksheet) -> WallSize:
    return WallSize(
        label=worksheet.size_label,
        finished=_panel_sizes(worksheet, cut=False),
        cut=_panel_sizes(worksheet, cut=True),
        cloth=Markup("; ").join(typeset(f"{use.name} {use.buy_text}") for use in worksheet.cloths.values()),
    )


def _notions(worksheets: Sequence[Worksheet]) -> str:
    """The notions of all sizes in one text; where sizes need different things, size by size."""
    needed = [
        [
            *(f"{line.amount} {line.item}" for line in kit_supplies(worksheet, ())),
            f"spools of thread: {worksheet.thread.spools}",
        ]
        for worksheet in worksheets
    ]
    if len({len(texts) for texts in needed}) == 1:
        told = [told_at_once(texts) for texts in zip(*needed, strict=True)]
        if all(told):
            return "; ".join(told)
    alone = (f"{worksheet.size_label}: {'; '.join(texts)}" for worksheet, texts in zip(worksheets, needed, strict=True))
    return ". ".join(alone)


def told_at_once(texts: Sequence[str]) -> str:
    """Return texts that differ in their numbers alone as one text, the numbers in order; empty where more differs.

    Examples
    --------
    >>> told_at_once(["1 pad, 13 1/2 in each way", "1 pad, 17 in each way"])
    '1 pad, 13 1/2 · 17 in each way'
    >>> told_at_once(["1 zip", "3 buttons"])
    ''
    """
    parts = [_NUMBER.split(text) for text in texts]
    if len({tuple(words[::2]) for words in parts}) != 1:
        return ""
    return "".join(" · ".join(alike if len(set(alike)) > 1 else alike[:1]) for alike in zip(*parts, strict=True))


def _panel_sizes(worksheet: Worksheet, *, cut: bool) -> Markup:
    """The sizes of the tucked panels, or of the first piece where none is tucked; named where there are several."""
    pieces = [piece for piece in worksheet.pieces.values() if piece.panel is not None]
    pieces = pieces or list(worksheet.pieces.values())[:1]
    several = len(pieces) > 1
    return Markup("; ").join(
        Markup("{}{}{}").format(
            f"{piece.label} " if several else "",
            f"{piece.quantity} of " if cut and piece.quantity > 1 else "",
            piece_size(piece, worksheet.edition, cut=cut),
        )
        for piece in pieces
    )


def _tuck_table(worksheets: Sequence[Worksheet], edition: Edition, most: int) -> TuckTable:
    """The depths that most projects of the room use, and the cloth that rows of such tucks hide."""
    counts = _COUNTS[: max(2, most)]
    rows = tuple(
        (said(depth, edition), tuple(bare(tuck_take_up(count, depth), edition) for count in counts))
        for depth in _usual_depths(worksheets)
    )
    return TuckTable(counts, rows)


def _usual_depths(worksheets: Sequence[Worksheet]) -> list[Fraction]:
    used = {
        (worksheet.project, depth)
        for worksheet in worksheets
        for panel in worksheet.panels.values()
        for depth in panel.across.depths
    }
    ranked = Counter(depth for _, depth in used)
    return sorted(sorted(ranked, key=lambda depth: (-ranked[depth], depth))[:_MOST_DEPTHS])
