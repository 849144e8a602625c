"""Seams that shut in their own raw edges, and the rolled hem: an allowance comes in, their lines and folds go out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.errors import CalculationError
from generator.lengths import MILLIMETRE, Edition, say_length

_SECOND = {"inch": Fraction(1, 4), "metric": 6 * MILLIMETRE}
_LEAST = {"inch": Fraction(1, 2), "metric": 12 * MILLIMETRE}
_ROLLED = {"inch": Fraction(1, 8), "metric": 3 * MILLIMETRE}
TIMES_FOLDED = 2
"""How many layers each edge brings to such a seam for every layer that it has: itself and its allowance [-]."""


@dataclass(frozen=True, slots=True)
class EnclosedSeam:
    """The two lines of stitching of a seam that shuts in its own edges.

    ``first`` [in] is how far the first line lies from the raw edges, ``second`` the width to which the seam is folded
    or trimmed, ``shows`` the width of what can be seen of it when it is done.
    """

    first: Fraction
    second: Fraction
    shows: Fraction


def french_seam(allowance: Fraction, edition: Edition) -> EnclosedSeam:
    r"""Return the lines of a French seam: sewn wrong sides together, turned, and sewn again over its raw edges.

    The finished line lies an allowance from the raw edges, and the second line lies on it, so the first is sewn nearer
    to the edge by the width of the second: :math:`s_1 = a - s_2`, with s_2 of 1/4 in or 6 mm.

    Parameters
    ----------
    allowance : Fraction
        Cloth beyond the finished line on each side, a [in].
    edition : Edition
        Whose ruler is used.

    Returns
    -------
    EnclosedSeam
        Both lines [in]; what shows inside is as wide as the second.

    Raises
    ------
    CalculationError
        If the allowance is under 1/2 in or 1.2 cm: the first line would lie too near to the edge to hold.

    Examples
    --------
    5/8 in: first 3/8 in from the edges, trimmed close, then 1/4 in from the fold.

    >>> from generator.lengths import INCH
    >>> french_seam(Fraction(5, 8), INCH)
    EnclosedSeam(first=Fraction(3, 8), second=Fraction(1, 4), shows=Fraction(1, 4))

    References
    ----------
    The example: Oklahoma Cooperative Extension, 4-H sewing project card 810, "French seam"; the least allowance is
    ours.
    """
    second = _SECOND[edition.name]
    return EnclosedSeam(_enough(allowance, "french seam", edition) - second, second, second)


def felled_seam(allowance: Fraction, edition: Edition) -> EnclosedSeam:
    r"""Return the lines of a felled seam: one allowance is trimmed, the other turned in over it and sewn down flat.

    The first line lies an allowance from the edges. One allowance is trimmed to 1/4 in or 6 mm and the edge of the
    other turned in by as much, so that the fell is :math:`w = a - 1/4` wide.

    Parameters
    ----------
    allowance : Fraction
        Cloth beyond the first line on each side, a [in].
    edition : Edition
        Whose ruler is used.

    Returns
    -------
    EnclosedSeam
        The first line, the width to which one side is trimmed and the other turned in, and that of the fell [in].

    Raises
    ------
    CalculationError
        If the allowance is under 1/2 in or 1.2 cm: what is turned in would not cover what was trimmed.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> felled_seam(Fraction(5, 8), INCH).shows
    Fraction(3, 8)

    References
    ----------
    Common practice, no source; the least allowance is ours.
    """
    second = _SECOND[edition.name]
    return EnclosedSeam(_enough(allowance, "felled seam", edition), second, allowance - second)


def rolled_turn(edition: Edition) -> Fraction:
    """Return the width of each of the two turns of a rolled hem by machine.

    Parameters
    ----------
    edition : Edition
        Whose ruler is used.

    Returns
    -------
    Fraction
        One turn [in].

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> rolled_turn(INCH)
    Fraction(1, 8)

    References
    ----------
    Common practice, no source.
    """
    return _ROLLED[edition.name]


def _enough(allowance: Fraction, word: str, edition: Edition) -> Fraction:
    least = _LEAST[edition.name]
    if allowance < least:
        raise CalculationError(
            f"a {word} of {say_length(allowance, edition)} is too narrow to shut in its own edges; give it at least "
            f"{say_length(least, edition)}, better {'5/8 in' if edition.name == 'inch' else '1.5 cm'}"
        )
    return allowance
