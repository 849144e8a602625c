"""A side of a piece that is made shorter, gathered or pleated: plain, frozen, exact; no sums here."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class DrawnUp:
    """A side of a piece that is made shorter: gathered on two threads, or laid in pleats.

    ``to`` is how long it then is [in], nothing where it closes in the middle of a round. ``pleats`` are the folds of
    one that is pleated: the line that is creased and the line it is laid on, from the left cut edge [in]. ``layers`` is
    how many of cloth lie over each other there at the thickest. ``depth`` is how deep the pleats of an edge
    are that meets a shorter one [in].
    """

    side: str
    to: Fraction
    pleats: tuple[tuple[Fraction, Fraction], ...] = ()
    layers: int = 1
    depth: Fraction = Fraction(0)

    @property
    def gathered(self) -> bool:
        """Whether it is gathered and not pleated."""
        return not self.pleats

    @property
    def way(self) -> str:
        """How it is drawn up, in a word."""
        return "gathered" if self.gathered else "pleated"
