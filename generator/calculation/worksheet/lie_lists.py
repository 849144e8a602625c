"""How tucks lie when they are pressed, and which edge is which when a panel hangs: pieces come in, words go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.turning.pressed import spaces_shown
from generator.calculation.worked import Panel
from generator.calculation.worked_piece import Piece
from generator.lengths import Edition, say_length

_HUNG = {"top": "top", "bottom": "lower edge", "left": "left side", "right": "right side"}


def pressed_list(panel: Panel, edition: Edition) -> str:
    """Return what shows between the tucks of a panel as they are pressed: a sentence where it is alike, else a list."""
    spaces = spaces_shown(panel.across, panel.pressed) if panel.pressed else ()
    if len(set(spaces)) == 1:
        return f"{_shown(spaces[0], edition)} between every two of them."
    places: dict[Fraction, list[str]] = {}
    for number, space in enumerate(spaces, 1):
        places.setdefault(space, []).append(f"{number} and {number + 1}")
    return " ".join(f"{_shown(space, edition)} between tucks {', '.join(told)}." for space, told in places.items())


def _shown(space: Fraction, edition: Edition) -> str:
    if space == 0:
        return "Each fold lies on the next line"
    if space < 0:
        return f"Cloth lies {say_length(-space, edition)} on cloth"
    return f"{say_length(space, edition)} of the ground shows"


def hanging_list(pieces: Sequence[Piece]) -> str:
    """Return of each piece that hangs another way up than it lies on the table which edge becomes which."""
    lines = []
    for piece in (one for one in pieces if one.quarters):
        hung = {side: piece.said(side).partition(" (")[0] for side in ("left", "right", "top", "bottom")}
        told = ", ".join(f"its {side} edge the {_HUNG[now]}" for side, now in hung.items())
        lines.append(f"- The {piece.label}: on the table {told}.")
    return "\n".join(lines)
