"""Plain tucks that are pressed one way for good: a word and a number of tucks come in, every tuck's turn goes out.

They lie as if one row turned them, over their whole length: at the margins, in layers and where an edge holds them.
Nothing swings, so nothing draws in.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import groupby

from generator.calculation.turning.facing import facing_gaps
from generator.calculation.worked import TuckSet, Turn
from generator.errors import CalculationError

STANDING = "standing"
_WAYS = {"left": Turn.LEFT, "right": Turn.RIGHT}
# On the table the lower edge of what hangs by its left edge lies at the right.
_LOWER = {"left": Turn.RIGHT, "right": Turn.LEFT}
_OTHER = {Turn.LEFT: Turn.RIGHT, Turn.RIGHT: Turn.LEFT}


def pressed_turns(way: str, count: int, hangs_by: str = "top") -> tuple[Turn, ...]:
    """Return how each of a number of plain tucks lies when they are pressed.

    To the left or right all lie alike. Outward the left half lies to the left and the right half to the right, inward
    the other way; of an odd number the middle one lies to the right. Standing tucks are not pressed at all. What hangs
    by its left or right edge may be pressed up or down, as it hangs.

    Parameters
    ----------
    way : str
        left, right, up, down, outward, inward or standing.
    count : int
        Number of tucks, n [-].
    hangs_by : str
        The edge by which the finished thing hangs, as it lies on the table.

    Returns
    -------
    tuple[Turn, ...]
        One turn a tuck, from the left as it lies on the table; empty where they stand.

    Raises
    ------
    CalculationError
        If there is no such way.

    Examples
    --------
    Five tucks that leave the middle: two to the left, the middle one and two more to the right.

    >>> "".join(turn.value for turn in pressed_turns("outward", 5))
    '<<>>>'
    >>> "".join(turn.value for turn in pressed_turns("inward", 4)), pressed_turns("standing", 4)
    ('>><<', ())

    Of a blind that hangs by its left edge the lower edge lies at the right.

    >>> "".join(turn.value for turn in pressed_turns("down", 2, "left"))
    '>>'

    References
    ----------
    NIMI, *CITS Dress Making, Trade Practical*, vol. 2, p. 207 (sets that face the middle or leave it); where
    the middle one lies: common practice, no source.
    """
    if way == STANDING:
        return ()
    if way in ("up", "down") and hangs_by in _LOWER:
        lower = _LOWER[hangs_by]
        return (lower if way == "down" else _OTHER[lower],) * count
    if way in _WAYS:
        return (_WAYS[way],) * count
    if way not in ("outward", "inward"):
        raise CalculationError(f"tucks cannot be pressed '{way}'; write left, right, outward, inward or standing")
    first, last = (Turn.LEFT, Turn.RIGHT) if way == "outward" else (Turn.RIGHT, Turn.LEFT)
    middle = (Turn.RIGHT,) * (count % 2)
    return (first,) * (count // 2) + middle + (last,) * (count // 2)


def spaces_shown(tucks: TuckSet, turns: Sequence[Turn]) -> tuple[Fraction, ...]:
    r"""Return what shows between neighbours that lie as pressed.

    A tuck lies with its whole depth on the pitch that it is turned to, so of each pitch shows
    :math:`v = p - d` of every tuck that lies on it: of none where two are back to back, of both where they face.

    Parameters
    ----------
    tucks : TuckSet
        The sewn tucks.
    turns : Sequence[Turn]
        How each lies.

    Returns
    -------
    tuple of Fractions
        One fewer than tucks [in]; less than nothing where a tuck covers the next stitching, or two folds overlap.

    Raises
    ------
    CalculationError
        If two face each other and one is deeper than their pitch, so that it would lie over the other's stitching.

    References
    ----------
    Derived in the docstring above, as :func:`generator.calculation.panel.tucks.visible_space`.
    """
    facing_gaps(tucks, [turns])
    return tuple(
        pitch
        - (tucks.depths[place] if turns[place] is Turn.RIGHT else 0)
        - (tucks.depths[place + 1] if turns[place + 1] is Turn.LEFT else 0)
        for place, pitch in enumerate(tucks.pitches)
    )


def pressed_words(turns: Sequence[Turn], hangs_by: str = "top") -> str:
    """Return which way tucks are pressed on the table, and up or down where that differs: all, or which of them.

    Examples
    --------
    >>> pressed_words(pressed_turns("left", 3))
    'all to the left'
    >>> pressed_words(pressed_turns("outward", 5))
    'tucks 1 and 2 to the left, tucks 3 to 5 to the right'
    >>> pressed_words(pressed_turns("inward", 2))
    'tuck 1 to the right, tuck 2 to the left'
    >>> pressed_words(pressed_turns("down", 3, "left"), "left")
    'all to the right, which is down as it hangs'
    """
    sides = {Turn.LEFT: "to the left", Turn.RIGHT: "to the right"}
    if hangs_by in _LOWER:
        sides = {
            turn: f"{words}, which is {'down' if turn is _LOWER[hangs_by] else 'up'} as it hangs"
            for turn, words in sides.items()
        }
    if len(turns) == 1:
        return sides[turns[0]]
    if len(set(turns)) == 1:
        return f"all {sides[turns[0]]}"
    told, first = [], 1
    for turn, alike in groupby(turns):
        last = first + len(list(alike)) - 1
        told.append(f"{_numbers(first, last)} {sides[turn]}")
        first = last + 1
    return ("; " if hangs_by in _LOWER else ", ").join(told)


def _numbers(first: int, last: int) -> str:
    if first == last:
        return f"tuck {first}"
    return f"tucks {first} {'and' if last == first + 1 else 'to'} {last}"
