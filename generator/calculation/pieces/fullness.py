"""Gathered strips: the finished edge and the fullness come in, the flat strip goes out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from generator.calculation.pieces.plain_pieces import cut_size, plain_allowance
from generator.calculation.refused import more_than_nothing
from generator.calculation.worked import End
from generator.errors import CalculationError


@dataclass(frozen=True, slots=True)
class GatheredSizes:
    """A strip that is drawn up to an edge [in].

    ``flat`` is the length between its finished ends before gathering, ``drawn_up`` how much the threads take away.
    """

    edge: Fraction
    flat: Fraction
    drawn_up: Fraction
    cut_across: Fraction
    cut_along: Fraction


@dataclass(frozen=True, slots=True)
class PublishedFullness:
    """How full a strip is made for one use, from least to most, as a printed source has it.

    Sources differ widely, and cloth more so: a gathered sample decides.
    """

    use: str
    least: Fraction
    most: Fraction
    source: str


_BALDT = "L. I. Baldt, Clothing for Women, 1916"
_DRESSMAKER = "The New Dressmaker, 1921, ch. 28"
_SMOCKING = "Every Woman's Encyclopaedia, 1910-12; Construction of Clothing; Priscilla Smocking Book, 1916"

PUBLISHED_FULLNESS: tuple[PublishedFullness, ...] = (
    PublishedFullness("frill on the straight", Fraction(4, 3), Fraction(3, 2), _BALDT),
    PublishedFullness("frill on the bias", Fraction(5, 4), Fraction(4, 3), _BALDT),
    PublishedFullness("taffeta", Fraction(2), Fraction(2), _DRESSMAKER),
    PublishedFullness("chiffon", Fraction(3), Fraction(3), _DRESSMAKER),
    PublishedFullness("side pleating", Fraction(3), Fraction(3), _DRESSMAKER),
    PublishedFullness(
        "tier below a tier", Fraction(3, 2), Fraction(2), "NIMI, CITS Dress Making, Trade Theory, p. 250"
    ),
    PublishedFullness("flounce on a band", Fraction(3, 2), Fraction(3, 2), "Goodwin's Course in Sewing, book III"),
    PublishedFullness("honeycombing", Fraction(2), Fraction(2), _SMOCKING),
    PublishedFullness("smocking", Fraction(4), Fraction(9, 2), _SMOCKING),
)


def gathered_layers(fullness: Fraction) -> int:
    """Return the layers of a gathered edge at its thickest.

    Gathers are counted as folds laid flat beside each other: what is drawn up, k - 1 times the edge, lies double over
    it, two layers more for every 2 of fullness or part of it: 1 + 2 ceil((k - 1) / 2).

    Parameters
    ----------
    fullness : Fraction
        Length of the strip for that of its edge, k [-].

    Returns
    -------
    int
        Layers of cloth [-].

    Examples
    --------
    Half as long again, twice and three times as long: three layers, as closed pleats have. Four times: five.

    >>> [gathered_layers(Fraction(k)) for k in ("1", "3/2", "2", "3", "4")]
    [1, 3, 3, 3, 5]

    References
    ----------
    Derived in the docstring above.
    """
    return 1 + 2 * max(0, ceil((fullness - 1) / 2))


def gathered_length(edge: Fraction, fullness: Fraction) -> Fraction:
    """Return the flat length of a strip that is drawn up to an edge.

    Fullness is the length of the strip divided by the length of the finished edge, so the strip is k E.

    Parameters
    ----------
    edge : Fraction
        Finished length of the edge that the strip is drawn up to, E [in].
    fullness : Fraction
        Fullness, k [-].

    Returns
    -------
    Fraction
        Length of the strip between its finished ends [in].

    Raises
    ------
    CalculationError
        If the fullness is less than 1.

    Examples
    --------
    A flounce on a band of 72 in at one and a half: 108 in, which is 3 yd. At 1 nothing is gathered.

    >>> gathered_length(Fraction(72), Fraction(3, 2))
    Fraction(108, 1)
    >>> gathered_length(Fraction(72), Fraction(1))
    Fraction(72, 1)

    References
    ----------
    E. E. Goodwin, *Goodwin's Course in Sewing*, book III (3 yd on a 2 yd band).
    """
    if fullness < 1:
        raise CalculationError(
            "a fullness of less than 1 makes the strip shorter than its edge; write 1 1/2 for half as much again"
        )
    return more_than_nothing(edge, "the edge of a gathered strip") * fullness


def worked_gathered_strip(edge: Fraction, fullness: Fraction, drop: Fraction, ends: Mapping[str, End]) -> GatheredSizes:
    """Return the cut size of a frill, a flounce or a gathered skirt.

    Across, the flat strip is k E and gets the allowances of its ends; these are not gathered. Along, it is the drop and
    the allowances of the gathered edge at the top and of the free edge at the bottom.

    Parameters
    ----------
    edge : Fraction
        Finished length of the edge that the strip is drawn up to, E [in].
    fullness : Fraction
        Fullness, k [-].
    drop : Fraction
        Finished depth of the strip [in].
    ends : Mapping of str to End
        Finish of ``left``, ``right``, ``top`` (gathered) and ``bottom``.

    Returns
    -------
    GatheredSizes
        Flat and cut sizes [in].

    Examples
    --------
    An edge of 20 in at 1 3/4 with a drop of 2 in: 35 in flat. Ends hemmed twice 1/4 in: 36 in. Seam 1/2, hem twice
    1/4 in: 2 + 1/2 + 1/2 = 3 in deep.

    >>> hem, seam = End("hem", Fraction(1, 4), Fraction(1, 4)), End("seam", Fraction(1, 2))
    >>> frill = worked_gathered_strip(
    ...     Fraction(20), Fraction(7, 4), Fraction(2), {"left": hem, "right": hem, "top": seam, "bottom": hem}
    ... )
    >>> frill.flat, frill.drawn_up, frill.cut_across, frill.cut_along
    (Fraction(35, 1), Fraction(15, 1), Fraction(36, 1), Fraction(3, 1))

    References
    ----------
    Derived in the docstring above.
    """
    flat = gathered_length(edge, fullness)
    across = flat + plain_allowance(ends["left"]) + plain_allowance(ends["right"])
    return GatheredSizes(edge, flat, flat - edge, across, cut_size(drop, ends["top"], ends["bottom"]))
