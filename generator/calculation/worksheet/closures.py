"""Closures and meeting edges: keys of the project file come in, places, buttonholes and compared lengths go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.pieces.buttons import button_line, button_positions, buttonhole, crowded_buttons, even_inset
from generator.calculation.pieces.closings import least_overlap
from generator.calculation.pieces.wrap import Lap, lap_faults
from generator.calculation.worked import Panel
from generator.calculation.worked_project import ClosureWork
from generator.calculation.worksheet.edge_strips import check_strips, told_places
from generator.calculation.worksheet.elastic import worked_elastic
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.calculation.worksheet.zips import zipped
from generator.definitions.closures import Closure
from generator.definitions.values import EdgeRun
from generator.errors import CalculationError
from generator.lengths import round_nearest


def worked_closures(scope: Scope) -> tuple[ClosureWork, ...]:
    """Return every closure of the project; one that cannot be worked is reported."""
    closures = []
    for model in scope.project.closures:
        try:
            closures.append(_closure(scope, model))
        except CalculationError as fault:
            scope.report("error", str(fault), model.place)
        except AlreadyReportedError:
            continue
    return tuple(closures)


def run_length(scope: Scope, run: EdgeRun) -> Fraction:
    """Return the finished length of a run of edges, one after the other [in]."""
    return sum((edge_length(scope, piece, edge) for piece, edge in run.edges), Fraction(0))


def edge_length(scope: Scope, piece: str, edge: str) -> Fraction:
    """Return the finished length of one edge, or of all edges round a piece [in]."""
    edges = scope.piece(piece).edges
    if edge == "all":
        return sum((edges[side].finished for side in ("left", "right", "top", "bottom")), Fraction(0))
    return edges[edge].finished


def _closure(scope: Scope, model: Closure) -> ClosureWork:
    if model.kind == "elastic":
        return worked_elastic(scope, model, run_length(scope, model.on))
    if model.kind == "zip" and model.edges[1].edges == model.on.edges:
        told = f"'{model.on}' cannot close onto itself; write under 'onto' the edge on the other side of the zip"
        raise CalculationError(told)
    length = run_length(scope, model.on)
    number = len(model.at) or scope.count(model.number)
    diameter = scope.value(model.diameter) if model.diameter else Fraction(0)
    thickness = scope.value(model.thickness)
    inset = scope.value(model.from_ends) if model.from_ends else even_inset(length, number)
    mark = scope.edition.mark
    exact = told_places(scope, model, length) if model.at else button_positions(length, number, inset)
    positions = tuple(round_nearest(place, mark) for place in exact)
    overlap = scope.value(model.overlap) if model.overlap else Fraction(0)
    hole = buttonhole(diameter, thickness) if model.kind == "buttons" and diameter else Fraction(0)
    closure = ClosureWork(
        kind=model.kind,
        number=number,
        on=str(model.on),
        onto=str(model.edges[1]),
        overlap=overlap,
        diameter=diameter,
        thickness=thickness,
        positions=positions,
        buttonhole=hole,
        inset=inset,
        text=_words(scope, model, overlap, diameter),
        note=scope.text(model.note),
        width=scope.value(model.width) if model.width else Fraction(0),
        strips=model.strips,
        each=scope.count(model.each),
    )
    _check(scope, model, closure)
    check_strips(scope, model, closure, length)
    return zipped(scope, model, closure, length, run_length(scope, model.edges[1])) if model.kind == "zip" else closure


def _words(scope: Scope, model: Closure, overlap: Fraction, diameter: Fraction) -> str:
    if model.kind != "buttons" or not diameter:
        return f"Lap by {scope.say(overlap)}." if overlap else ""
    from_edge = scope.say(button_line(diameter, scope.edition))
    lap = f" The edges lap by {scope.say(overlap)}." if overlap else ""
    return f"The middle of each button lies {from_edge} from the edge of the upper lap.{lap}"


def _check(scope: Scope, model: Closure, closure: ClosureWork) -> None:
    """Report buttons that touch, and a lap that its tucks or buttons or what closes it do not leave room for."""
    _check_overlap(scope, model, closure)
    if closure.kind != "buttons" or not closure.diameter:
        return
    crowded = crowded_buttons(closure.positions, closure.diameter, scope.edition)
    if crowded:
        scope.report("warning", crowded, model.place)
    (upper, edge), (under, other) = (_panel_at(scope, run) for run in model.edges)
    if upper is None or under is None or not closure.overlap:
        return
    above, below = upper.margin_at(edge), under.margin_at(other)
    if above is not None and below is not None:
        lap = Lap(closure.overlap, closure.diameter, closure.thickness, turned_out=upper.turned_over(edge))
        for fault in lap_faults(lap, above, below, scope.edition):
            scope.report("warning", fault, model.place)


def _check_overlap(scope: Scope, model: Closure, closure: ClosureWork) -> None:
    """Report a lap on which what closes it does not lie wholly."""
    size = closure.width or closure.diameter
    if closure.kind not in ("snaps", "magnet", "hook and loop") or not size or not closure.overlap:
        return
    least = least_overlap(size, scope.edition)
    if closure.overlap < least:
        wanted = f"{closure.kind} of {scope.say(size)} want {scope.say(least)}"
        told = f"the edges lap by {scope.say(closure.overlap)}, and {wanted}"
        scope.report("warning", f"{told}; write a wider 'overlap', or take smaller ones", model.place)


def _panel_at(scope: Scope, run: EdgeRun) -> tuple[Panel | None, str]:
    """The panel that bears the first edge of a run, None where that is no panel's, and the edge."""
    piece, edge = run.edges[0]
    return scope.piece(piece).panel, edge
