"""The finished thing from its seams: a thing comes in, its pieces laid out flat and the size of the whole go out.

Opposite edges that meet lie side by side, like-named ones one behind the other; linings lie inside. Frills stand out by
their drop, a boxing adds its depth, what is closed to a ring is measured round. Straps, ties and bindings add nothing.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.making_up.items import is_filled, is_strip
from generator.calculation.making_up.laid import CLOCKWISE, LaidOut, Layer, Round, opposite
from generator.calculation.making_up.seams import SHUT_IN, spread
from generator.calculation.making_up.table import Table, Where
from generator.calculation.making_up.thing import Closing, Component, Edge, Seam, Thing, pieces_of

# Things that lie double: two of their pieces, joined left to right, are a front and a back.
_LAYERS: tuple[Layer, ...] = ("front", "behind", "inside")


def laid_out(thing: Thing, hangs_by: str = "top") -> LaidOut:
    """Return a finished thing laid out flat; ``hangs_by`` is the side of its first panel that lies at the top in use.

    Of pieces that no seam holds together, like a pocket that is sewn on, the largest part of the thing is told.
    """
    groups = _held_together(thing)
    own = [group for group in groups if not thing.parts[group[0]].lies_on]
    sewn = [group for group in own if thing.seams_of(group[0])] or own
    return max((_Laying(thing, names).done(hangs_by) for names in sewn), key=lambda laid: laid.across * laid.along)


def _held_together(thing: Thing) -> list[tuple[str, ...]]:
    """The pieces that seams hold together, group by group, in the order of the file."""
    groups: list[set[str]] = []
    for name in thing.parts:
        near = {name}.union(*(seam.pieces for seam in thing.seams_of(name)))
        near = near.union(*(group for group in groups if group & near))
        groups = [*(group for group in groups if not group & near), near]
    return [tuple(name for name in thing.parts if name in group) for group in groups]


class _Laying:
    """Pieces that seams hold together, being laid out; ``halved`` tells of a strip in two halves, front and back."""

    def __init__(self, thing: Thing, names: Sequence[str]) -> None:
        self.thing, self.parts = thing, {name: thing.parts[name] for name in names}
        self.table = Table()
        self.depth = Fraction(0)
        self.round: Round = ""
        self.halved = False

    def done(self, hangs_by: str) -> LaidOut:
        """Lay out the first panel, then what its seams bring, and return it as it is seen."""
        first = min(self.parts.values(), key=_rank)
        # Turned so that the side by which the thing hangs lies at the top.
        quarters = -CLOCKWISE.index(hangs_by) if first.is_panel else 0
        self.table.put(first, (Fraction(0), Fraction(0)), quarters % 4, "front")
        self._follow_seams()
        for closing in self.thing.closings:
            if _on_itself(closing):
                self._close_round(closing.on[0], closing.onto[0])
        across, along = self._size()
        pieces = tuple(sorted(self.table.lying, key=lambda one: _LAYERS.index(one.layer)))
        shaped = any("shape unknown" in self.parts[one.piece].facts for one in pieces if one.layer == "front")
        return LaidOut(pieces, across, along, self.depth, self.round, self._number(), shaped)

    def _follow_seams(self) -> None:
        """Lay what one seam after the other brings; a run waits for all its pieces while others can go on."""
        waiting = [seam for seam in self.thing.seams if seam.pieces[0] in self.parts]
        rows = [seam for seam in waiting if seam.sort not in SHUT_IN and not self._overlie(seam)]
        while waiting:
            done = self._lengthened(rows) or self._laid_next(waiting)
            waiting = [seam for seam in waiting if seam not in done]

    def _lengthened(self, rows: Sequence[Seam]) -> list[Seam]:
        """Lay the copies that lengthen rows, each at the one before it, and return the seams that brought them."""
        found: list[Seam] = []
        while longer := [seam for seam in rows if self._lengthen(seam)]:
            found += longer
        return found

    def _laid_next(self, waiting: Sequence[Seam]) -> list[Seam]:
        """Lay what the first seam brings that can, and return that seam."""
        for patient in (True, False):
            for seam in waiting:
                if self._lay(seam, patient=patient):
                    return [seam]
        # One that brings nothing, as of pieces that hang at no panel, is passed over, so that this ends.
        return [waiting[0]]

    def _overlie(self, seam: Seam) -> bool:
        """Whether the pieces of a seam meet by like-named edges anywhere, so that they lie on each other."""
        pairs = [pair for one in self.thing.seams for pair in one.pairs if {pair[0][0], pair[1][0]} == set(seam.pieces)]
        return any(one[1] == other[1] for one, other in pairs)

    def _lengthen(self, seam: Seam) -> bool:
        """Lay one more copy beside a side of another piece that is free, as in a row of blocks with strips between."""
        (one, *more), (other, *others) = seam.join, seam.to
        if more or others or one[0] == other[0] or not _face_away(one, other):
            return False
        for own, beside in ((one, other), (other, one)):
            part, placed = self.parts[beside[0]], self.table.places([own])
            flat = not {"adds nothing", "hangs"} & part.facts and not is_strip(self.parts[own[0]])
            if placed and flat and len(self.table.copies(part.name)) < part.quantity:
                self._join(seam, placed, [own], [beside])
                return True
        return False

    def _lay(self, seam: Seam, *, patient: bool) -> bool:
        """Lay what a seam brings; whether it is done with."""
        join, to = spread(seam.join, self.parts), spread(seam.to, self.parts)
        facts = frozenset().union(*(self.parts[name].facts for name in seam.pieces))
        if "adds nothing" in facts or self._is_narrow(join + to):
            return True
        if "boxes" in facts:
            return self._box(seam)
        if len(seam.pieces) == 1:
            return self._close(seam, join[0], to[0])
        for own, other in ((join, to), (to, join)):
            placed = self.table.places(own, patient=patient)
            if placed:
                self._add(seam, placed, own, other)
                return True
        return False

    def _is_narrow(self, edges: Sequence[Edge]) -> bool:
        """Whether a strip lies along an edge, or a rim closes the end of a tube: neither makes the thing larger."""
        sides = {side for piece, side in edges if not {"hangs", "boxes"} & self.parts[piece].facts}
        return "edge" in sides or ("rim" in sides and len(sides) > 1)

    def _add(self, seam: Seam, placed: Sequence[Where], own: Sequence[Edge], other: Sequence[Edge]) -> None:
        """Add what a seam sews to sides that lie there."""
        strip = self.parts[other[0][0]]
        if is_strip(strip) and other[0][1] in ("top", "edge"):
            for here in placed:
                rim = self.parts[self.table.lying[here[0]].piece].ends.keys() == {"rim"}
                self.table.hang(strip, here, round_it=rim)
        elif set(pieces_of(own)) == set(pieces_of(other)):
            self.table.double(placed)
        elif self.table.places(other):
            self._close_round(own[0], other[0])
        else:
            self._join(seam, placed, own, other)

    def _join(self, seam: Seam, placed: Sequence[Where], own: Sequence[Edge], other: Sequence[Edge]) -> None:
        """Lay a piece, or a run of them, beside, behind or inside what lies there."""
        side = other[0][1]
        inside = seam.sort in SHUT_IN and not is_filled(self.thing)
        names = pieces_of(other) if inside else [name for name, _ in other]
        run = [self.parts[name] for name in names if len(self.table.copies(name)) < self.parts[name].quantity]
        whole = len({edge for _, edge in own}) > 1
        again = bool(self.table.copies(other[0][0]))
        behind: Layer = "inside" if inside else "behind"
        if whole and run:
            self.table.cover(run[0], placed, behind)
        elif inside or (own[0][1] == side and not again):
            self.table.row(run, placed, side, behind, behind=True)
        else:
            self.table.row(run, placed, side, self.table.lying[placed[0][0]].layer)

    def _box(self, seam: Seam) -> bool:
        """A boxing gives the depth, and its other face lies behind the first."""
        band = next(name for name in seam.pieces if "boxes" in self.parts[name].facts)
        self.depth = self.parts[band].along
        faces = [name for one in self.thing.seams_of(band) for name in one.pieces if name != band]
        front = next((self.table.lying[place] for name in faces for place in self.table.copies(name)), None)
        if front is None:
            return len(seam.pieces) == 1
        for name in seam.pieces:
            if name != band and not self.table.copies(name):
                self.table.put(self.parts[name], (front.left, front.top), 0, "behind")
        return True

    def _close(self, seam: Seam, one: Edge, other: Edge) -> bool:
        """A piece sewn to itself is a ring, or two of it: a front and a back, or a row of them."""
        part = self.parts[one[0]]
        if is_strip(part) and (part.quantity > 1 or not self.table.copies(part.name)):
            self.halved = self.halved or (part.quantity > 1 and _face_away(one, other))
            return True
        placed = self.table.places([one])
        if placed and (part.quantity == 1 or "ring" in seam.sort):
            self._close_round(one, other)
        elif placed and (not _face_away(one, other) or "two sided" in self.thing.facts):
            own = self.table.lying[placed[0][0]]
            self.table.put(part, (own.left, own.top), own.turned, "behind")
        elif placed:
            for _ in range(part.quantity - 1):
                self.table.row([part], self.table.places([one]), other[1], "front")
        return bool(placed)

    def _close_round(self, one: Edge, other: Edge) -> None:
        """Close what is seen to a ring, where two sides that look away from each other meet."""
        placed = self.table.places([one, other])
        if placed and all(self.table.lying[place].layer == "front" for place, _ in placed):
            (_, lies), (_, far) = placed
            if lies == opposite(far):
                self.round = "across" if lies in ("left", "right") else "along"

    def _size(self) -> tuple[Fraction, Fraction]:
        """The size of all that is seen or lies behind; a flap that closes over the front adds nothing."""
        flaps = {edge for one in self.thing.closings if one.on != one.onto for edge in one.on + one.onto}
        ends = {}
        for lies in CLOCKWISE:
            lines = [
                one.line(lies)
                for one in self.table.lying
                if one.layer == "front" or (one.layer == "behind" and (one.piece, one.side_at(lies)) not in flaps)
            ]
            ends[lies] = max(lines) if lies in ("right", "bottom") else min(lines)
        across, along = ends["right"] - ends["left"], ends["bottom"] - ends["top"]
        laps = sum((one.overlap for one in self.thing.closings if _on_itself(one)), Fraction(0))
        return (across - laps if self.round == "across" else across, along - laps if self.round == "along" else along)

    def _number(self) -> int:
        """How many such things are made: of every piece so many, each for its places in one of them."""
        flat = [part for part in self.parts.values() if not is_strip(part) and self.table.copies(part.name)]
        numbers = [part.quantity // len(self.table.copies(part.name)) for part in flat]
        return max(1, min(numbers, default=1) // (2 if self.halved else 1))


def _rank(part: Component) -> tuple[bool, bool]:
    """How a piece is ranked as the first of the thing: what lies flat, and panels, go before."""
    return bool({"adds nothing", "hangs", "boxes"} & part.facts), not part.is_panel


def _face_away(one: Edge, other: Edge) -> bool:
    """Whether two sides of a piece look away from each other: its left and its right one."""
    return one[1] in CLOCKWISE and opposite(one[1]) == other[1]


def _on_itself(closing: Closing) -> bool:
    """Whether what closes it closes a piece round, its one side over its other."""
    one, other = closing.on[0], closing.onto[0]
    return one[0] == other[0] and _face_away(one, other)
