"""The walk through a recipe: its steps come in, what each gives, needs and lacks goes out, and what is never done.

What was told as missing counts as given from there on: one fault, one slip. A step of which nobody knows what it does
may have given anything to its pieces; then nothing is told as missing that it could have done. A step of a project's
own cannot have marked, sewn or turned tucks unsaid.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from generator.calculation.making_up.acts import Act, Doing, Method
from generator.calculation.making_up.book import Book, book_of, could_be_due
from generator.calculation.making_up.items import (
    WORK,
    Due,
    Item,
    all_due,
    piece_items,
    raw_seams,
    seam_item,
    sewn_items,
)
from generator.calculation.making_up.needs import Needs
from generator.calculation.making_up.thing import Seam, Thing
from generator.calculation.making_up.trials import TRIED

Sort = Literal[
    "missing",
    "misplaced",
    "too late",
    "repeated",
    "unfit",
    "which edge",
    "meets nothing",
    "never",
    "unknown",
    "raw",
    "untried",
]
# States that a step must not come after, beside what techniques say in 'before'.
_BEFORE: Mapping[str, tuple[str, ...]] = {
    "set": ("out of reach",),
    "put in": ("closed",),
    "turn out": ("closed",),
    "neaten": ("turned out",),
    "leave open": ("turned out", "closed"),
    "one first": ("marked",),
}
# What only the standard steps have the numbers for: no step of a project's own can have done it unsaid.
_BY_NUMBERS = frozenset(
    {"joined", "marked", "creased", "tucked", "cross marked", "cross creased", "cross tucked", "ruled", "turned"}
)


@dataclass(frozen=True, slots=True)
class Slip:
    """One fault of a recipe: its sort, the items that it is about, where it shows, the other step concerned."""

    sort: Sort
    items: tuple[Item, ...] = ()
    doing: Doing | None = None
    act: Act | None = None
    other: Doing | None = None
    piece: str = ""


@dataclass(frozen=True, slots=True)
class Walked:
    """A recipe walked through: its slips, and which step gave each item first."""

    book: Book
    needs: Needs
    due: tuple[Due, ...]
    recipe: tuple[Doing, ...]
    slips: tuple[Slip, ...]
    given: Mapping[Item, int] = field(default_factory=dict)


def walk(thing: Thing, methods: Mapping[str, Method], recipe: Sequence[Doing]) -> Walked:
    """Return a recipe walked through from its first step to its last."""
    acts = [act for doing in recipe for act in doing.acts]
    book = book_of(thing, methods, acts)
    return _Walk(book, Needs(book, acts), tuple(recipe)).done()


class _Walk:
    """One walk under way: what each step has given, what an unknown step may have given, what has been told."""

    def __init__(self, book: Book, needs: Needs, recipe: tuple[Doing, ...]) -> None:
        self.book, self.needs, self.recipe = book, needs, recipe
        self.due = all_due(book.thing, [trial.item for trial in book.trials])
        self.given: dict[Item, int] = {}
        self.by: dict[Item, Act] = {}
        self.maybe: dict[Item, Doing] = {}
        self.told: set[Item] = set()
        self.was_ready: set[Item] = set()
        self.slips: list[Slip] = []
        self.later: dict[Item, list[tuple[int, Doing]]] = {}
        for place, doing in enumerate(recipe):
            for act in doing.acts:
                for item in book.gives(act):
                    self.later.setdefault(item, []).append((place, doing))

    def done(self) -> Walked:
        """Go through all steps, then look for what is due and was never given."""
        for place, doing in enumerate(self.recipe):
            self._fits(doing)
            for act in doing.acts:
                self._do(place, doing, act)
            if not doing.known:
                self._may_have_given(doing)
        self._never()
        return Walked(self.book, self.needs, self.due, self.recipe, tuple(self.slips), dict(self.given))

    def _fits(self, doing: Doing) -> None:
        """Tell pieces that none of the step's techniques is for."""
        techniques = [act for act in doing.acts if act.does in self.book.methods]
        for piece in dict.fromkeys(name for act in techniques for name, _ in act.what):
            own = [act for act in techniques if piece in act.pieces]
            if not any(self._is_for(act, piece) for act in own):
                lost = self.book.methods[own[0].does].sews and not self.book.thing.seams_of(piece)
                self.slips.append(Slip("meets nothing" if lost else "unfit", (), doing, own[0], piece=piece))
        for act in techniques:
            self._one_edge(doing, act)

    def _one_edge(self, doing: Doing, act: Act) -> None:
        """Tell a casing that could be made at several edges."""
        if "broad hem" not in self.book.methods[act.does].kinds:
            return
        for piece in (name for name, edge in act.what if not edge):
            part = self.book.thing.parts[piece]
            edges = [edge for edge in part.broad if part.ends[edge] != "casing"]
            hems = [Item("hemmed", f"{piece}.{edge}") for edge in edges]
            free = [item for item in hems if item not in self.book.claimed and item not in self.maybe]
            if len(free) > 1 and "casing" not in part.ends.values():
                self.slips.append(Slip("which edge", tuple(free), doing, act, piece=piece))

    def _is_for(self, act: Act, piece: str) -> bool:
        method, part = self.book.methods[act.does], self.book.thing.parts[piece]
        if not method.known or not self.book.fits(method, part):
            return not method.known
        if "closed" in method.gives:
            return bool(self.book.gives(act)) or any(not doing.known for doing in self.recipe)
        if method.sews:
            seams = self.book.thing.seams_of(piece)
            return any(seam.sort in method.sews for seam in seams) and bool(self.book.gives(act))
        return self._could_give(method, act, piece)

    def _could_give(self, method: Method, act: Act, piece: str) -> bool:
        return could_be_due(method, self.book, piece) or bool(
            self.book.gives(Act(act.does, tuple(edge for edge in act.what if edge[0] == piece)))
        )

    def _do(self, place: int, doing: Doing, act: Act) -> None:
        gives = self.book.gives(act)
        fresh = [item for item in gives if item not in self.told]
        self._look_for_needs(place, doing, act)
        self._look_back(doing, act, fresh)
        self._look_for_repeats(doing, act, gives)
        for item in gives:
            self.given.setdefault(item, place)
            self.by.setdefault(item, act)

    def _has(self, item: Item) -> bool:
        return item in self.given or item in self.told or item in self.maybe

    def _look_for_needs(self, place: int, doing: Doing, act: Act) -> None:
        lacking = [item for item in self.needs.of_act(act) if not self._has(item)]
        moved = [item for item in lacking if any(where >= place for where, _ in self.later.get(item, ()))]
        missing = tuple(item for item in lacking if item not in moved and not self._may_follow(item))
        for other in dict.fromkeys(self._giver(item, place) for item in moved):
            items = tuple(item for item in moved if self._giver(item, place) == other)
            self.slips.append(Slip("misplaced", items, doing, act, self.recipe[other]))
        for sort, items in _by_weight(missing):
            self.slips.append(Slip(sort, items, doing, act))
        self.told |= set(lacking)

    def _giver(self, item: Item, place: int) -> int:
        return next(where for where, _ in self.later[item] if where >= place)

    def _may_follow(self, item: Item) -> bool:
        """Whether an item may come of itself: an opening, where nobody knows what some step does."""
        return item.state == "open" and any(not doing.known for doing in self.recipe)

    def _look_back(self, doing: Doing, act: Act, fresh: Sequence[Item]) -> None:
        """Tell a step that comes after what it must come before."""
        method = self.book.methods.get(act.does)
        states = method.before if method is not None else _BEFORE.get(act.does, ())
        for item in fresh:
            for state in states:
                done = next((one for one in self._about(item) if one.state == state and one in self.given), None)
                if done is not None and done not in self.told:
                    self.slips.append(Slip("too late", (item, done), doing, act, self.recipe[self.given[done]]))
                    return

    def _about(self, item: Item) -> list[Item]:
        """Everything given to what an item is about."""
        pieces = self._pieces(item)
        return [one for one in self.given if pieces & self._pieces(one)]

    def _pieces(self, item: Item) -> set[str]:
        if item.on == WORK:
            return set(self.book.thing.parts)
        closing = next((one for one in self.book.thing.closings if f"@{one.number}" == item.on), None)
        if closing is not None:
            return set(closing.pieces)
        part = self.needs.part_of(item)
        return {part.name} if part is not None else {piece for piece, _ in self.needs.edges_of(item)}

    def _look_for_repeats(self, doing: Doing, act: Act, gives: Sequence[Item]) -> None:
        """Tell an act whose whole work a step before has done, on the same pieces."""
        states = [item for item in gives if item.state != "out of reach"]
        before = [item for item in states if item in self.given and self._same(act, self.by[item])]
        if states and len(before) == len(states):
            self.slips.append(Slip("repeated", tuple(before), doing, act, self.recipe[self.given[before[0]]]))

    def _same(self, act: Act, other: Act) -> bool:
        """Whether an act does again what another did; two halves of a fastener, say, are set one after the other."""
        loose = act.does in ("set", "lay", "baste", "leave open") or (act.does == "sew" and not self._seamed(act))
        return not loose or (act.what, act.onto) == (other.what, other.onto)

    def _seamed(self, act: Act) -> bool:
        return any(item.state == "sewn" for item in self.book.gives(act))

    def _may_have_given(self, doing: Doing) -> None:
        pieces = set(doing.pieces) or set(self.book.thing.parts)
        early = {trial.item for trial in self.book.trials if not all(self._has(item) for item in trial.after)}
        for due in self.due:
            if (doing.own and due.item.state in _BY_NUMBERS) or due.item in early:
                continue
            if pieces >= set(due.pieces) or (due.item.on.startswith(("@", WORK)) and pieces & set(due.pieces)):
                self._may(due.item, doing)
        for seam in self.book.thing.seams:
            if pieces & set(seam.pieces):
                for state in ("open", "closed", "turned out", "out of reach", "neat"):
                    self._may(seam_item(state, seam), doing)

    def _may(self, item: Item, doing: Doing) -> None:
        """Keep the first unknown step that an item may be from, or the first at which its pieces were ready."""
        pieces = {piece for piece, _ in self.needs.edges_of(item)}
        ready = all(self._has(one) for piece in pieces for one in piece_items(self.book.thing.parts[piece]))
        if item not in self.maybe or (ready and item not in self.was_ready):
            self.maybe[item] = doing
        if ready:
            self.was_ready.add(item)

    def _never(self) -> None:
        """Look for what is due and no step gave: an error, or a note at the step that may have done it."""
        left = [due.item for due in self._all_due() if due.item not in self.given and due.item not in self.told]
        unknown: dict[int, list[Item]] = {}
        missing: dict[str, list[Item]] = {}
        for item in left:
            if item in self.maybe:
                unknown.setdefault(self.recipe.index(self.maybe[item]), []).append(item)
            else:
                missing.setdefault(self._owner(item), []).append(item)
        self.slips += [Slip("unknown", tuple(items), self.recipe[place]) for place, items in sorted(unknown.items())]
        self.slips += [Slip("never", tuple(items)) for items in missing.values()]
        self._raw()

    def _raw(self) -> None:
        """Tell seams that stay raw; what an act sews to a piece that meets nothing is shut in by it."""
        joined = {piece for act in self.by.values() if act.does == "sew" and act.word != "on" for piece in act.pieces}
        loose = {item.on for item in self.given if item.state == "attached"} & joined
        raw = raw_seams(self.book.thing, self.needs.laid)
        for seam in (one for one in raw if not self._sewn_over(one, raw)):
            neat, sewn = seam_item("neat", seam), [item for item in sewn_items(seam) if item in self.given]
            if sewn and not self._has(neat) and not loose & set(seam.pieces):
                self.slips.append(Slip("raw", (neat,), self.recipe[max(self.given[item] for item in sewn)]))

    def _sewn_over(self, seam: Seam, raw: Sequence[Seam]) -> bool:
        """Whether a later seam is sewn to the same edge, so that both are neatened together."""
        own = {edge for edge in seam.edges if self.book.thing.parts[edge[0]].quantity == 1}
        return any(own & later.edges for later in raw if later.number > seam.number)

    def _owner(self, item: Item) -> str:
        """What the items of one finding share: the piece, the seam, the closing, the work."""
        return item.on.partition(".")[0]

    def _all_due(self) -> list[Due]:
        """What is due from the start, and the closing of every opening that was left."""
        opened = [item for item in self.given if item.state == "open"]
        return [*self.due, *(Due(Item("closed", item.on), ()) for item in opened)]


def _by_weight(missing: Sequence[Item]) -> Iterator[tuple[Sort, tuple[Item, ...]]]:
    """What is missing, and apart from it what nobody tries in its place, which is not told as an error."""
    untried = tuple(item for item in missing if item.state == TRIED)
    rest = tuple(item for item in missing if item.state != TRIED)
    yield from ((sort, items) for sort, items in (("missing", rest), ("untried", untried)) if items)  # type: ignore[misc]
