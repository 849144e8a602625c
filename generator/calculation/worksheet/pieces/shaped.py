"""Pieces with an outline of their own: the outline of a project file comes in, edges, seam line and cut line go out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from typing import assert_never

from generator.calculation.pieces.plain_pieces import plain_allowance
from generator.calculation.shapes.by_word import half_circle, oval, rounded
from generator.calculation.shapes.curve import curve_through
from generator.calculation.shapes.cut_line import SeamEdge, cut_line, seam_line
from generator.calculation.shapes.line_lengths import fitted_length
from generator.calculation.shapes.mirrored import mirrored
from generator.calculation.shapes.notches import Notch, notches
from generator.calculation.shapes.segments import QuarterOval, Segment, Spot, StraightLine
from generator.calculation.worked_piece import EdgeWork, Part, Piece, SeamLine, Shaped
from generator.calculation.worksheet.pieces.sizes import Ends, Join, PieceSizes, Size
from generator.calculation.worksheet.scope import Scope
from generator.definitions.outlines import DrawnLine, DrawnOutline, Point, WordOutline
from generator.definitions.pieces.model import OutlinedModel
from generator.errors import CalculationError, Place
from generator.lengths import Edition

# The places of a cut line are whole millionths of an inch: 1.5 cm may come out a little more, and must not cost a mark.
SLIP = Fraction(1, 10**5)
_TURNED = ("hem", "turnover")
Edges = Mapping[str, tuple[Segment, ...]]


def shaped_sizes(scope: Scope, name: str, model: OutlinedModel, end_of: Ends) -> PieceSizes:
    """Return the sizes of a piece with an outline of its own, other than a circle, or of a copy of it."""
    outline = model.outline
    assert outline is not None
    return sewn_sizes(scope, name, outline_of(scope, model), end_of, outline.place)


def outline_of(scope: Scope, model: OutlinedModel) -> Edges:
    """Return the lines of every edge of a piece with an outline of its own, clockwise."""
    outline = model.outline
    assert outline is not None
    return _by_word(scope, model, outline) if isinstance(outline, WordOutline) else _drawn(scope, outline)


def sewn_sizes(scope: Scope, name: str, lines: Edges, end_of: Ends, place: Place) -> PieceSizes:
    """Return the sizes of a piece by the lines of its edges and how each ends; faults are reported at its place."""
    ends = {edge: end_of(edge) for edge in lines}
    edges = {
        edge: EdgeWork(edge, fitted_length(segments, scope.edition.wish_step), ends[edge], plain_allowance(ends[edge]))
        for edge, segments in lines.items()
    }
    sewn = [SeamEdge(edge, lines[edge], edges[edge].allowance, ends[edge].kind in _TURNED) for edge in lines]
    with scope.reporting(place, name):
        shape, size, cut = drawn_shape(sewn, scope.edition)
    part = Part(shape, *cut, *size, edges)
    return PieceSizes((part,), size, edges, edge_measures(edges), join=Join(scope.seam, parts=2))


def edge_measures(edges: Mapping[str, EdgeWork]) -> dict[str, Fraction]:
    """Return the length of each edge by its name, of one of two alike, and the way round [in]."""
    lengths = {name: edge.finished for name, edge in edges.items()}
    alike = {name.partition(" ")[2]: edge for name, edge in edges.items() if name.startswith("right ")}
    both = {f"{name} allowance": edge.allowance for name, edge in alike.items()}
    each = {name: edge.finished for name, edge in alike.items()}
    return {**both, **lengths, **each, "edge": sum(lengths.values(), Fraction(0))}


def drawn_shape(sewn: Sequence[SeamEdge], edition: Edition) -> tuple[Shaped, Size, Size]:
    """Return the lines of a shape, told from the left and the highest point of its seams, its size and its cut size."""
    lines = {edge.name: seam_line(edge) for edge in sewn}
    cut = cut_line(sewn, edition)
    left, top, right, bottom = _box(spot for spots in lines.values() for spot in spots)
    cut_left, cut_top, cut_right, cut_bottom = _box(cut)

    def moved(spots: Iterable[Spot]) -> tuple[Spot, ...]:
        return tuple((x - left, y - top) for x, y in spots)

    marks = (Notch(one.edge, *moved((one.at, one.outer, one.inner))) for one in notches(sewn))
    shape = Shaped(tuple(SeamLine(name, moved(spots)) for name, spots in lines.items()), moved(cut), tuple(marks))
    return shape, (right - left, bottom - top), (cut_right - cut_left - SLIP, cut_bottom - cut_top - SLIP)


def _box(spots: Iterable[Spot]) -> tuple[Fraction, Fraction, Fraction, Fraction]:
    across, along = zip(*spots, strict=True)
    return min(across), min(along), max(across), max(along)


def _by_word(scope: Scope, model: OutlinedModel, outline: WordOutline) -> Edges:
    across, along = told_size(scope, model, outline)
    match outline.word:
        case "half circle":
            return half_circle(across, along)
        case "circle" | "oval":
            return oval(across, along)
        case "rounded" | "rounded top" | "rounded bottom":
            assert outline.radius is not None
            corners = outline.word.partition(" ")[2] or "all"
            with scope.reporting(outline.place):
                return rounded((across, along), scope.value(outline.radius), corners, scope.edition)
    # A new word without its lines stops here, and the types of the tool say so before.
    assert_never(outline.word)


def told_size(scope: Scope, model: OutlinedModel, outline: WordOutline) -> Size:
    """Return the finished size that the file says of a shape by one word; of round ones one measure says the other."""
    assert model.finished_across is not None
    across = scope.value(model.finished_across)
    follows = across / 2 if outline.word == "half circle" else across
    along = scope.value(model.finished_along) if model.finished_along is not None else follows
    if outline.word == "circle" and along != across:
        told = f"a circle is as long as it is wide, and this is {scope.say(across)} by {scope.say(along)}"
        raise CalculationError(f"{told}; write 'outline: oval', or leave out 'finished along'")
    return across, along


def _drawn(scope: Scope, outline: DrawnOutline) -> Edges:
    """The edges of a drawn outline, those of both sides where it is mirrored."""
    at = first = _spot(scope, outline.start)
    edges: dict[str, tuple[Segment, ...]] = {}
    for edge in outline.edges:
        found: list[Segment] = []
        with scope.reporting(edge.place):
            for line in edge.lines:
                last = edge is outline.edges[-1] and line is edge.lines[-1]
                found += _lines(at, line, [_spot(scope, point) for point in line.points], outline, last=last)
                at = found[-1].end
        edges[edge.name] = tuple(found)
    with scope.reporting(outline.place):
        if not outline.mirror and at != first:
            raise CalculationError(
                "the outline is not closed: its last edge must end where the first begins; let it end at the 'start'"
            )
        return mirrored(edges) if outline.mirror else edges


def _lines(at: Spot, line: DrawnLine, spots: list[Spot], outline: DrawnOutline, *, last: bool) -> list[Segment]:
    if line.way != "curve" and at == spots[0]:
        raise CalculationError("a line ends where it begins; take it out, or let it end at another point")
    if line.way == "line":
        return [StraightLine(at, spots[0])]
    if line.way != "curve":
        if at[0] == spots[0][0] or at[1] == spots[0][1]:
            raise CalculationError("a quarter oval goes as well across as down; where it does not, write 'line to'")
        return [QuarterOval(at, spots[0], line.leaving or "across")]
    # A mirrored curve crosses the middle squarely, or it would have a point there.
    square = outline.mirror and at[0] == 0
    leaving = line.leaving or ("across" if square else None)
    arriving = line.arriving or ("across" if outline.mirror and last else None)
    return [*curve_through([at, *spots], leaving, arriving)]


def _spot(scope: Scope, point: Point) -> Spot:
    return scope.value(point[0]), scope.value(point[1])


def is_curved(piece: Piece, side: str) -> bool:
    """Return whether an edge of a piece with an outline of its own is more than one straight line."""
    return piece.shape is not None and any(line.name == side and len(line.spots) > 2 for line in piece.shape.lines)
