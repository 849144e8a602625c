"""The marking strips: a worksheet comes in, the bytes of a PDF with its strips at true size go out."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.calculation.marked_edges import marked_edges
from generator.calculation.worked_project import Worksheet
from generator.drawing.marking_strip import draw_cross_marking_strip, draw_marking_strip
from generator.drawing.picture import Picture
from generator.drawing.style import Style, style_of
from generator.rendering.figures import true_size_image
from generator.rendering.one_page import edition_values, sheet_html, sheet_paper
from generator.rendering.pdf import write_pdf
from generator.rendering.setting import Setting


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


def render_strip(worksheet: Worksheet, setting: Setting, paper: str) -> bytes:
    """Return the marking strips of all panels of a worksheet.

    Parameters
    ----------
    worksheet : Worksheet
        What a project with a tucked panel comes to in one size and edition.
    setting : Setting
        The room, its theme and the edition mark.
    paper : str
        ``Letter`` or ``A4``.

    Returns
    -------
    bytes
        A tagged PDF that asks the print dialogue for its true size; no tile is scaled, whatever the theme.

    Raises
    ------
    PublishError
        If a letter, a font or a picture is missing.
    """
    strips = tuple(_strips(worksheet, style_of(setting.theme), setting.mark_words))
    memory: dict[str, str] = {}
    html = sheet_html(
        "marking_strip", setting, {**edition_values([worksheet]), "strips": strips, "image": true_size_image(memory)}
    )
    page = sheet_paper(setting, paper, memory)
    return write_pdf(html, page.style, page.theme, page.memory, true_size=True)


def _strips(worksheet: Worksheet, style: Style, mark: str) -> Iterator[MarkingStrip]:
    """The strips that have tiles, panel by panel, the cross tucks after the first set."""
    for name, panel in worksheet.panels.items():
        label = worksheet.pieces[name].label
        if panel.across.count:
            edges = marked_edges(panel, worksheet.edition, cross=False)
            tiles = draw_marking_strip(worksheet, name, style, mark)
            yield MarkingStrip(label, panel.across.count, edges, "left", tiles)
        if panel.cross is not None and panel.cross.count:
            edges = marked_edges(panel, worksheet.edition, cross=True)
            tiles = draw_cross_marking_strip(worksheet, name, style, mark)
            yield MarkingStrip(f"{label}, cross tucks", panel.cross.count, edges, "top", tiles)
