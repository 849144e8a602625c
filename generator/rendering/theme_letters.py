"""Letters that a theme itself puts on sheets: its templates and style sheets come in, those without a font go out.

Pages are shown with whatever fonts a reader has, so only what sheets are made of counts.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from html import unescape
from pathlib import Path

from jinja2 import Environment

from generator.definitions.style_limits import content_texts
from generator.definitions.text_file import read_text_file
from generator.definitions.theme import OWN_THEMES, Theme
from generator.errors import Finding, Place
from generator.rendering.environment import sheet_templates
from generator.rendering.letters import letters_finding, missing_letters
from generator.rendering.styles import sheet_style_files


@dataclass(slots=True)
class _Lacking:
    """The first place in a file that lacks letters, and all that the file lacks, in their order."""

    place: Place
    letters: dict[str, None] = field(default_factory=dict)


def theme_letters(theme: Theme) -> list[Finding]:
    """Return an error for each of a theme's own templates and styles of sheets that has letters without a font."""
    lacking: dict[str, _Lacking] = {}
    for text, place in (*_of_templates(theme), *_of_styles(theme)):
        missing = missing_letters((text,), theme)
        if missing:
            lacking.setdefault(place.file, _Lacking(place)).letters.update(dict.fromkeys(missing))
    return [letters_finding(tuple(one.letters), theme, one.place) for one in lacking.values()]


def _of_templates(theme: Theme) -> Iterator[tuple[str, Place]]:
    """Every line of a theme's own templates as it may be printed; remarks are not."""
    for name, file in sheet_templates(theme).items():
        if file.is_relative_to(OWN_THEMES):
            continue
        shown = f"{_theme_of(file, theme)}/templates/{name}"
        for first, sort, value in Environment(autoescape=True).lex(read_text_file(file, shown)):
            if sort in ("data", "string"):
                yield from ((unescape(line), Place(shown, at)) for at, line in enumerate(value.split("\n"), first))


def _of_styles(theme: Theme) -> Iterator[tuple[str, Place]]:
    """Every text that a theme's own style sheets print."""
    for file in sheet_style_files(theme):
        if not file.is_relative_to(OWN_THEMES):
            shown = f"{_theme_of(file, theme)}/css/{file.name}"
            yield from content_texts(read_text_file(file, shown), shown)


def _theme_of(file: Path, theme: Theme) -> str:
    return next(folder.name for folder in theme.folders if file.is_relative_to(folder))
