"""The wall card: worksheets of all projects in one edition come in, a PDF of exactly one page goes out.

It is read from arm's length: a block for each project, a line for each size. It never spills and leaves no project out.
Where room is short the letters get smaller, then the line on what tucks hide goes, then what to buy. A room with more
projects than that has one card for each kind of thing, each a page of its own; a card says what is not on it.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Generator, Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby, product
from typing import Any

from markupsafe import Markup

from generator.calculation.panel.tucks import tuck_take_up
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import text_width
from generator.drawing.style import style_of
from generator.lengths import Edition
from generator.rendering.one_page import edition_values, sheet_html, sheet_paper
from generator.rendering.pdf import write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS
from generator.rendering.tables import piece_size
from generator.rendering.typeset import as_sentence, bare, said, typeset

_MOST_DEPTHS = 6
# Letters above this size stand in one column [pt].
_LARGE = 12.0
_TIGHTEST_LINE, _MARGINS, _POINTS = 1.3, 2.0, 72
# White at both sides of a card and between its columns [in], and behind a cell [em]: css/sheets.css.
_SIDES, _BETWEEN, _PADDING = 26 / 25.4, 0.26, 0.6
_HEADS = ("Size", "Cut the panel", "Tucks", "Buy, yd")


@dataclass(frozen=True, slots=True)
class CardLine:
    """One tucked panel in one size: its size named only with its first panel."""

    size: str
    panel: str
    cut: Markup
    tucks: Markup
    buy: Markup


@dataclass(frozen=True, slots=True)
class CardProject:
    """One project as the card tells it; ``cloths`` has the width of each in the order of what to buy."""

    title: str
    kind: str
    panels: int
    cloths: Markup
    lines: tuple[CardLine, ...]


@dataclass(frozen=True, slots=True)
class CardFit:
    """How a card is set: its letters [pt], and whether the line on tucks and what to buy are on it."""

    letters: float
    tuck_line: bool = True
    buying: bool = True


@dataclass(frozen=True, slots=True)
class WallCard:
    """One page: what it is of, its projects column by column, and how they are set.

    ``one_line`` tells whether each line holds its words.
    """

    heading: str
    columns: tuple[tuple[CardProject, ...], ...]
    fit: CardFit
    one_line: bool = True


def _fits(*letters: float) -> tuple[CardFit, ...]:
    """Every way to set a card, the fullest first: smaller letters, then less."""
    least = letters[-1]
    full = (CardFit(size) for size in letters)
    return (*full, CardFit(least, tuck_line=False), CardFit(least, tuck_line=False, buying=False))


_FITS = _fits(16.0, 14.0, 12.0, 11.0, 10.5, 10.0)


def render_wall_card(projects: Mapping[str, Sequence[Worksheet]], setting: Setting, paper: str) -> bytes:
    """Return the wall card: one page, or one for each kind of thing where a page does not hold all projects."""
    worksheets = [worksheet for sizes in projects.values() for worksheet in sizes]
    values = {**edition_values(worksheets), **_foot(worksheets, worksheets[0].edition)}
    every = sorted((_project(sizes) for sizes in projects.values()), key=lambda told: told.title.casefold())
    trial = _CardTrial(setting, paper, values)
    return write_fitting_pdf(trial.versions(tuple(every)), trial.fits, sheet_paper(setting, paper))


class _CardTrial:
    """Cards are tried on a page one after the other until each keeps to its own; then all of them are set together."""

    def __init__(self, setting: Setting, paper: str, values: Mapping[str, Any]) -> None:
        self._setting = setting
        self._values = values
        least = float(setting.theme.measures["small"].removesuffix("pt"))
        self._large = least > _LARGE
        self._fits = _fits(least) if self._large else _FITS
        self._inches = PAPERS[paper][1] - _MARGINS
        self._across = PAPERS[paper][0] - _SIDES
        self._font = style_of(setting.theme).font
        self._together = True
        self._kept = False

    def fits(self, document: Document) -> bool:
        """Take note whether a card keeps to its page; return whether that is all that is to be set."""
        self._kept = len(document.pages) == 1
        return self._kept and self._together

    def versions(self, projects: tuple[CardProject, ...]) -> Iterator[str]:
        """Every way to set the cards that is tried, the last one the right one."""
        cards = yield from self._placed("All projects", projects)
        yield self._html(cards)

    def _placed(self, heading: str, projects: tuple[CardProject, ...]) -> Generator[str, None, list[WallCard]]:
        """Try one card with all these projects, the fullest way first; then a card for each kind, or for each half."""
        layouts = ((projects,),) if self._large or len(projects) < 2 else ((projects,), _two_columns(projects))
        for fit, columns in product(self._fits, layouts):
            card = WallCard(heading, columns, fit, self._holds_its_words(columns, fit))
            if self._may_fit(card) and (card.one_line or fit.letters == self._fits[-1].letters):
                yield self._html([card])
                if self._kept:
                    return [card]
        self._together = False
        if len(projects) < 2:
            return [WallCard(heading, layouts[-1], self._fits[-1], one_line=False)]
        kinds = [tuple(some) for _, some in groupby(sorted(projects, key=_kind), key=_kind)]
        half = (len(projects) + 1) // 2
        cards: list[WallCard] = []
        for some in kinds if len(kinds) > 1 else (projects[:half], projects[half:]):
            cards += yield from self._placed(as_sentence(some[0].kind), some)
        return cards

    def _may_fit(self, card: WallCard) -> bool:
        """Whether a page has so many lines at all; most ways to set a large room need not be tried."""
        most = max(_lines_of(column) for column in card.columns)
        return most * card.fit.letters * _TIGHTEST_LINE <= self._inches * _POINTS

    def _holds_its_words(self, columns: Sequence[Sequence[CardProject]], fit: CardFit) -> bool:
        """Whether the widest words of all cells of a line stand side by side."""
        wide = (self._across - _BETWEEN * (len(columns) - 1)) / len(columns)
        return all(self._width(projects, fit) <= wide for projects in columns)

    def _width(self, projects: Sequence[CardProject], fit: CardFit) -> float:
        """How wide the table of some projects is without a break in any line [in]."""
        told = [_HEADS, *(_words(line) for project in projects for line in project.lines)]
        cells = list(zip(*told, strict=True))[: 4 if fit.buying else 3]
        return sum(
            max(text_width(words, fit.letters, bold=place == 1, font=self._font) for words in column)
            for place, column in enumerate(cells)
        ) + _PADDING * fit.letters / _POINTS * (len(cells) - 1)

    def _html(self, cards: Sequence[WallCard]) -> str:
        return sheet_html("wall_card", self._setting, {**self._values, "cards": cards, "large": self._large})


def _words(line: CardLine) -> tuple[str, ...]:
    """The words of a line, cell by cell."""
    return (f"{line.size} {line.panel}".strip(), *(cell.striptags() for cell in (line.cut, line.tucks, line.buy)))


def _lines_of(projects: Sequence[CardProject]) -> int:
    return sum(1 + len(project.lines) for project in projects)


def _two_columns(projects: tuple[CardProject, ...]) -> tuple[tuple[CardProject, ...], ...]:
    """Share projects out over two columns of as nearly equal length as their order allows."""
    longest = {at: max(_lines_of(projects[:at]), _lines_of(projects[at:])) for at in range(1, len(projects))}
    at = min(longest, key=lambda place: longest[place])
    return projects[:at], projects[at:]


def _kind(project: CardProject) -> str:
    return project.kind


def _project(worksheets: Sequence[Worksheet]) -> CardProject:
    first = worksheets[0]
    numbers = {piece.quantity for worksheet in worksheets for piece in _panels(worksheet)}
    widths = Markup(", ").join(_cloth_width(name, worksheets) for name in first.cloths)
    lines = tuple(line for worksheet in worksheets for line in _lines(worksheet, told_once=len(numbers) == 1))
    return CardProject(first.title, first.kind, numbers.pop() if len(numbers) == 1 else 1, widths, lines)


def _cloth_width(name: str, worksheets: Sequence[Worksheet]) -> Markup:
    uses = [worksheet.cloths[name] for worksheet in worksheets if name in worksheet.cloths]
    widths = dict.fromkeys(bare(use.width, worksheets[0].edition) for use in uses)
    return Markup("{} {}").format(name, Markup(" or ").join(widths))


def _panels(worksheet: Worksheet) -> list[Piece]:
    """The tucked panels, or the first piece where none is tucked."""
    pieces = list(worksheet.pieces.values())
    return [piece for piece in pieces if piece.panel is not None] or pieces[:1]


def _lines(worksheet: Worksheet, *, told_once: bool) -> list[CardLine]:
    panels, edition = _panels(worksheet), worksheet.edition
    several = len(panels) > 1
    buy = Markup(" + ").join(
        typeset(use.buy_text.removesuffix(f" {edition.buy_unit}")) for use in worksheet.cloths.values()
    )
    return [
        CardLine(
            size="" if number else worksheet.size_label,
            panel=piece.label if several else "",
            cut=Markup("{}{}").format(
                "" if told_once or piece.quantity == 1 else f"{piece.quantity} of ",
                piece_size(piece, edition, cut=True, unit=False),
            ),
            tucks=_tucks(piece, edition),
            buy=Markup("") if number else buy,
        )
        for number, piece in enumerate(panels)
    ]


def _tucks(piece: Piece, edition: Edition) -> Markup:
    """How many tucks of what depth, if they have one."""
    tucks = piece.panel.across if piece.panel is not None else None
    if tucks is None or not tucks.count:
        return Markup("–")
    if len(set(tucks.depths)) > 1:
        return Markup("{} mixed").format(tucks.count)
    return Markup("{} × {}").format(tucks.count, bare(tucks.depths[0], edition))


def _foot(worksheets: Sequence[Worksheet], edition: Edition) -> dict[str, Any]:
    """What stands below: what tucks of the depths used here hide, and how one puts a panel right that is off.

    One tuck that is shallower by a step lets out twice the step.
    """
    hides = [
        Markup("{} hides {}").format(bare(depth, edition), bare(tuck_take_up(1, depth), edition))
        for depth in _usual_depths(worksheets)
    ]
    return {
        "edition": edition,
        "hides": hides,
        "off": said(2 * edition.mark, edition),
        "step": said(edition.mark, edition),
    }


def _usual_depths(worksheets: Sequence[Worksheet]) -> list[Fraction]:
    used = {
        (worksheet.project, depth)
        for worksheet in worksheets
        for panel in worksheet.panels.values()
        for depth in panel.across.depths
    }
    ranked = Counter(depth for _, depth in used)
    return sorted(sorted(ranked, key=lambda depth: (-ranked[depth], depth))[:_MOST_DEPTHS])
