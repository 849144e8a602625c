"""The pictures of a handout: a worksheet and a width come in, how high each may be and the drawn picture go out."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from typing import Literal

from generator.calculation.worked_project import Worksheet
from generator.drawing.catalogue import draw, draw_sized, figure_keys, heights, sized_keys
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style

Place = Literal["beside", "under", "spread"]
"""Where a picture stands: beside the words, below them in their column, or across the page."""
BESIDE: tuple[Place, ...] = ("beside",)
_RUN_ACROSS = ("assembly ", "ruling ")
STAYS = ("turns ",)
"""What stands at the machine: it keeps its place, and its act is never parted by turning a leaf."""
HIGHEST = 215.0
"""How high a picture may be, so that a page holds it with a heading [mm]."""


@dataclass(slots=True)
class Drawer:
    """Draws the pictures of one worksheet in one style; what was drawn is kept, for another paper asks again."""

    worksheet: Worksheet
    style: Style
    _there: frozenset[str] = field(init=False)
    _sized: frozenset[str] = field(init=False)
    _whole: dict[str, tuple[Picture, ...]] = field(init=False, default_factory=dict)
    _drawn: dict[tuple[str, DrawnSize], Picture] = field(init=False, default_factory=dict)
    _heights: dict[tuple[str, float], Heights] = field(init=False, default_factory=dict)

    def __post_init__(self) -> None:
        """Ask once which pictures there are."""
        self._sized = frozenset(sized_keys(self.worksheet))
        self._there = self._sized | set(figure_keys(self.worksheet))

    def shown(self, *keys: str) -> tuple[str, ...]:
        """Return which of some keys have a picture, each once."""
        return tuple(dict.fromkeys(key for key in keys if key in self._there))

    def heights(self, key: str, width: float) -> Heights:
        """Return how high a picture is at a width, least, as drawn by itself and at most [mm]."""
        if (key, width) not in self._heights:
            self._heights[key, width] = self._measured(key, width)
        return self._heights[key, width]

    def _measured(self, key: str, width: float) -> Heights:
        if key in self._sized:
            found = heights(self.worksheet, key, self.style, width)
            return Heights(*(min(height, HIGHEST) for height in (found.least, found.natural, found.greatest)))
        high = sum(self._fitted(picture, width).height for picture in self._unsized(key)) * MILLIMETRES
        return Heights(high, high, high)

    def pictures(self, key: str, width: float, height: float) -> tuple[Picture, ...]:
        """Return a picture at a width and a height [mm]; one that is drawn at one size only is fitted in."""
        if key not in self._sized:
            return tuple(self._fitted(picture, width) for picture in self._unsized(key))
        # One that is higher than a page at its least is the only picture that is made smaller after it was drawn.
        least = heights(self.worksheet, key, self.style, width).least
        size = DrawnSize(width, max(height, least))
        if (key, size) not in self._drawn:
            self._drawn[key, size] = draw_sized(self.worksheet, key, self.style, size)
        drawn, smaller = self._drawn[key, size], min(1.0, height / least)
        return (replace(drawn, width=drawn.width * smaller, height=drawn.height * smaller),)

    def _unsized(self, key: str) -> tuple[Picture, ...]:
        if key not in self._whole:
            self._whole[key] = draw(self.worksheet, key, self.style)
        return self._whole[key]

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
