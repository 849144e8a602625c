"""The tabs at the ends of a zip: their keys come in, their frozen definition goes out."""

from __future__ import annotations

from typing import ClassVar

from generator.definitions.fields import Finished
from generator.definitions.piece_kind import PieceKind
from generator.definitions.pieces.model import PieceModel


class ZipTab(PieceModel):
    """A tab at the end of a ``zip`` that is shorter than its ``edge``, so that no seam crosses its teeth."""

    of_kind: ClassVar = PieceKind("zip tab", measures=("shown", "with zip"), nature=("made", "adds nothing", "closes"))
    edge: Finished
    zip: Finished
