"""Exact lengths: text comes in, a Fraction of an inch goes out, and back; floats are refused.

Inside the tool every length is a :class:`~fractions.Fraction` in inches. An inch is exactly 25.4 mm, so metric lengths
are exact too. An :class:`Edition` knows its unit, the marks that a person finds on its ruler and the steps of its shop.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache
from types import MappingProxyType

from generator.errors import LengthError

MILLIMETRE = Fraction(10, 254)
CENTIMETRE = 10 * MILLIMETRE
METRE = 1000 * MILLIMETRE
FOOT = Fraction(12)
YARD = Fraction(36)

UNITS: Mapping[str, Fraction] = MappingProxyType(
    {"in": Fraction(1), "ft": FOOT, "yd": YARD, "mm": MILLIMETRE, "cm": CENTIMETRE, "m": METRE}
)

_GLYPHS = {"½": (1, 2), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8)}
_LENGTH = re.compile(
    r"""\s*(?:
        (?P<whole>\d{1,6})(?:\s+|\s?-\s?)(?P<over>\d{1,4})\s?/\s?(?P<under>\d{1,4})  # 1 3/8 or 1-3/8
        | (?P<top>\d{1,6})\s?/\s?(?P<bottom>\d{1,4})                                  # 3/8
        | (?P<before>\d{0,6})\s?(?P<glyph>[½¼¾⅛⅜⅝⅞])                               # 1½
        | (?P<decimal>\d{1,6}(?:\.\d{1,6})?|\.\d{1,6})                                # 2, 0.5, .5
    )\s*(?P<unit>in|ft|yd|mm|cm|m|")?\s*""",
    re.VERBOSE | re.ASCII,
)


@dataclass(frozen=True, slots=True)
class Edition:
    """The inch or the metric version of a project: its unit, its ruler and its shop. All lengths in inches.

    ``grids`` are the ruler divisions from the one easiest to find to the hardest; ``mark`` is the finest of them, on
    which everything lies that is printed to be measured; ``cut_step`` is the step to which cut lengths along the tucks
    are rounded up.
    """

    name: str
    unit: str
    unit_length: Fraction
    grids: tuple[Fraction, ...]
    mark: Fraction
    wish_step: Fraction
    cut_step: Fraction
    buy_unit: str
    buy_step: Fraction


INCH = Edition(
    name="inch",
    unit="in",
    unit_length=Fraction(1),
    grids=(Fraction(1), Fraction(1, 2), Fraction(1, 4), Fraction(1, 8), Fraction(1, 16)),
    mark=Fraction(1, 16),
    wish_step=Fraction(1, 8),
    cut_step=Fraction(1, 8),
    buy_unit="yd",
    buy_step=YARD / 8,
)
METRIC = Edition(
    name="metric",
    unit="cm",
    unit_length=CENTIMETRE,
    grids=(5 * CENTIMETRE, CENTIMETRE, 5 * MILLIMETRE, MILLIMETRE),
    mark=MILLIMETRE,
    wish_step=3 * MILLIMETRE,
    cut_step=5 * MILLIMETRE,
    buy_unit="m",
    buy_step=10 * CENTIMETRE,
)
EDITIONS: Mapping[str, Edition] = MappingProxyType({"inch": INCH, "metric": METRIC})


# Signs that look like others: the stroke of a set fraction, and spaces of other widths.
ALIKE = str.maketrans({"\N{FRACTION SLASH}": "/", "\N{NO-BREAK SPACE}": " ", "\u202f": " ", "\u2009": " "})


def read_length(text: str, unit: str | None = None) -> Fraction:
    """Return the exact length that a text names.

    Parameters
    ----------
    text : str
        ``2``, ``3/8``, ``1 3/8``, ``1-3/8``, ``1½`` or ``0.5``, with or without ``in``, ``"``, ``ft``, ``yd``, ``mm``,
        ``cm`` or ``m``.
    unit : str, optional
        The unit of a text that names none; without it such a text is refused.

    Returns
    -------
    Fraction
        The length [in].

    Raises
    ------
    LengthError
        If the text is anything else; the message says what was found and what to write.
    TypeError
        If ``text`` is no text: a float is never a length.

    Examples
    --------
    >>> read_length("1 3/8 in")
    Fraction(11, 8)
    >>> read_length("2.54 cm")
    Fraction(1, 1)
    >>> read_length("0", "cm")
    Fraction(0, 1)
    """
    if not isinstance(text, str):
        raise TypeError(f"a length is read from text, not from {type(text).__name__}")
    text = text.translate(ALIKE)
    found = _LENGTH.fullmatch(text)
    if found is None:
        raise LengthError(_refusal(text))
    number = _number(found, text)
    named = {'"': "in", None: unit}.get(found["unit"], found["unit"])
    if named is None:
        shown = text.strip()
        raise LengthError(f"'{shown}' names no unit; write for example '{shown} in' or '{shown} cm'")
    return number * UNITS[named]


def _number(found: re.Match[str], text: str) -> Fraction:
    if found["whole"] is not None:
        over, under = int(found["over"]), int(found["under"])
        if under == 0 or over >= under:
            raise LengthError(f"'{text.strip()}' is no mixed number: {over}/{under} is not less than 1")
        return int(found["whole"]) + Fraction(over, under)
    if found["top"] is not None:
        if int(found["bottom"]) == 0:
            raise LengthError(f"'{text.strip()}' divides by zero; write a fraction such as 3/8")
        return Fraction(int(found["top"]), int(found["bottom"]))
    if found["glyph"] is not None:
        return int(found["before"] or 0) + Fraction(*_GLYPHS[found["glyph"]])
    return Fraction(found["decimal"])


def _refusal(text: str) -> str:
    shown = text.strip() if len(text) <= 40 else text[:40].strip() + " ..."
    if not shown:
        return "a length is wanted, nothing was found; write for example '1 3/8 in' or '3.5 cm'"
    if re.search(r"\d,\d", shown):
        return f"'{shown}' is not a length; write the decimal with a point, for example '4.5 cm'"
    if shown.startswith(("-", "−")):
        return f"'{shown}' is not a length; a length is never less than nothing"
    return f"'{shown}' is not a length; write for example '1 3/8 in', '3/8 in', '3.5 cm' or '6 mm'"


def write_length(length: Fraction, edition: Edition, *, unit: bool = False) -> str:
    """Return the exact text of a length in the unit of an edition; nothing is rounded.

    Parameters
    ----------
    length : Fraction
        The length [in]; may be negative (a correction).
    edition : Edition
        Inches are written as mixed numbers, centimetres as decimals where they end, else as mixed numbers.
    unit : bool
        Whether to add the unit.

    Returns
    -------
    str
        For example ``45 1/2`` or ``113.5``, with ``unit`` ``45 1/2 in``.

    Raises
    ------
    TypeError
        If ``length`` is a float.

    Examples
    --------
    >>> write_length(Fraction(91, 2), INCH)
    '45 1/2'
    >>> write_length(Fraction(10, 254), METRIC, unit=True)
    '0.1 cm'
    """
    if isinstance(length, float):
        raise TypeError("a length is written from a Fraction, not from a float")
    text = _bare(Fraction(length) / edition.unit_length, edition.unit)
    return f"{text} {edition.unit}" if unit else text


def _ends(value: Fraction) -> bool:
    """Whether a value is a decimal of at most four places."""
    return 10_000 % value.denominator == 0


def _decimal(value: Fraction) -> str:
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value), 1)
    places = f"{int(rest * 10_000):04d}".rstrip("0")
    return f"{sign}{whole}.{places}" if places else f"{sign}{whole}"


def _mixed(value: Fraction) -> str:
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value), 1)
    parts = (str(whole) if whole or not rest else "", str(rest) if rest else "")
    return f"{sign}{' '.join(filter(None, parts))}"


def say_length(length: Fraction, edition: Edition) -> str:
    """Return a length as a sheet says it, with its unit: to the finest mark, small metric lengths in millimetres.

    Examples
    --------
    >>> say_length(Fraction(3, 8), INCH), say_length(6 * MILLIMETRE, METRIC), say_length(Fraction(1, 3), INCH)
    ('3/8 in', '6 mm', '5/16 in')
    """
    said = round_nearest(length, edition.mark)
    if edition.unit == "cm" and said != 0 and abs(said) < CENTIMETRE:
        return f"{_decimal(said / MILLIMETRE)} mm"
    return write_length(said, edition, unit=True)


def on_ruler(length: Fraction, edition: Edition) -> str:
    """Return a length without its unit, to the finest mark of an edition's ruler: '13 1/2'."""
    return write_length(round_nearest(length, edition.mark), edition)


def say_range(least: Fraction, most: Fraction, edition: Edition, joint: str = "to") -> str:
    """Return a range of lengths in one unit, told once; where both read alike, the one length.

    Examples
    --------
    >>> say_range(Fraction(1, 16), Fraction(5, 8), INCH), say_range(2 * MILLIMETRE, 13 * MILLIMETRE, METRIC)
    ('1/16 to 5/8 in', '0.2 to 1.3 cm')
    >>> say_range(3 * MILLIMETRE, 8 * MILLIMETRE, METRIC, "and"), say_range(Fraction(1), Fraction(1), INCH)
    ('3 and 8 mm', '1 in')
    """
    low, high = (round_nearest(length, edition.mark) for length in (least, most))
    if low == high:
        return say_length(high, edition)
    unit = edition.unit_length if edition.unit == "in" or high >= CENTIMETRE else MILLIMETRE
    name = edition.unit if unit == edition.unit_length else "mm"
    return f"{_bare(low / unit, name)} {joint} {_bare(high / unit, name)} {name}"


# A cutting layout writes the same lengths at every scale that is tried.
@lru_cache(maxsize=4096)
def _bare(value: Fraction, unit: str) -> str:
    return _mixed(value) if unit == "in" or not _ends(value) else _decimal(value)


def write_number(number: Fraction) -> str:
    """Return a plain number exactly: a whole number, a decimal of at most four places, or a mixed number."""
    return _bare(Fraction(number), "")


def round_down(length: Fraction, step: Fraction) -> Fraction:
    """Return the largest multiple of a step that is not above a length [in]."""
    return math.floor(length / step) * step


def round_up(length: Fraction, step: Fraction) -> Fraction:
    """Return the smallest multiple of a step that is not below a length [in]."""
    return math.ceil(length / step) * step


def round_nearest(length: Fraction, step: Fraction) -> Fraction:
    """Return the multiple of a step nearest to a length [in]; exactly between two, the upper one.

    Examples
    --------
    >>> round_nearest(Fraction(3, 16), Fraction(1, 8))
    Fraction(1, 4)
    """
    return math.floor(length / step + Fraction(1, 2)) * step


def on_step(length: Fraction, step: Fraction) -> bool:
    """Return whether a length is a whole number of steps."""
    return (length / step).denominator == 1


def coarsest_grid(lengths: tuple[Fraction, ...], edition: Edition) -> int | None:
    """Return the place in ``edition.grids`` of the coarsest division that holds every length, or None.

    Examples
    --------
    >>> coarsest_grid((Fraction(1), Fraction(5, 2)), INCH)
    1
    """
    holding = (all(on_step(length, grid) for length in lengths) for grid in edition.grids)
    return next((place for place, holds in enumerate(holding) if holds), None)
