"""How diagrams look: a theme's values come in as a mapping, a checked and frozen Style goes out.

Meaning never rests on colour alone: every sort of line has its own weight or dashes, so that a sheet still reads in
grey, on a tired photocopier and under red-green blindness.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields, replace
from difflib import get_close_matches
from types import MappingProxyType

from generator.definitions.contrast import contrast
from generator.definitions.theme import FontFace, Theme
from generator.drawing.typeface import ON_SCREEN, TYPEFACE, Typeface, typeface
from generator.errors import FaultyFileError, Finding, Place

SMALLEST_TEXT = 9.0
THINNEST_LINE = 0.85  # 0.3 mm: a line of 0.2 mm was lost in the second copy of a copy at 70 %
LEAST_CONTRAST = 4.5
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}")


@dataclass(frozen=True, slots=True)
class Pen:
    """One sort of line: colour ``#rrggbb``, width [pt] and the lengths of its dashes and gaps [pt]."""

    colour: str
    width: float
    dashes: tuple[float, ...] = ()


@dataclass(frozen=True, slots=True)
class Style:
    """Type, colours, line widths and dashes of all diagrams; sizes and widths in points.

    ``small`` is the size of measures, ``text`` of words, ``strong`` of titles inside a picture. ``cloth`` is the right
    side of the cloth, ``shade`` its wrong side and whatever is hidden or left over.
    """

    font: Typeface = TYPEFACE
    small: float = 9.0
    text: float = 10.0
    strong: float = 12.0
    ink: str = "#1c1c1c"
    accent: str = "#0b4f8a"
    cloth: str = "#f3ecdf"
    shade: str = "#cfc2ab"
    paper: str = "#ffffff"
    hairline: float = 0.85
    thin: float = 0.9
    line: float = 1.2
    heavy: float = 2.2
    fold_dashes: tuple[float, ...] = (7.0, 3.0)
    stitch_dashes: tuple[float, ...] = (2.6, 1.8)
    tack_dashes: tuple[float, ...] = (8.0, 2.0, 1.5, 2.0)
    join_dashes: tuple[float, ...] = (10.0, 2.0, 1.5, 2.0, 1.5, 2.0)
    finish_dashes: tuple[float, ...] = (1.2, 1.8)

    @property
    def cut(self) -> Pen:
        """The cut edge of cloth."""
        return Pen(self.ink, self.heavy)

    @property
    def fold(self) -> Pen:
        """A fold or crease."""
        return Pen(self.ink, self.thin, self.fold_dashes)

    @property
    def stitch(self) -> Pen:
        """A line of stitching."""
        return Pen(self.ink, self.line, self.stitch_dashes)

    @property
    def tack(self) -> Pen:
        """A tack row."""
        return Pen(self.accent, self.line, self.tack_dashes)

    @property
    def join(self) -> Pen:
        """A seam between breadths of cloth."""
        return Pen(self.ink, self.line, self.join_dashes)

    @property
    def finish(self) -> Pen:
        """The finished edge, inside the allowance."""
        return Pen(self.ink, self.line, self.finish_dashes)

    @property
    def outline(self) -> Pen:
        """The outline of cloth seen from its edge, of a fold, of a box."""
        return Pen(self.ink, self.line)

    @property
    def trim(self) -> Pen:
        """The edge of a piece where it is trimmed out of a larger one."""
        return Pen(self.ink, self.thin, self.stitch_dashes)

    @property
    def hatch(self) -> Pen:
        """A line of hatching: the wrong side of the cloth, what waits, what is cut off."""
        return Pen(self.ink, self.hairline)

    @property
    def measure(self) -> Pen:
        """A measuring line, a tick, a leader, in full ink: so thin a line in grey breaks in the second copy."""
        return Pen(self.ink, self.hairline)


def on_screen(style: Style) -> Style:
    """Return how the same is drawn for a page, whose letters are all large enough for a telephone."""
    return replace(style, font=replace(style.font, fraction=ON_SCREEN))


def style_of(theme: Theme) -> Style:
    """Return how a theme draws; raise a FaultyFileError with every fault, each at its place in the theme's file."""
    return read_style(theme.drawing, theme.faces, theme.places)


def read_style(
    values: Mapping[str, object], faces: Sequence[FontFace] = (), places: Mapping[str, Place] = MappingProxyType({})
) -> Style:
    """Return the default style with a theme's values in place of its own.

    Parameters
    ----------
    values : Mapping
        Names of :class:`Style` with a family name, a size or width in points, a colour ``#rrggbb``, or the lengths of
        dashes and gaps in points; numbers may be text.
    faces : sequence of FontFace
        The fonts of the theme, of which the first sets the letters; without any they are those of the plain one.
    places : Mapping of str to Place
        Where each value stands, for messages; '' is the place of what stands nowhere.

    Returns
    -------
    Style
        Checked: text of at least 9 pt, lines of at least 0.85 pt, words that stand out from the paper 4.5 to 1.

    Raises
    ------
    FaultyFileError
        With every fault at once.

    Examples
    --------
    >>> read_style({"small": "11", "ink": "#000000"}).small
    11.0
    """
    plain = Style()
    read: dict[str, object] = {}
    faults: dict[str, str] = {}
    usual = {"font": faces[0].family} if faces else {}
    for name, found in {**usual, **values}.items():
        try:
            read[name] = typeface(str(found), faces) if name == "font" else _read_value(name, found, plain)
        except ValueError as refusal:
            faults[name] = str(refusal)
    style = replace(plain, **read)  # type: ignore[arg-type]
    faults = faults or _unreadable(style)
    if faults:
        nowhere = places.get("")
        raise FaultyFileError(Finding("error", fault, places.get(name, nowhere)) for name, fault in faults.items())
    return style


def _read_value(name: str, found: object, plain: Style) -> object:
    names = [field.name for field in fields(plain)]
    if name not in names:
        near = get_close_matches(name, names, n=1)
        raise ValueError(f"diagrams have no '{name}'" + (f"; did you mean '{near[0]}'?" if near else ""))
    usual = getattr(plain, name)
    if isinstance(usual, float):
        return _points(name, found)
    if isinstance(usual, tuple):
        return _dashes(name, found)
    if not _COLOUR.fullmatch(str(found)):
        raise ValueError(f"{name}: '{found}' is no colour; write it like {usual}")
    return str(found)


def _points(name: str, found: object) -> float:
    try:
        size = float(str(found))
    except ValueError:
        raise ValueError(f"{name}: '{found}' is no number of points") from None
    if not 0 < size <= 72:
        raise ValueError(f"{name}: {found} is not between 0 and 72 points")
    return size


def _dashes(name: str, found: object) -> tuple[float, ...]:
    lengths = found if isinstance(found, list | tuple) else str(found).replace(",", " ").split()
    if len(lengths) % 2 or not lengths:
        raise ValueError(f"{name}: dashes come in pairs of dash and gap, found {len(lengths)} lengths")
    return tuple(_points(name, length) for length in lengths)


def _unreadable(style: Style) -> dict[str, str]:
    """Return what is wrong with values that are sound by themselves, by the name of the one to change."""
    faults = {
        name: f"{name}: {getattr(style, name):g} pt is too small to read; take at least {SMALLEST_TEXT:g}"
        for name in ("small", "text", "strong")
        if getattr(style, name) < SMALLEST_TEXT
    }
    faults |= {
        name: f"{name}: {getattr(style, name):g} pt is lost in a copy; take at least {THINNEST_LINE:g}"
        for name in ("hairline", "thin", "line", "heavy")
        if getattr(style, name) < THINNEST_LINE
    }
    for ink in ("ink", "accent"):
        for ground in ("paper", "cloth"):
            found = contrast(getattr(style, ink), getattr(style, ground))
            if found < LEAST_CONTRAST:
                faults.setdefault(ink, f"{ink} stands out from {ground} only {found:.1f} to 1; take at least 4.5 to 1")
    return faults
