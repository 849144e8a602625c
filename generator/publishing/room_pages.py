"""Pages of the room itself: cards of projects and files of words come in, home page, guides and words are written."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import Any

from generator.definitions.faults import meant
from generator.errors import FaultyFileError, Finding, Place
from generator.publishing.jobs import Outcome
from generator.publishing.opened import OpenRoom
from generator.publishing.overviews import ON_CARD
from generator.publishing.page_jobs import GuidesJob, HomeJob, WordsJob
from generator.publishing.plan import GLOSSARY
from generator.publishing.room_files import page_files, page_title
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.further_files import further_files
from generator.rendering.guides import GuideList, render_guides
from generator.rendering.pages import render_home, render_words
from generator.rendering.reference import render_glossary
from generator.rendering.setting import CardPicture, PageLink, ProjectSummary, SheetLink
from generator.rendering.sharing import sitemap
from generator.rendering.styles import shared_files


def make_home(room: OpenRoom, job: HomeJob) -> Outcome:
    """Write the home page, the site map and the files that all pages share."""
    files: dict[str, bytes] = {}
    watch = Stopwatch()
    with watch.on("pages"):
        summaries, sheets = [_summary(card) for card in job.cards], [SheetLink(**sheet) for sheet in job.sheets]
        files[addresses.HOME] = render_home(summaries, room.setting, sheets).encode()
        files |= {addresses.asset(name): content for name, content in shared_files(room.theme).items()}
        files |= further_files(room.theme)
        mapped = sitemap((addresses.HOME, *job.pages), room.setting)
        files |= {addresses.SITEMAP: mapped} if mapped else {}
    return _made(room, job.out, files, watch)


def make_words(room: OpenRoom, job: WordsJob) -> Outcome:
    """Write one page of words; in the glossary every word has an anchor."""
    watch = Stopwatch()
    with watch.on("pages"):
        path = page_files(room.folder)[job.name]
        text = _text(path, room.folder)
        if job.name == GLOSSARY:
            page = render_glossary(text, room.setting)
        else:
            page = render_words(job.name, page_title(path), _below_title(text), room.setting)
    return _made(room, job.out, {addresses.words_page(job.name): page.encode()}, watch)


def make_guides(room: OpenRoom, job: GuidesJob) -> Outcome:
    """Write the list of the pages of words, in the groups that the room's file gives; the others follow."""
    watch = Stopwatch()
    with watch.on("pages"):
        page = render_guides(_guide_lists(room, job.titles), room.setting)
    return _made(room, job.out, {addresses.GUIDES: page.encode()}, watch)


def _made(room: OpenRoom, out: Path, files: Mapping[str, bytes], watch: Stopwatch) -> Outcome:
    written = Written(out)
    for address, content in files.items():
        written.add(address, content)
    return Outcome(looks=room.looks, files=written.files, seconds=watch.seconds)


def _guide_lists(room: OpenRoom, titles: Mapping[str, str]) -> list[GuideList]:
    groups = room.shared.room.guides
    strangers = [
        Finding("error", f"there is no page '{name}' in site/pages{meant(name, titles)}", group.place)
        for group in groups
        for name in group.pages
        if name not in titles
    ]
    if strangers:
        raise FaultyFileError(strangers)
    lists = [GuideList(group.title, _links(group.pages, titles)) for group in groups]
    named = {name for group in groups for name in group.pages}
    others = _links([name for name in titles if name not in named], titles)
    return [*lists, *([GuideList("More" if lists else "", others)] if others else [])]


def _links(names: Iterable[str], titles: Mapping[str, str]) -> tuple[PageLink, ...]:
    return tuple(PageLink(titles[name], addresses.words_page(name)) for name in names)


def _summary(card: Mapping[str, Any]) -> ProjectSummary:
    picture = card["card"]
    shown = picture and CardPicture(picture["address"], picture["width"], picture["height"], picture["alt"])
    return ProjectSummary(**{name: card[name] for name in ON_CARD}, sizes=(), card=shown or None)


def _text(path: Path, folder: Path) -> str:
    try:
        return path.read_text(encoding="utf-8-sig")
    except UnicodeDecodeError as fault:
        told = "this page is no text in UTF-8; save it again with that encoding"
        line = path.read_bytes()[: fault.start].count(b"\n") + 1
        raise FaultyFileError([Finding("error", told, Place(str(path.relative_to(folder)), line))]) from fault


def _below_title(text: str) -> str:
    """A page of words without its first heading, which its template sets."""
    lines = text.splitlines()
    first = next((number for number, line in enumerate(lines) if line.startswith("# ")), None)
    return text if first is None else "\n".join(lines[:first] + lines[first + 1 :])
