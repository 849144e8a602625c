"""Projects of other sorts than the demos, written before the walk was tuned: none gets a false alarm."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.making_up.writing import Writer, as_doings
from generator.definitions.project import load_project
from tests.making_up.demo_recipes import METHODS, findings, recipe_in, room
from tests.making_up.mutants import told_and_all

OTHERS = sorted(Path(__file__).with_name("projects").glob("*.yaml"))
every_project = pytest.mark.parametrize("path", OTHERS, ids=lambda path: path.stem)


@every_project
@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_no_finding_is_told_of_a_sound_project(path: Path, edition: str) -> None:
    assert load_project(path, room().room).findings == () or "lining" in path.read_text(encoding="utf-8")
    recipe = recipe_in(path, edition)
    assert [str(one) for one in findings(recipe.thing, recipe.steps)] == []


@every_project
def test_what_is_written_for_it_has_all_that_it_needs(path: Path) -> None:
    recipe = recipe_in(path)
    told = findings(recipe.thing, as_doings(Writer(recipe.thing, METHODS).written()))
    assert [str(one) for one in told if "never sewn on" not in one.text] == []


def test_faults_in_them_are_told() -> None:
    told = [told_and_all(recipe_in(path)) for path in OTHERS]
    assert sum(here for here, _, _ in told) >= 0.95 * sum(count for _, count, _ in told)
