"""Findings for the screen: findings come in, lines go out, errors first, each once with the sizes that share it."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from generator.errors import Finding, Level, printable

_ORDER: tuple[Level, ...] = ("error", "warning", "note")
_MOST = 3


def told(found: Iterable[Finding]) -> list[tuple[Level, str]]:
    """Return a line for each finding, with its level; the sizes and editions that share it stand at its end."""
    workings: dict[Finding, list[str]] = {}
    for finding in found:
        alike = replace(finding, size="", edition="")
        workings.setdefault(alike, []).append(", ".join(filter(None, (finding.size, finding.edition))))
    in_order = sorted(workings, key=lambda finding: _ORDER.index(finding.level))
    return [(one.level, _with(printable(str(one), lines=True), _where(workings[one]))) for one in in_order]


def _with(text: str, where: str) -> str:
    """A finding with its sizes: behind its sentence, before the lines that may follow to be pasted."""
    sentence, line, rest = text.partition("\n")
    return f"{sentence}{where}{line}{rest}"


def _where(workings: list[str]) -> str:
    named = [working for working in workings if working]
    if not named:
        return ""
    rest = len(named) - _MOST
    return f" ({'; '.join(named[:_MOST])}{f'; and {rest} more' if rest > 0 else ''})"
