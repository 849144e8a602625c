"""The handout: a worksheet and a paper come in, the bytes of a PDF go out.

All parts are set once on a page as high as they need, and measured; then they are dealt out on pages, their pictures
drawn at the size that they get, and all is set again. Another number of pages than was planned is refused.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import partial

from markupsafe import Markup

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES
from generator.drawing.style import style_of
from generator.errors import PublishError
from generator.rendering.environment import sheet_words, template
from generator.rendering.handout.alert import ALERTS
from generator.rendering.handout.measuring import Element, known_heights, measured
from generator.rendering.handout.parts import PartWriter, PrintedPart, TableRows
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.planning import Block, PlannedBlock, PlannedPage, fewest
from generator.rendering.on_papers import set_on, written_on
from generator.rendering.pdf import SheetResources, SheetSetter
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import page_size, paper_style
from generator.rendering.typeset import time_words

PICTURE_WIDTH = 80.0
# Of the page in handout.css, left with right and top with bottom; large letters have a higher foot.
_MARGINS, _HIGHER_FOOT = (32.0, 22.4), 3.6
# What stands to the right of the finished thing: its back and the code of the web, with the words below it.
_STRIP, _CODE, _LARGE_CODE = 29.0, 30.0, 33.0
# Set and measured lengths differ by hairs: so much of a page stays free, and more where that was too little [mm].
_SPARES = (1.2, 4.0, 9.0)
# For how many pages the line that tells what is on which page is measured.
_CONTENTS = (4, 6, 8, 12)
# Stages side by side run across the page where their act becomes lower by so much [mm].
_RUN_ACROSS, _WORTH = ("assembly ", "ruling "), 2.0
_LARGE_ROWS = TableRows(marks=20, checks=1, cuts=2)
_TALL = 20_000.0


def render_handout(worksheet: Worksheet, setting: Setting, paper: str, drawer: Drawer | None = None) -> bytes:
    """Return the handout of one worksheet; what draws its pictures may be shared with that on another paper.

    Raises
    ------
    PublishError
        If a letter, a font or a picture is missing, or the sheet comes out on other pages than planned.
    """
    return render_handouts(worksheet, setting, (paper,), drawer)[paper]


def render_handouts(
    worksheet: Worksheet, setting: Setting, papers: Sequence[str], drawer: Drawer | None = None
) -> dict[str, bytes]:
    """Return the handout of one worksheet on each of some papers, set once.

    It is set on what all papers of the room hold, so that it is the same on each of them.

    Raises
    ------
    PublishError
        If a letter, a font or a picture is missing, or the sheet comes out on other pages than planned.
    """
    return _Handout(worksheet, setting, papers, drawer or Drawer(worksheet, style_of(setting.theme))).written()


@dataclass(frozen=True, slots=True)
class _Shown:
    """A part as the template places it."""

    name: str
    heading: Markup
    beside: tuple[Markup, ...]
    below: tuple[Markup, ...]
    across: tuple[Markup, ...]
    pictures: tuple[Markup, ...]
    strip: Markup
    column: str
    spread: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class _ShownPage:
    blocks: tuple[_Shown, ...]
    gap: str
    foot: Markup


class _Handout:
    """One handout in the making."""

    def __init__(self, worksheet: Worksheet, setting: Setting, papers: Sequence[str], drawer: Drawer) -> None:
        self.worksheet, self.setting, self.drawer, self.papers = worksheet, setting, drawer, papers
        self.large = setting.theme.large
        self.writer = PartWriter(worksheet, setting, self.drawer, _LARGE_ROWS if self.large else TableRows())
        self.page = set_on({*setting.papers, *papers})
        width, height = (side * MILLIMETRES for side in self.page)
        self.live = (width - _MARGINS[0], height - _MARGINS[1] - (_HIGHER_FOOT if self.large else 0.0))
        self.width = self.live[0] if self.large else PICTURE_WIDTH
        self.memory = dict(ALERTS)
        self._contents_high: dict[int, float] = {}
        self._beside: dict[str, tuple[str, ...]] = {}
        self.style = paper_style(setting.theme, papers[0], "handout")

    def written(self) -> dict[str, bytes]:
        parts = self.writer.parts()
        if self.large:
            parts = tuple(piece for part in parts for piece in _loose(part))
        setter = SheetSetter(SheetResources(self.style, self.setting.theme, self.memory))
        blocks = self._measured(parts, setter)
        high = {block.name for block in blocks if block.at(0) > self._room(_SPARES[0], 1, 4)}
        if high:
            # What is higher than a page is the only thing that is ever split.
            parts = tuple(piece for part in parts for piece in (_loose(part) if part.name in high else (part,)))
            blocks = self._measured(parts, setter)
        for spare in _SPARES:
            pages = fewest(blocks, partial(self._room, spare))
            if not pages:
                raise PublishError(f"{self._named}: part of a step is higher than a page; write shorter paragraphs")
            document = setter.set_on_pages(self._html(parts, pages), page_size(*self.page))
            if len(document.pages) == len(pages):
                return written_on(setter, document, self.papers, self.page)
        raise PublishError(f"{self._named} was planned on {len(pages)} pages and set on {len(document.pages)}")

    @property
    def _named(self) -> str:
        return f"the handout of {self.worksheet.title}, {self.worksheet.size_label}"

    def _room(self, spare: float, page: int, pages: int) -> float:
        told = next((most for most in _CONTENTS if pages <= most), _CONTENTS[-1])
        return self.live[1] - spare - (self._contents_high.get(told, 0.0) if page == 1 else 0.0)

    def _measured(self, parts: Sequence[PrintedPart], setter: SheetSetter) -> tuple[Block, ...]:
        contents = () if self.large else tuple(self._longest_contents())
        elements = dict(element for part in (*parts, *contents) for element in _elements(part))
        tall = f"@page {{ size: {self.live[0] + _MARGINS[0]:.3f}mm {_TALL:.0f}mm; }}\n"

        def set_elements(new: Mapping[str, Element]) -> Document:
            html = template(self.setting.theme, "handout/measured.html").render(
                elements=new, form="large" if self.large else "", **self._values()
            )
            return setter.set_on_pages(html, tall)

        known = known_heights(self.setting.theme.folders, self.style, tall)
        heights = measured(elements.values(), known, set_elements)
        found = {name: heights[element] for name, element in elements.items()}
        self._contents_high = {pages: found[f"contents-{pages}-f"] + 0.8 for pages in _CONTENTS if contents}
        return tuple(self._block(part, found) for part in parts)

    def _longest_contents(self) -> Iterator[PrintedPart]:
        """What is said of each page, as long as it may become."""
        for pages in _CONTENTS:
            told = tuple(_Content(page, "10 to 12, 1 h 50 min") for page in range(1, pages + 1))
            yield PrintedPart(f"contents-{pages}", self.writer.say("contents", told))

    def _block(self, part: PrintedPart, found: dict[str, float]) -> Block:
        """Return a part as measured; each picture stands beside the words or across the page, where it takes less."""
        beside = list(part.pictures)
        block = self._block_of(part, found, beside)
        for key in part.pictures:
            other = self._block_of(part, found, [one for one in beside if one != key])
            may_run_across = key.startswith(_RUN_ACROSS) and not (self.large or part.width)
            if may_run_across and other.at(0) < block.at(0) - _WORTH:
                beside.remove(key)
                block = other
        self._beside[part.name] = tuple(beside)
        return block

    def _block_of(self, part: PrintedPart, found: dict[str, float], beside: Sequence[str]) -> Block:
        def high(kind: str) -> tuple[float, ...]:
            return tuple(found[f"{part.name}-{kind}{place}"] for place in range(len(part.words)))

        pictures = tuple(self.drawer.heights(key, part.width or self.width) for key in beside)
        spread = tuple(self.drawer.heights(key, self.live[0]) for key in part.pictures if key not in beside)
        narrow = high("w") if self.large else high("n")
        strip = sum(height for _, height in self._strip(part))
        return Block(
            part.name, found[f"{part.name}-f"], narrow, high("w"), pictures, part.leads, part.rather, strip, spread
        )

    def _strip(self, part: PrintedPart) -> Iterator[tuple[Markup, float]]:
        """What stands to the right of the pictures, with its height: the back of the thing, and the code of the web."""
        if part.strip in self.drawer.shown(part.strip):
            height = self.drawer.heights(part.strip, _STRIP).natural
            yield from ((self._image(one), height + 2.0) for one in self.drawer.pictures(part.strip, _STRIP, height))
        if part.strip and self.writer.web is not None:
            yield (
                self.writer.say("code", self.writer.web, self._image(self.writer.web.code)),
                _LARGE_CODE if self.large else _CODE,
            )

    def _values(self) -> dict[str, object]:
        return {"setting": self.setting, **sheet_words(self.worksheet, 1)}

    def _html(self, parts: Sequence[PrintedPart], pages: Sequence[PlannedPage]) -> str:
        by_name = {part.name: part for part in parts}
        contents = tuple(_contents(pages, by_name))
        shown = []
        for number, page in enumerate(pages, 1):
            foot = self._notes(page.notes) if page.notes else Markup("")
            if number == 1 and not self.large:
                foot += self.writer.say("contents", contents)
            blocks = tuple(self._shown(by_name[block.name], block) for block in page.blocks)
            shown.append(_ShownPage(blocks, f"{page.gap:.3f}", foot))
        return template(self.setting.theme, "handout.html").render(
            pages=shown, form="large" if self.large else "", **self._values()
        )

    def _notes(self, height: float) -> Markup:
        """Lines to write on, as far apart as fills the height [mm]."""
        head, apart = (8.0, 12.0) if self.large else (5.0, 8.0)
        lines = round((height - head) / apart)
        if lines < 1:
            head, lines = 0.0, 1
        return self.writer.say("notes", f"{height:.2f}", bool(head), lines, f"{(height - head - 1.0) / lines:.2f}")

    def _shown(self, part: PrintedPart, block: PlannedBlock) -> _Shown:
        pictures = [
            self._image(picture)
            for key, height in zip(self._beside[part.name], block.pictures, strict=True)
            for picture in self.drawer.pictures(key, part.width or self.width, height)
        ]
        across = [key for key in part.pictures if key not in self._beside[part.name]]
        spread = tuple(
            self._image(picture)
            for key, height in zip(across, block.spread, strict=True)
            for picture in self.drawer.pictures(key, self.live[0], height)
        )
        strip = Markup("").join(one for one, _ in self._strip(part))
        column = f"{block.column:.3f}" if block.column else ""
        beside, below = part.words[: block.beside], part.words[block.beside :]
        return _Shown(part.name, part.heading, beside, below, part.across, tuple(pictures), strip, column, spread)

    def _image(self, picture: Picture) -> Markup:
        address = f"{len(self.memory) + 1}.svg"
        self.memory[address] = picture.svg
        return Markup('<figure><img src="mem:{}" alt="{}" style="width:{:.4f}in;height:{:.4f}in"></figure>').format(
            address, picture.alt, picture.width, picture.height
        )


def _loose(part: PrintedPart) -> Iterator[PrintedPart]:
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


def _elements(part: PrintedPart) -> Iterator[tuple[str, Element]]:
    """What is measured of a part, by its name: what runs across the page, and each paragraph in both its places."""
    tables = (Markup('<div class="across">{}</div>').format(one) for one in part.across)
    yield f"{part.name}-f", Element("across", Markup("").join((part.heading, *tables)))
    for place, words in enumerate(part.words):
        yield f"{part.name}-n{place}", Element("beside", words)
        yield f"{part.name}-w{place}", Element("below", words)


@dataclass(frozen=True, slots=True)
class _Content:
    number: int
    words: str


def _contents(pages: Sequence[PlannedPage], parts: dict[str, PrintedPart]) -> Iterator[_Content]:
    """Return what is done on each page: its steps, and how long they take."""
    for number, page in enumerate(pages, 1):
        acts = [parts[block.name] for block in page.blocks if parts[block.name].number]
        if acts:
            first, last = acts[0].number, acts[-1].number
            steps = f"{first}" if first == last else f"{first} to {last}"
            minutes = sum(act.minutes for act in acts)
            yield _Content(number, f"{steps}, {time_words(minutes)}" if minutes else steps)
