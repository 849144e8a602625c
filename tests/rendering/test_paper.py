"""Demo handouts on paper, measured: ``python -m tests.paper OUT`` measures all of them in the same way."""

from __future__ import annotations

import io
import re
from functools import cache
from pathlib import Path

import numpy
import pdfplumber
import pypdfium2
import pytest

from generator.calculation.worked_project import Worksheet
from generator.rendering.styles import PAPERS
from tests.paper import FOOT, TOP, opened_setting, page_measures, sheets_of, smallest_and_largest

ROOM = Path(__file__).resolve().parents[2]
MILLIMETRES = 25.4
# At the foot of every page, the last one too [mm]; large letters, whose pictures end in white, leave more.
MOST_WHITE, IN_LARGE_LETTERS = 10.0, 20.0
INNER_MARGIN = 20.0
# A panel alone, a tall layout over several breadths, both directions of tucks, plain rows, large letters.
CHOSEN = [
    ("plain", "quay-cushion", 0, "inch", "Letter"),
    ("plain", "harbour-headboard", -1, "metric", "A4"),
    ("plain", "chandlery-flap", -1, "inch", "A4"),
    ("harbour", "gull-window-curtain", 0, "inch", "A4"),
    ("large-print", "pincushion-sample", 0, "metric", "Letter"),
]
Chosen = tuple[str, str, int, str, str]


@cache
def sheet(chosen: Chosen) -> Worksheet:
    return list(smallest_and_largest(ROOM, [chosen[1]], [chosen[3]]))[chosen[2]]


@cache
def handout(chosen: Chosen) -> bytes:
    ((_, pdf),) = sheets_of(sheet(chosen), opened_setting(ROOM, chosen[0]), chosen[4], ["handout"])
    return pdf


@cache
def texts(chosen: Chosen) -> list[str]:
    with pdfplumber.open(io.BytesIO(handout(chosen))) as read:
        return [" ".join((page.extract_text() or "").split()) for page in read.pages]


@pytest.mark.parametrize("chosen", CHOSEN)
def test_a_handout_has_an_even_number_of_pages_and_little_white_at_their_feet(chosen: Chosen) -> None:
    pages = page_measures(handout(chosen))
    assert len(pages) % 2 == 0
    most = IN_LARGE_LETTERS if chosen[0] == "large-print" else MOST_WHITE
    high = (PAPERS[chosen[4]][1] - TOP - FOOT) * MILLIMETRES
    assert [number for number, page in enumerate(pages, 1) if page.foot * high > most] == []


@pytest.mark.parametrize("chosen", CHOSEN)
def test_the_inner_margin_is_empty_for_the_punch(chosen: Chosen) -> None:
    with pypdfium2.PdfDocument(handout(chosen)) as read:
        for number, page in enumerate(read, 1):
            dots = numpy.asarray(page.render(scale=1, grayscale=True).to_numpy()).squeeze()
            inner = int((INNER_MARGIN - 1) / MILLIMETRES * 72)
            margin = dots[:, :inner] if number % 2 else dots[:, -inner:]
            assert margin.min() > 250, number


@pytest.mark.parametrize("chosen", CHOSEN)
def test_every_warning_of_the_finished_thing_stands_on_the_first_page(chosen: Chosen) -> None:
    first, of_thing = texts(chosen)[0], sheet(chosen)
    for name in of_thing.told_first:
        assert of_thing.cautions[name].hazard in first


@pytest.mark.parametrize("chosen", CHOSEN)
def test_a_signal_word_never_stands_without_hazard_consequence_and_avoidance(chosen: Chosen) -> None:
    told, of = " ".join(texts(chosen)), sheet(chosen)
    words = re.findall(r"\b(?:WARNING|CAUTION|NOTICE)\b", told)
    asked = {name for step in of.steps for name in step.cautions} | set(of.told_first)
    assert len(words) == len(asked)
    for name in asked:
        assert of.cautions[name].hazard in told
        assert of.cautions[name].consequence.split()[0] in told


@pytest.mark.parametrize("chosen", CHOSEN)
def test_each_list_of_marks_and_checks_stands_once(chosen: Chosen) -> None:
    told, panels = " ".join(texts(chosen)), sheet(chosen).panels.values()
    sets = [tucks for panel in panels for tucks in (panel.across, panel.cross) if tucks is not None and tucks.count]
    assert told.count("Fold marks, in ") == len(sets)
    assert "Marks (" not in told
    assert "Rows (" not in told
    assert told.count("Stop and measure,") == sum(
        bool(checks.points) for panel in panels for checks in (panel.checks, panel.cross_checks)
    )
