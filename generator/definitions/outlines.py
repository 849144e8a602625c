"""The outline of a piece: one word, or edges drawn by their points, come in, a checked outline goes out.

A drawn outline names its edges itself, so the names are read first, before any formula that may ask for them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, cast

from generator.definitions.faults import Fault, SilentFault, meant
from generator.definitions.keyed import name_fault
from generator.definitions.nodes import Group, Listing, Node, Scalar
from generator.definitions.piece_kind import PieceKind
from generator.definitions.readers import Leaf, Parts, Schema
from generator.definitions.reading import Reading, filled_words, formulas, read_terms
from generator.definitions.values import Formula
from generator.errors import Place
from generator.limits import MOST_OUTLINE_POINTS

OutlineWord = Literal["circle", "oval", "half circle", "rounded", "rounded top", "rounded bottom"]
Way = Literal["across", "down"]
Point = tuple[Formula, Formula]
# Each word with the edges that the outline then has.
WORDS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "circle": ("rim",),
        "oval": ("rim",),
        "half circle": ("rim", "bottom"),
        "rounded": ("rim",),
        "rounded top": ("rim", "bottom"),
        "rounded bottom": ("top", "rim"),
    }
)
_KEYS = ("mirror", "start", "edges")
_LINE = re.compile(r"line\s+to\b")
_QUARTER = re.compile(r"quarter\s+oval\s+(across|down)\s+to\b")
_CURVE = re.compile(r"curve(?:\s+leaving\s+(across|down))?(?:\s+arriving\s+(across|down))?\s+through\b")
_HOW = (
    "an edge is 'line to', 'quarter oval across to', 'quarter oval down to' or 'curve through', and then its points, "
    "each as far across, comma, as far down: line to 7 1/2 in, 1 in or 19 cm, 2.5 cm"
)


@dataclass(frozen=True, slots=True)
class WordOutline:
    """An outline told by one word; ``radius`` is that of its round corners."""

    word: OutlineWord
    radius: Formula | None
    place: Place


@dataclass(frozen=True, slots=True)
class DrawnLine:
    """A line of a drawn outline: through which points it goes, and how a curve sets out and arrives."""

    way: Literal["line", "quarter oval", "curve"]
    points: tuple[Point, ...]
    leaving: Way | None
    arriving: Way | None


@dataclass(frozen=True, slots=True)
class DrawnEdge:
    """An edge of a drawn outline: its name, and its lines one after the other."""

    name: str
    lines: tuple[DrawnLine, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class DrawnOutline:
    """An outline told by its edges, clockwise from ``start``; where ``mirror``, down one side of the middle."""

    mirror: bool
    start: Point
    edges: tuple[DrawnEdge, ...]
    place: Place


Outline = WordOutline | DrawnOutline


class OutlineReader:
    """Reads the outline of a piece."""

    def value(self, found: Node, reading: Reading) -> Outline:
        """Return the outline, or report its faults and raise SilentFault."""
        if isinstance(found, Group):
            return _drawn(found, reading)
        outline: WordOutline = _BY_WORD.value(found, reading)
        return outline

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of an outline."""
        edge = {"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}
        edges = {"type": "array", "items": {"type": "object", "additionalProperties": edge}}
        drawn = {
            "type": "object",
            "properties": {"mirror": {"enum": ["yes", "no", True, False]}, "start": {"type": "string"}, "edges": edges},
            "required": ["edges", "start"],
            "additionalProperties": False,
        }
        return {"anyOf": [{"type": "string"}, drawn]}


def outlined(kind: PieceKind, found: Node, reading: Reading) -> PieceKind | None:
    """Return a kind with the edges of an outline, None after reporting that they cannot be known."""
    try:
        if isinstance(found, Group):
            return kind.shaped(*_names(found, kind, reading))
        return kind.shaped(WORDS[_WORD.value(found, reading)])
    except SilentFault:
        return None


def _word(found: Scalar, reading: Reading) -> OutlineWord:
    text = filled_words(found).strip()
    word = next((word for word in sorted(WORDS, key=len, reverse=True) if re.match(rf"{word}\b", text)), None)
    if word is None:
        raise Fault(f"'{text}' is no outline{meant(text, WORDS)}")
    return cast(OutlineWord, word)


def _by_word(found: Scalar, reading: Reading) -> WordOutline:
    word = _word(found, reading)
    behind = found.text.index(word) + len(word)
    rest = found.text[behind:].strip()
    if word.startswith("rounded") and not rest:
        raise Fault(f"'{word}' needs the radius of its corners, for example {word} 2 in or 5 cm", behind)
    if rest and not word.startswith("rounded"):
        raise Fault(f"nothing stands after '{word}'; how large it is say finished across and finished along", behind)
    if not rest:
        return WordOutline(word, None, found.place)
    sides = read_terms(found, reading, skip=behind)
    return WordOutline(word, formulas(found, sides, reading)[0], found.place)


def _names(found: Group, kind: PieceKind, reading: Reading) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """The names of all edges of a drawn outline, and of those that it has twice, left and right."""
    edges = found.get("edges")
    if not isinstance(edges, Listing) or not edges.items:
        told = "a drawn outline lists its 'edges', each with a - before it: - neck: line to ..."
        reading.faults.refuse(found.place, told)
    names: list[str] = []
    for item in edges.items:
        if not isinstance(item, Group) or len(item.entries) != 1:
            reading.faults.refuse(item.place, "an edge is its name, a colon and its line: - shoulder: line to ...")
        ((name, (key, _)),) = item.entries.items()
        fault = name_fault(name)
        if not fault and name in names:
            fault = f"there are two edges '{name}'; give each a name of its own"
        if not fault and (name in kind.dimensions or name in ("all", "edge")):
            fault = f"'{name}' is a measure of every piece; give the edge another name"
        if not fault and name.startswith(("left ", "right ")):
            fault = f"write '{name}' without left and right: edges of a mirrored outline get these words by themselves"
        if fault:
            reading.faults.refuse(key.place, fault)
        names.append(name)
    mirror = found.get("mirror")
    if not isinstance(mirror, Scalar) or mirror.text.strip().lower() not in ("yes", "true"):
        return tuple(names), ()
    twice = tuple(names[1:-1])
    right, left = (tuple(f"{side} {name}" for name in twice) for side in ("right", "left"))
    return (*names[:1], *right, *names[-1:][: len(names) > 1], *left[::-1]), twice


def _drawn(found: Group, reading: Reading) -> DrawnOutline:
    for folded, (key, _) in found.entries.items():
        if folded not in _KEYS:
            reading.faults.add(key.place, f"unknown key '{key.text}'{meant(folded, _KEYS)}")
    start, mirror = found.get("start"), found.get("mirror")
    if start is not None and not isinstance(start, Scalar):
        reading.faults.refuse(start.place, "'start' is one point in one line: start: 0, 4 in or 0, 10 cm")
    if start is None:
        told = "'start' is missing here: the point where the first edge begins, for example 0, 4 in or 0, 10 cm"
        reading.faults.refuse(found.place, told)
    if mirror is not None:
        word = mirror.text.strip() if isinstance(mirror, Scalar) else "what stands here"
        if word.lower() not in ("yes", "no", "true", "false"):
            reading.faults.refuse(mirror.place, f"'{word}' is neither yes nor no; write mirror: yes, or leave it out")
    edges = cast(Listing, found.get("edges"))
    drawn: list[DrawnEdge] = []
    for item in edges.items:
        ((name, (key, node)),) = cast(Group, item).entries.items()
        lines = node.items if isinstance(node, Listing) else (node,)
        if not lines:
            reading.faults.add(node.place, f"the edge '{name}' has no line; {_HOW}")
        drawn.append(DrawnEdge(name, tuple(_line(line, reading) for line in lines), key.place))
    if sum(len(line.points) for edge in drawn for line in edge.lines) > MOST_OUTLINE_POINTS:
        reading.faults.refuse(edges.place, f"an outline has {MOST_OUTLINE_POINTS} points at most")
    yes = isinstance(mirror, Scalar) and mirror.text.strip().lower() in ("yes", "true")
    return DrawnOutline(yes, _POINT.value(start, reading), tuple(drawn), found.place)


def _line(found: Node, reading: Reading) -> DrawnLine:
    line: DrawnLine = _DRAWN.value(found, reading)
    return line


def _read_line(found: Scalar, reading: Reading) -> DrawnLine:
    text = filled_words(found)
    if way := _LINE.match(text):
        return DrawnLine("line", _points(found, reading, way.end(), 1), None, None)
    if way := _QUARTER.match(text):
        return DrawnLine("quarter oval", _points(found, reading, way.end(), 1), cast(Way, way[1]), None)
    if way := _CURVE.match(text):
        points = _points(found, reading, way.end(), MOST_OUTLINE_POINTS)
        return DrawnLine("curve", points, cast("Way | None", way[1]), cast("Way | None", way[2]))
    raise Fault(_HOW)


def _one_point(found: Scalar, reading: Reading) -> Point:
    return _points(found, reading, 0, 1)[0]


def _points(found: Scalar, reading: Reading, skip: int, most: int) -> tuple[Point, ...]:
    """Points, each as far across, comma, as far down; 'then' stands between two of them."""
    sides = read_terms(found, reading, between=(",", "then"), skip=skip)
    if any(len(side) % 2 for side in sides):
        raise Fault("a point is as far across, a comma and a space, as far down: 5 in, 0", sides[0][-1][1])
    if len(sides[0]) > 2 * most:
        told = "one point is wanted here; several go with 'curve through', with 'then' between them"
        raise Fault(told, sides[0][2][1])
    values = formulas(found, sides, reading)
    return tuple(zip(values[::2], values[1::2], strict=True))


_TEXT: Schema = {"type": "string"}
_WORD, _BY_WORD, _DRAWN, _POINT = (Leaf(read, _TEXT) for read in (_word, _by_word, _read_line, _one_point))
