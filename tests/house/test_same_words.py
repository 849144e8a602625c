"""Words that stand in two stages are the same words."""

from __future__ import annotations

from generator.calculation.turning.plans import PLANS
from generator.calculation.worksheet.brackets import BRACKETS
from generator.calculation.worksheet.conditions import CONDITIONS
from generator.calculation.worksheet.moments import MOMENT_BRACKETS, MOMENT_CONDITIONS
from generator.calculation.worksheet.times import WORK
from generator.definitions import technique_words, vocabulary
from generator.definitions.reading import Reading
from generator.definitions.technique_names import TECHNIQUES
from generator.definitions.yaml_text import read_yaml
from generator.drawing.assembly import ASSEMBLIES
from generator.drawing.catalogue import DIAGRAMS, SIZED


def test_a_file_may_name_every_turn_plan_that_the_sums_know() -> None:
    assert set(vocabulary.PLANS) == set(PLANS)


def test_every_condition_that_a_technique_may_ask_is_answered() -> None:
    assert set(vocabulary.CONDITIONS) == {*CONDITIONS, *MOMENT_CONDITIONS}


def test_a_technique_may_name_all_work_that_can_be_counted() -> None:
    assert set(technique_words.WORK) == set(WORK)


def test_a_technique_may_name_every_picture() -> None:
    # Pictures of seams and of the finished thing stand where they belong without being named.
    assert set(technique_words.FIGURES) == {*DIAGRAMS, *SIZED} - {"seam", "thing"}
    assert set(technique_words.ASSEMBLIES) == set(ASSEMBLIES)


def test_a_technique_may_put_in_every_word_in_brackets() -> None:
    assert set(technique_words.BRACKETS) == {*BRACKETS, *MOMENT_BRACKETS}


def test_the_tools_own_techniques_put_in_no_other_word() -> None:
    reading = Reading()
    for path in sorted(TECHNIQUES.glob("*.yaml")):
        technique_words.report_brackets(read_yaml(path), reading)
    assert [str(finding) for finding in reading.faults.findings] == []
