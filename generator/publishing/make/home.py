"""The home page: cards of projects come in; the page, the site map and the files that all pages share are written."""

from __future__ import annotations

from collections.abc import Sequence

from generator.publishing.room import OpenRoom
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.cards import ProjectCard, SheetLink
from generator.rendering.further_files import further_files
from generator.rendering.pages import render_home
from generator.rendering.sharing import sitemap
from generator.rendering.styles import shared_files


def make_home(
    room: OpenRoom,
    output: Output,
    projects: Sequence[ProjectCard],
    sheets: Sequence[SheetLink],
    pages: Sequence[str],
) -> None:
    """Write the home page; ``sheets`` are those for the whole room, ``pages`` the paths of all other pages."""
    with output.timed("pages"):
        files = {addresses.HOME: render_home(projects, room.setting, sheets).encode()}
        files |= {addresses.asset(name): content for name, content in shared_files(room.theme).items()}
        files |= further_files(room.theme)
        mapped = sitemap((addresses.HOME, *pages), room.setting)
        files |= {addresses.SITEMAP: mapped} if mapped else {}
        for address, content in files.items():
            output.add(address, content)
