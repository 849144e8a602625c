"""A contact sheet for the eye: project files come in, one SVG with every diagram of their smallest and largest size.

``python -m generator.drawing.contact OUT.svg [FOLDER]`` reads the room in FOLDER, by default the present one.
"""

from __future__ import annotations

import math
import sys
from collections.abc import Iterable, Iterator
from pathlib import Path
from xml.sax.saxutils import escape

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.drawing.catalogue import draw, figure_keys
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.lengths import EDITIONS

COLUMN, GAP = 7.6, 0.3
OF_EACH = 2


def smallest_and_largest(folder: Path) -> Iterator[Worksheet]:
    """Return the worksheets of the first and the last size of every project of a room, in its first edition."""
    room = load_room(folder / "site" / "site.yaml", folder)
    shared = load_room_context(room, folder)
    for path in sorted((folder / "projects").glob("*.yaml")):
        project = load_project(path, room, folder)
        edition = EDITIONS[project.editions[0]]
        sizes = list(project.sizes)
        for size in dict.fromkeys((sizes[0], sizes[-1])):
            yield worked_sheet(project, size, edition, shared)


def contact_sheet(worksheets: Iterable[Worksheet], style: Style) -> str:
    """Return the SVG: a column for each worksheet, the first pictures of every key one below the other."""
    drawn: list[str] = []
    tallest, columns = 0.0, 0
    for columns, worksheet in enumerate(worksheets, 1):
        left, top = (columns - 1) * COLUMN, GAP
        drawn.append(_title(f"{worksheet.title}, {worksheet.size_label}", left, top))
        for key in figure_keys(worksheet):
            for picture in draw(worksheet, key, style)[:OF_EACH]:
                top += GAP
                drawn.append(_placed(picture, left, top))
                top += picture.height
        tallest = max(tallest, top + GAP)
    width, height = math.ceil(columns * COLUMN * 72), math.ceil(tallest * 72)
    size = f'width="{width}pt" height="{height}pt" viewBox="0 0 {width} {height}"'
    head = f'<svg xmlns="http://www.w3.org/2000/svg" {size}>'
    return "\n".join((head, '<rect width="100%" height="100%" fill="white"/>', *drawn, "</svg>\n"))


def _title(words: str, left: float, top: float) -> str:
    return (
        f'<text x="{left * 72:.1f}" y="{top * 72:.1f}" font-family="sans-serif" font-size="14">{escape(words)}</text>'
    )


def _placed(picture: Picture, left: float, top: float) -> str:
    # Inside another SVG a length without a unit is one of the outer picture's points.
    head, body = picture.svg.split(">", 1)
    return head.replace('pt"', '"').replace("<svg ", f'<svg x="{left * 72:.1f}" y="{top * 72:.1f}" ', 1) + ">" + body


if __name__ == "__main__":
    target, *folder = (Path(argument) for argument in sys.argv[1:])
    target.write_text(contact_sheet(smallest_and_largest(*(folder or [Path()])), Style()), encoding="utf-8")
