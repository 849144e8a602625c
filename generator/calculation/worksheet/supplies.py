"""Supplies: keys of the project file come in, lines of the shopping list go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked_project import SupplyLine
from generator.calculation.worksheet.embroideries import embroidery_supplies
from generator.calculation.worksheet.scope import Scope
from generator.lengths import Edition, say_length, write_number


def worked_supplies(scope: Scope) -> tuple[SupplyLine, ...]:
    """Return the shopping list of the project beside cloth, thread and closures."""
    lines = []
    for model in scope.project.supplies:
        item = scope.text(model.item)
        number = scope.value(model.quantity)
        length = scope.value(model.length) if model.length is not None else Fraction(0)
        amount = supply_amount(number, length, scope.edition)
        lines.append(SupplyLine(item, amount, scope.text(model.note), number, length, model.shared_by))
    return (*lines, *embroidery_supplies(scope))


def supply_amount(number: Fraction, length: Fraction, edition: Edition) -> str:
    """Return how much of a supply is needed; ``length`` is that of each [in], 0 where it is only counted.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> [supply_amount(Fraction(3), Fraction(length), INCH) for length in (0, 12)]
    ['3', '3 of 12 in']
    >>> supply_amount(Fraction(1), Fraction(12), INCH)
    '12 in'
    """
    if not length:
        return write_number(number)
    each = say_length(length, edition)
    return each if number == 1 else f"{write_number(number)} of {each}"
