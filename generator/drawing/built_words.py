"""Words as they are set: a text comes in, runs of letters with their places go out, fractions built small.

No font feature works in an SVG image, so a fraction is three runs: numerator, fraction slash and denominator.
"""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from generator.drawing.plotting import FT2Font, LoadFlags
from generator.drawing.typeface import Typeface

_FRACTION = re.compile(r"((?<=\d) )?(?<![\d/.])(\d{1,3})/(\d{1,3})(?![\d/])")


@dataclass(frozen=True, slots=True)
class LetterRun:
    """Letters of one size on one line: ``start`` after the first letter, ``rise`` over the line, ``scale`` [all em]."""

    words: str
    start: float = 0.0
    scale: float = 1.0
    rise: float = 0.0
    bold: bool = False


@dataclass(frozen=True, slots=True)
class SetWords:
    """Words as they are set: their runs and how wide they are together [em]."""

    runs: tuple[LetterRun, ...]
    width: float


@lru_cache(maxsize=4096)
def set_words(words: str, font: Typeface, *, bold: bool) -> SetWords:
    """Return the runs of words; a fraction such as ``9/16`` is built, close to the whole number before it.

    Examples
    --------
    >>> from generator.drawing.typeface import TYPEFACE
    >>> [run.words for run in set_words("10 9/16 in", TYPEFACE, bold=False).runs]
    ['10', '9', '⁄', '16', ' in']
    """
    runs: list[LetterRun] = []
    built = font.fraction
    width, told = 0.0, 0

    def add(letters: str, scale: float = 1.0, rise: float = 0.0, *, heavy: bool = bold) -> None:
        nonlocal width
        if letters:
            runs.append(LetterRun(letters, width, scale, rise, heavy))
            width += scale * sum(_advance(letter, font, bold=heavy) for letter in letters)

    for found in _FRACTION.finditer(words):
        add(words[told : found.start()])
        width += built.after_whole if found[1] else 0.0
        add(found[2], built.digits, built.raised, heavy=True)
        add(built.slash, built.slash_scale)
        add(found[3], built.digits, built.lowered, heavy=True)
        told = found.end()
    add(words[told:])
    return SetWords(tuple(runs), width)


@lru_cache(maxsize=32)
def capital_middle(font: Typeface) -> float:
    """Return how high the middle of a capital lies over the line [em]."""
    face = _opened(font.regular[0])
    box = face.load_char(ord("H"), flags=LoadFlags.NO_SCALE).bbox
    return float(box[3]) / face.units_per_EM / 2


@lru_cache(maxsize=16)
def _opened(file: Path) -> FT2Font:
    return FT2Font(str(file))


@lru_cache(maxsize=2048)
def _advance(letter: str, font: Typeface, *, bold: bool) -> float:
    """Return how far a letter moves on [em], in the first font that has it."""
    faces = [_opened(file) for file in font.files(bold=bold)]
    face = next((face for face in faces if face.get_char_index(ord(letter))), faces[0])
    return float(face.load_char(ord(letter), flags=LoadFlags.NO_SCALE).horiAdvance / face.units_per_EM)
