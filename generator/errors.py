"""What can go wrong, as values and exceptions; comes from every stage, ends as a message on the screen.

::

    TuckwrightError            base of all: the command line prints it and ends with exit code 1
    ├── LengthError            a text is not a length, or a length cannot be written as asked (also a ValueError)
    ├── CalculationError       numbers that cannot be sewn (also a ValueError)
    ├── FaultyFileError              one or more faults in files; carries every Finding at once
    └── PublishError           the site could not be built or written
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

Level = Literal["error", "warning", "note"]


@dataclass(frozen=True, slots=True, order=True)
class Place:
    """A place in a file: line and column count from 1."""

    file: str
    line: int = 1
    column: int = 1

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing that a person should know: what was found, what was expected, what to do.

    ``error`` stops the work on the project, ``warning`` is printed with the sheet, ``note`` is printed on request. What
    is ``of_file`` can only be mended in the file, so it is told to its writer alone.
    """

    level: Level
    text: str
    place: Place | None = None
    piece: str = ""
    size: str = ""
    edition: str = ""
    of_file: bool = False

    @property
    def printed(self) -> bool:
        """Whether it is told on the sheet."""
        return self.level == "warning" and not self.of_file

    def __str__(self) -> str:
        where = f"{self.place}: " if self.place else ""
        level = "" if self.level == "error" else f"{self.level}: "
        working = ", ".join(part for part in (f"size {self.size}" if self.size else "", self.edition) if part)
        return f"{where}{level}{self.text}" + (f" ({working})" if working else "")


def printable(text: str, *, lines: bool = False) -> str:
    r"""Return a text of which nothing can move the cursor on a screen or, unless it has ``lines``, break a line.

    Examples
    --------
    >>> printable("cush\x1b[2Jion")
    'cush?[2Jion'
    """
    return "".join(letter if letter.isprintable() or (lines and letter == "\n") else "?" for letter in text)


class TuckwrightError(Exception):
    """The base of all errors that a person can mend."""


class LengthError(TuckwrightError, ValueError):
    """A text is not a length, or a length cannot be written as asked."""


class CalculationError(TuckwrightError, ValueError):
    """Numbers that cannot be sewn; the text says which limit fails and what to change."""


class FaultyFileError(TuckwrightError):
    """Faults in files, all of them at once."""

    def __init__(self, findings: Iterable[Finding]) -> None:
        self.findings = tuple(findings)
        super().__init__("\n".join(str(finding) for finding in self.findings))


class PublishError(TuckwrightError):
    """The site could not be built or written; the last good one is untouched."""
