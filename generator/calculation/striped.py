"""Stripes of a cloth and where they come to lie on a tucked panel: plain, frozen, exact; no sums here."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class Stripe:
    """One stripe of the cloth's repeat: its colour and its width [in]."""

    colour: str
    width: Fraction


@dataclass(frozen=True, slots=True)
class TuckColours:
    """The colours of one tuck, each from left to right as the cloth lies flat.

    ``fold`` has two colours where the fold lies on the line between them. ``left`` and ``right`` are the sides of the
    tuck, ``space`` the panel from its right foot to the left foot of the next tuck.
    """

    fold: tuple[str, ...]
    left: tuple[str, ...]
    right: tuple[str, ...]
    space: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class PanelStripes:
    """The stripes of a panel: one repeat, and where in it the left cut edge lies [in].

    ``colours`` are those of tuck 1, which all tucks share where the spacing is a multiple of the repeat.
    """

    stripes: tuple[Stripe, ...]
    start: Fraction
    colours: TuckColours

    @property
    def repeat(self) -> Fraction:
        """From a stripe to the next like it [in]."""
        return sum((stripe.width for stripe in self.stripes), Fraction(0))
