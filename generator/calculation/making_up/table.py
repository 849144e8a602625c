"""A table on which pieces are laid: a piece and the sides it is sewn to come in, where it lies is kept; in inches."""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.making_up.laid import CLOCKWISE, Layer, Lying, opposite
from generator.calculation.making_up.thing import Component, Edge

Where = tuple[int, str]
"""A side on the table: which of the pieces that lie there, and at which of its sides as it lies."""


class Table:
    """What lies on it: ``lying``, in the order in which it was laid down.

    ``joined`` are the sides at which another piece lies beside one already.
    """

    def __init__(self) -> None:
        self.lying: list[Lying] = []
        self.joined: set[Where] = set()

    def copies(self, piece: str) -> list[int]:
        """Return which of those that lie there are of a piece."""
        return [place for place, one in enumerate(self.lying) if one.piece == piece]

    def places(self, run: Sequence[Edge], *, patient: bool = True) -> list[Where]:
        """Return where the sides of a run lie, at which nothing lies yet; a patient one waits for all of them."""
        found: list[Where] = []
        for piece, side in run:
            sides = [(place, self.lying[place].lies_at(side)) for place in self.copies(piece)]
            free = [here for here in sides if here not in self.joined]
            if free:
                found.append(next((here for here in free if here not in found), free[0]))
            elif patient:
                return []
        return found

    def put(self, part: Component, at: tuple[Fraction, Fraction], turned: int, layer: Layer) -> int:
        """Lay a piece down with its top left corner there; which of all it is then."""
        self.lying.append(Lying(part.name, *at, *_size_of(part, turned), turned, layer))
        return len(self.lying) - 1

    def row(
        self, run: Sequence[Component], placed: Sequence[Where], side: str, layer: Layer, *, behind: bool = False
    ) -> None:
        """Lay pieces in a row by one of their sides along sides that lie there, in their middle: beside or behind."""
        lies = placed[0][1]
        line, (start, end) = self.lying[placed[0][0]].line(lies), self._reach(placed)
        looks = lies if behind else opposite(lies)
        turned = (CLOCKWISE.index(looks) - CLOCKWISE.index(side if side in CLOCKWISE else "top")) % 4
        flat = lies in ("top", "bottom")
        sizes = [_size_of(part, turned) for part in run]
        at = (start + end - sum(size[0 if flat else 1] for size in sizes)) / 2
        for part, (across, along) in zip(run, sizes, strict=True):
            depth = along if flat else across
            near = line - depth if (lies in ("bottom", "right")) is behind else line
            place = self.put(part, (at, near) if flat else (near, at), turned, layer)
            at += across if flat else along
            if not behind:
                self.joined |= {*placed, (place, looks)}

    def cover(self, part: Component, placed: Sequence[Where], layer: Layer) -> None:
        """Lay a piece behind another that it is sewn to at several sides: level with one, between two opposite ones."""
        own = self.lying[placed[0][0]]
        sides = {lies for _, lies in placed}
        across, along = _size_of(part, own.turned)
        left = _between(sides, ("left", "right"), (own.left, own.right), across)
        self.put(part, (left, _between(sides, ("top", "bottom"), (own.top, own.bottom), along)), own.turned, layer)

    def hang(self, strip: Component, here: Where, *, round_it: bool) -> None:
        """Let a strip stand out by its drop from a side that lies there, or all round."""
        own, lies = self.lying[here[0]], here[1]
        drop, (start, end), line = strip.along, own.span(lies), own.line(lies)
        turned = (CLOCKWISE.index(lies) + 2) % 4
        if round_it:
            hung = Lying(strip.name, own.left - drop, own.top - drop, own.across + 2 * drop, own.along + 2 * drop)
        elif lies in ("top", "bottom"):
            hung = Lying(strip.name, start, line - drop if lies == "top" else line, end - start, drop, turned)
        else:
            hung = Lying(strip.name, line - drop if lies == "left" else line, start, drop, end - start, turned)
        corners = [(one.piece, one.left, one.top) for one in self.lying]
        if (hung.piece, hung.left, hung.top) not in corners:
            self.lying.append(replace(hung, layer=own.layer))

    def double(self, placed: Sequence[Where]) -> None:
        """Lay all that is seen down once more, turned by half, beyond the sides that lie there."""
        lies = placed[0][1]
        line, (start, end) = self.lying[placed[0][0]].line(lies), self._reach(placed)
        for one in [one for one in self.lying if one.layer == "front"]:
            left, top = start + end - one.right, 2 * line - one.bottom
            if lies in ("left", "right"):
                left, top = 2 * line - one.right, start + end - one.bottom
            self.lying.append(replace(one, left=left, top=top, turned=(one.turned + 2) % 4))

    def _reach(self, placed: Sequence[Where]) -> tuple[Fraction, Fraction]:
        """From where to where sides that lie in a row reach together."""
        spans = [self.lying[place].span(placed[0][1]) for place, _ in placed]
        return min(start for start, _ in spans), max(end for _, end in spans)


def _size_of(part: Component, turned: int) -> tuple[Fraction, Fraction]:
    """The size of a piece as it lies [in]."""
    return (part.along, part.across) if turned % 2 else (part.across, part.along)


def _between(
    sides: Container[str], ends: tuple[str, str], reach: tuple[Fraction, Fraction], length: Fraction
) -> Fraction:
    """Where a piece begins that is level with one end of another, or in its middle where it has both or neither."""
    near, far = (end in sides for end in ends)
    if near is far:
        return (sum(reach) - length) / 2
    return reach[0] if near else reach[1] - length
