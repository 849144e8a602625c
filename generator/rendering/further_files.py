"""Files beside the pages: a room and its theme come in, what only some pages need goes out by its path on the site."""

from __future__ import annotations

import json

from generator.rendering import addresses
from generator.rendering.lighter import lighter_style
from generator.rendering.setting import Setting
from generator.rendering.styles import style_sheet

FURTHER_SHEETS = ("machine", "reference")
# What stands in a script for the sign of the room.
_SIGN = b"SIGN-OF-THE-ROOM"


def further_files(setting: Setting) -> dict[str, bytes]:
    """Return the style sheets of single kinds of pages, and the scripts that must lie at the root of the site.

    These know pages of the room by its sign, which stands in each.
    """
    styles = {name: lighter_style(style_sheet(setting.theme, name)) for name in FURTHER_SHEETS}
    files = {addresses.asset(f"{name}.css"): style.encode() for name, style in styles.items()}
    files[addresses.MANIFEST] = web_manifest(setting)
    for folder in reversed(setting.theme.folders):
        for file in sorted((folder / "scripts" / "site").glob("*.js")):
            files[file.name] = file.read_bytes().replace(_SIGN, setting.sign.encode())
    return files


def web_manifest(setting: Setting) -> bytes:
    """Return how a device keeps the site among its own things: name, start, colours, icons (W3C Web App Manifest)."""
    icons = (("icon.svg", "any", "image/svg+xml"), ("icon-180.png", "180x180", "image/png"))
    told = {
        "name": setting.room,
        "description": setting.line or setting.place,
        "lang": setting.language,
        "id": "./",
        "start_url": f"./{addresses.HOME}",
        "scope": "./",
        "display": "minimal-ui",
        "background_color": setting.theme.palette["ground"],
        "theme_color": setting.theme.palette["ground"],
        "icons": [{"src": addresses.asset(name), "sizes": sizes, "type": kind} for name, sizes, kind in icons],
    }
    return json.dumps({key: value for key, value in told.items() if value}, ensure_ascii=False, indent=1).encode()
