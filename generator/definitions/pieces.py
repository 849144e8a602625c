"""The pieces of a project: the group of keys of a piece comes in, the frozen definition of its kind goes out."""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import Annotated

from pydantic import Field
from pydantic_core import PydanticCustomError

from generator.definitions.faults import meant
from generator.definitions.fields import (
    Fact,
    Finished,
    Label,
    Leaf,
    Length,
    Markdown,
    Quantity,
    YesNo,
    choice,
    length,
    standing,
)
from generator.definitions.keyed import Placed
from generator.definitions.nodes import Group, Node
from generator.definitions.piece_fields import EdgesOf, SampleOf, cloth_name, room_sample
from generator.definitions.reading import Reading
from generator.definitions.tucks import Rows, Run, Sample, Tucks
from generator.definitions.values import Finish, Formula
from generator.definitions.vocabulary import CUT_TIMES, GRAINS, PLEAT_STYLES, CutTime, Grain, PleatStyle

__all__ = ["PIECES", "Piece", "PieceModel", "Rows", "Run", "Sample", "TuckedPanel", "Tucks"]


class PieceModel(Placed):
    """What every piece has; an empty label is the piece's name, an empty cloth the project's first.

    ``grain`` tells which direction of the piece runs with the selvage.
    """

    kind: Label
    label: Label = ""
    cloth: Annotated[str, Leaf(cloth_name, {"type": "string"})] = ""
    quantity: Quantity = standing("1")
    grain: Annotated[Grain, choice(GRAINS, "way of the grain")] = "along"
    note: Markdown | None = None
    cut: Annotated[CutTime, choice(CUT_TIMES, "time to cut a piece")] = "with the rest"
    edges: Annotated[Mapping[str, Finish], EdgesOf()] = Field(default_factory=dict)

    def finish(self, side: str) -> Finish:
        """Return how an edge is finished: its own finish, else that of all edges, else a plain seam."""
        return self.edges.get(side) or self.edges.get("all") or Finish("seam", (), self.place)


class _Rectangular(PieceModel):
    finished_across: Finished
    finished_along: Finished


class TuckedPanel(_Rectangular):
    """A panel of tucks that run along it."""

    tucks: Tucks
    cross_tucks: Tucks | None = None
    rows: Rows | None = None
    sample: Annotated[Sample | None, SampleOf(room_sample, {"type": "string"})] = None
    join_allowance: Annotated[Formula, length("seam")] = standing("1/4 in or 6 mm")
    cut_to_shape: YesNo = False


class Rectangle(_Rectangular):
    """A plain rectangle."""


class Facing(_Rectangular):
    """A facing: a rectangle that is turned to the wrong side."""


class EnvelopeBack(_Rectangular):
    """A back of two pieces that lie one over the other by the overlap, each with a hem twice turned."""

    overlap: Length
    hem: Length


class Circle(PieceModel):
    """A round piece."""

    diameter: Finished


class Strip(PieceModel):
    """A straight strip."""

    length: Finished
    width: Length


class BiasStrip(PieceModel):
    """A continuous strip cut on the bias from a square."""

    length: Finished
    width: Length
    join_allowance: Annotated[Formula, length("seam")] = standing("1/4 in or 6 mm")


class GatheredStrip(PieceModel):
    """A frill or skirt, gathered to an edge by its fullness."""

    edge: Finished
    fullness: Quantity
    drop: Finished


class PleatedStrip(PieceModel):
    """A strip in pleats, as wide when finished as its edge."""

    edge: Finished
    pleats: Quantity
    pleat_depth: Length
    drop: Finished
    style: Annotated[PleatStyle, choice(PLEAT_STYLES, "style of pleat")] = "knife"


class GatheredEnd(PieceModel):
    """The end of a bolster, gathered to its middle."""

    edge: Finished
    radius: Finished


class Binding(PieceModel):
    """A binding, finished as wide as it shows on one side."""

    length: Finished
    width: Length


class Tie(PieceModel):
    """A tie or strap, folded lengthwise and stitched; the width is the finished one."""

    length: Finished
    width: Length


class Piping(PieceModel):
    """A strip round a cord; ``cord`` is how thick it is."""

    length: Finished
    cord: Fact


class Boxing(PieceModel):
    """The strip between two faces of a box cushion."""

    edge: Finished
    depth: Finished


class Bought(PieceModel):
    """Something bought ready that the work is made to: a form, a zip."""


Piece = (
    TuckedPanel
    | Rectangle
    | Facing
    | EnvelopeBack
    | Circle
    | Strip
    | BiasStrip
    | GatheredStrip
    | PleatedStrip
    | GatheredEnd
    | Binding
    | Tie
    | Piping
    | Boxing
    | Bought
)
PIECES: Mapping[str, type[PieceModel]] = MappingProxyType(
    {
        "tucked panel": TuckedPanel,
        "rectangle": Rectangle,
        "facing": Facing,
        "envelope back": EnvelopeBack,
        "circle": Circle,
        "strip": Strip,
        "bias strip": BiasStrip,
        "gathered strip": GatheredStrip,
        "pleated strip": PleatedStrip,
        "gathered end": GatheredEnd,
        "binding": Binding,
        "tie": Tie,
        "piping": Piping,
        "boxing": Boxing,
        "bought": Bought,
    }
)


def kind_of(found: Node, reading: Reading) -> str:
    """Return the kind of the piece in a group, '' after reporting that it has none."""
    if not isinstance(found, Group):
        reading.faults.add(found.place, "a piece is a group of keys: kind, cloth ...; write them, or take the line out")
        return ""
    kind = found.get("kind")
    if kind is None:
        reading.faults.add(found.place, f"'kind' is missing here{meant('', PIECES)}")
        return ""
    leaf = choice(PIECES, "kind of piece")
    try:
        return str(leaf.value(kind, reading))
    except PydanticCustomError:
        return ""
