"""The tack rows of a panel: the wish and the sewn tucks come in, where to rule, what to turn and what to cut go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import accumulate

from generator.calculation.panel_ends import end_allowance
from generator.calculation.turning.facing import facing_gaps
from generator.calculation.turning.intervals import DrawIn
from generator.calculation.turning.layers import edge_layers, refuse_too_thick, row_layers
from generator.calculation.turning.row_findings import row_findings
from generator.calculation.turning.row_spread import RowSpread, spread_rows
from generator.calculation.turning.row_wish import RowWish
from generator.calculation.turning.turns import lighter_hand, row_words, starting_hand
from generator.calculation.worked import End, Hand, Row, RowSet, TuckSet
from generator.errors import CalculationError
from generator.lengths import Edition, round_down, round_nearest, round_up

__all__ = ["RowWish", "choose_rows", "cut_along", "length_needed", "row_findings"]


def length_needed(finished_along: Fraction, ends: tuple[End, End]) -> Fraction:
    """Return the length that a panel must have along its tucks when its rows are sewn and it is trimmed.

    The finished length and what the two edges need: the tucks themselves take nothing in this direction.

    Parameters
    ----------
    finished_along : Fraction
        Finished length, H [in].
    ends : tuple[End, End]
        Finish of the top and the bottom edge.

    Returns
    -------
    Fraction
        Length between the trimmed edges [in].

    Raises
    ------
    CalculationError
        If an edge across the tucks is a caught hem: no tuck lies along it.

    Examples
    --------
    16 in with two seams of 1/2 in: 17 in.

    >>> seam = End("seam", Fraction(1, 2))
    >>> length_needed(Fraction(16), (seam, seam))
    Fraction(17, 1)

    References
    ----------
    Derived in the docstring above.
    """
    for name, end in zip(("top", "bottom"), ends, strict=True):
        if end.kind == "caught hem":
            raise CalculationError(
                f"the {name} edge cannot be a caught hem: no tuck lies along it to hold it; write a hem with its width"
            )
    return finished_along + _allowance(ends[0]) + _allowance(ends[1])


def cut_along(rows: RowSet | None, finished_along: Fraction, ends: tuple[End, End], edition: Edition) -> Fraction:
    """Return the cut length of a panel along its tucks.

    What is needed and the extra for draw-in, up to the next mark of the ruler.

    Parameters
    ----------
    rows : RowSet or None
        The rows; None where no tuck is turned.
    finished_along : Fraction
        Finished length, H [in].
    ends : tuple[End, End]
        Finish of the top and the bottom edge.
    edition : Edition
        The ruler.

    Returns
    -------
    Fraction
        Cut length [in].

    Examples
    --------
    15 1/3 in with two seams of 1/2 in are 16 1/3 in, and 16 3/8 in on a ruler of sixteenths.

    >>> from generator.lengths import INCH
    >>> seam = End("seam", Fraction(1, 2))
    >>> cut_along(None, Fraction(46, 3), (seam, seam), INCH)
    Fraction(131, 8)

    References
    ----------
    Derived in the docstring above.
    """
    extra = rows.extra if rows is not None else Fraction(0)
    return round_up(length_needed(finished_along, ends) + extra, edition.mark)


def _allowance(end: End) -> Fraction:
    return end_allowance(end, Fraction(0), Fraction(0))


def choose_rows(wish: RowWish, tucks: TuckSet, edition: Edition) -> RowSet:
    r"""Return the rows of a panel: where to rule them, where they end up, how every tuck lies, what to cut more.

    Worked backwards from the finished length. The extra to cut is the planned draw-in of all intervals, rounded up so
    that the cut lies on a step; never a percentage of the length. Both ends are trimmed alike after the rows, so a row
    that has lost :math:`D_b` above and :math:`D_a` below itself ends up at :math:`y - A - (E + D_b - D_a) / 2` from the
    finished edge, y being where it was ruled, A the allowance and E the extra. The range of a row takes the most above
    with the least below, and the other way round.

    Parameters
    ----------
    wish : RowWish
        What is asked for.
    tucks : TuckSet
        The sewn tucks.
    edition : Edition
        The ruler and the step of the cut.

    Returns
    -------
    RowSet
        The rows, rounded to the ruler, their ranges rounded outward.

    Raises
    ------
    CalculationError
        If the rows cannot be sewn: none fit, too close, no room for a facing pair, too many layers, no tucks to turn.

    Notes
    -----
    A range never reaches beyond the finished edges; where it would, :func:`row_findings` tells of it.

    References
    ----------
    Derived in the docstring above; no published source.
    """
    _check(wish, tucks)
    if tucks.ring:
        wish = replace(wish, plan=replace(wish.plan, lone="out"))
    trimmed = length_needed(wish.finished_along, wish.ends)
    spread = spread_rows(wish, tucks.depths, edition)
    facing_gaps(tucks, (*spread.turns, spread.top, spread.bottom))
    planned = sum((drawn.most for drawn in spread.draw_ins), Fraction(0))
    extra = round_up(trimmed + planned, edition.cut_step) - trimmed if planned else Fraction(0)
    return RowSet(
        plan=wish.plan.name,
        repeat=wish.plan.cell,
        rows=_rows(wish, spread, extra, edition),
        spacing=wish.spacing,
        first=round_nearest(spread.first, edition.mark),
        top=spread.top,
        bottom=spread.bottom,
        extra=extra,
        draw_in_least=round_down(sum((drawn.least for drawn in spread.draw_ins), Fraction(0)), edition.mark),
        draw_in_most=round_up(planned, edition.mark),
        layers=_thickest(wish, tucks, spread),
        measured=wish.measured_draw_in is not None,
    )


def _check(wish: RowWish, tucks: TuckSet) -> None:
    least, most = wish.first
    if tucks.count == 0:
        raise CalculationError("a panel without tucks has nothing to turn; take its rows out")
    if tucks.ring and not wish.plan.ring_rule.allows(tucks.count):
        raise CalculationError(
            f"{tucks.count} tucks do not close the plan '{wish.plan.name}' on itself; "
            f"the number must be {wish.plan.ring_rule}"
        )
    if wish.finished_along <= 0 or wish.spacing <= 0:
        raise CalculationError("the finished length and the spacing of the rows must be more than nothing")
    if least < 0 or most < least:
        raise CalculationError("the range of the first row must run from nothing or more to at least as much")
    if wish.measured_draw_in is not None and wish.measured_draw_in < 0:
        raise CalculationError("a measured draw-in is less than nothing; give what one interval lost, or nothing")


def _rows(wish: RowWish, spread: RowSpread, extra: Fraction, edition: Edition) -> tuple[Row, ...]:
    allowance = _allowance(wish.ends[0])
    spare = extra - sum(drawn.most for drawn in spread.draw_ins) if extra else Fraction(0)
    first = round_nearest(allowance + spare / 2 + spread.first_ruled[0], edition.mark)
    lost = _lost(spread.draw_ins)
    rows = []
    for number, (offset, turns) in enumerate(zip(spread.offsets, spread.turns, strict=True), 1):
        ruled = first + offset
        least, most = _range(ruled - allowance - extra / 2, lost, number)
        start = _start(wish, number, (first, ruled), allowance + wish.finished_along + _allowance(wish.ends[1]) + extra)
        rows.append(
            Row(
                number=number,
                ruled=ruled,
                least=max(Fraction(0), round_down(least, edition.mark)),
                most=min(wish.finished_along, round_up(most, edition.mark)),
                start=start,
                turns=turns,
                words=row_words(turns, start),
            )
        )
    return tuple(rows)


def _start(wish: RowWish, number: int, ruled: tuple[Fraction, Fraction], cut: Fraction) -> Hand:
    """Return where a row begins; ``ruled`` is where row 1 and where this row is ruled, from the top cut edge [in]."""
    if wish.start == "by bulk":
        # Begun at the right, row 1 has more under the arm than any other; where that lies flat, all begin alike.
        return lighter_hand(ruled[1], cut) if cut - ruled[0] > wish.flat else "right"
    return starting_hand(number, wish.start, back_and_forth=wish.back_and_forth)


def _lost(draw_ins: Sequence[DrawIn]) -> tuple[tuple[Fraction, Fraction], ...]:
    """What is lost from the top edge to each row, at least and at most, and to the bottom edge."""
    least = accumulate((drawn.least for drawn in draw_ins), initial=Fraction(0))
    most = accumulate((drawn.most for drawn in draw_ins), initial=Fraction(0))
    return tuple(zip(least, most, strict=True))


def _range(ruled: Fraction, lost: Sequence[tuple[Fraction, Fraction]], number: int) -> tuple[Fraction, Fraction]:
    """Where a row can end up: half of what is lost above it moves it up, half of what is lost below moves it down."""
    (up_least, up_most), (all_least, all_most) = lost[number], lost[-1]
    down_least, down_most = all_least - up_least, all_most - up_most
    return ruled - (up_most - down_least) / 2, ruled - (up_least - down_most) / 2


def _thickest(wish: RowWish, tucks: TuckSet, spread: RowSpread) -> int:
    at_row = {turns: row_layers(tucks, turns) for turns in spread.turns}
    for number, turns in enumerate(spread.turns, 1):
        refuse_too_thick(f"row {number}", at_row[turns], wish.limits)
    most = max(at_row.values())
    for name, turns, end in (("top", spread.top, wish.ends[0]), ("bottom", spread.bottom, wish.ends[1])):
        if turns:
            layers = edge_layers(row_layers(tucks, turns), end)
            refuse_too_thick(f"the {name} edge", layers, wish.limits)
            most = max(most, layers)
    return most
