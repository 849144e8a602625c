"""The pack of one class, for whoever teaches it: a class worked out comes in, the bytes of one PDF go out.

It names students, so it is written where it was asked for and never into the site.
"""

from __future__ import annotations

from pathlib import Path

from generator.calculation.worksheet.class_work import ClassSheet
from generator.definitions.room import Room
from generator.definitions.theme import load_theme
from generator.publishing.opened import room_setting
from generator.rendering.sheet_kinds import class_orders


def one_class_pack(sheet: ClassSheet, room: Room, theme_folder: Path, paper: str) -> bytes:
    """Return the pack of a class on one paper.

    Raises
    ------
    FaultyFileError
        With the faults of the theme.
    PublishError
        If the sheet cannot be set: a letter or a font is missing.
    """
    setting = room_setting(room, load_theme(theme_folder))
    return next(order.render(setting, paper) for order in class_orders(sheet) if order.name == "class")
