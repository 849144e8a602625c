"""The page of what was checked is the one that the case files give."""

from __future__ import annotations

from generator.rendering.words import read_words

from .case import subjects
from .page import PAGE, page_text

CASES = [case for subject in subjects() for case in subject["cases"]]


def test_the_committed_page_is_up_to_date() -> None:
    # Written by: python -m tests.published.page
    assert PAGE.read_text(encoding="utf-8") == page_text()


def test_every_case_stands_on_the_page_once() -> None:
    rows = [line.split(" | ")[0].removeprefix("| ") for line in page_text().splitlines() if line.startswith("| ")]
    for case in CASES:
        assert rows.count(case.check) == 1


def test_every_case_is_a_row_of_a_table_when_the_page_is_set() -> None:
    html = str(read_words(page_text()))
    subjects_told = len(subjects())
    assert html.count("<tr>") == len(CASES) + subjects_told
    assert html.count("<table>") == subjects_told


def test_there_are_as_many_slips_on_the_page_as_in_the_files() -> None:
    slips = sum(bool(case.slip) for case in CASES)
    assert slips >= 8
    assert page_text().count("printed slip, not repeated:") == slips
