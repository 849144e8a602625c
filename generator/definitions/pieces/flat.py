"""Pieces cut from one shape of cloth, and those of two: their keys come in, their frozen definitions go out."""

from __future__ import annotations

from typing import ClassVar

from generator.definitions.fields import Finished, Length
from generator.definitions.piece_kind import RECTANGLE, PieceKind
from generator.definitions.pieces.model import OutlinedModel, PieceModel, RectangularModel


class Rectangle(OutlinedModel):
    """A plain piece: a rectangle, or what its outline says."""

    of_kind: ClassVar = PieceKind("rectangle", RECTANGLE, copied=True, nature=("plain", "face", "from lengths"))


class Facing(OutlinedModel):
    """A facing: a plain piece that is turned to the wrong side."""

    of_kind: ClassVar = PieceKind("facing", RECTANGLE, copied=True, nature=("face", "turned in", "from lengths"))


class EnvelopeBack(RectangularModel):
    """A back of two pieces that lie one over the other by the overlap, each with a hem twice turned."""

    of_kind: ClassVar = PieceKind(
        "envelope back", RECTANGLE, ("overlap", "hem", "half across"), nature=("face", "opens", "made")
    )
    completed: ClassVar = ("finished across", "finished along", "overlap", "hem")
    overlap: Length
    hem: Length


class Circle(PieceModel):
    """A round piece."""

    of_kind: ClassVar = PieceKind(
        "circle", ("rim",), ("diameter", "cut diameter"), copied=True, nature=("plain", "face", "from lengths")
    )
    diameter: Finished


FlatPiece = Rectangle | Facing | EnvelopeBack | Circle
