"""What every kind of piece has: the group of keys of a piece comes in, its frozen definition goes out."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, ClassVar

from pydantic import Field, ValidationInfo, field_validator

from generator.definitions.faults import meant
from generator.definitions.fields import FINISH, Finished, Label, Leaf, Markdown, Quantity, choice, reading_of, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Node, Scalar, fold
from generator.definitions.piece_kind import PieceKind
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import Finish
from generator.definitions.vocabulary import CUT_TIMES, GRAINS, CutTime, Grain


def _cloth_name(words: Scalar, reading: Reading) -> str:
    """Return the name of a cloth of the project."""
    name = fold(filled_words(words))
    if name not in reading.cloths:
        raise reading.unknown("cloths", f"there is no cloth '{name}'{meant(name, reading.cloths)}")
    return name


class PieceModel(Located):
    """What every piece has; an empty label is the piece's name, an empty cloth the project's first.

    ``of_kind`` is what its kind is known by. ``grain`` tells which direction of the piece runs with the selvage.
    """

    of_kind: ClassVar[PieceKind]
    kind: Label
    label: Label = ""
    cloth: Annotated[str, Leaf(_cloth_name, {"type": "string"})] = ""
    quantity: Quantity = standing("1")
    grain: Annotated[Grain, choice(GRAINS, "way of the grain")] = "along"
    note: Markdown | None = None
    cut: Annotated[CutTime, choice(CUT_TIMES, "time to cut a piece")] = "with the rest"
    edges: Mapping[str, Finish] = Field(default_factory=dict)

    def finish(self, side: str) -> Finish:
        """Return how an edge is finished: its own finish, else that of all edges, else a plain seam."""
        return self.edges.get(side) or self.edges.get("all") or Finish("seam", (), self.place)

    @field_validator("edges", mode="plain", json_schema_input_type=Any)
    @classmethod
    def _edges(cls, found: Node, info: ValidationInfo) -> dict[str, Finish]:
        """Return the finishes by edge; one finish alone is that of all edges."""
        reading = reading_of(info)
        if not isinstance(found, Group):
            return {"all": FINISH.value(found, reading)}
        sides = cls.of_kind.finished_sides
        edges = {}
        for side, (key, node) in found.entries.items():
            if side in sides:
                edges[side] = FINISH.value(node, reading)
            else:
                told = f"{cls.of_kind.told} has no edge '{key.text}'{meant(side, sides)}"
                reading.faults.add(key.place, told)
        return edges

    @classmethod
    def schema_keys(cls) -> dict[str, Any]:
        """Return the JSON Schema of the keys that an editor should know by the kind: the kind itself, and its edges."""
        finish = dict(FINISH.schema)
        sides = dict.fromkeys(cls.of_kind.finished_sides, finish)
        group = {"type": "object", "properties": sides, "additionalProperties": False}
        return {"kind": {"const": cls.of_kind.word}, "edges": {"anyOf": [finish, group]}}


class RectangularModel(PieceModel):
    """What a piece with four straight sides has."""

    finished_across: Finished
    finished_along: Finished
