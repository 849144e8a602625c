"""One PNG with every kind of diagram, for the smallest and the largest size of every project, for anyone to look at.

``python -m tests.contact OUT.png [FOLDER]`` reads the room in FOLDER, by default the present one. The diagrams go the
way that they go in a sheet: SVG, WeasyPrint, PDF; only then are they turned into points.
"""

from __future__ import annotations

import io
import re
import sys
from pathlib import Path

import pypdfium2
from weasyprint import HTML

from generator.drawing.contact import contact_sheet, smallest_and_largest
from generator.drawing.style import Style

DOTS_PER_INCH = 60


def contact_png(svg: str) -> bytes:
    """Return the picture of an SVG contact sheet."""
    width, height = (int(side) for side in re.findall(r'(?:width|height)="(\d+)pt"', svg)[:2])
    page = f"<style>@page{{size:{width}pt {height}pt;margin:0}}body{{margin:0}}</style>{svg}"
    drawn = HTML(string=page).write_pdf()
    picture = pypdfium2.PdfDocument(drawn)[0].render(scale=DOTS_PER_INCH / 72).to_pil()
    out = io.BytesIO()
    picture.save(out, "PNG")
    return out.getvalue()


if __name__ == "__main__":
    target, *folder = (Path(argument) for argument in sys.argv[1:])
    target.write_bytes(contact_png(contact_sheet(smallest_and_largest(*(folder or [Path()])), Style())))
