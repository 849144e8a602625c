"""Layers of lines and areas, pixels and labels come in, inches with y downwards; slim SVG text goes out.

Nothing is laid out any more and no axes are made: each layer is one path, each label one line of text that stays text.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from generator.drawing.labels import CAPITAL_MIDDLE, POINTS, Label, Point
from generator.drawing.plotting import (
    Affine2D,
    Artist,
    Figure,
    FigureCanvasSVG,
    Outline,
    PathPatch,
    RendererSVG,
    Text,
    Transform,
    mpl,
)
from generator.drawing.style import Pen


@dataclass(slots=True)
class PathGroup:
    """What becomes one path: all open lines of one pen, or closed shapes of one fill; inside ``clip`` where given."""

    pen: Pen | None = None
    fill: str = ""
    clip: tuple[Point, ...] = ()
    outlines: list[Sequence[Point]] = field(default_factory=list)


@dataclass(slots=True)
class Pixels:
    """A picture of pixels, rows from the top, stretched between two corners."""

    pixels: npt.NDArray[np.uint8]
    corner: Point
    opposite: Point


def written_svg(
    size: tuple[float, float],
    key: str,
    images: Iterable[Pixels],
    layers: Iterable[PathGroup],
    lettering: Iterable[PathGroup | Label],
) -> str:
    """Return the SVG of what was drawn on paper of a size [in]; equal drawings of one key give equal text.

    The key keeps the names of clips and images apart from those of other pictures in one page.
    """
    settings = {
        "svg.fonttype": "none",
        "svg.hashsalt": key,
        "path.simplify": False,
        "text.parse_math": False,
        "lines.scale_dashes": False,
    }
    with mpl.rc_context(settings):  # type: ignore[arg-type]
        figure = Figure(figsize=size)
        canvas = FigureCanvasSVG(figure)
        figure.patch.set_visible(False)
        paper = Affine2D().scale(1, -1).translate(0, size[1]) + figure.dpi_scale_trans
        for image in images:
            figure.add_artist(_Stretched(image, paper))
        for item in (*layers, *lettering):
            if isinstance(item, Label):
                figure.add_artist(_words(item, paper))
            elif item.outlines:
                figure.add_artist(_path(item, paper))
        written = io.StringIO()
        canvas.print_svg(written, metadata={"Date": None, "Creator": None})  # type: ignore[no-untyped-call]
    return slim(written.getvalue())


def _path(layer: PathGroup, paper: Transform) -> PathPatch:
    vertices: list[Point] = []
    codes: list[np.uint8] = []
    for points in layer.outlines:
        vertices += points
        codes += [Outline.MOVETO] + [Outline.LINETO] * (len(points) - 1)
        if layer.fill:
            vertices.append(points[0])
            codes.append(Outline.CLOSEPOLY)
    patch = PathPatch(
        Outline(np.asarray(vertices), codes),
        facecolor=layer.fill or "none",
        edgecolor=layer.pen.colour if layer.pen else "none",
        linewidth=layer.pen.width if layer.pen else 0,
        linestyle=(0, layer.pen.dashes) if layer.pen and layer.pen.dashes else "-",
        transform=paper,
    )
    if layer.clip:
        patch.set_clip_path(Outline([*layer.clip, layer.clip[0]], closed=True), paper)
    return patch


class _PlacedWords(Text):
    """Words whose place is already known, so that nothing need be laid out."""

    def draw(self, renderer: RendererSVG) -> None:  # type: ignore[override]
        x, y = self.get_transform().transform(self.get_unitless_position())
        paint = renderer.new_gc()
        paint.set_foreground(self.get_color())
        font, angle = self.get_fontproperties(), self.get_rotation()
        renderer.draw_text(paint, x, renderer.height - y, self.get_text(), font, angle, False, self)  # type: ignore[no-untyped-call]
        paint.restore()


def _words(label: Label, paper: Transform) -> Text:
    drop = CAPITAL_MIDDLE * label.size / POINTS
    return _PlacedWords(
        label.x + (drop if label.turned else 0),
        label.y + (0 if label.turned else drop),
        label.words,
        fontsize=label.size,
        family=label.font.family,
        weight="bold" if label.bold else "normal",
        color=label.colour or "black",
        horizontalalignment="center" if label.hold == "centre" else label.hold,
        verticalalignment="baseline",
        rotation=90 if label.turned else 0,
        rotation_mode="anchor",
        transform=paper,
    )


class _Stretched(Artist):
    """Pixels stretched between two corners without resampling."""

    def __init__(self, image: Pixels, paper: Transform) -> None:
        super().__init__()
        self.image = image
        self.set_transform(paper)

    def draw(self, renderer: RendererSVG) -> None:  # type: ignore[override]
        (left, top), (right, bottom) = self.get_transform().transform([self.image.corner, self.image.opposite])
        stretch = Affine2D().scale(right - left, bottom - top).translate(left, top)
        renderer.draw_image(renderer.new_gc(), 0, 0, self.image.pixels, stretch)  # type: ignore[no-untyped-call]


def slim(svg: str) -> str:
    """Return an SVG of matplotlib without what costs time or clashes: prolog, metadata, groups, global style."""
    svg = svg[svg.index("<svg") :]
    svg = re.sub(r"\s*<metadata>.*?</metadata>|\s*<defs>\s*<style.*?</defs>|\s*<!--.*?-->", "", svg, flags=re.DOTALL)
    svg = re.sub(r"\s*</?g(?: [^>]*)?>", "", svg)
    svg = re.sub(r' style="([^"]*)"', _attributes, svg)
    svg = re.sub(r' transform="rotate\(-0 [^"]*"', "", svg)
    svg = re.sub(r' d="([^"]*)"', lambda found: f' d="{_compact(found[1])}"', svg)
    if "xlink:href" not in svg:
        svg = re.sub(r' xmlns:xlink="[^"]*"', "", svg, count=1)
    return svg.strip() + "\n"


def _attributes(found: re.Match[str]) -> str:
    written = []
    for part in found[1].split(";"):
        name, _, value = part.strip().partition(": ")
        if value and name != "image-rendering" and (name, value) != ("stroke-linejoin", "miter"):
            written.append(f' {name}="{value}"')
    return "".join(written)


def _compact(path: str) -> str:
    return re.sub(r"\s*([A-Za-z])\s*", r"\1", path.replace("\n", " ")).strip()
