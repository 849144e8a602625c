"""The making up of one size: worked pieces, edges that meet and steps come in, the thing and its recipe go out."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence
from contextlib import suppress
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.making_up.acts import Act, Doing, Method
from generator.calculation.making_up.findings import recipe_findings
from generator.calculation.making_up.seams import sorted_seams, zip_of
from generator.calculation.making_up.thing import Closing, Component, Edge, Seam, Thing
from generator.calculation.making_up.walk import walk
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.pieces.shaped import is_curved
from generator.calculation.worksheet.raw_edges import report_raw_edges
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.calculation.worksheet.zips import report_lined_zips
from generator.definitions.acts import WrittenAct
from generator.definitions.pieces.copy import Copy
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.states import states
from generator.definitions.steps import Step
from generator.definitions.techniques import Technique
from generator.definitions.values import Formula
from generator.definitions.vocabulary import CLOSURES, KINDS


def thing_of(scope: Scope, pieces: Mapping[str, Piece]) -> Thing:
    """Return what a project of one size is made of."""
    project = scope.project
    parts = {name: _part(scope, name, piece) for name, piece in pieces.items()}
    seams = tuple(
        Seam(number, tuple(model.join.edges), tuple(model.to.edges), place=model.place)
        for number, model in enumerate(project.edges_that_meet)
    )
    closings = tuple(
        Closing(
            number,
            model.kind,
            tuple(model.on.edges),
            tuple(model.edges[1].edges),
            model.place,
            scope.value(model.overlap) if model.overlap else Fraction(0),
            scope.value(model.length) if model.length else Fraction(0),
            model.tabs,
            model.strips,
            facts=CLOSURES[model.kind],
        )
        for number, model in enumerate(project.closures)
    )
    return sorted_seams(Thing(KINDS[project.kind], parts, seams, closings))


def _part(scope: Scope, name: str, piece: Piece) -> Component:
    model = scope.project.pieces[name]
    return Component(
        name=name,
        kind=piece.kind,
        quantity=piece.quantity,
        cloth=piece.cloth,
        ends={side: edge.end.word for side, edge in piece.edges.items()},
        facts=frozenset((*model.of_kind.nature, *_facts(scope, piece))),
        broad=tuple(
            side for side, edge in piece.edges.items() if edge.end.kind == "hem" and edge.end.first != edge.end.second
        ),
        curved=tuple(side for side in piece.edges if is_curved(piece, side)),
        frays=scope.project.cloths[piece.cloth].frays if piece.cloth in scope.project.cloths else False,
        neaten=model.neaten,
        drawn={one.side: one.way for one in piece.drawn},
        across=piece.finished_across,
        along=piece.finished_along,
        lies_on=piece.lies_on,
        waits_for=panels_of(scope, model) if piece.after_panel else (),
        blocks=piece.blocks.of if piece.blocks is not None else "",
        sewn_on=piece.on_piece.piece if piece.on_piece is not None else "",
        place=model.place,
    )


def _facts(scope: Scope, piece: Piece) -> Iterable[str]:
    panel = piece.panel
    if panel is not None:
        yield "tucks"
        yield from ("breadths",) if panel.joins else ()
        yield from ("cross tucks",) if panel.cross is not None else ()
        yield from ("rows",) if panel.rows is not None else ()
        yield from ("rods",) if panel.rods is not None else ()
        yield from ("pressed",) if panel.pressed else ()
        yield from ("released",) if panel.released is not None else ()
        yield from ("sample",) if "measured" in KINDS[scope.project.kind] else ()
    yield from (piece.fixed,) if piece.fixed else ()
    yield from ("outline",) if piece.shaped else ()
    yield from ("own edges",) if piece.shape is not None else ()
    yield from ("shape unknown",) if piece.shaped and piece.trimmed_to is None else ()
    yield from ("later",) if piece.after_panel else ()
    yield from ("bias",) if piece.square else ()
    yield from ("lengths",) if piece.lengths is not None else ()
    yield from ("embroidered",) if any(one.on == piece.name for one in scope.project.embroidery) else ()
    yield from ("at an edge",) if any(one.strips == piece.name for one in scope.project.closures) else ()


def waits_for(scope: Scope, measures: Collection[str]) -> bool:
    """Whether a piece that is cut after the panel is worked out from one of these, such as 'front.along'."""
    waiting = [model for model in scope.project.pieces.values() if model.cut == "after the panel"]
    return any(measure in measures for model in waiting for measure in _panel_measures(scope, model))


def panels_of(scope: Scope, model: PieceModel) -> tuple[str, ...]:
    """Return the panels that a piece is worked out from; all of them where its formulas name none."""
    found = [measure.partition(".")[0] for measure in _panel_measures(scope, model)]
    project = scope.project
    return tuple(dict.fromkeys(found)) or tuple(n for n, one in project.pieces.items() if isinstance(one, TuckedPanel))


def _panel_measures(scope: Scope, model: PieceModel) -> list[str]:
    """The measures of panels in the formulas of a piece, and in those that they name."""
    project = scope.project
    sizes = project.sizes[scope.size].values
    open_names = _names_in(model)
    seen: set[str] = set()
    found: list[str] = []
    while open_names:
        name = open_names.pop(0)
        if name in seen:
            continue
        seen.add(name)
        piece = name.partition(".")[0]
        if "." in name:
            other = project.pieces[piece]
            if isinstance(other, TuckedPanel):
                found.append(name)
            else:
                open_names += _names_in(other)
        elif name not in sizes and name in project.measures:
            open_names += project.measures[name].names
    return found


def _names_in(model: PieceModel) -> list[str]:
    """The names in the formulas of a piece; a copy is as large as the piece that it is of."""
    copied = [f"{model.of}.{side}" for side in ("across", "along")] if isinstance(model, Copy) else []
    return [*copied, *(name for value in vars(model).values() if isinstance(value, Formula) for name in value.names)]


def methods_of(techniques: Mapping[str, Technique]) -> Mapping[str, Method]:
    """Return the techniques of a room as making up sees them."""
    return MappingProxyType(
        {
            name: Method(
                name,
                technique.head.kinds,
                technique.head.sews,
                technique.head.needs,
                technique.head.gives,
                technique.head.before,
            )
            for name, technique in techniques.items()
        }
    )


def doing_of(scope: Scope, step: Step, methods: Mapping[str, Method]) -> Doing:
    """Return one step of a file as what it does in one size."""
    targets: tuple[Edge, ...] = tuple((target.piece, target.edge) for target in step.on)
    used = tuple(Act(name, targets, place=step.place) for name in step.use)
    own = acts_of(scope, step)
    known = all(methods[name].known for name in step.use) if step.use else bool(own)
    title = ", ".join(step.use) or step.title
    return Doing(title, used + own, step.place, step.pieces, known, own=not step.use)


def acts_of(scope: Scope, step: Step) -> tuple[Act, ...]:
    """Return the acts that a step of a file is said to do, with the lengths of a size."""
    return tuple(_act(scope, act) for act in step.does)


def _act(scope: Scope, act: WrittenAct) -> Act:
    onto = act.onto.edges if act.onto is not None else ()
    length = None
    if act.length is not None:
        with suppress(AlreadyReportedError):
            length = scope.value(act.length)
    what = tuple(act.what.edges)
    return Act(act.does, what, tuple(onto), act.word, act.place, length, act.right_sides, act.end, act.for_good)


def acts_taken(scope: Scope, steps: Sequence[Step], methods: Mapping[str, Method]) -> tuple[Act, ...]:
    """Return every act of a recipe, in order."""
    return tuple(act for step in steps for act in doing_of(scope, step, methods).acts)


def report_making(scope: Scope, thing: Thing, steps: Sequence[Step], methods: Mapping[str, Method]) -> None:
    """Report what is wrong with a recipe, and the techniques of the room that do not say what they do."""
    recipe = [doing_of(scope, step, methods) for step in steps]
    told = {name: (state.does, state.done) for name, state in states().items()}
    for finding in recipe_findings(walk(thing, methods, recipe), told):
        scope.report(finding.level, finding.text, finding.place, of_file=True)
    _report_filling(scope, recipe, methods)
    report_raw_edges(scope, thing, recipe)
    _report_places(scope, thing, [act for doing in recipe for act in doing.acts])
    _report_openings(scope, thing, [act for doing in recipe for act in doing.acts])
    if any("set zip" in step.use for step in steps):
        report_lined_zips(scope, thing)
    for step in steps:
        for name in step.use:
            if not methods[name].known:
                text = (
                    f"nobody knows what '{name}' does to its pieces; say it in site/techniques/{name.replace(' ', '-')}"
                    ".yaml, for example gives: nothing, or gives: hemmed"
                )
                scope.report("note", text, step.place)


def _report_filling(scope: Scope, recipe: Iterable[Doing], methods: Mapping[str, Method]) -> None:
    """Tell that something is filled where nothing is bought to fill it with."""
    project = scope.project
    if project.supplies or any("bought ready" in model.of_kind.nature for model in project.pieces.values()):
        return
    fills = (
        act for doing in recipe for act in doing.acts if act.does in methods and "filled" in methods[act.does].gives
    )
    for act in fills:
        told = (
            f"'{act.does}' fills it, and nothing is bought to fill it with; write it down, so that it is on the list:"
        )
        scope.report("warning", f"{told}\nsupplies:\n  - item: Cushion pad", act.place, of_file=True)


def _report_places(scope: Scope, thing: Thing, acts: Iterable[Act]) -> None:
    """Refuse what an act sews on another piece than the one that its own line says."""
    for act in (act for act in acts if act.does in ("sew", "baste") and act.onto):
        onto = [name for name, _ in act.onto]
        for part in (thing.parts[name] for name, _ in act.what):
            if part.sewn_on and part.sewn_on not in onto and not thing.seams_of(part.name):
                text = f"'{part.name}' is sewn on {part.sewn_on!r} as its own line says, and here on '{onto[0]}'"
                scope.report("error", f"{text}; change one of the two", act.place)


def _report_zip(scope: Scope, thing: Thing, act: Act) -> None:
    """Tell an opening that is left for turning where a zip is one already."""
    seams = (seam for seam in thing.seams if not act.for_good and seam.edges & set(act.what))
    for closing in filter(None, (zip_of(seam, thing) for seam in seams)):
        told = f"the zip of '{closing.on[0][0]}' is an opening already"
        scope.report("warning", f"{told}; turn the work through the zip, and take this line out", act.place)


def _report_openings(scope: Scope, thing: Thing, acts: Iterable[Act]) -> None:
    """Refuse openings that leave nothing of their edge to sew, and those that are none."""
    for act in acts:
        if act.length is None:
            continue
        _report_zip(scope, thing, act)
        said = scope.say(act.length)
        if act.length <= 0:
            text = f"an opening of {said} is none; write how much stays open, or take the line out"
            scope.report("error", text, act.place)
            continue
        for piece, side in act.what:
            part = thing.parts[piece]
            edge = {"left": part.along, "right": part.along, "top": part.across, "bottom": part.across}.get(side)
            if edge is not None and act.length >= edge:
                text = f"an opening of {said} leaves nothing to sew of '{piece}.{side}', which is {scope.say(edge)}"
                scope.report("error", f"{text}; leave less open", act.place)
