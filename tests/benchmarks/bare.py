"""The least that the libraries take: a room comes in, what bare setting and bare drawing take goes out [s].

The floor runs the program's own drawing and setting, so it cannot see when these are slow. Here every sheet is made
once, and what was set and drawn is put aside: finished HTML with its style and pictures, lines and words with their
places. Then the libraries alone set and draw all of it once; no code of the program runs while the clock goes.
"""

from __future__ import annotations

import gc
import io
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

import matplotlib as mpl
import pytest
from matplotlib.backends.backend_svg import FigureCanvasSVG
from matplotlib.figure import Figure
from matplotlib.patches import PathPatch
from matplotlib.path import Path as Outline
from matplotlib.text import Text

from generator.drawing import canvas
from generator.drawing.labels import Label
from generator.publishing.worker import THINGS_BETWEEN_COLLECTIONS
from generator.rendering import painting
from generator.rendering.logo import with_logo
from generator.rendering.pdf import SheetResources, SheetSetter
from generator.rendering.setter import (
    CSS,
    HTML,
    SVG,
    TAGS,
    FontConfiguration,
    URLFetcher,
    URLFetcherResponse,
    images,
    no_fonts,
)
from generator.rendering.styles import paper_fonts
from tests.benchmarks.floor import make_everything

_SVG = {"svg.fonttype": "none", "path.simplify": False, "text.parse_math": False}


@dataclass(frozen=True, slots=True)
class SetSheet:
    """A sheet as it was set last: its page, its styles, its pictures, and the fonts that may be read."""

    html: str
    styles: tuple[str, ...]
    pictures: dict[str, str]
    faces: str


@dataclass(frozen=True, slots=True)
class Drawing:
    """A drawing: its size [in], its paths (points, pen [pt, colour] and fill of each) and its words."""

    size: tuple[float, float]
    paths: tuple[tuple[list[tuple[tuple[float, float], ...]], float, str, str], ...]
    words: tuple[tuple[str, float, float, float, str], ...]


@dataclass(slots=True)
class PutAside:
    """What was set and drawn."""

    sheets: list[SetSheet] = field(default_factory=list)
    drawings: list[Drawing] = field(default_factory=list)


def bare(folder: Path) -> float:
    """Return how long a processor works to set and draw once what the sheets of a room hold [s]."""
    with _putting_aside() as aside:
        make_everything(folder)
    fonts = {faces: _fonts(faces) for faces in {sheet.faces for sheet in aside.sheets}}
    styles = {text: CSS(string=text) for sheet in aside.sheets for text in sheet.styles}
    gc.collect()
    gc.freeze()
    gc.set_threshold(THINGS_BETWEEN_COLLECTIONS)
    # The program has the library paint pictures in fewer steps; here it does so in its own way.
    images.SVG, TAGS["path"] = SVG, painting._library_path
    start = time.process_time()
    for sheet in aside.sheets:
        _set(sheet, styles, fonts[sheet.faces])
    with mpl.rc_context(_SVG):
        for drawing in aside.drawings:
            _draw(drawing)
    return time.process_time() - start


@contextmanager
def _putting_aside() -> Iterator[PutAside]:
    """Put aside what is set and drawn while the block runs."""
    aside, set_last = PutAside(), dict[int, tuple[str, ...]]()
    given: dict[int, SheetResources] = {}
    begin, set_on_pages, written = SheetSetter.__init__, SheetSetter.set_on_pages, SheetSetter.written
    written_svg = canvas.written_svg

    def begun(self: SheetSetter, paper: SheetResources) -> None:
        given[id(self)] = paper
        begin(self, paper)

    def set_now(self: SheetSetter, html: str, style: str = "") -> Any:
        set_last[id(self)] = (html, given[id(self)].style, *([style] if style else []))
        return set_on_pages(self, html, style)

    def written_now(self: SheetSetter, *told: Any) -> bytes:
        paper, (html, *styles) = given[id(self)], set_last[id(self)]
        pictures = with_logo(paper.memory, paper.theme)
        aside.sheets.append(SetSheet(html, tuple(styles), dict(pictures), paper_fonts(paper.theme)))
        return written(self, *told)

    def svg_now(size: tuple[float, float], key: str, images: Any, layers: Any, style: Any) -> str:
        layers = list(layers)
        aside.drawings.append(_drawing(size, layers))
        return written_svg(size, key, images, layers, style)

    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(SheetSetter, "__init__", begun)
        patch.setattr(SheetSetter, "set_on_pages", set_now)
        patch.setattr(SheetSetter, "written", written_now)
        patch.setattr(canvas, "written_svg", svg_now)
        yield aside


def _drawing(size: tuple[float, float], layers: list[Any]) -> Drawing:
    paths = tuple(
        (
            [tuple(points) for points in layer.outlines],
            layer.pen.width if layer.pen else 0.0,
            layer.pen.colour if layer.pen else "none",
            layer.fill or "none",
        )
        for layer in layers
        if not isinstance(layer, Label) and layer.outlines
    )
    words = tuple(
        (run.words, label.x, label.y, label.size, label.colour)
        for label in layers
        if isinstance(label, Label)
        for run in label.runs
    )
    return Drawing(size, paths, words)


def _draw(drawing: Drawing) -> None:
    figure = Figure(figsize=drawing.size)
    drawn = FigureCanvasSVG(figure)
    for outlines, width, colour, fill in drawing.paths:
        points = [point for outline in outlines for point in outline]
        codes = [code for outline in outlines for code in (Outline.MOVETO, *[Outline.LINETO] * (len(outline) - 1))]
        patch = PathPatch(
            Outline(points, codes), facecolor=fill, edgecolor=colour, linewidth=width, transform=figure.dpi_scale_trans
        )
        figure.add_artist(patch)
    for words, x, y, size, colour in drawing.words:
        figure.add_artist(Text(x, y, words, fontsize=size, color=colour, transform=figure.dpi_scale_trans))
    drawn.print_svg(io.StringIO(), metadata={"Date": None})  # type: ignore[no-untyped-call]


class _Pictures(URLFetcher):  # type: ignore[misc]  # the library has no types
    def __init__(self, pictures: dict[str, str]) -> None:
        super().__init__()
        self._pictures = pictures

    def fetch(self, url: str, headers: Any = None) -> Any:
        name = url.removeprefix("mem:")
        if name in self._pictures:
            return URLFetcherResponse(url, self._pictures[name].encode(), {"Content-Type": "image/svg+xml"})
        return super().fetch(url, headers)


def _set(sheet: SetSheet, styles: dict[str, Any], fonts: FontConfiguration) -> None:
    page = HTML(string=sheet.html, url_fetcher=_Pictures(sheet.pictures))
    page.write_pdf(stylesheets=[styles[text] for text in sheet.styles], font_config=fonts, pdf_variant="pdf/ua-1")


def _fonts(faces: str) -> FontConfiguration:
    fonts = no_fonts()
    CSS(string=faces, font_config=fonts)
    return fonts
