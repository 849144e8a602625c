"""The room, opened for work: what all jobs of a run share comes in, its settings, theme and styles go out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction
from functools import lru_cache
from pathlib import Path

from generator.calculation.worksheet.sheet import RoomContext, load_room_context
from generator.definitions.room import Room, load_room
from generator.definitions.theme import Theme, load_theme
from generator.drawing.style import Style, style_of
from generator.publishing.checking import stop_on_letters
from generator.publishing.inputs import theme_folder, theme_key
from generator.publishing.jobs import RoomVersion, Stamp
from generator.publishing.write import key_of
from generator.rendering.setting import SITE_LINKS, Setting


@dataclass(frozen=True, slots=True)
class OpenRoom:
    """What every job needs.

    ``tool`` is the key of the tool, ``looks`` that of everything on a page or sheet that is not in its worksheet: of
    the tool, of the theme and of the room's words, with hyphens between.
    """

    folder: Path
    shared: RoomContext
    theme: Theme
    style: Style
    setting: Setting
    tool: str
    looks: str


@lru_cache(maxsize=1)
def open_room(version: RoomVersion) -> OpenRoom:
    """Return the room of a run, opened once in each process.

    Raises
    ------
    FaultyFileError
        With the faults of the room's file, a technique or the theme, or with letters that no font of it has.
    PublishError
        If there is no such theme.
    """
    folder = version.folder
    room = load_room(folder / "site" / "site.yaml", folder)
    theme = load_theme(theme_folder(folder, version.theme or room.theme))
    stop_on_letters(folder, room, theme)
    setting = room_setting(room, theme)
    keys = (version.tool, theme_key(theme.folders), key_of(*_words(setting)))
    looks = "-".join(key[:16] for key in keys)
    style = style_of(theme)
    return OpenRoom(folder, load_room_context(room, folder), theme, style, setting, version.tool, looks)


def stamped(setting: Setting, stamp: Stamp) -> Setting:
    """Return a setting for sheets that bear a stamp."""
    return replace(setting, edition_mark=stamp.mark, standing=stamp.standing)


def room_setting(room: Room, theme: Theme) -> Setting:
    """Return where sheets and pages of a room are made for."""
    return Setting(
        room=room.name,
        theme=theme,
        place=room.place,
        line=room.line,
        time_zone=room.time_zone,
        currency_code=room.currency_code,
        site_address=room.web_address,
        welcome=room.welcome.filled(room.edition(room.editions[0]), _no_measure) if room.welcome else "",
        editions=room.editions,
        papers=room.papers,
        sheets=room.sheets,
        links=SITE_LINKS,
    )


def _words(setting: Setting) -> tuple[str, ...]:
    """What a page or sheet takes from the setting; the line and the welcome stand on the home page only."""
    links = (f"{link.title} {link.address}" for link in setting.links)
    words = (setting.room, setting.place, setting.site_address, setting.edition_mark, setting.language)
    return (*words, *setting.papers, *setting.sheets, *links)


def _no_measure(name: str) -> Fraction:
    raise KeyError(name)
