"""What holds pieces together: groups of keys of a project file come in, frozen definitions go out."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated

from generator.definitions.faults import Fault
from generator.definitions.fields import Edges, Fact, Finished, Length, Markdown, Quantity, Share, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Scalar, fold
from generator.definitions.readers import Leaf, choice
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import EdgeRun
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
        if elastic and "onto" in found.entries:
            told = "an elastic runs in one edge, the one after 'on'; take 'onto' out"
            reading.faults.add(found.entries["onto"][0].place, told)
        if not elastic and "onto" not in found.entries:
            reading.faults.add(found.place, "'onto' is missing here")
        if elastic and "width" not in found.entries:
            reading.faults.add(found.place, "'width' is missing here: how wide the elastic is")
        for key, kind_of_it in _OF_KINDS.items():
            if word in CLOSURES and word != kind_of_it and key in found.entries:
                article = "an" if kind_of_it == "elastic" else "a"
                told = f"'{key}' goes with {article} {kind_of_it}; take it out"
                reading.faults.add(found.entries[key][0].place, told)
