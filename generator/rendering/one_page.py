"""Sheets that keep to their pages: a template and its values come in, the bytes of a PDF go out.

A sheet is set roomy first, then in two tighter ways. In large letters nothing is set tighter: there a sheet takes the
pages that it needs. Leaves are printed on both sides: of an odd number of pages, the last side is for notes.
"""

from __future__ import annotations

from collections import ChainMap
from collections.abc import Iterator, Mapping, Sequence
from functools import partial
from typing import Any

from generator.calculation.worked_project import Worksheet
from generator.drawing.sizes import MILLIMETRES
from generator.errors import CalculationError
from generator.rendering.alert import ALERTS
from generator.rendering.environment import sheet_words, template
from generator.rendering.pdf import SheetResources, write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS, SHEET_MARGINS, paper_style
from generator.rendering.words import printed_words

_FITS = ("", "tight", "tightest")
_POINTS = 72


def sheet_html(name: str, setting: Setting, values: Mapping[str, Any]) -> str:
    """Return a sheet of the templates' folder ``sheets``, with what every sheet knows."""
    common = {
        "name": name.replace("_", "-"),
        "setting": setting,
        "fit": "",
        "edition_words": "",
        "notes_page": False,
        "words": partial(printed_words, site_address=setting.site_address),
    }
    return template(setting.theme, f"sheets/{name}.html").render({**common, **values})


def sheet_paper(setting: Setting, paper: str, memory: dict[str, str] | None = None) -> SheetResources:
    """Return what a sheet is set with; ``memory`` holds its pictures, also those still to come."""
    pictures = ChainMap({} if memory is None else memory, ALERTS)
    return SheetResources(paper_style(setting.theme, paper, "sheets"), setting.theme, pictures)


def written_sheet(name: str, setting: Setting, paper: str, values: Mapping[str, Any], pages: int = 1) -> bytes:
    """Return a sheet in the roomiest way that keeps to its pages, or in the tightest where none does.

    Parameters
    ----------
    name : str
        Its template in the folder ``sheets``.
    setting : Setting
        The room, its theme and the edition mark.
    paper : str
        ``Letter`` or ``A4``.
    values : Mapping
        What the template is told.
    pages : int
        How many pages it should keep to.

    Returns
    -------
    bytes
        A tagged PDF.

    Raises
    ------
    PublishError
        If a letter or a font is missing.
    """
    fits = _FITS[:1] if setting.theme.large else _FITS
    numbers: list[int] = []

    def settled() -> bool:
        return numbers[-1] <= pages or len(numbers) >= len(fits)

    def fills_its_leaves(document: Document) -> bool:
        numbers.append(len(document.pages))
        return settled() and (numbers[-1] == 1 or numbers[-1] % 2 == 0)

    def versions() -> Iterator[str]:
        for fit in fits:
            told = {**values, "fit": fit}
            yield sheet_html(name, setting, told)
            if settled():
                yield sheet_html(name, setting, {**told, "notes_page": True})
                return

    return write_fitting_pdf(versions(), fills_its_leaves, sheet_paper(setting, paper))


def columns_across(setting: Setting, paper: str, letters: float) -> int:
    """Return how many columns of so many letters stand side by side on a paper, at least one."""
    wide = PAPERS[paper][0] - SHEET_MARGINS[0] / MILLIMETRES
    return max(1, int(wide * _POINTS * 2 / (setting.theme.text_size * letters)))


def edition_values(worksheets: Sequence[Worksheet]) -> dict[str, Any]:
    """Return what a sheet of one edition is told: its edition, and the words that speak it.

    Raises
    ------
    CalculationError
        If worksheets of two editions come together: their numbers must not stand side by side.
    """
    names = {worksheet.edition.name for worksheet in worksheets}
    if len(names) != 1:
        raise CalculationError(
            f"a sheet speaks one edition; worksheets of {' and '.join(sorted(names)) or 'none'} came together"
        )
    return {"edition_words": f"{names.pop()} edition", **sheet_words(worksheets[0], 1)}
