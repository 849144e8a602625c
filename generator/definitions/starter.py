"""The commented file that a new project begins with: a title comes in, the text of the file goes out."""

from __future__ import annotations

from pathlib import Path

_STARTER = Path(__file__).with_name("starter.yaml")


def starter_text(title: str = "My first panel") -> str:
    """Return the text of a new project file under a title; colons and the like in a title are quoted."""
    plain = title.replace(" ", "").replace("-", "").isalnum() and title[0].isalnum()
    shown = title if plain else "'" + title.replace("'", "''") + "'"
    return _STARTER.read_text(encoding="utf-8").replace("title: My first panel", f"title: {shown}", 1)
