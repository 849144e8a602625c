"""Corrections: the published editions of all projects come in, a page and a feed of changed numbers go out."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace
from itertools import pairwise
from typing import Any
from urllib.parse import urljoin
from xml.etree import ElementTree

from generator.calculation.worksheet.editions import ChangedNumber, PublishedEdition, changed_numbers
from generator.rendering import addresses
from generator.rendering.corrected_sheets import SameChanges, told_once
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting
from generator.rendering.sharing import as_data
from generator.rendering.state import read_number

_ATOM = "http://www.w3.org/2005/Atom"
_NO_LETTER = re.compile("[^\t\n\r -\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]")
_NONE: Mapping[str, Any] = {}


@dataclass(frozen=True, slots=True)
class ChangesSince:
    """What old sheets with a mark have otherwise than the newest: changes with the sheets that have them."""

    mark: str
    day: str
    changes: tuple[SameChanges, ...]
    with_words: bool = False


@dataclass(frozen=True, slots=True)
class History:
    """One project: its title, its newest mark, and what is otherwise since each mark, the youngest first.

    ``draft`` tells that the sheets of now have not been kept under a mark, so that the newest mark is old as well;
    ``gone`` that the project is no longer on the site. ``about`` are the days and the words of what was corrected,
    ``labels`` the sizes as they are printed.
    """

    project: str
    title: str
    newest: PublishedEdition
    since: tuple[ChangesSince, ...]
    draft: bool = False
    gone: bool = False
    about: tuple[tuple[str, str], ...] = ()
    labels: Mapping[str, str] = field(default_factory=dict)

    @property
    def settled(self) -> bool:
        """Whether there is nothing to tell but the mark."""
        return not (self.since or self.draft or self.gone or self.about)


def render_corrections(
    editions: Mapping[str, Sequence[PublishedEdition]],
    titles: Mapping[str, str],
    setting: Setting,
    drafts: Mapping[str, PublishedEdition] = _NONE,
    about: Mapping[str, Sequence[tuple[str, str]]] = _NONE,
    labels: Mapping[str, Mapping[str, str]] = _NONE,
) -> str:
    """Return the page of corrections.

    Parameters
    ----------
    editions : Mapping of str to sequence of PublishedEdition
        By project, in the order of publishing.
    titles : Mapping of str to str
        The title of each project; one without a title is no longer on the site.
    setting : Setting
        The room and its theme.
    drafts : Mapping of str to PublishedEdition
        The numbers of now for each project whose numbers are not those of its newest edition.
    about : Mapping of str to sequence of pairs of str
        For each project the days of corrections and what each was about, in Markdown.
    labels : Mapping of str to Mapping of str to str
        How each project's sizes are printed, by their names.
    """
    histories = [
        replace(
            _history(titles.get(project, ""), found, drafts.get(project), about.get(project, ())),
            labels=labels.get(project, {}),
        )
        for project, found in sorted(editions.items())
        if found
    ]
    return framed_page(
        "corrections.html",
        addresses.CORRECTIONS,
        setting,
        histories=histories,
        **_printed(histories, editions),
        told=read_number,
        feed=addresses.FEED if setting.site_address and histories else "",
        page_of=addresses.project_page,
    )


def _history(
    title: str,
    editions: Sequence[PublishedEdition],
    draft: PublishedEdition | None,
    about: Sequence[tuple[str, str]],
) -> History:
    newest = editions[-1]
    older, now = (editions, draft) if draft else (editions[:-1], newest)
    since = tuple(
        ChangesSince(old.mark, old.day, told_once(changed_numbers(old, now)), old.with_words) for old in reversed(older)
    )
    named = title or newest.project.replace("-", " ").capitalize()
    told = tuple(sorted(((day, text) for day, text in about), reverse=True))
    return History(newest.project, named, newest, since, draft=draft is not None, gone=not title, about=told)


def _printed(histories: Sequence[History], editions: Mapping[str, Sequence[PublishedEdition]]) -> dict[str, object]:
    """Return what stands at the feet of all sheets ever given out, for whoever types one, and an example of each."""
    told: list[dict[str, Any]] = []
    for history in histories:
        given = editions[history.project]
        names = dict.fromkeys(name for edition in reversed(given) for name in edition.sheets)
        sizes = {size: history.labels.get(size, size) for size, _ in names}
        units = tuple(dict.fromkeys(edition for _, edition in names))
        first = next(iter(names), ("", ""))
        told.append(
            {
                "name": history.project,
                "title": history.title,
                "marks": [edition.mark for edition in reversed(given)],
                "draft": history.draft,
                "sizes": sizes,
                "editions": units,
                "example": " ".join((history.title, sizes.get(first[0], ""), first[1], history.newest.mark)),
            }
        )
    return {"printed": told, "printed_data": as_data(told)}


def corrections_feed(
    editions: Mapping[str, Sequence[PublishedEdition]], titles: Mapping[str, str], setting: Setting
) -> bytes | None:
    """Return an Atom feed with an entry for each edition that changed sheets; None without an address to name.

    The same editions always give the same bytes.
    """
    if not setting.site_address or not any(editions.values()):
        return None
    base = setting.site_address.rstrip("/") + "/"
    feed = ElementTree.Element("feed", xmlns=_ATOM)
    _add(feed, "title", f"{setting.room}: corrections")
    _add(feed, "id", urljoin(base, addresses.CORRECTIONS))
    _add(feed, "updated", _moment(max(one.day for found in editions.values() for one in found)))
    ElementTree.SubElement(_add(feed, "author", ""), "name").text = _plain(setting.room)
    ElementTree.SubElement(feed, "link", rel="self", href=urljoin(base, addresses.FEED))
    ElementTree.SubElement(feed, "link", rel="alternate", href=urljoin(base, addresses.CORRECTIONS))
    for older, newer in _pairs(editions):
        changes = changed_numbers(older, newer)
        if changes:
            _entry(feed, titles.get(newer.project, newer.project), changes, newer, base)
    ElementTree.indent(feed, " ")
    written: bytes = ElementTree.tostring(feed, encoding="utf-8", xml_declaration=True)
    return written + b"\n"


def _pairs(
    editions: Mapping[str, Sequence[PublishedEdition]],
) -> list[tuple[PublishedEdition, PublishedEdition]]:
    """Neighbours in the order of publishing, the newest first, projects of one day in the order of their names."""
    pairs = [pair for _, found in sorted(editions.items()) for pair in pairwise(found)]
    return sorted(pairs, key=lambda pair: pair[1].day, reverse=True)


def _entry(
    feed: ElementTree.Element, title: str, changes: Sequence[ChangedNumber], newer: PublishedEdition, base: str
) -> None:
    page = urljoin(base, addresses.CORRECTIONS)
    name = addresses.slug(f"{newer.project} {newer.mark}")
    lines = [
        f"{same.named({})}: {one.piece + ', ' if one.piece else ''}{one.what}: "
        f"{one.was or 'nothing'} is now {one.now or 'nothing'}"
        for same in told_once(changes)
        for one in same.changes
    ]
    entry = ElementTree.SubElement(feed, "entry")
    _add(entry, "title", f"{title}: edition mark {newer.mark}")
    _add(entry, "id", f"{page}#{name}")
    _add(entry, "updated", _moment(newer.day))
    ElementTree.SubElement(
        entry, "link", rel="alternate", href=f"{page}#project-{addresses.project_slug(newer.project)}"
    )
    _add(entry, "content", "\n".join(lines)).set("type", "text")


def _add(parent: ElementTree.Element, name: str, text: str) -> ElementTree.Element:
    child = ElementTree.SubElement(parent, name)
    child.text = _plain(text)
    return child


def _plain(text: str) -> str:
    """A text without the signs that XML cannot hold."""
    return _NO_LETTER.sub("", text)


def _moment(day: str) -> str:
    return f"{day}T00:00:00Z"
