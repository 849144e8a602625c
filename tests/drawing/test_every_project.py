"""Every diagram of every project of the room, in every size and edition: no words cross anything, none is too small."""

from __future__ import annotations

import numpy as np
import pytest

from generator.drawing.canvas import Canvas
from generator.drawing.catalogue import draw, draw_sized, figure_keys, heights, sized_keys
from generator.drawing.picture import Picture
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style, on_screen, read_style
from tests.room import ROOT, demo_room

PROJECTS = sorted(path.stem for path in (ROOT / "projects").glob("*.yaml"))
LEAST_TYPE = 9
HAIR = 0.002
LARGE = read_style({"small": 16, "text": 17, "strong": 20})
LOOKS = ((Style(), 93.0), (Style(), 80.0), (LARGE, 180.0), (on_screen(Style()), 93.0))


@pytest.fixture
def drawn(monkeypatch: pytest.MonkeyPatch) -> list[Canvas]:
    """The canvases of all pictures that are finished from now on; none is painted, which takes the most time."""
    canvases: list[Canvas] = []

    def picture(self: Canvas, alt: str, caption: str, text: str = "") -> Picture:
        canvases.append(self)
        return Picture(self.key, "", self.width, self.height, alt, caption, text)

    monkeypatch.setattr(Canvas, "picture", picture)
    return canvases


@pytest.mark.parametrize("name", PROJECTS)
@pytest.mark.parametrize("look", LOOKS, ids=["plain", "narrow", "large", "screen"])
def test_no_words_cross_in_any_picture_of_a_project_drawn_as_low_and_as_high_as_it_can_be(
    name: str, look: tuple[Style, float], drawn: list[Canvas]
) -> None:
    style, width = look
    faults = set()
    for worksheet in demo_room().worksheets(name):
        drawn.clear()
        for key in sized_keys(worksheet):
            if key.startswith("surface "):
                continue  # bears no words
            found = heights(worksheet, key, style, width)
            for height in dict.fromkeys((found.least, found.greatest)):
                draw_sized(worksheet, key, style, DrawnSize(width, height))
        for canvas in drawn:
            said = f"{worksheet.size}, {worksheet.edition.name}: {canvas.key}, {canvas.height:.2f} in"
            faults |= {f"{said}: {crossing}" for crossing in canvas.crossings()}
            faults |= {f"{said}: '{label.words}'" for label in canvas.labels if label.size < style.small}
            ends = np.array(canvas.segments).reshape(-1, 2)
            inside = ((ends > -HAIR) & (ends < (canvas.width + HAIR, canvas.height + HAIR))).all()
            faults |= set() if inside else {f"{said}: a line leaves the paper"}
    assert faults == set()


@pytest.mark.parametrize("name", PROJECTS)
def test_no_words_cross_in_any_diagram_of_a_project(name: str, drawn: list[Canvas]) -> None:
    faults = set()
    for worksheet in demo_room().worksheets(name):
        said = f"{worksheet.size}, {worksheet.edition.name}"
        drawn.clear()
        for key in figure_keys(worksheet):
            draw(worksheet, key, Style())
        assert drawn
        for canvas in drawn:
            faults |= {f"{said}: {canvas.key}: {crossing}" for crossing in canvas.crossings()}
            faults |= {
                f"{said}: {canvas.key}: '{label.words}' is {label.size} pt"
                for label in canvas.labels
                if label.size < LEAST_TYPE
            }
    assert faults == set()
