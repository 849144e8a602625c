"""Pages that need no drawing: what they are told comes in, they are written, and what others need of them goes out."""

from __future__ import annotations

import pickle
from collections.abc import Iterable, Mapping, Sequence

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.edition_files import Nested, flat, read_editions
from generator.calculation.worksheet.editions import PublishedEdition
from generator.errors import PublishError
from generator.publishing.checking import read_page, refuse_stray_guides, worked_class
from generator.publishing.editions import kept_editions
from generator.publishing.jobs import LeftOut, ProjectTold, WorkedProject, WorkedSize
from generator.publishing.room import OpenRoom, stamped
from generator.publishing.room_files import GLOSSARY, as_is_files, page_files, page_title
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.between import SizesBetween, by_measure
from generator.rendering.cards import ClassCard, PageLink, ProjectCard, SheetLink, SheetTold, ThingPictures
from generator.rendering.class_calendar import class_calendar
from generator.rendering.class_pages import render_class, render_classes
from generator.rendering.corrections import corrections_feed, render_corrections
from generator.rendering.further_files import further_files
from generator.rendering.gallery import plans_used
from generator.rendering.given_editions import newest_list
from generator.rendering.guides import GuideList, render_guides
from generator.rendering.pages import render_home, render_missing, render_project, render_words
from generator.rendering.reference import render_glossary
from generator.rendering.search import findables, render_all, search_index
from generator.rendering.setting import project_card
from generator.rendering.sharing import robots, sitemap
from generator.rendering.styles import shared_files


def make_overview(
    room: OpenRoom,
    output: Output,
    worked: WorkedProject,
    pictures: ThingPictures,
    sheets: Sequence[SheetLink],
) -> ProjectTold:
    """Write the page of a project; ``sheets`` are what else there is to print."""
    worksheets, others = _unpacked(worked.sizes), _unpacked(worked.between)
    against = worked.against
    with output.timed("pages"):
        between = _between(others, worked.left_out)
        page = render_project(worksheets, pictures, stamped(room.setting, against.stamp), sheets, between)
        output.add(addresses.project_page(worksheets[0].project), page.encode())
    mark = against.stamp.mark
    known = [one.editions for one in (*worked.sizes, *worked.between) if one.editions]
    sizes = zip((*worksheets, *map(by_measure, others)), known, strict=True)
    told = tuple(
        SheetTold(one.sheet, size.size, size.size_label, size.edition.name, mark, one.numbers, _measure(size))
        for size, one in sizes
    )
    return ProjectTold(project_card(worksheets, pictures.thing), plans_used(worksheets), against, told)


def _measure(worksheet: Worksheet) -> str:
    return by_measure(worksheet).size_label if worksheet.deciding else ""


def _unpacked(sizes: Sequence[WorkedSize]) -> list[Worksheet]:
    return [pickle.loads(one.worksheet) for one in sizes]  # noqa: S301 -- packed by this run


def _between(worksheets: Sequence[Worksheet], left_out: Sequence[LeftOut]) -> dict[str, SizesBetween]:
    """The sizes between the named ones by their edition."""
    editions = dict.fromkeys((*(one.edition.name for one in worksheets), *(one.edition for one in left_out)))
    return {
        name: SizesBetween(
            tuple(one for one in worksheets if one.edition.name == name),
            tuple((one.size, one.reason) for one in left_out if one.edition == name),
        )
        for name in editions
    }


def make_home(
    room: OpenRoom,
    output: Output,
    projects: Sequence[ProjectCard],
    sheets: Sequence[SheetLink],
    pages: Sequence[str],
    classes: Sequence[ClassCard],
    own_robots: bool,
) -> None:
    """Write the home page; ``sheets`` are those for the whole room, ``pages`` the paths of all other pages.

    ``own_robots`` tells that the room has a robots.txt of its own, so that none is written.
    """
    with output.timed("pages"):
        files = {addresses.HOME: render_home(projects, room.setting, sheets, classes).encode()}
        files |= {addresses.MISSING: render_missing(room.setting).encode()}
        files |= {addresses.asset(name): content for name, content in shared_files(room.theme).items()}
        files |= further_files(room.setting)
        mapped, allowed = sitemap((addresses.HOME, *pages), room.setting), robots(room.setting)
        files |= {addresses.SITEMAP: mapped} if mapped else {}
        files |= {addresses.ROBOTS: allowed} if allowed and not own_robots else {}
        for address, content in files.items():
            output.add(address, content)


def make_words(room: OpenRoom, output: Output, name: str) -> None:
    """Write one page of words; in the glossary every word has an anchor."""
    with output.timed("pages"):
        path = page_files(room.folder)[name]
        text = read_page(path, room.folder)
        if name == GLOSSARY:
            page = render_glossary(text, room.setting)
        else:
            page = render_words(name, page_title(path), _below_title(text), room.setting)
        output.add(addresses.words_page(name), page.encode())


def make_guides(room: OpenRoom, output: Output, titles: Mapping[str, str]) -> None:
    """Write the list of the pages of words, in the groups that the room's file gives; the others follow."""
    with output.timed("pages"):
        output.add(addresses.GUIDES, render_guides(_guide_lists(room, titles), room.setting).encode())


def _guide_lists(room: OpenRoom, titles: Mapping[str, str]) -> list[GuideList]:
    groups = room.shared.room.guides
    refuse_stray_guides(room.shared.room, titles)
    lists = [GuideList(group.title, _links(group.pages, titles)) for group in groups]
    named = {name for group in groups for name in group.pages}
    others = _links([name for name in titles if name not in named], titles)
    return [*lists, *([GuideList("More" if lists else "", others)] if others else [])]


def _links(names: Iterable[str], titles: Mapping[str, str]) -> tuple[PageLink, ...]:
    return tuple(PageLink(titles[name], addresses.words_page(name)) for name in names)


def _below_title(text: str) -> str:
    """A page of words without its first heading, which its template sets."""
    lines = text.splitlines()
    first = next((number for number, line in enumerate(lines) if line.startswith("# ")), None)
    return text if first is None else "\n".join(lines[:first] + lines[first + 1 :])


def make_class(room: OpenRoom, output: Output, name: str) -> ClassCard:
    """Write the page of a class, and return what the list of classes tells of it."""
    with output.timed("numbers"):
        sheet = worked_class(name, room.folder, room.shared, room.theme)
    with output.timed("pages"):
        output.add(addresses.class_page(name), render_class(sheet, room.setting).encode())
        output.add(addresses.class_calendar(name), class_calendar(sheet, room.setting))
    days = tuple(plan.session.day for plan in sheet.timetable.sessions)
    return ClassCard(name, sheet.title, sheet.project, sheet.project_title, days)


def make_classes(room: OpenRoom, output: Output, classes: Iterable[ClassCard]) -> None:
    """Write the list of classes, the one that begins first at its top."""
    with output.timed("pages"):
        in_order = sorted(classes, key=lambda card: (card.days, card.name))
        output.add(addresses.CLASSES, render_classes(in_order, room.setting).encode())


def make_corrections(
    room: OpenRoom,
    output: Output,
    titles: Mapping[str, str],
    labels: Mapping[str, Mapping[str, str]],
    drafts: Mapping[str, Nested],
    about: Mapping[str, Sequence[tuple[str, str]]],
    texts: Mapping[str, str],
) -> None:
    """Write what is otherwise since each mark, and what each edition changed as a feed.

    ``texts`` are the files of all projects with kept editions, those that this run will write with their new text, the
    others empty. ``titles`` are those of projects on the site, ``labels`` how their sizes are printed, ``drafts`` the
    numbers of those that are otherwise now, ``about`` the days and the words of what was corrected.
    """
    with output.timed("pages"):
        editions = {
            project: read_editions(text, project) if text else kept_editions(room.folder, project)
            for project, text in texts.items()
        }
        now = {project: PublishedEdition(project, "", "", flat(numbers)) for project, numbers in drafts.items()}
        page = render_corrections(editions, titles, room.setting, now, about, labels)
        output.add(addresses.CORRECTIONS, page.encode())
        feed = corrections_feed(editions, titles, room.setting)
        if feed is not None:
            output.add(addresses.FEED, feed)


def make_newest(room: OpenRoom, output: Output, sheets: Sequence[SheetTold]) -> None:
    """Write the list by which an open page finds out whether it is still the newest."""
    with output.timed("pages"):
        output.add(addresses.NEWEST, newest_list(sheets))


def make_search(
    room: OpenRoom,
    output: Output,
    projects: Sequence[ProjectCard],
    sheets: Sequence[SheetTold],
    pages: Mapping[str, str],
    classes: Sequence[ClassCard],
) -> None:
    """Write the index of words and the page from A to Z; ``pages`` are the titles of pages of words by name."""
    with output.timed("pages"):
        files = page_files(room.folder)
        glossary = read_page(files[GLOSSARY], room.folder) if GLOSSARY in files else ""
        found = findables(projects, sheets, pages, classes, glossary)
        output.add(addresses.asset("words.js"), search_index(found))
        output.add(addresses.ALL, render_all(found, room.setting).encode())


def copy_as_is(room: OpenRoom, output: Output) -> None:
    """Copy the files of ``site/as-is`` into the site, where everything else lies already.

    Raises
    ------
    PublishError
        If one would take the place of a file that the theme brings.
    """
    with output.timed("files as they are"):
        for address, path in as_is_files(room.folder).items():
            if (output.folder / address).exists():
                raise PublishError(f"site/as-is/{address}: the theme brings a file of this name; choose another name")
            output.add(address, path.read_bytes())
