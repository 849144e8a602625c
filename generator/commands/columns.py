"""Columns for the screen: rows of cells come in, lines of text go out."""

from __future__ import annotations

import re
from collections.abc import Sequence
from textwrap import wrap

# A mixed number and the unit of a number stay on one line: "13" at its end would be read as 13, not 13 3/4.
_TIED = re.compile(r"(?<=\d) (?=\d+/\d|(?:in|ft|yd|mm|cm|m)\b)")
_TIE = "\N{NO-BREAK SPACE}"
UNIT_WORDS = {"in": "inches", "cm": "centimetres"}


def in_columns(rows: Sequence[Sequence[str]]) -> list[str]:
    """Return rows as lines in columns, the first row as a head; the first column to the left, others to the right."""
    widths = [max(len(row[place]) for row in rows) for place in range(len(rows[0]))]
    lines = [_line(row, widths) for row in rows]
    lines.insert(1, "  " + "  ".join("-" * width for width in widths))
    return lines


def _line(row: Sequence[str], widths: Sequence[int]) -> str:
    cells = [cell.rjust(width) for cell, width in zip(row, widths, strict=True)]
    cells[0] = row[0].ljust(widths[0])
    return "  " + "  ".join(cells).rstrip()


def indented(head: str, text: str, width: int = 96, hang: int = 0) -> list[str]:
    """Return a text after a head, its further lines indented to the end of the head or by ``hang``.

    Examples
    --------
    >>> indented("marks: ", "1 3/4, 13 3/4", width=16)
    ['marks: 1 3/4,', '       13 3/4']
    """
    indent = " " * (hang or len(head))
    lines = wrap(_TIED.sub(_TIE, text), width - len(indent)) or [""]
    return [(indent if place else head) + line.replace(_TIE, " ") for place, line in enumerate(lines)]
