"""A thing and the techniques that it can be made with: acts come in, what each of them gives goes out as items."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from types import MappingProxyType

from generator.calculation.making_up.acts import ANY, Act, Method
from generator.calculation.making_up.all_round import closing_seams
from generator.calculation.making_up.given import given_by
from generator.calculation.making_up.items import (
    RAW,
    RODS_IN,
    WORK,
    Item,
    edge_items,
    pair_item,
    piece_items,
    seam_item,
    sewn_items,
)
from generator.calculation.making_up.seams import (
    CLOSED,
    FLAT_SEAMS,
    encloses,
    told_of,
    zip_linings,
    zip_of,
)
from generator.calculation.making_up.thing import Component, Edge, Seam, Thing
from generator.calculation.making_up.trials import TRIED, Trial, trials_of


@dataclass(frozen=True, slots=True)
class Book:
    """A thing and the techniques that it can be made with.

    ``claimed`` are hems that steps make by name, ``cased`` those that a casing takes, ``opened`` the seams and pieces
    in which a step leaves an opening, ``trials`` what is tried in its place, ``named`` the pairs of edges that acts
    sew, ``done`` those that are sewn already and left alone where there are others.
    """

    thing: Thing
    methods: Mapping[str, Method]
    claimed: frozenset[Item] = field(default_factory=frozenset)
    cased: frozenset[Item] = field(default_factory=frozenset)
    opened: frozenset[str] = field(default_factory=frozenset)
    named: frozenset[Item] = field(default_factory=frozenset)
    done: frozenset[Item] = field(default_factory=frozenset)
    trials: tuple[Trial, ...] = ()

    def gives(self, act: Act) -> tuple[Item, ...]:
        """Return the states that an act gives, in their order."""
        method = self.methods.get(act.does)
        if method is not None:
            return tuple(dict.fromkeys(self._given_by(method, act.what)))
        given = given_by(self.thing, act)
        tried = self._looked_at(act) if act.does == "look" and act.word else ()
        return (*(item for item in given if item.state != "closed" or item.on in self.opened), *tried)

    def _looked_at(self, act: Act) -> tuple[Item, ...]:
        """What a step that looks tries in its place: a sleeve, looked at after its ring is closed."""
        done = set(self.gives(Act(act.word, act.what)))
        return tuple(one.item for one in self.trials if one.piece in act.pieces and done.issuperset(one.after))

    def trial(self, item: Item) -> Trial | None:
        """Return the trial that an item must wait for, None where it waits for none."""
        return next((one for one in self.trials if item in one.before), None)

    def fits(self, method: Method, part: Component) -> bool:
        """Return whether a technique is for a piece at all, due or not."""
        return not method.kinds or any(_is_for(kind, part) for kind in method.kinds)

    def _given_by(self, method: Method, what: Sequence[Edge]) -> Iterable[Item]:
        named = {piece for piece, _ in what} or set(self.thing.parts)
        names = [name for name in self.thing.parts if name in named]
        for part in (self.thing.parts[name] for name in names):
            if self.fits(method, part):
                yield from (item for item in piece_items(part) if item.state in method.gives)
                if "attached" in method.gives and (part.sewn_on or "at an edge" in part.facts):
                    yield Item("attached", part.name)
                if RODS_IN in method.gives and "rods" in part.facts:
                    yield Item(RODS_IN, part.name)
                yield from (one.item for one in self.trials if one.piece == part.name and TRIED in method.gives)
                yield from self._edges_given(method, part, {edge for piece, edge in what if piece == part.name})
        yield from self._closings_given(method, named)
        yield from self._seams_given(method, named) if method.sews else self._worked(method, named)

    def _seams_given(self, method: Method, names: set[str]) -> Iterable[Item]:
        caught = self._caught_at_zips()
        whole = [seam for seam in self.thing.seams if self._sews(method, seam, names)]
        whole = [seam for seam in whole if not caught.issuperset(sewn_items(seam))]
        seams = [seam for seam in whole if not self.done.issuperset(sewn_items(seam))] or whole
        pairs = [item for seam in seams for item in sewn_items(seam) if item not in caught]
        # What an act sews by name is left to it, unless that leaves nothing: then one of the two is too many.
        yield from [item for item in pairs if item not in self.named] or pairs
        states = [state for state in method.gives if state in _OF_SEAMS]
        ways_out = {seam for seam in seams if encloses(seam, self.thing)}
        for seam in seams:
            own = [state for state in states if state != "open" or self._shut(seam)]
            yield from (seam_item(state, seam) for state in own if state != "turned out" or seam in ways_out)

    def _shut(self, seam: Seam) -> bool:
        """Whether a seam shuts the work all round, so that an opening is left in it.

        A cover with one face is open, one with a zip opens there; of seams that close two faces the last has it.
        """
        together = closing_seams(seam, self.thing) if seam.sort in CLOSED else (seam,)
        if seam != together[-1] or any(zip_of(one, self.thing) is not None for one in together):
            return False
        bands = [name for name in seam.pieces if "boxes" in self.thing.parts[name].facts]
        return not bands or sum(one.sort == "box" for one in self.thing.seams_of(bands[0])) > 1

    def _edges_given(self, method: Method, part: Component, edges: set[str]) -> Iterable[Item]:
        tucked = "tucked" in method.gives
        items = [
            item
            for item in edge_items(part)
            if item.state in method.gives and (part.ends.get(item.edge) == "caught hem") is tucked
        ]
        named = edges - {ANY, "all"}
        if tucked or not named:
            return items if tucked else self._free_edges(method, part, items)
        return [item for item in items if item.edge in named]

    def _free_edges(self, method: Method, part: Component, items: Sequence[Item]) -> list[Item]:
        """Of edges that no act names, those that are left to a technique; one, for a casing."""
        free = [item for item in items if item not in self.claimed]
        if "broad hem" not in method.kinds:
            return [item for item in free if item not in self.cased]
        cased = [item for item in items if part.ends[item.edge] == "casing"]
        return (cased or [item for item in free if item.edge in part.broad])[:1]

    def _closings_given(self, method: Method, names: set[str]) -> Iterable[Item]:
        sort = next((one for one in _CLOSED_BY if one in method.kinds), "buttons")
        for closing in self.thing.closings:
            lined = zip_linings(closing, self.thing)
            own = _CLOSED_BY[sort](closing.facts) and bool(lined) is (sort == "lined zip")
            if own and names & set(closing.pieces):
                yield from (Item(s, f"@{closing.number}") for s in ("holed", "set") if s in method.gives)
                yield from (_of_pair(*one) for one in lined if "set" in method.gives)
                yield from (seam_item("out of reach", seam) for seam, _ in lined if len(seam.pairs) == 1)

    def _caught_at_zips(self) -> set[Item]:
        """The pairs of edges that are sewn with a lined zip, and with nothing else."""
        linings = (one for closing in self.thing.closings for one in zip_linings(closing, self.thing))
        return {_of_pair(*one) for one in linings}

    def _sews(self, method: Method, seam: Seam, names: set[str]) -> bool:
        if seam.sort not in method.sews:
            return False
        if seam.sort in FLAT_SEAMS:
            return set(seam.pieces) <= names
        return bool(names & told_of(seam, self.thing))

    def _worked(self, method: Method, names: set[str]) -> Iterable[Item]:
        """What a technique that sews no seam gives to the work: it is filled, turned out, neatened, closed."""
        near = [seam for seam in self.thing.seams if names & set(seam.pieces)]
        raw = [seam for seam in near if seam.sort in RAW]
        for state in method.gives:
            if state in ("filled", "fitted"):
                yield Item(state, WORK)
            elif state == "closed":
                places = names | {f"#{seam.number}" for seam in near}
                yield from (Item(state, on) for on in sorted(self.opened & places))
            elif state in _OF_SEAMS:
                within = [seam for seam in raw if set(seam.pieces) <= names] or raw
                turned = [seam for seam in near if encloses(seam, self.thing)] or near
                yield from (seam_item(state, seam) for seam in (within if state == "neat" else turned))


def _of_pair(seam: Seam, pair: tuple[Edge, Edge]) -> Item:
    """The item of one pair of a seam, whichever of its edges stands first."""
    return pair_item(seam, next(place for place, one in enumerate(seam.pairs) if set(one) == set(pair)))


# What closings a technique sets that is for one of these; one that says nothing is for buttons.
_CLOSED_BY: Mapping[str, Callable[[frozenset[str]], bool]] = {
    "buttons": lambda facts: "holed" in facts,
    "fasteners": lambda facts: "set flat" in facts and "opens a seam" not in facts,
    "lined zip": lambda facts: "opens a seam" in facts,
    "zip": lambda facts: "opens a seam" in facts,
    "elastic": lambda facts: "runs in a hem" in facts,
}
_OF_SEAMS = ("out of reach", "open", "turned out", "neat", "closed")


def _has_fact(fact: str, part: Component) -> bool:
    return fact in part.facts


_FITS: Mapping[str, Callable[[Component], bool]] = MappingProxyType(
    {
        "cut with the rest": lambda part: "later" not in part.facts,
        "cut after the panel": lambda part: "later" in part.facts,
        "bias": lambda part: "bias" in part.facts,
        "not bias": lambda part: "bias" not in part.facts,
        "broad hem": lambda part: bool(part.broad) or "casing" in part.ends.values(),
        "sewn on": lambda part: bool(part.sewn_on),
        **{fact: partial(_has_fact, fact) for fact in ("at an edge", "embroidered")},
        "gathered edge": lambda part: "gathered" in part.drawn.values(),
        "pleated edge": lambda part: "pleated" in part.drawn.values(),
        "ties": lambda part: "strap" in part.facts,
        **{way: partial(_has_fact, way) for way in ("fused", "sewn in", "quilted")},
        "buttons": lambda part: True,
        "fasteners": lambda part: True,
        "elastic": lambda part: True,
        "zip": lambda part: True,
        "lined zip": lambda part: True,
    }
)


def _is_for(kind: str, part: Component) -> bool:
    return _FITS[kind](part) if kind in _FITS else part.kind == kind


def book_of(thing: Thing, methods: Mapping[str, Method], acts: Sequence[Act]) -> Book:
    """Return the book of a recipe: it knows which hems a step names, and which seams a step leaves open."""
    plain = Book(thing, methods)
    opened = frozenset(item.on for act in acts for item in plain.gives(act) if item.state == "open")
    sewn = frozenset(item for act in acts if act.does == "sew" for item in plain.gives(act) if item.state == "sewn")
    claimed, cased = _claimed_hems(plain, acts)
    return Book(thing, methods, claimed, cased, opened, sewn, trials=trials_of(thing, cased | _casings(plain, acts)))


def _casings(book: Book, acts: Sequence[Act]) -> frozenset[Item]:
    """Every hem that a rod runs through: as the file says, or made by a step that makes casings."""
    told = {
        Item("hemmed", f"{part.name}.{side}")
        for part in book.thing.parts.values()
        for side, end in part.ends.items()
        if end == "casing"
    }
    methods = ((book.methods.get(act.does), act) for act in acts)
    return frozenset(told).union(*(book.gives(act) for one, act in methods if one and "broad hem" in one.kinds))


def _claimed_hems(book: Book, acts: Sequence[Act]) -> tuple[frozenset[Item], frozenset[Item]]:
    """The hems that a step makes by name, and those that a casing takes; the other steps leave them alone."""
    named: set[Item] = set()
    casings = []
    for act in acts:
        method = book.methods.get(act.does)
        if method is None or "hemmed" not in method.gives or "tucked" in method.gives:
            continue
        edges = {(piece, edge) for piece, edge in act.what if edge not in (ANY, "all")}
        named |= {Item("hemmed", f"{piece}.{edge}") for piece, edge in edges}
        casings += [act] if "broad hem" in method.kinds and not edges else []
    claimed = frozenset(named)
    beside = Book(book.thing, book.methods, claimed)
    return claimed, frozenset(item for act in casings for item in beside.gives(act))


def could_be_due(method: Method, book: Book, piece: str) -> bool:
    """Return whether a technique is right for a kind of piece, whether or not this size asks for it.

    Another size of the same project may: breadths and lengths are joined only where needed.
    """
    part = book.thing.parts[piece]
    if set(method.gives) & {"joined", "trimmed"}:
        return part.is_panel
    if "lengthened" in method.gives:
        return "from lengths" in part.facts
    if set(method.gives) & {"holed", "set"}:
        return any(piece in closing.pieces for closing in book.thing.closings)
    return bool(set(method.gives) & {"filled", "fitted", "neat", "closed", "turned out", "nothing", TRIED})
