"""Strips of all sorts: their keys come in, their frozen definitions go out."""

from __future__ import annotations

from typing import Annotated, ClassVar

from generator.definitions.fields import Fact, Finished, Length, Quantity, length, standing
from generator.definitions.piece_kind import RECTANGLE, SIDES, PieceKind
from generator.definitions.pieces.model import PieceModel
from generator.definitions.readers import choice
from generator.definitions.values import Formula
from generator.definitions.vocabulary import PLEAT_STYLES, PleatStyle

_BAND = ("length", "width")


class StripModel(PieceModel):
    """What every strip has that may be joined from lengths; without a word the join is as wide as its sort needs."""

    join_allowance: Annotated[Formula, length("seam")] | None = None


class Strip(StripModel):
    """A straight strip."""

    of_kind: ClassVar = PieceKind("strip", (*RECTANGLE, "edge"), _BAND, nature=("band", "may bind", "from lengths"))
    length: Finished
    width: Length


class BiasStrip(PieceModel):
    """A continuous strip cut on the bias from a square."""

    of_kind: ClassVar = PieceKind(
        "bias strip", ("edge",), (*_BAND, "square"), nature=("band", "may bind", "from lengths", "adds nothing")
    )
    length: Finished
    width: Length
    join_allowance: Annotated[Formula, length("seam")] = standing("1/4 in or 6 mm")


class GatheredStrip(StripModel):
    """A frill or skirt, gathered to an edge by its fullness."""

    of_kind: ClassVar = PieceKind(
        "gathered strip",
        (*SIDES, "edge"),
        ("drop", "length"),
        ("fullness",),
        nature=("hangs", "gathered", "from lengths"),
    )
    completed: ClassVar = ("edge", "fullness")
    edge: Finished
    fullness: Quantity
    drop: Finished


class PleatedStrip(StripModel):
    """A strip in pleats, as wide when finished as its edge."""

    of_kind: ClassVar = PieceKind(
        "pleated strip",
        (*SIDES, "edge"),
        ("pleat depth", "drop", "length", "section"),
        ("pleats",),
        nature=("hangs", "pleated", "from lengths"),
    )
    edge: Finished
    pleats: Quantity
    pleat_depth: Length
    drop: Finished
    style: Annotated[PleatStyle, choice(PLEAT_STYLES, "style of pleat")] = "knife"


class GatheredEnd(StripModel):
    """The end of a bolster, gathered to its middle."""

    of_kind: ClassVar = PieceKind(
        "gathered end",
        ("rim",),
        ("radius", "length", "drop"),
        nature=("drawn together", "from lengths", "adds nothing"),
    )
    edge: Finished
    radius: Finished


class Binding(StripModel):
    """A binding, finished as wide as it shows on one side."""

    of_kind: ClassVar = PieceKind("binding", ("edge",), _BAND, nature=("band", "binds", "from lengths", "adds nothing"))
    completed: ClassVar = ("length",)
    length: Finished
    width: Length


class Tie(StripModel):
    """A tie or strap, folded lengthwise and stitched; the width is the finished one."""

    of_kind: ClassVar = PieceKind("tie", ("edge",), _BAND, nature=("strap", "made", "from lengths", "adds nothing"))
    length: Finished
    width: Length


class Piping(StripModel):
    """A strip round a cord; ``cord`` is how thick it is."""

    of_kind: ClassVar = PieceKind(
        "piping",
        ("edge",),
        ("length", "cord", "width"),
        nature=("band", "corded", "made", "from lengths", "adds nothing"),
    )
    completed: ClassVar = ("length",)
    length: Finished
    cord: Fact


class Boxing(StripModel):
    """The strip between two faces of a box cushion."""

    of_kind: ClassVar = PieceKind("boxing", (*SIDES, "edge"), ("depth", "length"), nature=("boxes", "from lengths"))
    completed: ClassVar = ("edge",)
    edge: Finished
    depth: Finished


StripPiece = Strip | BiasStrip | GatheredStrip | PleatedStrip | GatheredEnd | Binding | Tie | Piping | Boxing
