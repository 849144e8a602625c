"""What every diagram comes out as: SVG text with its true size and its words."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Picture:
    """One drawn diagram.

    ``svg`` is slimmed SVG text whose text stays text; ``width`` and ``height`` are its size on paper [in]. ``alt``
    tells in a sentence or two what a person sees, ``caption`` what to look for; ``text`` is a longer equivalent in
    words where the picture holds more than a sentence can (the turns row by row), else empty.
    """

    key: str
    svg: str
    width: float
    height: float
    alt: str
    caption: str
    text: str = ""
