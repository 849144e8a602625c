"""A grid of blocks with bands between them: their sizes come in, the whole and what is cut for it goes out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.pieces.cut import Cut
from generator.calculation.refused import more_than_nothing
from generator.errors import CalculationError


@dataclass(frozen=True, slots=True)
class Blocks:
    """Blocks of a piece ``of`` a name, so many in a row and so many rows, with bands of a width between them [in].

    ``block`` is the finished size of one, across and along, ``seam`` the allowance of every seam. Where they are
    ``turned`` every second one lies on its side, like the dark squares of a draughtboard.
    """

    of: str
    number: tuple[int, int]
    block: tuple[Fraction, Fraction]
    band: Fraction
    seam: Fraction
    turned: bool = False

    @property
    def raw(self) -> tuple[Fraction, Fraction]:
        """The size of the joined grid from raw edge to raw edge [in].

        c blocks of b and c - 1 bands of s between them, with the allowance a of the outer blocks at both sides:
        c b + (c - 1) s + 2 a.

        Examples
        --------
        Three of 8 in with bands of 2 in and seams of 1/4 in: 24 + 4 + 1/2.

        >>> Blocks("block", (3, 3), (Fraction(8), Fraction(8)), Fraction(2), Fraction(1, 4)).raw
        (Fraction(57, 2), Fraction(57, 2))

        References
        ----------
        Derived in the docstring above.
        """
        across, along = (
            count * block + (count - 1) * self.band + 2 * self.seam
            for count, block in zip(self.number, self.block, strict=True)
        )
        return across, along

    @property
    def bands(self) -> tuple[Cut, ...]:
        """The bands: short ones between the blocks of each row, long ones as wide as the grid between the rows.

        Examples
        --------
        Three by three of 8 in, bands of 2 in, seams of 1/4 in: six of 2 1/2 by 8 1/2 in and two of 28 1/2 by 2 1/2 in.

        >>> grid = Blocks("block", (3, 3), (Fraction(8), Fraction(8)), Fraction(2), Fraction(1, 4))
        >>> [(one.number, str(one.across), str(one.along)) for one in grid.bands]
        [(6, '5/2', '17/2'), (2, '57/2', '5/2')]
        """
        if not self.band:
            return ()
        (wide, high), cut = self.number, self.band + 2 * self.seam
        short = Cut(high * (wide - 1), cut, self.block[1] + 2 * self.seam, "short band")
        long = Cut(high - 1, self.raw[0], cut, "long band")
        return tuple(band for band in (short, long) if band.number)

    @property
    def seams(self) -> Fraction:
        """The length of all seams that join it [in]: at both sides of a band, or between two blocks.

        Examples
        --------
        Six short bands with two seams of 8 1/2 in, two long ones with two of 28 1/2 in: 102 + 114.

        >>> Blocks("block", (3, 3), (Fraction(8), Fraction(8)), Fraction(2), Fraction(1, 4)).seams
        Fraction(216, 1)

        References
        ----------
        Derived in the docstring above.
        """
        (wide, high), sides = self.number, 2 if self.band else 1
        in_rows = high * (wide - 1) * sides * (self.block[1] + 2 * self.seam)
        return in_rows + (high - 1) * sides * self.raw[0]

    def places(
        self, beyond: tuple[Fraction, Fraction] = (Fraction(0), Fraction(0))
    ) -> Iterator[tuple[int, int, Fraction, Fraction, bool]]:
        """Yield each block: its row and its place in it from 1, where its upper left corner lies, and if it is turned.

        Corners are counted from the raw edges, or from lines so far within the left and the top one [in].
        """
        wide, high = self.number
        for row in range(high):
            for place in range(wide):
                left = self.seam + place * (self.block[0] + self.band) - beyond[0]
                top = self.seam + row * (self.block[1] + self.band) - beyond[1]
                yield row + 1, place + 1, left, top, self.turned and (row + place) % 2 == 1


def worked_grid(blocks: Blocks) -> Blocks:
    """Return a grid that can be sewn.

    Parameters
    ----------
    blocks : Blocks
        The grid as the file says it.

    Returns
    -------
    Blocks
        The same.

    Raises
    ------
    CalculationError
        If it has one block, if a length is none, or if a block that is turned is not as wide as it is high.
    """
    wide, high = blocks.number
    if wide < 1 or high < 1 or wide * high < 2:
        raise CalculationError("a grid has two blocks at least; write how many under 'blocks across' and 'blocks down'")
    more_than_nothing(blocks.seam, "the seam of a grid")
    if blocks.band < 0:
        raise CalculationError("the bands of a grid are as wide as something; write how wide, or take 'bands' out")
    if blocks.turned and blocks.block[0] != blocks.block[1]:
        raise CalculationError(
            f"every second block is turned by a quarter, so '{blocks.of}' must be as wide as it is high; "
            "make both alike, or take 'turned' out"
        )
    return blocks


def shown(block: Fraction, seam: Fraction, taken: Fraction) -> Fraction:
    """Return how much an outer block shows when the edge of its grid is finished.

    The block has its own seam allowance there, of which the finish takes a width: b + a - w.

    Parameters
    ----------
    block, seam : Fraction
        The finished block, and the allowance of its seams [in].
    taken : Fraction
        What the finish of the edge takes: the width of a binding, or the allowance of a seam [in].

    Returns
    -------
    Fraction
        What is seen of it [in].

    Examples
    --------
    A block of 8 in with 1/4 in of allowance, bound 1/4 in and bound 3/8 in:

    >>> shown(Fraction(8), Fraction(1, 4), Fraction(1, 4)), shown(Fraction(8), Fraction(1, 4), Fraction(3, 8))
    (Fraction(8, 1), Fraction(63, 8))

    References
    ----------
    Derived in the docstring above.
    """
    return block + seam - taken
