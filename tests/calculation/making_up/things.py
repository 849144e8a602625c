"""Things made by hand, for the tests of making up: a cushion with a frill, a bag, a box, a skirt."""

from __future__ import annotations

from collections.abc import Mapping

from generator.calculation.making_up.acts import Act, Doing
from generator.calculation.making_up.seams import sorted_seams
from generator.calculation.making_up.thing import SIDES, Closing, Component, Edge, Seam, Thing
from generator.calculation.worksheet.making import methods_of
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.states import states
from generator.definitions.technique_names import TECHNIQUES
from generator.definitions.techniques import load_techniques
from generator.definitions.vocabulary import CLOSURES, KINDS
from generator.errors import Place

METHODS = methods_of(load_techniques([TECHNIQUES]))
STATES = {name: (state.does, state.done) for name, state in states().items()}
SEWN = dict.fromkeys(SIDES, "seam")


def edges(text: str) -> tuple[Edge, ...]:
    """Edges as a project file writes them; a piece by itself has no edge."""
    found = []
    for named in filter(None, text.split(" and ")):
        piece, _, edge = named.partition(".")
        found.append((piece, edge))
    return tuple(found)


def part(
    name: str, kind: str = "rectangle", *facts: str, ends: Mapping[str, str] | None = None, **more: object
) -> Component:
    """A piece of a kind, with its nature; without a word its four edges are sewn."""
    nature = PIECES[kind].of_kind.nature
    return Component(name, kind, ends=SEWN if ends is None else ends, facts=frozenset((*nature, *facts)), **more)  # type: ignore[arg-type]


def panel(name: str = "front", *facts: str, **more: object) -> Component:
    """A tucked panel with rows."""
    return part(name, "tucked panel", "tucks", "rows", *facts, **more)  # type: ignore[arg-type]


def closing(kind: str, on: Edge, onto: Edge, **more: object) -> Closing:
    """The first closing of a thing, of a kind and from edge to edge."""
    return Closing(0, kind, (on,), (onto,), facts=CLOSURES[kind], **more)  # type: ignore[arg-type]


def thing(*parts: Component, seams: str = "", kind: str = "cushion", closings: tuple[Closing, ...] = ()) -> Thing:
    """A thing; its seams are lines of 'front.all / back.all'."""
    lines = [line.split(" / ") for line in seams.splitlines() if line.strip()]
    joined = tuple(Seam(number, edges(join.strip()), edges(to.strip())) for number, (join, to) in enumerate(lines))
    return sorted_seams(Thing(KINDS[kind], {one.name: one for one in parts}, joined, closings))


def sort_of(made: Thing, number: int = 0) -> str:
    """The sort of one of its seams."""
    return made.seams[number].sort


def use(names: str, on: str = "", line: int = 1) -> Doing:
    """A step of standard steps, on a line of its file."""
    place = Place("it.yaml", line, 5)
    acts = tuple(Act(name, edges(on), place=place) for name in names.split(", "))
    return Doing(names, acts, place, tuple(piece for piece, _ in edges(on)))


def own(*acts: Act, on: str = "", line: int = 1) -> Doing:
    """A step of the project's own, known by its acts where it has some."""
    place = Place("it.yaml", line, 5)
    return Doing("Do it", acts, place, tuple(piece for piece, _ in edges(on)), known=bool(acts), own=True)


def act(does: str, what: str = "", onto: str = "", word: str = "") -> Act:
    """An act of a step of one's own."""
    return Act(does, edges(what), edges(onto), word)


def recipe(text: str) -> tuple[Doing, ...]:
    """Steps from lines of 'cut' or 'mark folds, crease: front', numbered from 1."""
    steps = []
    for number, line in enumerate((line.strip() for line in text.strip().splitlines()), 1):
        names, _, on = line.partition(": ")
        steps.append(use(names, on.replace(", ", " and "), number))
    return tuple(steps)


CUSHION = thing(
    panel(),
    part("back", "rectangle", "later", waits_for=("front",)),
    seams="front.all / back.all",
)
CUSHION_RECIPE = """
cut
mark folds, crease, stitch tucks: front
rule rows, sew rows, trim: front
cut later: back
line and turn: back
fill
close opening: back
"""
FRILL = {"top": "seam", "left": "seam", "right": "seam", "bottom": "hem"}
FRILLED = thing(
    panel(),
    part("frill", "gathered strip", "lengths", ends=FRILL),
    part("back", "rectangle", "later", waits_for=("front",)),
    seams="""
    frill.left / frill.right
    front.all / frill.top
    front.all / back.all
    """,
)
