"""Weights that prove how short a layout can be: a table of strips comes in, one whole number a kind goes out.

Give every piece a weight so that no strip of height H can hold pieces of more than H in all. Then the weights of all
pieces together are a length that no layout of strips beats. The best weights are the prices of a linear programme
(minimise the heights of the strips, every piece covered), found by letting strips in one by one. Its numbers are
floating point and serve as a guess only; the weights are then made whole and checked exactly against every strip.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import ceil

from generator.calculation.cutting.layout_kinds import Counts, StripTable

SCALE = 2**30
"""The weight that stands for one unit of length."""

_PIVOTS = 2000
_LOOKS = 3000
_CLOSE = 1e-9


@dataclass(frozen=True, slots=True)
class Filling:
    """Pieces for one strip: how many of each kind, what they are worth, and a worth that no filling exceeds."""

    take: list[int]
    worth: float
    most: float


class _Filler:
    """Fills one strip with pieces of the greatest worth, by branch and bound over the kinds."""

    def __init__(self, worths: Sequence[float], across: Sequence[int], counts: Sequence[int], width: int) -> None:
        useful = [
            place for place in range(len(worths)) if counts[place] and worths[place] > 0 and across[place] <= width
        ]
        useful.sort(key=lambda place: (-worths[place] / across[place], place))
        self.places = useful
        self.pieces = [(across[place], counts[place], worths[place]) for place in useful]
        self.take = [0] * len(useful)
        self.best: tuple[float, list[int]] = (0, list(self.take))
        self.looks = 0

    def most(self, start: int, left: int) -> float:
        """Return the worth that the kinds from ``start`` on could fill in, if the last piece might be split."""
        worth = 0.0
        for place in range(start, len(self.pieces)):
            across, count, each = self.pieces[place]
            if across * count > left:
                return worth + each * left / across
            left -= across * count
            worth += each * count
        return worth

    def fill(self, start: int, left: int, worth: float) -> None:
        self.looks += 1
        if worth > self.best[0]:
            self.best = (worth, list(self.take))
        for place in range(start, len(self.pieces)):
            if self.looks > _LOOKS or worth + self.most(place, left) <= self.best[0]:
                return
            across, count, each = self.pieces[place]
            for number in range(min(count, left // across), 0, -1):
                self.take[place] = number
                self.fill(place + 1, left - number * across, worth + number * each)
            self.take[place] = 0


def fullest_strip(worths: Sequence[float], across: Sequence[int], counts: Sequence[int], width: int) -> Filling:
    """Return the filling of one strip that is worth most.

    Parameters
    ----------
    worths : sequence of float
        What a piece of each kind is worth [-].
    across : sequence of int
        The width that a piece of each kind takes [unit].
    counts : sequence of int
        Pieces left of each kind [-].
    width : int
        Width to fill [unit].

    Returns
    -------
    Filling
        The best filling found; ``most`` is a limit that holds also where the search was cut short.

    Examples
    --------
    Width 10, pieces of 6, 5 and 5 worth 7, 5 and 5: the two of 5 are worth 10.

    >>> fullest_strip([7, 5], [6, 5], [1, 2], 10).take
    [0, 2]
    """
    filler = _Filler(worths, across, counts, width)
    filler.fill(0, width, 0)
    worth, chosen = filler.best
    take = [0] * len(worths)
    for place, number in zip(filler.places, chosen, strict=True):
        take[place] = number
    return Filling(take, worth, filler.most(0, width) if filler.looks > _LOOKS else worth)


class _Prices:
    """The linear programme: a basis of strips, kept as the inverse of its matrix."""

    def __init__(self, table: StripTable, counts: Counts) -> None:
        alone = [
            min(count, table.width // table.across(kind.lowest)[place])
            for place, (kind, count) in enumerate(zip(table.kinds, counts, strict=True))
        ]
        size = range(len(counts))
        self.inverse = [[1 / alone[row] if row == column else 0.0 for column in size] for row in size]
        self.levels = [count / number for count, number in zip(counts, alone, strict=True)]
        self.heights = [float(kind.lowest) for kind in table.kinds]

    def prices(self) -> list[float]:
        columns = zip(*self.inverse, strict=True)
        return [sum(height * share for height, share in zip(self.heights, column, strict=True)) for column in columns]

    def enter(self, strip: Sequence[int], height: float) -> bool:
        """Let a strip into the basis; False where rounding leaves no row to take out."""
        change = [sum(share * number for share, number in zip(row, strip, strict=True)) for row in self.inverse]
        rows = [row for row, amount in enumerate(change) if amount > _CLOSE]
        if not rows:
            return False
        out = min(rows, key=lambda row: self.levels[row] / change[row])
        level = self.levels[out] / change[out]
        pivot = [share / change[out] for share in self.inverse[out]]
        for row, amount in enumerate(change):
            if row != out and amount:
                self.inverse[row] = [mine - amount * its for mine, its in zip(self.inverse[row], pivot, strict=True)]
                self.levels[row] -= amount * level
        self.inverse[out], self.levels[out], self.heights[out] = pivot, level, height
        return True


def _guessed(table: StripTable, counts: Counts) -> list[float]:
    """Return the prices at which no strip is worth more than its height, but for rounding."""
    programme = _Prices(table, counts)
    prices = programme.prices()
    settled = turn = 0
    while settled < len(table.heights) and turn < _PIVOTS:
        height = table.heights[turn % len(table.heights)]
        turn += 1
        below = next((place for place, price in enumerate(prices) if price < -_CLOSE), None)
        if below is not None:
            entered = programme.enter([-1 if place == below else 0 for place in range(len(prices))], 0)
        else:
            filling = fullest_strip(prices, table.across(height), counts, table.width)
            if filling.worth <= height * (1 + _CLOSE):
                settled += 1
                continue
            entered = programme.enter(filling.take, height)
        if not entered:
            break
        settled = 0
        prices = programme.prices()
    return prices


def strip_weights(table: StripTable, counts: Counts) -> tuple[int, ...]:
    """Return the weight of a piece of each kind, in units of length times ``SCALE``.

    Parameters
    ----------
    table : StripTable
        The kinds and what they take in strips of each height.
    counts : tuple of int
        Pieces of each kind, one at least [-].

    Returns
    -------
    tuple of int
        Weights such that the pieces of any strip weigh no more than its height [unit / SCALE].

    Notes
    -----
    The pieces of all strips of a layout weigh no more than the heights of the strips, so the weight of all pieces is
    a lower bound of the length. That holds for any part of the pieces too.

    Examples
    --------
    Three squares of 6 on cloth of 10: no two lie side by side, so each weighs its whole height.

    >>> from generator.calculation.cutting.layout_kinds import kind_of
    >>> table = StripTable([kind_of(6, 6, 10, turnable=False)], 10)
    >>> strip_weights(table, (3,)) == (6 * SCALE,)
    True

    References
    ----------
    Derived in the notes above; prices by the revised simplex method with columns made as they are needed, from memory.
    """
    weights = [max(0, int(price * SCALE)) for price in _guessed(table, counts)]
    for height in table.heights:
        most = ceil(fullest_strip(weights, table.across(height), counts, table.width).most)
        if most > height * SCALE:
            weights = [weight * height * SCALE // most for weight in weights]
    return tuple(weights)
