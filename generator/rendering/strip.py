"""The marking strips: a worksheet and the tiles of its strips come in, the bytes of a PDF at true size go out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from markupsafe import Markup

from generator.calculation.marked_edges import marked_edges
from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.rendering.environment import sheet_words, template
from generator.rendering.figures import CROSS_STRIP, STRIP, Pictures, sheet_image
from generator.rendering.pdf import write_pdf
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS, paper_style

_ANY_SIZE = (100.0, 100.0)


@dataclass(frozen=True, slots=True)
class MarkingStrip:
    """The strip of one set of tucks: what it is for, how many fold marks it has, where it is laid, and its tiles.

    It is laid ``along`` edges, told in words, from the cut edge named ``start``.
    """

    title: str
    marks: int
    along: str
    start: str
    tiles: tuple[Picture, ...]


def render_strip(worksheet: Worksheet, pictures: Pictures, setting: Setting, paper: str) -> bytes | None:
    """Return the marking strips of all panels of a worksheet, or None where there is nothing to mark.

    Parameters
    ----------
    worksheet : Worksheet
        What the project comes to in one size and edition.
    pictures : Mapping of str to tuple of Picture
        The tiles, under ``marking strip`` or ``cross marking strip`` and the name of the panel.
    setting : Setting
        The room, its theme and the edition mark.
    paper : str
        ``Letter`` or ``A4``.

    Returns
    -------
    bytes or None
        A tagged PDF that asks the print dialogue for its true size; no tile is scaled, whatever the theme.

    Raises
    ------
    PublishError
        If a letter, a font or a picture is missing.
    """
    strips = tuple(_strips(worksheet, pictures))
    if not strips:
        return None
    memory: dict[str, str] = {}
    to_fit = sheet_image(memory, _ANY_SIZE, 1.0)

    def image(picture: Picture) -> Markup:
        return to_fit(picture)

    html = template(setting.theme, "strip.html").render(
        setting=setting, strips=strips, image=image, width=PAPERS[paper][0], **sheet_words(worksheet, 1)
    )
    return write_pdf(html, paper_style(setting.theme, paper, "strip"), setting.theme, memory, true_size=True)


def _strips(worksheet: Worksheet, pictures: Pictures) -> Iterator[MarkingStrip]:
    """The strips that have tiles, panel by panel, the cross tucks after the first set."""
    for name, panel in worksheet.panels.items():
        label = worksheet.pieces[name].label
        for kind, title, tucks in ((STRIP, label, panel.across), (CROSS_STRIP, f"{label}, cross tucks", panel.cross)):
            tiles, cross = pictures.get(f"{kind} {name}", ()), kind == CROSS_STRIP
            if tiles and tucks is not None:
                edges = marked_edges(panel, worksheet.edition, cross=cross)
                yield MarkingStrip(title, tucks.count, edges, "top" if cross else "left", tiles)
