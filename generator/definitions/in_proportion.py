"""Sizes in proportion: the named sizes of a project and a place between two of them come in, values go out."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generator.definitions.functions import default_step
from generator.definitions.sizes import Size, dimensions
from generator.lengths import Edition, round_nearest, write_length, write_number

Values = Mapping[str, Fraction]


def part(before: Fraction, after: Fraction, share: Fraction, sort: int | None, edition: Edition) -> Fraction:
    """Return a value so far on the way between those of two sizes, never beyond either.

    Lengths go to the nearest 1/8 in or 5 mm; numbers are whole where both of theirs are.

    Examples
    --------
    Half way from 36 to 54 in is 45 in; a quarter of the way from 2 to 5 is 2 3/4, so 3.

    >>> from generator.lengths import INCH
    >>> part(Fraction(36), Fraction(54), Fraction(1, 2), 1, INCH)
    Fraction(45, 1)
    >>> part(Fraction(2), Fraction(5), Fraction(1, 4), 0, INCH)
    Fraction(3, 1)
    """
    exact = before + (after - before) * share
    if sort == 0 and not (before.denominator == after.denominator == 1):
        return exact
    least, most = sorted((before, after))
    return min(max(least, round_nearest(exact, default_step(edition, sort or 0))), most)


def in_order(by: str, sizes: Mapping[str, Size], edition: Edition) -> list[Values]:
    """Return the values of every size, lengths in inches, in the order of one of them."""
    found = [{name: value.fixed(edition) for name, value in size.values.items()} for size in sizes.values()]
    return sorted(found, key=lambda values: values[by])


def found_by(name: str, value: Fraction, sizes: Mapping[str, Size], edition: Edition) -> dict[str, str]:
    """Return the other values of a size whose one value lies between those of two named sizes; none beyond them.

    Each is written as it would be typed.
    """
    rows, sorts = in_order(name, sizes, edition), dimensions(sizes)
    before = next((row for row in reversed(rows) if row[name] <= value), None)
    after = next((row for row in rows if row[name] >= value), None)
    if before is None or after is None:
        return {}
    apart = after[name] - before[name]
    share = (value - before[name]) / apart if apart else Fraction(0)
    found = {one: part(before[one], after[one], share, sort, edition) for one, sort in sorts.items() if one != name}
    return {
        one: write_length(length, edition, unit=True) if sorts[one] else write_number(length)
        for one, length in found.items()
    }
