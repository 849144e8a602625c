"""Files that the tool keeps for itself from run to run: bytes come in, the same bytes go out, or none.

They lie in the tool's own folder of the room, packed and sealed. A file is never believed: one that is not as it was
written, or was renamed, counts as none. All of them together take no more than so much of the disk.
"""

from __future__ import annotations

import hashlib
import os
import re
import zlib
from contextlib import suppress
from pathlib import Path
from time import time

from generator.publishing.manifest import OWN_FOLDER
from generator.publishing.write import put_whole

MOST = 200_000_000
"""What all files may take together [bytes]."""
# What one may take, packed and unpacked [bytes].
_LARGEST, _LARGEST_UNPACKED = 8_000_000, 80_000_000
_FOLDER = "pictures"
_AN_HOUR = 3600.0
_NAMED = re.compile(r"[0-9a-f]{32}")


def kept_file(room: Path, key: str) -> Path:
    """Return where what has a key is kept in a room."""
    return room / OWN_FOLDER / _FOLDER / key


def read_kept(path: Path) -> bytes:
    """Return what is kept in a file; nothing where there is none or it is not as it was written."""
    try:
        with open(path, "rb", opener=lambda name, flags: os.open(name, flags | os.O_NOFOLLOW)) as file:
            content = file.read(_LARGEST + 1)
        held = content[hashlib.sha256().digest_size :]
        if content != _sealed(path, held):
            return b""
        unpacked = zlib.decompressobj().decompress(held, _LARGEST_UNPACKED)
        os.utime(path)
    except (OSError, zlib.error):
        return b""
    return unpacked


def keep_file(path: Path, content: bytes) -> None:
    """Keep something in a file, whole or not at all; where it cannot be written, it is made again the next time."""
    held = zlib.compress(content, 1)
    with suppress(OSError):
        if len(held) < _LARGEST - hashlib.sha256().digest_size:
            path.parent.mkdir(parents=True, exist_ok=True)
            put_whole(path, _sealed(path, held))


def sweep(room: Path, most: int = MOST) -> None:
    """Remove what was used longest ago, until all files together take no more than they may."""
    with suppress(OSError):
        found = [(path, path.lstat()) for path in kept_file(room, "").iterdir()]
        whole = 0
        for path, state in sorted(found, key=lambda one: one[1].st_mtime_ns, reverse=True):
            whole += state.st_size
            # A worker that was killed leaves what it was writing.
            left_over = not _NAMED.fullmatch(path.name) and state.st_mtime < time() - _AN_HOUR
            if whole > most or left_over:
                path.unlink()


def _sealed(path: Path, held: bytes) -> bytes:
    """What is kept, behind the hash of it and of the name of its file."""
    return hashlib.sha256(path.name.encode() + held).digest() + held
