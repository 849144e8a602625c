"""One layer of a seam as it lies: a piece, its boxes, its outline where it is no rectangle; inches, y downwards."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculation.making_up.joined import JoinLayer
from generator.calculation.worked_piece import Piece
from generator.drawing.labels import Box
from generator.drawing.seams.boxes import sides_of
from generator.drawing.seams.lines import Line
from generator.drawing.seams.shapes import Outline, box_round


@dataclass(frozen=True, slots=True)
class Laid:
    """One piece, or one half of a back in two, as it lies: its finished edges and its cut ones, by their boxes.

    ``at`` is the side at which it is sewn, ``own`` the side of the piece that lies there. ``outline`` has the lines of
    one that is no rectangle.
    """

    piece: Piece
    finished: Box
    cut: Box
    right_side_up: bool
    at: str = ""
    own: str = ""
    outline: Outline | None = None

    @classmethod
    def shaped(cls, piece: Piece, outline: Outline, layer: JoinLayer) -> Laid:
        """Return a piece of some outline as it lies."""
        return cls(
            piece,
            outline.finished,
            box_round(outline.cut),
            layer.right_side_up,
            layer.at,
            layer.own,
            outline,
        )

    @property
    def edges(self) -> Mapping[str, Line]:
        """Its finished edges, clockwise."""
        return sides_of(self.finished) if self.outline is None else self.outline.lines


def is_hung(piece: Piece) -> bool:
    """Return whether a piece is drawn up at an edge, so that it hangs from what it is sewn to."""
    return piece.made.drawn_up is not None
