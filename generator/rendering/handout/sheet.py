"""The handout: a worksheet and a paper come in, the bytes of a PDF go out.

All parts are set once on a page as high as they need, and measured; then they are dealt out on pages, their pictures
drawn at the size that they get, and all is set again. Another number of pages than was planned is refused.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace
from functools import partial
from itertools import product

from markupsafe import Markup

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, Heights
from generator.drawing.style import style_of
from generator.errors import PublishError
from generator.rendering.alert import ALERTS
from generator.rendering.environment import sheet_words, template
from generator.rendering.handout.blocks import Block, PlannedBlock
from generator.rendering.handout.breaking import TAIL
from generator.rendering.handout.contents import CONTENTS, contents_of, longest_contents
from generator.rendering.handout.measuring import Element, KeptHeights, elements_of, known_heights, measured
from generator.rendering.handout.parts import PartWriter, PrintedPart, TableRows, loose
from generator.rendering.handout.pictures import BESIDE, STAYS, Drawer, Place, may_stand
from generator.rendering.handout.planning import DealtOut, PlannedPage, planned
from generator.rendering.handout.shown import Shown, ShownPage
from generator.rendering.on_papers import set_on, written_on
from generator.rendering.pdf import SheetResources, SheetSetter
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import SHEET_MARGINS, page_size, paper_style

PICTURE_WIDTH = 77.0
# Of the page in handout.css, left with right and top with bottom; large letters have a higher foot.
_HIGHER_FOOT = 5.0
# What stands to the right of the finished thing: its back and the code of the web, with the words below it.
_STRIP, _CODE, _LARGE_CODE = 29.0, 32.5, 41.0
# Set and measured lengths differ by hairs: so much of a page stays free, and more where that was too little [mm].
_SPARES = (0.8, 4.0, 9.0)
# The line above a picture that tells its name [mm], as in handout.css.
_NAME, _LARGE_NAME = 4.0, 8.6
# A picture is moved where its act becomes lower by so much [mm].
_WORTH = 2.0
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
    worksheet: Worksheet,
    setting: Setting,
    papers: Sequence[str],
    drawer: Drawer | None = None,
    heights: KeptHeights | None = None,
) -> dict[str, bytes]:
    """Return the handout of one worksheet on each of some papers, set once.

    It is set on what all papers of the room hold, so that it is the same on each of them. ``heights`` are those that
    were kept of it; where nothing comes out as planned with them, all is measured anew.

    Raises
    ------
    PublishError
        If a letter, a font or a picture is missing, or the sheet comes out on other pages than planned.
    """
    drawer, heights = drawer or Drawer(worksheet, style_of(setting.theme)), heights or KeptHeights()
    try:
        return _Handout(worksheet, setting, papers, drawer, heights).written()
    except PublishError:
        if not heights.before:
            raise
        heights.before, heights.now = {}, {}
        return _Handout(worksheet, setting, papers, drawer, heights).written()


class _Handout:
    """One handout in the making."""

    def __init__(
        self, worksheet: Worksheet, setting: Setting, papers: Sequence[str], drawer: Drawer, heights: KeptHeights
    ) -> None:
        self.worksheet, self.setting, self.drawer, self.papers = worksheet, setting, drawer, papers
        self.heights = heights
        self.large = setting.theme.large
        self.writer = PartWriter(worksheet, setting, self.drawer, _LARGE_ROWS if self.large else TableRows())
        self.page = set_on({*setting.papers, *papers})
        width, height = (side * MILLIMETRES for side in self.page)
        self.live = (width - SHEET_MARGINS[0], height - SHEET_MARGINS[1] - (_HIGHER_FOOT if self.large else 0.0))
        self.width = self.live[0] if self.large else PICTURE_WIDTH
        self.memory = dict(ALERTS)
        self._continued_high = 0.0
        self._contents_high: dict[int, float] = {}
        self._placed: dict[str, dict[str, Place]] = {}
        self._standing: dict[str, dict[str, Place]] = {}
        self.style = paper_style(setting.theme, papers[0], "handout")

    def written(self) -> dict[str, bytes]:
        parts = self.writer.parts()
        if self.large:
            parts = tuple(piece for part in parts for piece in loose(part))
        setter = SheetSetter(SheetResources(self.style, self.setting.theme, self.memory))
        blocks = self._measured(parts, setter)
        high = {block.name for block in blocks if block.at(0) > self._room(_SPARES[0], 1, 4)}
        if high:
            # What is higher than a page is the only thing that is ever split.
            parts = tuple(piece for part in parts for piece in (loose(part) if part.name in high else (part,)))
            blocks = self._measured(parts, setter)
        for spare in _SPARES:
            plan = planned(blocks, partial(self._room, spare), self._continued_high)
            pages = plan.pages
            if not pages:
                raise PublishError(f"{self._named}: part of a step is higher than a page; write shorter paragraphs")
            shown = tuple(self._broken(parts, plan))
            document = setter.set_on_pages(self._html(shown, pages), page_size(*self.page))
            if len(document.pages) == len(pages):
                return written_on(setter, document, self.papers, self.page)
        raise PublishError(f"{self._named} was planned on {len(pages)} pages and set on {len(document.pages)}")

    def _broken(self, parts: Sequence[PrintedPart], plan: DealtOut) -> Iterator[PrintedPart]:
        """The parts as they are shown, those that go on over the page in two."""
        after = dict(plan.broken)
        self._standing = dict(self._placed)
        for part in parts:
            cut = after.get(part.name)
            if cut is None:
                yield part
                continue
            name, places = f"{part.name}{TAIL}", self._placed[part.name]
            keys = sorted((key for key in places if places[key] != "spread"), key=lambda key: places[key] == "under")
            self._standing[part.name] = dict.fromkeys(keys[: cut.pictures], "beside")
            spread = {key: place for key, place in places.items() if place == "spread"}
            self._standing[name] = {**dict.fromkeys(keys[cut.pictures :], BESIDE[0]), **spread}
            yield replace(part, words=part.words[: cut.words])
            yield PrintedPart(
                name, self.writer.say("continued", part.number), part.words[cut.words :], number=part.number
            )

    @property
    def _named(self) -> str:
        return f"the handout of {self.worksheet.title}, {self.worksheet.size_label}"

    def _room(self, spare: float, page: int, pages: int) -> float:
        told = next((most for most in CONTENTS if pages <= most), CONTENTS[-1])
        return self.live[1] - spare - (self._contents_high.get(told, 0.0) if page == 1 else 0.0)

    def _measured(self, parts: Sequence[PrintedPart], setter: SheetSetter) -> tuple[Block, ...]:
        contents = () if self.large else tuple(longest_contents(self.writer))
        elements = dict(element for part in (*parts, *contents) for element in elements_of(part))
        tall = f"@page {{ size: {self.live[0] + SHEET_MARGINS[0]:.3f}mm {_TALL:.0f}mm; }}\n"

        def set_elements(new: Mapping[str, Element]) -> Document:
            html = template(self.setting.theme, "handout/measured.html").render(
                elements=new, form="large" if self.large else "", **self._values()
            )
            return setter.set_on_pages(html, tall)

        known = known_heights(self.setting.theme.folders, self.style, tall)
        heights = measured(elements.values(), known, self.heights, set_elements)
        found = {name: heights[element] for name, element in elements.items()}
        self._continued_high = found.get("continued-f", 0.0)
        self._contents_high = {pages: found[f"contents-{pages}-f"] + 0.8 for pages in CONTENTS if contents}
        return tuple(self._block(part, found) for part in parts)

    def _block(self, part: PrintedPart, found: dict[str, float]) -> Block:
        """Return a part as measured, each of its pictures where the part is lowest and as few as may be moved there."""
        blocks = {places: self._block_of(part, found, places) for places in self._places(part)}
        places = min(blocks, key=lambda one: blocks[one].at(0) + _WORTH * (len(one) - one.count("beside")))
        self._placed[part.name] = dict(zip(part.pictures, places, strict=True))
        return blocks[places]

    def _places(self, part: PrintedPart) -> Iterator[tuple[Place, ...]]:
        """Every way to place the pictures of a part, that with all beside the words first."""
        moved = not (self.large or part.width)
        return product(
            *(may_stand(key, self._heights(key, self.width).least) if moved else BESIDE for key in part.pictures)
        )

    def _block_of(self, part: PrintedPart, found: dict[str, float], places: Sequence[Place]) -> Block:
        def high(kind: str) -> tuple[float, ...]:
            return tuple(found[f"{part.name}-{kind}{place}"] for place in range(len(part.words)))

        def those(place: Place) -> tuple[Heights, ...]:
            width = self._width(part, place)
            keys = zip(part.pictures, places, strict=True)
            return tuple(self._heights(key, width) for key, stands in keys if stands == place)

        return Block(
            part.name,
            found[f"{part.name}-f"],
            high("n") if part.narrow and not self.large else high("w"),
            high("w"),
            those("beside"),
            part.leads,
            part.rather,
            sum(height for _, height in self._strip(part)),
            those("under"),
            those("spread"),
            whole=not part.number or bool(part.across),
            faces=any(key.startswith(STAYS) for key in part.pictures),
        )

    def _heights(self, key: str, width: float) -> Heights:
        """How high a picture is with its name above it."""
        named, high = self._named_high(key), self.drawer.heights(key, width)
        return Heights(high.least + named, high.natural + named, high.greatest + named)

    def _named_high(self, key: str) -> float:
        return (_LARGE_NAME if self.large else _NAME) if self._name(key) else 0.0

    def _name(self, key: str) -> str:
        """The cloth of a layout where there are several."""
        several = key.startswith("layout ") and len(self.worksheet.cloths) > 1
        return self.worksheet.cloths[key.removeprefix("layout ")].label if several else ""

    def _width(self, part: PrintedPart, place: Place) -> float:
        return self.live[0] if place == "spread" else part.width or self.width

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
        contents = tuple(contents_of(pages, by_name))
        shown = []
        for number, page in enumerate(pages, 1):
            foot = self._notes(page.notes) if page.notes else Markup("")
            if number == 1 and not self.large:
                foot += self.writer.say("contents", contents)
            blocks = tuple(self._shown(by_name[block.name], block) for block in page.blocks)
            shown.append(ShownPage(blocks, f"{page.gap:.3f}", foot))
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

    def _shown(self, part: PrintedPart, block: PlannedBlock) -> Shown:
        def those(place: Place, heights: Sequence[float]) -> tuple[Markup, ...]:
            keys = [key for key, stands in self._standing[part.name].items() if stands == place]
            width = self._width(part, place)
            return tuple(
                self._with_name(key, self._image(picture))
                for key, height in zip(keys, heights, strict=True)
                for picture in self.drawer.pictures(key, width, height - self._named_high(key))
            )

        return Shown(
            part.name,
            part.heading,
            part.words[: block.beside],
            part.words[block.beside :],
            part.across,
            those("beside", block.pictures),
            Markup("").join(one for one, _ in self._strip(part)),
            f"{block.column:.3f}" if block.column else "",
            those("under", block.under),
            those("spread", block.spread),
        )

    def _with_name(self, key: str, image: Markup) -> Markup:
        return self.writer.say("named", self._name(key), image) if self._name(key) else image

    def _image(self, picture: Picture) -> Markup:
        address = f"{len(self.memory) + 1}.svg"
        self.memory[address] = picture.svg
        return Markup('<figure><img src="mem:{}" alt="{}" style="width:{:.4f}in;height:{:.4f}in"></figure>').format(
            address, picture.alt, picture.width, picture.height
        )
