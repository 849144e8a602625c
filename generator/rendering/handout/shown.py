"""What the template of a handout is given: set text and drawn pictures in their places."""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup


@dataclass(frozen=True, slots=True)
class Shown:
    """A part as the template places it."""

    name: str
    heading: Markup
    beside: tuple[Markup, ...]
    below: tuple[Markup, ...]
    across: tuple[Markup, ...]
    pictures: tuple[Markup, ...]
    strip: Markup
    column: str
    under: tuple[Markup, ...]
    spread: tuple[Markup, ...]


@dataclass(frozen=True, slots=True)
class ShownPage:
    """A page as the template sets it: its blocks, the gap between them, and what stands at its foot."""

    blocks: tuple[Shown, ...]
    gap: str
    foot: Markup
