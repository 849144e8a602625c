"""What is wrong with a recipe, in words: slips come in, findings with their line and a remedy to paste go out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from types import MappingProxyType

from generator.calculation.making_up.acts import Act, Doing
from generator.calculation.making_up.items import Item
from generator.calculation.making_up.seams import zip_of
from generator.calculation.making_up.thing import Component, Seam
from generator.calculation.making_up.trials import TRIED
from generator.calculation.making_up.walk import Slip, Walked
from generator.calculation.making_up.writing import Writer, lines_of
from generator.errors import Finding, Level, Place
from generator.listed import listed

States = Mapping[str, tuple[str, str]]
"""How a state is told, by its name: what a step does that gives it, and that it has been done; 'it' is the thing."""


def recipe_findings(walked: Walked, states: States) -> tuple[Finding, ...]:
    """Return every slip of a recipe as a finding, in the order of the recipe."""
    words = _Told(walked, states)
    return tuple(words.finding(slip) for slip in walked.slips)


class _Told:
    """The words for the slips of one recipe."""

    def __init__(self, walked: Walked, states: States) -> None:
        self.walked, self.states = walked, states
        self.thing = walked.book.thing
        acts = [act for doing in walked.recipe for act in doing.acts]
        self.writer = Writer(self.thing, walked.book.methods, acts)

    def finding(self, slip: Slip) -> Finding:
        """Return one slip as a finding."""
        level, text = _SORTS[slip.sort](self, slip)
        return Finding(level, text, self._place(slip))

    def _place(self, slip: Slip) -> Place | None:
        if slip.act is not None and slip.act.place is not None:
            return slip.act.place
        return slip.doing.place if slip.doing is not None else self._due_at(slip.items[0])

    def _due_at(self, item: Item) -> Place | None:
        """Return where the file says that something is due."""
        seam = self.walked.needs.seam_of(item)
        part = self.walked.needs.part_of(item)
        closing = next((one for one in self.thing.closings if f"@{one.number}" == item.on), None)
        owner: Seam | Component | object | None = seam or part or closing
        place = getattr(owner, "place", None)
        last = self.walked.recipe[-1].place if self.walked.recipe else None
        return place or last or next((part.place for part in self.thing.parts.values()), None)

    def name(self, item: Item) -> str:
        """Return what an item is about, as a person says it."""
        closing = next((one for one in self.thing.closings if f"@{one.number}" == item.on), None)
        if closing is not None:
            bearer = closing.on[0][0]
            return (
                f"the {closing.kind} of '{bearer}'"
                if closing.kind.endswith("s")
                else f"the {closing.kind} on '{bearer}'"
            )
        seam = self.walked.needs.seam_of(item)
        if seam is not None:
            return self._seam_name(seam, item)
        part = self.walked.needs.part_of(item)
        return f"'{part.name}'" if part is not None else "the work"

    def _seam_name(self, seam: Seam, item: Item) -> str:
        pair = item.on.partition(".")[2]
        if len(seam.pieces) == 1 or (pair and self._alike(seam)):
            one, other = seam.pairs[int(pair or 0)]
            return f"'{one[0]}.{one[1]}' to '{other[0]}.{other[1]}'"
        join, to = _run(seam.join), _run(seam.to)
        return f"{join} to {to}"

    def _alike(self, seam: Seam) -> bool:
        """Whether other seams join the same pieces, so that their edges must be told."""
        return any(set(one.pieces) == set(seam.pieces) for one in self.thing.seams if one.number != seam.number)

    def does(self, items: Sequence[Item]) -> str:
        """Return what a step does that gives items: 'marks the folds of 'front' and turns the tucks of 'front''."""
        told = dict.fromkeys(_put(self.states[item.state][0], self.name(item)) for item in items)
        return listed(list(told))

    def done(self, item: Item) -> str:
        """Return that an item has been given."""
        return _put(self.states[item.state][1], self.name(item))

    def remedy(self, items: Sequence[Item]) -> str:
        """Return the lines to paste that give items; acts where no standard step gives them."""
        acts: list[Act] = []
        loose: list[str] = []
        for item in items:
            act = self.writer.act_for(item)
            if act is None:
                loose.append(self.act_words(item))
            elif act not in acts:
                acts.append(act)
        lines = [line for one in lines_of(acts) for line in one.written()]
        lines += [f"  does: {act}" for act in dict.fromkeys(loose)]
        return "\n".join(lines)

    def opened_by_act(self, item: Item) -> bool:
        """Return whether an act of a step leaves the opening that an item is about."""
        acts = (act for doing in self.walked.recipe for act in doing.acts if act.does == "leave open")
        return any(one.on == item.on for act in acts for one in self.walked.book.gives(act))

    def act_words(self, item: Item) -> str:
        """Return the act that would give an item."""
        seam = self.walked.needs.seam_of(item)
        if seam is not None and item.state == "sewn":
            one, other = seam.pairs[int(item.on.partition(".")[2])]
            if len(seam.pieces) == 2 and not self._alike(seam):
                return f"sew {one[0]} to {other[0]}"
            return f"sew {one[0]}.{one[1]} to {other[0]}.{other[1]}"
        name = seam.pieces[0] if seam is not None else item.on
        closing = next((one for one in self.thing.closings if f"@{one.number}" == item.on), None)
        if closing is not None:
            return f"set {closing.kind} on {closing.on[0][0]}"
        return self._plain_words(item, name)

    def _plain_words(self, item: Item, name: str) -> str:
        if item.state == "attached":
            return f"baste {name} on {self._beside(name)}"
        if item.state == "filled":
            return f"put the pad in {next(iter(self.thing.parts))}"
        verbs = {"turned out": "turn out", "closed": "close", "neat": "neaten", "open": "leave open 8 in or 20 cm of"}
        if item.state in verbs:
            return f"{verbs[item.state]} {name}"
        if item.state == TRIED:
            return self._looked(item)
        if item.state == "fastened":
            return f"fasten {name.partition('.')[0]}.all"
        act = self.writer.act_for(item)
        if act is None or not act.what:
            return act.does if act is not None else item.state
        return f"{act.does} {name}" if "." in name else f"{act.does} on {name}"

    def _looked(self, item: Item) -> str:
        """A look at a piece after the step that gives what its trial waits for."""
        trial = next(one for one in self.walked.book.trials if one.item == item)
        act = self.writer.act_for(trial.after[0])
        return f"look at {item.on} after {act.does if act is not None else 'cut'}"

    def _beside(self, name: str) -> str:
        return next((other for other in self.thing.parts if other != name), name)


def _put(words: str, name: str) -> str:
    return " ".join(name if word == "it" else word for word in words.split())


def _run(edges: Sequence[tuple[str, str]]) -> str:
    return " and ".join(dict.fromkeys(f"'{piece}'" for piece, _ in edges))


def _line(doing: Doing | None) -> str:
    return f"line {doing.place.line}" if doing is not None and doing.place is not None else "a step"


def _step(slip: Slip) -> str:
    return f"'{slip.act.does}'" if slip.act is not None else "this step"


Told = tuple[Level, str]


def _missing(words: _Told, slip: Slip) -> Told:
    where = f"Write above {_line(slip.doing)}"
    if slip.doing is not None and slip.act is not None and slip.doing.acts.index(slip.act) > 0:
        where = f"Write in {_line(slip.doing)} before {_step(slip)}, or as steps above it"
    return "error", f"no step {words.does(slip.items)}; {_step(slip)} needs it. {where}:\n{words.remedy(slip.items)}"


def _misplaced(words: _Told, slip: Slip) -> Told:
    needed = dict.fromkeys(f"'{name}'" for name in _givers(words, slip))
    verb = f"{_step(slip)} needs {listed(list(needed)) or 'another step'} before it"
    if slip.other is slip.doing:
        return "error", f"{verb}: change their order in {_line(slip.doing)}"
    return "error", f"{verb}: {words.does(slip.items)}. Move {_line(slip.other)} up here"


def _givers(words: _Told, slip: Slip) -> Iterator[str]:
    for act in slip.other.acts if slip.other is not None else ():
        if set(words.walked.book.gives(act)) & set(slip.items):
            yield act.does


def _too_late(words: _Told, slip: Slip) -> Told:
    done = words.done(slip.items[-1])
    return (
        "error",
        f"{_step(slip)} comes too late: {done} in {_line(slip.other)}. Move this step above {_line(slip.other)}",
    )


def _repeated(words: _Told, slip: Slip) -> Told:
    own = slip.act is not None and slip.act.does not in words.walked.book.methods and not _word_for_word(slip)
    told = f"{words.done(slip.items[0])} in {_line(slip.other)} already. Take one of the two out"
    return ("note" if own else "error"), told


def _word_for_word(slip: Slip) -> bool:
    """Whether the other step has the very same act."""
    own = slip.act
    others = slip.other.acts if slip.other is not None else ()
    return own is not None and any((own.does, own.what, own.onto) == (one.does, one.what, one.onto) for one in others)


def _unfit(words: _Told, slip: Slip) -> Told:
    part = words.thing.parts[slip.piece]
    method = words.walked.book.methods[slip.act.does] if slip.act is not None else None
    kinds = method.kinds if method is not None else ()
    if method is not None and "closed" in method.gives:
        zipped = any(zip_of(seam, words.thing) for seam in words.thing.seams_of(slip.piece))
        why = "a zip closes the seam" if zipped else "no step leaves an opening in the seams"
        return "error", f"{_step(slip)} has nothing to close: {why} of '{slip.piece}'"
    meant = f"is for {_or(kinds)}" if kinds else "has nothing to do there"
    return "error", f"{_step(slip)} {meant}; '{slip.piece}' is {_a(part.kind)}. Name another piece, or take it out"


def _or(kinds: Sequence[str]) -> str:
    told = [_a(kind) for kind in kinds]
    return told[0] if len(told) == 1 else f"{', '.join(told[:-1])} or {told[-1]}"


def _a(kind: str) -> str:
    return f"{'an' if kind[:1] in 'aeiou' else 'a'} {kind}"


def _which_edge(words: _Told, slip: Slip) -> Told:
    edges = [item.on for item in slip.items]
    return "error", f"'{slip.piece}' has {len(edges)} such hems; say which: on: {edges[0]}"


def _meets_nothing(words: _Told, slip: Slip) -> Told:
    other = words._beside(slip.piece)
    told = f"'{slip.piece}' meets nothing; {_step(slip)} cannot tell what it is sewn to. Write under 'edges that meet':"
    return "error", f"{told}\n  - join: {other}.all\n    to: {slip.piece}.all"


def _never(words: _Told, slip: Slip) -> Told:
    last = [words.walked.given[item] for item in words.walked.given if _owner(item) == _owner(slip.items[0])]
    after = f"below {_line(words.walked.recipe[max(last)])}" if last else "as the last step"
    if slip.items[0].state == "attached":
        item = slip.items[0]
        told = f"'{item.on}' is cut and never sewn on. Say it at the step that does it: does: {words.act_words(item)}"
        return "warning", told
    told = f"no step {words.does(slip.items)}. Write {after}"
    if any(item.state == "closed" and words.opened_by_act(item) for item in slip.items):
        told += ", or 'for good' behind 'leave open' where it stays open"
    return "error", f"{told}:\n{words.remedy(slip.items)}"


def _owner(item: Item) -> str:
    return item.on.partition(".")[0]


def _raw(words: _Told, slip: Slip) -> Told:
    told = f"this seam stays raw: {words.name(slip.items[0])}. Write where it can still be reached:"
    return "warning", f"{told}\n{words.remedy(slip.items)}"


def _untried(words: _Told, slip: Slip) -> Told:
    told = f"nothing tries {words.name(slip.items[0])} in its place before {_step(slip)}; later it is hard to alter"
    return "warning", f"{told}. Write above {_line(slip.doing)}:\n{words.remedy(slip.items)}"


def _unknown(words: _Told, slip: Slip) -> Told:
    acts = list(dict.fromkeys(words.act_words(item) for item in slip.items))
    lines = f"does: {acts[0]}" if len(acts) == 1 else "\n".join(["does:", *(f"  - {act}" for act in acts)])
    return "note", f"nothing else {words.does(slip.items)}. If this step does: {lines}"


_SORTS: Mapping[str, Callable[[_Told, Slip], Told]] = MappingProxyType(
    {
        "missing": _missing,
        "misplaced": _misplaced,
        "too late": _too_late,
        "repeated": _repeated,
        "unfit": _unfit,
        "which edge": _which_edge,
        "meets nothing": _meets_nothing,
        "never": _never,
        "unknown": _unknown,
        "raw": _raw,
        "untried": _untried,
    }
)
