"""What a thing is made of, as its making up sees it: parts, seams and closings; plain, frozen, no sums here.

An edge is a piece and the name of its side: ('front', 'top').
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from generator.errors import Place

Edge = tuple[str, str]
SIDES = ("left", "right", "top", "bottom")
NEIGHBOURS: Mapping[str, tuple[str, ...]] = {"top": ("left", "right"), "bottom": ("left", "right")}


@dataclass(frozen=True, slots=True)
class Component:
    """One piece of the thing.

    ``kind`` is what a message calls it and what a technique may be for. ``ends`` is the finish of each edge ('seam',
    'hem', 'casing' ...). ``facts`` are what its making depends on: the nature of its kind (``NATURES``), and of this
    one 'breadths', 'tucks', 'cross tucks', 'rows', 'outline', 'own edges', 'lengths', 'bias', 'later', 'fused',
    'sewn in', 'quilted'. ``broad`` are hems that a rod can run through, ``curved`` edges that are not straight.
    ``waits_for`` are the panels that it is worked out from, where it is cut after them. ``lies_on`` is the piece that
    a copy is fixed to, ``sewn_on`` the one whose face a pocket is sewn on, ``blocks`` the one that a grid is joined
    of. ``neaten`` tells by edge how raw edges are kept from fraying. ``drawn`` has its edges that are 'gathered'
    or 'pleated' to what they meet. ``across`` and ``along`` are its finished size [in].
    """

    name: str
    kind: str
    quantity: int = 1
    cloth: str = ""
    ends: Mapping[str, str] = field(default_factory=dict)
    facts: frozenset[str] = frozenset()
    broad: tuple[str, ...] = ()
    curved: tuple[str, ...] = ()
    waits_for: tuple[str, ...] = ()
    lies_on: str = ""
    sewn_on: str = ""
    blocks: str = ""
    frays: bool = True
    neaten: Mapping[str, str] = field(default_factory=dict)
    drawn: Mapping[str, str] = field(default_factory=dict)
    across: Fraction = Fraction(0)
    along: Fraction = Fraction(0)
    place: Place | None = None

    def neat_way(self, side: str) -> str:
        """Return how a raw edge is kept from fraying: as it says itself, else both sides, else all edges."""
        both = side.removeprefix("left ").removeprefix("right ")
        return self.neaten.get(side) or self.neaten.get(both) or self.neaten.get("all") or "zigzag"

    @property
    def is_panel(self) -> bool:
        """Whether it is a tucked panel."""
        return "panel" in self.facts


@dataclass(frozen=True, slots=True)
class Seam:
    """Edges that meet: ``pairs`` are the edges that lie on each other, one by one. ``sort`` tells how it is sewn."""

    number: int
    join: tuple[Edge, ...]
    to: tuple[Edge, ...]
    pairs: tuple[tuple[Edge, Edge], ...] = ()
    sort: str = "plain"
    place: Place | None = None

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces that it joins, those of its first side first, each once."""
        return pieces_of(self.join + self.to)

    @property
    def edges(self) -> frozenset[Edge]:
        """Every edge that takes part in it."""
        return frozenset(edge for pair in self.pairs for edge in pair)


@dataclass(frozen=True, slots=True)
class Closing:
    """Buttons or the like, that close one edge onto another, over an ``overlap`` [in].

    ``facts`` are what its making depends on (``OF_CLOSINGS``). A zip that is told has a ``length`` [in]; ``tabs`` is
    the piece at its ends. ``strips`` are ties or loops.
    """

    number: int
    kind: str
    on: tuple[Edge, ...]
    onto: tuple[Edge, ...]
    place: Place | None = None
    overlap: Fraction = Fraction(0)
    length: Fraction = Fraction(0)
    tabs: str = ""
    strips: str = ""
    facts: frozenset[str] = frozenset()

    @property
    def pieces(self) -> tuple[str, ...]:
        """The pieces that bear it."""
        return pieces_of(self.on + self.onto)


@dataclass(frozen=True, slots=True)
class Thing:
    """A whole project of one size: what is true of its kind (``OF_THINGS``), its parts, seams and closings."""

    facts: frozenset[str]
    parts: Mapping[str, Component]
    seams: tuple[Seam, ...] = ()
    closings: tuple[Closing, ...] = ()

    def seams_of(self, piece: str) -> tuple[Seam, ...]:
        """Return the seams that a piece takes part in."""
        return tuple(seam for seam in self.seams if piece in seam.pieces)

    def closing_at(self, place: str) -> Closing | None:
        """Return the closing that an item is on, such as '@0'; None where it is on something else."""
        return next((one for one in self.closings if f"@{one.number}" == place), None)

    def copies_on(self, piece: str) -> tuple[Component, ...]:
        """Return what is fixed to a piece: interfacing, wadding."""
        return tuple(part for part in self.parts.values() if part.lies_on == piece)

    def sewn_on(self, piece: str) -> tuple[str, ...]:
        """Return what is sewn on the face of a piece: pockets, patches."""
        return tuple(part.name for part in self.parts.values() if part.sewn_on == piece)

    @property
    def panels(self) -> tuple[str, ...]:
        """The tucked panels by name."""
        return tuple(name for name, part in self.parts.items() if part.is_panel)


def pieces_of(edges: Iterable[Edge]) -> tuple[str, ...]:
    """Return the pieces of edges, each once, in their order."""
    return tuple(dict.fromkeys(piece for piece, _ in edges))
