"""Letters that a theme's fonts lack: texts that reach a sheet come in, findings that name the letters go out.

Sheets are set with the fonts of the theme alone, so that they come out the same on every machine.
"""

from __future__ import annotations

import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import fields, is_dataclass, replace
from functools import lru_cache
from pathlib import Path

from fontTools.ttLib import TTFont, TTLibError

from generator.definitions.room import Room
from generator.definitions.text_file import read_text_file
from generator.definitions.theme import Theme
from generator.errors import FaultyFileError, Finding, Place

# Marks that show nothing of themselves: line ends, joiners, directions, selectors of a variant.
_SILENT = frozenset({"Cc", "Cf", "Zl", "Zp", "Mn"})
_MOST = 8


def letter_findings(told: object, theme: Theme, sources: Mapping[str, Path]) -> list[Finding]:
    """Return an error for letters that no font of a theme has, at the place in a file where the first of them stands.

    Parameters
    ----------
    told : object
        What a sheet tells, such as a worksheet: every text in it counts.
    theme : Theme
        Whose fonts set the sheet.
    sources : Mapping[str, Path]
        The files that the texts may come from, by their names in messages, the likeliest first.
    """
    missing = missing_letters(set(_texts(told)), theme)
    return [letters_finding(missing, theme, _place(missing, sources))] if missing else []


def room_letters(room: Room, theme: Theme, source: Path, shown: str) -> list[Finding]:
    """Return the error for letters in a room's own words that stand on sheets; its welcome and guides are pages."""
    if not source.exists():
        return []
    return letter_findings(replace(room, welcome=None, guides=()), theme, {shown: source})


def letters_finding(missing: Sequence[str], theme: Theme, place: Place) -> Finding:
    """Return the error for letters that no font of a theme has."""
    named = ", ".join(f"'{letter}' (U+{ord(letter):04X})" for letter in missing[:_MOST])
    more = f" and {len(missing) - _MOST} more" if len(missing) > _MOST else ""
    what = "letter" if len(missing) == 1 else "letters"
    text = (
        f"no font of the theme '{theme.name}' has the {what} {named}{more}; write it otherwise, or list a font that "
        f"has {'it' if len(missing) == 1 else 'them'} under 'fonts' in the theme"
    )
    return Finding("error", text, place)


def _place(letters: Sequence[str], sources: Mapping[str, Path]) -> Place:
    found = (
        Place(shown, number, line.index(letter) + 1)
        for shown, source in sources.items()
        for number, line in enumerate(read_text_file(source, shown).split("\n"), 1)
        for letter in letters
        if letter in line and not line.lstrip().startswith("#")
    )
    return next(found, Place(next(iter(sources))))


def _texts(told: object) -> Iterator[str]:
    """Every text in a value."""
    if isinstance(told, str):
        yield told
    elif isinstance(told, tuple | list):
        for inner in told:
            yield from _texts(inner)
    elif isinstance(told, Mapping):
        for key, inner in told.items():
            yield from _texts(key)
            yield from _texts(inner)
    elif is_dataclass(told) and not isinstance(told, Place):
        for field in fields(told):
            yield from _texts(getattr(told, field.name))


def missing_letters(texts: Iterable[str], theme: Theme) -> tuple[str, ...]:
    """Return every letter of texts that no font of the theme has, each once, in their order."""
    known = _known(theme)
    letters = dict.fromkeys(letter for text in texts for letter in unicodedata.normalize("NFC", text))
    return tuple(letter for letter in letters if not _set_by(letter, known))


def _set_by(letter: str, known: frozenset[int]) -> bool:
    if ord(letter) in known or unicodedata.category(letter) in _SILENT:
        return True
    parts = unicodedata.normalize("NFD", letter)
    return len(parts) > 1 and all(ord(part) in known for part in parts)


def _known(theme: Theme) -> frozenset[int]:
    return _letters_together(tuple((face.print, face.print.stat().st_mtime_ns) for face in theme.faces))


@lru_cache(maxsize=4)
def _letters_together(files: tuple[tuple[Path, int], ...]) -> frozenset[int]:
    return frozenset().union(*(_letters_of(file, time) for file, time in files))


def font_letters(file: Path) -> frozenset[int]:
    """Return the letters of a font file by their numbers in Unicode.

    Raises
    ------
    FaultyFileError
        If it is no font file.
    """
    return _letters_of(file, file.stat().st_mtime_ns)


@lru_cache(maxsize=32)
def _letters_of(file: Path, time: int) -> frozenset[int]:
    """Return the letters of a font file by their numbers; another time, another file."""
    try:
        with TTFont(file, lazy=True) as font:
            return frozenset(font.getBestCmap() or ())
    except (TTLibError, OSError, ValueError, KeyError, AssertionError) as fault:
        told = f"the font '{file.name}' cannot be read; put a whole {file.suffix[1:].upper()} file there"
        raise FaultyFileError(
            [Finding("error", told, Place(f"{file.parent.parent.name}/fonts/{file.name}"))]
        ) from fault
