"""Where the layers of a seam lie on each other: what a step joins comes in, rectangles in inches of cloth go out.

The finished edges of the lowest layer begin at (0, 0); x runs to the right and y down, as they lie before you.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.calculation.making_up.joined import Joined, JoinLayer, Opening
from generator.calculation.making_up.laid import CLOCKWISE, opposite
from generator.calculation.worked_piece import EdgeWork, Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box, Segment
from generator.drawing.seams.boxes import FLAT, RIM, arc_ends, around, grown, level, share, sides_of

_NEAR = 1e-6
HIDDEN, FEW = 0.8, 3  # how much is covered so that all counts as hidden; a frill on every side hides nothing
# Edges that lie raw when they are sewn; any other is hemmed, folded or bound by then.
_RAW = frozenset({"seam", "faced", "french", "felled", "bound"})


@dataclass(frozen=True, slots=True)
class Laid:
    """One piece, or one half of a back in two, as it lies: its finished edges and its cut ones; a round within them.

    ``at`` is the side at which it is sewn, ``own`` the side of the piece that lies there.
    """

    piece: Piece
    finished: Box
    cut: Box
    right_side_up: bool
    at: str = ""
    own: str = ""

    @property
    def round(self) -> bool:
        """Whether it is a round, which touches the middles of its edges only."""
        return _is_round(self.piece)


@dataclass(frozen=True, slots=True)
class SeamPlan:
    """Layers from below, where they are sewn, and where an opening stays; ``whole`` holds all that lies there.

    ``gaps`` are what stays open for good. ``opened`` is how they lie when the seam is opened out, or turned out where
    ``joined`` says so.
    """

    joined: Joined
    below: tuple[Laid, ...]
    over: tuple[Laid, ...]
    seams: Mapping[str, Segment]
    opening: tuple[str, Segment] | None
    opened: tuple[Laid, ...]
    gaps: tuple[tuple[str, Segment], ...] = ()

    @property
    def sewn(self) -> tuple[tuple[str, Segment], ...]:
        """The lines that are sewn, each with its side: what openings leave of the seams."""
        openings = (*self.gaps, *((self.opening,) if self.opening is not None else ()))
        found = []
        for side, segment in self.seams.items():
            lines = [segment]
            for at, gap in openings:
                lines = [part for line in lines for part in (_without(line, gap) if at == side else [line])]
            found += [(side, line) for line in lines]
        return tuple(found)

    @property
    def whole(self) -> Box:
        """All layers."""
        return around(laid.cut for laid in (*self.below, *self.over))

    @property
    def way_out(self) -> tuple[str, Segment]:
        """Where the work is turned out: the opening, else the side that is not sewn."""
        if self.opening is not None:
            return self.opening
        whole = around(one.finished for one in self.opened)
        side = next((side for side in CLOCKWISE if side not in self.seams), "top")
        return side, sides_of(whole)[side]

    @property
    def inside_out(self) -> bool:
        """Whether it stays wrong side out when it is sewn, so that a later step turns it."""
        hangs = all(laid.piece.made.drawn_up is not None for laid in self.over)
        lies = self.joined.turned_in or hangs or (len(self.joined.sides) < 3 and RIM not in self.joined.sides)
        return not self.joined.turned and not lies

    @property
    def tube(self) -> bool:
        """Whether it is a ring when it is sewn: one piece folded, or two like it sewn at both ends."""
        ends = set(self.joined.sides) in ({"left", "right"}, {"top", "bottom"})
        return self.joined.folded or (ends and len(self.joined.pieces) == 1)

    @property
    def covered(self) -> bool:
        """Whether what lies above hides all that lies below."""
        lower = around(laid.cut for laid in self.below)
        return len(self.over) < FEW and sum(share(laid.cut, lower) for laid in self.over) > HIDDEN


def plan_seam(worksheet: Worksheet, joined: Joined) -> SeamPlan | None:
    """Return where everything lies, None where pieces are no flat rectangles, or rounds on each other."""
    if not _can_lie_flat([worksheet.pieces[name] for name in joined.pieces], joined):
        return None
    below = _row(worksheet, joined)
    base = around(laid.finished for laid in below)
    over = tuple(laid for layer in joined.layers[1:] for laid in _over(worksheet, joined, layer, base))
    lines = [laid.finished if joined.layers[0].right_side_up else laid.cut for laid in over]
    lower = base if joined.layers[0].right_side_up else around(laid.cut for laid in below)
    seams = {side: _along(side, lower, lines) for side in joined.sides if side != RIM}
    opening = _opening(joined.opening, below, seams) if joined.opening is not None else None
    gaps = tuple(_opening(gap, below, seams) for gap in joined.gaps)
    return SeamPlan(joined, below, over, seams, opening, _opened(joined, below, over), gaps)


def _can_lie_flat(pieces: Sequence[Piece], joined: Joined) -> bool:
    """Whether the pieces are all rectangles that are joined at sides, or all rounds that are joined at their rims."""
    rounds = all(_is_round(piece) for piece in pieces)
    if any(_not_flat(piece) or _is_round(piece) is not rounds for piece in pieces):
        return False
    return set(joined.sides) <= ({RIM} if rounds else {*CLOCKWISE})


def _not_flat(piece: Piece) -> bool:
    drawn = piece.made.drawn_up
    return bool(piece.made.folds) or (drawn is not None and drawn.to == 0) or not piece.parts


def _is_round(piece: Piece) -> bool:
    return any(part.outline.one_measure for part in piece.parts)


def _size(piece: Piece) -> tuple[float, float]:
    """The finished size of a piece when it is sewn on: a gathered or pleated one as wide as it is drawn up."""
    drawn = piece.made.drawn_up
    return float(drawn.to if drawn is not None else piece.finished_across), float(piece.finished_along)


def _beyond(edges: Mapping[str, EdgeWork]) -> dict[str, float]:
    if RIM in edges:
        return dict.fromkeys(CLOCKWISE, float(edges[RIM].allowance))
    return {side: float(edge.allowance) for side, edge in edges.items() if edge.end.kind in _RAW}


def _row(worksheet: Worksheet, joined: Joined) -> tuple[Laid, ...]:
    """The lowest layer: one piece, one piece folded, or several side by side."""
    layer = joined.layers[0]
    names = layer.pieces[:1] if joined.slipped_in else layer.pieces
    across = len(joined.layers) < 2 or joined.layers[1].at not in FLAT
    at, found = 0.0, []
    for place, name in enumerate(names):
        piece = worksheet.pieces[name]
        wide, high = _size(piece)
        if joined.folded:
            wide, high = (wide / 2, high) if joined.sides[0] in FLAT else (wide, high / 2)
        box = Box(at, 0.0, at + wide, high) if across else Box(0.0, at, wide, at + high)
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
    sizes = [_size(piece) for piece in pieces]
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


def _along(side: str, base: Box, over: Iterable[Box]) -> Segment:
    """The line of sewing at one side: as far as both what is below and what is above reach."""
    top = around(over)
    left, right = max(base.left, top.left), min(base.right, top.right)
    upper, lower = max(base.top, top.top), min(base.bottom, top.bottom)
    return sides_of(Box(left, upper, right, lower))[side]


def _opening(opening: Opening, below: tuple[Laid, ...], seams: Mapping[str, Segment]) -> tuple[str, Segment]:
    """An opening at an end of its edge or in the middle of it, and at which side it lies."""
    (name, side), length = opening.edge, float(opening.length)
    own = next((laid.finished for laid in below if laid.piece.name == name), below[0].finished)
    whole = around(laid.finished for laid in below)
    if side == RIM:
        return "bottom", arc_ends(own, length)
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


def _without(line: Segment, gap: Segment) -> list[Segment]:
    """The parts of a line that an opening in it leaves; the line itself where the opening lies in no part of it."""
    ends = sorted(gap, key=lambda point: math.dist(point, line[0]))
    whole = math.dist(*line)
    if any(math.dist(line[0], end) + math.dist(end, line[1]) > whole + _NEAR for end in ends):
        return [line]
    return [part for part in ((line[0], ends[0]), (ends[1], line[1])) if math.dist(*part) > _NEAR]


def _opened(joined: Joined, below: tuple[Laid, ...], over: tuple[Laid, ...]) -> tuple[Laid, ...]:
    """How it lies when it is done: what was turned out by its finished edges, else each upper piece beside its seam."""
    if joined.slipped_in:
        return over
    sewn = CLOCKWISE if RIM in joined.sides else joined.sides
    lower = tuple(replace(laid, cut=_within(laid, sewn), right_side_up=True) for laid in below)
    all_of_them = all(laid.piece.made.drawn_up is not None for laid in over)
    if joined.turned or len(joined.pieces) == 1 or (len(joined.sides) > 2 and not all_of_them):
        return lower
    return (*lower, *(_flipped(laid) for laid in over))


def _within(laid: Laid, sides: Iterable[str]) -> Box:
    """The cut edges of a piece, but for those sides that lie in a seam."""
    gone = {side: getattr(laid.finished, side) for side in sides}
    return replace(laid.cut, **gone)


def _flipped(laid: Laid) -> Laid:
    """A piece folded over its seam: it lies outside, right side up."""
    box, at = laid.finished, laid.at
    move = {"left": -(box.right - box.left), "right": box.right - box.left}.get(at, 0.0)
    down = {"top": -(box.bottom - box.top), "bottom": box.bottom - box.top}.get(at, 0.0)
    far = {side: abs(getattr(laid.cut, side) - getattr(box, side)) for side in CLOCKWISE}
    there = Box(box.left + move, box.top + down, box.right + move, box.bottom + down)
    beyond = {**far, at: far[opposite(at)], opposite(at): 0.0} if at else far
    turned = opposite(at) if at else ""
    return replace(laid, finished=there, cut=grown(there, beyond), right_side_up=True, at=turned)
