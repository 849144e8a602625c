"""Every kind of piece by its word: the group of keys of a piece comes in, its kind goes out.

A new kind is one class in a file of this folder, in the union at that file's foot.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import get_args

from generator.definitions.faults import SilentFault, meant
from generator.definitions.keyed import named
from generator.definitions.nodes import Group, Node
from generator.definitions.outlines import outlined
from generator.definitions.piece_kind import PieceKind
from generator.definitions.pieces.bought import Bought
from generator.definitions.pieces.copy import Copy, copied_kind
from generator.definitions.pieces.flat import FlatPiece
from generator.definitions.pieces.grid import Grid
from generator.definitions.pieces.model import OutlinedModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.pieces.shaped_facing import ShapedFacing, facing_kind
from generator.definitions.pieces.strips import StripPiece
from generator.definitions.pieces.tabs import ZipTab
from generator.definitions.readers import Parts, Schema, choice
from generator.definitions.reading import Reading

Piece = TuckedPanel | FlatPiece | ShapedFacing | Grid | StripPiece | Copy | ZipTab | Bought
_CLASSES: tuple[type[Piece], ...] = get_args(Piece)
PIECES: Mapping[str, type[Piece]] = MappingProxyType({model.of_kind.word: model for model in _CLASSES})
_KIND = choice(PIECES, "kind of piece")


def kinds_of(pieces: Group, reading: Reading) -> dict[str, PieceKind | None]:
    """Return the kinds of all pieces by name; a copy and a shaped facing have edges of the piece that they are of."""
    kinds = {name: _kind_of(node, reading) for name, (_, node) in pieces.entries.items()}
    follow = {Copy.of_kind.word: copied_kind, ShapedFacing.of_kind.word: facing_kind}
    return {
        name: follow[kind.word](pieces.entries[name][1], kinds) if kind and kind.word in follow else kind
        for name, kind in kinds.items()
    }


def _kind_of(found: Node, reading: Reading) -> PieceKind | None:
    """Return the kind of the piece in a group, None after reporting that it has none."""
    if not isinstance(found, Group):
        reading.faults.add(found.place, "a piece is a group of keys: kind, cloth ...; write them, or take the line out")
        return None
    kind = found.get("kind")
    if kind is None:
        reading.faults.add(found.place, f"'kind' is missing here{meant('', PIECES)}")
        return None
    try:
        model = PIECES[_KIND.value(kind, reading)]
    except SilentFault:
        return None
    kind_of_piece = model.of_kind.placed() if found.get("sewn on") is not None else model.of_kind
    outline = found.get("outline")
    if outline is None or not issubclass(model, OutlinedModel):
        return kind_of_piece
    return outlined(kind_of_piece, outline, reading)


class PiecesOf:
    """The pieces field of a project: each piece is read as its kind says, so that its faults are about that kind."""

    def value(self, found: Node, reading: Reading) -> dict[str, Piece]:
        """Return the pieces by name, without those that are broken: what is said of them elsewhere is still read."""
        pieces: dict[str, Piece] = {}
        for name, node in named(found, reading).items():
            kind = reading.kinds.get(name)
            piece = PIECES[kind.word].read(node, replace(reading, kind=kind)) if kind else None
            if piece is not None:
                pieces[name] = piece
        return pieces

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of pieces whose kind decides which keys they may have."""
        cases = [
            {"if": {"properties": {"kind": {"const": kind}}}, "then": model.schema(parts)}
            for kind, model in PIECES.items()
        ]
        parts["AnyPiece"] = {
            "type": "object",
            "required": ["kind"],
            "properties": {"kind": {"enum": list(PIECES)}},
            "allOf": cases,
        }
        return {
            "type": "object",
            "description": "The pieces, each with a name, a kind and its finished size.",
            "additionalProperties": {"$ref": "#/$defs/AnyPiece"},
        }
