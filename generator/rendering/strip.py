"""The marking strips: a worksheet and the tiles of its strips come in, the bytes of a PDF at true size go out."""

from __future__ import annotations

from markupsafe import Markup

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.rendering.environment import sheet_words, template
from generator.rendering.figures import STRIP, Pictures, sheet_image
from generator.rendering.pdf import write_pdf
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS, paper_style

_ANY_SIZE = (100.0, 100.0)


def render_strip(worksheet: Worksheet, pictures: Pictures, setting: Setting, paper: str) -> bytes | None:
    """Return the marking strips of all panels of a worksheet, or None where there is nothing to mark.

    Parameters
    ----------
    worksheet : Worksheet
        What the project comes to in one size and edition.
    pictures : Mapping of str to tuple of Picture
        The tiles, under ``marking strip`` and the name of the panel.
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
    strips = {name: pictures.get(f"{STRIP} {name}", ()) for name in worksheet.panels}
    if not any(strips.values()):
        return None
    memory: dict[str, str] = {}
    to_fit = sheet_image(memory, _ANY_SIZE, 1.0)

    def image(picture: Picture) -> Markup:
        return to_fit(picture)

    html = template(setting.theme, "strip.html").render(
        setting=setting, strips=strips, image=image, width=PAPERS[paper][0], **sheet_words(worksheet, 1)
    )
    return write_pdf(html, paper_style(setting.theme, paper, "strip"), setting.theme, memory, true_size=True)
