"""Pictures in a PDF, painted in fewer steps: the library's drawings come in, the same lines and words go out.

The library reads a path number by number, sets words letter by letter, and puts words that do not begin at their place
into an object of the file of their own. Drawings of this program hold straight lines and single lines of words: their
paths are written as they stand, and words are set at once, without kerning, so that each letter stands where it did.
Whatever is not as simple, such as a theme's logo, the library paints.
"""

from __future__ import annotations

import re
from math import inf
from typing import Any

from generator.rendering.setter import INITIAL_VALUES, SVG, TAGS, Matrix, draw_first_line, images, split_first_line

_STRAIGHT = re.compile(r"(?:M-?\d+(?:\.\d+)? -?\d+(?:\.\d+)?(?:L-?\d+(?:\.\d+)? -?\d+(?:\.\d+)?)*z?)+")
_STEP = re.compile(r"([MLz])([^MLz]*)")
_WRITTEN = {"M": " m\n", "L": " l\n", "z": "h\n"}
_PLACED = frozenset({"x", "y", "transform", "text-anchor"})
_PAINTED = frozenset({"class", "fill", "font-family", "font-size", "font-weight", "version"})
# How much of its width words begin before their place.
_BEFORE = {"start": 0.0, "middle": 0.5, "end": 1.0}
_library_path = TAGS["path"]


def _path(svg: SVG, node: Any, font_size: float) -> None:
    """Write a path of straight lines from place to place as a PDF writes it (ISO 32000-1, 8.5.2)."""
    outline = node.get("d", "")
    if not _STRAIGHT.fullmatch(outline) or any(name.startswith("marker") for name in node.attrib):
        _library_path(svg, node, font_size)
        return
    svg.stream.stream.append(_STEP.sub(lambda step: step[2] + _WRITTEN[step[1]], outline).rstrip("\n"))


class _WordStyle(dict[str, Any]):
    """How words are set; the library asks it for the list of fonts too."""

    def __init__(self, node: Any, font_size: float, font_config: Any) -> None:
        super().__init__(INITIAL_VALUES)
        self.font_config = font_config
        self["font_family"] = [name.strip("\"'") for name in node.get("font-family", "sans-serif").split(",")]
        self["font_weight"] = int(node.get("font-weight", 400))
        self["font_size"] = font_size
        self["font_kerning"], self["font_variant_ligatures"] = "none", "none"


class _SetLine:
    """One set line of words, as the library draws it."""

    def __init__(self, layout: Any, style: _WordStyle, baseline: float) -> None:
        self.pango_layout, self.style, self.baseline = layout, style, baseline
        self.text = layout.text


class _PaintedDrawing(SVG):  # type: ignore[misc]  # the library has no types
    """A drawing whose single lines of words are set at once."""

    def draw_node(self, node: Any, font_size: float, fill_stroke: bool = True, context: Any = None) -> None:
        """Paint one element, and what is in it."""
        if node.tag == "text" and fill_stroke and _is_one_line(node):
            self._draw_words(node, float(node.get("font-size").removesuffix("px")))
        else:
            super().draw_node(node, font_size, fill_stroke, context)

    def _draw_words(self, node: Any, font_size: float) -> None:
        style = _WordStyle(node, font_size, self.font_config)
        layout, _, _, width, _, baseline = split_first_line(node.text, style, self.context, inf, 0)
        x = float(node.get("x")) - _BEFORE[node.get("text-anchor", "start")] * width
        self.stream.push_state()
        self.transform(node, font_size)
        fill, stroke = self.set_graphical_state(node, font_size)
        self.stream.begin_text()
        layout.reactivate(style)
        self.fill_stroke(fill, stroke, text=True)
        draw_first_line(
            self.stream, _SetLine(layout, style, baseline), "none", "none", Matrix(d=-1, e=x, f=float(node.get("y")))
        )
        self.stream.end_text()
        self.stream.pop_state()


def _is_one_line(node: Any) -> bool:
    """Whether an element is a line of words as drawings of this program have them."""
    return bool(
        node.text
        and node.text.strip()
        and not len(node._etree_node)
        and node.attrib.keys() <= _PLACED | _PAINTED
        and {"x", "y", "font-size"} <= node.attrib.keys()
        and re.fullmatch(r"[\d.]+px", node.get("font-size"))
        and re.fullmatch(r"-?[\d.]+ -?[\d.]+", f"{node.get('x')} {node.get('y')}")
        and node.get("font-weight", "400").isdigit()
        and node.get("text-anchor", "start") in _BEFORE
    )


TAGS["path"] = _path
images.SVG = _PaintedDrawing
