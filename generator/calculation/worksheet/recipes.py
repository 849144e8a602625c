"""The recipe of one size: the steps of a file come in, those that are really taken go out, 'as usual' written out.

A file without steps is made as usual throughout.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from itertools import takewhile

from generator.calculation.making_up.acts import Doing, Method
from generator.calculation.making_up.items import Item, piece_items
from generator.calculation.making_up.needs import Needs
from generator.calculation.making_up.thing import Thing
from generator.calculation.making_up.writing import Line, Writer, lines_of
from generator.calculation.worksheet.making import doing_of, methods_of, thing_of
from generator.calculation.worksheet.scope import Scope
from generator.definitions.making_words import AS_USUAL, NOTHING
from generator.definitions.steps import Step, Target
from generator.definitions.techniques import Technique


def taken_steps(scope: Scope, thing: Thing, methods: Mapping[str, Method]) -> tuple[Step, ...]:
    """Return the steps of a size in order, with those that 'as usual' stands for."""
    steps = [step for step in scope.project.steps if not step.only_for or scope.size in step.only_for]
    if not steps:
        first = next(iter(scope.project.pieces.values()))
        steps = [Step(use=(AS_USUAL,), place=first.place)]
    if not any(AS_USUAL in step.use for step in steps):
        return tuple(steps)
    return tuple(_written_out(scope, steps, thing, methods))


def _written_out(scope: Scope, steps: Sequence[Step], thing: Thing, methods: Mapping[str, Method]) -> list[Step]:
    doings = [Doing(AS_USUAL, ()) if AS_USUAL in step.use else doing_of(scope, step, methods) for step in steps]
    acts = [act for doing in doings for act in doing.acts]
    plain = Writer(thing, methods, acts)
    later = {item for act in acts for item in plain.book.gives(act)}
    writer = Writer(thing, methods, acts, left=later)
    have: set[Item] = set()
    taken: list[Step] = []
    for place, step in enumerate(steps):
        if AS_USUAL not in step.use:
            have |= {item for act in doings[place].acts for item in writer.book.gives(act)}
            taken.append(step)
            continue
        written = writer.written(have, _wanted(doings[place + 1 :], writer))
        have |= {item for act in written for item in plain.book_with(act).gives(act)}
        taken += _steps(lines_of(written), step)
    return taken


def _wanted(after: Sequence[Doing], writer: Writer) -> list[Item] | None:
    """What the steps up to the next 'as usual' need, None for all that is due: where no other 'as usual' follows.

    A step that nobody knows, or that gives nothing, needs its pieces ready.
    """
    again = any(doing.title == AS_USUAL for doing in after)
    if not again and all(doing.known for doing in after):
        return None
    needs = Needs(writer.book, writer.acts)
    wanted: list[Item] = []
    for doing in takewhile(lambda one: one.title != AS_USUAL, after):
        wanted += [item for act in doing.acts for item in needs.of_act(act)]
        if not doing.known or all(act.does == NOTHING for act in doing.acts):
            pieces = doing.pieces or tuple(writer.thing.parts)
            wanted += [item for piece in pieces for item in piece_items(writer.thing.parts[piece])]
    return wanted


def _steps(lines: Sequence[Line], asked: Step) -> list[Step]:
    """The steps that are written for one of 'as usual'; what the file says to begin with, and adds to it, is kept."""
    steps = [Step(use=line.uses, on=tuple(Target(*edge) for edge in line.on), place=asked.place) for line in lines]
    if steps:
        steps[0] = replace(steps[0], begin_with=asked.begin_with)
        steps[-1] = replace(steps[-1], add=asked.add, session_ends=asked.session_ends)
    return steps


def usual_lines(scope: Scope, techniques: Mapping[str, Technique], *, missing: bool) -> tuple[Line, ...]:
    """Return the usual steps of a size, or those that the steps of its file lack, to be written into the file."""
    pieces = {name: scope.piece(name) for name in scope.project.pieces}
    thing, methods = thing_of(scope, pieces), methods_of(techniques)
    if not missing:
        return lines_of(Writer(thing, methods).written())
    steps = [step for step in scope.project.steps if not step.only_for or scope.size in step.only_for]
    doings = [doing_of(scope, step, methods) for step in steps if AS_USUAL not in step.use]
    acts = [act for doing in doings for act in doing.acts]
    writer = Writer(thing, methods, acts)
    have = [item for act in acts for item in writer.book.gives(act)]
    return lines_of(writer.written(have))
