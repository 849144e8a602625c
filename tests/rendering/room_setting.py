"""A sewing room for tests of pages and sheets."""

from __future__ import annotations

from pathlib import Path

from generator.definitions.theme import load_theme
from generator.rendering.setting import Setting

THEMES = Path(__file__).resolve().parents[2] / "themes"


def setting(theme: str = "plain", **values: str) -> Setting:
    words = {
        "room": "The Ropewalk Sewing Room",
        "place": "upstairs in the old net store, Saltersquay",
        "welcome": "We sew on Tuesdays. Bring your own scissors.",
        "edition_mark": "2031-03 b",
    }
    return Setting(theme=load_theme(THEMES / theme), **{**words, **values})
