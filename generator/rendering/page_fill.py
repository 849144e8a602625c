"""How a sheet's steps fill their pages: a sheet as it was set comes in, better places for its figures go out.

A tall figure that has no room left on its page goes to the next one and leaves white behind. What a sheet holds is read
as it was set, line by line; then it is tried out in thought with figures before the text of their step, or drawn
smaller where letters are large, and what wastes least is wanted.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise
from typing import Any, Literal

from weasyprint import Document
from weasyprint.formatting_structure import boxes

PIXELS = 96
WHITE_ENOUGH = 0.15
_BREATH = 0.1
_TRIED = 12
_EARLY, _SMALLER = 0.3, 4.0
_HEAD_TAGS, _HEAD_CLASSES = ("h2", "h3", "h4", "caption", "thead"), ("facts", "caution", "care")

Part = Literal["head", "text", "figure", "rest"]


@dataclass(frozen=True, slots=True)
class Unit:
    """A line, a row of a table or a figure: where it stood [in] and what it belongs to.

    ``step`` is 0 outside steps; units with the same ``whole`` (other than 0) may not be parted by the end of a page.
    """

    part: Part
    step: int
    page: int
    top: float
    bottom: float
    whole: int = 0

    @property
    def high(self) -> float:
        """Its height [in]."""
        return self.bottom - self.top


@dataclass(frozen=True, slots=True)
class Places:
    """How many figures stand before the text of their step, and how much smaller a step's figures are, by step."""

    early: Mapping[int, int] = field(default_factory=dict)
    smaller: Mapping[int, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class _Trial:
    """Some steps placed: how far down the page they reach [in], what they waste, and the choices made."""

    down: float
    cost: float
    places: Places


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


def better_places(document: Document, scales: Sequence[float]) -> Places | None:
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
    units = [unit for unit in units_of(document) if unit.page > 1]
    if not units:
        return None
    spaced = _spaced(units)
    high = _page_height(document)
    trials = [_Trial(units[0].top, 0.0, Places())]
    for group in _grouped(spaced):
        tried = [found for trial in trials for found in _tries(trial, group, scales, high)]
        trials = sorted(tried, key=lambda trial: trial.cost)[:_TRIED]
    best = trials[0].places
    return best if best.early or best.smaller else None


def units_of(document: Document) -> list[Unit]:
    """Return the lines, rows and figures of a sheet in reading order, measured from the top of each page's text."""
    found: list[Unit] = []
    for number, page in enumerate(document.pages, 1):
        box = page._page_box  # the library tells of places only here
        body = next(child for child in box.children if not isinstance(child, boxes.MarginBox))
        top = box.content_box_y()
        found += [_measured(unit, top, number) for unit in _walked(body, "text", 0, 0)]
    return found


def _measured(unit: Unit, top: float, page: int) -> Unit:
    down = ((unit.top - top) / PIXELS, (unit.bottom - top) / PIXELS)
    return Unit(unit.part, unit.step, page, *down, unit.whole)


def _walked(box: Any, part: Part, step: int, whole: int) -> Iterator[Unit]:
    """Return the units below a box, in pixels, without those that float beside others."""
    if isinstance(box, boxes.LineBox | boxes.TableRowBox):
        yield Unit(part, step, 0, box.position_y, box.position_y + box.height, whole)
        return
    if box.element_tag == "figure" and not box.is_floated():
        yield Unit("figure", step, 0, box.border_box_y(), box.border_box_y() + box.border_height(), whole)
        return
    part, step = _belonging(box, part, step)
    if not whole and box.style["break_inside"] in ("avoid", "avoid-page"):
        whole = id(box)
    for child in getattr(box, "children", ()):
        if not child.is_floated():
            yield from _walked(child, part, step, whole)


def _belonging(box: Any, part: Part, step: int) -> tuple[Part, int]:
    """Return what the content of a box is, and the number of its step."""
    element = box.element
    if element is None:
        return part, step
    classes = element.get("class", "").split()
    name = element.get("id", "")
    if name.startswith("step-"):
        return "text", int(name.removeprefix("step-"))
    if box.element_tag in _HEAD_TAGS or any(told in classes for told in _HEAD_CLASSES):
        return "head", step
    return ("rest" if "rest" in classes else part), step


def _page_height(document: Document) -> float:
    return float(document.pages[-1]._page_box.height) / PIXELS


@dataclass(frozen=True, slots=True)
class _Spaced:
    """A unit with the room between it and what stood before it [in]."""

    unit: Unit
    gap: float


def _spaced(units: Sequence[Unit]) -> list[_Spaced]:
    gaps = [0.0]
    for before, unit in pairwise(units):
        gaps.append(max(0.0, unit.top - before.bottom) if unit.page == before.page else _BREATH)
    return [_Spaced(unit, gap) for unit, gap in zip(units, gaps, strict=True)]


def _grouped(units: Sequence[_Spaced]) -> list[list[_Spaced]]:
    """Return the units of each step together, and those between steps."""
    groups: list[list[_Spaced]] = []
    for spaced in units:
        if not groups or groups[-1][-1].unit.step != spaced.unit.step:
            groups.append([])
        groups[-1].append(spaced)
    return groups


def _tries(trial: _Trial, group: Sequence[_Spaced], scales: Sequence[float], high: float) -> Iterator[_Trial]:
    """Return what comes of a step in every way of placing its figures."""
    step = group[0].unit.step
    figures = [spaced for spaced in group if spaced.unit.part == "figure"] if step else []
    for early in range(len(figures) + 1):
        for scale in scales if figures else scales[:1]:
            order = _ordered(group, figures[:early])
            down, waste = _filled(trial.down, order, scale if step else 1.0, high)
            places = _chosen(trial.places, step, early, scale)
            yield _Trial(down, trial.cost + waste + _EARLY * early + _SMALLER * (1 - scale), places)


def _chosen(places: Places, step: int, early: int, scale: float) -> Places:
    return Places(
        {**places.early, step: early} if early else places.early,
        {**places.smaller, step: scale} if scale < 1 else places.smaller,
    )


def _ordered(group: Sequence[_Spaced], early: Sequence[_Spaced]) -> list[_Spaced]:
    heads = [spaced for spaced in group if spaced.unit.part == "head"]
    others = [spaced for spaced in group if spaced.unit.part != "head" and spaced not in early]
    return [*heads, *early, *others] if early else list(group)


def _filled(down: float, order: Sequence[_Spaced], scale: float, high: float) -> tuple[float, float]:
    """Return how far down the page units reach, and the squares of the white [in2] that they leave behind."""
    waste = 0.0
    for block in _blocks(order):
        tall = sum(_height(spaced, scale) + spaced.gap for spaced in block)
        if down + tall > high and down > 0:
            waste += (high - down) ** 2
            down, tall = 0.0, tall - block[0].gap
        down += tall
        if down > high:
            down %= high
    return down, waste


def _height(spaced: _Spaced, scale: float) -> float:
    return spaced.unit.high * (scale if spaced.unit.part == "figure" else 1.0)


def _blocks(order: Sequence[_Spaced]) -> list[list[_Spaced]]:
    """Return what must stay together: a heading with what follows it, a figure with the line before it."""
    blocks: list[list[_Spaced]] = []
    for spaced in order:
        before = blocks[-1][-1].unit if blocks else None
        joins = before is not None and (
            before.part == "head"
            or (spaced.unit.whole and spaced.unit.whole == before.whole)
            or (spaced.unit.part == "figure" and before.part == "text")
        )
        if joins:
            blocks[-1].append(spaced)
        else:
            blocks.append([spaced])
    return blocks
