"""What a step joins: its acts come in, the layers as they lie under the needle go out, with the opening that is left.

Seams that share an edge are sewn in one go, and so are all between the same pieces.
"""

from __future__ import annotations

from collections.abc import Callable, Container, Iterable, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import takewhile

from generator.calculation.making_up.acts import ANY, Act
from generator.calculation.making_up.book import Book
from generator.calculation.making_up.items import Item, is_strip, sewn_items
from generator.calculation.making_up.joined import Attached, Joined, JoinLayer, Opening
from generator.calculation.making_up.laid import opposite
from generator.calculation.making_up.seams import is_ring, lining_of, zip_of
from generator.calculation.making_up.thing import SIDES, Component, Edge, Seam, Thing

Pair = tuple[Edge, Edge]
_ACROSS = ("top", "bottom")
# A piece that is larger by more than this lies below, whatever it is.
_LARGER = Fraction(51, 50)


def attached(thing: Thing, acts: Iterable[Act]) -> tuple[Attached, ...]:
    """Return what acts sew or baste onto something where the file has no seam: straps, ties, pockets."""
    found = []
    for act in acts:
        loose = [name for name, _ in act.what if not thing.seams_of(name)]
        if act.does == "baste" or (act.does == "sew" and loose):
            found += [Attached(name, edge) for name in loose or act.pieces[:1] for edge in act.onto]
    named = {one.piece for one in found}
    placed = (part for part in thing.parts.values() if part.sewn_on and part.name not in named)
    found += [Attached(one.strips, edge) for one in thing.closings if one.strips for edge in one.on]
    return (*found, *(Attached(part.name, (part.sewn_on, ANY)) for part in placed))


@dataclass(frozen=True, slots=True)
class Joiner:
    """The joins of one thing: its book, and how long an opening in work of the size of a piece is by itself [in]."""

    book: Book
    usual_opening: Callable[[Component], Fraction]

    def joined(self, acts: Sequence[Act]) -> tuple[Joined, ...]:
        """Return what the acts of one step join, in the order of their seams; nothing of what they do by hand at last.

        Parameters
        ----------
        acts : Sequence of Act
            The acts of one step, in order.

        Returns
        -------
        tuple of Joined
            Each lies under the needle by itself.
        """
        found: list[Joined] = []
        for group in _in_one_go(list(self._sewn(acts))):
            found += [self._opened(one, group, acts) for one in self._layered(group)]
        # The work is turned once, when all of it is sewn.
        last = max((place for place, one in enumerate(found) if one.turned), default=0)
        found = [replace(one, turned=one.turned and place == last) for place, one in enumerate(found)]
        found += [self._laid(act) for act in acts if act.does == "lay"]
        found += self._copied(copy for act in acts if act.does != "lay" for copy in self._fixed(act))
        return (*found, *self._turned_out(acts, found))

    def _sewn(self, acts: Sequence[Act]) -> Iterable[_SewnRun]:
        """The pairs of each seam that the acts sew by machine: what comes after turning out is closed by hand."""
        given = [(act, set(self.book.gives(act))) for act in takewhile(lambda act: act.does != "turn out", acts)]
        sewn = {item for _, items in given for item in items}
        turned = {item.on for act in acts for item in self.book.gives(act) if item.state == "turned out"}
        for seam in self.book.thing.seams:
            act = next((act for act, items in given if _sews(items, seam)), None)
            if act is None or act.word == "on" or self._sets_zip(act):
                continue
            pairs = [pair for pair, item in zip(seam.pairs, sewn_items(seam), strict=True) if item in sewn]
            right_sides = act.right_sides and seam.sort not in ("laid", "french")
            yield _SewnRun(seam, tuple(pairs), right_sides, f"#{seam.number}" in turned)

    def _sets_zip(self, act: Act) -> bool:
        """Whether an act sews linings with a zip between, which has a picture of its own."""
        method = self.book.methods.get(act.does)
        return method is not None and "lined zip" in method.kinds

    def _layered(self, group: Sequence[_SewnRun]) -> Iterable[Joined]:
        """The layers of what is sewn in one go; none of a seam whose edges run round a band."""
        first = group[0]
        if any(side in (ANY, "edge", "all") for run in group for pair in run.pairs for _, side in pair):
            return
        below = self._below(group)
        pairs = [pair if pair[0][0] in below else pair[::-1] for run in group for pair in run.pairs]
        itself = len({edge[0] for pair in pairs for edge in pair}) == 1
        folded = itself and is_ring(first.seam)
        # Two copies of one piece are sewn at both edges that meet; a row has the sides of what goes over all of it.
        told = [edge for pair in pairs for edge in pair] if itself and not folded else []
        told = told or [own if len(below) == 1 else other for own, other in pairs]
        yield Joined(
            sorts=tuple(run.seam.sort for run in group),
            layers=(JoinLayer(below, first.right_sides), *self._over(group, below)),
            sides=tuple(dict.fromkeys(side for _, side in told)),
            edges=tuple(own for own, _ in pairs),
            folded=folded,
            turned=any(run.turned for run in group),
        )

    def _over(self, group: Sequence[_SewnRun], below: tuple[str, ...]) -> Iterable[JoinLayer]:
        """What lies on the lowest layer: each piece once, and once more where one of its copies is sewn there."""
        seen: list[Edge] = []
        for run in group:
            ahead = set(run.rows[0]) <= set(below)
            own, row = (0, run.rows[1]) if ahead else (1, run.rows[0])
            at, edge = run.pairs[0][own], run.pairs[0][1 - own]
            again = edge in seen and len(row) == len(below)
            if all(one[0] != edge[0] for one in seen) or again or self._beside(at, edge):
                yield JoinLayer(row, not run.right_sides, at[1], edge[1])
            seen += [pair[1 - own] for pair in run.pairs]

    def _beside(self, at: Edge, edge: Edge) -> bool:
        """Whether a piece lies beside an edge by its opposite one, so that another copy of it lies at the next."""
        sides = at[1] in SIDES and edge[1] in SIDES
        return sides and opposite(at[1]) == edge[1] and self.book.thing.parts[edge[0]].quantity > 1

    def _below(self, group: Sequence[_SewnRun]) -> tuple[str, ...]:
        """The lowest layer: a row of pieces, what most others lie on, else the larger; a panel below its like."""
        row = max((row for run in group for row in run.rows), key=len)
        if len(set(row)) > 1:
            return row
        names = dict.fromkeys(name for run in group for name in run.seam.pieces)
        return (max(names, key=lambda name: self._rank(name, names, group)),)

    def _rank(self, name: str, names: Iterable[str], group: Sequence[_SewnRun]) -> tuple[int, bool, bool, bool, bool]:
        part = self.book.thing.parts[name]
        inside = any(name == lining_of(run.seam, self.book.thing) for run in group)
        others = [self._area(other) for other in names if other != name]
        larger = all(self._area(name) > area * _LARGER for area in others)
        runs = sum(name in run.seam.pieces for run in group)
        return runs, not is_strip(part), larger, part.is_panel, not inside

    def _area(self, name: str) -> Fraction:
        part = self.book.thing.parts[name]
        return part.across * part.along

    def _opened(self, one: Joined, group: Sequence[_SewnRun], acts: Sequence[Act]) -> Joined:
        """The same with the openings that acts leave in it: as long as they say, else as work of this size wants."""
        seams = {f"#{run.seam.number}" for run in group}
        one = replace(one, gaps=tuple(_gaps(one, group, acts)))
        act = next((act for act in acts if seams & self._left_open(act)), None)
        if act is None:
            return self._zipped(one, group)
        over = one.layers[-1].pieces[0]
        length = act.length or self.usual_opening(self.book.thing.parts[over])
        edge = (over, "bottom") if one.slipped_in else self._free_edge(_named_edges(one, group, act) or one.edges)
        return replace(one, opening=Opening(edge, length, act.end))

    def _zipped(self, one: Joined, group: Sequence[_SewnRun]) -> Joined:
        """The same with its zip, where a seam has one, as long as that is told, else as its edge."""
        zips = [one for one in (zip_of(run.seam, self.book.thing) for run in group) if one is not None]
        edges = {edge: closing.length for closing in zips for edge in closing.on + closing.onto}
        edge = next((edge for edge in one.edges if edge in edges), None)
        if edge is None:
            return one
        return replace(one, opening=Opening(edge, edges[edge] or self._length(edge), zipped=True))

    def _left_open(self, act: Act) -> set[str]:
        return {item.on for item in self.book.gives(act) if item.state == "open"}

    def _free_edge(self, edges: Sequence[Edge]) -> Edge:
        """The longest edge that no tuck runs into; the longest of all where tucks run into each."""
        return max(edges, key=lambda edge: (not self._crossed(edge), self._length(edge)))

    def _crossed(self, edge: Edge) -> bool:
        part = self.book.thing.parts[edge[0]]
        return part.is_panel and (edge[1] in _ACROSS or "cross tucks" in part.facts)

    def _length(self, edge: Edge) -> Fraction:
        part = self.book.thing.parts[edge[0]]
        return part.across if edge[1] in _ACROSS else part.along

    def _laid(self, act: Act) -> Joined:
        """A piece that is laid on the wrong side of another, like wadding."""
        on = tuple(dict.fromkeys(piece for piece, _ in act.what))
        below = tuple(dict.fromkeys(piece for piece, _ in act.onto))
        return Joined((), (JoinLayer(below, right_side_up=False), JoinLayer(on, right_side_up=True)), does="lay")

    def _fixed(self, act: Act) -> Iterable[Component]:
        """The copies that a technique fixes to their pieces."""
        fixed = [item.on for item in self.book.gives(act) if item.state == "fixed"]
        return (self.book.thing.parts[piece] for piece in fixed)

    def _copied(self, copies: Iterable[Component]) -> Iterable[Joined]:
        """Each copy on the wrong side of its piece, a second on the first."""
        lying: dict[str, JoinLayer] = {}
        for copy in copies:
            below = lying.get(copy.lies_on, JoinLayer((copy.lies_on,), right_side_up=False))
            lying[copy.lies_on] = JoinLayer((copy.name,), right_side_up=True)
            yield Joined((), (below, lying[copy.lies_on]), does="lay")

    def _turned_out(self, acts: Sequence[Act], found: Sequence[Joined]) -> Iterable[Joined]:
        """What a step only turns out, as it was sewn before."""
        if any(one.turned for one in found) or any(act.does == "sew" for act in acts):
            return
        items = {item.on for act in acts for item in self.book.gives(act) if item.state == "turned out"}
        runs = [_SewnRun(seam, seam.pairs, True, True) for seam in self.book.thing.seams if f"#{seam.number}" in items]
        for group in _in_one_go(runs):
            yield from (replace(one, does="turn out") for one in self._layered(group))


@dataclass(frozen=True, slots=True)
class _SewnRun:
    """The pairs of one seam that a step sews."""

    seam: Seam
    pairs: tuple[Pair, ...]
    right_sides: bool
    turned: bool

    @property
    def rows(self) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """The pieces on each side of it: those of a row, which it meets along one line, else the one it goes round."""
        sides: list[tuple[str, ...]] = []
        for own in (0, 1):
            edges = [pair[own] for pair in self.pairs]
            row = tuple(piece for piece, _ in edges)
            in_line = len({side for _, side in edges}) == 1 and len(set(row)) > 1
            sides.append(row if in_line else row[:1])
        return sides[0], sides[1]


def _sews(items: Container[Item], seam: Seam) -> bool:
    return any(item in items for item in sewn_items(seam))


def _named_edges(one: Joined, group: Sequence[_SewnRun], act: Act) -> list[Edge]:
    """The edges of the lowest layer at which an act says that an opening stays, named by either piece."""
    if act.does != "leave open":
        return []
    pairs = [pair for run in group for pair in run.pairs if any(_names(act, edge) for edge in pair)]
    return [edge for edge in one.edges if any(edge in pair for pair in pairs)]


def _gaps(one: Joined, group: Sequence[_SewnRun], acts: Sequence[Act]) -> Iterable[Opening]:
    """What acts leave open for good."""
    for act in acts:
        if act.for_good and act.length is not None:
            yield from (Opening(edge, act.length, act.end) for edge in _named_edges(one, group, act))


def _names(act: Act, edge: Edge) -> bool:
    return any(piece == edge[0] and side in (ANY, "all", edge[1]) for piece, side in act.what)


def _in_one_go(runs: Iterable[_SewnRun]) -> list[list[_SewnRun]]:
    """Runs between the same pieces stand together, and those that share an edge, which is sewn once."""
    groups: list[list[_SewnRun]] = []
    for run in runs:
        near = [group for group in groups if any(_together(run, other) for other in group)]
        groups = [group for group in groups if group not in near]
        groups.append([*(one for group in near for one in group), run])
    return groups


def _together(run: _SewnRun, other: _SewnRun) -> bool:
    if run.right_sides is not other.right_sides or 1 in (len(run.seam.pieces), len(other.seam.pieces)):
        return False
    shared = {edge for pair in run.pairs for edge in pair} & {edge for pair in other.pairs for edge in pair}
    pieces, others = set(run.seam.pieces), set(other.seam.pieces)
    # A row is joined before it is joined to anything as a row.
    in_rows = any(pieces <= set(row) for row in other.rows) or any(others <= set(row) for row in run.rows)
    return bool(shared) or (not in_rows and (pieces <= others or others <= pieces))
