"""Measures of widths: pieces come in, what they must waste at least and how short no layout can be goes out.

A measure f gives every width a worth that never falls, with f(x) + f(y) <= f(x + y). Along every line across the cloth
the pieces side by side are worth f(W) at most, so no layout is shorter than the sum of f(across) x along over all
pieces, divided by f(W); and what a strip is worth beyond its pieces is waste that nothing wins back.
"""

from __future__ import annotations

from collections.abc import Callable
from operator import mul

from generator.calculation.cutting.layout_pieces import LayoutPieces


class WidthMeasure:
    """One measure on the pieces of one cloth: ``needs`` is what a piece of each kind is worth at least."""

    def __init__(self, of: Callable[[int], int], pieces: LayoutPieces) -> None:
        self._of = of
        self._known: dict[int, int] = {}
        self.whole = of(pieces.width)
        self.needs = tuple([min([along * of(across) for along, across in kind.ways]) for kind in pieces.kinds])
        self.total: int = sum(map(mul, self.needs, pieces.counts))

    def of(self, across: int) -> int:
        """Return the worth of a width."""
        if across not in self._known:
            self._known[across] = self._of(across)
        return self._known[across]

    def spare(self, length: int) -> int:
        """Return what a layout of a length may waste."""
        return self.whole * length - self.total


def measures(pieces: LayoutPieces) -> tuple[WidthMeasure, WidthMeasure]:
    """Return the plain width, and the measure that asks for the longest cloth.

    Parameters
    ----------
    pieces : LayoutPieces
        The pieces, one at least.

    Returns
    -------
    tuple of WidthMeasure
        The two measures; of equally good ones the plain width, else the first.

    Examples
    --------
    Three pieces of 6 x 5 on cloth of 10: their area asks for 9, but no two lie side by side, so they need 15.

    >>> from generator.calculation.cutting.layout_pieces import LayoutWay, kind_of
    >>> plain, best = measures(LayoutPieces([kind_of([LayoutWay(5, 6)], 10)], [3], 10))
    >>> -plain.spare(0) / plain.whole, -best.spare(0) / best.whole
    (9.0, 15.0)

    References
    ----------
    Dual feasible functions, after S. P. Fekete & J. Schepers, *Mathematics of Operations Research* 29, 2004 (from
    memory).
    """
    plain, *others = all_measures(pieces)
    best = plain
    for measure in others:
        if measure.total * best.whole > best.total * measure.whole:
            best = measure
    return plain, best


def all_measures(pieces: LayoutPieces) -> list[WidthMeasure]:
    """Return every measure that may be the best one, the plain width first.

    Parameters
    ----------
    pieces : LayoutPieces
        The pieces.

    Returns
    -------
    list of WidthMeasure
        Measures that count parts of the width, and measures that tell great widths from small ones.
    """
    width = pieces.width
    acrosses = {way.across for kind in pieces.kinds for way in kind.ways}
    # A piece of more than half the width counts whole where the limit is a little more than what it leaves beside.
    limits = sorted({limit for across in acrosses for limit in (across, width - across + 1) if 2 * limit <= width})
    counted = [_steps(width, steps) for steps in range(1, 7)]
    parted = [_great_or_small(width, limit) for limit in limits]
    return [WidthMeasure(of, pieces) for of in (lambda across: across, *counted, *parted)]


def _steps(width: int, steps: int) -> Callable[[int], int]:
    """Return the measure that counts whole parts of the cloth, each one of ``steps`` + 1."""

    def of(across: int) -> int:
        reached, over = divmod((steps + 1) * across, width)
        return reached * width if over else steps * across

    return of


def _great_or_small(width: int, limit: int) -> Callable[[int], int]:
    """Return the measure that makes nothing of widths below a limit, and the whole of widths that leave less beside."""

    def of(across: int) -> int:
        return width if across > width - limit else across if across >= limit else 0

    return of


def least_length(pieces: LayoutPieces) -> int:
    """Return a length that no layout of any sort can beat.

    Parameters
    ----------
    pieces : LayoutPieces
        The pieces.

    Returns
    -------
    int
        The best measure's length, or that of the longest piece [unit].

    Examples
    --------
    >>> from generator.calculation.cutting.layout_pieces import LayoutWay, kind_of
    >>> least_length(LayoutPieces([kind_of([LayoutWay(5, 6)], 10)], [3], 10)), least_length(LayoutPieces([], [], 10))
    (15, 0)
    """
    if not pieces.kinds:
        return 0
    longest = max(kind.ways[0].along for kind in pieces.kinds)
    return max(longest, *(-(measure.spare(0) // measure.whole) for measure in measures(pieces)))
