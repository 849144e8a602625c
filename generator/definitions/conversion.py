"""A length given for one edition only: its term comes in, the one for the other edition goes out.

Facts (the width of a cloth, a button) convert exactly. A design length becomes the nearest one that a person finds on
the other ruler, by what it is for, and a note says so; converted inches are never something to mark.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction
from typing import Literal

from generator.definitions.terms import Call, Constant, Sum, Term
from generator.lengths import CENTIMETRE, MILLIMETRE, Edition, round_nearest, say_length

Purpose = Literal["general", "finished", "seam", "depth", "spacing", "fact"]
Note = Callable[[str], None]

INCH_UNITS = frozenset({"in", "ft", "yd"})
# Allowances that go together in practice; common practice, no source.
_SEAMS = (
    (Fraction(1, 4), 7 * MILLIMETRE),
    (Fraction(3, 8), CENTIMETRE),
    (Fraction(1, 2), 15 * MILLIMETRE),
    (Fraction(5, 8), 15 * MILLIMETRE),
)


def edition_of(unit: str) -> str:
    """Return the name of the edition that a unit belongs to."""
    return "inch" if unit in INCH_UNITS else "metric"


def converted(term: Term, edition: Edition, purpose: Purpose, note: Note) -> Term:
    """Return a term for an edition whose units it does not use; every length in it is converted by itself.

    Examples
    --------
    1 1/2 in is 38.1 mm; spacing goes to the nearest 5 mm, which is 40 mm.

    >>> from generator.lengths import METRIC
    >>> told = []
    >>> spacing = Constant(Fraction(3, 2), 1, "in", "1 1/2 in")
    >>> converted(spacing, METRIC, "spacing", told.append).value == 4 * CENTIMETRE
    True
    >>> told
    ['1 1/2 in has no metric value; 4 cm is used']
    """
    if isinstance(term, Constant):
        return _constant(term, edition, purpose, note)
    if isinstance(term, Sum):
        left, right = (converted(part, edition, purpose, note) for part in (term.left, term.right))
        return replace(term, left=left, right=right)
    if isinstance(term, Call):
        return replace(term, values=tuple(converted(part, edition, purpose, note) for part in term.values))
    return term


def _constant(term: Constant, edition: Edition, purpose: Purpose, note: Note) -> Constant:
    if purpose == "fact" or not term.unit or term.value == 0 or edition_of(term.unit) == edition.name:
        return term
    value = findable(term.value, edition, purpose)
    note(f"{term.text} has no {edition.name} value; {say_length(value, edition)} is used")
    return replace(term, value=value, unit=edition.unit)


def findable(length: Fraction, edition: Edition, purpose: Purpose) -> Fraction:
    """Return the length nearest to a design length that is found on the ruler of an edition [in].

    Examples
    --------
    >>> from generator.lengths import INCH, METRIC
    >>> findable(Fraction(3, 8), METRIC, "seam") == CENTIMETRE
    True
    >>> findable(CENTIMETRE, INCH, "depth")
    Fraction(3, 8)
    """
    if purpose == "seam":
        for inches, metric in _SEAMS:
            if edition.name == "metric" and length == inches:
                return metric
            if edition.name == "inch" and length == metric:
                return inches
    step = _metric_step(length, purpose) if edition.name == "metric" else _inch_step(length, purpose)
    return max(round_nearest(length, step), step)


def _metric_step(length: Fraction, purpose: Purpose) -> Fraction:
    if purpose == "depth" or (purpose != "spacing" and length < Fraction(1, 2)):
        return MILLIMETRE
    if purpose == "finished" or (purpose == "general" and length >= 4):
        return CENTIMETRE
    return 5 * MILLIMETRE


def _inch_step(length: Fraction, purpose: Purpose) -> Fraction:
    if purpose == "depth" or length < Fraction(1, 2):
        return Fraction(1, 16)
    if purpose == "finished" or (purpose == "general" and length >= 4):
        return Fraction(1, 2)
    return Fraction(1, 4) if purpose == "spacing" and length >= 1 else Fraction(1, 8)
