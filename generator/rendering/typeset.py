"""Numbers as a printer sets them: plain text comes in, escaped HTML with real fractions goes out.

The text itself stays "1 3/8 in": it can be searched, copied and read aloud. A style sheet turns the marked fraction
into one with a raised numerator, and keeps number, fraction and unit on one line.
"""

from __future__ import annotations

import re
from fractions import Fraction

from markupsafe import Markup, escape

from generator.lengths import Edition, on_ruler, say_length

_AMOUNT = re.compile(
    r"""(?<![\w/.⁄-])
        (?: (?:(?P<whole>\d{1,6})[ ])? (?P<over>\d{1,4})/(?P<under>\d{1,4})
          | (?P<plain>\d{1,6}(?:\.\d{1,4})?) (?=[ ](?:in|cm|mm|yd|ft|m)\b) )
        (?P<unit>[ ](?:in|cm|mm|yd|ft|m)\b)?
        (?![\w/])""",
    re.VERBOSE | re.ASCII,
)

# Where a running list of numbers may not be broken: before its dots, and between an entry's number and what it counts.
_HELD = re.compile(r" (?=· )|(?<=\d:) (?=\d)", re.ASCII)


def typeset(text: str) -> Markup:
    r"""Return a text with its fractions and its numbers with units marked for setting; everything else is escaped.

    Examples
    --------
    >>> typeset("cut 1 3/8 in")
    Markup('cut <span class="n">1 <span class="f">3/8</span> in</span>')
    >>> typeset("on 3/8/2031 & <b>")
    Markup('on 3/8/2031 &amp; &lt;b&gt;')
    >>> str(typeset("18: 14.5 · 19: 16")).split(" ")
    ['18:\xa014.5\xa0·', '19:\xa016']
    """
    text = _HELD.sub("\N{NO-BREAK SPACE}", text)
    parts: list[Markup] = []
    end = 0
    for found in _AMOUNT.finditer(text):
        parts += [escape(text[end : found.start()]), _amount(found)]
        end = found.end()
    return Markup("").join([*parts, escape(text[end:])])


def _amount(found: re.Match[str]) -> Markup:
    unit = found["unit"] or ""
    if found["plain"]:
        return Markup('<span class="n">{}{}</span>').format(found["plain"], unit)
    if int(found["over"]) >= int(found["under"]):
        return escape(found[0])
    whole = f"{found['whole']} " if found["whole"] else ""
    return Markup('<span class="n">{}<span class="f">{}/{}</span>{}</span>').format(
        whole, found["over"], found["under"], unit
    )


def said(length: Fraction, edition: Edition) -> Markup:
    """Return a length with its unit, set."""
    return typeset(say_length(length, edition))


def bare(length: Fraction, edition: Edition) -> Markup:
    """Return a length without its unit, set: for columns whose heading names the unit."""
    return typeset(on_ruler(length, edition))


def as_sentence(text: str) -> str:
    """Return a label as it begins a line: its first letter large, the others as they are."""
    return text[:1].upper() + text[1:]


def time_words(minutes: int) -> str:
    """Return a time in hours and minutes.

    Examples
    --------
    >>> time_words(200), time_words(45), time_words(120)
    ('3 h 20 min', '45 min', '2 h')
    """
    hours, rest = divmod(minutes, 60)
    parts = ([f"{hours} h"] if hours else []) + ([f"{rest} min"] if rest or not hours else [])
    return " ".join(parts)
