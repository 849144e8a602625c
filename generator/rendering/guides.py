"""The list of a room's own pages: lists of links come in, the HTML text of the page goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from generator.rendering import addresses
from generator.rendering.cards import PageLink
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting


@dataclass(frozen=True, slots=True)
class GuideList:
    """Pages that belong together, under a title; without one they are all that there is."""

    title: str
    links: tuple[PageLink, ...]


def render_guides(lists: Sequence[GuideList], setting: Setting) -> str:
    """Return the page that leads to the room's pages of words."""
    return framed_page("guides.html", addresses.GUIDES, setting, lists=lists)
