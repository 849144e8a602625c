"""What a step of a project's own does: the words after ``does`` come in, short acts that name edges go out, or a fault.

An act is a verb and what it is done to, for example 'sew front to back' or 'leave open 8 in of front.bottom'. A
standard step by its name is an act too: 'hem pocket.top'.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from types import MappingProxyType

from generator.definitions.faults import Fault, meant
from generator.definitions.making_words import NOTHING
from generator.definitions.nodes import Scalar, fold
from generator.definitions.reading import Reading, filled_words, read_value
from generator.definitions.reading_edges import read_edges
from generator.definitions.values import EdgeRun, Formula
from generator.errors import Place

_WRONG_SIDES = re.compile(r"\s+wrong sides together$")
_FOR_GOOD = re.compile(r"\s+for good$")
_AT_END = re.compile(r"\s+at the (left|right|top|bottom)$")
_ENDS: Mapping[str, tuple[str, str]] = MappingProxyType(
    {
        **dict.fromkeys(("left", "right"), ("top", "bottom")),
        **dict.fromkeys(("top", "bottom"), ("left", "right")),
    }
)
_LOOSE = ("turn out", "close", "neaten", "fasten")
_EXAMPLES = (
    "sew front to back",
    "sew pocket on back",
    "baste strap on front.top",
    "lay padding on front",
    "leave open 8 in of front.bottom",
    "turn out front",
    "close front",
    "put the pad in front",
    "neaten front",
    "set snaps on back",
    "fasten panel.all",
    "look at front after stitch tucks",
    "take one front first",
)


@dataclass(frozen=True, slots=True)
class WrittenAct:
    """One thing that a step does.

    ``does`` is a verb or the name of a standard step, ``what`` and ``onto`` are the edges that it names, a whole piece
    by an edge without a name. ``word`` is 'on' for what is sewn on a face, the thing that is put in or set, or the
    standard step that is looked after. ``length`` is that of an opening, which lies in the middle of its edge or at its
    ``end``, and may stay open ``for_good``.
    """

    does: str
    what: EdgeRun
    onto: EdgeRun | None = None
    word: str = ""
    length: Formula | None = None
    right_sides: bool = True
    place: Place | None = None
    end: str = ""
    for_good: bool = False


def read_act(words: Scalar, reading: Reading) -> WrittenAct:
    """Return one act."""
    text = filled_words(words)
    begin = len(text) - len(text.lstrip())
    if text.strip() == NOTHING:
        return WrittenAct(NOTHING, EdgeRun("", (), words.at(begin)), place=words.at(begin))
    for read in (_sewn, _laid, _opening, _put_in, _set, _looked_at, _one_first, _standard, _plain):
        act = read(_ActPart(words, text.strip(), begin), reading)
        if act is not None:
            return act
    verb = text.split()[0]
    near = meant(verb, dict.fromkeys(example.split()[0] for example in _EXAMPLES))
    raise Fault(f"'{text.strip()}' is no act{near}; write for example: {'; '.join(_EXAMPLES[:6])}")


@dataclass(frozen=True, slots=True)
class _ActPart:
    """A part of the words of an act, and how many characters of them stand before it."""

    words: Scalar
    text: str
    start: int = 0

    def after(self, lead: str) -> _ActPart | None:
        """Return what stands after a leading phrase, None where another stands there."""
        found = re.match(rf"{lead}\s+(?=\S)", self.text)
        return self.cut(found.end()) if found else None

    def cut(self, begin: int, end: int | None = None) -> _ActPart:
        """Return a part of it."""
        part = self.text[begin:end]
        lead = len(part) - len(part.lstrip())
        return _ActPart(self.words, part.strip(), self.start + begin + lead)

    def splits(self, word: str) -> Iterator[tuple[_ActPart, _ActPart]]:
        """Return both sides of a word, at every place where it stands."""
        for found in re.finditer(rf"\s+{word}\s+", self.text):
            yield self.cut(0, found.start()), self.cut(found.end())

    @property
    def place(self) -> Place:
        """Where it stands."""
        return self.words.at(self.start)


def _run(part: _ActPart, reading: Reading) -> EdgeRun:
    """Return the edges that a part names; a piece without an edge stands for all of it."""
    edges: list[tuple[str, str]] = []
    begin = 0
    for found in (*re.finditer(r"\s+and\s+", part.text), None):
        named = part.cut(begin, found.start() if found else None)
        begin = found.end() if found else begin
        edges += _edges(named, reading)
    return EdgeRun(part.text, tuple(edges), part.place)


def _edges(part: _ActPart, reading: Reading) -> tuple[tuple[str, str], ...]:
    if "." not in part.text:
        return ((_piece(part.text, reading, part.start), ""),)
    try:
        return read_edges(Scalar(part.text, part.place), reading).edges
    except Fault as fault:
        fault.offset += part.start
        raise


def _piece(name: str, reading: Reading, offset: int) -> str:
    folded = fold(name)
    if folded not in reading.kinds:
        raise reading.unknown("pieces", f"there is no piece '{name}'{meant(folded, reading.kinds)}", offset)
    return folded


def _known(part: _ActPart, reading: Reading) -> bool:
    """Whether every name in a part is that of a piece, with or without an edge."""
    names = (name.partition(".")[0] for name in re.split(r"\s+and\s+", part.text))
    return all(fold(name) in reading.kinds for name in names)


def _two_sides(part: _ActPart, word: str, reading: Reading) -> tuple[EdgeRun, EdgeRun] | None:
    """Return what stands before and after a word, at the place where both are pieces, else at its last place."""
    sides = list(part.splits(word))
    if not sides:
        return None
    one, other = next((pair for pair in sides if all(_known(side, reading) for side in pair)), sides[-1])
    return _run(one, reading), _run(other, reading)


def _sewn(part: _ActPart, reading: Reading) -> WrittenAct | None:
    rest = part.after("sew")
    if rest is None or _names_a_step(part, reading):
        return None
    wrong = _WRONG_SIDES.search(rest.text)
    rest = rest.cut(0, wrong.start()) if wrong else rest
    for word in ("to", "on"):
        sides = _two_sides(rest, word, reading)
        if sides is not None:
            mark = "on" if word == "on" else ""
            return WrittenAct("sew", *sides, word=mark, right_sides=wrong is None, place=part.place)
    raise Fault("say what is sewn to what: sew front to back, or sew pocket on back", rest.start)


def _laid(part: _ActPart, reading: Reading) -> WrittenAct | None:
    for verb in ("baste", "lay"):
        rest = part.after(verb)
        if rest is not None:
            sides = _two_sides(rest, "on", reading)
            if sides is None:
                raise Fault(f"say on what: {verb} strap on front.top", rest.start)
            return WrittenAct(verb, *sides, place=part.place)
    return None


def _opening(part: _ActPart, reading: Reading) -> WrittenAct | None:
    rest = part.after("leave open")
    if rest is None:
        return None
    sides = next(rest.splits("of"), None)
    if sides is None:
        raise Fault("say how much and where: leave open 8 in or 20 cm of front.bottom", rest.start)
    length = read_value(Scalar(sides[0].text, sides[0].place), reading)
    good = _FOR_GOOD.search(sides[1].text)
    named = sides[1].cut(0, good.start()) if good else sides[1]
    at = _AT_END.search(named.text)
    end = at[1] if at else ""
    edges = _run(named.cut(0, at.start()) if at else named, reading)
    for _, side in edges.edges:
        if end and end not in _ENDS.get(side, ()):
            told = " or at the ".join(_ENDS[side]) if side in _ENDS else "middle"
            raise Fault(
                f"an opening in the {side} edge lies at the {told} of it", named.start + (at.start(1) if at else 0)
            )
    return WrittenAct("leave open", edges, length=length, place=part.place, end=end, for_good=good is not None)


def _put_in(part: _ActPart, reading: Reading) -> WrittenAct | None:
    rest = part.after(r"put(?:\s+the)?")
    sides = next(iter(rest.splits("in")), None) if rest is not None else None
    if rest is None:
        return None
    if sides is None:
        raise Fault("say where: put the pad in front", rest.start)
    return WrittenAct("put in", _run(sides[1], reading), word=sides[0].text, place=part.place)


def _set(part: _ActPart, reading: Reading) -> WrittenAct | None:
    rest = part.after(r"set(?:\s+the)?")
    if rest is None or _names_a_step(part, reading):
        return None
    sides = next(iter(rest.splits("on")), None)
    if sides is None:
        raise Fault("say where: set snaps on back", rest.start)
    return WrittenAct("set", _run(sides[1], reading), word=sides[0].text, place=part.place)


def _looked_at(part: _ActPart, reading: Reading) -> WrittenAct | None:
    rest = part.after("look at")
    if rest is None:
        return None
    sides = next(iter(rest.splits("after")), None)
    if sides is None:
        return WrittenAct("look", _run(rest, reading), place=part.place)
    step = fold(sides[1].text)
    if step not in reading.steps:
        raise Fault(f"there is no standard step '{step}'{meant(step, reading.steps)}", sides[1].start)
    return WrittenAct("look", _run(sides[0], reading), word=step, place=part.place)


def _one_first(part: _ActPart, reading: Reading) -> WrittenAct | None:
    rest = part.after("take one")
    if rest is None:
        return None
    named = re.search(r"\s+first$", rest.text)
    if named is None:
        raise Fault("say it so: take one front first", rest.start)
    return WrittenAct("one first", _run(rest.cut(0, named.start()), reading), place=part.place)


def _names_a_step(part: _ActPart, reading: Reading) -> bool:
    return _step_of(part, reading) != ""


def _step_of(part: _ActPart, reading: Reading) -> str:
    """Return the standard step that a part begins with, the longest where several do."""
    names = [name for name in reading.steps if re.match(rf"{re.escape(name)}(\s|$)", part.text)]
    return max(names, key=len, default="")


def _standard(part: _ActPart, reading: Reading) -> WrittenAct | None:
    name = _step_of(part, reading)
    if not name:
        return None
    rest = part.cut(len(name))
    rest = rest.after("on") or rest
    if not rest.text:
        return WrittenAct(name, EdgeRun("", (), part.place), place=part.place)
    return WrittenAct(name, _run(rest, reading), place=part.place)


def _plain(part: _ActPart, reading: Reading) -> WrittenAct | None:
    for verb in _LOOSE:
        rest = part.after(verb)
        if rest is not None:
            return WrittenAct(verb, _run(rest, reading), place=part.place)
    return None
