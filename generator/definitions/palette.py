"""Colours of a theme: sections ``palette`` of its files come in, checked colours by day and in the dark go out."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence

from generator.definitions.contrast import contrast
from generator.definitions.faults import Faults, meant
from generator.definitions.nodes import Group, Node, Scalar
from generator.errors import Place

# Every colour of a theme with the contrast that it must keep to all grounds (WCAG 2.2: text 4.5, lines and signs 3).
COLOURS: Mapping[str, float] = {
    "ink": 7.0,
    "quiet": 4.5,
    "accent": 4.5,
    "signal": 4.5,
    "line": 3.0,
    "edge": 3.0,
    "paper": 1.0,
    "ground": 1.0,
    "wash": 1.0,
}
GROUNDS = ("paper", "ground", "wash")
DARK = "dark"
# Thin lines between rows of a table lie on paper only.
_ON_PAPER = ("line",)

Colours = dict[str, Scalar]


def read_palette(sections: Sequence[Node | None], place: Place, faults: Faults) -> tuple[Colours, Colours]:
    """Return the colours by day and in the dark; ``sections`` are those of the theme and of its bases, its own first.

    ``place`` is where something that lacks altogether is told.
    """
    groups = [section for section in sections if isinstance(section, Group)]
    day = _merged(groups, faults, (DARK,))
    night = _merged([found for group in groups if isinstance(found := group.get(DARK), Group)], faults, ())
    if not faults.errors:
        _refuse_gaps(day, "palette", place, faults)
        _refuse_gaps(night, f"palette: {DARK}", place, faults)
    _check(day, "", faults)
    _check(night, "in the dark ", faults)
    return day, night


def _merged(groups: Sequence[Group], faults: Faults, others: Sequence[str]) -> Colours:
    """Colours of all files, where the theme's own wins."""
    merged: Colours = {}
    for group in reversed(groups):
        for name, (key, found) in group.entries.items():
            if name in others:
                continue
            if name not in COLOURS:
                faults.add(key.place, f"'{key.text}' is not known here{meant(name, COLOURS)}")
            elif isinstance(found, Scalar):
                merged[name] = found
            else:
                faults.add(found.place, f"'{name}' wants words, not a list or keys of its own")
    return merged


def _refuse_gaps(colours: Colours, section: str, place: Place, faults: Faults) -> None:
    for missing in sorted(set(COLOURS) - set(colours)):
        faults.add(place, f"'{section}' lacks '{missing}'; give it here or in the theme this is based on")


def _check(colours: Colours, when: str, faults: Faults) -> None:
    wrong = [words for words in colours.values() if not re.fullmatch(r"#[0-9a-f]{6}", words.text)]
    for words in wrong:
        faults.add(words.place, f"'{words.text}' is not a colour; write six digits such as '#7a2e1f'")
    if wrong:
        return
    for name, words in colours.items():
        grounds = GROUNDS[:1] if name in _ON_PAPER else GROUNDS
        found = {ground: contrast(words.text, colours[ground].text) for ground in grounds if ground in colours}
        worst = min(found, key=lambda ground: found[ground], default="")
        if worst and found[worst] < COLOURS[name]:
            told = f"{when}'{name}' has a contrast of {found[worst]:.1f} to the {worst}"
            faults.add(words.place, f"{told}; it needs {COLOURS[name]:g} to be readable")
