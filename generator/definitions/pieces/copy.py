"""A copy of another piece: its keys come in, its frozen definition goes out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, ClassVar, Literal, get_args

from generator.definitions.faults import Fault
from generator.definitions.fields import VALUE
from generator.definitions.nodes import Group, Node, Scalar, fold
from generator.definitions.piece_kind import RECTANGLE, PieceKind
from generator.definitions.pieces.model import PieceModel
from generator.definitions.readers import Leaf, choice
from generator.definitions.reading import Reading, filled_words, read_value
from generator.definitions.values import Formula
from generator.errors import Place

Fixed = Literal["fused", "sewn in", "quilted"]
FIXED: tuple[str, ...] = get_args(Fixed)


@dataclass(frozen=True, slots=True)
class Reach:
    """How far a copy reaches: to the cut edge, or to a line so far beyond the seam line; none beyond it is the line."""

    to_edge: bool
    beyond: Formula | None = None
    place: Place | None = None


def _reach(words: Scalar, reading: Reading) -> Reach:
    """Return how far a copy reaches."""
    told = fold(filled_words(words))
    if told in ("edge", "seam line"):
        return Reach(told == "edge", place=words.place)
    return Reach(to_edge=False, beyond=read_value(words, reading), place=words.place)


def _copied(words: Scalar, reading: Reading) -> str:
    """Return the name of a piece of which others may be copies."""
    name = fold(filled_words(words))
    kind = reading.kind_of(name)
    if kind is not None and not kind.copied:
        flat = "a rectangle, a facing, a circle or a tucked panel"
        raise Fault(f"'{name}' is {kind.told}, and a copy is of {flat}; name one of these")
    return name


_PIECE = Leaf(_copied, {"type": "string"})


class Copy(PieceModel):
    """A flat piece with the size and outline of another: interfacing, wadding, a lining.

    One that is ``fixed`` lies on the wrong side of the piece ``on``, which is the one it is a copy of where the file
    says nothing; any other meets edges like every piece.
    """

    names_edges: ClassVar[bool] = True
    of_kind: ClassVar = PieceKind("copy", RECTANGLE, nature=("plain", "face"))
    of: Annotated[str, _PIECE]
    on: Annotated[str, _PIECE] = ""
    reaches: Annotated[Reach, Leaf(_reach, VALUE)] = Reach(to_edge=True)
    fixed: Annotated[Fixed | None, choice(FIXED, "way to fix a copy")] = None

    @property
    def lies_on(self) -> str:
        """The piece that it is fixed to; empty where it is not fixed."""
        return (self.on or self.of) if self.fixed else ""

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Report keys that do not go together."""
        reach = found.get("reaches")
        edge = reach is None or (isinstance(reach, Scalar) and fold(reach.text) == "edge")
        if "on" in found.entries and "fixed" not in found.entries:
            told = f"'on' says what a copy is fixed to; write how under 'fixed' ({', '.join(FIXED)}), or take 'on' out"
            reading.faults.add(found.entries["on"][0].place, told)
        if "edges" in found.entries and ("fixed" in found.entries or not edge):
            told = "how far this copy reaches is said by 'reaches'; take 'edges' out"
            reading.faults.add(found.entries["edges"][0].place, told)


def copied_kind(found: Node, kinds: Mapping[str, PieceKind | None]) -> PieceKind:
    """Return the kind of a copy with the edges of the piece that it is of, as far as there is one."""
    of = found.get("of") if isinstance(found, Group) else None
    other = kinds.get(fold(of.text)) if isinstance(of, Scalar) else None
    if other is None or not other.copied or other.edges == RECTANGLE:
        return Copy.of_kind
    return Copy.of_kind.shaped(other.edges, other.twice)
