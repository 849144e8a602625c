"""Thread: worked pieces and meeting edges come in, the length of stitching and the spools to buy go out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil
from typing import Any

from generator.calculation.making.thread import (
    BUTTONHOLE_THREAD,
    NEATENING_RATIOS,
    spools,
    stitching_thread,
    thread_ratio,
    thread_with_waste,
)
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import MeetingWork
from generator.calculation.worked_thread import ThreadColour, ThreadUse
from generator.definitions.thread_work import REST, THREAD_WORK
from generator.lengths import METRE, YARD, Edition, round_up, write_number
from generator.listed import listed

_HEM_LAYERS = 3
_LINES_APART = Fraction(4)
_SLANT = Fraction(17, 12)
"""A seam from corner to corner of a square, by its side: a little more than the root of two [-]."""


@dataclass(frozen=True, slots=True)
class Sewing:
    """How the room sews: thread on a spool [in], the share for ends and waste, stitches for each inch.

    ``thickness`` gives that of a cloth by its name [in], nothing where it is not known. ``colours`` names the thread of
    each work that has its own, ``buttonholes`` is how many are sewn.
    """

    spool: Fraction
    waste: Fraction
    stitches: Fraction
    thickness: Callable[[str], Fraction]
    colours: Mapping[str, str] = field(default_factory=dict)
    buttonholes: int = 0


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
    return sum(_plain_work(piece).values(), Fraction(0))


def _plain_work(piece: Piece) -> dict[str, Fraction]:
    """The stitching on a piece beside its tucks and rows, by the work that it belongs to [in]."""
    kinds = ("hem", "caught hem", "seam") if piece.on_piece is not None else ("hem", "caught hem")
    own = sum((edge.finished for edge in piece.edges.values() if edge.end.kind in kinds), Fraction(0))
    fixing = "quilting" if piece.fixed == "quilted" else "seams"
    work = dict.fromkeys(("topstitching", "gathering", "seams", "quilting"), Fraction(0))
    work["topstitching"] = own + piece.made.stitched
    work["gathering"] = 2 * piece.cut_across if piece.made.gathered else Fraction(0)
    work["gathering"] += 2 * sum((piece.edges[one.side].finished for one in piece.drawn if one.gathered), Fraction(0))
    work["seams"] = _joins(piece)
    work[fixing] += _fixing(piece)
    return work


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


def piece_thread(piece: Piece, sewing: Sewing) -> dict[str, Fraction]:
    """Return the thread in one piece [in], by its work: rows cross their thickest layers, all else a hem's three."""
    ply = sewing.thickness(piece.cloth)
    layers = piece.panel.rows.layers if piece.panel is not None and piece.panel.rows is not None else 0
    ratio = thread_ratio(_HEM_LAYERS * ply, sewing.stitches)
    rest = {"tucks": tuck_stitching(piece), **_plain_work(piece)}
    return {
        "rows": stitching_thread(row_stitching(piece), thread_ratio(layers * ply, sewing.stitches)),
        **{work: stitching_thread(length, ratio) for work, length in rest.items()},
    }


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
    thread = dict.fromkeys(THREAD_WORK, Fraction(0))
    for piece in pieces:
        for work, length in piece_thread(piece, sewing).items():
            thread[work] += piece.quantity * length
    thread["seams"] += stitching_thread(sum((one.lines * one.join_length for one in meetings), Fraction(0)))
    for way, length in neatened.items():
        if way in NEATENING_RATIOS:
            thread["neatening"] += stitching_thread(length, NEATENING_RATIOS[way])
    if "buttonholes" in sewing.colours:
        thread["buttonholes"] += sewing.buttonholes * BUTTONHOLE_THREAD
    whole = sum(thread.values(), Fraction(0))
    if not whole:
        return ThreadUse(Fraction(0), "none", 0)
    length = thread_with_waste(whole, sewing.waste)
    colours = tuple(_colours(thread, sewing, edition))
    bought = sum(one.spools for one in colours) or spools(whole, sewing.spool, sewing.waste)
    return ThreadUse(length, written_thread(length, edition), bought, colours)


def _colours(thread: Mapping[str, Fraction], sewing: Sewing, edition: Edition) -> Iterator[ThreadColour]:
    """The thread by its colours, in the order of the work; nothing where no colour is told."""
    if not sewing.colours:
        return
    of: dict[str, list[str]] = {}
    for work in (work for work in THREAD_WORK if thread.get(work)):
        of.setdefault(thread_colour(sewing.colours, work), []).append(work)
    for colour, works in of.items():
        used = sum((thread[work] for work in works), Fraction(0))
        length = thread_with_waste(used, sewing.waste)
        yield ThreadColour(
            colour, listed(works), length, written_thread(length, edition), spools(used, sewing.spool, sewing.waste)
        )


def thread_colour(colours: Mapping[str, str], work: str) -> str:
    """Return the colour of thread for some work: its own, that of the rest, else one like the cloth."""
    return colours.get(work) or colours.get(REST) or "to match the cloth"


def step_thread(colours: Mapping[str, str], step: str) -> str:
    """Return what a standard step says of its thread, a sentence; empty where the project tells no colours."""
    work = next((work for work, steps in THREAD_WORK.items() if step in steps), "")
    return f"Thread: {thread_colour(colours, work)}." if colours and work else ""


def written_thread(length: Fraction, edition: Edition) -> str:
    """Return a length of thread [in] in whole yards or metres, rounded up."""
    unit, name = (METRE, "m") if edition.unit == "cm" else (YARD, "yd")
    return f"{write_number(round_up(length, unit) / unit)} {name}"


def thread_figures(thread: ThreadUse) -> dict[str, Any]:
    """Return thread as plain nested values, its colours where any are told."""
    colours = [
        {"colour": one.name, "for": one.work, "length": one.length_text, "spools": one.spools} for one in thread.colours
    ]
    whole: dict[str, Any] = {"length": thread.length_text, "spools": thread.spools}
    return {**whole, "colours": colours} if colours else whole
