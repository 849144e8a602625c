"""Our sums give what others have printed, and do not repeat their slips."""

from __future__ import annotations

import pytest

from generator.calculation.pieces.fullness import PUBLISHED_FULLNESS

from .case import Case, sources, subjects

CASES: list[Case] = [case for subject in subjects() for case in subject["cases"]]


@pytest.mark.parametrize("case", CASES, ids=[f"{case.subject}: {case.check}" for case in CASES])
def test_our_sums_agree(case: Case) -> None:
    if case.refuses:
        assert case.refuses in case.refusal()
        return
    assert case.agrees(case.expected), f"ours is {case.told()}, the source has {case.expected}"


SLIPS = [case for case in CASES if case.slip and not case.refuses]


@pytest.mark.parametrize("case", SLIPS, ids=[case.check for case in SLIPS])
def test_a_printed_slip_is_not_repeated(case: Case) -> None:
    assert case.gives is not None
    assert not case.agrees(case.prints)


@pytest.mark.parametrize("case", CASES, ids=[case.check for case in CASES])
def test_a_case_names_a_source_that_is_described(case: Case) -> None:
    assert case.source in sources()


def test_every_source_is_used() -> None:
    assert set(sources()) == {case.source for case in CASES}


def test_no_case_is_told_twice() -> None:
    told = [case.check for case in CASES]
    assert sorted(set(told)) == sorted(told)


def test_a_sentence_of_a_case_ends_without_a_full_stop() -> None:
    # They stand in tables and in the names of tests.
    assert [case.check for case in CASES if case.check.endswith(".")] == []


@pytest.mark.parametrize(
    ("use", "source"),
    [
        ("frill on the straight", "Baldt"),
        ("frill on the bias", "Baldt"),
        ("chiffon", "New Dressmaker"),
        ("taffeta", "New Dressmaker"),
        ("side pleating", "New Dressmaker"),
        ("tier below a tier", "NIMI"),
        ("flounce on a band", "Goodwin"),
        ("honeycombing", "Encyclopaedia"),
        ("smocking", "Priscilla"),
    ],
)
def test_the_table_of_fullness_names_its_source(use: str, source: str) -> None:
    assert source in next(row.source for row in PUBLISHED_FULLNESS if row.use == use)
