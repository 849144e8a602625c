"""The letters of the diagrams: the font faces of a theme come in, which files measure them goes out.

Only files of themes are used, so that words are as wide on every machine as they are on the sheet.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from generator.definitions.theme import OWN_THEMES, FontFace

_PLAIN = OWN_THEMES / "plain" / "fonts"
_BOLD = 600


@dataclass(frozen=True, slots=True)
class BuiltFraction:
    """How a fraction is built: its slash, its digits, the room after a whole number, their rise and drop [all em]."""

    slash: str
    slash_scale: float
    digits: float
    after_whole: float
    raised: float
    lowered: float


ON_PAPER = BuiltFraction("\u2044", 1.15, 0.74, 0.15, 0.28, -0.06)
# On a telephone smaller digits than the letters beside them could not be read; large ones want a slash with room.
ON_SCREEN = BuiltFraction("/", 1.0, 1.0, 0.27, 0.1, -0.1)


@dataclass(frozen=True, slots=True)
class Typeface:
    """A family and its files, regular and bold; a letter that the first file lacks is looked for in the next."""

    family: str = "Fira Sans"
    regular: tuple[Path, ...] = (_PLAIN / "FiraSans-Regular.ttf",)
    bold: tuple[Path, ...] = (_PLAIN / "FiraSans-SemiBold.ttf",)
    fraction: BuiltFraction = ON_PAPER

    def files(self, *, bold: bool) -> tuple[Path, ...]:
        """Return the files in which letters are looked for, in this order."""
        return self.bold if bold else self.regular


TYPEFACE = Typeface()


def typeface(family: str, faces: Sequence[FontFace]) -> Typeface:
    """Return the typeface of a family that a theme has.

    Raises
    ------
    ValueError
        If the theme does not have it.
    """
    own = [face for face in faces if face.family == family and face.style == "normal"]
    if not own:
        known = ", ".join(dict.fromkeys(face.family for face in faces))
        raise ValueError(
            f"font: the theme has no upright '{family}' for the diagrams; add it under 'fonts', or take one of: {known}"
        )
    others = [face.print for face in faces if face.family != family]
    bold = [face for face in own if _is_bold(face)]
    regular = [face for face in own if not _is_bold(face)]
    return Typeface(
        family,
        tuple(dict.fromkeys((*(face.print for face in (*regular, *bold)), *others))),
        tuple(dict.fromkeys((*(face.print for face in (*bold, *regular)), *others))),
    )


def _is_bold(face: FontFace) -> bool:
    return face.weight == "bold" or (face.weight.isdigit() and int(face.weight) >= _BOLD)
