"""A wrap round a roll with its lap and buttons: seen from the end, and from the front."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked_project import ClosureWork
from generator.drawing.assemblies.marks import arc, button, note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import PLY
from generator.drawing.labels import POINTS
from generator.drawing.style import Pen
from generator.lengths import say_length

LEFT, RIGHT, TOP, BOTTOM = 0.1, 2.9, 0.3, 0.98
EDGE, BUTTONS, BENEATH = 0.46, 0.58, 0.7


def roll_closure(subject: Subject) -> ClosureWork | None:
    """Return the closure by which one edge of a piece is closed onto another of its own, None if there is none."""
    for closure in subject.worksheet.closures:
        itself = {_piece_of(closure.on), _piece_of(closure.onto)} == {subject.piece.name}
        if itself and closure.on != closure.onto:
            return closure
    return None


def _piece_of(edge: str) -> str:
    return edge.rpartition(".")[0]


def roll_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the wrap round the form from its end, and lying with its buttons."""
    closure = roll_closure(subject)
    lap = say_length(closure.overlap, subject.worksheet.edition) if closure and closure.overlap else ""
    return (
        Stage("", 2.4, 1.42, lambda canvas: _end(canvas, lap)),
        Stage("", 3.0, 1.3, lambda canvas: _front(canvas, subject, closure)),
    )


def _end(canvas: StageCanvas, lap: str) -> None:
    """Draw the roll from its end: the form, the wrap once round it, the lap on top with its button."""
    style, centre, radius = canvas.style, (0.8, 0.82), 0.42
    canvas.circle(centre, radius, fill=style.shade, pen=style.measure)
    canvas.text("form", *centre, backing=style.shade)
    over = arc(centre, radius + 0.13, 255, 300)
    path = [*arc(centre, radius + 0.05, 262, 600), *over]
    canvas.line(path, Pen(style.ink, PLY * POINTS))
    canvas.line(path, Pen(style.cloth, PLY * POINTS - 2 * style.thin))
    peak = over[len(over) // 2]
    canvas.line(((peak[0] - 0.1, peak[1] - 0.06), (peak[0] + 0.1, peak[1] - 0.05)), Pen(style.ink, 3.0))
    note(canvas, "button", (1.4, 0.12), (peak[0] + 0.1, peak[1] - 0.05))
    note(canvas, f"lap {lap}".strip(), (1.6, 0.45), over[-1])
    note(canvas, "wrap", (1.6, 1.2), arc(centre, radius + 0.05, 40, 41)[0])


def _front(canvas: StageCanvas, subject: Subject, closure: ClosureWork | None) -> None:
    """Draw the roll lying, its lap along it, a button at every place."""
    style = canvas.style
    canvas.rectangle((LEFT, TOP), (RIGHT, BOTTOM), fill=style.cloth, pen=style.outline)
    canvas.line(((LEFT, EDGE), (RIGHT, EDGE)), style.outline)
    canvas.line(((LEFT, BENEATH), (RIGHT, BENEATH)), style.finish)
    positions = closure.positions if closure else ()
    along = subject.piece.finished_along
    places = [LEFT + (RIGHT - LEFT) * float(Fraction(place) / along) for place in positions]
    for x in places:
        button(canvas, (x, BUTTONS), 0.07)
    if positions:
        first = say_length(positions[0], subject.worksheet.edition)
        canvas.lines([((x, TOP - 0.08), (x, TOP)) for x in (LEFT, places[0])], style.measure)
        canvas.line(((places[0], TOP), (places[0], BUTTONS - 0.07)), style.measure)
        canvas.arrow((LEFT, TOP - 0.06), (places[0], TOP - 0.06), style.measure, both=True, size=0.05)
        canvas.text(first, LEFT, TOP - 0.17, hold="left")
    span(canvas, say_length(along, subject.worksheet.edition), (LEFT, BOTTOM + 0.2), (RIGHT, BOTTOM + 0.2))
