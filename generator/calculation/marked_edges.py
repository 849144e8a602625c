"""The edges on which fold marks stand: a panel comes in, where those edges lie and how long they are goes out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import Panel
from generator.lengths import Edition, say_length


def marked_edges(panel: Panel, edition: Edition, *, cross: bool = False) -> str:
    """Return the two edges that bear the marks of a set of tucks, by where they lie on the panel and how long they are.

    Tucks run from one of them to the other, so the marks stand on edges as long as the cloth is cut across the tucks,
    whichever way the panel is longer.
    """
    sides = ("left", "right") if cross else ("top", "bottom")
    marked = panel.cross if cross else panel.across
    length = marked.cut if marked is not None else Fraction(0)
    return f"the {sides[0]} and the {sides[1]} edge, {say_length(length, edition)} each"
