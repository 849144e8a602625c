"""Projects of other sorts than the demos, written before the walk was tuned: none gets a false alarm."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.making_up.writing import Writer, as_doings
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from tests.making_up.demo_recipes import METHODS, ROOT, findings, recipe_in, room
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


def uses(name: str) -> list[str]:
    """The steps that a project is made in, each with what it is done to."""
    recipe = recipe_in(next(path for path in OTHERS if path.stem == name))
    return [f"{act.does} {' '.join(piece for piece, _ in act.what)}".strip() for act in recipe.acts]


def test_a_seam_is_neatened_and_closed_before_a_hem_runs_over_its_end() -> None:
    ring = uses("ferry-saloon-lamp-skirt")
    assert ring.index("close ring ring") < ring.index("neaten ring") < ring.index("hem ring")
    # The halves of this skirt lie on their side: their side seams are at the top and the bottom of the panel.
    skirt = uses("pilot-child-skirt")
    assert skirt.index("join pieces half") < skirt.index("neaten half") < skirt.index("hem half")


def test_what_closes_round_a_shade_is_tried_on_before_it_is_hemmed_or_bound() -> None:
    ring = uses("ferry-saloon-lamp-skirt")
    assert ring.index("close ring ring") < ring.index("try in place ring") < ring.index("hem ring")


def test_a_curtain_hangs_from_its_casing_before_its_lower_hem_is_sewn() -> None:
    curtain = uses("mess-room-curtain")
    assert curtain[-4:] == ["hem curtain curtain", "casing curtain", "try in place curtain", "hem curtain"]


def test_blocks_are_sewn_together_before_they_are_laid_on_their_wadding() -> None:
    hanging = uses("sail-locker-blocks")
    assert hanging.index("join pieces tucked block plain block") < hanging.index("lay tucked block")
    recipe = recipe_in(next(path for path in OTHERS if path.stem == "sail-locker-blocks"))
    joins = [step for step in recipe.steps if step.title == "join pieces"]
    late = tuple(step for step in recipe.steps if step not in joins)
    place = next(number for number, step in enumerate(late) if step.title == "bind")
    told = [one.text for one in findings(recipe.thing, (*late[:place], *joins, *late[place:]))]
    assert len(told) == 1
    assert told[0].startswith("'lay' needs 'join pieces' before it: sews 'tucked block.right' to")


def test_as_usual_before_a_step_that_nothing_waits_for_is_all_that_is_still_to_do() -> None:
    apron, cover = uses("cooper-apron-yoke"), uses("signal-box-cover")
    assert apron[-1] == cover[-1] == "nothing"
    assert {"bag yoke yoke facing", "hem skirt"} <= set(apron)
    assert "make boxing wall lid" in cover


def test_seams_between_blocks_are_shut_in_by_what_they_are_laid_on() -> None:
    assert not any(use.startswith("neaten") for use in uses("sail-locker-blocks"))


def test_a_cover_with_one_face_has_no_opening() -> None:
    assert not any(use.startswith("close opening") for use in uses("signal-box-cover"))
    path = next(path for path in OTHERS if path.stem == "signal-box-cover")
    sheet = worked_sheet(load_project(path, room().room, ROOT), "one", room().room.edition("inch"), room())
    (text,) = (step.text for step in sheet.steps if step.standard == "make boxing")
    assert "Pin a notch to each corner" in text
    assert [word for word in ("other edge of the boxing", "opening", "both seams", "leave") if word in text] == []
    assert "Turn the work right side out, and push each corner out" in text
