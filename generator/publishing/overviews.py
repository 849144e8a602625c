"""Pages that lead to others: worksheets and pictures come in, pages of projects, words and the room are written."""

from __future__ import annotations

import pickle
from collections.abc import Iterable, Mapping
from typing import Any

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.publishing.inputs import page_files
from generator.publishing.jobs import HomeJob, Outcome, OverviewJob
from generator.publishing.opened import OpenRoom
from generator.publishing.written import Stopwatch, Written
from generator.rendering import addresses
from generator.rendering.further_files import further_files
from generator.rendering.gallery import plans_used
from generator.rendering.pages import render_home, render_project, render_words
from generator.rendering.reference import render_glossary
from generator.rendering.setting import CardPicture, ProjectSummary, SheetLink, summarised
from generator.rendering.styles import shared_files

_ON_CARD = ("project", "title", "kind", "level", "summary", "least_minutes", "most_minutes")


def make_overview(room: OpenRoom, job: OverviewJob) -> Outcome:
    """Write the page of a project, and return what was written with what the home page tells of it."""
    watch, written = Stopwatch(), Written(job.out)
    worksheets: list[Worksheet] = [pickle.loads(packed) for packed in job.worksheets]  # noqa: S301 -- packed by this run
    with watch.on("pages"):
        page = render_project(worksheets, _surface(job), room.setting, _links(job.sheets))
        written.add(addresses.project_page(job.project), page.encode())
    summary = summarised(worksheets)
    card: dict[str, Any] = {name: getattr(summary, name) for name in _ON_CARD}
    return Outcome(
        looks=room.looks,
        files=written.files,
        card={**card, "card": job.pictures.get("card"), "plans": plans_used(worksheets)},
        seconds=watch.seconds,
    )


def make_home(room: OpenRoom, job: HomeJob) -> Outcome:
    """Write the home page, the pages of words and the files that all pages share."""
    watch, written = Stopwatch(), Written(job.out)
    with watch.on("pages"):
        home = render_home([_summary(card) for card in job.cards], room.setting, _links(job.sheets))
        written.add(addresses.HOME, home.encode())
        for address, page in _pages_of_words(room).items():
            written.add(address, page.encode())
        for name, content in shared_files(room.theme).items():
            written.add(addresses.asset(name), content)
        for address, content in further_files(room.theme).items():
            written.add(address, content)
    return Outcome(looks=room.looks, files=written.files, seconds=watch.seconds)


def _pages_of_words(room: OpenRoom) -> dict[str, str]:
    """The room's own pages by their address; its glossary has an anchor for every word."""
    titles = {link.address: link.title for link in room.setting.links}
    pages = {}
    for name, path in page_files(room.folder).items():
        address, text = addresses.words_page(name), path.read_text(encoding="utf-8-sig")
        if name == "glossary":
            pages[address] = render_glossary(text, room.setting)
        else:
            pages[address] = render_words(name, titles[address], _below_title(text), room.setting)
    return pages


def _surface(job: OverviewJob) -> Picture | None:
    """The picture that the leading sheet has drawn and filed."""
    told = job.pictures.get("surface")
    if told is None:
        return None
    svg = (job.out / told["address"]).read_text(encoding="utf-8")
    words = {name: value for name, value in told.items() if name != "address"}
    return Picture(svg=svg, **words)


def _links(sheets: Iterable[Mapping[str, str]]) -> list[SheetLink]:
    return [SheetLink(**sheet) for sheet in sheets]


def _summary(card: Mapping[str, Any]) -> ProjectSummary:
    picture = card["card"]
    shown = picture and CardPicture(picture["address"], picture["width"], picture["height"], picture["alt"])
    return ProjectSummary(**{name: card[name] for name in _ON_CARD}, sizes=(), card=shown or None)


def _below_title(text: str) -> str:
    """A page of words without its first heading, which its template sets."""
    lines = text.splitlines()
    first = next((number for number, line in enumerate(lines) if line.startswith("# ")), None)
    return text if first is None else "\n".join(lines[:first] + lines[first + 1 :])
