"""How many faults of a recipe are told: demo steps are left out, doubled, exchanged, done on a wrong piece.

``.venv/bin/python -m tests.making_up.mutants`` prints a line a project and every fault that nothing is told of.
"""

from __future__ import annotations

import sys
from collections.abc import Iterator
from dataclasses import replace

from generator.calculation.making_up.acts import Doing
from tests.making_up.demo_recipes import PROJECTS, DemoRecipe, findings, recipe_in

Mutant = tuple[str, tuple[Doing, ...]]


def mutants(recipe: DemoRecipe) -> Iterator[Mutant]:
    """Every spoilt recipe that is one fault away; steps that only look are left alone, for they can be anywhere."""
    for place, step in enumerate(recipe.steps):
        if not step.acts or not recipe.book.gives(step.acts[0]):
            continue
        before, after = recipe.steps[:place], recipe.steps[place + 1 :]
        yield f"without '{named(step)}'", before + after
        yield f"twice '{named(step)}'", (*before, step, step, *after)
        yield from exchanged(recipe, place)
        yield from wrong_pieces(recipe, place)


def named(step: Doing) -> str:
    """A step with its pieces."""
    act = step.acts[0]
    return f"{act.does} {' '.join('.'.join(filter(None, edge)) for edge in act.what + act.onto)}".strip()


def exchanged(recipe: DemoRecipe, place: int) -> Iterator[Mutant]:
    """The step after the next one that is done to the same piece."""
    step = recipe.steps[place]
    pieces = set(step.acts[0].pieces) or set(recipe.thing.parts)
    for later in range(place + 1, len(recipe.steps)):
        other = recipe.steps[later]
        if not other.acts or not recipe.book.gives(other.acts[0]):
            continue
        if step.own and other.place == step.place and other.acts[0].does == step.acts[0].does:
            return  # two seams of one step may change places
        if pieces & (set(other.acts[0].pieces) or pieces):
            between = recipe.steps[place + 1 : later]
            steps = (*recipe.steps[:place], other, *between, step, *recipe.steps[later + 1 :])
            yield f"'{named(other)}' before '{named(step)}'", steps
            return


def wrong_pieces(recipe: DemoRecipe, place: int) -> Iterator[Mutant]:
    """The step on each piece that it is not for."""
    step = recipe.steps[place]
    act = step.acts[0]
    if len(act.what) != 1:
        return
    for name in recipe.thing.parts:
        if name not in act.pieces:
            wrong = replace(
                act, what=((name, act.what[0][1] if act.what[0][1] in recipe.thing.parts[name].ends else ""),)
            )
            if recipe.book.gives(wrong) == recipe.book.gives(act):
                continue  # the same seam, told from its other side
            spoilt = replace(step, acts=(wrong,), pieces=(name,))
            yield f"'{named(step)}' on '{name}'", (*recipe.steps[:place], spoilt, *recipe.steps[place + 1 :])


def told_and_all(recipe: DemoRecipe) -> tuple[int, int, list[str]]:
    """How many mutants are told, how many there are, and those of which nothing is told."""
    silent, count = [], 0
    for name, steps in mutants(recipe):
        count += 1
        if not findings(recipe.thing, steps):
            silent.append(name)
    return count - len(silent), count, silent


def main() -> None:
    """Print the share of every project and of all."""
    told = count = 0
    for path in PROJECTS:
        recipe = recipe_in(path)
        here, everything, silent = told_and_all(recipe)
        told, count = told + here, count + everything
        lines = [f"{path.stem}: {here} of {everything}", *(f"    nothing is told of {name}" for name in silent)]
        sys.stdout.write("\n".join(lines) + "\n")
    sys.stdout.write(f"all: {told} of {count}, {100 * told / count:.1f} %\n")


if __name__ == "__main__":
    main()
