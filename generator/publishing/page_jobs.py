"""Jobs for single pages of the room: plain values, like the other jobs; none needs drawing or setting on paper."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, ClassVar


class QuickJob:
    """What needs no drawing and no setting on paper; all such jobs take about as long as each other."""

    __slots__ = ()
    quick: ClassVar[bool] = True
    weight: ClassVar[int] = 1


@dataclass(frozen=True, slots=True)
class HomeJob(QuickJob):
    """Write the home page, the site map and the files that all pages share below ``out``.

    ``cards`` tell of the projects, ``sheets`` of those for the whole room, ``pages`` are the paths of all other pages.
    """

    label: ClassVar[str] = "home page"
    cards: tuple[Mapping[str, Any], ...]
    sheets: Sequence[Mapping[str, str]]
    pages: tuple[str, ...]
    out: Path


@dataclass(frozen=True, slots=True)
class WordsJob(QuickJob):
    """Write one page of words below ``out``."""

    name: str
    out: Path

    @property
    def label(self) -> str:
        """How a person names it."""
        return f"page {self.name}"


@dataclass(frozen=True, slots=True)
class GuidesJob(QuickJob):
    """Write the list of the pages of words below ``out``, from their names and titles."""

    label: ClassVar[str] = "list of guides"
    titles: Mapping[str, str]
    out: Path


@dataclass(frozen=True, slots=True)
class CorrectionsJob(QuickJob):
    """Write the page of corrections below ``out``, and the feed where the site has an address.

    ``projects`` have kept editions; ``titles`` are those of projects on the site, ``drafts`` the numbers of those that
    are otherwise now, ``about`` the days and the words of what was corrected, ``pending`` the new texts of files that
    are written after this run.
    """

    label: ClassVar[str] = "corrections"
    projects: tuple[str, ...]
    titles: Mapping[str, str]
    drafts: Mapping[str, Mapping[str, Any]]
    about: Mapping[str, Sequence[tuple[str, str]]]
    pending: Mapping[str, str]
    out: Path


@dataclass(frozen=True, slots=True)
class ClassJob(QuickJob):
    """Write the page of one class below ``out``."""

    name: str
    out: Path

    @property
    def label(self) -> str:
        """How a person names it."""
        return f"class {self.name}"


@dataclass(frozen=True, slots=True)
class ClassesJob(QuickJob):
    """Write the list of classes below ``out``, from what their pages tell."""

    label: ClassVar[str] = "list of classes"
    cards: tuple[Mapping[str, Any], ...]
    out: Path


PageJob = HomeJob | WordsJob | GuidesJob | CorrectionsJob | ClassJob | ClassesJob
