"""What every kind of piece has: the group of keys of a piece comes in, its frozen definition goes out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from functools import cache
from typing import Annotated, ClassVar

from generator.definitions.faults import meant
from generator.definitions.fields import FINISH, Finished, Label, Markdown, Quantity, YesNo, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Node, Scalar, fold
from generator.definitions.piece_kind import PieceKind
from generator.definitions.readers import Leaf, Parts, Reader, Schema, choice, read_each
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import Finish
from generator.definitions.vocabulary import CUT_TIMES, GRAINS, CutTime, Grain


def _cloth_name(words: Scalar, reading: Reading) -> str:
    """Return the name of a cloth of the project."""
    name = fold(filled_words(words))
    if name not in reading.cloths:
        raise reading.unknown("cloths", f"there is no cloth '{name}'{meant(name, reading.cloths)}")
    return name


@dataclass(frozen=True)
class _FinishesOf:
    """The finishes of a piece by edge; one finish alone is that of all edges."""

    kind: PieceKind

    def value(self, found: Node, reading: Reading) -> dict[str, Finish]:
        """Return the finishes by edge."""
        if not isinstance(found, Group):
            return {"all": FINISH.value(found, reading)}
        sides, given = self.kind.finished_sides, {}
        for side, (key, node) in found.entries.items():
            if side in sides:
                given[side] = (FINISH, node)
            else:
                reading.faults.add(key.place, f"{self.kind.told} has no edge '{key.text}'{meant(side, sides)}")
        return read_each(given, reading)

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of one finish, or of one for each edge."""
        finish = FINISH.schema(parts)
        sides = dict.fromkeys(self.kind.finished_sides, finish)
        return {"anyOf": [finish, {"type": "object", "properties": sides, "additionalProperties": False}]}


class PieceModel(Located):
    """What every piece has; an empty label is the piece's name, an empty cloth the project's first.

    ``of_kind`` is what its kind is known by. ``grain`` tells which direction of the piece runs with the selvage.
    Of a ``pair`` one half is left and the other right.
    """

    of_kind: ClassVar[PieceKind]
    kind: Label
    label: Label = ""
    cloth: Annotated[str, Leaf(_cloth_name, {"type": "string"})] = ""
    quantity: Quantity = standing("1")
    pair: YesNo = False
    grain: Annotated[Grain, choice(GRAINS, "way of the grain")] = "along"
    note: Markdown | None = None
    cut: Annotated[CutTime, choice(CUT_TIMES, "time to cut a piece")] = "with the rest"
    edges: Mapping[str, Finish] = field(default_factory=dict)

    def finish(self, side: str) -> Finish:
        """Return how an edge is finished: its own finish, else that of all edges, else a plain seam."""
        return self.edges.get(side) or self.edges.get("all") or Finish("seam", (), self.place)

    @classmethod
    @cache
    def readers(cls) -> Mapping[str, Reader]:
        """Return who reads each attribute: the edges are those of its kind."""
        word = cls.of_kind.word
        kind = Leaf(lambda words, reading: word, {"const": word})
        return {**super().readers(), "kind": kind, "edges": _FinishesOf(cls.of_kind)}


class RectangularModel(PieceModel):
    """What a piece with four straight sides has."""

    finished_across: Finished
    finished_along: Finished
