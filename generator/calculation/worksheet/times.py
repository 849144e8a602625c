"""How long a step takes: a kind of work and the pieces it is done on come in, counts for the room's rates go out.

``WORK`` maps the words after ``work:`` in a technique to the operations that they are made of. Lengths are counted in
inches, everything else in ones. A new kind of work is one entry.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.worked_piece import Piece

Counts = dict[str, Fraction]
# An opening that a hand goes through, or the finishing of one piece [in].
_HAND_LENGTH = Fraction(8)


def _cut(*, later: bool) -> Callable[[Sequence[Piece]], Counts]:
    """Count the cuts of the pieces that are cut at once, or of those that wait for the sewn panel."""

    def count(pieces: Sequence[Piece]) -> Counts:
        parts = (piece.quantity * cut.number for piece in pieces if piece.after_panel is later for cut in piece.cuts)
        return {"cut a piece": Fraction(sum(parts))}

    return count


def _mark_folds(pieces: Sequence[Piece]) -> Counts:
    return {"mark a fold": Fraction(sum(piece.quantity * _tucks(piece) for piece in pieces))}


def _tucks(piece: Piece) -> int:
    return piece.panel.across.count if piece.panel else 0


def _tuck_length(pieces: Sequence[Piece]) -> Fraction:
    return sum((piece.quantity * _tucks(piece) * piece.cut_along for piece in pieces), Fraction(0))


def _crease(pieces: Sequence[Piece]) -> Counts:
    return {"crease": _tuck_length(pieces)}


def _stitch_tucks(pieces: Sequence[Piece]) -> Counts:
    return {
        "stitch": _tuck_length(pieces),
        "start a seam": Fraction(sum(piece.quantity * _tucks(piece) for piece in pieces)),
    }


def _rows(piece: Piece) -> int:
    return len(piece.panel.rows.rows) if piece.panel and piece.panel.rows else 0


def _rule_rows(pieces: Sequence[Piece]) -> Counts:
    return {"rule a row": Fraction(sum(piece.quantity * _rows(piece) for piece in pieces))}


def _turn_tucks(pieces: Sequence[Piece]) -> Counts:
    turned = sum(piece.quantity * _rows(piece) * _tucks(piece) for piece in pieces)
    length = sum((piece.quantity * _rows(piece) * piece.finished_across for piece in pieces), Fraction(0))
    rows = sum(piece.quantity * _rows(piece) for piece in pieces)
    return {"turn a tuck": Fraction(turned), "stitch": length, "start a seam": Fraction(rows)}


def _edges(pieces: Sequence[Piece]) -> Counts:
    length = sum((piece.quantity * _edge_length(piece) for piece in pieces), Fraction(0))
    seams = sum(piece.quantity * max(1, len(piece.edges)) for piece in pieces)
    return {"press": length, "stitch": length, "start a seam": Fraction(seams)}


def _edge_length(piece: Piece) -> Fraction:
    sides = [edge.finished for edge in piece.edges.values() if edge.end.kind not in ("fold", "selvage")]
    return sum(sides, Fraction(0))


def _seams(pieces: Sequence[Piece]) -> Counts:
    halves = sum((piece.quantity * _edge_length(piece) for piece in pieces), Fraction(0)) / 2
    return {"stitch": halves, "start a seam": Fraction(max(1, len(pieces)))}


def _gather(pieces: Sequence[Piece]) -> Counts:
    return {"gather": sum((piece.quantity * piece.cut_across for piece in pieces), Fraction(0))}


def _by_hand(pieces: Sequence[Piece]) -> Counts:
    return {"sew by hand": _HAND_LENGTH * max(1, len(pieces))}


def _nothing(_pieces: Sequence[Piece]) -> Counts:
    return {}


WORK: Mapping[str, Callable[[Sequence[Piece]], Counts]] = MappingProxyType(
    {
        "cut pieces": _cut(later=False),
        "cut later": _cut(later=True),
        "mark folds": _mark_folds,
        "crease tucks": _crease,
        "stitch tucks": _stitch_tucks,
        "rule rows": _rule_rows,
        "turn tucks": _turn_tucks,
        "sew edges": _edges,
        "sew seams": _seams,
        "gather edges": _gather,
        "sew by hand": _by_hand,
        "make buttonholes": _nothing,
        "sew buttons": _nothing,
        "set fasteners": _nothing,
    }
)
