"""Where sheets and pages are made for: the room, its theme and its papers; and how lists name sizes and projects.

Worksheets come in, frozen links and cards go out.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from generator.calculation.worked_project import Worksheet
from generator.definitions.theme import Theme
from generator.definitions.vocabulary import SHEETS_BESIDE
from generator.rendering import addresses
from generator.rendering.cards import PageLink, ProjectCard, SitePicture
from generator.rendering.tables import finished_size

SheetStanding = Literal["kept", "draft", "own", "between"]
# What a sheet is that bears no mark of its own.
_UNKEPT = {"draft": "Draft", "own": "For one student", "between": "Worked out, not test-sewn"}


# The same on every page of every room: a page that comes, goes or changes its title makes no other page stale.
SITE_LINKS = (
    PageLink("Projects", addresses.HOME),
    PageLink("Surfaces", addresses.GALLERY),
    PageLink("Reference", addresses.REFERENCE),
    PageLink("Guides", addresses.GUIDES),
    PageLink("Classes", addresses.CLASSES),
    PageLink("Corrections", addresses.CORRECTIONS),
    PageLink("Cautions", addresses.CAUTIONS),
)


@dataclass(frozen=True, slots=True)
class Setting:
    """What is the same for every page and sheet of a room.

    ``line`` is the heading of the home page, ``welcome`` the Markdown below it; ``time_zone`` is where its clocks are,
    ``currency_code`` its money as ISO 4217 names it.
    ``site_address`` is where the site is published ("https://..."), or empty; it is only printed and linked from
    sheets. ``sheets`` are those beside the handout that the site has. ``edition_mark`` tells sheets of different days
    apart; ``standing`` tells whether a sheet has the numbers that were kept under it, is a draft made after it, is one
    student's own, or of a size between the named ones; ``student`` is whose it is, in a class pack only. ``links`` are
    further pages.
    """

    room: str
    theme: Theme
    place: str = ""
    line: str = ""
    time_zone: str = ""
    currency_code: str = ""
    welcome: str = ""
    site_address: str = ""
    editions: tuple[str, ...] = ("inch", "metric")
    papers: tuple[str, ...] = ("Letter", "A4")
    sheets: tuple[str, ...] = SHEETS_BESIDE
    edition_mark: str = ""
    language: str = "en"
    links: tuple[PageLink, ...] = ()
    standing: SheetStanding = "kept"
    student: str = ""

    @property
    def sign(self) -> str:
        """What tells the pages of this room from those of any other, and from what a network puts in their place."""
        return addresses.slug(self.room)

    @property
    def mark_words(self) -> str:
        """How a sheet tells its edition mark; empty where its project was never kept under one."""
        if not self.edition_mark:
            return "" if self.standing in ("kept", "draft") else _UNKEPT[self.standing]
        if self.standing == "kept":
            return f"Edition mark {self.edition_mark}"
        return f"{_UNKEPT[self.standing]}, after edition mark {self.edition_mark}"


@dataclass(frozen=True, slots=True)
class SizeLink:
    """One size in one edition, as a list of sizes names it."""

    project: str
    size: str
    label: str
    edition: str
    finished: str
    minutes: int

    @property
    def page(self) -> str:
        """The path of its page."""
        return addresses.size_page(self.project, self.size, self.edition)

    @property
    def page_of_project(self) -> str:
        """The path of the page of all its sizes."""
        return addresses.project_page(self.project)

    def handout(self, paper: str) -> str:
        """Return the path of its handout on a paper."""
        return addresses.handout_file(self.project, self.size, self.edition, paper)


def size_link(worksheet: Worksheet) -> SizeLink:
    """Return how a list of sizes names a worksheet."""
    return SizeLink(
        worksheet.project,
        worksheet.size,
        worksheet.size_label,
        worksheet.edition.name,
        finished_size([worksheet]),
        worksheet.minutes,
    )


def project_card(worksheets: Sequence[Worksheet], picture: SitePicture | None = None) -> ProjectCard:
    """Return how a project is told in short, from its worksheets, one for each size and edition."""
    first = worksheets[0]
    minutes = [worksheet.minutes for worksheet in worksheets]
    return ProjectCard(
        first.project, first.title, first.kind, first.level, first.summary, min(minutes), max(minutes), picture
    )
