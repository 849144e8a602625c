"""How a sheet's steps fill their pages: a sheet as it was set comes in, better places for its figures go out.

A tall figure that has no room left on its page goes to the next one and leaves white behind. What a sheet holds is read
as it was set, line by line; then it is tried out in thought with figures further up in the text of their step, or drawn
smaller where letters are large, and what wastes least is wanted.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import groupby, pairwise, takewhile
from typing import Any, Literal

from generator.rendering.setter import Document, boxes

PIXELS = 96
WHITE_ENOUGH = 0.15
_BREATH = 0.1
_TRIED = 12  # a search in a beam: all ways of all steps together would be too many
_LITTLE = 1.0
_SHORT, _SPARE = 3, 0.1
_EARLY, _SMALLER = 0.3, 4.0
_HEAD_TAGS, _HEAD_CLASSES = ("h2", "h3", "h4", "caption", "thead"), ("facts", "caution", "care")
_REST_CLASSES = ("rest", "note")

Part = Literal["head", "text", "figure", "rest"]


@dataclass(frozen=True, slots=True)
class PageItem:
    """A line, a row of a table or a figure: where it stood [in] and what it belongs to.

    ``step`` is 0 outside steps; units with the same ``whole`` (other than 0) may not be parted by the end of a page.
    ``block`` tells apart what the text of a step is made of, ``paragraph`` each run of lines.
    """

    part: Part
    step: int
    page: int
    top: float
    bottom: float
    whole: int = 0
    block: int = 0
    paragraph: int = 0

    @property
    def high(self) -> float:
        """Its height [in]."""
        return self.bottom - self.top


@dataclass(frozen=True, slots=True)
class FigurePlaces:
    """Which figures do not stand below the text, and how much smaller a step's figures are, by step.

    ``early`` tells how many figures of a step stand further up, and below how many paragraphs of its text.
    """

    early: Mapping[int, tuple[int, int]] = field(default_factory=dict)
    smaller: Mapping[int, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Trial:
    """Some steps placed: how far down the page they reach [in], what they waste, and the choices made."""

    down: float
    cost: float
    places: FigurePlaces


def white_left(document: Document, first: int = 2) -> list[float]:
    """Return how much of each page from ``first`` on stays white at its foot [1], without the last page."""
    lowest: dict[int, float] = {}
    for unit in units_of(document):
        lowest[unit.page] = max(lowest.get(unit.page, 0.0), unit.bottom)
    high = _page_height(document)
    return [max(0.0, 1 - lowest.get(page, 0.0) / high) for page in range(first, len(document.pages))]


def wasted(document: Document) -> float:
    """Return what a sheet wastes: the squares of the white left, so that one great gap weighs more than many small."""
    return sum(share**2 for share in white_left(document))


def better_places(document: Document, scales: Sequence[float]) -> FigurePlaces | None:
    """Return where figures should stand instead, None where a sheet is well filled as it is.

    Parameters
    ----------
    document : Document
        A sheet as set, whose steps are elements with ids such as ``step-3``.
    scales : sequence of float
        How much smaller a figure may be drawn [1], 1 first.
    """
    if max(white_left(document), default=0.0) <= WHITE_ENOUGH:
        return None
    # Page 1 is the sheet for the cutting table, and ends where it ends.
    units = [unit for unit in units_of(document) if unit.page > 1]
    if not units:
        return None
    spaced = _spaced(units)
    high = _page_height(document)
    trials = [_Trial(units[0].top, 0.0, FigurePlaces())]
    for group in _grouped(spaced):
        tried = [found for trial in trials for found in _tries(trial, group, scales, high)]
        trials = sorted(tried, key=lambda trial: trial.cost)[:_TRIED]
    best = trials[0].places
    return best if best.early or best.smaller else None


def units_of(document: Document) -> list[PageItem]:
    """Return the lines, rows and figures of a sheet in reading order, measured from the top of each page's text."""
    found: list[PageItem] = []
    for number, page in enumerate(document.pages, 1):
        box = page._page_box  # the library tells of places only here
        body = next(child for child in box.children if not isinstance(child, boxes.MarginBox))
        top = box.content_box_y()
        found += [_measured(unit, top, number) for unit in _walked(body, PageItem("text", 0, 0, 0, 0))]
    return found


def _measured(unit: PageItem, top: float, page: int) -> PageItem:
    down = ((unit.top - top) / PIXELS, (unit.bottom - top) / PIXELS)
    return PageItem(unit.part, unit.step, page, *down, unit.whole, unit.block, unit.paragraph)


def _walked(box: Any, within: PageItem) -> Iterator[PageItem]:
    """Return the units below a box, in pixels, without those that float beside others."""
    if isinstance(box, boxes.LineBox | boxes.TableRowBox):
        yield replace(within, top=box.position_y, bottom=box.position_y + box.height)
        return
    if box.element_tag == "figure":
        yield replace(within, part="figure", top=box.position_y, bottom=box.position_y + box.margin_height())
        return
    within = _belonging(box, within)
    begins_step = box.element is not None and box.element.get("id", "").startswith("step-")
    for child in getattr(box, "children", ()):
        if not child.is_floated():
            inner = replace(within, paragraph=id(box.element))
            yield from _walked(child, replace(inner, block=id(child.element)) if begins_step else inner)


def _belonging(box: Any, within: PageItem) -> PageItem:
    """Return what the content of a box is, the number of its step and whether it may be parted."""
    if not within.whole and box.style["break_inside"] in ("avoid", "avoid-page"):
        within = replace(within, whole=id(box))
    if box.element is None:
        return within
    classes, name = box.element.get("class", "").split(), box.element.get("id", "")
    if name.startswith("step-"):
        return replace(within, step=int(name.removeprefix("step-")))
    if box.element_tag in _HEAD_TAGS or any(told in classes for told in _HEAD_CLASSES):
        return replace(within, part="head")
    return replace(within, part="rest") if any(told in classes for told in _REST_CLASSES) else within


def _page_height(document: Document) -> float:
    return float(document.pages[-1]._page_box.height) / PIXELS


@dataclass(frozen=True, slots=True)
class _Spaced:
    """A unit with the room between it and what stood before it [in]; ``free`` may begin a page by itself."""

    unit: PageItem
    gap: float
    free: bool = False


def _spaced(units: Sequence[PageItem]) -> list[_Spaced]:
    gaps = [0.0]
    for before, unit in pairwise(units):
        gaps.append(max(0.0, unit.top - before.bottom) if unit.page == before.page else _BREATH)
    return [_Spaced(unit, gap) for unit, gap in zip(units, gaps, strict=True)]


def _grouped(units: Sequence[_Spaced]) -> list[list[_Spaced]]:
    """Return the units of each step together, with the headings above it, and those between steps."""
    groups: list[list[_Spaced]] = []
    for spaced in units:
        if not groups or groups[-1][-1].unit.step != spaced.unit.step:
            # A heading is set before its step is known; it goes over to the step below it.
            above = list(takewhile(lambda found: found.unit.part == "head", reversed(groups[-1]))) if groups else []
            if above:
                groups[-1] = groups[-1][: -len(above)]
            groups.append(above[::-1])
        groups[-1].append(spaced)
    return [group for group in groups if group]


def _tries(trial: _Trial, group: Sequence[_Spaced], scales: Sequence[float], high: float) -> Iterator[_Trial]:
    """Return what comes of a step as it is, and where that wastes much, in every other way of placing its figures."""
    step = group[-1].unit.step
    down, waste = _filled(trial.down, group, 1.0, high)
    yield _Trial(down, trial.cost + waste, trial.places)
    figures = [spaced for spaced in group if spaced.unit.part == "figure"] if step else []
    if waste <= _LITTLE or not figures:
        return
    blocks = list(dict.fromkeys(spaced.unit.block for spaced in group if spaced.unit.part == "text"))
    ways = [(0, 0), *((count, after) for count in {1, len(figures)} for after in range(len(blocks)))]
    for count, after in ways:
        order = _ordered(group, figures[:count], blocks[:after])
        cost = _EARLY * count * (1 - after / max(1, len(blocks)))
        for scale in scales:
            down, waste = _filled(trial.down, order, scale, high)
            places = _chosen(trial.places, step, (count, after), scale)
            yield _Trial(down, trial.cost + waste + cost + _SMALLER * (1 - scale), places)


def _chosen(places: FigurePlaces, step: int, way: tuple[int, int], scale: float) -> FigurePlaces:
    return FigurePlaces(
        {**places.early, step: way} if way[0] else places.early,
        {**places.smaller, step: scale} if scale < 1 else places.smaller,
    )


def _ordered(group: Sequence[_Spaced], early: Sequence[_Spaced], before: Sequence[int]) -> list[_Spaced]:
    """Return a step with some figures below some paragraphs of its text."""
    if not early:
        return list(group)
    parted = [replace(spaced, free=bool(before)) for spaced in early]
    heads = [spaced for spaced in group if spaced.unit.part == "head"]
    text = [spaced for spaced in group if spaced.unit.part != "head" and spaced not in early]
    above = [spaced for spaced in text if spaced.unit.part == "text" and spaced.unit.block in before]
    return [*heads, *above, *parted, *(spaced for spaced in text if spaced not in above)]


def _filled(down: float, order: Sequence[_Spaced], scale: float, high: float) -> tuple[float, float]:
    """Return how far down the page units reach, and the squares of the white [in2] that they leave behind."""
    waste = 0.0
    for block in _blocks(order):
        tall = sum(_height(spaced, scale) + spaced.gap for spaced in block)
        spare = _SPARE if block[-1].unit.part == "figure" else 0.0
        # At the top of a page nothing is gained by going on to the next one, however tall it is.
        if down + tall + spare > high and down > 0:
            waste += (high - down) ** 2
            down, tall = 0.0, tall - block[0].gap  # room above a block is left out at the top of a page
        down += tall
        if down > high:
            down %= high  # a table longer than a page goes on over several
    return down, waste


def _height(spaced: _Spaced, scale: float) -> float:
    return spaced.unit.high * (scale if spaced.unit.part == "figure" else 1.0)


def _blocks(order: Sequence[_Spaced]) -> list[list[_Spaced]]:
    """Return what must stay together: a heading with what follows it, a figure with the end of the text before it."""
    blocks: list[list[_Spaced]] = []
    for lines in _lines_together(order):
        first, before = lines[0], blocks[-1][-1].unit if blocks else None
        joins = before is not None and (
            before.part == "head"
            or (first.unit.whole and first.unit.whole == before.whole)
            or (first.unit.part == "figure" and before.part == "text" and not first.free)
        )
        if joins:
            blocks[-1].extend(lines)
        else:
            blocks.append(lines)
    return blocks


def _lines_together(order: Sequence[_Spaced]) -> Iterator[list[_Spaced]]:
    """Return lines that no page parts: a short paragraph, the first two and the last two of a longer one."""
    for _, found in groupby(order, key=lambda spaced: (spaced.unit.part, spaced.unit.paragraph)):
        lines = list(found)
        if lines[0].unit.part != "text" or len(lines) <= _SHORT:
            yield from [lines] if lines[0].unit.part == "text" else ([line] for line in lines)
        else:
            yield lines[:2]
            yield from ([line] for line in lines[2:-2])
            yield lines[-2:]
