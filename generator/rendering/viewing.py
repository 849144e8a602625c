"""The page shown to whoever writes: findings and links come in, its HTML text goes out. It is never published."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.rendering.cards import PageLink
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting


def render_viewing(
    address: str, findings: Sequence[str], pages: Mapping[str, Sequence[PageLink]], setting: Setting
) -> str:
    """Return a page of what is wrong, as lines, and of the pages that there are, in groups."""
    return framed_page("viewing.html", address, setting, findings=findings, pages=pages)
