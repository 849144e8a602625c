"""The room as its files are now: an address comes in, the page that lies there goes out, made when it is asked for.

Only what is looked at is made, so a page is there as soon as its own numbers are worked and its pictures drawn. What
needs the whole room, such as the home page, is taken from what was published.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterable
from dataclasses import dataclass
from pathlib import Path
from threading import Lock, RLock

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import refuse_unsewable, worked_sheet
from generator.definitions.project import Project, load_project
from generator.errors import FaultyFileError, Finding, TuckwrightError
from generator.publishing.checking import findings_of_project, findings_of_room
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import Job, RoomVersion
from generator.publishing.make.pages import make_class, make_guides, make_words
from generator.publishing.make.pictures import make_pictures
from generator.publishing.make.sheets import drawn, pages
from generator.publishing.room import OpenRoom, open_room
from generator.publishing.room_files import class_files, page_files, project_file, project_files
from generator.publishing.tasks import titles_of_pages
from generator.publishing.write import Output, not_read
from generator.rendering import addresses
from generator.rendering.cards import PageLink
from generator.rendering.handout.pictures import Drawer
from generator.rendering.pages import render_project
from generator.rendering.setting import SizeLink, size_link
from generator.rendering.styles import shared_files

_HANDOUTS = "generator.viewing.papers:make_packed"


@dataclass(frozen=True, slots=True)
class Sheet:
    """One size of a project in one edition."""

    project: str
    size: str
    edition: str

    @property
    def page(self) -> str:
        """The path of its page."""
        return addresses.size_page(self.project, self.size, self.edition)

    @property
    def machine(self) -> str:
        """The path of its page for the machine."""
        return addresses.machine_page(self.project, self.size, self.edition)

    def handouts(self, papers: Iterable[str]) -> list[str]:
        """Return the paths of its handouts."""
        return [addresses.handout_file(self.project, self.size, self.edition, paper) for paper in papers]


class RoomNow:
    """A room that somebody is writing; what is made for it lies below ``out`` and nowhere else.

    Pictures are drawn by one thread at a time: the library that draws allows no more.
    """

    def __init__(self, folder: Path, theme: str, out: Path) -> None:
        self.folder, self.out = folder, out
        self._theme = theme
        self._one = RLock()
        self._made: set[str] = set()
        self._version: RoomVersion | None = None
        self._projects: dict[str, Project] = {}
        self._worksheets: dict[Sheet, Worksheet] = {}
        self._judging = Lock()
        self._judged: dict[str | None, tuple[Finding, ...]] = {}

    def forget(self) -> None:
        """Know nothing any more of what the files said: one of them was saved."""
        with self._one:
            self._made.clear()
            self._version = None
            self._projects.clear()
            self._worksheets.clear()
            # What is being judged now is of the files before, and is told to whoever asked then alone.
            self._judged = {}

    @property
    def version(self) -> RoomVersion:
        """The room as its files are now."""
        with self._one:
            if self._version is None:
                inputs = read_inputs(self.folder, self._theme)
                self._version = RoomVersion(self.folder, self._theme, inputs.tool, inputs.common)
            return self._version

    @property
    def room(self) -> OpenRoom:
        """The room, opened.

        Raises
        ------
        TuckwrightError
            With what is wrong with its settings or its theme.
        """
        return open_room(self.version)

    def file(self, address: str) -> Path | None:
        """Return the file that lies at an address, made if it must be; None where there is none.

        Raises
        ------
        TuckwrightError
            With what is wrong with a file that it is made from.
        """
        with self._one:
            if address not in self._made and self._make(address):
                self._made.add(address)
            return self.out / address if address in self._made else self._published(address)

    def sheet_at(self, address: str) -> Sheet | None:
        """Return the size whose page or handout lies at an address; None where it is none of these."""
        with self._one:
            project = self._project_at(address)
            return None if project is None else self._sheet_at(project, address)

    def sheets(self, project: str) -> list[Sheet]:
        """Return the sizes of a project, in every edition."""
        model = self._project(project)
        return [Sheet(project, size, edition) for edition in model.editions for size in model.sizes]

    def handout_job(self, sheet: Sheet) -> tuple[RoomVersion, Job]:
        """Return the job that sets the handouts of a size, and the version of the room that it belongs to."""
        with self._one:
            packed = pickle.dumps(self._worksheet(sheet))
            name = f"{sheet.project}, size {sheet.size}, {sheet.edition}"
            return self.version, Job(name, name, _HANDOUTS, (packed,), quick=False)

    def findings(self, address: str) -> tuple[Finding, ...]:
        """Return what is to be said of the project to which an address belongs, else of the room; judged once."""
        try:
            with self._one:
                project, judged = self._project_name(address), self._judged
            # Every size is worked for it, also those between the named ones: pages are not to wait so long.
            with self._judging:
                if project not in judged:
                    judged[project] = self._findings_of(project)
                return judged[project]
        except (OSError, TuckwrightError) as fault:
            return self.told(fault)

    def _findings_of(self, project: str | None) -> tuple[Finding, ...]:
        room = self.room
        if project is None:
            return findings_of_room(self.folder, room.shared.room)
        path = project_file(self.folder, project)
        return findings_of_project(path, room.shared.room, self.folder, room.theme)

    def told(self, fault: OSError | TuckwrightError) -> tuple[Finding, ...]:
        """Return what a fault says of the files of the room."""
        if isinstance(fault, FaultyFileError):
            return tuple(fault.findings)
        return (Finding("error", not_read(fault, self.folder) if isinstance(fault, OSError) else str(fault)),)

    @property
    def pages(self) -> dict[str, list[PageLink]]:
        """The pages that are made here, in groups: what one may want to look at."""
        with self._one:
            found = {"Projects": [PageLink(name, addresses.project_page(name)) for name in project_files(self.folder)]}
            found["Pages"] = [
                PageLink(title, addresses.words_page(name)) for name, title in titles_of_pages(self.folder).items()
            ]
            found["Classes"] = [PageLink(name, addresses.class_page(name)) for name in class_files(self.folder)]
            return {title: links for title, links in found.items() if links}

    def _make(self, address: str) -> bool:
        """Write what lies at an address, if anything is made there; return whether it is."""
        output = Output(self.out)
        folder, _, name = address.partition("/")
        if folder == addresses.ASSETS:
            content = shared_files(self.room.theme).get(name)
            if content is not None:
                output.add(address, content)
        elif address == addresses.GUIDES:
            make_guides(self.room, output, titles_of_pages(self.folder))
        elif folder == "pages":
            named = {addresses.words_page(one): one for one in page_files(self.folder)}
            if address in named:
                make_words(self.room, output, named[address])
        elif folder == "classes":
            named = {addresses.class_page(one): one for one in class_files(self.folder)}
            if address in named:
                make_class(self.room, output, named[address])
        elif folder == "projects":
            self._make_of_project(address, output)
        return address in output.files

    def _make_of_project(self, address: str, output: Output) -> None:
        project = self._project_at(address)
        if project is None:
            return
        if address == addresses.project_page(project.name) or address in addresses.pictures_of(project.name):
            self._make_overview(project, output)
        sheet = self._sheet_at(project, address)
        if sheet is not None and address in (sheet.page, sheet.machine):
            room, worksheet = self.room, self._worksheet(sheet)
            beside = (self._links(project), None, ())
            written = pages(worksheet, drawn(Drawer(worksheet, room.style)), room.setting, beside)
            for path, page in written.items():
                output.add(path, page)
                self._made.add(path)

    def _make_overview(self, project: Project, output: Output) -> None:
        room = self.room
        worksheets = [self._worksheet(sheet) for sheet in self.sheets(project.name)]
        pictures = make_pictures(room, output, pickle.dumps(worksheets[0]))
        output.add(addresses.project_page(project.name), render_project(worksheets, pictures, room.setting).encode())
        self._made.update(output.files)

    def _links(self, project: Project) -> tuple[SizeLink, ...]:
        return tuple(size_link(self._worksheet(sheet)) for sheet in self.sheets(project.name))

    def _worksheet(self, sheet: Sheet) -> Worksheet:
        if sheet not in self._worksheets:
            project, shared = self._project(sheet.project), self.room.shared
            worksheet = worked_sheet(project, sheet.size, shared.room.edition(sheet.edition), shared)
            refuse_unsewable(worksheet)
            self._worksheets[sheet] = worksheet
        return self._worksheets[sheet]

    def _project(self, name: str) -> Project:
        if name not in self._projects:
            path = project_file(self.folder, name)
            self._projects[name] = load_project(path, self.room.shared.room, self.folder)
        return self._projects[name]

    def _project_name(self, address: str) -> str | None:
        slug = address.split("/")[1] if address.startswith("projects/") else ""
        return next((name for name in project_files(self.folder) if addresses.project_slug(name) == slug), None)

    def _project_at(self, address: str) -> Project | None:
        name = self._project_name(address)
        return None if name is None else self._project(name)

    def _sheet_at(self, project: Project, address: str) -> Sheet | None:
        papers = self.room.setting.papers
        return next(
            (
                sheet
                for sheet in self.sheets(project.name)
                if address in (sheet.page, sheet.machine, *sheet.handouts(papers))
            ),
            None,
        )

    def _published(self, address: str) -> Path | None:
        """Return a file of the published site; never one that a link leads to elsewhere."""
        room = self.folder.resolve()
        try:
            site = (room / "site" / "public").resolve()
            path = (site / address).resolve()
            inside = site.is_relative_to(room) and path.is_relative_to(site) and path.is_file()
        except (OSError, ValueError, RuntimeError):
            # No name of a file, one that is too long, or a link that leads to itself.
            return None
        return path if inside else None
