"""Edges that meet: keys of the project file come in, compared lengths and edges that are drawn up go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.pieces.drawn_edges import (
    LEAST_GATHERED,
    drawn_up_finding,
    edge_pleat_lines,
    edge_pleats,
    fullness_of,
    hands_of,
)
from generator.calculation.pieces.fullness import gathered_layers
from generator.calculation.pieces.roll import end_across, round_end_remedy
from generator.calculation.worked_piece import Piece, Round
from generator.calculation.worked_project import MeetingWork
from generator.calculation.worksheet.closures import run_length
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.definitions.closures import Meeting
from generator.definitions.pieces.shaped_facing import ShapedFacing
from generator.definitions.values import EdgeRun
from generator.errors import CalculationError
from generator.lengths import round_nearest


def worked_meetings(scope: Scope) -> tuple[MeetingWork, ...]:
    """Return every pair of edges that meet; a pair of unequal lengths is reported."""
    meetings = []
    for model in scope.project.edges_that_meet:
        try:
            meeting = _meeting(scope, model)
        except AlreadyReportedError:
            continue
        meetings.append(meeting)
        if meeting.drawn is not None:
            continue
        longer = meeting.join_length - meeting.to_length
        # What is told to be eased is a tolerance: any length up to it is eased in.
        apart = longer - meeting.ease if longer > meeting.ease else max(-longer, Fraction(0))
        if apart > scope.edition.mark:
            # What is sewn cannot be planned otherwise: then the sheet is given, and says what does not fit.
            refused = apart > scope.edition.wish_step and not scope.sewn
            scope.report("error" if refused else "warning", _apart(scope, model, meeting), model.place)
    return tuple(meetings)


def _meeting(scope: Scope, model: Meeting) -> MeetingWork:
    join, to = run_length(scope, model.join), run_length(scope, model.to)
    # What goes round an end of this size by the ruler is as long as its rim, however both were rounded.
    if _fits_round(scope, model.join, to):
        join = to
    elif _fits_round(scope, model.to, join):
        to = join
    name, side = model.join.edges[0]
    edge = scope.piece(name).edges.get(side)
    lines = 2 if (edge is not None and edge.end.shuts_in) or _is_faced(scope, model) else 1
    ease = scope.value(model.ease) if model.ease is not None else Fraction(0)
    if model.drawn == "eased" and model.ease is None:
        ease = max(join - to, Fraction(0))
    note = scope.text(model.note)
    work = MeetingWork(str(model.join), str(model.to), join, to, ease, note, lines)
    return _drawn(scope, model, work) if model.drawn != "flat" else work


def _is_faced(scope: Scope, model: Meeting) -> bool:
    """Whether a facing cut to shape lies on one side, so that it is understitched beside its seam."""
    pieces = scope.project.pieces
    sides = {isinstance(pieces[name], ShapedFacing) for run in (model.join, model.to) for name, _ in run.edges}
    return sides == {True, False}


def _drawn(scope: Scope, model: Meeting, work: MeetingWork) -> MeetingWork:
    """The same meeting with its first edge eased, gathered or pleated to the second; what does not do is reported."""
    with scope.reporting(model.place):
        if work.join_length <= work.to_length and model.how is None:
            return work
        fullness = fullness_of(work.join_length, work.to_length)
        over = work.join_length - work.to_length
        finding = drawn_up_finding(model.drawn, fullness, scope.edition, over) if model.how is not None else ""
        if finding:
            scope.report("warning", finding, model.place)
        if model.drawn == "eased":
            return work
        if len(model.join.edges) > 1 or model.join.edges[0][1] in ("all", "edge", "rim"):
            raise CalculationError(
                f"one edge is {model.drawn} to another, and '{model.join}' are several; write a line for each edge, or "
                "join the pieces to one first"
            )
        name, side = model.join.edges[0]
        piece = scope.piece(name)
        _report_tucks(scope, model, piece, side)
        if model.drawn == "gathered":
            return replace(work, drawn=DrawnUp(side, work.to_length, layers=gathered_layers(fullness)))
        assert model.pleats is not None
        number = scope.count(model.pleats)
        pleats = edge_pleats(work.join_length, work.to_length, number, scope.edition)
        eased = drawn_up_finding("eased", 1 + pleats.eased / work.to_length, scope.edition, pleats.eased)
        if eased:
            text = f"{number} pleats leave more to ease in: {eased.partition(':')[0]}; write another number of pleats"
            scope.report("warning", text, model.place)
        lines = edge_pleat_lines(pleats, hands_of(model.pleats_lie, number), before(piece, side))
        mark = scope.edition.mark
        folds = tuple((round_nearest(line.fold, mark), round_nearest(line.onto, mark)) for line in lines)
        return replace(work, drawn=DrawnUp(side, work.to_length, folds, pleats.layers, pleats.depth))


def _report_tucks(scope: Scope, model: Meeting, piece: Piece, side: str) -> None:
    """Report tucks that an edge which is drawn up holds, in a cloth too heavy for both."""
    if piece.panel is None or not piece.panel.held(side) or not piece.panel.across.count:
        return
    weight = scope.weight_of(scope.project.pieces[piece.name])
    if weight in ("medium", "heavy"):
        text = (
            f"the edge '{piece.name}.{side}' holds tucks and is drawn up as well; in a {weight} cloth that is too "
            "thick (common practice, no source): let the tucks go before that edge, or take a light cloth"
        )
        scope.report("warning", text, model.place)


def before(piece: Piece, side: str) -> Fraction:
    """Return the cloth at the left or upper end of a side, before its finished length begins [in].

    Once that end is hemmed, there is none: so it is when the side is drawn up.
    """
    end = piece.edges.get("left" if side in ("top", "bottom") else "top")
    return Fraction(0) if end is None or end.end.kind in ("hem", "caught hem", "turnover") else end.allowance


def drawn_pieces(pieces: Mapping[str, Piece], meetings: Sequence[MeetingWork]) -> dict[str, Piece]:
    """Return pieces with the edges that are gathered or pleated to what they meet."""
    found = dict(pieces)
    for meeting in meetings:
        name = meeting.join.partition(".")[0]
        if meeting.drawn is not None:
            found[name] = replace(found[name], drawn=(*found[name].drawn, meeting.drawn))
    return found


def _apart(scope: Scope, model: Meeting, meeting: MeetingWork) -> str:
    longer = meeting.join_length - meeting.to_length
    apart = scope.say(longer - meeting.ease if longer > 0 else -longer)
    apart = f"with an ease of {scope.say(meeting.ease)} they are {apart}" if meeting.ease else apart
    remedy = _round_an_end(scope, model, meeting) or "make them equal"
    return (
        f"'{meeting.join}' is {scope.say(meeting.join_length)} and '{meeting.to}' is "
        f"{scope.say(meeting.to_length)}: {apart} apart; {remedy}, or {_ease(scope, meeting)} if that much is eased in"
        f"{_drawn_up_remedy(meeting)}"
    )


def _drawn_up_remedy(meeting: MeetingWork) -> str:
    """Return what else there is for an edge that is a quarter longer or more."""
    full = meeting.join_length >= LEAST_GATHERED * meeting.to_length
    return "; or write 'how: gathered', or 'how: pleated' with the number of 'pleats'" if full else ""


def _ease(scope: Scope, meeting: MeetingWork) -> str:
    """Return which ease to write so that two edges meet; only the first can be the longer one."""
    longer = meeting.join_length - meeting.to_length
    if longer < 0:
        return f"name the longer one first under 'join' and write 'ease: {scope.say(-longer)}'"
    return f"write 'ease: {scope.say(longer)}'"


def _round_an_end(scope: Scope, model: Meeting, meeting: MeetingWork) -> str:
    """What to change where one of two edges goes once round a circle; empty elsewhere."""
    for run, other in ((model.join, meeting.to_length), (model.to, meeting.join_length)):
        end = _end(scope, run)
        if end is not None:
            return round_end_remedy(other, end.finished_across, scope.edition)
    return ""


def _end(scope: Scope, run: EdgeRun) -> Piece | None:
    """The round piece of which a run is the rim, if it is one."""
    piece = scope.piece(run.edges[0][0])
    return piece if len(run.edges) == 1 and any(isinstance(part.outline, Round) for part in piece.parts) else None


def _fits_round(scope: Scope, run: EdgeRun, other: Fraction) -> bool:
    end, mark = _end(scope, run), scope.edition.mark
    return end is not None and end_across(other, mark) == round_nearest(end.finished_across, mark)
