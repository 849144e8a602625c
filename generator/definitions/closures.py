"""What holds pieces together: groups of keys of a project file come in, frozen definitions go out."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated

from generator.definitions.faults import Fault
from generator.definitions.fields import VALUE, Edges, Fact, Finished, Length, Markdown, Quantity, Share, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Scalar, fold
from generator.definitions.readers import Leaf, choice
from generator.definitions.reading import Reading, filled_words, formulas, read_terms
from generator.definitions.values import EdgeRun, Formula
from generator.definitions.vocabulary import CLOSURES, MEETS_HOW, PLEATS_LIE, MeetsHow, PleatsLie


class Meeting(Located):
    """Two edges, or runs of edges, that are sewn to each other.

    ``how`` is how they come to be equally long: without a word they lie flat, or the first is eased in where an
    ``ease`` is told; gathered and pleated the first is longer by any length.
    """

    join: Edges
    to: Edges
    how: Annotated[MeetsHow, choice(MEETS_HOW, "way in which edges meet")] | None = None
    ease: Length | None = None
    pleats: Quantity | None = None
    pleats_lie: Annotated[PleatsLie, choice(PLEATS_LIE, "way in which pleats lie")] = "outward"
    note: Markdown | None = None

    @property
    def drawn(self) -> MeetsHow:
        """How the edges come to be equally long."""
        return self.how or ("eased" if self.ease is not None else "flat")

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Report keys that do not go with how the edges meet."""
        how = found.get("how")
        word = fold(how.text) if isinstance(how, Scalar) else ""
        if word in MEETS_HOW and word != "eased" and "ease" in found.entries:
            told = f"'ease' goes with edges that are eased, and these are {word}; take one of the two out"
            reading.faults.add(found.entries["ease"][0].place, told)
        for key in ("pleats", "pleats lie"):
            if key in found.entries and word != "pleated":
                told = f"'{key}' goes with pleats; write 'how: pleated', or take it out"
                reading.faults.add(found.entries[key][0].place, told)
        if word == "pleated" and "pleats" not in found.entries:
            reading.faults.add(found.place, "'pleats' is missing here: how many there are")


_OF_KINDS = {"shorter by": "elastic", "lap": "elastic", "length": "zip", "tabs": "zip"}
STRIPS = ("ties", "loops")
_BY_ITSELF = ("elastic", "loops")
_WHERE = ("number", "from ends")


def _places(words: Scalar, reading: Reading) -> tuple[Formula, ...]:
    """Return places along an edge: lengths from its start, with commas between."""
    return formulas(words, read_terms(words, reading, between=","), reading, 1)


def _strips(words: Scalar, reading: Reading) -> str:
    """Return the name of a piece that is sewn to an edge as ties or loops."""
    name = fold(filled_words(words))
    kind = reading.kind_of(name)
    if kind is not None and kind.word not in ("tie", "strip"):
        raise Fault(f"'{name}' is {kind.told}; ties and loops are a piece of the kind 'tie' or 'strip'")
    return name


def _tabs(words: Scalar, reading: Reading) -> str:
    """Return the name of a piece that is the tabs of a zip."""
    name = fold(filled_words(words))
    kind = reading.kind_of(name)
    if kind is not None and kind.word != "zip tab":
        raise Fault(f"'{name}' is {kind.told}; the tabs of a zip are a piece of the kind 'zip tab'")
    return name


class Closure(Located):
    """Buttons or the like on one edge, closing onto another; without ``from_ends`` the ends get half an interval.

    An elastic is threaded into one edge and closes onto none: it is ``shorter_by`` a share of it, its ends lap. A zip
    that is told its ``length`` between the stops lies in the middle of its edge; ``tabs`` is the piece at its ends.
    ``at`` are places along the edge, told one by one. Ties and loops are the piece ``strips``, ``each`` so many at a
    place of the edge that they are ``on``.
    """

    kind: Annotated[str, choice(CLOSURES, "kind of closure")]
    number: Quantity = standing("1")
    on: Edges
    onto: Edges | None = None
    overlap: Length | None = None
    diameter: Fact | None = None
    thickness: Fact = standing("1/8 in or 3 mm")
    from_ends: Length | None = None
    width: Fact | None = None
    length: Finished | None = None
    tabs: Annotated[str, Leaf(_tabs, {"type": "string"})] = ""
    at: Annotated[tuple[Formula, ...], Leaf(_places, VALUE)] = ()
    strips: Annotated[str, Leaf(_strips, {"type": "string"})] = ""
    each: Quantity = standing("1")
    shorter_by: Share = Fraction(1, 10)
    lap: Length = standing("1 in or 2.5 cm")
    note: Markdown | None = None

    @property
    def edges(self) -> tuple[EdgeRun, EdgeRun]:
        """The edges that carry it: the one it is on, and the one it closes onto, the same for an elastic."""
        return self.on, self.onto or self.on

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Report keys that do not go with the kind."""
        kind = found.get("kind")
        word = fold(kind.text) if isinstance(kind, Scalar) else ""
        elastic = word == "elastic"
        if word in _BY_ITSELF and "onto" in found.entries:
            told = "an elastic runs in" if elastic else "loops are sewn to"
            told += " one edge, the one after 'on'; take 'onto' out"
            reading.faults.add(found.entries["onto"][0].place, told)
        if word not in _BY_ITSELF and "onto" not in found.entries:
            reading.faults.add(found.place, "'onto' is missing here")
        if word == "loops" and "strips" not in found.entries:
            reading.faults.add(found.place, "'strips' is missing here: the piece that is sewn on as loops")
        _check_places(found, word, reading)
        if elastic and "width" not in found.entries:
            reading.faults.add(found.place, "'width' is missing here: how wide the elastic is")
        for key, kind_of_it in _OF_KINDS.items():
            if word in CLOSURES and word != kind_of_it and key in found.entries:
                article = "an" if kind_of_it == "elastic" else "a"
                told = f"'{key}' goes with {article} {kind_of_it}; take it out"
                reading.faults.add(found.entries[key][0].place, told)


def _check_places(found: Group, word: str, reading: Reading) -> None:
    """Report keys of ties, loops and places that do not go with the kind of closure, or with each other."""
    given = {key: node for key, (node, _) in found.entries.items()}
    for key in ("strips", "each") if word not in STRIPS else ():
        if key in given:
            reading.faults.add(given[key].place, f"'{key}' goes with ties and loops; take it out")
    if "at" not in given:
        return
    for key in _WHERE:
        if key in given:
            told = f"'{key}' does not go with 'at', which tells every place; take one of the two out"
            reading.faults.add(given[key].place, told)
    if word in ("zip", "elastic"):
        reading.faults.add(given["at"].place, f"'at' does not go with {word}; take it out")
