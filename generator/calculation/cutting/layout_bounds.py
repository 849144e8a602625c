"""How short a layout can be at best: pieces come in, lengths that no layout beats go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.cutting.layout_kinds import Counts, StripTable
from generator.calculation.cutting.layout_weights import SCALE
from generator.calculation.worked import CutItem


def lower_bound(items: Sequence[CutItem], width: Fraction) -> Fraction:
    r"""Return a length of cloth that no layout can beat, however it is cut.

    The cloth must hold the area of all pieces, it must be as long as the longest piece, and two pieces that are both
    wider than half the cloth never lie beside each other:
    :math:`\max(\sum b_i l_i / W, \max l_i, \sum_{b_i > W/2} l_i)`.

    Parameters
    ----------
    items : sequence of CutItem
        Pieces, each no wider than the cloth in one way at least [in].
    width : Fraction
        Usable width, W [in].

    Returns
    -------
    Fraction
        The bound [in]; 0 without pieces.

    Notes
    -----
    A piece that may be turned counts with the way that needs less.

    Examples
    --------
    Three pieces of 24 by 10 on 44 in: area 720/44 = 16 4/11, but no two lie side by side, so 30.

    >>> lower_bound([CutItem("front", "Front", Fraction(24), Fraction(10), 3)], Fraction(44))
    Fraction(30, 1)

    References
    ----------
    Derived above.
    """
    area = longest = stacked = Fraction(0)
    for item in items:
        ways = [(item.across, item.along)] + ([(item.along, item.across)] if item.turnable else [])
        least = min((along for across, along in ways if across <= width), default=item.along)
        area += item.quantity * item.across * item.along
        longest = max(longest, least if item.quantity else Fraction(0))
        if all(2 * across > width for across, _ in ways):
            stacked += item.quantity * least
    return max(area / width, longest, stacked)


class StripBounds:
    """Bounds of the length of strips for any part of the pieces of one table."""

    def __init__(self, table: StripTable, weights: Sequence[tuple[int, ...]]) -> None:
        self._table = table
        self._weights = weights

    def heaviest(self, counts: Counts) -> tuple[tuple[int, ...], int]:
        """Return the weights that say most of some pieces, and what those pieces weigh together."""
        weighed = [
            (sum(count * each for count, each in zip(counts, weights, strict=True)), weights)
            for weights in self._weights
        ]
        total, weights = max(weighed)
        return weights, total

    def length(self, counts: Counts) -> int:
        """Return a length that no layout of strips beats [unit]."""
        _, total = self.heaviest(counts)
        return max(-(-total // SCALE), self._sliced(counts))

    def _sliced(self, counts: Counts) -> int:
        """Return the length if pieces could be split between strips, the highest always going first.

        The k-th strip, from the highest, cannot be lower than the piece that lies k - 1 cloth widths along such a row.
        """
        length = filled = strips = 0
        for place in self._table.hardest_first:
            if counts[place]:
                kind = self._table.kinds[place]
                filled += counts[place] * kind.narrowest
                begun = -(-filled // self._table.width)
                length += (begun - strips) * kind.lowest
                strips = begun
        return length
