"""Projects that are longer or stranger than those of the demo room, written short, for tests of their sheets."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from tempfile import TemporaryDirectory
from textwrap import indent

from generator.calculation.worked_project import Worksheet
from tests.room import opened_room, write_room

_CUSHION = """\
title: {title}
kind: cushion
sizes:
  small:
    side: {side}
cloths:
  plain cotton: {cloth}
pieces:
  front:
    kind: tucked panel
{front}
  back:
    kind: {back}
"""
_TUCKS = """\
tucks:
  depth: {depth}
  spacing: {spacing}
  margin: 1/2 in to 2 in or 1 cm to 5 cm
  {number}
"""


def _by_hand(tucks: int, signs: str) -> str:
    """Four rows of turns that follow no rule: no group of them repeats within a row."""
    lines, chance = [], 7
    for _ in range(4):
        line = []
        for _ in range(tucks):
            # A generator of Lehmer's, with the numbers of Park and Miller (1988).
            chance = chance * 16807 % (2**31 - 1)
            line.append(signs[chance % len(signs)])
        lines.append("    " + " ".join(line))
    return "\n".join(lines)


def _tucks(depth: str = "3/8 in or 1 cm", spacing: str = "1 1/2 in or 4 cm", number: str = "") -> str:
    return _TUCKS.format(depth=depth, spacing=spacing, number=f"number: {number}" if number else "")


def _rows(plan: str, spacing: str = "2 1/2 in or 6 cm", more: str = "") -> str:
    return f"rows:\n  {plan}\n  spacing: {spacing}\n{indent(more, '  ')}"


# By name: the front, the side of the cushion, how wide the cloth is, the kind of back.
_SIDE, _CLOTH, _BACK = "14 in or 36 cm", "44 in or 112 cm", "envelope back"
_FRONTS = {
    "two panels": (_tucks() + _rows("plan: bands"), _SIDE, _CLOTH, "tucked panel"),
    "cross tucks": (
        _tucks()
        + "cross tucks:\n  depth: 1/4 in or 6 mm\n  spacing: 1 in or 2.5 cm\n  margin: 1/2 in to 2 in or 1 cm to 5 cm",
        _SIDE,
        _CLOTH,
        _BACK,
    ),
    "unequal runs": (
        "tucks:\n  margin: 1/2 in to 3 in or 1.5 cm to 8 cm\n  runs:\n"
        "    - number: any\n      depth: 3/16 in or 4 mm\n      pitch: 3/4 in or 2 cm\n"
        "    - number: 3\n      depth: 3/16 in to 5/16 in or 4 mm to 8 mm\n      pitch: 3/4 in or 2 cm\n"
        "      pitch after: 1 in or 2.5 cm\n" + _rows("plan: one way"),
        _SIDE,
        _CLOTH,
        _BACK,
    ),
    "no rows": (_tucks(), _SIDE, _CLOTH, _BACK),
    "breadths": (_tucks() + _rows("plan: one way"), "24 in or 60 cm", "36 in or 90 cm", _BACK),
    "drawn by hand": (
        _tucks("1/4 in or 6 mm", "1 in or 2.5 cm", "24") + _rows(f"drawn plan: |\n{_by_hand(24, '<><>.')}"),
        _SIDE,
        _CLOTH,
        _BACK,
    ),
    "forty marks": (
        _tucks("1/4 in or 6 mm", "7/8 in or 2.2 cm", "40") + _rows("plan: diamonds"),
        "17 in or 43 cm",
        "60 in or 150 cm",
        _BACK,
    ),
    "many rows": (
        _tucks("1/4 in or 6 mm", "1 in or 2.5 cm") + _rows("plan: linked cells", "7/8 in or 2.2 cm"),
        "24 in or 60 cm",
        "60 in or 150 cm",
        _BACK,
    ),
    "both ends": (
        _tucks() + _rows("plan: zigzags", "1 1/2 in or 4 cm", "start: by bulk"),
        "24 in or 60 cm",
        "70 in or 180 cm",
        _BACK,
    ),
    "a hundred and twenty": (
        _tucks("1/8 in or 3 mm", "1/2 in or 1.2 cm", "120") + _rows("plan: linked cells", "4 in or 10 cm"),
        "32 in or 75 cm",
        "72 in or 180 cm",
        _BACK,
    ),
    "a hundred and twenty by hand": (
        _tucks("1/8 in or 3 mm", "1/2 in or 1.2 cm", "120")
        + _rows(f"drawn plan: |\n{_by_hand(120, '<>')}", "4 in or 10 cm"),
        "32 in or 75 cm",
        "72 in or 180 cm",
        _BACK,
    ),
}
STRANGERS = tuple(_FRONTS)


def project(name: str) -> str:
    """The project file of a stranger."""
    front, side, cloth, back = _FRONTS[name]
    if back == "tucked panel":
        back += "\n" + indent(_tucks("1/4 in or 6 mm", "1 in or 2.5 cm") + _rows("plan: linked cells"), "    ")
    return _CUSHION.format(title=name.capitalize(), side=side, cloth=cloth, front=indent(front, "    "), back=back)


@cache
def stranger(name: str, edition: str = "inch") -> Worksheet:
    """The worksheet of a stranger."""
    with TemporaryDirectory() as folder:
        file = name.replace(" ", "-")
        files = {"site/site.yaml": "room:\n  name: Net loft\n", f"projects/{file}.yaml": project(name)}
        return opened_room(write_room(Path(folder), files)).worksheet(file, "small", edition)
