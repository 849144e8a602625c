"""How many pages a published sheet has: a room and an address in its site come in, a number of pages goes out."""

from __future__ import annotations

import re
import zlib
from pathlib import Path

_PAGE = re.compile(rb"/Type\s*/Page(?![A-Za-z])")
_PACKED = re.compile(rb"/Type\s*/ObjStm[^>]*>>\s*stream\r?\n")


def published_pages(folder: Path, address: str) -> int | None:
    """Return the pages of a sheet as it lies in the room's site, None where it has not been published."""
    try:
        pages = pages_of((folder / "site" / "public" / address).read_bytes())
    except OSError:
        return None
    return pages or None


def pages_of(sheet: bytes) -> int:
    """Return the pages of a PDF that this tool has written: its page objects, also those packed into streams."""
    parts = [sheet]
    for found in _PACKED.finditer(sheet):
        try:
            parts.append(zlib.decompressobj().decompress(sheet[found.end() :]))
        except zlib.error:
            continue
    return sum(len(_PAGE.findall(part)) for part in parts)
