"""The worksheet: a project, a size and an edition come in, everything that they come to goes out.

All faults are told at once. What one fault makes impossible elsewhere stays silent.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from functools import partial
from pathlib import Path

from generator.calculation.making_up.book import book_of
from generator.calculation.making_up.joining import Joiner, attached
from generator.calculation.pieces.openings import turning_opening
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import ClothUse, SheetStep, Worksheet
from generator.calculation.worked_thread import ThreadUse
from generator.calculation.worksheet.cautions import CautionRules, cautions_for, rules_of, worked_cautions
from generator.calculation.worksheet.closures import worked_closures
from generator.calculation.worksheet.cloths import cloth_uses
from generator.calculation.worksheet.costs import sheet_cost, wanted_things
from generator.calculation.worksheet.deciding import deciding_measure
from generator.calculation.worksheet.finished import finished_thing
from generator.calculation.worksheet.making import acts_taken, methods_of, report_making, thing_of
from generator.calculation.worksheet.meetings import drawn_pieces, worked_meetings
from generator.calculation.worksheet.neatening import neatened, report_raw_edges
from generator.calculation.worksheet.new_cuts import new_cuts
from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.recipes import taken_steps
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.calculation.worksheet.step_context import StepContext
from generator.calculation.worksheet.steps import sheet_steps
from generator.calculation.worksheet.supplies import worked_supplies
from generator.calculation.worksheet.thickness import thickest_places
from generator.calculation.worksheet.threads import Sewing, thread_use
from generator.calculation.worksheet.true_corners import report_corners
from generator.definitions.caution_rule import CautionRule
from generator.definitions.cautions import cautions_of
from generator.definitions.project import Project
from generator.definitions.room import Room
from generator.definitions.technique_names import technique_folders
from generator.definitions.techniques import Technique, load_techniques
from generator.errors import FaultyFileError
from generator.lengths import Edition


@dataclass(frozen=True, slots=True)
class RoomContext:
    """What all worksheets of one room share: its settings, technique texts and cautions."""

    room: Room
    techniques: Mapping[str, Technique] = field(default_factory=dict)
    cautions: Mapping[str, CautionRule] = field(default_factory=dict)


def load_room_context(room: Room, folder: Path) -> RoomContext:
    """Read what all worksheets of a room share; a technique in its ``site/techniques`` stands before the tool's."""
    return RoomContext(room, load_techniques(technique_folders(folder)), cautions_of(room))


def worked_sheet(
    project: Project, size: str, edition: Edition, shared: RoomContext, sewn: Mapping[str, Fraction] | None = None
) -> Worksheet:
    """Return everything that a project comes to in one size and edition.

    Faults of the recipe stand among the findings: the numbers are right without it, and :func:`refuse_unsewable` tells
    whoever prints.

    ``sewn`` maps a measure of a panel as sewn, such as 'front.across', to its length [in].

    Raises
    ------
    FaultyFileError
        If anything cannot be worked; it carries every finding.
    """
    scope = Scope(project, size, edition, shared.room, worked_piece)
    scope.sewn = dict(sewn or {})
    pieces = _pieces(scope)
    meetings, closures = worked_meetings(scope), worked_closures(scope)
    cloths = cloth_uses(scope, tuple(pieces.values()))
    scope.pieced = {name: way for use in cloths.values() for name, way in use.pieced.items()}
    pieces = drawn_pieces({name: replace(one, pieced=scope.pieced.get(name)) for name, one in pieces.items()}, meetings)
    _stop_on_errors(scope)
    thing, methods = thing_of(scope, pieces), methods_of(shared.techniques)
    report_raw_edges(scope, thing, pieces)
    _stop_on_errors(scope)
    taken = taken_steps(scope, thing, methods)
    acts = acts_taken(scope, taken, methods)
    joiner = Joiner(book_of(thing, methods, acts), lambda part: turning_opening(part.across, part.along, edition))
    context = StepContext(scope, pieces, cloths, meetings, closures, shared.techniques, joiner, tuple(acts))
    try:
        thickest = thickest_places(scope, thing, pieces)
    except AlreadyReportedError:
        thickest = {}
    rules = rules_of(project, shared.cautions)
    steps = sheet_steps(context, taken, partial(cautions_for, rules))
    _stop_on_errors(scope)
    report_making(scope, thing, taken, methods)
    report_corners(scope, thing, pieces)
    try:
        laid = finished_thing(scope, joiner.book, acts)
        sheet = _sheet(context, cloths, steps, rules)
    except AlreadyReportedError:
        raise FaultyFileError(scope.findings) from None
    return replace(
        sheet,
        thickest=thickest,
        beginners=shared.room.beginners,
        thing=thing,
        attached=attached(thing, acts),
        laid_out=laid,
    )


def _sheet(
    context: StepContext, cloths: dict[str, ClothUse], steps: tuple[SheetStep, ...], rules: CautionRules
) -> Worksheet:
    """Put everything together, with what follows from it: supplies, thread, cost, cautions."""
    scope, project = context.scope, context.scope.project
    named = project.sizes[scope.size]
    tools = tuple(dict.fromkeys(tool for step in steps for tool in step.tools))
    supplies, thread = worked_supplies(scope), _thread(scope, context)
    told_first = cautions_for(rules, (), scope.places)
    return Worksheet(
        project=project.name,
        title=project.title,
        kind=project.kind,
        level=project.level,
        summary=scope.text(project.summary),
        size=scope.size,
        size_label=named.label or scope.size,
        size_note=" ".join(note for note in (scope.text(named.note), sewn_words(scope)) if note),
        edition=scope.edition,
        measures=_measures(scope, dimension=1),
        numbers=_measures(scope, dimension=0),
        pieces=context.pieces,
        cloths=cloths,
        meetings=context.meetings,
        closures=context.closures,
        supplies=supplies,
        thread=thread,
        steps=steps,
        cautions=worked_cautions(scope, rules, {*told_first, *(name for step in steps for name in step.cautions)}),
        told_first=told_first,
        tools=tools,
        minutes=sum(step.minutes for step in steps),
        cost=sheet_cost(scope, wanted_things(cloths.values(), supplies, context.closures, thread)),
        sewn=named.sewn or "",
        as_sewn=scope.sewn,
        findings=(*project.findings, *scope.findings),
        own=tuple(named.values),
        deciding=deciding_measure(scope),
        size_source=f"{named.source.rstrip('.')}. Between two sizes take the larger." if named.source else "",
        new_cuts=new_cuts(scope, context.pieces),
    )


def refuse_unsewable(worksheet: Worksheet) -> None:
    """Refuse a worksheet whose recipe cannot be sewn.

    Raises
    ------
    FaultyFileError
        With every finding of the worksheet, where one of them is an error.
    """
    if any(finding.level == "error" for finding in worksheet.findings):
        raise FaultyFileError(finding for finding in worksheet.findings if finding.level != "note")


def sewn_words(scope: Scope) -> str:
    """Return to which measures as sewn a sheet was worked again, in a sentence; empty where it was only planned."""
    told = []
    for name, length in scope.sewn.items():
        piece, _, side = name.partition(".")
        told.append(f"{scope.project.pieces[piece].label or piece} {scope.say(length)} {side}")
    return f"Worked again to what was sewn: {' and '.join(told)}." if told else ""


def _stop_on_errors(scope: Scope) -> None:
    if any(finding.level == "error" for finding in scope.findings):
        raise FaultyFileError(scope.findings)


def _pieces(scope: Scope) -> dict[str, Piece]:
    pieces = {}
    for name in scope.project.pieces:
        try:
            pieces[name] = scope.piece(name)
        except AlreadyReportedError:
            continue
    return pieces


def _thread(scope: Scope, context: StepContext) -> ThreadUse:
    room = scope.room
    sewing = Sewing(
        scope.value(room.spool),
        room.waste,
        1 / scope.value(room.stitch),
        scope.cloth_thickness,
        scope.project.thread,
        sum(one.number for one in context.closures if one.kind == "buttons"),
    )
    return thread_use(tuple(context.pieces.values()), context.meetings, neatened(context), sewing, scope.edition)


def _measures(scope: Scope, *, dimension: int) -> dict[str, Fraction]:
    formulas = {**scope.project.sizes[scope.size].values, **scope.project.measures}
    return {name: scope.lookup(name) for name, formula in formulas.items() if formula.dimension == dimension}
