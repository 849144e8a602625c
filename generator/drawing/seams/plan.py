"""Where the layers of a seam lie on each other: what a step joins comes in, cloth in inches goes out.

The finished edges of the lowest layer begin at (0, 0); x runs to the right and y down, as they lie before you.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.calculation.making_up.joined import Joined, JoinLayer, Opening
from generator.calculation.making_up.laid import CLOCKWISE, opposite
from generator.calculation.worked_piece import EdgeWork, Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box
from generator.drawing.seams.boxes import FLAT, around, grown, level, share, sides_of
from generator.drawing.seams.laid import Laid, is_hung
from generator.drawing.seams.lines import Line, between, length_of, looks, outwards, without
from generator.drawing.seams.opened import opened
from generator.drawing.seams.shapes import Outline, edge_on_edge, hung_from, outline_of, turned_over

HIDDEN, FEW, BAG = 0.8, 3, 3  # how much is covered so that all counts as hidden; a frill on every side hides nothing
# Edges that lie raw when they are sewn; any other is hemmed, folded or bound by then.
_RAW = frozenset({"seam", "faced", "french", "felled", "bound"})


@dataclass(frozen=True, slots=True)
class SeamPlan:
    """Layers from below, where they are sewn, and where an opening stays; ``whole`` holds all that lies there.

    ``gaps`` are what stays open for good. ``opened`` is how they lie when the seam is opened out, or turned out where
    ``joined`` says so.
    """

    joined: Joined
    below: tuple[Laid, ...]
    over: tuple[Laid, ...]
    seams: Mapping[str, Line]
    opening: tuple[str, Line] | None
    opened: tuple[Laid, ...]
    gaps: tuple[tuple[str, Line], ...] = ()

    @property
    def sewn(self) -> tuple[tuple[str, Line], ...]:
        """The lines that are sewn, each with its side: what openings leave of the seams."""
        openings = (*self.gaps, *((self.opening,) if self.opening is not None else ()))
        found = []
        for side, seam in self.seams.items():
            lines = [seam]
            for at, gap in openings:
                lines = [part for line in lines for part in (without(line, gap) if at == side else [line])]
            found += [(side, line) for line in lines]
        return tuple(found)

    @property
    def whole(self) -> Box:
        """All layers."""
        return around(laid.cut for laid in (*self.below, *self.over))

    @property
    def way_out(self) -> tuple[str, Line]:
        """Where the work is turned out, and which way that is: the opening, else an edge that is not sewn."""
        side, line = self.opening or self._open_edge
        return (side if side in CLOCKWISE else looks(outwards(line, length_of(line) / 2))), line

    @property
    def _open_edge(self) -> tuple[str, Line]:
        edges = self.below[0].edges if self.shaped else sides_of(around(one.finished for one in self.opened))
        side = next((side for side in edges if side not in self.seams), next(iter(edges)))
        return side, edges[side]

    @property
    def shaped(self) -> bool:
        """Whether the lowest layer has an outline of its own."""
        return self.below[0].outline is not None

    @property
    def all_round(self) -> bool:
        """Whether it is sewn right round."""
        return set(self.below[0].edges) <= set(self.joined.sides)

    @property
    def inside_out(self) -> bool:
        """Whether it stays wrong side out when it is sewn, so that a later step turns it."""
        hangs = all(is_hung(laid.piece) for laid in self.over)
        opens_out = (
            len(self.joined.sides) < BAG and not self.all_round and all(len(one) == 2 for one in self.seams.values())
        )
        return not self.joined.turned and not (self.joined.turned_in or hangs or opens_out)

    @property
    def tube(self) -> bool:
        """Whether it is a ring when it is sewn: one piece folded, or two like it sewn at both ends."""
        ends = set(self.joined.sides) in ({"left", "right"}, {"top", "bottom"})
        return self.joined.folded or (ends and len(self.joined.pieces) == 1)

    @property
    def covered(self) -> bool:
        """Whether what lies above hides all that lies below."""
        lower = around(laid.cut for laid in self.below)
        hides = sum(share(laid.cut, lower) for laid in self.over if laid.outline is None or not is_hung(laid.piece))
        return len(self.over) < FEW and hides > HIDDEN


def plan_seam(worksheet: Worksheet, joined: Joined) -> SeamPlan | None:
    """Return where everything lies, None where pieces are not flat or do not lie level on each other."""
    if any(_not_flat(worksheet.pieces[name]) for name in joined.pieces):
        return None
    below = _row(worksheet, joined)
    if any(outline_of(worksheet.pieces[name]) is not None for name in joined.pieces):
        over = _shapes_over(worksheet, joined, below)
        return (
            _planned(joined, below, over, {side: _common(side, below[0], over) for side in joined.sides})
            if over
            else None
        )
    if not set(joined.sides) <= {*CLOCKWISE}:
        return None
    base = around(laid.finished for laid in below)
    over = tuple(laid for layer in joined.layers[1:] for laid in _over(worksheet, joined, layer, base))
    lines = [laid.finished if joined.layers[0].right_side_up else laid.cut for laid in over]
    lower = base if joined.layers[0].right_side_up else around(laid.cut for laid in below)
    return _planned(joined, below, over, {side: _along(side, lower, lines) for side in joined.sides})


def _planned(joined: Joined, below: tuple[Laid, ...], over: tuple[Laid, ...], seams: Mapping[str, Line]) -> SeamPlan:
    opening = _opening(joined.opening, below, seams) if joined.opening is not None else None
    gaps = tuple(_opening(gap, below, seams) for gap in joined.gaps)
    return SeamPlan(joined, below, over, seams, opening, opened(joined, below, over), gaps)


def _not_flat(piece: Piece) -> bool:
    drawn = piece.made.drawn_up
    unknown = piece.shaped and piece.trimmed_to is None
    return bool(piece.made.folds) or (drawn is not None and drawn.to == 0) or not piece.parts or unknown


def _shapes_over(worksheet: Worksheet, joined: Joined, below: tuple[Laid, ...]) -> tuple[Laid, ...]:
    """What lies on a layer where one of them has an outline, edge on edge; nothing where the edges do not lie level."""
    found: list[Laid] = []
    for layer in joined.layers[1:]:
        piece = worksheet.pieces[layer.pieces[0]]
        outline = _outline_over(piece, layer, below[0]) if len(below) == len(layer.pieces) == 1 else None
        if outline is None:
            return ()
        found.append(Laid.shaped(piece, outline, layer))
    return tuple(found)


def _outline_over(piece: Piece, layer: JoinLayer, lower: Laid) -> Outline | None:
    if not layer.at:
        own = outline_of(piece) or _rectangle(piece)
        box = level("", lower.finished, _size(piece))
        return own.placed(lambda point: (point[0] + box.left, point[1] + box.top))
    if layer.at not in lower.edges:
        return None
    if is_hung(piece) and outline_of(piece) is None:
        drop, beyond = float(piece.finished_along), _beyond(piece.edges)
        return hung_from(lower.edges[layer.at], layer.own, drop, beyond.get(layer.own, 0.0))
    own = outline_of(piece) or _rectangle(piece)
    return edge_on_edge(own, layer.own, lower.edges[layer.at]) if layer.own in own.lines else None


def _rectangle(piece: Piece) -> Outline:
    wide, high = _size(piece)
    box = Box(0.0, 0.0, wide, high)
    corners = [side[0] for side in sides_of(grown(box, _beyond(piece.edges))).values()]
    return Outline(sides_of(box), tuple(corners))


def _common(side: str, lower: Laid, over: Sequence[Laid]) -> Line:
    """The line of sewing at one side of a shape: its edge, or the shorter one that lies on it."""
    own = [laid.edges[laid.own] for laid in over if laid.at == side]
    return min((lower.edges[side], *own), key=length_of)


def _size(piece: Piece, sewn: Sequence[str] = ()) -> tuple[float, float]:
    """The finished size of a piece when it is sewn on, drawn up as its strip or its sewn edges are."""
    drawn = {"top": piece.made.drawn_up, **{one.side: one for one in piece.drawn if one.side in sewn}}
    wide, high = ([one.to for side, one in drawn.items() if one and (side in FLAT) is flat] for flat in (False, True))
    return float(min(wide, default=piece.finished_across)), float(min(high, default=piece.finished_along))


def _beyond(edges: Mapping[str, EdgeWork]) -> dict[str, float]:
    return {side: float(edge.allowance) for side, edge in edges.items() if edge.end.kind in _RAW}


def _row(worksheet: Worksheet, joined: Joined) -> tuple[Laid, ...]:
    """The lowest layer: one piece, one piece folded, or several side by side."""
    layer = joined.layers[0]
    names = layer.pieces[:1] if joined.slipped_in else layer.pieces
    across = len(joined.layers) < 2 or joined.layers[1].at not in FLAT
    at, found = 0.0, []
    for place, name in enumerate(names):
        piece = worksheet.pieces[name]
        wide, high = _size(piece, () if joined.folded else joined.sides)
        if joined.folded:
            wide, high = (wide / 2, high) if joined.sides[0] in FLAT else (wide, high / 2)
        box = Box(at, 0.0, at + wide, high) if across else Box(0.0, at, wide, at + high)
        outline = outline_of(piece)
        if outline is not None:
            found.append(Laid.shaped(piece, outline if layer.right_side_up else turned_over(outline), layer))
            continue
        beyond = _beyond(piece.edges)
        inner = {"left": place > 0, "right": place + 1 < len(names)} if across else {}
        beyond = {side: width for side, width in beyond.items() if not inner.get(side, False)}
        if joined.folded:
            beyond.pop(opposite(joined.sides[0]), None)
        found.append(Laid(piece, box, grown(box, beyond), layer.right_side_up))
        at += wide if across else high
    return tuple(found)


def _over(worksheet: Worksheet, joined: Joined, layer: JoinLayer, base: Box) -> Iterable[Laid]:
    """A piece or a row of them, level with the sewn side and in its middle; in the middle where sewn all round."""
    if joined.folded:
        yield from (replace(laid, right_side_up=layer.right_side_up) for laid in _row(worksheet, joined))
        return
    pieces = [worksheet.pieces[name] for name in layer.pieces]
    if pieces[0].made.drawn_up is not None and len(joined.sides) == len(CLOCKWISE):
        yield from (_frill(pieces[0], side, base, layer) for side in CLOCKWISE)
        return
    sizes = [_size(piece, (layer.own,)) for piece in pieces]
    wide, high = sum(size[0] for size in sizes), max(size[1] for size in sizes)
    across = (layer.at in FLAT) is (layer.own in FLAT)
    at = layer.at if len(joined.sides) < len(CLOCKWISE) else ""
    box = level(at, base, (wide, high) if across else (high, wide))
    if len(pieces[0].parts) > 1:
        yield from _halves(pieces[0], box, layer)
        return
    left = box.left
    for piece, (own_wide, _) in zip(pieces, sizes, strict=True):
        own = box if len(pieces) == 1 else Box(left, box.top, left + own_wide, box.bottom)
        left += own_wide
        beyond = _turned(_beyond(piece.edges), layer)
        yield Laid(piece, own, grown(own, beyond), layer.right_side_up, layer.at, layer.own)


def _frill(piece: Piece, side: str, base: Box, layer: JoinLayer) -> Laid:
    """One side of a strip that is sewn all round; it lies inwards."""
    drop = float(piece.finished_along)
    wide, high = base.right - base.left, base.bottom - base.top
    box = level(side, base, (drop, high) if side in FLAT else (wide, drop))
    beyond = {side: _beyond(piece.edges).get(layer.own, 0.0)}
    return Laid(piece, box, grown(box, beyond), layer.right_side_up, side, layer.own)


def _turned(beyond: Mapping[str, float], layer: JoinLayer) -> dict[str, float]:
    """The cloth beyond each side when a piece lies with its own side at a side of what is below."""
    if layer.at not in CLOCKWISE:
        return dict(beyond)
    step = CLOCKWISE.index(layer.at) - CLOCKWISE.index(layer.own)
    return {CLOCKWISE[(place + step) % 4]: beyond.get(side, 0.0) for place, side in enumerate(CLOCKWISE)}


def _halves(piece: Piece, box: Box, layer: JoinLayer) -> Iterable[Laid]:
    """The halves of a back as they lie face down: what is left when it is seen lies at the right."""
    for part, side in zip(piece.parts, ("right", "left"), strict=False):
        wide = float(part.finished_across)
        half = replace(box, left=box.right - wide) if side == "right" else replace(box, right=box.left + wide)
        beyond = {key: width for key, width in _beyond(part.edges).items() if key not in FLAT}
        outer = _beyond(part.edges).get(opposite(side), 0.0)
        yield Laid(piece, half, grown(half, {**beyond, side: outer}), layer.right_side_up, layer.at, layer.own)


def _along(side: str, base: Box, over: Iterable[Box]) -> Line:
    """The line of sewing at one side: as far as both what is below and what is above reach."""
    top = around(over)
    left, right = max(base.left, top.left), min(base.right, top.right)
    upper, lower = max(base.top, top.top), min(base.bottom, top.bottom)
    return sides_of(Box(left, upper, right, lower))[side]


def _opening(opening: Opening, below: tuple[Laid, ...], seams: Mapping[str, Line]) -> tuple[str, Line]:
    """An opening at an end of its edge or in the middle of it, and at which side it lies."""
    (name, side), length = opening.edge, float(opening.length)
    own = next((laid.finished for laid in below if laid.piece.name == name), below[0].finished)
    whole = around(laid.finished for laid in below)
    if below[0].outline is not None:
        return _opening_of_shape(opening, seams)
    side = side if side in CLOCKWISE else next(iter(seams))
    first, last = (own.top, own.bottom) if side in FLAT else (own.left, own.right)
    begin = {"top": first, "left": first, "bottom": last - length, "right": last - length}.get(
        opening.end, (first + last - length) / 2
    )
    if side in FLAT:
        x = whole.left if side == "left" else whole.right
        return side, ((x, begin), (x, begin + length))
    y = whole.top if side == "top" else whole.bottom
    return side, ((begin, y), (begin + length, y))


def _opening_of_shape(opening: Opening, seams: Mapping[str, Line]) -> tuple[str, Line]:
    """An opening along a drawn edge: in the middle of it, or at the end that lies farthest to a side."""
    side = opening.edge[1] if opening.edge[1] in seams else next(iter(seams))
    line, length = seams[side], float(opening.length)
    start = (length_of(line) - length) / 2
    if opening.end:
        start = 0.0 if looks((line[0][0] - line[-1][0], line[0][1] - line[-1][1])) == opening.end else 2 * start
    return side, between(line, start, start + length)
