"""Edges that are longer than what they are sewn to: both lengths come in, how they are made equal goes out.

Eased in, gathered on two threads, or laid in pleats.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from generator.calculation.pieces.pleats import PleatLine
from generator.calculation.refused import more_than_nothing
from generator.errors import CalculationError
from generator.lengths import Edition, round_down, say_length

# So much of an edge can be eased in: common practice, no source.
EASED_SHARE = Fraction(1, 20)
# The least that is printed for a frill: L. I. Baldt, *Clothing for Women*, 1916 (on the bias, 1 1/4 to 1 1/3).
LEAST_GATHERED = Fraction(5, 4)


@dataclass(frozen=True, slots=True)
class EdgePleats:
    """Pleats that draw a longer edge up to a shorter one [in].

    Each is ``depth`` deep underneath, ``section`` is the length of the edge for each, what is ``eased`` in lies beyond
    the pleats. ``layers`` is the thickest place.
    """

    number: int
    depth: Fraction
    section: Fraction
    eased: Fraction
    layers: int


def fullness_of(longer: Fraction, shorter: Fraction) -> Fraction:
    """Return how full an edge is: its length for that of what it is sewn to, k = L / E.

    Parameters
    ----------
    longer, shorter : Fraction
        The two lengths, L and E [in].

    Returns
    -------
    Fraction
        Fullness, k [-].

    Raises
    ------
    CalculationError
        If the first is no longer than the second.

    Examples
    --------
    An edge of 18 1/2 in on one of 12: 1 13/24.

    >>> fullness_of(Fraction(37, 2), Fraction(12))
    Fraction(37, 24)

    References
    ----------
    The word: E. E. Goodwin, *Goodwin's Course in Sewing*, book III; the sum is its meaning.
    """
    if longer <= more_than_nothing(shorter, "the edge that it is sewn to"):
        raise CalculationError("the edge that is drawn up must be longer than the one it is sewn to")
    return longer / shorter


def least_sections(longer: Fraction, shorter: Fraction, number: int) -> tuple[Fraction, Fraction]:
    """Return how far apart marks lie on both edges, so that each part of one is drawn up to a part of the other.

    Parameters
    ----------
    longer, shorter : Fraction
        The two lengths, L and E [in].
    number : int
        How many parts, such as quarters [-].

    Returns
    -------
    tuple of Fraction
        L / n and E / n [in].

    Examples
    --------
    Quarters of 18 1/2 on quarters of 12: 4 5/8 on 3.

    >>> [str(part) for part in least_sections(Fraction(37, 2), Fraction(12), 4)]
    ['37/8', '3']

    References
    ----------
    Derived: an even part of both.
    """
    return longer / number, shorter / number


def edge_pleats(longer: Fraction, shorter: Fraction, number: int, edition: Edition) -> EdgePleats:
    r"""Return the pleats that draw an edge up to a shorter one, as deep as the ruler shows.

    Each pleat hides twice its depth, so :math:`d = (L - E) / 2k`, down to a mark of the ruler; what that leaves,
    :math:`L - E - 2 k d`, is eased in. A pleat deeper than its section E / k would lie over the next one.

    Parameters
    ----------
    longer, shorter : Fraction
        The two lengths, L and E [in].
    number : int
        How many pleats, k [-].
    edition : Edition
        Whose ruler is used.

    Returns
    -------
    EdgePleats
        Depth, section and what is eased in [in].

    Raises
    ------
    CalculationError
        If there is no pleat, none as deep as a mark of the ruler, or one deeper than its section.

    Examples
    --------
    18 1/2 to 12 in six pleats: 6 1/2 over 12 is 13/24, so 1/2 deep; 6 1/2 less 6 leaves 1/2 to ease in.

    >>> from generator.lengths import INCH
    >>> pleats = edge_pleats(Fraction(37, 2), Fraction(12), 6, INCH)
    >>> str(pleats.depth), str(pleats.section), str(pleats.eased), pleats.layers
    ('1/2', '2', '1/2', 3)

    References
    ----------
    National Instructional Media Institute, *CITS Dress Making, Trade Practical*, vol. 2, pp. 203-205 (a pleat takes
    twice its depth); down to the ruler with the rest eased in: derived.
    """
    if number < 1:
        raise CalculationError(f"{number} pleats draw nothing up; write 1 or more")
    fullness_of(longer, shorter)
    depth = round_down((longer - shorter) / (2 * number), edition.mark)
    section = shorter / number
    if depth <= 0:
        raise CalculationError(
            f"{number} pleats would be less than {say_length(edition.mark, edition)} deep; take fewer, or ease the edge"
        )
    if depth > section:
        raise CalculationError(
            f"{number} pleats would be {say_length(depth, edition)} deep, deeper than the "
            f"{say_length(section, edition)} from one to the next, and lie over each other; take more pleats, "
            "or make the edge less full"
        )
    eased = longer - shorter - 2 * number * depth
    return EdgePleats(number, depth, section, eased, 1 + 2 * ceil(depth / section))


def edge_pleat_lines(pleats: EdgePleats, hands: Sequence[int], start: Fraction) -> tuple[PleatLine, ...]:
    """Return the lines to mark for each pleat of an edge, from left to right.

    Every pleat has its share of the edge with what is eased in, and stands in the middle of it.

    Parameters
    ----------
    pleats : EdgePleats
        Number, depth and section.
    hands : sequence of int
        Which way each pleat is turned: 1 to the right, -1 to the left.
    start : Fraction
        Cloth beyond the finished left end of the edge [in].

    Returns
    -------
    tuple of PleatLine
        One a pleat [in].

    Examples
    --------
    Two pleats 1 deep, 4 in apart, turned away from the middle, seam 1/2. The first stands 2 in from the end: creased at
    1/2 + 2 + 2 = 4 1/2 and laid to the left on 2 1/2. The second stands at 6, behind 2 in of the first: creased at
    1/2 + 6 + 2 = 8 1/2 and laid to the right on 10 1/2.

    >>> two = EdgePleats(2, Fraction(1), Fraction(4), Fraction(0), 3)
    >>> [(str(line.fold), str(line.onto)) for line in edge_pleat_lines(two, (-1, 1), Fraction(1, 2))]
    [('9/2', '5/2'), ('17/2', '21/2')]

    References
    ----------
    Derived in the docstring above.
    """
    share = pleats.section + pleats.eased / pleats.number
    lines = []
    for place, hand in enumerate(hands):
        at = place * share + share / 2
        near = start + at + 2 * pleats.depth * place
        far = near + 2 * pleats.depth
        fold, onto = (near, far) if hand > 0 else (far, near)
        lines.append(PleatLine(fold, onto, at, at - hand * pleats.depth))
    return tuple(lines)


def hands_of(lie: str, number: int) -> tuple[int, ...]:
    """Return which way each of a number of pleats is turned: 1 to the right, -1 to the left; a middle one to the right.

    Parameters
    ----------
    lie : str
        left, right, outward or inward.
    number : int
        How many pleats [-].

    Returns
    -------
    tuple of int
        One a pleat, from the left.

    Examples
    --------
    >>> hands_of("outward", 5), hands_of("left", 2)
    ((-1, -1, 1, 1, 1), (-1, -1))

    References
    ----------
    That a middle one lies to the right: common practice, no source.
    """
    if lie in ("left", "right"):
        return (1 if lie == "right" else -1,) * number
    first = -1 if lie == "outward" else 1
    half = number // 2
    return (first,) * half + (1,) * (number % 2) + (-first,) * half


def drawn_up_finding(how: str, fullness: Fraction, edition: Edition, over: Fraction) -> str:
    """Return what is wrong with how full an edge is for the way in which it is drawn up; empty where nothing is.

    ``over`` is how much longer it is [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> drawn_up_finding("gathered", Fraction(3, 2), INCH, Fraction(6))
    ''
    >>> drawn_up_finding("gathered", Fraction(11, 10), INCH, Fraction(1)).partition(" at the least")[0]
    'gathered edges are 1 1/4 times as long'
    """
    if how == "eased" and fullness - 1 > EASED_SHARE:
        return (
            f"{say_length(over, edition)} is more than a twentieth of the edge, and lies in little folds when it is "
            "eased in (common practice, no source): sew a sample, make the edge shorter, or write 'how: gathered'"
        )
    if how == "gathered" and fullness < LEAST_GATHERED:
        return (
            "gathered edges are 1 1/4 times as long at the least, the least that is printed for a frill (Baldt, 1916): "
            "make the edge longer, or write 'how: eased'"
        )
    return ""
