"""Demo handouts on paper, measured: ``python -m tests.paper OUT`` measures all of them in the same way."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest

from tests.paper import PageMeasure, opened_setting, page_measures, sheets_of, smallest_and_largest

ROOM = Path(__file__).resolve().parents[2]
# Parts of a page. A figure that is too tall for what is left of a page leaves some white behind; in the plain theme,
# on Letter and in inches, it is never more than this for the smallest and the largest size of any project.
MOST_AT_FOOT, LEAST_ON_LAST = 0.4, 0.25
# A tall layout, many small figures, and a panel over several breadths of cloth.
CHOSEN = [
    ("plain", "ferry-runner", "inch", "Letter"),
    ("plain", "harbour-headboard", "metric", "A4"),
    ("harbour", "gull-window-curtain", "inch", "A4"),
]


@cache
def measured(theme: str, project: str, edition: str, paper: str) -> list[PageMeasure]:
    worksheet = list(smallest_and_largest(ROOM, [project], [edition]))[-1]
    ((_, pdf),) = sheets_of(worksheet, opened_setting(ROOM, theme), paper, ["handout"])
    return page_measures(pdf)


@pytest.mark.parametrize(("theme", "project", "edition", "paper"), CHOSEN)
def test_no_page_of_a_handout_is_left_half_white(theme: str, project: str, edition: str, paper: str) -> None:
    *pages, last = measured(theme, project, edition, paper)
    assert max(page.foot for page in pages) <= MOST_AT_FOOT
    assert 1 - last.foot >= LEAST_ON_LAST


@pytest.mark.parametrize(("theme", "project", "edition", "paper"), CHOSEN)
def test_no_heading_ends_a_page(theme: str, project: str, edition: str, paper: str) -> None:
    pages = measured(theme, project, edition, paper)
    assert [number for number, page in enumerate(pages, 1) if page.ends_on_heading] == []
