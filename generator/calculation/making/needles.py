"""Needles and stitches for cloth of each weight: a table with its sources, and words for a card beside the machine.

A needle's number is the thickness of its blade in hundredths of a millimetre.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.refused import more_than_nothing
from generator.lengths import MILLIMETRE, Edition, write_number


@dataclass(frozen=True, slots=True)
class NeedleChoice:
    """What a cloth of one weight is sewn with: needle numbers and stitch lengths [in], from finest to strongest."""

    weight: str
    least: int
    most: int
    shortest: Fraction
    longest: Fraction
    source: str


_NEEDLES = "D. Colgrove, Sewing Machine Needle Sizes; a shop's needle table of 2010"
_STITCHES = "stitches from a school's page on stitch lengths"
_GUESSED = "stitches common practice, no source"
_TEN_TO_THE_INCH = Fraction(5, 2) * MILLIMETRE

NEEDLES: tuple[NeedleChoice, ...] = (
    NeedleChoice("sheer", 60, 70, 2 * MILLIMETRE, 2 * MILLIMETRE, f"{_NEEDLES}; {_GUESSED}"),
    NeedleChoice("light", 70, 80, 2 * MILLIMETRE, _TEN_TO_THE_INCH, f"{_NEEDLES}; {_STITCHES}"),
    NeedleChoice(
        "medium", 80, 90, Fraction(5, 2) * MILLIMETRE, Fraction(5, 2) * MILLIMETRE, f"{_NEEDLES}; {_STITCHES}"
    ),
    NeedleChoice("heavy", 90, 100, 3 * MILLIMETRE, 3 * MILLIMETRE, f"{_NEEDLES}; {_GUESSED}"),
)


def stitches_to_the_inch(stitch: Fraction) -> int:
    """Return how many stitches of a length lie in an inch, to the nearest whole one.

    Machines are set in one of the two: n = 1 / s.

    Parameters
    ----------
    stitch : Fraction
        Length of a stitch, s [in].

    Returns
    -------
    int
        Stitches in an inch, n [-].

    Examples
    --------
    25.4 / 2.5 = 10.16 and 25.4 / 2 = 12.7:

    >>> stitches_to_the_inch(Fraction(5, 2) * MILLIMETRE), stitches_to_the_inch(2 * MILLIMETRE)
    (10, 13)

    References
    ----------
    Derived in the docstring above.
    """
    return round(1 / more_than_nothing(stitch, "the length of a stitch"))


def needle_words(choice: NeedleChoice) -> str:
    """Return the needles of a choice as a card names them.

    Examples
    --------
    >>> needle_words(NEEDLES[0])
    '60 or 70'
    """
    return f"{choice.least} or {choice.most}"


def stitch_words(choice: NeedleChoice) -> str:
    """Return the stitches of a choice in both ways in which machines are set.

    Examples
    --------
    >>> stitch_words(NEEDLES[1])
    '2 to 2.5 mm, 10 to 13 to the inch'
    >>> stitch_words(NEEDLES[3])
    '3 mm, about 8 to the inch'
    """
    lengths = [write_number(stitch / MILLIMETRE) for stitch in (choice.shortest, choice.longest)]
    counts = [stitches_to_the_inch(stitch) for stitch in (choice.longest, choice.shortest)]
    if choice.shortest == choice.longest:
        return f"{lengths[0]} mm, about {counts[0]} to the inch"
    return f"{lengths[0]} to {lengths[1]} mm, {counts[0]} to {counts[1]} to the inch"


def sewn_with(weight: str, edition: Edition) -> str:
    """Return with which needle and stitch the tucks of a cloth are sewn, in the words of one edition.

    Examples
    --------
    >>> from generator.lengths import INCH, METRIC
    >>> sewn_with("light", METRIC)
    'a needle 70 or 80 and a stitch of 2 to 2.5 mm'
    >>> sewn_with("heavy", INCH)
    'a needle 90 or 100 and about 8 stitches to the inch'

    References
    ----------
    The table of this module.
    """
    choice = next(one for one in NEEDLES if one.weight == weight)
    counts = [stitches_to_the_inch(stitch) for stitch in (choice.longest, choice.shortest)]
    lengths = [write_number(stitch / MILLIMETRE) for stitch in (choice.shortest, choice.longest)]
    same = choice.shortest == choice.longest
    if edition.name == "inch":
        stitch = (
            f"about {counts[0]} stitches to the inch" if same else f"{counts[0]} to {counts[1]} stitches to the inch"
        )
    else:
        stitch = f"a stitch of {lengths[0]} mm" if same else f"a stitch of {lengths[0]} to {lengths[1]} mm"
    return f"a needle {needle_words(choice)} and {stitch}"
