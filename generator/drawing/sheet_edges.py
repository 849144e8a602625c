"""How an edge is told in a diagram: its finish comes in, a few words go out."""

from __future__ import annotations

from generator.calculation.worked import End
from generator.lengths import Edition, say_length

_PLAIN = {"bound": "bound", "fold": "on the fold", "selvage": "selvage", "raw": "raw edge", "caught hem": "caught hem"}


def edge_words(end: End, edition: Edition) -> str:
    """Return the finish of an edge in a few words.

    Examples
    --------
    >>> from fractions import Fraction
    >>> from generator.lengths import INCH
    >>> edge_words(End("hem", Fraction(1, 4), Fraction(1)), INCH), edge_words(End("fold"), INCH)
    ('hem 1/4 in, then 1 in', 'on the fold')
    """
    if end.kind in _PLAIN:
        return _PLAIN[end.kind]
    first, second = say_length(end.first, edition), say_length(end.second, edition)
    if end.kind == "hem" and end.second:
        return f"hem {first} twice" if end.first == end.second else f"hem {first}, then {second}"
    return f"{end.kind} {first}"
