"""Layers of cloth under the needle where edges meet: the layers that each edge brings come in, thick places go out.

Not counted: joins of breadths and lengths, which are pressed open, and ties and straps, which are pinned beside a tuck.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.making_up.thing import Edge, Seam, Thing
from generator.errors import Place

HEMMED = 3
"""A hem turned twice, met at its end by a seam that crosses it."""
FOLDED = 2
"""Piping without its cord, which lies beside the needle, and a tie: a strip folded lengthwise."""
BINDING = 4
"""A binding four times as wide as it finishes: two layers on either side of the edge in it."""


@dataclass(frozen=True, slots=True)
class ThickPlace:
    """A place where cloth lies over cloth: at an edge of a piece, or in its rows where ``edge`` names none.

    ``shares`` tells how many layers each piece brings, the piece itself first.
    """

    edge: Edge
    shares: tuple[tuple[str, int], ...]
    place: Place | None = None

    @property
    def layers(self) -> int:
        """All layers of cloth under the needle [-]."""
        return sum(layers for _, layers in self.shares)


def lap_layers(lap: Fraction, hem: Fraction) -> int:
    """Return the layers of two hemmed edges that lie one over the other, met by a seam that crosses them.

    The hem of one lies on the other's single cloth; where the lap is less than both hems, on the other's hem.

    Parameters
    ----------
    lap : Fraction
        How far they lie over each other [in].
    hem : Fraction
        Width of either hem, turned twice [in].

    Returns
    -------
    int
        Layers of cloth [-].

    Examples
    --------
    A hem of 1 in: 3 + 1 in a lap of 4 in, 3 + 3 in one of 1 1/2 in.

    >>> lap_layers(Fraction(4), Fraction(1)), lap_layers(Fraction(3, 2), Fraction(1))
    (4, 6)

    References
    ----------
    Derived in the docstring above.
    """
    return HEMMED + (HEMMED if lap < 2 * hem else 1)


def thick_places(thing: Thing, layers_at: Callable[[Edge], int]) -> tuple[ThickPlace, ...]:
    """Return what lies at every edge of a panel that meets others, and at the edges that meet without a panel.

    Pieces that are sewn to one edge in turn lie on each other there; those that one seam sets in a row, and copies of
    one piece, lie beside each other, and the thickest of them counts.

    Parameters
    ----------
    thing : Thing
        With the pairs of its seams.
    layers_at : Callable
        The layers that a piece brings to a seam at one of its edges, at their thickest [-].

    Returns
    -------
    tuple of ThickPlace
        In the order of the seams.
    """
    brought: dict[Edge, dict[int, tuple[str, int]]] = {}
    for seam in thing.seams:
        for own, other in (both for pair in seam.pairs for both in (pair, pair[::-1])):
            if not _counts_from(own, other, seam, thing):
                continue
            at_edge = brought.setdefault(own, {})
            share = (other[0], layers_at(other))
            same = next((number for number, (piece, _) in at_edge.items() if piece == other[0]), seam.number)
            at_edge[same] = max(at_edge.get(same, share), share, key=lambda one: one[1])
    return tuple(
        ThickPlace(edge, ((edge[0], layers_at(edge)), *shares.values()), thing.seams[max(shares)].place)
        for edge, shares in brought.items()
    )


def _counts_from(own: Edge, other: Edge, seam: Seam, thing: Thing) -> bool:
    """Whether what lies at an edge is all that meets there: a panel's, else a side; a band has two long edges."""
    if thing.parts[own[0]].is_panel:
        return True
    return not any(thing.parts[name].is_panel for name in seam.pieces) and (own[1] != "edge" or other[1] == "edge")
