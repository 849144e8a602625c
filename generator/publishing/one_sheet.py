"""One handout on its own, outside of any site: a worksheet comes in, the bytes of a PDF go out."""

from __future__ import annotations

from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.definitions.room import Room
from generator.definitions.theme import load_theme
from generator.drawing.style import read_style
from generator.publishing.opened import room_setting
from generator.publishing.sheets import drawn
from generator.rendering.handout import render_handout


def one_handout(worksheet: Worksheet, room: Room, theme_folder: Path, paper: str) -> bytes:
    """Return the handout of a worksheet on one paper.

    Raises
    ------
    FaultyFileError
        With the faults of the theme.
    PublishError
        If a letter, a font or a picture is missing.
    """
    theme = load_theme(theme_folder)
    pictures = drawn(worksheet, read_style(theme.drawing, f"{theme.name}/theme.yaml"))
    return render_handout(worksheet, pictures, room_setting(room, theme), paper)
