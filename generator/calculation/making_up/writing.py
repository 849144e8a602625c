"""Recipes written by themselves: what is due to a thing comes in, the standard steps that give it go out, in order.

Of everything that is due, the first in the order of the work whose needs are met is taken; what the same technique can
give to the same pieces is taken with it. Nothing is searched: states are only added.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, replace

from generator.calculation.making_up.acts import Act, Doing, Method
from generator.calculation.making_up.book import Book, book_of
from generator.calculation.making_up.items import (
    WORK,
    Item,
    all_due,
    edge_items,
    is_filled,
    raw_seams,
    rod_hems,
    seam_item,
    sewn_items,
)
from generator.calculation.making_up.needs import Needs
from generator.calculation.making_up.seams import FLAT_SEAMS, closes, lining_of
from generator.calculation.making_up.thing import Component, Edge, Seam, Thing

_OTHER_HEMS = frozenset({"casing", "caught hem"})


@dataclass(frozen=True, slots=True)
class Line:
    """Standard steps to write one under the other, done on the same pieces or edges; on all where none is named."""

    uses: tuple[str, ...]
    on: tuple[Edge, ...]

    def written(self) -> tuple[str, ...]:
        """Return the lines as they stand in a project file, below 'steps'."""
        named = ", ".join(f"{piece}.{edge}" if edge else piece for piece, edge in self.on)
        return (f"  - use: {', '.join(self.uses)}", *((f"    on: {named}",) if named else ()))


class Writer:
    """Writes standard steps for a thing, with the techniques of a room.

    ``acts`` are those of the whole recipe; what is ``left`` is given by its other steps and never written.
    """

    def __init__(
        self, thing: Thing, methods: Mapping[str, Method], acts: Sequence[Act] = (), left: Iterable[Item] = ()
    ) -> None:
        self.thing = thing
        self.left = frozenset(left)
        self.methods = methods
        self.acts = tuple(acts)
        self.book = book_of(thing, methods, acts)
        self.needs = Needs(self.book, acts)

    def act_for(self, item: Item) -> Act | None:
        """Return the act of a technique that gives an item, None where no technique does."""
        for method in sorted(self.methods.values(), key=self._preferred(item)):
            if item.state not in method.gives:
                continue
            for what in self._targets(method, item):
                act = Act(method.name, what)
                if item in self.book_with(act).gives(act):
                    return act
        return None

    def book_with(self, act: Act) -> Book:
        """The book as it is when an act that closes finds what an act before it has opened."""
        closing = {f"#{seam.number}" for seam in self.thing.seams if self._opens(seam)}
        return replace(self.book, opened=self.book.opened | closing)

    def _opens(self, seam: Seam) -> bool:
        return any(seam.sort in method.sews and "open" in method.gives for method in self.methods.values())

    def _preferred(self, item: Item) -> Callable[[Method], tuple[int, str]]:
        """How techniques that give the same are ranked: what is meant for just this goes before what also can."""
        knotted = any("knotted" in closing.facts for closing in self.thing.closings)

        def rank(method: Method) -> tuple[int, str]:
            side = item.edge
            part = self.needs.part_of(item)
            cased = part is not None and part.ends.get(side) == "casing"
            odd = ("broad hem" in method.kinds) is not cased
            other_tie = item.state == "made" and ("ties" in method.kinds) is not knotted
            beside = item.state == "neat" and bool(method.sews)
            return (int(odd) + int(other_tie) + int(beside), method.name)

        return rank

    def _targets(self, method: Method, item: Item) -> Iterable[tuple[Edge, ...]]:
        seam = self.needs.seam_of(item)
        part = self.needs.part_of(item)
        if item.on == WORK:
            yield ()
        elif part is not None:
            yield self._hems_beside_rods(part, item) or self._hems_beside_trial(part, item) or ((part.name, ""),)
        elif seam is not None:
            yield tuple((piece, "") for piece in self._told_on(method, seam))
        else:
            closing = next(one for one in self.thing.closings if f"@{one.number}" == item.on)
            side = closing.on if item.state == "holed" or "holed" not in closing.facts else closing.on + closing.onto
            yield tuple((piece, "") for piece in dict.fromkeys(piece for piece, _ in side))

    def _hems_beside_rods(self, part: Component, item: Item) -> tuple[Edge, ...]:
        """The hems that are made together before the tucks of a blind, or after them; none without rods."""
        first = rod_hems(part)
        if not first or item.state != "hemmed":
            return ()
        hems = (one for one in edge_items(part) if one.state == "hemmed" and part.ends[one.edge] not in _OTHER_HEMS)
        return tuple((part.name, one.edge) for one in hems if (one in first) is (item in first))

    def _hems_beside_trial(self, part: Component, item: Item) -> tuple[Edge, ...]:
        """The hems of a piece that lie on the same side of its trial; none where it has none, or for a casing."""
        trial = next((one for one in self.book.trials if one.piece == part.name), None)
        if trial is None or item.state != "hemmed" or item in trial.after:
            return ()
        late = item in trial.before
        hems = [one for one in edge_items(part) if one.state == "hemmed" and one not in trial.after]
        same = [one for one in hems if (one in trial.before) is late and part.ends[one.edge] != "caught hem"]
        return tuple((part.name, one.edge) for one in same)

    def _told_on(self, method: Method, seam: Seam) -> tuple[str, ...]:
        """The pieces that a technique is said to be done on: what is laid on, or both where they are alike."""
        own = lining_of(seam, self.thing)
        if seam.sort == "box" and method.sews:
            return self._box(seam)
        bands = [name for name in seam.pieces if "band" in self.thing.parts[name].facts]
        if seam.sort in ("binding", "piping") and bands:
            return (bands[0],)
        if "closed" in method.gives and seam.sort == "box":
            return self._box(seam)[:1]
        return (own,) if own else seam.pieces

    def _box(self, seam: Seam) -> tuple[str, ...]:
        """The boxing and all faces that it is sewn to."""
        band = next(name for name in seam.pieces if "boxes" in self.thing.parts[name].facts)
        faces = [piece for one in self.thing.seams_of(band) if one.sort == "box" for piece in one.pieces]
        return tuple(dict.fromkeys((band, *faces)))

    def written(self, given: Iterable[Item] = (), wanted: Iterable[Item] | None = None) -> tuple[Act, ...]:
        """Return the acts that give all that is due, or what is wanted and all that it needs, in their order."""
        have = set(given)
        asked = None if wanted is None else self._with_needs(wanted, have)
        acts: list[Act] = []
        while True:
            act = self._next(have, asked)
            if act is None:
                return tuple(acts)
            acts.append(act)
            have |= set(self.book_with(act).gives(act))

    def _order(self, have: set[Item]) -> list[Item]:
        """What is due, in the order of the work, and the closing of what is open."""
        due = [one.item for one in all_due(self.thing, [trial.item for trial in self.book.trials])]
        # What frays is neatened when it is sewn, together with what was sewn to the same edges before; a strip that is
        # closed to a ring before its own edges are hemmed or gathered.
        raw = raw_seams(self.thing, self.needs.laid)
        for seam in raw:
            if not any(seam.edges & other.edges for other in raw if other.number > seam.number):
                place = self._crossed_first(seam, due) if closes(seam) else due.index(sewn_items(seam)[-1]) + 1
                due.insert(place, seam_item("neat", seam))
        closed = [Item("closed", item.on) for item in sorted(have, key=lambda one: one.on) if item.state == "open"]
        # What is not filled is closed at once, before buttonholes are made beside the opening.
        return [*due, *closed] if is_filled(self.thing) else [*closed, *due]

    def _crossed_first(self, seam: Seam, due: Sequence[Item]) -> int:
        """The place in what is due of the first hem or seam that runs over an end of one that closes a piece."""
        (piece,) = seam.pieces
        over = {
            item for other in self.thing.seams_of(piece) if other.number != seam.number for item in sewn_items(other)
        }
        places = [place for place, item in enumerate(due) if item.on.startswith(f"{piece}.") or item in over]
        return min([*places, due.index(sewn_items(seam)[-1]) + 1])

    def _next(self, have: set[Item], asked: set[Item] | None) -> Act | None:
        for item in self._wanted(have, asked):
            act = self.act_for(item)
            if act is not None and self._possible(act, have):
                return self._widened(act, item, have, asked)
        return None

    def _possible(self, act: Act, have: set[Item]) -> bool:
        return all(need in have for need in self.needs.of_act(act))

    def _widened(self, act: Act, item: Item, have: set[Item], asked: set[Item] | None) -> Act:
        """The act with all that the same technique can do now: every piece that is cut, seams that hang together."""
        if item.state == "cut":
            return Act(act.does) if "later" not in self._facts(act) else self._on_all(act, item, have)
        if item.state == "fixed":
            return self._with_all_below(act, have)
        seam = self.needs.seam_of(item)
        if seam is None or seam.sort not in FLAT_SEAMS:
            return act
        what = act.what
        for other in self._wanted(have, asked):
            own = self.needs.seam_of(other)
            near = own is not None and other.state == "sewn" and set(own.pieces) & {piece for piece, _ in what}
            more = self.act_for(other) if near else None
            if more is not None and more.does == act.does and self._possible(more, have):
                wider = tuple(dict.fromkeys(what + more.what))
                what = wider if self._possible(Act(act.does, wider), have) else what
        return Act(act.does, what)

    def _wanted(self, have: set[Item], asked: set[Item] | None) -> Iterable[Item]:
        """What is to be given yet, in the order of the work; of all that is due, or of what is asked."""
        due = (item for item in self._order(have) if item not in have and item not in self.left)
        return (item for item in due if asked is None or item in asked)

    def _facts(self, act: Act) -> frozenset[str]:
        return frozenset(fact for piece in act.pieces for fact in self.thing.parts[piece].facts)

    def _on_all(self, act: Act, item: Item, have: set[Item]) -> Act:
        what = [
            (name, "")
            for name in self.thing.parts
            if self._facts(Act(act.does, ((name, ""),))) & {"later"}
            and Item("cut", name) not in have
            and self._possible(Act(act.does, ((name, ""),)), have)
        ]
        return Act(act.does, tuple(what))

    def _with_all_below(self, act: Act, have: set[Item]) -> Act:
        """The act with every copy that is quilted to the same piece: wadding and backing are quilted at once."""
        own = self.thing.parts[act.what[0][0]]
        if "quilted" not in own.facts:
            return act
        names = [copy.name for copy in self.thing.copies_on(own.lies_on) if "quilted" in copy.facts]
        left = [name for name in names if Item("fixed", name) not in have | self.left]
        return Act(act.does, tuple((name, "") for name in left if self._possible(Act(act.does, ((name, ""),)), have)))

    def _with_needs(self, wanted: Iterable[Item], have: set[Item]) -> set[Item]:
        asked: set[Item] = set()
        open_ones = list(wanted)
        while open_ones:
            item = open_ones.pop()
            if item in asked or item in have:
                continue
            asked.add(item)
            act = self.act_for(item)
            open_ones += self.needs.of_act(act) if act is not None else []
            open_ones += [one for one in self.book.gives(act) if one not in asked] if act is not None else []
        return asked


def lines_of(acts: Sequence[Act]) -> tuple[Line, ...]:
    """Return acts as lines of a project file: techniques that follow each other on the same pieces stand together."""
    lines: list[Line] = []
    for act in acts:
        if lines and lines[-1].on == act.what and act.what:
            lines[-1] = Line((*lines[-1].uses, act.does), act.what)
        else:
            lines.append(Line((act.does,), act.what))
    return tuple(lines)


def as_doings(acts: Sequence[Act]) -> tuple[Doing, ...]:
    """Return written acts as steps that can be walked through."""
    return tuple(
        Doing(", ".join(line.uses), tuple(Act(use, line.on) for use in line.uses), pieces=tuple(p for p, _ in line.on))
        for line in lines_of(acts)
    )
