"""Stripes and checks as the grid for tucks: a repeat comes in, a spacing and the colours of a tuck go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.striped import Stripe, TuckColours
from generator.errors import CalculationError
from generator.lengths import round_nearest, round_up

MOST_REPEATS = 500


def spacing_on_repeat(wish: Fraction, repeat: Fraction) -> Fraction:
    """Return the spacing nearest to a wish at which every fold falls on the same place of the stripes.

    Folds meet the same stripe again after whole repeats only, so the spacing is a multiple of the repeat, one at least.

    Parameters
    ----------
    wish : Fraction
        The spacing wished for [in].
    repeat : Fraction
        From a stripe to the next like it, R [in].

    Returns
    -------
    Fraction
        The spacing, a multiple of R [in]; exactly between two, the wider.

    Raises
    ------
    CalculationError
        If the repeat is not positive.

    Examples
    --------
    Repeat 1/2 in, wish 1 5/8: 1 1/2 is nearer than 2. A wish below the repeat gives one repeat.

    >>> spacing_on_repeat(Fraction(13, 8), Fraction(1, 2))
    Fraction(3, 2)
    >>> spacing_on_repeat(Fraction(1, 8), Fraction(1, 2))
    Fraction(1, 2)

    References
    ----------
    Derived above.
    """
    if repeat <= 0:
        raise CalculationError(
            "the repeat of the stripes must be more than 0; measure from a stripe to the next like it"
        )
    return max(repeat, round_nearest(wish, repeat))


def side_by_side(across: Fraction, repeat: Fraction, width: Fraction) -> tuple[Fraction, Fraction]:
    r"""Return how pieces that begin on the same stripe lie side by side: the room beside each, and the width for them.

    Wherever the stripes lie at the selvage, the stripe wanted comes up within one repeat. From there each piece takes
    whole repeats, :math:`\lceil a / R \rceil R`, and the last no more than itself. So n pieces fit a width W where
    :math:`R + (n - 1) \lceil a / R \rceil R + a \le W`: as many as take :math:`\lceil a / R \rceil R` each of
    :math:`W - R + \lceil a / R \rceil R - a`. Pieces that begin on unlike stripes take a + R each.

    Parameters
    ----------
    across : Fraction
        Width of a piece, a [in].
    repeat : Fraction
        From a stripe to the next like it, R [in].
    width : Fraction
        Usable width of the cloth, W [in].

    Returns
    -------
    tuple of Fraction
        The room beside each piece, and the width that all of them share with what lies beside them [in].

    Examples
    --------
    26 3/4 with a repeat of 2 1/2: 27 1/2 each, of 44 - 2 1/2 + 3/4 = 42 1/4. Two of 20 take 40 of 41 1/2, and fit;
    with 22 1/2 each they would not.

    >>> side_by_side(Fraction(107, 4), Fraction(5, 2), Fraction(44))
    (Fraction(3, 4), Fraction(169, 4))
    >>> side_by_side(Fraction(20), Fraction(5, 2), Fraction(44))
    (Fraction(0, 1), Fraction(83, 2))

    References
    ----------
    Derived above.
    """
    room = round_up(across, repeat) - across
    return room, width - repeat + room


def colours_between(stripes: Sequence[Stripe], start: Fraction, end: Fraction) -> tuple[str, ...]:
    """Return the colours of the cloth from one place to another.

    Parameters
    ----------
    stripes : sequence of Stripe
        One repeat, from its left [in].
    start, end : Fraction
        Places from the left of a repeat, ``start`` not after ``end`` [in]; may be negative or beyond the repeat.

    Returns
    -------
    tuple of str
        Colours in order, a stripe that goes on named once. For a single place its colour, or the two that meet there.

    Raises
    ------
    CalculationError
        If there is no stripe, one of no width, or ``end`` lies before ``start``.

    Examples
    --------
    Navy 1 in, white 1/2 in, and so on: from 3/4 to 2 in there are navy, white and navy again; at 1 in two meet.

    >>> ticking = [Stripe("navy", Fraction(1)), Stripe("white", Fraction(1, 2))]
    >>> colours_between(ticking, Fraction(3, 4), Fraction(2))
    ('navy', 'white', 'navy')
    >>> colours_between(ticking, Fraction(1), Fraction(1))
    ('navy', 'white')
    """
    if not stripes or any(stripe.width <= 0 for stripe in stripes) or end < start:
        raise CalculationError("colours are looked up on stripes that are wider than 0, from left to right")
    repeat = sum((stripe.width for stripe in stripes), Fraction(0))
    left = (start // repeat - 1) * repeat
    colours: list[str] = []
    while left <= end:
        for stripe in stripes:
            right = left + stripe.width
            touches = left < end and right > start if start < end else left <= start <= right
            if touches and (not colours or colours[-1] != stripe.colour):
                colours.append(stripe.colour)
            left = right
    return tuple(colours)


def tuck_colours(stripes: Sequence[Stripe], mark: Fraction, take_up: Fraction, spacing: Fraction) -> TuckColours:
    """Return which colours fall on the fold of a tuck, on its sides and on the space after it.

    The tuck is the cloth from u/2 before its fold mark to u/2 after it; the space goes on to the next tuck's foot, one
    pitch further. With the spacing on the repeat every tuck of the panel looks the same.

    Parameters
    ----------
    stripes : sequence of Stripe
        One repeat, from its left [in].
    mark : Fraction
        The fold mark, from the left of a repeat [in].
    take_up : Fraction
        Cloth in the tuck, u [in].
    spacing : Fraction
        Fold mark to fold mark, not less than the take-up [in].

    Returns
    -------
    TuckColours
        The colours.

    Raises
    ------
    CalculationError
        If the spacing leaves no cloth between two tucks, or goes over more than 500 repeats.

    Examples
    --------
    Navy and white, 1 in each; fold in the middle of the white, at 1 1/2; tucks 1/2 in deep, 2 in apart: the tuck is
    white on both sides (1 to 2), the space navy (2 to 3).

    >>> ticking = [Stripe("navy", Fraction(1)), Stripe("white", Fraction(1))]
    >>> tuck_colours(ticking, Fraction(3, 2), Fraction(1), Fraction(2))
    TuckColours(fold=('white',), left=('white',), right=('white',), space=('navy',))

    References
    ----------
    Derived above.
    """
    if spacing <= take_up:
        raise CalculationError(
            "the spacing must be more than the cloth in a tuck, or nothing is left between the tucks"
        )
    if spacing > MOST_REPEATS * sum((stripe.width for stripe in stripes), Fraction(0)):
        raise CalculationError(
            f"from fold to fold lie more than {MOST_REPEATS} repeats of the stripes; are both in the right units?"
        )
    before, after = mark - take_up / 2, mark + take_up / 2
    return TuckColours(
        fold=colours_between(stripes, mark, mark),
        left=colours_between(stripes, before, mark),
        right=colours_between(stripes, mark, after),
        space=colours_between(stripes, after, before + spacing),
    )


def middle_of(stripes: Sequence[Stripe], colour: str) -> Fraction:
    """Return where the middle of the first stripe of a colour lies in the repeat; without a colour, of any stripe.

    Parameters
    ----------
    stripes : sequence of Stripe
        One repeat, from its left [in].
    colour : str
        The colour wanted on the folds; empty for any.

    Returns
    -------
    Fraction
        From the left of the repeat [in].

    Raises
    ------
    CalculationError
        If no stripe has that colour; the message names those there are.

    Examples
    --------
    Navy 1 in, white 1/2 in: the middle of the white lies 1 1/4 in along.

    >>> middle_of([Stripe("navy", Fraction(1)), Stripe("white", Fraction(1, 2))], "white")
    Fraction(5, 4)

    References
    ----------
    Derived in the docstring above.
    """
    left = Fraction(0)
    for stripe in stripes:
        if colour in ("", stripe.colour):
            return left + stripe.width / 2
        left += stripe.width
    there = ", ".join(dict.fromkeys(stripe.colour for stripe in stripes))
    raise CalculationError(f"no stripe of this cloth is '{colour}', so no fold can lie on it; there are: {there}")


def off_the_repeat(marks: Sequence[Fraction], repeat: Fraction) -> Fraction:
    """Return how far the fold that lies worst is from the place of the first fold in its repeat.

    Parameters
    ----------
    marks : sequence of Fraction
        Fold marks [in].
    repeat : Fraction
        From a stripe to the next like it, R [in].

    Returns
    -------
    Fraction
        The distance [in], at most half a repeat; nothing where every fold meets the same stripe.

    Examples
    --------
    Repeat 1 in: the mark at 3 1/8 lies 1/8 off, the one at 4 7/8 as much on the other side.

    >>> off_the_repeat([Fraction(1), Fraction(25, 8), Fraction(39, 8)], Fraction(1))
    Fraction(1, 8)
    >>> off_the_repeat([], Fraction(1))
    Fraction(0, 1)

    References
    ----------
    Derived in the docstring above.
    """
    beyond = [(mark - marks[0]) % repeat for mark in marks]
    return max((min(past, repeat - past) for past in beyond), default=Fraction(0))
