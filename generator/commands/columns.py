"""Columns for the screen: rows of cells come in, lines of text go out."""

from __future__ import annotations

from collections.abc import Sequence
from textwrap import wrap

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
    """Return a text after a head, its further lines indented to the end of the head or by ``hang``."""
    indent = " " * (hang or len(head))
    return [
        head + line if place == 0 else indent + line
        for place, line in enumerate(wrap(text, width - len(indent)) or [""])
    ]
