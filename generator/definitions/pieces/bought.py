"""What is bought ready: its keys come in, its frozen definition goes out."""

from __future__ import annotations

from typing import ClassVar

from generator.definitions.piece_kind import PieceKind
from generator.definitions.pieces.model import PieceModel


class Bought(PieceModel):
    """Something bought ready that the work is made to: a form, a zip."""

    of_kind: ClassVar = PieceKind("bought", of_cloth=False, nature=("bought ready", "adds nothing"))
