"""What every kind of piece has: the group of keys of a piece comes in, its frozen definition goes out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Annotated, Any, ClassVar

from generator.definitions.faults import meant
from generator.definitions.fields import FINISH, Finished, Label, Markdown, Quantity, YesNo, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Node, Scalar, fold
from generator.definitions.outlines import Outline, OutlineReader
from generator.definitions.piece_kind import PieceKind
from generator.definitions.pieces.sewn_on import SewnOn, read_sewn_on
from generator.definitions.readers import Leaf, Parts, Reader, Schema, choice, read_each
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import Finish
from generator.definitions.vocabulary import CUT_TIMES, GRAINS, NEATENINGS, CutTime, Grain, Neatening

_SIZE = ("finished across", "finished along")
# Outlines of which one measure says the other.
_ONE_MEASURE = ("circle", "half circle")


def _cloth_name(words: Scalar, reading: Reading) -> str:
    """Return the name of a cloth of the project."""
    name = fold(filled_words(words))
    if name not in reading.cloths:
        raise reading.unknown("cloths", f"there is no cloth '{name}'{meant(name, reading.cloths)}")
    return name


@dataclass(frozen=True)
class _ByEdge:
    """What a piece says of its edges, each read by a ``leaf``; one word alone is that of all edges.

    Where an outline names edges of its own the schema lets any name pass; what is read knows the names.
    """

    kind: PieceKind
    leaf: Leaf
    named: bool

    def value(self, found: Node, reading: Reading) -> dict[str, Any]:
        """Return what is said by edge."""
        if not isinstance(found, Group):
            return {"all": self.leaf.value(found, reading)}
        kind = reading.kind or self.kind
        sides, given = kind.finished_sides, {}
        for side, (key, node) in found.entries.items():
            if side in sides:
                given[side] = (self.leaf, node)
            else:
                reading.faults.add(key.place, f"{kind.told} has no edge '{key.text}'{meant(side, sides)}")
        return read_each(given, reading)

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of one word, or of one for each edge."""
        finish = self.leaf.schema(parts)
        sides = dict.fromkeys(self.kind.finished_sides, finish)
        return {
            "anyOf": [
                finish,
                {"type": "object", "properties": sides, "additionalProperties": finish if self.named else False},
            ]
        }


_NEATEN = choice(NEATENINGS, "way to neaten raw edges")


class PieceModel(Located):
    """What every piece has; an empty label is the piece's name, an empty cloth the project's first.

    ``of_kind`` is what its kind is known by; one with an outline ``names_edges`` itself. ``grain`` tells which way the
    selvage runs along the piece. Of one ``on_a_fold`` half is printed on paper. Of a ``pair`` one half is left and the
    other right. ``sewn_on`` is the piece that it lies on the face of, and where.
    """

    of_kind: ClassVar[PieceKind]
    names_edges: ClassVar[bool] = False
    kind: Label
    label: Label = ""
    cloth: Annotated[str, Leaf(_cloth_name, {"type": "string"})] = ""
    quantity: Quantity = standing("1")
    pair: YesNo = False
    grain: Annotated[Grain, choice(GRAINS, "way of the grain")] = "along"
    sewn_on: Annotated[SewnOn | None, Leaf(read_sewn_on, {"type": "string"})] = None
    note: Markdown | None = None
    cut: Annotated[CutTime, choice(CUT_TIMES, "time to cut a piece")] = "with the rest"
    on_a_fold: YesNo = False
    neaten: Mapping[str, Neatening] = field(default_factory=dict)
    edges: Mapping[str, Finish] = field(default_factory=dict)

    def finish(self, side: str) -> Finish:
        """Return how an edge is finished: its own finish, else that of both sides, of all edges, else a plain seam."""
        both = side.removeprefix("left ").removeprefix("right ")
        return self.edges.get(side) or self.edges.get(both) or self.edges.get("all") or Finish("seam", (), self.place)

    @classmethod
    @cache
    def readers(cls) -> Mapping[str, Reader]:
        """Return who reads each attribute: the edges are those of its kind."""
        word = cls.of_kind.word
        kind = Leaf(lambda words, reading: word, {"const": word})
        return {
            **super().readers(),
            "kind": kind,
            "edges": _ByEdge(cls.of_kind, FINISH, cls.names_edges),
            "neaten": _ByEdge(cls.of_kind, _NEATEN, cls.names_edges),
        }


class RectangularModel(PieceModel):
    """What a piece with four straight sides has."""

    finished_across: Finished
    finished_along: Finished


class OutlinedModel(PieceModel):
    """What a piece has that is a rectangle or has an outline of its own; a drawn one says its size itself."""

    names_edges: ClassVar[bool] = True
    outline: Annotated[Outline | None, OutlineReader()] = None
    finished_across: Finished | None = None
    finished_along: Finished | None = None

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Report a size that is missing, and one that a drawn outline has no need of."""
        outline = found.get("outline")
        given = [key for key in _SIZE if key in found.entries]
        if isinstance(outline, Group):
            for key in given:
                told = f"a drawn outline says by its points how large it is; take '{key}' out, or the outline"
                reading.faults.add(found.entries[key][0].place, told)
            return
        halves = isinstance(outline, Scalar) and outline.text.strip() in _ONE_MEASURE
        for key in _SIZE[:1] if halves else _SIZE:
            if key not in given:
                reading.faults.add(found.place, f"'{key}' is missing here")
