"""The parts of a handout as set text: a worksheet and its acts come in, headings, paragraphs and tables go out."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import TypeVar

from markupsafe import Markup

from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_project import Caution, Worksheet
from generator.drawing.ruled_rows import told_rows
from generator.rendering.environment import sheet_words, template
from generator.rendering.handout.acts import PrintedAct, acts_of
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.tables import check_table, cut_rows, later_rows, panel_sentence, size_measures
from generator.rendering.setting import Setting, size_link
from generator.rendering.sheet_kinds import size_orders
from generator.rendering.tables import Mark, mark_rows
from generator.rendering.typeset import bare
from generator.rendering.web_code import WebPlace, web_place
from generator.rendering.words import blocks, printed_words

_ANY = 100_000
_LONG_LIST = 6
_NOTHING = Markup("")
Dealt = TypeVar("Dealt")
# The finished thing on the first page [mm]; what is beside it where there is nothing but the code of the web.
_FRONT = 49.0
_CODE_ALONE = "code"


@dataclass(frozen=True, slots=True)
class PrintedPart:
    """A block of the sheet: its heading, its paragraphs, the keys of its pictures, and what runs across the page.

    ``width`` is that of its pictures [mm] where it is not the usual one, ``strip`` names what stands to the right of
    them. One that ``leads`` is not the last on its page, one that ``rather`` leads only where that takes no
    more pages; ``number`` and ``minutes`` are those of its act.
    """

    name: str
    heading: Markup = _NOTHING
    words: tuple[Markup, ...] = ()
    pictures: tuple[str, ...] = ()
    across: tuple[Markup, ...] = ()
    leads: bool = False
    rather: bool = False
    number: int = 0
    minutes: int = 0
    width: float = 0.0
    strip: str = ""

    @property
    def narrow(self) -> bool:
        """Whether there is anything that its paragraphs may stand beside."""
        return bool(self.pictures or self.strip)


@dataclass(frozen=True, slots=True)
class TableRows:
    """How many rows a table has at most before another begins."""

    marks: int = 100
    checks: int = 12
    cuts: int = 14


class PartWriter:
    """Writes the parts of one worksheet in the words of a theme's templates."""

    def __init__(self, worksheet: Worksheet, setting: Setting, drawer: Drawer, rows: TableRows) -> None:
        self.worksheet, self.setting, self.drawer, self.rows = worksheet, setting, drawer, rows
        self.link = link = size_link(worksheet)
        self.web: WebPlace | None = web_place(link.page_of_project if setting.standing == "own" else link.page, setting)
        self.words = partial(printed_words, site_address=setting.site_address)
        values = {"panel_sentence": partial(panel_sentence, worksheet), **sheet_words(worksheet, _ANY)}
        self._template = template(setting.theme, "handout/parts.html")
        with self._template.environment.telling("handout/parts.html"):  # type: ignore[attr-defined]
            self._macros = self._template.make_module({"setting": setting, **values})

    def say(self, macro: str, *values: object) -> Markup:
        """Return what a macro of the templates makes of values."""
        with self._template.environment.telling("handout/parts.html"):  # type: ignore[attr-defined]
            return Markup(getattr(self._macros, macro)(*values))  # noqa: S704 -- the templates escape

    def parts(self) -> tuple[PrintedPart, ...]:
        """Return every part in reading order."""
        acts = acts_of(self.worksheet, self.drawer)
        cutting = tuple(part for act in acts if act.cutting for part in _apart(self._act(act)))
        work = tuple(part for act in acts if not act.cutting for part in _apart(self._act(act)))
        return (
            self._opening(),
            *cutting,
            PrintedPart("panels", words=tuple(self._about_panels())),
            *work,
            PrintedPart("last", self.say("last", self.web, *self._sheets())),
        )

    def _sheets(self) -> tuple[str, bool]:
        """The sheets that help, and whether they stand on the page of this size."""
        names = [order.name for order in size_orders(self.worksheet)]
        if not names:
            return "teacher's copy", False
        published = self.web is not None and set(names) <= set(self.setting.sheets)
        return " or the ".join(reversed(names)), published

    def _opening(self) -> PrintedPart:
        sheet = self.worksheet
        words = [self.say("opening", self.link, self.setting.room)]
        measures = size_measures(sheet)
        if measures:
            words.append(self.say("my_size", measures))
        words += [self._safety(sheet.cautions[name]) for name in sheet.told_first]
        front = self.drawer.shown("thing front") or self._surface()
        back = next(iter(self.drawer.shown("thing back")), "")
        across = (self.say("to_buy"),)
        return PrintedPart(
            "opening", Markup(""), tuple(words), front[:1], across, width=_FRONT, strip=back or _CODE_ALONE
        )

    def _surface(self) -> tuple[str, ...]:
        return self.drawer.shown(*(f"surface {name}" for name in self.worksheet.panels))[:1]

    def _safety(self, caution: Caution) -> Markup:
        return self.say("safety", caution, self.words(caution.text, below=3))

    def _act(self, act: PrintedAct) -> PrintedPart:
        words = [self._safety(caution) for caution in act.cautions]
        words += [one for block in blocks(self.words(act.text, below=2)) for one in _shorter(block)]
        tables = list(self._tables(act))
        if act.session_ends:
            # What an act is checked by comes before the place to stop.
            (tables or words).append(self.say("stop"))
        return PrintedPart(
            name=f"act-{act.number}",
            heading=self.say("headline", act),
            words=tuple(words),
            pictures=act.pictures,
            across=tuple(tables),
            number=act.number,
            minutes=act.minutes,
        )

    def _about_panels(self) -> list[Markup]:
        """What is good to know before the work on the panels begins: their numbers, and what was found about them."""
        numbers = [self.say("numbers", name) for name in self.worksheet.panels]
        found = (finding.text for finding in self.worksheet.findings if finding.printed)
        return [*numbers, *(self.say("note", text) for text in found)]

    def _tables(self, act: PrintedAct) -> Iterator[Markup]:
        """The tables of an act, those of many rows in several."""
        sheet, edition = self.worksheet, self.worksheet.edition
        panel = next((sheet.panels[name] for name in act.pieces if name in sheet.panels), None)
        for name in act.tables:
            if name == "cut":
                yield from (self.say("cuts", rows) for rows in _dealt(cut_rows(sheet), self.rows.cuts))
            elif name == "own measure":
                dealt = _dealt(later_rows(sheet.new_cuts, edition), self.rows.cuts)
                yield from (self.say("later", rows) for rows in dealt)
            elif panel is not None:
                yield from self._of_panel(name, panel)

    def _of_panel(self, name: str, panel: Panel) -> Iterator[Markup]:
        """The fold marks or the checks of one set of tucks of a panel."""
        cross = name.startswith("cross ")
        tucks, checks = (panel.cross, panel.cross_checks) if cross else (panel.across, panel.checks)
        if name == "ruled rows":
            yield from self._rows(panel)
            return
        if tucks is None or not tucks.count:
            return
        if name.endswith("marks"):
            yield from self._marks(tucks, cross=cross)
        elif name.endswith("check points") and checks.points:
            table = check_table(tucks, checks, self.worksheet.edition)
            yield self.say("check_rule", table)
            yield from (self.say("checks", table, rows) for rows in _dealt(table.rows, self.rows.checks))

    def _marks(self, tucks: TuckSet, *, cross: bool) -> Iterator[Markup]:
        edition = self.worksheet.edition
        start, first, second = ("top", "left", "right") if cross else ("left", "top", "bottom")
        title = (
            f"Fold marks, in {self._unit} from the {start} cut edge; "
            f"tick the first box at the {first} edge, the second at the {second}"
        )
        for number, cells in enumerate(_dealt(mark_rows(tucks, edition, _ANY)[0], self.rows.marks)):
            yield self.say("marks", title if number == 0 else "", cells)

    def _rows(self, panel: Panel) -> Iterator[Markup]:
        """The table of rows that are too many for their picture to tell."""
        rows = panel.rows.rows if panel.rows is not None else ()
        if len(told_rows(rows, self.drawer.style)) == len(rows):
            return
        title = (
            f"Rows, in {self._unit} from the top cut edge; tick the first box at the left edge, the second at the right"
        )
        cells = [Mark(row.number, bare(row.ruled, self.worksheet.edition), Markup("")) for row in rows]
        for number, some in enumerate(_dealt(cells, self.rows.marks)):
            yield self.say("marks", title if number == 0 else "", some)

    @property
    def _unit(self) -> str:
        return {"in": "inches", "cm": "centimetres"}[self.worksheet.edition.unit]


def loose(part: PrintedPart) -> Iterator[PrintedPart]:
    """Return a part for large letters: its heading with its first paragraph, then each of the others by itself."""
    leads = not part.words and bool(part.pictures or part.across)
    yield replace(part, words=part.words[:1], pictures=(), across=(), strip="", leads=leads)
    if part.strip:
        yield PrintedPart(f"{part.name}-s", strip=part.strip)
    for place, words in enumerate(part.words[1:], 1):
        yield PrintedPart(f"{part.name}-p{place}", words=(words,), number=part.number)
    for place, key in enumerate(part.pictures):
        yield PrintedPart(f"{part.name}-f{place}", pictures=(key,), number=part.number)
    for place, table in enumerate(part.across):
        yield PrintedPart(f"{part.name}-t{place}", across=(table,), number=part.number)


def _apart(part: PrintedPart) -> Iterator[PrintedPart]:
    """A part whose tables may open the next page, where that saves pages."""
    yield replace(part, across=(), rather=bool(part.across))
    if part.across:
        yield PrintedPart(f"{part.name}-t", across=part.across, number=part.number)


def _shorter(block: Markup) -> Iterator[Markup]:
    """A long list in lists of a few entries each, so that it can stand on two pages; anything else as it is."""
    entries = re.findall(r"<li>.*?</li>", block, re.DOTALL)
    if not block.startswith("<ul>") or "<ul>" in block[4:] or len(entries) <= _LONG_LIST:
        yield block
        return
    for some in _dealt(entries, _LONG_LIST):
        yield Markup(f"<ul>{''.join(some)}</ul>")  # noqa: S704 -- parts of what was escaped


def _dealt(rows: Sequence[Dealt], most: int) -> Iterator[Sequence[Dealt]]:
    """Rows dealt out in tables of so many at most."""
    return (rows[start : start + most] for start in range(0, len(rows), most))
