"""What was drawn and measured, kept from run to run: worksheets come in, what is known of each goes out.

A file holds the pictures of one job. Its name is the key of all that they show: of the worksheets without the texts of
their steps, of the style with its letters, of the tool. So a word or a style sheet changes no name and draws nothing
again, and both papers, pages and themes that draw alike share one file. A file is never believed: what is not as it was
written, or holds more than a drawing does, counts as none. How high words are set is kept by the key of all that
they are set with, so that of a handout only the paragraph that was changed is measured again.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from functools import lru_cache

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.publishing.kept_files import keep_file, kept_file, read_kept
from generator.publishing.manifest import from_plain, to_plain
from generator.publishing.room import OpenRoom
from generator.publishing.write import key_of, key_of_bytes
from generator.rendering.handout.measuring import KeptHeights
from generator.rendering.handout.pictures import Drawer, Drawn
from generator.rendering.setter import setting_libraries

_ATTRIBUTE = r' (?!on|style|(?:xlink:)?href="(?!data:image/png;base64,))[A-Za-z][\w:-]*="[^"<>]*"'
_TAG = re.compile(rf"</?(?:svg|path|text|defs|clipPath|image)(?:{_ATTRIBUTE})*/?>")

# Nothing on a page is higher [mm].
_HIGHEST = 20_000.0


@contextmanager
def kept_drawers(room: OpenRoom, worksheets: Mapping[str, Worksheet]) -> Iterator[dict[str, Drawer]]:
    """Give a drawer for each worksheet by its key; what they have drawn when the block ends well is kept."""
    path = kept_file(room.folder, key_of(room.tool, _key_of_style(room.style), *worksheets))
    known = _drawn(read_kept(path))
    before = sum(one.number for one in known.values())
    drawers = {key: Drawer(worksheet, room.style, known.get(key)) for key, worksheet in worksheets.items()}
    yield drawers
    drawn = {key: drawer.drawn for key, drawer in drawers.items()}
    if sum(one.number for one in drawn.values()) > before:
        keep_file(path, json.dumps(to_plain(drawn), ensure_ascii=False).encode())


def _drawn(content: bytes) -> dict[str, Drawn]:
    """Return what a file holds, nothing where it holds anything else."""
    try:
        found: dict[str, Drawn] = from_plain(dict[str, Drawn], json.loads(content, parse_constant=_refused))
    except (ValueError, TypeError, AttributeError, RecursionError):
        return {}
    return found if all(map(_is_drawing, _pictures(found))) else {}


def _refused(constant: str) -> float:
    raise ValueError(f"{constant} is no length")


def _pictures(found: Mapping[str, Drawn]) -> Iterator[Picture]:
    for drawn in found.values():
        yield from drawn.pages.values()
        for several in drawn.pictures.values():
            yield from several


def _is_drawing(picture: Picture) -> bool:
    """Return whether a picture holds only what drawings are made of: nothing that runs, nothing from elsewhere."""
    svg = picture.svg
    return (
        svg.startswith("<svg ") and svg.count("<") == len(_TAG.findall(svg)) and svg.count("url(") == svg.count("url(#")
    )


@contextmanager
def kept_heights(room: OpenRoom, wordless: str) -> Iterator[KeptHeights]:
    """Give what is known of the handout of a worksheet, by the key that this has without words; what is new is kept."""
    path = kept_file(room.folder, key_of("heights", room.looks, setting_libraries(), wordless))
    try:
        found: dict[str, float] = from_plain(dict[str, float], json.loads(read_kept(path), parse_constant=_refused))
    except (ValueError, TypeError, RecursionError):
        found = {}
    heights = KeptHeights(found if all(0 <= high < _HIGHEST for high in found.values()) else {})
    yield heights
    if heights.now.keys() - heights.before.keys():
        keep_file(path, json.dumps(heights.now).encode())


@lru_cache(maxsize=4)
def _key_of_style(style: Style) -> str:
    """The key of how is drawn; files of letters count by what is in them, wherever they lie."""
    files = dict.fromkeys((*style.font.regular, *style.font.bold))
    values = {name: getattr(style, name) for name in Style.__dataclass_fields__ if name != "font"}
    return key_of(repr(values), style.font.family, *(key_of_bytes(file.read_bytes()) for file in files))
