"""What one page tells another: a project, a class or a sheet to print in a few words; frozen, and light to load."""

from __future__ import annotations

from dataclasses import dataclass

from generator.calculation.worksheet.editions import ChangedNumber
from generator.rendering import addresses


@dataclass(frozen=True, slots=True)
class PageLink:
    """A further page that every page leads to: its title and its path inside the site."""

    title: str
    address: str


@dataclass(frozen=True, slots=True)
class SheetLink:
    """One further sheet to print: its title, edition and paper, and its path inside the site."""

    title: str
    edition: str
    paper: str
    address: str


@dataclass(frozen=True, slots=True)
class SheetTold:
    """One size in one edition, as lists of sheets know it: its name on the site, its newest mark, and its numbers.

    ``numbers`` is their fingerprint, ``label`` the size as it is printed.
    """

    sheet: str
    size: str
    label: str
    edition: str
    mark: str
    numbers: str


@dataclass(frozen=True, slots=True)
class GivenEdition:
    """An edition in which a sheet was given out: its mark, the fingerprint of its numbers, what is otherwise now.

    ``with_words`` tells whether its words are known, too.
    """

    mark: str
    numbers: str
    changes: tuple[ChangedNumber, ...]
    with_words: bool = False

    @property
    def anchor(self) -> str:
        """The name of the note on this mark in the page of the sheet."""
        return addresses.mark_anchor(self.mark)


@dataclass(frozen=True, slots=True)
class SheetEditions:
    """One size in one edition: the sheet's name on the site, its numbers' fingerprint, and how it was given out.

    The newest of ``given`` stands first.
    """

    sheet: str
    numbers: str = ""
    given: tuple[GivenEdition, ...] = ()


@dataclass(frozen=True, slots=True)
class CardPicture:
    """A picture that lies in a file of its own: its path inside the site, its size on paper [in] and its words."""

    address: str
    width: float
    height: float
    alt: str


@dataclass(frozen=True, slots=True)
class ProjectCard:
    """One project, as the home page shows it; its picture is a link to a file, so that the home page stays small."""

    project: str
    title: str
    kind: str
    level: str
    summary: str
    least_minutes: int
    most_minutes: int
    picture: CardPicture | None = None

    @property
    def page(self) -> str:
        """The path of its page."""
        return addresses.project_page(self.project)


@dataclass(frozen=True, slots=True)
class ClassCard:
    """One class, as the list of classes shows it: what is sewn, and its days (2031-03-08)."""

    name: str
    title: str
    project: str
    project_title: str
    days: tuple[str, ...]

    @property
    def page(self) -> str:
        """The path of its page."""
        return addresses.class_page(self.name)
