"""Wishes and panels that the tests of tucks share; lengths are written as on a ruler: ``inches("1 3/8")``."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.panel.marks import laid_out
from generator.calculation.panel.wish import TuckWish
from generator.calculation.worked import End, TuckSet
from generator.lengths import read_length

NONE = Fraction(0)


def inches(text: str) -> Fraction:
    return read_length(text, "in")


def seam(text: str = "1/2") -> End:
    return End("seam", inches(text))


def even_panel(count: int, depth: str, pitch: str, ends: tuple[End, End], margins: tuple[str, str]) -> TuckSet:
    """Lay out equal tucks that hide twice their depth."""
    deep = inches(depth)
    pitches = (inches(pitch),) * max(count - 1, 0)
    return laid_out((deep,) * count, (2 * deep,) * count, pitches, ends, (inches(margins[0]), inches(margins[1])))


def wish_of(finished: str, depth: str, spacing: str, margin: tuple[str, str], **others: object) -> TuckWish:
    """Return a wish with seams of 1/2 in and one range for both margins; anything else by its name."""
    bounds = (inches(margin[0]), inches(margin[1]))
    wish = TuckWish(inches(finished), inches(depth), inches(spacing), (seam(), seam()), bounds, bounds)
    return replace(wish, **others)
