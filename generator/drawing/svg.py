"""Layers of lines and areas, pixels and labels come in, inches with y downwards; slim SVG text goes out.

Nothing is laid out any more, so no figure and no artist is made: each layer is one path, each run of a label one line
of text that stays text. The library writes what it is good at, the points of paths and the images. What is drawn in a
colour of the style also bears its name as a class, so that a page can draw it in other colours, such as those of a dark
screen.
"""

from __future__ import annotations

import hashlib
import io
import re
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import lru_cache
from xml.sax.saxutils import escape, quoteattr

import numpy as np
import numpy.typing as npt

from generator.drawing.built_words import LetterRun, capital_middle
from generator.drawing.labels import POINTS, Label, Point, label_width
from generator.drawing.plotting import Affine2D, Outline, convert_to_string, mpl, svg_renderer, to_hex
from generator.drawing.style import Pen, Style

_COLOURS = ("ink", "accent", "cloth", "shade", "paper")
_HOLDS = {"left": 0.0, "centre": 0.5, "right": 1.0}
_ANCHORS = {"left": "start", "centre": "middle", "right": "end"}
# How the library writes moves, lines, two sorts of curves and ends; here are no curves.
_LETTERS = [b"M", b"L", b"Q", b"C", b"z"]
_DIGITS = 6
_NO_METADATA = {"Date": None, "Creator": None}
_BLACK = "#000000"
_BOLD = 700


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
    paper = _SvgPaper(size, key, {getattr(style, name): name for name in reversed(_COLOURS)})
    found = list(layers)
    pixels = [paper.image(image) for image in images]
    paths = [paper.path(layer) for layer in found if isinstance(layer, PathGroup) and layer.outlines]
    words = [paper.word(word) for label in found if isinstance(label, Label) for word in _words(label)]
    return "".join((paper.head(linked=bool(pixels)), *pixels, *paths, *words, paper.clips(), "</svg>\n"))


@dataclass(frozen=True, slots=True)
class _Word:
    """Letters of one run, where they stand [in]."""

    label: Label
    run: LetterRun
    x: float
    y: float
    anchor: str


def _words(label: Label) -> Iterator[_Word]:
    """Return each run of a label; words of one run keep their hold, so that another font leaves them in their place."""
    em = label.size / POINTS
    drop = capital_middle(label.font) * em
    alone = len(label.runs) == 1
    before = 0.0 if alone else _HOLDS[label.hold] * label_width(label)
    for run in label.runs:
        along, down = run.start * em - before, drop - run.rise * em
        right, lower = (down, -along) if label.turned else (along, down)
        yield _Word(label, run, label.x + right, label.y + lower, _ANCHORS[label.hold if alone else "left"])


class _SvgPaper:
    """What the elements of one picture are written with: its size, its key, its colours by name, its clips."""

    def __init__(self, size: tuple[float, float], key: str, names: Mapping[str, str]) -> None:
        self._key, self._names = key, names
        self._wide, self._high = (side * POINTS for side in size)
        self._points = Affine2D().scale(POINTS)
        self._clips: list[str] = []

    def head(self, *, linked: bool) -> str:
        wide, high = _short(self._wide), _short(self._high)
        links = ' xmlns:xlink="http://www.w3.org/1999/xlink"' if linked else ""
        box = f'width="{wide}pt" height="{high}pt" viewBox="0 0 {wide} {high}"'
        return f'<svg{links} {box} xmlns="http://www.w3.org/2000/svg" version="1.1">\n'

    def path(self, layer: PathGroup) -> str:
        painted, classes = [], []
        if layer.fill:
            fill = _hex(layer.fill)
            painted += [f' fill="{fill}"'] if fill != _BLACK else []
            classes += [f"fill-{self._names[fill]}"] if fill in self._names else []
        else:
            painted.append(' fill="none"')
        if layer.pen:
            colour = _hex(layer.pen.colour)
            painted.append(_stroke(layer.pen, colour))
            classes += [f"line-{self._names[colour]}"] if colour in self._names else []
        # What is open and leaves the paper is cut off there; a closed shape could lose its edge so.
        points = self._path(_outline(layer.outlines, closed=bool(layer.fill)), cut=not layer.fill)
        return f'   <path{_class(classes)} d="{points}"{self._clip(layer.clip)}{"".join(painted)}/>\n'

    def _path(self, outline: Outline, *, cut: bool) -> str:
        edges = (0.0, 0.0, self._wide, self._high) if cut else None
        found: bytes = convert_to_string(outline, self._points, edges, False, None, _DIGITS, _LETTERS, False)
        return _compact(found.decode("ascii"))

    def _clip(self, around: Sequence[Point]) -> str:
        if not around:
            return ""
        points = self._path(_outline([around], closed=True), cut=False)
        name = _name("p", f"{self._key} {len(self._clips)}".encode())
        self._clips.append(f'  <clipPath id="{name}">\n   <path d="{points}"/>\n  </clipPath>\n')
        return f' clip-path="url(#{name})"'

    def clips(self) -> str:
        return f" <defs>\n{''.join(self._clips)} </defs>\n" if self._clips else ""

    def word(self, word: _Word) -> str:
        label, run = word.label, word.run
        # A space at the end of a run would be dropped.
        letters = run.words if run.words == run.words.strip() else run.words.replace(" ", "\u00a0")
        colour = _hex(label.colour) if label.colour else _BLACK
        x, y = _short(word.x * POINTS), _short(word.y * POINTS)
        parts = (
            _class([f"fill-{self._names[colour]}"] if colour in self._names and colour != _BLACK else []),
            f' font-weight="{_BOLD}"' if run.bold else "",
            f' font-size="{_short(label.size * run.scale)}px" font-family={quoteattr(repr(label.font.family))}',
            f' text-anchor="{word.anchor}"',
            f' fill="{colour}"' if colour != _BLACK else "",
            f' x="{x}" y="{y}"',
            f' transform="rotate(-90 {x} {y})"' if label.turned else "",
        )
        return f"  <text{''.join(parts)}>{escape(letters)}</text>\n"

    def image(self, image: Pixels) -> str:
        (left, top), (right, bottom) = (
            (x * POINTS, self._high - y * POINTS) for x, y in (image.corner, image.opposite)
        )
        written = io.StringIO()
        with mpl.rc_context({"svg.hashsalt": self._key}):
            renderer = svg_renderer()(self._wide, self._high, written, metadata=_NO_METADATA)
            stretch = Affine2D().scale(right - left, bottom - top).translate(left, top)
            renderer.draw_image(renderer.new_gc(), 0, 0, image.pixels, stretch)
        text = written.getvalue()
        return "  " + re.sub(r' style="[^"]*"', "", text[text.index("<image") :].strip()) + "\n"


def _outline(outlines: Iterable[Sequence[Point]], *, closed: bool) -> Outline:
    vertices: list[Point] = []
    codes: list[np.uint8] = []
    for points in outlines:
        vertices += points
        codes += [Outline.MOVETO] + [Outline.LINETO] * (len(points) - 1)
        if closed:
            vertices.append(points[0])
            codes.append(Outline.CLOSEPOLY)
    return Outline(np.asarray(vertices), codes)


@lru_cache(maxsize=64)
def _stroke(pen: Pen, colour: str) -> str:
    dashes = ",".join(map(_short, pen.dashes))
    dashed = f' stroke-dasharray="{dashes}" stroke-dashoffset="0"' if dashes else ""
    return f'{dashed} stroke="{colour}"' + (f' stroke-width="{_short(pen.width)}"' if pen.width != 1 else "")


@lru_cache(maxsize=64)
def _hex(colour: str) -> str:
    return str(to_hex(colour))


def _class(names: Sequence[str]) -> str:
    return f' class="{" ".join(names)}"' if names else ""


def _short(number: float) -> str:
    return f"{number:f}".rstrip("0").rstrip(".")


def _name(sort: str, content: bytes) -> str:
    return f"{sort}{hashlib.sha256(content).hexdigest()[:10]}"


def _compact(path: str) -> str:
    """A path of the library in one line, without a space beside its letters."""
    compact = path.replace("\n", "")
    for letter in "MLz":
        compact = compact.replace(f" {letter}", letter).replace(f"{letter} ", letter)
    return compact.strip()
