"""Layers of lines and areas, pixels and labels come in, inches with y downwards; slim SVG text goes out.

Each layer is one path, each run of a label a line of text that stays text. What is drawn in a colour of the style also
bears its name as a class, so that a page can draw it in other colours, such as those of a dark screen.
"""

from __future__ import annotations

import hashlib
import io
from base64 import b64encode
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from xml.sax.saxutils import escape

import numpy as np
import numpy.typing as npt
from PIL import Image

from generator.drawing.built_words import LetterRun, capital_middle
from generator.drawing.labels import POINTS, Label, Point, label_width
from generator.drawing.style import Pen, Style

_ANCHORS = {"left": "", "centre": ' text-anchor="middle"', "right": ' text-anchor="end"'}
_COLOURS = ("ink", "quiet", "accent", "cloth", "shade", "paper")


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

    The key keeps the names of clips apart from those of other pictures in one page.
    """
    names = {getattr(style, name): name for name in reversed(_COLOURS)}
    clips: dict[tuple[Point, ...], str] = {}
    mark = hashlib.sha256(key.encode()).hexdigest()[:10]
    drawn = [_image(image) for image in images]
    for item in layers:
        if isinstance(item, Label):
            drawn += _words(item, names)
        elif item.outlines:
            clip = f"{mark}-{len(clips) + 1}" if item.clip and item.clip not in clips else clips.get(item.clip, "")
            if clip:
                clips[item.clip] = clip
            drawn.append(_path(item, clip, names))
    shapes = "".join(
        f'<clipPath id="{name}"><path d="{_line(points, closed=True)}"/></clipPath>' for points, name in clips.items()
    )
    links = ' xmlns:xlink="http://www.w3.org/1999/xlink"' if "xlink:" in "".join(drawn[:1]) else ""
    wide, high = _number(size[0]), _number(size[1])
    head = f'<svg xmlns="http://www.w3.org/2000/svg"{links} width="{wide}pt" height="{high}pt"'
    defined = [f"<defs>{shapes}</defs>"] if shapes else []
    return "\n".join((f'{head} viewBox="0 0 {wide} {high}">', *defined, *drawn, "</svg>\n"))


def _number(inches: float) -> str:
    """Return a length in points, as short as can be."""
    written = f"{inches * POINTS:.3f}".rstrip("0").rstrip(".")
    return "0" if written == "-0" else written


def _at(point: Point) -> str:
    return f"{_number(point[0])} {_number(point[1])}"


def _line(points: Sequence[Point], *, closed: bool = False) -> str:
    return "M" + "L".join(_at(point) for point in points) + ("Z" if closed else "")


def _path(layer: PathGroup, clip: str, names: Mapping[str, str]) -> str:
    through = "".join(_line(points, closed=bool(layer.fill)) for points in layer.outlines)
    look = f' fill="{layer.fill or "none"}"'
    classes = [f"fill-{names[layer.fill]}"] if layer.fill in names else []
    if layer.pen:
        look += f' stroke="{layer.pen.colour}" stroke-width="{layer.pen.width:g}"'
        if layer.pen.dashes:
            look += f' stroke-dasharray="{",".join(f"{length:g}" for length in layer.pen.dashes)}"'
        classes += [f"line-{names[layer.pen.colour]}"] if layer.pen.colour in names else []
    inside = f' clip-path="url(#{clip})"' if clip else ""
    return f'<path{_class(classes)}{look}{inside} d="{through}"/>'


def _class(names: Sequence[str]) -> str:
    return f' class="{" ".join(names)}"' if names else ""


def _words(label: Label, names: Mapping[str, str]) -> list[str]:
    """Return a line of text for each run; words of one run keep their hold, so that another font stays in its place."""
    em = label.size / POINTS
    drop = capital_middle(label.font) * em
    runs = label.runs
    hold = label.hold if len(runs) == 1 else "left"
    before = 0.0 if len(runs) == 1 else {"left": 0.0, "centre": 0.5, "right": 1.0}[label.hold] * label_width(label)
    return [_run(label, run, (run.start * em - before, drop - run.rise * em), _ANCHORS[hold], names) for run in runs]


def _run(label: Label, run: LetterRun, away: Point, anchor: str, names: Mapping[str, str]) -> str:
    along, down = away
    x, y = (label.x + down, label.y - along) if label.turned else (label.x + along, label.y + down)
    colour = label.colour or "#000000"
    turn = f' transform="rotate(-90 {_at((x, y))})"' if label.turned else ""
    weight = ' font-weight="700"' if run.bold else ""
    kind = _class([f"fill-{names[colour]}"] if colour in names else [])
    # A space at an end would be dropped.
    letters = escape(run.words.replace(" ", "\u00a0") if run.words != run.words.strip() else run.words)
    look = f'fill="{colour}" font-family="{escape(label.font.family)}" font-size="{label.size * run.scale:g}"'
    return f'<text{kind} x="{_number(x)}" y="{_number(y)}" {look}{weight}{anchor}{turn}>{letters}</text>'


def _image(image: Pixels) -> str:
    written = io.BytesIO()
    Image.fromarray(image.pixels).save(written, "PNG")
    (left, top), (right, bottom) = image.corner, image.opposite
    rows, columns = image.pixels.shape[:2]
    across, down = ((right - left) * POINTS / columns, (bottom - top) * POINTS / rows)
    place = f"matrix({across:.6g} 0 0 {down:.6g} {_at(image.corner)})"
    data = b64encode(written.getvalue()).decode()
    size = f'width="{columns}" height="{rows}"'
    return f'<image {size} preserveAspectRatio="none" transform="{place}" xlink:href="data:image/png;base64,{data}"/>'
