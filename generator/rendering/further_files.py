"""Files beside the pages: a theme comes in, what only some pages need goes out by its path inside the site."""

from __future__ import annotations

from generator.definitions.theme import Theme
from generator.rendering import addresses
from generator.rendering.styles import style_sheet

FURTHER_SHEETS = ("machine", "reference")


def further_files(theme: Theme) -> dict[str, bytes]:
    """Return the style sheets of single kinds of pages, and the scripts that must lie at the root of the site."""
    files = {addresses.asset(f"{name}.css"): style_sheet(theme, name).encode() for name in FURTHER_SHEETS}
    for folder in reversed(theme.folders):
        files |= {file.name: file.read_bytes() for file in sorted((folder / "scripts" / "site").glob("*.js"))}
    return files
