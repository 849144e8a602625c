"""Thread: worked pieces and meeting edges come in, the length of stitching and the spools to buy go out."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from generator.calculation.making.thread import (
    NEATENING_RATIOS,
    spools,
    stitching_thread,
    thread_ratio,
    thread_with_waste,
)
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import MeetingWork, ThreadUse
from generator.lengths import METRE, YARD, Edition, round_up, write_number

_HEM_LAYERS = 3
_LINES_APART = Fraction(4)
_SLANT = Fraction(17, 12)
"""A seam from corner to corner of a square, by its side: a little more than the root of two [-]."""


@dataclass(frozen=True, slots=True)
class Sewing:
    """How the room sews: thread on a spool [in], the share for ends and waste, stitches for each inch.

    ``thickness`` gives that of a cloth by its name [in], nothing where it is not known.
    """

    spool: Fraction
    waste: Fraction
    stitches: Fraction
    thickness: Callable[[str], Fraction]


def row_stitching(piece: Piece) -> Fraction:
    """Return the length of the tack rows of one piece [in]."""
    if piece.panel is None or piece.panel.rows is None:
        return Fraction(0)
    return len(piece.panel.rows.rows) * piece.panel.across.finished


def tuck_stitching(piece: Piece) -> Fraction:
    """Return the length of the stitching of all tucks of one piece, cross tucks included [in]."""
    if piece.panel is None:
        return Fraction(0)
    return tuck_lines(piece) + (piece.panel.cross.count * piece.panel.across.finished if piece.panel.cross else 0)


def tuck_lines(piece: Piece) -> Fraction:
    """Return the length of the stitching of the tucks along a piece, as far as they are stitched [in]."""
    panel = piece.panel
    if panel is None:
        return Fraction(0)
    if panel.released is None:
        return panel.across.count * piece.cut_along
    return sum((last - first for own in panel.released.sewn for first, last in own), Fraction(0))


def plain_stitching(piece: Piece) -> Fraction:
    """Return the length of all other stitching on a piece: hems, bindings, gathering, joins, pockets [in]."""
    kinds = ("hem", "caught hem", "seam") if piece.on_piece is not None else ("hem", "caught hem")
    own = sum((edge.finished for edge in piece.edges.values() if edge.end.kind in kinds), Fraction(0))
    gathering = 2 * piece.cut_across if piece.made.gathered else Fraction(0)
    return own + gathering + piece.made.stitched + _joins(piece) + _fixing(piece)


def _fixing(piece: Piece) -> Fraction:
    """What fixes a copy: it is basted all round, or quilted in lines; glue takes no thread [in]."""
    if piece.fixed == "sewn in":
        return sum((edge.finished for edge in piece.edges.values()), Fraction(0))
    return sum(lines_on(piece), Fraction(0)) if piece.fixed == "quilted" else Fraction(0)


def lines_on(piece: Piece) -> tuple[Fraction, ...]:
    """Return lines along a piece that lie side by side, so far apart that none of it is farther than half of that.

    Formula: ceil(across / 4 in) lines, each as long as the piece; the distance is common practice, no source. A
    quilter chooses her own lines: time and thread are counted from these.

    Examples
    --------
    A wadding 14 in across and 14 in along is quilted in 4 lines of 14 in, 56 in of stitching.

    >>> from generator.calculation.worked_piece import Piece
    >>> wadding = Piece("padding", "padding", "copy", "wadding", 1, "along", (), Fraction(14), Fraction(14))
    >>> sum(lines_on(wadding))
    Fraction(56, 1)
    """
    return (piece.finished_along,) * ceil(piece.finished_across / _LINES_APART)


def _joins(piece: Piece) -> Fraction:
    """The seams by which a strip is joined from lengths, or pieced on the bias [in]."""
    if piece.pieced is not None:
        return (piece.pieced.strips - 1) * piece.cut_along * _SLANT
    if piece.lengths is None:
        return Fraction(0)
    lengths = piece.lengths
    return (lengths.count - 1) * lengths.along * (_SLANT if lengths.slanting else 1)


def piece_thread(piece: Piece, sewing: Sewing) -> Fraction:
    """Return the thread in one piece [in]: rows cross their thickest place's layers, everything else a hem's three."""
    ply = sewing.thickness(piece.cloth)
    layers = piece.panel.rows.layers if piece.panel is not None and piece.panel.rows is not None else 0
    rows = stitching_thread(row_stitching(piece), thread_ratio(layers * ply, sewing.stitches))
    rest = tuck_stitching(piece) + plain_stitching(piece)
    return rows + stitching_thread(rest, thread_ratio(_HEM_LAYERS * ply, sewing.stitches))


def thread_use(
    pieces: Sequence[Piece],
    meetings: Sequence[MeetingWork],
    neatened: Mapping[str, Fraction],
    sewing: Sewing,
    edition: Edition,
) -> ThreadUse:
    """Return the thread of a whole project; seams between pieces are counted at the least ratio.

    ``neatened`` has the length of the seams [in] whose raw edges are neatened, by the way.
    """
    thread = sum((piece.quantity * piece_thread(piece, sewing) for piece in pieces), Fraction(0))
    thread += stitching_thread(sum((meeting.lines * meeting.join_length for meeting in meetings), Fraction(0)))
    for way, length in neatened.items():
        thread += stitching_thread(length, NEATENING_RATIOS[way]) if way in NEATENING_RATIOS else 0
    if not thread:
        return ThreadUse(Fraction(0), "none", 0)
    length = thread_with_waste(thread, sewing.waste)
    return ThreadUse(length, written_thread(length, edition), spools(thread, sewing.spool, sewing.waste))


def written_thread(length: Fraction, edition: Edition) -> str:
    """Return a length of thread [in] in whole yards or metres, rounded up."""
    unit, name = (METRE, "m") if edition.unit == "cm" else (YARD, "yd")
    return f"{write_number(round_up(length, unit) / unit)} {name}"
