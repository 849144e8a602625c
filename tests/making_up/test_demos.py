"""The recipes of the demo projects: sound as they are, and a fault in them is told; written anew, they say the same."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.making_up.walk import walk
from generator.calculation.making_up.writing import Writer, as_doings
from tests.making_up.demo_recipes import METHODS, PROJECTS, DemoRecipe, findings, recipe_in
from tests.making_up.mutants import told_and_all

every_project = pytest.mark.parametrize("path", PROJECTS, ids=lambda path: path.stem)
OLD = sorted(Path(__file__).with_name("old").glob("*.yaml"))
# What each older file does in an order that cannot be: its form or foam comes when all is closed, a fastener when its
# place lies between two layers.
FAULTS_OF_OLD = {
    "bosun-seat-pad": "'close opening' needs 'put in' before it: fills the work. Move line 129 up here",
    "chandlery-flap": "'set' comes too late: the wrong side of 'flap' to 'flap lining' is shut in in line 136. "
    "Move this step above line 136",
    "customs-tote": "'line bag' needs 'set fasteners' before it: sets the snaps of 'bag lining'. Move line 154 up here",
    "pier-bolster": "'close opening' needs 'put in' before it: fills the work. Move line 174 up here",
    # Sheer curtains are hung before their lower hem is sewn; a sleeve is tried on before it is bound.
    "gull-window-curtain": "nothing tries 'curtain' in its place before 'hem'; later it is hard to alter. Write above "
    "line 81:\n  - use: try in place\n    on: curtain",
    "lantern-sleeve": "nothing tries 'sleeve' in its place before 'bind'; later it is hard to alter. Write above line "
    "83:\n  - use: try in place\n    on: sleeve",
    # A frill is divided along the strap that it is gathered to.
    "net-loft-pinafore": "'gather' needs 'make straps' before it: makes 'strap'. Move line 140 up here",
    # One of four is finished and measured while the others can still be marked otherwise.
    "tide-table-mats": "'one first' comes too late: the folds of 'mat' are marked in line 91. Move this step above "
    "line 91",
}
# Seams of older files that fray: the sleeve's closing seam, the skirt's side seams, the frills of the bolster.
RAW_IN_OLD = {
    "lantern-sleeve": ["'sleeve.left' to 'sleeve.right'"],
    "net-loft-pinafore": ["'skirt.left' to 'skirt.right'"],
    "pier-bolster": [
        "'wrap' to 'frill'",
        "'wrap' to 'frill'",
        "'inner.top' to 'inner.bottom'",
        "'inner' to 'gathered end'",
        "'inner' to 'gathered end'",
    ],
}
# What nobody can write from the pieces alone: pieces of which the file does not say where they are sewn.
TOLD_BY_ACTS = frozenset({"attached"})


@every_project
@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_a_sound_demo_has_no_finding(path: Path, edition: str) -> None:
    recipe = recipe_in(path, edition)
    assert [str(one) for one in findings(recipe.thing, recipe.steps)] == []


def test_nineteen_of_twenty_faults_are_told() -> None:
    told = [told_and_all(recipe_in(path)) for path in PROJECTS]
    assert sum(here for here, _, _ in told) >= 0.95 * sum(count for _, count, _ in told)
    assert sum(count for _, count, _ in told) > 1000


@every_project
def test_a_recipe_written_from_the_pieces_has_all_that_it_needs(path: Path) -> None:
    recipe = recipe_in(path)
    steps = as_doings(Writer(recipe.thing, METHODS).written())
    told = [one for one in findings(recipe.thing, steps) if "never sewn on" not in one.text]
    assert [str(one) for one in told] == []


def test_written_recipes_go_in_the_order_of_those_written_by_hand() -> None:
    alike = pairs = 0
    for path in PROJECTS:
        here, both = pairs_in_order(recipe_in(path))
        alike, pairs = alike + here, pairs + both
    assert pairs > 900
    assert alike >= 0.95 * pairs


def pairs_in_order(recipe: DemoRecipe) -> tuple[int, int]:
    """How many pairs of items both recipes give in the same order, of all that they give one after the other."""
    by_hand = places(recipe, [act for step in recipe.steps for act in step.acts])
    written = places(recipe, Writer(recipe.thing, METHODS).written())
    both = [item for item in by_hand if item in written]
    ordered = [(one, other) for one in both for other in both if by_hand[one] < by_hand[other]]
    apart = [(one, other) for one, other in ordered if written[one] != written[other]]
    return sum(written[one] < written[other] for one, other in apart), len(apart)


def places(recipe: DemoRecipe, acts: object) -> dict[object, int]:
    """By which act of a recipe each item is given."""
    found: dict[object, int] = {}
    writer = Writer(recipe.thing, METHODS)
    for place, act in enumerate(acts):  # type: ignore[arg-type, var-annotated]
        for item in (*recipe.book.gives(act), *writer.book_with(act).gives(act)):
            found.setdefault(item, place)
    return found


@pytest.mark.parametrize("path", OLD, ids=lambda path: path.stem)
def test_a_fault_of_order_in_an_older_file_is_told(path: Path) -> None:
    recipe = recipe_in(path)
    told = [one.text for one in findings(recipe.thing, recipe.steps)]
    raw = [text for text in told if "stays raw" in text]
    assert [text for text in told if text not in raw] == [one for one in (FAULTS_OF_OLD.get(path.stem),) if one]
    assert [text.partition("stays raw: ")[2].partition(". Write")[0] for text in raw] == RAW_IN_OLD.get(path.stem, [])


def test_a_step_of_ones_own_that_neatens_is_missed() -> None:
    recipe = recipe_in(next(path for path in PROJECTS if path.stem == "quay-cushion"))
    without = tuple(step for step in recipe.steps if step.title != "neaten")
    assert len(without) == len(recipe.steps) - 1
    told = [one.text for one in findings(recipe.thing, without)]
    assert [text.partition(". Write")[0] for text in told] == ["this seam stays raw: 'front' to 'back'"]


def test_every_older_file_has_a_fault() -> None:
    assert {path.stem for path in OLD} == FAULTS_OF_OLD.keys() | RAW_IN_OLD.keys()


@every_project
def test_no_seam_of_a_demo_stays_raw(path: Path) -> None:
    recipe = recipe_in(path)
    slips = walk(recipe.thing, METHODS, recipe.steps).slips
    assert [slip.items for slip in slips if slip.sort == "raw"] == []
