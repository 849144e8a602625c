"""Formulas, first reading: text comes in, numbers, words and signs with their columns go out.

Everything that can be read two ways (``1-1/2``, ``side/3/4``, ``4,5``) is refused here, with what to write instead.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from itertools import pairwise
from typing import Literal

from generator.definitions.faults import Fault
from generator.lengths import ALIKE, UNITS
from generator.limits import LONGEST_FORMULA

RESERVED = frozenset({"or", "to", "then", "by", "and", "pi", *UNITS})
_GLYPHS = {"½": (1, 2), "¼": (1, 4), "¾": (3, 4), "⅛": (1, 8), "⅜": (3, 8), "⅝": (5, 8), "⅞": (7, 8)}
_SIGNS = {"×": "*", "·": "*", "÷": "/", "−": "-", "–": "-"}
_SPELT = {
    "in": ("inch", "inches", "ins", "zoll"),
    "ft": ("foot", "feet"),
    "yd": ("yard", "yards", "yds"),
    "mm": ("millimetre", "millimetres", "millimeter", "millimeters", "mms"),
    "cm": ("centimetre", "centimetres", "centimeter", "centimeters", "cms"),
    "m": ("metre", "metres", "meter", "meters"),
}
_UNIT_MEANT = {spelt: unit for unit, words in _SPELT.items() for spelt in words}
_TOKEN = re.compile(
    r"""(?P<space>\s+)
    | (?P<twoways>\d+-\d+/\d+)
    | (?P<comma>\d+,\d+)
    | (?P<mixed>\d+\s+\d+/\d+)
    | (?P<fraction>\d+/\d+)
    | (?P<glyph>(?:\d+\s?)?[½¼¾⅛⅜⅝⅞])
    | (?P<decimal>\d+(?:\.\d+)?|\.\d+)
    | (?P<word>[^\W\d_]\w*)
    | (?P<power>\*\*|\^)
    | (?P<sign>[-+*/(),.×·÷−–])""",
    re.VERBOSE | re.ASCII,
)
_WORD = re.compile(r"[^\W\d_]\w*")
_NO_MEANING = {
    '"': "'\"' has no meaning here; write 'in' for inches",
    "”": "'”' has no meaning here; write 'in' for inches",
    "'": "\"'\" has no meaning here; write 'ft' for feet, and no quotation marks",
    "=": "a formula has no =; the key before the colon is its name",
    "<": "formulas have no < or >; for the smaller or larger of two write smaller(a, b) or larger(a, b)",
    ">": "formulas have no < or >; for the smaller or larger of two write smaller(a, b) or larger(a, b)",
    "%": "a formula has no %; write 3/100 for 3 %",
    "[": "only round brackets ( ) are used",
    "{": "only round brackets ( ) are used, and a name stands without any",
    "…": "write the range with the word to, as in 1 in to 2 in",
}


@dataclass(frozen=True, slots=True)
class Token:
    """A number, a word, a sign or the end, and the characters it takes up."""

    kind: Literal["number", "word", "sign", "end"]
    text: str
    start: int
    end: int
    value: Fraction = Fraction(0)


def tokens(text: str, skip: int = 0) -> list[Token]:
    """Return the tokens of a formula after the first ``skip`` characters, the last token of kind ``end``.

    Raises
    ------
    Fault
        At the character that cannot be read, or that can be read two ways.

    Examples
    --------
    >>> [(token.kind, token.text) for token in tokens("1 1/2 in")]
    [('number', '1 1/2'), ('word', 'in'), ('end', '')]
    """
    if len(text) - skip > LONGEST_FORMULA:
        told = f"a formula of more than {LONGEST_FORMULA} characters; give its parts names under measures"
        raise Fault(told, skip + LONGEST_FORMULA)
    text = text.translate(ALIKE)
    found: list[Token] = []
    place = skip
    while place < len(text):
        match = _TOKEN.match(text, place) or _WORD.match(text, place)
        if match is None:
            shown = text[place]
            raise Fault(_NO_MEANING.get(shown, f"'{shown}' has no meaning here"), place)
        if match.lastgroup != "space":
            found.append(_token(match))
        place = match.end()
    found.append(Token("end", "", len(text), len(text)))
    _refuse_two_readings(found)
    return found


def _token(match: re.Match[str]) -> Token:
    text, start, end = match.group(), match.start(), match.end()
    if match.lastgroup == "twoways":
        whole, rest = text.split("-")
        told = f"'{text}' can be read two ways; write '{whole} {rest}' for {whole} and {rest}"
        raise Fault(f"{told}, or '{whole} - {rest}' to take it away", start)
    if match.lastgroup == "comma":
        raise Fault(f"write a decimal with a point: {text.replace(',', '.')}", start)
    if match.lastgroup == "power":
        raise Fault(f"'{text}' is not used; there are no powers: write side * side", start)
    if match.lastgroup == "sign":
        return Token("sign", _SIGNS.get(text, text), start, end)
    if match.lastgroup in (None, "word"):
        return Token("word", text, start, end)
    if end - start > 24:
        raise Fault("a number with so many digits is no length that can be cut", start)
    return Token("number", text, start, end, _value(match))


def _value(match: re.Match[str]) -> Fraction:
    text = match.group()
    if match.lastgroup == "glyph":
        return int(text[:-1].strip() or 0) + Fraction(*_GLYPHS[text[-1]])
    if match.lastgroup == "decimal":
        return Fraction(text)
    whole, _, part = text.rpartition(" ") if match.lastgroup == "mixed" else ("0", "", text)
    top, bottom = (int(digits) for digits in part.split("/"))
    if bottom == 0:
        raise Fault(f"'{text}' divides by nothing", match.start())
    if match.lastgroup == "mixed" and top >= bottom:
        raise Fault(f"'{text}' is not a mixed number: {top}/{bottom} is not less than 1", match.start())
    return int(whole) + Fraction(top, bottom)


def _refuse_two_readings(found: list[Token]) -> None:
    """Refuse a fraction beside a division, and units spelt out."""
    for before, token in pairwise(found):
        if before.text == "/" and "/" in token.text and token.kind == "number":
            told = f"'/ {token.text}' can be read two ways; put brackets round what belongs together"
            raise Fault(told, before.start)
        if token.text == "/" and "/" in before.text and before.kind == "number":
            told = f"'{before.text} /' can be read two ways; put brackets round what belongs together"
            raise Fault(told, before.start)
        if before.kind == "number" and token.text.lower() in _UNIT_MEANT:
            told = f"'{before.text} {token.text}': write {_UNIT_MEANT[token.text.lower()]}"
            raise Fault(told, token.start)
        if before.kind == "number" and token.kind == "word" and token.text.lower() in UNITS and token.text not in UNITS:
            raise Fault(f"'{token.text}': write units small, {token.text.lower()}", token.start)
