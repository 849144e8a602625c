"""The seams of every project: each sort of seam has its picture or plainly none, no words cross, none is too small."""

from __future__ import annotations

from functools import cache
from pathlib import Path

import pytest
from shapely.geometry import LinearRing, LineString

from generator.calculation.making_up.seams import SORTS
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.definitions.theme import OWN_THEMES, load_theme
from generator.drawing.seam import heights_of_seam, seam_names, sketch_seam
from generator.drawing.seams.laid import Laid
from generator.drawing.seams.lines import length_of
from generator.drawing.seams.plan import plan_seam
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import style_of
from tests.room import ROOT, demo_room

OTHERS = ROOT / "tests" / "making_up" / "projects"
# Its front and its frill lie in more layers than the room's needles go through.
REFUSED = "berth-pillow-slip"
PATHS = [*sorted((ROOT / "projects").glob("*.yaml")), *sorted(OTHERS.glob("*.yaml"))]
PROJECTS = [pytest.param(path, id=path.stem) for path in PATHS if path.stem != REFUSED]
# Seams along a band have pictures of their own, and are never laid out as flat layers.
BANDS = {"piping", "binding"}
LEAST = {"plain": 9.0, "large-print": 12.0}


@cache
def worksheets(path: Path) -> tuple[Worksheet, ...]:
    """The smallest and the largest size of a project, in every edition."""
    room = demo_room().shared
    project = load_project(path, room.room, ROOT)
    sizes = list(project.sizes)
    return tuple(
        worked_sheet(project, size, room.room.edition(edition), room)
        for edition in project.editions
        for size in dict.fromkeys((sizes[0], sizes[-1]))
    )


@pytest.mark.parametrize(("theme", "width"), [("plain", 93.0), ("plain", 80.0), ("large-print", 180.0)])
@pytest.mark.parametrize("path", PROJECTS)
def test_no_words_cross_at_the_least_and_the_best_height(path: Path, theme: str, width: float) -> None:
    style = style_of(load_theme(OWN_THEMES / theme))
    faults = set()
    for sheet in worksheets(path):
        for name in seam_names(sheet):
            found = heights_of_seam(sheet, name, style, width)
            assert 0 < found.least <= found.natural <= found.greatest
            for height in (found.least, found.natural):
                canvas = sketch_seam(sheet, name, style, DrawnSize(width, height))
                faults |= {f"{sheet.size}: {name}: {crossing}" for crossing in canvas.crossings()}
                faults |= {label.words for label in canvas.labels if label.size < LEAST[theme]}
    assert faults == set()


def beyond(laid: Laid, side: str) -> float:
    """How far the cut edge of a piece lies from the middle of a finished one."""
    if laid.outline is None:
        return abs(float(getattr(laid.cut, side)) - float(getattr(laid.finished, side)))
    line = LineString(laid.edges[side])
    return float(line.interpolate(0.5, normalized=True).distance(LinearRing(laid.outline.cut)))


@pytest.mark.parametrize("path", PROJECTS)
def test_every_picture_has_the_seam_at_its_allowance_and_the_opening_of_its_act(path: Path) -> None:
    for sheet in worksheets(path):
        for step in sheet.steps:
            for joined in step.joined:
                plan = plan_seam(sheet, joined)
                if plan is None:
                    continue
                assert set(plan.seams) == set(joined.sides)
                lower = plan.below[0]
                for side in set(joined.sides) & set(lower.piece.edges) if joined.layers[0].right_side_up else ():
                    if len(plan.below) == 1 and lower.piece.edges[side].end.kind == "seam":
                        between = beyond(lower, side)
                        assert between == pytest.approx(float(lower.piece.edges[side].allowance), abs=0.01)
                if joined.opening is not None:
                    assert plan.opening is not None
                    assert length_of(plan.opening[1]) == pytest.approx(float(joined.opening.length))


def test_every_sort_of_seam_but_those_along_a_band_is_drawn_in_some_project() -> None:
    drawn, joined = set(), set()
    for path in (param.values[0] for param in PROJECTS):
        for sheet in worksheets(path):  # type: ignore[arg-type]
            named = seam_names(sheet)
            for step in sheet.steps:
                for place, one in enumerate(step.joined, 1):
                    joined |= set(one.sorts)
                    drawn |= set(one.sorts) if f"{step.number}-{place}" in named else set()
    assert joined == drawn == SORTS - BANDS
