"""The page for a phone beside the machine: a worksheet comes in, the HTML text of its stops in order goes out."""

from __future__ import annotations

from collections.abc import Callable
from types import MappingProxyType

from markupsafe import Markup

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.lengths import say_range
from generator.rendering import addresses
from generator.rendering.cards import SheetEditions
from generator.rendering.environment import sheet_words
from generator.rendering.figures import Pictures
from generator.rendering.page_frame import framed_page
from generator.rendering.page_svg import reusable_svg, reused_svg
from generator.rendering.setting import Setting, size_link
from generator.rendering.state import state_words
from generator.rendering.stops import stops
from generator.rendering.typeset import typeset

_COLUMNS = 1
# How a turn is written in one letter, with an arrow that tells it a second time.
_LETTERS = {"toward": ("T", "↓"), "away": ("A", "↑"), "upright": ("U", "•")}
_NO_PICTURES: Pictures = MappingProxyType({})


def render_machine(
    worksheet: Worksheet,
    setting: Setting,
    editions: SheetEditions | None = None,
    pictures: Pictures = _NO_PICTURES,
) -> str:
    """Return the page for the machine of one size in one edition; its script only hides and shows what is on it.

    ``editions`` tells in which editions the sheet was given out and what is otherwise since; ``pictures`` are drawn for
    the width of a phone.
    """
    link = size_link(worksheet)
    known = {**{picture.key: (picture,) for found in pictures.values() for picture in found}, **pictures}
    heights = {key: sum(one.height / one.width for one in found) for key, found in known.items()}
    address = addresses.machine_page(worksheet.project, worksheet.size, worksheet.edition.name)
    return framed_page(
        "machine.html",
        address,
        setting,
        link=link,
        stops=stops(worksheet, heights),
        letters=_LETTERS,
        between=lambda least, most: typeset(say_range(least, most, worksheet.edition)),
        figures_of=_figures(known),
        worker=addresses.relative(address, addresses.WORKER),
        **state_words(worksheet, editions),
        **sheet_words(worksheet, _COLUMNS),
    )


def _figures(known: Pictures) -> Callable[[tuple[str, ...]], list[tuple[Picture, Markup]]]:
    """What gives the pictures of a stop with their drawing; one that was shown before is drawn by its name."""
    names: dict[str, str] = {}

    def drawn(picture: Picture) -> Markup:
        if picture.key in names:
            return reused_svg(picture, names[picture.key])
        names[picture.key] = f"figure-{len(names) + 1}"
        return reusable_svg(picture, names[picture.key])

    return lambda keys: [(picture, drawn(picture)) for key in keys for picture in known.get(key, ())]
