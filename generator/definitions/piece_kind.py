"""What a kind of piece is known by: its word, its edges and its measures; nothing comes in."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from types import MappingProxyType

SIDES = ("left", "right", "top", "bottom")
RECTANGLE = (*SIDES, "all")
# What the making up asks of a kind of piece, in place of its name.
NATURES: Mapping[str, str] = MappingProxyType(
    {
        "panel": "it has tucks",
        "plain": "it is one shape of plain cloth",
        "face": "another face can be sewn to it right round",
        "opens": "it opens in its middle, so that the work is turned there",
        "turned in": "it is turned to the wrong side of what it is sewn to",
        "along an edge": "it is cut to the shape of an edge, which it faces",
        "of blocks": "it is joined from blocks of another piece",
        "band": "it runs along an edge",
        "binds": "it binds the edge that it meets",
        "may bind": "it binds an edge that is bound",
        "corded": "it lies round a cord",
        "hangs": "it hangs at the seam that it is sewn in, so that a later seam catches it",
        "gathered": "its top is gathered",
        "pleated": "its top is laid in pleats",
        "drawn together": "it is gathered to its middle",
        "boxes": "it goes between two faces and keeps them apart",
        "strap": "it hangs loose from where it is sewn on",
        "made": "it is made up by itself before it is sewn on",
        "from lengths": "it may have to be joined from lengths of cloth",
        "closes": "it is sewn to what closes an edge",
        "adds nothing": "the thing becomes no larger by it",
        "bought ready": "it is not cut from cloth",
    }
)
_OF_ALL = ("across", "along", "cut across", "cut along", "edge", "quantity")
_NUMBERS_OF_ALL = frozenset({"quantity"})


@dataclass(frozen=True, slots=True)
class PieceKind:
    """One kind of piece, as formulas and edges in a project file may name it.

    ``edges`` are those that other pieces can meet: 'all' is the whole way round, 'edge' the long edge of a strip.
    ``measures`` are lengths and ``numbers`` plain numbers that only this kind has. What is not ``of_cloth`` is bought
    ready: it is not cut, and has no measure but its quantity. ``twice`` are names of edges that a mirrored outline has
    on its left and on its right. ``nature`` are facts that its making up depends on, words of ``NATURES``. Of what is
    ``copied`` other pieces may be copies.
    """

    word: str
    edges: tuple[str, ...] = ()
    measures: tuple[str, ...] = ()
    numbers: tuple[str, ...] = ()
    of_cloth: bool = True
    twice: tuple[str, ...] = ()
    nature: tuple[str, ...] = ()
    copied: bool = False

    def shaped(self, edges: tuple[str, ...], twice: tuple[str, ...] = ()) -> PieceKind:
        """Return the kind with the edges of an outline, each of which can be asked for its length."""
        lengths = tuple(dict.fromkeys((*edges, *twice)))
        return replace(self, edges=lengths, twice=twice, measures=(*self.measures, *lengths))

    def placed(self) -> PieceKind:
        """Return the kind of a piece that is sewn on another, and can be asked how far its edges lie from there."""
        return replace(self, measures=(*self.measures, "from left", "from top"))

    def parts_of(self, edge: str) -> tuple[str, ...]:
        """Return the edges that a name stands for: one without left or right may stand for both."""
        return (f"right {edge}", f"left {edge}") if edge in self.twice else (edge,)

    @property
    def told(self) -> str:
        """The word with its article: 'a rectangle', 'an envelope back'."""
        return f"{'an' if self.word[:1] in 'aeiou' else 'a'} {self.word}"

    @property
    def finished_sides(self) -> tuple[str, ...]:
        """The edges that can be finished each in its own way, and 'all'."""
        sides = tuple(edge for edge in self.edges if edge not in ("all", "edge")) or self.edges
        return (*sides, "all") if sides else ()

    @property
    def dimensions(self) -> Mapping[str, int]:
        """The dimension of everything that this kind can be asked for: 0 a number, 1 a length."""
        allowances = tuple(f"{edge} allowance" for edge in self.edges if edge != "all")
        names = (*_OF_ALL, *self.measures, *self.numbers, *allowances) if self.of_cloth else ("quantity",)
        numbers = _NUMBERS_OF_ALL | set(self.numbers)
        return MappingProxyType({name: 0 if name in numbers else 1 for name in names})
