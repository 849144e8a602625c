"""Pages of words: the room's own files come in, their pages and the list that leads to them are written."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from generator.publishing.checking import read_page, refuse_stray_guides
from generator.publishing.room import OpenRoom
from generator.publishing.room_files import GLOSSARY, page_files, page_title
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import PageLink
from generator.rendering.guides import GuideList, render_guides
from generator.rendering.pages import render_words
from generator.rendering.reference import render_glossary


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
