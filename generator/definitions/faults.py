"""Faults while reading: a fault at a place of a file comes in, findings come out, all of them at once."""

from __future__ import annotations

import difflib
from collections.abc import Iterable
from typing import NoReturn

from generator.errors import FaultyFileError, Finding, Level, Place


class Fault(Exception):  # noqa: N818 - it never leaves the reader of a file; people see a FaultyFileError
    """What one value was read as being wrong; ``offset`` counts the characters of the value before the fault."""

    def __init__(self, text: str, offset: int = 0) -> None:
        self.text = text
        self.offset = offset
        super().__init__(text)


class SilentFault(Fault):
    """Something depends on a value that is broken; its own fault has been told, so nothing more is said."""

    def __init__(self) -> None:
        super().__init__("")


class Faults:
    """Gathers findings while a file is read, so that one reading tells everything."""

    def __init__(self) -> None:
        self._findings: list[Finding] = []

    def add(self, place: Place, text: str, level: Level = "error") -> None:
        """Add a finding; the same one twice is told once."""
        finding = Finding(level, text, place)
        if finding not in self._findings:
            self._findings.append(finding)

    def refuse(self, place: Place, text: str) -> NoReturn:
        """Add an error and end the reading of the value that it is in.

        Raises
        ------
        SilentFault
            Always: the fault has been told.
        """
        self.add(place, text)
        raise SilentFault

    def extend(self, findings: Iterable[Finding]) -> None:
        """Add findings of another reading."""
        for finding in findings:
            self.add(finding.place or Place(""), finding.text, finding.level)

    @property
    def findings(self) -> tuple[Finding, ...]:
        """Everything found so far, in the order of the file."""
        return tuple(sorted(self._findings, key=lambda finding: finding.place or Place("")))

    @property
    def errors(self) -> bool:
        """Whether anything keeps the file from being used."""
        return any(finding.level == "error" for finding in self._findings)

    def stop(self) -> None:
        """Raise a FaultyFileError with every error and warning if there is an error; notes would only hide it."""
        if self.errors:
            raise FaultyFileError(finding for finding in self.findings if finding.level != "note")


def meant(word: str, known: Iterable[str]) -> str:
    """Return the question that helps with a word that is not known: '; did you mean 'margin'?'.

    Without a near word it lists what there is, if that is short enough to be read.

    Examples
    --------
    >>> meant("margins", ["margin", "depth"])
    "; did you mean 'margin'?"
    >>> meant("cutting", ["cut", "bind"])
    "; did you mean 'cut'?"
    >>> meant("zebra", ["margin", "depth"])
    '; there is: depth, margin'
    """
    names = sorted(known)
    folded = {name.lower(): name for name in names}
    near = difflib.get_close_matches(word.lower(), folded, 1, 0.7)
    near = near or sorted((name for name in folded if _begins(word.lower(), name)), key=len, reverse=True)
    if near:
        return f"; did you mean '{folded[near[0]]}'?"
    listed = ", ".join(names)
    return f"; there is: {listed}" if names and len(listed) <= 260 else ""


def _begins(word: str, name: str) -> bool:
    """Return whether a word is another form of a name: 'cutting' of 'cut', 'marking folds' of 'mark folds'."""
    return len(name) > 2 and word.startswith(name)
