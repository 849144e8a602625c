"""The hem that a rod runs through: a piece comes in, the side with that hem and words for it go out."""

from __future__ import annotations

from generator.calculation.worked_piece import Piece

# Where the top of a thing may lie while it is worked on: at the top, or at the left where it lies on its side.
_SIDES = ("top", "left")


def casing_side(piece: Piece) -> str:
    """Return the side with the casing: the file's, a hem of two unlike turns, at the top before the left, or any."""
    cased = next((side for side, edge in piece.edges.items() if edge.end.way == "casing"), None)
    if cased is not None:
        return cased
    hems = [side for side in _SIDES if side in piece.edges and piece.edges[side].end.kind == "hem"]
    broad = [side for side in hems if piece.edges[side].end.first < piece.edges[side].end.second]
    return next(iter((*broad, *hems)), "top")


def casing_words(piece: Piece, side: str) -> str:
    """Return where the hem with the rod lies before the person who sews."""
    if piece.quarters:
        return f"at the {piece.said(side).replace(' (', ' edge (')}"
    if side == "top":
        return "at the top edge of the piece"
    return f"at the {side} edge of the piece, which is the top when it hangs"
