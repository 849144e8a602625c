"""A class: bookings and spare kits come in; how often each kit is needed and what the class needs in all go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.refused import whole_number
from generator.errors import CalculationError


@dataclass(frozen=True, slots=True, order=True)
class Kit:
    """What is packed for one place: a size in an edition."""

    size: str
    edition: str


@dataclass(frozen=True, slots=True)
class Booking:
    """Equal places in a class; the names of students are optional, ``own_cloth`` means that they bring their cloth."""

    kit: Kit
    number: int = 1
    students: tuple[str, ...] = ()
    own_cloth: bool = False


@dataclass(frozen=True, slots=True)
class KitCount:
    """How often one kit is needed: places in all, those of them with their own cloth, and spare kits."""

    kit: Kit
    places: int
    own_cloth: int
    spare: int

    @property
    def packed(self) -> int:
        """Kits with a sheet, thread and notions: all places and the spare ones."""
        return self.places + self.spare

    @property
    def cut(self) -> int:
        """Kits whose cloth the room cuts: those packed, without the places that bring their own."""
        return self.packed - self.own_cloth


def kit_counts(bookings: Sequence[Booking], spare: Mapping[Kit, int]) -> tuple[KitCount, ...]:
    """Return how often each kit of a class is needed.

    Places of the same size and edition are added up; a spare kit may be of a size that nobody has booked.

    Parameters
    ----------
    bookings : sequence of Booking
        The places of the class.
    spare : Mapping of Kit to int
        Spare kits [-].

    Returns
    -------
    tuple of KitCount
        One for each kit, in the order in which they are first named.

    Examples
    --------
    Four small places, one of them with its own cloth, and a spare kit: five are packed, four are cut.

    >>> small = Kit("small", "inch")
    >>> counts = kit_counts([Booking(small, 3), Booking(small, own_cloth=True)], {small: 1})
    >>> [(count.places, count.packed, count.cut) for count in counts]
    [(4, 5, 4)]

    References
    ----------
    Derived in the docstring above.
    """
    kits = dict.fromkeys([booking.kit for booking in bookings] + list(spare))
    return tuple(
        KitCount(
            kit,
            places=sum(places_of(booking) for booking in bookings if booking.kit == kit),
            own_cloth=sum(booking.number for booking in bookings if booking.kit == kit and booking.own_cloth),
            spare=whole_number(spare.get(kit, 0), "the number of spare kits"),
        )
        for kit in kits
    )


def class_amounts(
    counts: Sequence[KitCount], amounts: Mapping[Kit, Mapping[str, Fraction]], *, own_cloth_too: bool
) -> dict[str, Fraction]:
    """Return how much of everything a class needs.

    Each kit needs its amount times as often as it is packed, or, for what is made of the room's cloth, as often as it
    is cut. The sums are exact: what a shop sells is rounded up once, for the class, and not kit by kit.

    Parameters
    ----------
    counts : sequence of KitCount
        How often each kit is needed.
    amounts : Mapping of Kit to Mapping
        For each kit the amount of each thing in one of them [any unit, the same for all kits].
    own_cloth_too : bool
        Whether places with their own cloth need it too: thread and buttons yes, cloth no.

    Returns
    -------
    dict of str to Fraction
        Amount of each thing [the same unit], in the order in which they are first named.

    Raises
    ------
    CalculationError
        If nothing is known of a kit that is needed.

    Examples
    --------
    Two small kits with 3 buttons each and one large one with 5: 11 buttons.

    >>> small, large = Kit("small", "inch"), Kit("large", "inch")
    >>> counts = [KitCount(small, 2, 1, 0), KitCount(large, 1, 0, 0)]
    >>> amounts = {small: {"button": Fraction(3)}, large: {"button": Fraction(5)}}
    >>> class_amounts(counts, amounts, own_cloth_too=True), class_amounts(counts, amounts, own_cloth_too=False)
    ({'button': Fraction(11, 1)}, {'button': Fraction(8, 1)})

    References
    ----------
    Derived in the docstring above.
    """
    totals: dict[str, Fraction] = {}
    for count in counts:
        if count.kit not in amounts:
            raise CalculationError(unknown_kit(count.kit))
        times = count.packed if own_cloth_too else count.cut
        for thing, amount in amounts[count.kit].items():
            totals[thing] = totals.get(thing, Fraction(0)) + times * amount
    return totals


def mixed_editions(counts: Sequence[KitCount]) -> str:
    """Return a warning where one class works in inches and in centimetres, else an empty text.

    Examples
    --------
    >>> mixed_editions([KitCount(Kit("small", "inch"), 3, 0, 0), KitCount(Kit("large", "metric"), 1, 0, 0)])
    'this class mixes editions: 3 kits inch, 1 kit metric; their numbers differ, so keep the sheets apart'
    >>> mixed_editions([KitCount(Kit("small", "inch"), 3, 0, 0)])
    ''
    """
    packed: dict[str, int] = {}
    for count in counts:
        packed[count.kit.edition] = packed.get(count.kit.edition, 0) + count.packed
    if len(packed) < 2:
        return ""
    told = ", ".join(f"{number} {'kit' if number == 1 else 'kits'} {edition}" for edition, number in packed.items())
    return f"this class mixes editions: {told}; their numbers differ, so keep the sheets apart"


def unknown_kit(kit: Kit) -> str:
    """Return the sentence that refuses a kit of which nothing is known.

    Examples
    --------
    >>> unknown_kit(Kit("small", "inch"))
    'nothing is worked out for size small (inch)'
    """
    return f"nothing is worked out for size {kit.size} ({kit.edition})"


def places_of(booking: Booking) -> int:
    """Return the number of places of a booking, at least one.

    Parameters
    ----------
    booking : Booking
        The booking.

    Returns
    -------
    int
        Places [-].

    Examples
    --------
    >>> places_of(Booking(Kit("small", "inch"), 4))
    4
    """
    return whole_number(booking.number, f"the number of places of size {booking.kit.size}", least=1)
