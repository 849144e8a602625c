"""The pictures of a handout: a worksheet and a width come in, how high each may be and the drawn picture go out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Literal

from generator.calculation.worked_project import Worksheet
from generator.drawing.catalogue import (
    draw,
    draw_for_page,
    draw_sized,
    figure_keys,
    heights,
    page_keys,
    sized_keys,
)
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.rendering.page_svg import light

Place = Literal["beside", "under", "spread"]
"""Where a picture stands: beside the words, below them in their column, or across the page."""
BESIDE: tuple[Place, ...] = ("beside",)
_RUN_ACROSS = ("assembly ", "ruling ")
STAYS = ("turns ",)
"""What stands at the machine: it keeps its place, and its act is never parted by turning a leaf."""
HIGHEST = 215.0
"""How high a picture may be, so that a page holds it with a heading [mm]."""


@dataclass(frozen=True, slots=True)
class Drawn:
    """What was drawn of one worksheet in one style: it is added to, and may be kept from run to run.

    ``names`` are the keys of all its pictures, ``sized`` those that can be drawn at any size. ``heights`` and
    ``pictures`` are by key and size, ``pages`` as pages show them, by key.
    """

    names: tuple[str, ...]
    sized: tuple[str, ...]
    heights: dict[str, Heights] = field(default_factory=dict)
    pictures: dict[str, tuple[Picture, ...]] = field(default_factory=dict)
    pages: dict[str, Picture] = field(default_factory=dict)

    @property
    def number(self) -> int:
        """How much was drawn or measured."""
        return len(self.heights) + len(self.pictures) + len(self.pages)


def nothing_drawn(worksheet: Worksheet) -> Drawn:
    """Return which pictures a worksheet has, none of them drawn yet."""
    return Drawn(figure_keys(worksheet), sized_keys(worksheet))


class Drawer:
    """Draws the pictures of one worksheet in one style; what was ``drawn`` is kept, for another paper asks again."""

    def __init__(self, worksheet: Worksheet, style: Style, drawn: Drawn | None = None) -> None:
        # What the pictures show is in their key; the texts of steps are not, so nothing may be drawn of them.
        self.worksheet, self.style = worksheet.wordless, style
        self.drawn = drawn or nothing_drawn(worksheet)

    def shown(self, *keys: str) -> tuple[str, ...]:
        """Return which of some keys have a picture, each once."""
        return tuple(dict.fromkeys(key for key in keys if key in self.drawn.names))

    def for_pages(self, kinds: tuple[str, ...] = ("",)) -> dict[str, Picture]:
        """Return every picture of any size whose key begins with one of ``kinds``, by its key, as a page shows it.

        There is none of the surface: it is large, and the page of the project shows it as cloth.
        """
        wanted = [key for key in page_keys(self.drawn.names) if key.startswith(kinds)]
        return {key: self._for_page(key) for key in wanted if not key.startswith("surface ")}

    def _for_page(self, key: str) -> Picture:
        if key not in self.drawn.pages:
            self.drawn.pages[key] = light(draw_for_page(self.worksheet, key, self.style))
        return self.drawn.pages[key]

    def heights(self, key: str, width: float) -> Heights:
        """Return how high a picture is at a width, least, as drawn by itself and at most [mm]."""
        if key in self.drawn.sized:
            found = self._measured(key, width)
            return Heights(*(min(height, HIGHEST) for height in (found.least, found.natural, found.greatest)))
        high = sum(self._fitted(picture, width).height for picture in self._unsized(key)) * MILLIMETRES
        return Heights(high, high, high)

    def _measured(self, key: str, width: float) -> Heights:
        name = f"{key}, {width} mm"
        if name not in self.drawn.heights:
            self.drawn.heights[name] = heights(self.worksheet, key, self.style, width)
        return self.drawn.heights[name]

    def pictures(self, key: str, width: float, height: float) -> tuple[Picture, ...]:
        """Return a picture at a width and a height [mm]; one that is drawn at one size only is fitted in."""
        if key not in self.drawn.sized:
            return tuple(self._fitted(picture, width) for picture in self._unsized(key))
        # One that is higher than a page at its least is the only picture that is made smaller after it was drawn.
        least = self._measured(key, width).least
        size = DrawnSize(width, max(height, least))
        name = f"{key}, {size.width} x {size.height} mm"
        if name not in self.drawn.pictures:
            self.drawn.pictures[name] = (draw_sized(self.worksheet, key, self.style, size),)
        (drawn,), smaller = self.drawn.pictures[name], min(1.0, height / least)
        return (replace(drawn, width=drawn.width * smaller, height=drawn.height * smaller),)

    def _unsized(self, key: str) -> tuple[Picture, ...]:
        if key not in self.drawn.pictures:
            self.drawn.pictures[key] = draw(self.worksheet, key, self.style)
        return self.drawn.pictures[key]

    @staticmethod
    def _fitted(picture: Picture, width: float) -> Picture:
        factor = min(1.0, width / MILLIMETRES / picture.width)
        return replace(picture, width=picture.width * factor, height=picture.height * factor)


def may_stand(key: str, least: float) -> tuple[Place, ...]:
    """Return where a picture may stand that is so high at its least beside the words [mm].

    The one that stands at the machine keeps its place, unless only the width of the page holds it.
    """
    if key.startswith(STAYS):
        return BESIDE if least < HIGHEST else ("spread",)
    return ("beside", "under", "spread") if key.startswith(_RUN_ACROSS) else ("beside", "under")
