"""How large the files of a room are, asked before any of them is read: its folder comes in, or findings go out."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterator
from pathlib import Path

from generator.definitions.text_file import size_fault
from generator.errors import FaultyFileError, Finding, Place
from generator.limits import MOST_FILES
from generator.publishing.room_files import files_below

_FOLDERS = ("projects", "themes", "site/pages", "site/techniques", "site/classes", "site/editions")


def refuse_large_files(room: Path) -> None:
    """Refuse a room with files that are too large or too many to be read.

    Raises
    ------
    FaultyFileError
        With every such file and folder.
    """
    faults = list(_faults(room))
    if faults:
        raise FaultyFileError(faults)


def _faults(room: Path) -> Iterator[Finding]:
    counted: Counter[Path] = Counter()
    for path in (room / "site" / "site.yaml", *(path for name in _FOLDERS for path in files_below(room / name))):
        try:
            fault = size_fault(path.stat().st_size, path.suffix)
        except OSError:
            continue
        if fault:
            yield Finding("error", fault, Place(str(path.relative_to(room))))
        counted[path.parent] += 1
    for folder, number in counted.items():
        if number > MOST_FILES:
            told = f"{number} files; a folder of a room has {MOST_FILES} at most, so divide the room"
            yield Finding("error", told, Place(str(folder.relative_to(room))))
