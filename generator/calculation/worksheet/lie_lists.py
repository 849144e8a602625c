"""How tucks lie when they are pressed, and which edge is which when a panel hangs: pieces come in, words go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.turning.pressed import spaces_shown
from generator.calculation.worked import Panel
from generator.calculation.worked_piece import Piece
from generator.lengths import Edition, on_ruler, say_length

_HUNG = {"top": "top", "bottom": "lower edge", "left": "left side", "right": "right side"}


def pressed_list(panel: Panel, edition: Edition) -> str:
    """Return what shows between the tucks of a panel as they are pressed: a sentence where it is alike, else a list."""
    spaces = spaces_shown(panel.across, panel.pressed) if panel.pressed else ()
    if len(set(spaces)) == 1:
        return f"{_shown(spaces[0], edition)} between every two of them."
    places: dict[Fraction, list[str]] = {}
    for number, space in enumerate(spaces, 1):
        places.setdefault(space, []).append(f"{number} and {number + 1}")
    usual = max(places, key=lambda space: len(places[space]), default=Fraction(0))
    rare = [
        f"{_shown(space, edition)} between tucks {', '.join(told)}." for space, told in places.items() if space != usual
    ]
    if not rare:
        return ""
    others = "the others" if len(places[usual]) > 1 else f"tucks {places[usual][0]}"
    return " ".join((*rare, f"{_shown(usual, edition)} between {others}."))


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
        sides = enumerate(hung.items())
        names = [f"the {side} edge {'' if place else 'becomes '}the {_HUNG[now]}" for place, (side, now) in sides]
        lines.append(f"- The {piece.label}, on the table: {', '.join(names)}.")
    return "\n".join(lines)


def rod_words(panel: Panel, edition: Edition) -> str:
    """Return how many rods go into a panel, and how thick they are: '5 rods 3/8 in thick'."""
    number, rods = panel.across.count, panel.rods
    if rods is None:
        return "no rods"
    return f"{number} {'rods' if number != 1 else 'rod'} {say_length(rods.thick, edition)} thick"


def ring_words(panel: Panel, edition: Edition) -> str:
    """Return where the rings are sewn on along every tuck, from its left end."""
    rings = panel.rods.rings if panel.rods is not None else ()
    return f"at {', '.join(on_ruler(place, edition) for place in rings)} {edition.unit}"
