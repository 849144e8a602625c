"""The paper patterns: a worksheet comes in, the bytes of a PDF with the paper of its shapes at true size go out."""

from __future__ import annotations

from dataclasses import dataclass

from generator.calculation.worked_project import Worksheet
from generator.drawing.paper_pattern import SIZES, draw_paper, fold_of, papers_of, plan_paper, rows_of
from generator.drawing.picture import Picture
from generator.drawing.style import style_of
from generator.lengths import say_length
from generator.rendering.environment import sheet_words, template
from generator.rendering.figures import true_size_image
from generator.rendering.pdf import write_pdf
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS, paper_style


@dataclass(frozen=True, slots=True)
class PaperPattern:
    """The paper of one shape: what it is, the names of its tiles row by row, and how large they are when joined."""

    title: str
    cut: int
    tucked: bool
    on_fold: bool
    rows: tuple[tuple[str, ...], ...]
    across: str
    along: str
    squares: Picture
    tiles: tuple[Picture, ...]


def render_paper_pattern(worksheet: Worksheet, setting: Setting, paper: str) -> bytes:
    """Return the paper of all shapes of a worksheet.

    Parameters
    ----------
    worksheet : Worksheet
        What a project with a shape comes to in one size and edition.
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
    edition, style = worksheet.edition, style_of(setting.theme)
    wide, high = SIZES[edition.unit]
    patterns = []
    for piece, part, shape in papers_of(worksheet):
        rows = tuple(rows_of(plan_paper(shape, edition, fold_of(piece, part))))
        squares, *tiles = draw_paper(piece, part, edition, style)
        size = (say_length(len(rows[0]) * wide, edition), say_length(len(rows) * high, edition))
        patterns.append(
            PaperPattern(
                piece.label,
                piece.quantity,
                part is piece.trimmed_to,
                piece.on_fold,
                rows,
                *size,
                squares,
                tuple(tiles),
            )
        )
    memory: dict[str, str] = {}
    html = template(setting.theme, "pattern.html").render(
        setting=setting,
        patterns=patterns,
        image=true_size_image(memory),
        width=PAPERS[paper][0],
        **sheet_words(worksheet, 1),
    )
    return write_pdf(html, paper_style(setting.theme, paper, "pattern"), setting.theme, memory, true_size=True)
