"""Edges and lengths typed on the command line: words come in, exact ends and ranges go out."""

from __future__ import annotations

from fractions import Fraction
from typing import get_args

import click

from generator.calculation.worked import End, EndKind
from generator.errors import LengthError
from generator.lengths import Edition, read_length

KINDS: tuple[EndKind, ...] = get_args(EndKind)
_WIDTHS = {"seam": (1, 1), "hem": (1, 2), "turnover": (1, 1), "bound": (0, 1)}


def typed_length(text: str, edition: Edition, option: str) -> Fraction:
    """Return the length that was typed [in]; a bare number is in the edition's unit."""
    try:
        return read_length(text, edition.unit)
    except LengthError as fault:
        raise click.BadParameter(str(fault), param_hint=option) from fault


def typed_measure(text: str, edition: Edition, option: str) -> Fraction:
    """Return a length that was typed [in] and that is more than nothing."""
    length = typed_length(text, edition, option)
    if length == 0:
        raise click.BadParameter("nothing cannot be worked with; write a length such as 3/8", param_hint=option)
    return length


def typed_range(text: str, edition: Edition, option: str) -> tuple[Fraction, Fraction]:
    """Return both ends of a range such as '1/2 to 2' [in]; one length alone is both."""
    least, _, most = text.partition(" to ")
    bounds = typed_length(least, edition, option), typed_length(most or least, edition, option)
    if bounds[0] > bounds[1]:
        raise click.BadParameter(f"'{text}' runs downwards; write the smaller length first", param_hint=option)
    return bounds


def typed_end(text: str, edition: Edition, option: str) -> End:
    """Return how an edge is finished, as typed: 'seam 1/2', 'hem 1/4 then 1', 'caught hem', 'bound 3/8', 'raw'."""
    kind = next((kind for kind in sorted(KINDS, key=len, reverse=True) if text.strip().startswith(kind)), None)
    if kind is None:
        raise click.BadParameter(f"'{text}' is no finish; write one of: {', '.join(KINDS)}", param_hint=option)
    rest = text.strip().removeprefix(kind).strip()
    widths = [typed_length(width, edition, option) for width in rest.split(" then ")] if rest else []
    least, most = _WIDTHS.get(kind, (0, 0))
    if not least <= len(widths) <= most:
        wanted = {(1, 1): "one width", (1, 2): "a width, or two with 'then' between them", (0, 1): "one width or none"}
        raise click.BadParameter(f"'{text}': '{kind}' has {wanted.get((least, most), 'no width')}", param_hint=option)
    first = widths[0] if widths else Fraction(0)
    return End(kind, first, widths[-1] if kind == "hem" else Fraction(0))
