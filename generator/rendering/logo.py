"""The room's mark: a theme with a logo comes in, the image for sheets and the style for pages go out."""

from __future__ import annotations

import base64
from collections import ChainMap
from collections.abc import Mapping
from typing import cast

from markupsafe import Markup

from generator.definitions.theme import Theme
from generator.rendering.setting import Setting

_ON_SHEET = "logo.svg"
ICON = "icon.svg"


def sheet_logo(setting: Setting) -> Markup:
    """Return the logo as it stands on a sheet, told as the room's name; nothing where the theme has none."""
    logo = setting.theme.logo
    if logo is None:
        return Markup("")
    address = f"mem:{_ON_SHEET}"
    if logo.suffix.lower() == ".png":
        address = "data:image/png;base64," + base64.b64encode(logo.read_bytes()).decode("ascii")
    return Markup('<img class="logo" src="{}" alt="{}">').format(address, setting.room)


def with_logo(memory: Mapping[str, str], theme: Theme) -> Mapping[str, str]:
    """Return the pictures of a sheet, also those still to come, with the theme's logo among them."""
    if theme.logo is None or theme.logo.suffix.lower() != ".svg":
        return memory
    return ChainMap({_ON_SHEET: theme.logo.read_text(encoding="utf-8")}, cast("dict[str, str]", memory))


def page_logo(theme: Theme) -> str:
    """Return the style that puts the logo, or the icon, at the head of every page, before the room's name.

    The name stands beside it, so it is silent to screen readers.
    """
    picture = f'content: ""; background-image: url("{logo_file(theme) or ICON}");'
    # A logo is drawn in one dark colour, so it lies on paper in the dark too; the icon has a ground of its own.
    paper = f" background-color: {theme.palette['paper']};" if theme.logo else ""
    return f".brand a::before {{ {picture}{paper} }}\n"


def logo_file(theme: Theme) -> str:
    """Return the name of the logo among the files that all pages share."""
    return f"logo{theme.logo.suffix.lower()}" if theme.logo else ""
