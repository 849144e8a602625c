"""Where breadths of cloth are joined for a panel wider than the cloth: tucks and turns come in, breadths go out.

A join lies at the foot of a tuck, on the stitching line, so that a tuck turned over it covers it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise, takewhile
from math import lcm

from generator.calculation.worked import BreadthJoin, Hand, TuckSet, Turn
from generator.errors import CalculationError
from generator.lengths import INCH, Edition, round_nearest, say_length

_CLEARANCE = Fraction(1, 8)
"""An allowance folded into a tuck stays at least this far from its fold [in]."""

_FEET: tuple[tuple[Hand, Turn, int], ...] = (("left", Turn.LEFT, -1), ("right", Turn.RIGHT, 1))
"""The feet of a tuck: the turn that covers each, and on which side of the fold mark it lies."""


@dataclass(frozen=True, slots=True)
class _Foot:
    """A place where breadths may be joined: ``tuck`` counts from 1, ``at`` is from the left cut edge [in].

    ``covered`` is in how many rows the tuck lies over it, ``hidden`` whether in all of them and at the edges too.
    """

    at: Fraction
    tuck: int
    hand: Hand
    covered: int
    hidden: bool
    worse: bool


_Rank = tuple[int, int, int, int]
"""Breadths, joins that show, joins at the worse foot of their tuck, sum of the squared breadths: the least is best.

The breadths of equally many joins come to the same sum, so their squares are least where they are most equal.
"""
_Chain = tuple[_Rank, tuple[_Foot, ...], int]
"""A rank, the joins from the left, and the place of the last of them."""


def breadth_joins(
    tucks: TuckSet,
    turns: tuple[tuple[Turn, ...], ...],
    width: Fraction,
    allowance: Fraction,
    *,
    edition: Edition = INCH,
    held: tuple[tuple[Turn, ...], ...] = (),
    pressed: bool = False,
) -> tuple[tuple[Fraction, ...], tuple[BreadthJoin, ...]]:
    r"""Return the breadths to cut and the joins between them for a panel wider than the cloth.

    A join lies where a tuck leaves the panel: :math:`J = f_i - u_i/2` at its left foot, :math:`f_i + u_i/2` at its
    right. A left foot is covered only in rows where the tuck turns left, a right foot only where it turns right, so of
    each tuck the foot covered in more rows is used. A join never lies at a fold, on a visible space, or at a tuck that
    holds a caught hem. Breadths are as few as the cloth allows; among those choices the one with most hidden joins is
    taken, among these the one with the most equal breadths. With allowances a the breadths are
    :math:`J_1 + a,\; J_k - J_{k-1} + 2a,\; L - J_{last} + a`.

    Parameters
    ----------
    tucks : TuckSet
        The tucks across the panel, worked out on the joined cloth of width L [in].
    turns : tuple of tuple of Turn
        The turns of all tucks row by row [-]; empty without rows.
    width : Fraction
        Usable width of the cloth [in].
    allowance : Fraction
        Seam allowance of a join, a [in].
    edition : Edition
        The unit in which a fault is told.
    held : tuple of tuple of Turn
        The turns at the top and the bottom edge, where those hold the tucks; they hide a seam as rows do, and are none.
    pressed : bool
        Whether the one line of turns is how the tucks are pressed, and no row.

    Returns
    -------
    tuple of (tuple of Fraction, tuple of BreadthJoin)
        Breadths to cut from the left [in], together L + 2a for each join, and the joins between them. A panel that fits
        the cloth has one breadth and no join.

    Raises
    ------
    CalculationError
        If the allowance is not positive, or from one join no further foot lies within the width of the cloth.

    Notes
    -----
    Allowances no wider than the tuck's depth less 1/8 in go into the tuck, five layers in all; wider ones are pressed
    open. Where both feet are covered equally, either may be used; the worse foot is used only where
    that saves a breadth.

    Examples
    --------
    Three tucks 1/2 in deep, marked at 3, 6 and 9 on 12 in of cloth, all turned left in every row; cloth of 9 in. One
    join: its left breadth J + 1/4 and its right breadth 12 - J + 1/4 must both be 9 at most. Of the left feet 2 1/2,
    5 1/2 and 8 1/2 the first leaves too much, and the second is nearest to the middle: 5 3/4 and 6 3/4.

    >>> from generator.calculation.panel.marks import laid_out
    >>> from generator.calculation.worked import End
    >>> half, one, two, seam = Fraction(1, 2), Fraction(1), Fraction(2), End("seam", Fraction(1, 2))
    >>> tucks = laid_out((half,) * 3, (one,) * 3, (two,) * 2, (seam, seam), (two, two))
    >>> breadths, joins = breadth_joins(tucks, ((Turn.LEFT,) * 3,), Fraction(9), Fraction(1, 4))
    >>> breadths, joins[0].at, joins[0].hidden
    ((Fraction(23, 4), Fraction(27, 4)), Fraction(11, 2), True)

    References
    ----------
    Derived above; where allowances go is common practice, no source.
    """
    if tucks.cut <= width:
        return (tucks.cut,), ()
    if allowance <= 0:
        raise CalculationError("breadths are joined with a seam allowance of more than 0")
    feet = _feet(tucks, turns, tuple(edge for edge in held if edge))
    cloth = _in_parts(tucks.cut, width, allowance, feet)
    chosen = cloth.joins(feet)
    if chosen is None:
        raise CalculationError(cloth.fault(feet, edition))
    return cloth.breadths(chosen), tuple(
        _described(foot, tucks, 0 if pressed else len(turns), allowance) for foot in chosen
    )


def inner_fold_joins(
    cut: Fraction, folds: Sequence[tuple[Fraction, Fraction]], width: Fraction, allowance: Fraction, mark: Fraction
) -> tuple[Fraction, ...] | None:
    """Return the lengths that a pleated strip is joined from, so that each join lies at an inner fold of a pleat.

    A fold that is laid on another line hides the cloth between them; in its middle lies the inner fold, where a join
    does not show. Lengths are as few as the cloth allows, and as equal as these places allow.

    Parameters
    ----------
    cut : Fraction
        Cut length of the whole strip [in].
    folds : sequence of (Fraction, Fraction)
        The line of each fold and the line it is laid on, from the left cut edge [in].
    width : Fraction
        Usable width of the cloth [in].
    allowance : Fraction
        Seam allowance of a join [in].
    mark : Fraction
        What the ruler shows [in]; joins lie on it.

    Returns
    -------
    tuple of Fraction or None
        The lengths from the left [in]; None where the inner folds lie too far apart for the cloth.

    Examples
    --------
    20 in with inner folds at 5, 9 and 14 on cloth of 12: at 9 it is nearest to halves, 9 1/2 and 11 1/2.

    >>> folds = [(Fraction(4), Fraction(6)), (Fraction(8), Fraction(10)), (Fraction(13), Fraction(15))]
    >>> half = Fraction(1, 2)
    >>> inner_fold_joins(Fraction(20), folds, Fraction(12), half, half)
    (Fraction(19, 2), Fraction(23, 2))

    References
    ----------
    Derived above; that a join is hidden inside a pleat is common practice, no source.
    """
    places = sorted({round_nearest((fold + onto) / 2, mark) for fold, onto in folds})
    feet = [_Foot(place, 0, "left", 0, hidden=True, worse=False) for place in places if 0 < place < cut]
    cloth = _in_parts(cut, width, allowance, feet)
    chosen = cloth.joins(feet)
    return None if chosen is None else cloth.breadths(chosen)


def _feet(tucks: TuckSet, turns: tuple[tuple[Turn, ...], ...], held: tuple[tuple[Turn, ...], ...]) -> list[_Foot]:
    """Return the feet where breadths may be joined, from the left."""
    hemmed = {1} if tucks.left.kind == "caught hem" else set()
    hemmed |= {tucks.count} if tucks.right.kind == "caught hem" else set()
    feet = []
    for number, (mark, take_up) in enumerate(zip(tucks.marks, tucks.take_ups, strict=True), 1):
        if number in hemmed:
            continue
        lines = {hand: sum(line[number - 1] is turn for line in (*turns, *held)) for hand, turn, _ in _FEET}
        for hand, turn, side in _FEET:
            covered = sum(row[number - 1] is turn for row in turns)
            hidden = bool(turns) and lines[hand] == len(turns) + len(held)
            at, worse = mark + side * take_up / 2, lines[hand] < max(lines.values())
            feet.append(_Foot(at, number, hand, covered, hidden=hidden, worse=worse))
    return sorted(feet, key=lambda foot: foot.at)


@dataclass(frozen=True, slots=True)
class _JoinedCloth:
    """The joined cloth, the cloth it is cut from and the allowance of a join, in parts of which ``unit`` are an inch.

    All places are whole numbers of these parts, and whole numbers are compared much faster than fractions.
    """

    cut: int
    width: int
    allowance: int
    unit: int

    def place(self, foot: _Foot) -> int:
        """Return where a foot lies, in parts."""
        return int(foot.at * self.unit)

    def breadth(self, left: int, right: int) -> int:
        """Return what to cut between two places, in parts: an allowance at each that is a join."""
        joins = (left > 0) + (right < self.cut)
        return right - left + joins * self.allowance

    def breadths(self, feet: Sequence[_Foot]) -> tuple[Fraction, ...]:
        """Return what to cut from the left, joined at some feet [in]."""
        places = [0, *map(self.place, feet), self.cut]
        return tuple(Fraction(self.breadth(left, right), self.unit) for left, right in pairwise(places))

    def joins(self, feet: Sequence[_Foot]) -> tuple[_Foot, ...] | None:
        """Return the best joins, or None where the feet lie too far apart."""
        chains: list[_Chain] = [((0, 0, 0, 0), (), 0)]
        for foot in feet:
            place = self.place(foot)
            reached = self._best(chains, place)
            if reached is not None:
                (breadths, shown, worse, squares), chain, _ = reached
                rank = (breadths, shown + (not foot.hidden), worse + foot.worse, squares)
                chains.append((rank, (*chain, foot), place))
        whole = self._best(chains, self.cut)
        return None if whole is None else whole[1]

    def _best(self, chains: Sequence[_Chain], right: int) -> _Chain | None:
        """Return the best chain of joins continued by a breadth that ends at a place."""
        # Going back from the right, no chain beyond the width of the cloth can be continued; the one of no joins is
        # asked by itself, for the left edge takes no allowance.
        back = (self._continued(chain, right) for chain in reversed(chains[1:]))
        near = [chain for chain in takewhile(lambda chain: chain is not None, back) if chain is not None]
        whole = self._continued(chains[0], right)
        found = ([whole] if whole is not None else []) + near[::-1]
        return min(found, key=lambda entry: entry[0], default=None)

    def _continued(self, chain: _Chain, right: int) -> _Chain | None:
        """Return a chain of joins with one breadth more, or None where the cloth is too narrow for it."""
        (breadths, shown, worse, squares), feet, left = chain
        breadth = self.breadth(left, right)
        return (
            ((breadths + 1, shown, worse, squares + breadth * breadth), feet, left) if breadth <= self.width else None
        )

    def fault(self, feet: Sequence[_Foot], edition: Edition) -> str:
        """Return what to say where no chain of joins reaches the right edge."""
        start, name = 0, "the left cut edge"
        for foot in feet:
            if self.breadth(start, self.place(foot)) > self.width:
                end, goal = self.place(foot), f"the {foot.hand} foot of tuck {foot.tuck}"
                break
            start, name = self.place(foot), f"the {foot.hand} foot of tuck {foot.tuck}"
        else:
            end, goal = self.cut, "the right cut edge"
        needed, width = (Fraction(parts, self.unit) for parts in (self.breadth(start, end), self.width))
        return (
            f"breadths of cloth can be joined at the foot of a tuck only: from {name} to {goal} a breadth of "
            f"{say_length(needed, edition)} is needed, but the cloth is only "
            f"{say_length(width, edition)} wide; take a wider cloth, a closer spacing or a narrower join allowance"
        )


def _in_parts(cut: Fraction, width: Fraction, allowance: Fraction, feet: Sequence[_Foot]) -> _JoinedCloth:
    """Return a cloth in the largest parts of an inch that all its lengths and feet are whole numbers of."""
    unit = lcm(*(length.denominator for length in (cut, width, allowance, *(foot.at for foot in feet))))
    return _JoinedCloth(int(cut * unit), int(width * unit), int(allowance * unit), unit)


def _described(foot: _Foot, tucks: TuckSet, rows: int, allowance: Fraction) -> BreadthJoin:
    """Return a join with the words that say how to sew it."""
    where = f"Join at the {foot.hand} foot of tuck {foot.tuck}"
    if foot.hidden:
        text = f"{where}, which hides the seam{' in every row' if rows else ''}."
    else:
        of_rows = f"in {foot.covered} of {rows} rows" if foot.covered < rows else "in every row, but not at both edges"
        rest = f" The tuck covers the seam {of_rows}." if rows else ""
        text = f"{where}, in the ditch: stitch the tuck a thread outside the seam.{rest}"
    into_tuck = allowance <= tucks.depths[foot.tuck - 1] - _CLEARANCE
    pressed = "Press both allowances into the tuck." if into_tuck else "Press the allowances open."
    return BreadthJoin(foot.tuck, foot.hand, foot.at, foot.covered, rows, foot.hidden, f"{text} {pressed}", into_tuck)
