"""Thread: worked pieces and meeting edges come in, the length of stitching and the spools to buy go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.making.thread import spools, stitching_thread, thread_with_waste
from generator.calculation.worked import Panel, Piece
from generator.calculation.worked_project import Meeting, ThreadUse
from generator.lengths import METRE, YARD, Edition, round_up, write_number


def panel_stitching(panel: Panel, sewn_along: Fraction) -> Fraction:
    """Return the length of all lines of stitching on one panel: its tucks, cross tucks and rows [in]."""
    lines = panel.across.count * sewn_along
    if panel.cross is not None:
        lines += panel.cross.count * panel.across.finished
    if panel.rows is not None:
        lines += len(panel.rows.rows) * panel.across.finished
    return lines


def piece_stitching(piece: Piece) -> Fraction:
    """Return the length of stitching on one piece by itself: tucks, rows, hems, bindings, gathering [in]."""
    own = sum((edge.finished for edge in piece.edges.values() if edge.end.kind in ("hem", "caught hem")), Fraction(0))
    if piece.panel is not None:
        own += panel_stitching(piece.panel, piece.cut_along)
    if piece.kind in ("gathered strip", "gathered end"):
        own += 2 * piece.cut_across
    if piece.kind in ("binding", "tie", "piping"):
        own += 2 * piece.finished_across
    return own + (piece.parts - 1) * min(piece.part_across, piece.part_along)


def thread_use(
    pieces: Sequence[Piece], meetings: Sequence[Meeting], edition: Edition, spool: Fraction, waste: Fraction
) -> ThreadUse:
    """Return the thread of a whole project.

    ``spool`` is the length on one spool [in], ``waste`` the share for ends and waste.
    """
    lines = sum((piece.quantity * piece_stitching(piece) for piece in pieces), Fraction(0))
    lines += sum((meeting.join_length for meeting in meetings), Fraction(0))
    if not lines:
        return ThreadUse(Fraction(0), "none", 0)
    thread = stitching_thread(lines)
    length = thread_with_waste(thread, waste)
    return ThreadUse(length, written_thread(length, edition), spools(thread, spool, waste))


def written_thread(length: Fraction, edition: Edition) -> str:
    """Return a length of thread [in] in whole yards or metres, rounded up."""
    unit, name = (METRE, "m") if edition.unit == "cm" else (YARD, "yd")
    return f"{write_number(round_up(length, unit) / unit)} {name}"
