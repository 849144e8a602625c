"""The steps of a sheet: steps of a project file and technique texts come in, finished Markdown goes out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.items import Item
from generator.calculation.making_up.joined import Joined
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import SheetStep
from generator.calculation.worksheet.brackets import filled_brackets, printed_brackets
from generator.calculation.worksheet.cautions import told_at
from generator.calculation.worksheet.conditions import holds
from generator.calculation.worksheet.making import acts_of
from generator.calculation.worksheet.minutes import own_minutes, technique_minutes
from generator.calculation.worksheet.moment import Moment
from generator.calculation.worksheet.scope import AlreadyReportedError
from generator.calculation.worksheet.step_context import StepContext
from generator.calculation.worksheet.threads import step_thread
from generator.definitions.caution_rule import asked_names
from generator.definitions.steps import Step
from generator.definitions.techniques import Technique
from generator.errors import CalculationError


@dataclass(frozen=True, slots=True)
class UnnumberedStep:
    """A step before it has its number and its cautions; ``states`` are those that it gives."""

    title: str
    text: str
    pieces: tuple[str, ...]
    standard: str
    tools: tuple[str, ...]
    figures: tuple[str, ...]
    minutes: int
    printed: str = ""
    lists: tuple[str, ...] = ()
    joined: tuple[Joined, ...] = ()
    keeps: bool = True
    states: frozenset[str] = frozenset()


def sheet_steps(
    context: StepContext,
    taken: Sequence[Step],
    cautions_for: Callable[[Sequence[str], Sequence[str]], tuple[str, ...]],
) -> tuple[SheetStep, ...]:
    """Return the steps of this size in order, each with its figures, time and cautions: of its tools, and asked for.

    What the project itself asks to take care of is told before what makes it matter: a lamp when its shade is fitted,
    small parts when they are set; else at the last step, for then the thing is used.
    """
    found: list[tuple[UnnumberedStep, Step, bool]] = []
    before: list[Act] = []
    for step in taken:
        try:
            with context.scope.reporting(step.place):
                told = _told(context, step, before)
        except AlreadyReportedError:
            continue
        before += _all_acts(context, step)
        found += [(one, step, one is told[-1]) for one in told]
    places = told_at([one.states for one, _, _ in found], context.scope.places)
    return tuple(
        SheetStep(
            number=number,
            title=one.title,
            text=one.text,
            pieces=one.pieces,
            standard=one.standard,
            tools=one.tools,
            cautions=cautions_for(one.tools, (*asked_names(step.cautions), *places.get(number, ()))),
            figures=(*one.figures, *seam_keys(number, one.joined)),
            minutes=one.minutes,
            session_ends=step.session_ends and last,
            printed=one.printed or one.text,
            lists=one.lists,
            joined=one.joined,
            keeps=one.keeps,
        )
        for number, (one, step, last) in enumerate(found, 1)
    )


def seam_keys(number: int, joined: Sequence[Joined]) -> tuple[str, ...]:
    """Return the keys of the diagrams of what a step joins: 'seam 11-1' for the first of step 11."""
    return tuple(f"seam {number}-{place}" for place, _ in enumerate(joined, 1))


def _all_acts(context: StepContext, step: Step) -> list[Act]:
    """Everything that a step does: its standard steps, then what the file adds to them."""
    targets = tuple((target.piece, target.edge) for target in step.on)
    return [*(Act(name, targets) for name in step.use), *acts_of(context.scope, step)]


def _told(context: StepContext, step: Step, before: Sequence[Act]) -> list[UnnumberedStep]:
    """One step of the file: its own text, or each of its standard steps for each panel it is done on.

    A standard step that has nothing to tell in this size, such as joining breadths where there is one, is left out.
    """
    on = step.pieces or tuple(context.pieces)
    on = tuple(name for name in on if name in context.pieces)
    if not step.use:
        assert step.title is not None
        assert step.text is not None
        text = step.text.filled(context.scope.edition, context.scope.lookup)
        acts = acts_of(context.scope, step)
        context = _with_done(context, _given(context, before))
        joined = _joined(context, acts)
        minutes = step.minutes if step.minutes is not None else own_minutes(context, acts)
        states = _states(context, acts)
        shown = tuple(f"placed {name}" for name in _sewn_on(context, acts))
        own = UnnumberedStep(step.title, text, step.pieces, "", tuple(step.uses), shown, minutes, states=states)
        return [replace(own, joined=joined)]
    told = []
    for place, name in enumerate(step.use):
        earlier = (*before, *_all_acts(context, step)[:place])
        given = _given(context, earlier)
        here = _with_done(context, given)
        for pieces in _groups(here, context.techniques[name], on):
            acts = _acts(here, step, name, pieces)
            one = _standard(context.techniques[name], pieces, Moment(here, acts[0], earlier, given))
            told.append(replace(one, joined=_joined(here, acts), states=_states(here, acts)))
    return _with_own(context, step, [one for one in told if one.text])


def _sewn_on(context: StepContext, acts: Sequence[Act]) -> list[str]:
    """The pieces that acts sew on the face of others, of which the file says where."""
    named = (name for act in acts if act.does in ("sew", "baste") for name, _ in act.what)
    return [name for name in dict.fromkeys(named) if context.pieces[name].on_piece is not None]


def _acts(context: StepContext, step: Step, technique: str, pieces: Sequence[str]) -> tuple[Act, ...]:
    """A standard step of the file as it is done on some of its pieces, the last with what the file adds to it."""
    act = Act(technique, tuple((target.piece, target.edge) for target in step.on if target.piece in pieces))
    return (act, *acts_of(context.scope, step)) if technique == step.use[-1] else (act,)


def _given(context: StepContext, before: Sequence[Act]) -> frozenset[Item]:
    book = context.joiner.book if context.joiner is not None else None
    return frozenset(item for act in before for item in book.gives(act)) if book is not None else frozenset()


def _with_done(context: StepContext, given: frozenset[Item]) -> StepContext:
    """The same after some steps: a seam that is sewn already is not sewn again with others of its pieces."""
    if context.joiner is None:
        return context
    return replace(context, joiner=replace(context.joiner, book=replace(context.joiner.book, done=given)))


def _states(context: StepContext, acts: Sequence[Act]) -> frozenset[str]:
    book = context.joiner.book if context.joiner is not None else None
    return frozenset(item.state for act in acts for item in book.gives(act)) if book is not None else frozenset()


def _joined(context: StepContext, acts: Sequence[Act]) -> tuple[Joined, ...]:
    return context.joiner.joined(acts) if context.joiner is not None else ()


def _with_own(context: StepContext, step: Step, told: list[UnnumberedStep]) -> list[UnnumberedStep]:
    """Add what the file adds to its standard steps: words and tools to the last, first words and time to the first."""
    if told and step.begin_with is not None:
        first = step.begin_with.filled(context.scope.edition, context.scope.lookup).strip()
        text, printed = (f"{first}\n\n{words}" for words in (told[0].text, told[0].printed))
        told[0] = replace(told[0], text=text, printed=printed)
    if told and step.add is not None:
        added = step.add.filled(context.scope.edition, context.scope.lookup)
        last = told[-1]
        told[-1] = replace(last, text=f"{last.text}\n\n{added}", printed=f"{last.printed}\n\n{added}")
    if told and step.uses:
        told[-1] = replace(told[-1], tools=tuple(dict.fromkeys((*told[-1].tools, *step.uses))))
    if told and step.minutes is not None:
        told = [replace(one, minutes=step.minutes if place == 0 else 0) for place, one in enumerate(told)]
    return told


def _groups(context: StepContext, technique: Technique, on: tuple[str, ...]) -> list[tuple[str, ...]]:
    """What one standard step is done on at a time: each panel by itself, all pieces together, or the whole project."""
    if technique.about == "panel":
        return [(name,) for name in on if context.pieces[name].panel is not None]
    return [on] if on else []


def _standard(technique: Technique, names: tuple[str, ...], moment: Moment) -> UnnumberedStep:
    context = moment.context
    pieces = tuple(context.pieces[name] for name in names)
    scope = context.scope

    def lookup(name: str) -> Fraction:
        own = name.removeprefix("piece.")
        if own == name:
            return scope.lookup(name)
        if own not in pieces[0].measures:
            raise CalculationError(
                f"the step '{technique.name}' tells the {own} of a piece, and '{pieces[0].name}' has none; "
                "name the piece that it is done on with 'on'"
            )
        return pieces[0].measures[own]

    parts = [part for part in technique.parts if all(holds(one, pieces, scope, moment) for one in part.conditions)]

    def said(medium: str) -> str:
        told = (part.say for part in parts if part.told_on(medium))
        return "\n\n".join(text.filled(scope.edition, lookup).strip() for text in told)

    thread = step_thread(scope.project.thread, technique.name)

    def with_thread(text: str) -> str:
        return f"{thread}\n\n{text}" if thread and text else text

    printed, shown = printed_brackets(said("paper"), context, pieces, moment)
    return UnnumberedStep(
        title=filled_brackets(technique.title, context, pieces, moment),
        text=with_thread(filled_brackets(said("screen"), context, pieces, moment)),
        pieces=names,
        standard=technique.name,
        tools=tuple(dict.fromkeys((*technique.tools, *(tool for part in parts for tool in part.tools)))),
        figures=_figures(context, technique, pieces),
        minutes=technique_minutes(context, technique.work, moment.act, names),
        printed=with_thread(printed),
        lists=shown,
        keeps=technique.head.keeps,
    )


def _figures(context: StepContext, technique: Technique, pieces: Sequence[Piece]) -> tuple[str, ...]:
    """Keys of the diagrams of a step: the cloths for a layout, else each of its pieces."""
    keys = []
    for kind in technique.figures:
        if kind == "layout":
            keys += [f"layout {cloth}" for cloth in dict.fromkeys(piece.cloth for piece in pieces if piece.parts)]
        else:
            keys += [f"{kind} {piece.name}" for piece in pieces]
    return tuple(keys)
