"""The finished thing laid out flat: where each piece lies, which way up, and how large the whole is; no sums here.

All lengths are in inches. The top left corner of the first piece lies at (0, 0); across grows to the right, along down.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

CLOCKWISE = ("top", "right", "bottom", "left")
Layer = Literal["front", "behind", "inside"]
Round = Literal["", "across", "along"]


@dataclass(frozen=True, slots=True)
class Lying:
    """One piece as it lies in the finished thing: the rectangle that it covers [in].

    ``turned`` counts quarter turns clockwise: after one its left edge lies at the top. ``layer`` tells whether it is
    seen, lies behind what is seen, or inside, like a lining. A strip round a rim covers the rectangle round all of it.
    """

    piece: str
    left: Fraction
    top: Fraction
    across: Fraction
    along: Fraction
    turned: int = 0
    layer: Layer = "front"

    @property
    def right(self) -> Fraction:
        """Its right side [in]."""
        return self.left + self.across

    @property
    def bottom(self) -> Fraction:
        """Its lower side [in]."""
        return self.top + self.along

    def bearing(
        self, piece: str, across: Fraction, along: Fraction, at: tuple[Fraction, Fraction] | None = None
    ) -> Lying:
        """Return a piece of a finished size [in] that is sewn on this one.

        Parameters
        ----------
        piece : str
            The piece that is sewn on.
        across, along : Fraction
            Its finished size [in].
        at : tuple of Fraction, optional
            How far its left and its top edge lie from those of this one [in]; it lies in the middle without.

        Returns
        -------
        Lying
            Where it lies.

        Examples
        --------
        >>> back = Lying("back", Fraction(0), Fraction(0), Fraction(10), Fraction(12))
        >>> pocket = back.bearing("pocket", Fraction(6), Fraction(4))
        >>> pocket.left, pocket.top
        (Fraction(2, 1), Fraction(4, 1))

        One inch from the left and 2 in from the top of a back that is turned upside down:

        >>> turned = Lying("back", Fraction(0), Fraction(0), Fraction(10), Fraction(12), turned=2)
        >>> pocket = turned.bearing("pocket", Fraction(6), Fraction(4), (Fraction(1), Fraction(2)))
        >>> pocket.left, pocket.top, pocket.turned
        (Fraction(3, 1), Fraction(6, 1), 2)
        """
        if at is None:
            left, top = self.left + (self.across - across) / 2, self.top + (self.along - along) / 2
            return Lying(piece, left, top, across, along)
        x, y = at
        wide, high = (along, across) if self.turned % 2 else (across, along)
        left, top = (
            (self.left + x, self.top + y),
            (self.right - y - along, self.top + x),
            (self.right - x - across, self.bottom - y - along),
            (self.left + y, self.bottom - x - across),
        )[self.turned]
        return Lying(piece, left, top, wide, high, self.turned)

    def lies_at(self, side: str) -> str:
        """Return where one of its own sides lies: the left one at the top, say; a rim lies at the top."""
        return _turned(side, self.turned)

    def side_at(self, lies: str) -> str:
        """Return which of its own sides lies at the top, right, bottom or left."""
        return _turned(lies, -self.turned)

    def line(self, lies: str) -> Fraction:
        """Return where its side at the top, right, bottom or left is [in]."""
        return {"top": self.top, "right": self.right, "bottom": self.bottom, "left": self.left}[lies]

    def span(self, lies: str) -> tuple[Fraction, Fraction]:
        """Return from where to where that side reaches [in]."""
        return (self.left, self.right) if lies in ("top", "bottom") else (self.top, self.bottom)


@dataclass(frozen=True, slots=True)
class OnPiece:
    """Where a piece lies on the face of another: how far its left and its top edge lie from the finished ones there.

    ``sides`` are those of the other from which its file tells that; all lengths [in].
    """

    piece: str
    left: Fraction
    top: Fraction
    sides: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LaidOut:
    """A finished thing: its pieces as they lie, what is behind or inside after what is seen.

    ``across`` and ``along`` [in] are those of one thing, of which there are ``number``, ``depth`` that of its boxing.
    ``round`` names the way that is closed to a ring, and then measured once round. ``shaped`` says that a piece is cut
    to an outline, so that the thing is as large or smaller.
    """

    pieces: tuple[Lying, ...]
    across: Fraction
    along: Fraction
    depth: Fraction = Fraction(0)
    round: Round = ""
    number: int = 1
    shaped: bool = False

    @property
    def seen(self) -> tuple[Lying, ...]:
        """What is seen from in front."""
        return tuple(lying for lying in self.pieces if lying.layer == "front")


NOTHING_LAID_OUT = LaidOut((), Fraction(0), Fraction(0))


def opposite(side: str) -> str:
    """Return the side across.

    Parameters
    ----------
    side : str
        A side of a rectangle.

    Returns
    -------
    str
        The bottom for the top, the left for the right.

    Examples
    --------
    >>> opposite("top"), opposite("left")
    ('bottom', 'right')
    """
    return _turned(side, 2)


def _turned(side: str, quarters: int) -> str:
    if side not in CLOCKWISE:
        return CLOCKWISE[quarters % 4]
    return CLOCKWISE[(CLOCKWISE.index(side) + quarters) % 4]
