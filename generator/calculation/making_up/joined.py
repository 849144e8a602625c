"""What one step joins, as its layers lie under the needle: plain, frozen, exact; no sums here."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from generator.calculation.making_up.thing import Edge

Doing = Literal["sew", "lay", "turn out"]


@dataclass(frozen=True, slots=True)
class JoinLayer:
    """One layer: a piece, or pieces in a row that are sewn to each other already.

    It lies level with the side ``at`` of the lowest layer, by its own side ``own``; both are empty for the lowest.
    ``right_side_up`` tells which side of the cloth is seen from above.
    """

    pieces: tuple[str, ...]
    right_side_up: bool
    at: str = ""
    own: str = ""


@dataclass(frozen=True, slots=True)
class Opening:
    """An opening that is left in a seam: the edge of a lower piece in which it lies, and how long it is [in].

    It lies at an ``end`` of its edge, such as the top of the left one, or in the middle where that is empty. One that
    is ``zipped`` has its zip, which is opened before the work is turned.
    """

    edge: Edge
    length: Fraction
    end: str = ""
    zipped: bool = False


@dataclass(frozen=True, slots=True)
class Joined:
    """What a step does with layers that lie on each other.

    ``sorts`` are those of its seams, in the order of the file; none where pieces are only laid on each other.
    ``layers`` are told from below. ``sides`` are those of the whole at which it is sewn, ``edges`` the edges of the
    lowest layer that lie there. ``opening`` is closed later, ``gaps`` stay open for good. ``folded`` tells that both
    layers are one piece, folded. ``turned`` tells that the step turns the work right side out when it is sewn; ``does``
    is 'turn out' where it does nothing else.
    """

    sorts: tuple[str, ...]
    layers: tuple[JoinLayer, ...]
    sides: tuple[str, ...] = ()
    edges: tuple[Edge, ...] = ()
    opening: Opening | None = None
    folded: bool = False
    turned: bool = False
    does: Doing = "sew"
    gaps: tuple[Opening, ...] = ()

    @property
    def turned_in(self) -> bool:
        """Whether the upper piece is turned to the inside when it is sewn."""
        return "facing" in self.sorts

    @property
    def slipped_in(self) -> bool:
        """Whether a bag, right side out, is slipped into its lining, which is wrong side out."""
        return "tops" in self.sorts

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces of all layers, each once, from below."""
        return tuple(dict.fromkeys(piece for layer in self.layers for piece in layer.pieces))


@dataclass(frozen=True, slots=True)
class Attached:
    """A piece that is sewn or basted onto another: at an edge of it, or on its face where the edge has no name."""

    piece: str
    onto: Edge
