"""Every diagram of every project of the room, in every size and edition: no words cross anything, none is too small."""

from __future__ import annotations

from pathlib import Path

import pytest

from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.drawing.canvas import Canvas
from generator.drawing.catalogue import draw, figure_keys
from generator.drawing.picture import Picture
from generator.drawing.style import Style

ROOT = Path(__file__).resolve().parents[2]
ROOM = load_room(ROOT / "site" / "site.yaml", ROOT)
SHELF = load_room_context(ROOM, ROOT)
PROJECTS = sorted(path.stem for path in (ROOT / "projects").glob("*.yaml"))
LEAST_TYPE = 7


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> list[Canvas]:
    """The canvases of all pictures that are finished from now on."""
    canvases: list[Canvas] = []
    finish = Canvas.picture

    def picture(self: Canvas, *words: str, **more: str) -> Picture:
        canvases.append(self)
        return finish(self, *words, **more)

    monkeypatch.setattr(Canvas, "picture", picture)
    return canvases


@pytest.mark.parametrize("name", PROJECTS)
def test_no_words_cross_in_any_diagram_of_a_project(name: str, drawn: list[Canvas]) -> None:
    project = load_project(ROOT / "projects" / f"{name}.yaml", ROOM, ROOT)
    faults = set()
    for edition in project.editions:
        for size in project.sizes:
            worksheet = worked_sheet(project, size, ROOM.edition(edition), SHELF)
            drawn.clear()
            for key in figure_keys(worksheet):
                draw(worksheet, key, Style())
            assert drawn
            for canvas in drawn:
                faults |= {f"{size}, {edition}: {canvas.key}: {crossing}" for crossing in canvas.crossings()}
                faults |= {
                    f"{size}, {edition}: {canvas.key}: '{label.words}' is {label.size} pt"
                    for label in canvas.labels
                    if label.size < LEAST_TYPE
                }
    assert faults == set()
