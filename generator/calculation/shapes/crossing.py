"""Whether a closed line crosses itself: its points come in, the place of the first crossing goes out.

Points are whole millionths of an inch, so that every comparison is exact and quick.
"""

from __future__ import annotations

from collections.abc import Sequence

Grain = tuple[int, int]


def meeting(one: tuple[Grain, Grain], other: tuple[Grain, Grain]) -> Grain | None:
    """Return where two stretches of line meet, to the nearest millionth, None where they do not or run alongside.

    Parameters
    ----------
    one, other : tuple of tuple of int
        The ends of each stretch [millionths of an inch].

    Returns
    -------
    tuple of int or None
        The place where they meet [millionths of an inch].

    Examples
    --------
    >>> meeting(((0, 0), (10, 10)), ((0, 10), (10, 0)))
    (5, 5)
    """
    (x, y), (to_x, to_y) = one
    (at_x, at_y), (end_x, end_y) = other
    run, rise = to_x - x, to_y - y
    across, along = end_x - at_x, end_y - at_y
    under = run * along - rise * across
    if under == 0:
        return None
    first = (at_x - x) * along - (at_y - y) * across
    second = (at_x - x) * rise - (at_y - y) * run
    if under < 0:
        under, first, second = -under, -first, -second
    if not (0 <= first <= under and 0 <= second <= under):
        return None
    return x + _nearest(run * first, under), y + _nearest(rise * first, under)


def first_meeting(before: Sequence[Grain], after: Sequence[Grain]) -> tuple[int, int, Grain] | None:
    """Return where two lines that follow each other meet: as late on the one, and as early on the other, as can be.

    Parameters
    ----------
    before, after : sequence of tuple of int
        The points of each line [millionths of an inch].

    Returns
    -------
    tuple or None
        On which stretch of each, counted from 0, and the place; None where they do not meet.

    Examples
    --------
    >>> first_meeting([(0, 0), (10, 0), (20, 0)], [(12, 5), (12, -5)])
    (1, 0, (12, 0))
    """
    for k in range(len(before) - 2, -1, -1):
        for j in range(len(after) - 1):
            at = meeting((before[k], before[k + 1]), (after[j], after[j + 1]))
            if at is not None:
                return k, j, at
    return None


def crosses_itself(spots: Sequence[Grain]) -> Grain | None:
    """Return a place where a closed line crosses or touches itself, None where it does not.

    Parameters
    ----------
    spots : sequence of tuple of int
        Its corners in order; the last is joined to the first [millionths of an inch].

    Returns
    -------
    tuple of int or None
        The place [millionths of an inch].

    Examples
    --------
    A square does not; a bow does in its middle.

    >>> crosses_itself([(0, 0), (10, 0), (10, 10), (0, 10)])
    >>> crosses_itself([(0, 0), (10, 10), (10, 0), (0, 10)])
    (5, 5)
    """
    number = len(spots)
    edges = sorted((min(spots[k][0], spots[(k + 1) % number][0]), k) for k in range(number))
    open_edges: list[int] = []
    for left, k in edges:
        start, end = spots[k], spots[(k + 1) % number]
        open_edges = [j for j in open_edges if max(spots[j][0], spots[(j + 1) % number][0]) >= left]
        for j in open_edges:
            if (j - k) % number in (1, number - 1):
                continue
            found = meeting((start, end), (spots[j], spots[(j + 1) % number]))
            if found is not None:
                return found
        open_edges.append(k)
    return None


def _nearest(top: int, under: int) -> int:
    return (2 * top + under) // (2 * under)


def other_way(around: Sequence[Grain]) -> str:
    """Return what is wrong with the way in which a closed line goes round.

    Parameters
    ----------
    around : sequence of tuple of int
        Its points [millionths of an inch], y growing downward; twice the area between them is worked out exactly.

    Returns
    -------
    str
        That it goes anticlockwise or holds nothing; empty where it goes clockwise.

    Examples
    --------
    >>> other_way([(0, 0), (4, 0), (4, 4)])
    ''
    >>> other_way([(0, 0), (4, 4), (4, 0)])
    'the outline goes round anticlockwise; list its edges clockwise, each from its other end'
    """
    twice = sum(x * to_y - to_x * y for (x, y), (to_x, to_y) in zip(around, [*around[1:], around[0]], strict=True))
    if twice == 0:
        return "the outline holds no cloth, for all its points lie on one line; look at its points"
    return (
        "the outline goes round anticlockwise; list its edges clockwise, each from its other end" if twice < 0 else ""
    )
