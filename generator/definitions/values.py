"""What the values of a project file become: formulas, ranges, finishes, numbers of tucks; exact and frozen."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from generator.definitions.terms import Lookup, Term, names_in, worked_out
from generator.errors import Place
from generator.lengths import Edition, say_length, write_number

FinishKind = Literal[
    "seam",
    "french seam",
    "felled seam",
    "faced",
    "stitched and trimmed",
    "sealed and trimmed",
    "hem",
    "rolled hem",
    "casing",
    "caught hem",
    "bound",
    "turnover",
    "fold",
    "selvage",
    "raw",
]
NumberRule = Literal["any", "even", "odd", "multiple", "exactly"]


@dataclass(frozen=True, slots=True)
class Formula:
    """A length or a number, for both editions, that may use measures.

    ``dimension`` is 0 for a plain number and 1 for a length. ``names`` are the measures it uses, those of a piece as
    'front.cut across'.
    """

    text: str
    place: Place
    dimension: int
    inch: Term
    metric: Term

    @property
    def names(self) -> tuple[str, ...]:
        """Every name that the formula uses in either edition."""
        return names_in(self.inch, self.metric)

    def value(self, edition: Edition, lookup: Lookup) -> Fraction:
        """Return the exact value in an edition, lengths in inches; ``lookup`` gives the value of a name."""
        return worked_out(self.inch if edition.name == "inch" else self.metric, edition, lookup)

    def fixed(self, edition: Edition) -> Fraction:
        """Return the exact value of a formula without names."""
        return self.value(edition, _no_name)


def _no_name(name: str) -> Fraction:
    raise KeyError(name)


@dataclass(frozen=True, slots=True)
class Range:
    """A wish with two ends; one length alone has both ends equal."""

    least: Formula
    most: Formula


@dataclass(frozen=True, slots=True)
class Finish:
    """How an edge is finished: its kind and the widths as written.

    A seam without a width takes the default seam. A hem of one width is turned twice by that width; a hem of two
    widths is turned by the first and then by the second.
    """

    kind: FinishKind
    widths: tuple[Formula, ...]
    place: Place


@dataclass(frozen=True, slots=True)
class CountWish:
    """How many tucks or rows are wanted; ``value`` belongs to the rules 'multiple' and 'exactly'."""

    rule: NumberRule
    value: Formula | None = None


@dataclass(frozen=True, slots=True)
class Text:
    """A Markdown text whose placeholders have been read; ``parts`` are its pieces in order.

    ``text`` is the text as written.
    """

    text: str
    place: Place
    parts: tuple[str | Formula, ...] = field(default=(), repr=False)

    @property
    def names(self) -> tuple[str, ...]:
        """Every name that the placeholders use."""
        used = (name for part in self.parts if isinstance(part, Formula) for name in part.names)
        return tuple(dict.fromkeys(used))

    def filled(self, edition: Edition, lookup: Callable[[str], Fraction]) -> str:
        """Return the text with every placeholder filled: lengths with their unit, numbers plain."""
        return "".join(part if isinstance(part, str) else _said(part, edition, lookup) for part in self.parts)


def _said(formula: Formula, edition: Edition, lookup: Callable[[str], Fraction]) -> str:
    value = formula.value(edition, lookup)
    return say_length(value, edition) if formula.dimension == 1 else write_number(value)


@dataclass(frozen=True, slots=True)
class EdgeRun:
    """One or more edges in a row, as (piece, edge) pairs: 'end panel.top and plain middle.top'."""

    text: str
    edges: tuple[tuple[str, str], ...]
    place: Place

    def __str__(self) -> str:
        return self.text
