"""Words that stand in two stages are the same words."""

from __future__ import annotations

from generator.calculation.turning.plans import PLANS
from generator.calculation.worksheet.conditions import CONDITIONS
from generator.calculation.worksheet.times import WORK
from generator.definitions import vocabulary
from generator.definitions.technique_names import TECHNIQUES
from generator.definitions.techniques import load_techniques


def test_a_file_may_name_every_turn_plan_that_the_sums_know() -> None:
    assert set(vocabulary.PLANS) == set(PLANS)


def test_every_condition_that_a_technique_may_ask_is_answered() -> None:
    assert set(vocabulary.CONDITIONS) == set(CONDITIONS)


def test_every_technique_names_work_that_can_be_counted() -> None:
    unknown = {
        f"{name}: {work}"
        for name, technique in load_techniques([TECHNIQUES]).items()
        for work in technique.work
        if work not in WORK
    }
    assert unknown == set()
