"""Every kind of piece by its word: the group of keys of a piece comes in, its kind goes out.

A new kind is one class in a file of this folder, in the union at that file's foot.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType
from typing import get_args

from pydantic_core import PydanticCustomError

from generator.definitions.faults import meant
from generator.definitions.fields import choice
from generator.definitions.nodes import Group, Node
from generator.definitions.piece_kind import PieceKind
from generator.definitions.pieces.bought import Bought
from generator.definitions.pieces.flat import FlatPiece
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.pieces.strips import StripPiece
from generator.definitions.reading import Reading

Piece = TuckedPanel | FlatPiece | StripPiece | Bought
_CLASSES: tuple[type[PieceModel], ...] = get_args(Piece)
PIECES: Mapping[str, type[PieceModel]] = MappingProxyType({model.of_kind.word: model for model in _CLASSES})


def kind_of(found: Node, reading: Reading) -> PieceKind | None:
    """Return the kind of the piece in a group, None after reporting that it has none."""
    if not isinstance(found, Group):
        reading.faults.add(found.place, "a piece is a group of keys: kind, cloth ...; write them, or take the line out")
        return None
    kind = found.get("kind")
    if kind is None:
        reading.faults.add(found.place, f"'kind' is missing here{meant('', PIECES)}")
        return None
    leaf = choice(PIECES, "kind of piece")
    try:
        return PIECES[leaf.value(kind, reading)].of_kind
    except PydanticCustomError:
        return None
