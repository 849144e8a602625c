"""The recipes of the demo projects as the walk sees them: things, techniques and acts, one step an act."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

from generator.calculation.making_up.acts import Act, Doing
from generator.calculation.making_up.book import Book, book_of
from generator.calculation.making_up.findings import recipe_findings
from generator.calculation.making_up.thing import Thing
from generator.calculation.making_up.walk import walk
from generator.calculation.worksheet.making import doing_of, methods_of, thing_of
from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.recipes import taken_steps
from generator.calculation.worksheet.scope import Scope
from generator.calculation.worksheet.sheet import RoomContext, load_room_context
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.definitions.states import states
from generator.errors import Finding

ROOT = Path(__file__).resolve().parents[2]
PROJECTS = sorted((ROOT / "projects").glob("*.yaml"))
STATES = {name: (state.does, state.done) for name, state in states().items()}


@dataclass(frozen=True)
class DemoRecipe:
    """One project in one size: its thing, and its recipe with one act a step."""

    name: str
    thing: Thing
    steps: tuple[Doing, ...]

    @property
    def acts(self) -> tuple[Act, ...]:
        return tuple(act for step in self.steps for act in step.acts)

    @property
    def book(self) -> Book:
        return book_of(self.thing, METHODS, self.acts)


@cache
def room() -> RoomContext:
    return load_room_context(load_room(ROOT / "site" / "site.yaml", root=ROOT), ROOT)


METHODS = methods_of(room().techniques)


def recipe_in(path: Path, edition: str = "inch") -> DemoRecipe:
    """The recipe of the last size of a project, which is the largest."""
    shared = room()
    project = load_project(path, shared.room, ROOT)
    scope = Scope(project, list(project.sizes)[-1], shared.room.edition(edition), shared.room, worked_piece)
    thing = thing_of(scope, {name: scope.piece(name) for name in project.pieces})
    doings = [doing_of(scope, step, METHODS) for step in taken_steps(scope, thing, METHODS)]
    return DemoRecipe(path.stem, thing, tuple(single_acts(doings)))


def single_acts(doings: list[Doing]) -> Iterator[Doing]:
    for doing in doings:
        for act in doing.acts:
            yield Doing(act.does, (act,), doing.place, act.pieces, own=doing.own)
        if not doing.known:
            yield replace(doing, acts=())


def findings(thing: Thing, steps: tuple[Doing, ...]) -> tuple[Finding, ...]:
    """What is told of a recipe, notes left out."""
    found = recipe_findings(walk(thing, METHODS, steps), STATES)
    return tuple(one for one in found if one.level != "note")
