"""The commented file that a new project begins with: a title comes in, the text of the file goes out."""

from __future__ import annotations

from pathlib import Path

_STARTER = Path(__file__).with_name("starter.yaml")
_SHORT = Path(__file__).with_name("starter-short.yaml")


def starter_text(title: str = "My first panel", *, short: bool = False) -> str:
    """Return the text of a new project file under a title, commented or short; a title with a colon is quoted."""
    plain = title.replace(" ", "").replace("-", "").isalnum() and title[0].isalnum()
    shown = title if plain else "'" + title.replace("'", "''") + "'"
    return (
        (_SHORT if short else _STARTER)
        .read_text(encoding="utf-8")
        .replace("title: My first panel", f"title: {shown}", 1)
    )
