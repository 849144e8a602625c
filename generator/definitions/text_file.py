"""Text files from strangers: a path comes in, the text goes out, or a fault that says why it is none and where."""

from __future__ import annotations

import stat
from pathlib import Path

from generator.errors import FaultyFileError, Finding, Place
from generator.limits import KILOBYTE, LARGEST_FILES


def read_text_file(path: Path, shown: str) -> str:
    """Return the text of a file, with plain line ends.

    Parameters
    ----------
    path : Path
        The file; what it may hold at most goes by its ending, and is asked before it is read.
    shown : str
        Its name in messages.

    Raises
    ------
    FaultyFileError
        If it is no ordinary file, too large, cannot be read or is no UTF-8.
    """
    try:
        _refuse_before_reading(path, shown)
        raw = path.read_bytes()
    except OSError as error:
        raise _fault(shown, f"the file cannot be read: {error.strerror}{_remedy(error)}") from error
    if raw[:2] in (b"\xff\xfe", b"\xfe\xff"):
        raise _fault(shown, "the file is saved as UTF-16; save it as UTF-8")
    try:
        text = raw.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        before = raw[: error.start].decode("utf-8", "replace")
        place = Place(shown, before.count("\n") + 1, len(before) - before.rfind("\n"))
        told = "the file is not UTF-8 text from here on; save it as UTF-8"
        raise FaultyFileError([Finding("error", told, place)]) from error
    return text.replace("\r\n", "\n").replace("\r", "\n")


def size_fault(size: int, ending: str) -> str:
    """Return what is wrong with the size of a file [bytes], empty where nothing is."""
    most = LARGEST_FILES.get(ending.lower())
    if most is None or size <= most:
        return ""
    return f"the file is larger than {most // KILOBYTE} kB; {_MEANT.get(ending.lower(), 'make it smaller')}"


_MEANT = {
    ".yaml": "a project file is a few pages of text",
    ".md": "divide it into several pages",
    ".css": "a style sheet says only what differs from the plain theme",
    ".svg": "draw the mark with fewer shapes",
    ".png": "save the mark with fewer dots",
}


def _refuse_before_reading(path: Path, shown: str) -> None:
    status = path.stat()
    if not stat.S_ISREG(status.st_mode):
        # A pipe or a device could be read without end.
        raise _fault(shown, "the file cannot be read: it is no ordinary file")
    if fault := size_fault(status.st_size, path.suffix):
        raise _fault(shown, fault)


def _remedy(error: OSError) -> str:
    return "; let yourself read it, or put a copy of your own there" if isinstance(error, PermissionError) else ""


def _fault(shown: str, told: str) -> FaultyFileError:
    return FaultyFileError([Finding("error", told, Place(shown))])
