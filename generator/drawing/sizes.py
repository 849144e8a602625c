"""How large a drawing is wanted, and how high it can be: millimetres, as whoever plans a page thinks of them."""

from __future__ import annotations

from dataclasses import dataclass

MILLIMETRES = 25.4  # in an inch
PAGE_WIDTH = 93.0  # of a figure on a handout; 9 pt on it are 12 px on a screen of 360 px


@dataclass(frozen=True, slots=True)
class DrawnSize:
    """The width and height of a drawing on paper [mm]."""

    width: float
    height: float

    @property
    def inches(self) -> tuple[float, float]:
        """The same in inches."""
        return self.width / MILLIMETRES, self.height / MILLIMETRES


@dataclass(frozen=True, slots=True)
class Heights:
    """How high a drawing can be at a width [mm]: at least, best, and where more would show nothing more."""

    least: float
    natural: float
    greatest: float

    @classmethod
    def of_inches(cls, least: float, natural: float = 0.0, greatest: float = 0.0) -> Heights:
        """Return heights given in inches; what is left out is as the one before it."""
        natural = max(least, natural)
        return cls(*(height * MILLIMETRES for height in (least, natural, max(natural, greatest))))
