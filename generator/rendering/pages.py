"""Pages of the site: cards, worksheets and pictures come in, the HTML text of pages goes out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from types import MappingProxyType

from generator.calculation.worked_project import Worksheet
from generator.definitions.vocabulary import LEVELS
from generator.drawing.renders.words import SHARED, height_of, shown_alone
from generator.rendering import addresses
from generator.rendering.between import SizesBetween, by_measure, steps, typed
from generator.rendering.cards import ClassCard, ProjectCard, SheetEditions, SheetLink, SitePicture, ThingPictures
from generator.rendering.class_pages import day_and_month
from generator.rendering.comparison import compared
from generator.rendering.environment import sheet_words
from generator.rendering.figures import Pictures, arranged
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting, SizeLink, project_card, size_link
from generator.rendering.sharing import plain_words, shortened, size_sharing
from generator.rendering.state import state_words
from generator.rendering.structured import room_data, trail_data

_COLUMNS = 5
# So much of a page of words is read for what lists of results say of it.
_BEGINNING = 600
_NOTHING_BETWEEN: Mapping[str, SizesBetween] = MappingProxyType({})


def render_home(
    projects: Sequence[ProjectCard],
    setting: Setting,
    sheets: Sequence[SheetLink] = (),
    classes: Sequence[ClassCard] = (),
) -> str:
    """Return the home page: the room, its classes, its projects as cards, and the sheets of the whole room."""
    return framed_page(
        "home.html",
        addresses.HOME,
        setting,
        projects=projects,
        data=room_data(projects, setting),
        kinds=sorted({project.kind for project in projects}, key=lambda kind: (kind == "other", kind)),
        levels=LEVELS,
        level_numbers={level: number for number, level in enumerate(LEVELS, 1)},
        sheets=_by_title(sheets),
        classes=sorted(classes, key=lambda card: (card.days, card.name)),
        day_parts=day_and_month,
        share=_room_share(projects, setting),
    )


def _room_share(projects: Sequence[ProjectCard], setting: Setting) -> SitePicture | None:
    """The picture of the room for those who share it: there is one where any of its projects has a picture."""
    shown = [card.title for card in projects if card.picture is not None]
    told = f"Things sewn in {setting.room}: {', '.join(shown[:3])}."
    return SitePicture(addresses.ROOM_SHARE, *SHARED, told) if shown else None


def render_project(
    worksheets: Sequence[Worksheet],
    pictures: ThingPictures,
    setting: Setting,
    sheets: Sequence[SheetLink] = (),
    between: Mapping[str, SizesBetween] = _NOTHING_BETWEEN,
) -> str:
    """Return the page of a project from its worksheets, one for each size and edition: its sizes side by side.

    ``sheets`` are further ones about all sizes, ``between`` by edition the sizes between these.
    """
    editions = {
        edition: [worksheet for worksheet in worksheets if worksheet.edition.name == edition]
        for edition in dict.fromkeys(worksheet.edition.name for worksheet in worksheets)
    }
    card = project_card(worksheets)
    return framed_page(
        "project.html",
        card.page,
        setting,
        project=card,
        about=shortened(f"{card.title} in hand-turned tucks. {plain_words(card.summary)}"),
        data=trail_data(((setting.room, addresses.HOME), (card.title, card.page)), setting),
        pictures=pictures,
        share=pictures.share,
        comparisons={edition: compared(found) for edition, found in editions.items()},
        sheets=_by_title(sheets),
        between={edition: steps(found, between[edition]) for edition, found in editions.items() if edition in between},
    )


def render_size(
    worksheet: Worksheet,
    pictures: Pictures,
    setting: Setting,
    sizes: Sequence[SizeLink] = (),
    editions: SheetEditions | None = None,
    sheets: Sequence[SheetLink] = (),
) -> str:
    """Return the page of one size in one edition; ``sizes`` are all those of the project, to go from one to another.

    ``editions`` tells under which marks the sheet was given out, and what is otherwise since; ``sheets`` are those
    beside the handout.
    """
    more = {"arrangement": arranged(worksheet, pictures), "sheets": _by_title(sheets)}
    return _size_page("size.html", worksheet, setting, editions, sizes=sizes or (size_link(worksheet),), **more)


def _of_project(worksheet: Worksheet) -> dict[str, SitePicture | None]:
    """The pictures of the project that the page of a size shows; nobody knows here in which size they were rendered."""
    if shown_alone(worksheet) is None:
        return {"picture": None, "share": None}
    project, told = worksheet.project, f"{worksheet.title}, finished."
    named = tuple((addresses.rendered_picture(project, width), width) for width in addresses.PICTURE_WIDTHS)
    small, *_ = named
    picture = SitePicture(*named[1], height_of(named[1][1]), told, "as it will look, in one of its sizes", (small,))
    return {"picture": picture, "share": SitePicture(addresses.share_picture(project), *SHARED, told)}


def _size_page(
    template: str, worksheet: Worksheet, setting: Setting, editions: SheetEditions | None, **more: object
) -> str:
    link = size_link(worksheet)
    return framed_page(
        template,
        link.page,
        setting,
        link=link,
        in_words=True,
        machine=addresses.machine_page(link.project, link.size, link.edition),
        **size_sharing(worksheet, setting),
        **state_words(worksheet, editions),
        **sheet_words(worksheet, _COLUMNS),
        **_of_project(worksheet),
        **more,
    )


def render_between(
    worksheet: Worksheet,
    pictures: Pictures,
    setting: Setting,
    named: Sequence[SizeLink],
    editions: SheetEditions | None = None,
) -> str:
    """Return the page of a size between the ``named`` ones beside it, which have all pictures and the paper."""
    more = {"arrangement": arranged(worksheet, pictures), "typed": typed(worksheet), "measures": worksheet.size_label}
    return _size_page("between.html", by_measure(worksheet), setting, editions, sizes=named, **more)


def render_words(name: str, title: str, text: str, setting: Setting) -> str:
    """Return a page of words: its name in the address, its title, and Markdown."""
    about = shortened(f"{title}: {plain_words(text[:_BEGINNING])}")
    return framed_page("words.html", addresses.words_page(name), setting, title=title, text=text, about=about)


def render_missing(setting: Setting) -> str:
    """Return the page that a server shows at an address where there is none; all its links begin at the host's root."""
    return framed_page("missing.html", addresses.MISSING, setting)


def _by_title(sheets: Sequence[SheetLink]) -> dict[str, tuple[SheetLink, ...]]:
    """Sheets of one title together, in the order of their first."""
    titles = dict.fromkeys(sheet.title for sheet in sheets)
    return {title: tuple(sheet for sheet in sheets if sheet.title == title) for title in titles}
