"""The page of corrections: the editions that a room keeps come in, the page and its feed are written."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.calculation.worksheet.edition_files import Nested, flat, read_editions
from generator.calculation.worksheet.editions import PublishedEdition
from generator.publishing.editions import kept_editions
from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.corrections import corrections_feed, render_corrections


def make_corrections(
    room: OpenRoom,
    output: Output,
    titles: Mapping[str, str],
    drafts: Mapping[str, Nested],
    about: Mapping[str, Sequence[tuple[str, str]]],
    texts: Mapping[str, str],
) -> None:
    """Write what is otherwise since each mark, and what each edition changed as a feed.

    ``texts`` are the files of all projects with kept editions, those that this run will write with their new text, the
    others empty. ``titles`` are those of projects on the site, ``drafts`` the numbers of those that are otherwise now,
    ``about`` the days and the words of what was corrected.
    """
    with output.timed("pages"):
        editions = {
            project: read_editions(text, project) if text else kept_editions(room.folder, project)
            for project, text in texts.items()
        }
        now = {project: PublishedEdition(project, "", "", flat(numbers)) for project, numbers in drafts.items()}
        page = render_corrections(editions, titles, room.setting, now, about)
        output.add(addresses.CORRECTIONS, page.encode())
        feed = corrections_feed(editions, titles, room.setting)
        if feed is not None:
            output.add(addresses.FEED, feed)
