"""Layers of lines and areas, pixels and labels come in, inches with y downwards; slim SVG text goes out.

Nothing is laid out any more and no axes are made: each layer is one path, each run of a label one line of text that
stays text. What is drawn in a colour of the style also bears its name as a class, so that a page can draw it in other
colours, such as those of a dark screen.
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from generator.drawing.built_words import LetterRun, capital_middle
from generator.drawing.labels import POINTS, Hold, Label, Point, label_width
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
from generator.drawing.style import Pen, Style

_COLOURS = ("ink", "accent", "cloth", "shade", "paper")
_HOLDS = {"left": 0.0, "centre": 0.5, "right": 1.0}


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
    layers: Iterable[PathGroup | Label],
    style: Style,
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
        for item in layers:
            if isinstance(item, Label):
                for run in _words(item, paper):
                    figure.add_artist(run)
            elif item.outlines:
                figure.add_artist(_path(item, paper))
        written = io.StringIO()
        canvas.print_svg(written, metadata={"Date": None, "Creator": None})  # type: ignore[no-untyped-call]
    return classed(slim(written.getvalue()), {getattr(style, name): name for name in reversed(_COLOURS)})


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


def _words(label: Label, paper: Transform) -> Iterator[Text]:
    """Return each run of a label; words of one run keep their hold, so that another font leaves them in their place."""
    em = label.size / POINTS
    drop = capital_middle(label.font) * em
    alone = len(label.runs) == 1
    before = 0.0 if alone else _HOLDS[label.hold] * label_width(label)
    for run in label.runs:
        along, down = run.start * em - before, drop - run.rise * em
        right, lower = (down, -along) if label.turned else (along, down)
        yield _run(label, run, (label.x + right, label.y + lower), paper, hold=label.hold if alone else "left")


def _run(label: Label, run: LetterRun, at: Point, paper: Transform, *, hold: Hold) -> Text:
    # A space at the end of a run would be dropped.
    edged = run.words != run.words.strip()
    return _PlacedWords(
        *at,
        run.words.replace(" ", "\u00a0") if edged else run.words,
        fontsize=label.size * run.scale,
        family=label.font.family,
        weight="bold" if run.bold else "normal",
        color=label.colour or "black",
        horizontalalignment="center" if hold == "centre" else hold,
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


def classed(svg: str, names: Mapping[str, str]) -> str:
    """Return an SVG in which whatever has a named colour bears a class: ``fill-ink``, ``line-accent``.

    Examples
    --------
    >>> classed('<path d="M0 0" fill="#1c1c1c"/>', {"#1c1c1c": "ink"})
    '<path class="fill-ink" d="M0 0" fill="#1c1c1c"/>'
    """

    def with_class(found: re.Match[str]) -> str:
        painted = re.findall(r' (fill|stroke)="([^"]*)"', found[0])
        told = [
            f"{'line' if way == 'stroke' else 'fill'}-{names[colour]}" for way, colour in painted if colour in names
        ]
        return f'{found[1]} class="{" ".join(told)}"{found[2]}' if told else found[0]

    return re.sub(r"(<(?:path|text))( [^>]*>)", with_class, svg)
