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

    ``numbers`` is their fingerprint, ``label`` the size as it is printed, ``measure`` what it is chosen by.
    """

    sheet: str
    size: str
    label: str
    edition: str
    mark: str
    numbers: str
    measure: str = ""


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

    The newest of ``given`` stands first. Of a sheet that no edition keeps, ``printed`` are the numbers themselves, each
    with its piece, what it is, and how it reads: a device that has begun by them can tell what is otherwise later.
    """

    sheet: str
    numbers: str = ""
    given: tuple[GivenEdition, ...] = ()
    printed: tuple[tuple[str, str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class SitePicture:
    """A picture in a file of its own: its path inside the site, how many dots it is wide and high, and its words.

    ``smaller`` are the same picture in fewer dots, by their path and their width.
    """

    address: str
    width: int
    height: int
    alt: str
    caption: str = ""
    smaller: tuple[tuple[str, int], ...] = ()

    @property
    def widths(self) -> tuple[tuple[str, int], ...]:
        """The path and the width of every file of it, the smallest first."""
        return (*self.smaller, (self.address, self.width))

    @property
    def smallest(self) -> str:
        """The path of the file with the fewest dots, which a browser shows that knows no others."""
        return self.widths[0][0]


@dataclass(frozen=True, slots=True)
class ThingPictures:
    """The pictures that stand for a project, as far as there are any: the finished thing, and its tucks close to.

    ``share`` is the one for those who share its pages.
    """

    thing: SitePicture | None = None
    near: SitePicture | None = None
    share: SitePicture | None = None


@dataclass(frozen=True, slots=True)
class ProjectCard:
    """One project, as the home page shows it; its picture lies in files of its own."""

    project: str
    title: str
    kind: str
    level: str
    summary: str
    least_minutes: int
    most_minutes: int
    picture: SitePicture | None = None

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
