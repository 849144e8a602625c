"""The paper of a class: bookings, kits and pages come in, kit slips and the print run go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.calculation.making.classes import Booking, Kit, KitCount, places_of
from generator.calculation.refused import whole_number
from generator.errors import CalculationError


@dataclass(frozen=True, slots=True)
class KitSlip:
    """The slip in one kit: its number among all, what it is, and for whom (empty where nobody is named)."""

    number: int
    among: int
    kit: Kit
    student: str
    own_cloth: bool
    spare: bool


@dataclass(frozen=True, slots=True)
class PrintLine:
    """One line of the print run: copies of a handout, its pages, and the sheets of paper that all copies take.

    ``both_sides`` is for paper printed on both sides, ``one_side`` on one; None where the pages are not known.
    """

    kit: Kit
    copies: int
    pages: int | None = None
    both_sides: int | None = None
    one_side: int | None = None


def kit_slips(bookings: Sequence[Booking], spare: Mapping[Kit, int]) -> tuple[KitSlip, ...]:
    """Return a slip for every kit of a class, numbered through, the spare ones last.

    Parameters
    ----------
    bookings : sequence of Booking
        The places of the class.
    spare : Mapping of Kit to int
        Spare kits [-].

    Returns
    -------
    tuple of KitSlip
        One a kit.

    Raises
    ------
    CalculationError
        If a booking names more students than it has places.

    Examples
    --------
    >>> small = Kit("small", "inch")
    >>> for slip in kit_slips([Booking(small, 2, ("Ines",))], {small: 1}):
    ...     print(slip.number, slip.among, slip.student or "-", slip.spare)
    1 3 Ines False
    2 3 - False
    3 3 - True

    References
    ----------
    Derived in the docstring above.
    """
    slips: list[tuple[Kit, str, bool, bool]] = []
    for booking in bookings:
        if len(booking.students) > places_of(booking):
            raise CalculationError(
                f"{len(booking.students)} students are named for {booking.number} places of size {booking.kit.size}; "
                f"make the number {len(booking.students)} or take names out"
            )
        names = booking.students + ("",) * (booking.number - len(booking.students))
        slips += [(booking.kit, name, booking.own_cloth, False) for name in names]
    for kit, number in spare.items():
        slips += [(kit, "", False, True)] * whole_number(number, "the number of spare kits")
    return tuple(
        KitSlip(place, len(slips), kit, student, own, extra)
        for place, (kit, student, own, extra) in enumerate(slips, 1)
    )


def print_run(counts: Sequence[KitCount], pages: Mapping[Kit, int]) -> tuple[PrintLine, ...]:
    """Return what to print for a class: one handout for every kit that is packed.

    A copy begins on a new sheet, so a copy of n pages takes n sheets, or n / 2 rounded up when both sides are printed.

    Parameters
    ----------
    counts : sequence of KitCount
        How often each kit is needed.
    pages : Mapping of Kit to int
        Pages of the handout of each kit, as far as they are known [-].

    Returns
    -------
    tuple of PrintLine
        One a kit; those that nobody needs are left out. Where the pages are not known, nothing is said of paper.

    Examples
    --------
    Five copies of seven pages: 4 sheets each on both sides, 20 in all; 35 on one side.

    >>> small = Kit("small", "inch")
    >>> line = print_run([KitCount(small, 4, 0, 1)], {small: 7})[0]
    >>> line.both_sides, line.one_side
    (20, 35)
    >>> print_run([KitCount(small, 4, 0, 1)], {})[0]
    PrintLine(kit=Kit(size='small', edition='inch'), copies=5, pages=None, both_sides=None, one_side=None)

    References
    ----------
    Derived in the docstring above.
    """
    lines = []
    for count in counts:
        each = pages.get(count.kit)
        if not count.packed:
            continue
        if each is None:
            lines.append(PrintLine(count.kit, count.packed))
        else:
            lines.append(
                PrintLine(count.kit, count.packed, each, count.packed * ((each + 1) // 2), count.packed * each)
            )
    return tuple(lines)
