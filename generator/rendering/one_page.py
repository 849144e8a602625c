"""Sheets that keep to their pages: a template and its values come in, the bytes of a PDF go out.

A sheet is set roomy first, then in two tighter ways. In large letters nothing is set tighter: there a sheet takes the
pages that it needs.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from functools import partial
from typing import Any

from generator.calculation.worked_project import Worksheet
from generator.errors import CalculationError
from generator.rendering.environment import sheet_words, template
from generator.rendering.pdf import SheetResources, write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.styles import PAPERS, paper_style
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
        "words": partial(printed_words, site_address=setting.site_address),
    }
    return template(setting.theme, f"sheets/{name}.html").render({**common, **values})


def sheet_paper(setting: Setting, paper: str, memory: Mapping[str, str] | None = None) -> SheetResources:
    """Return what a sheet is set with; ``memory`` holds its pictures."""
    return SheetResources(paper_style(setting.theme, paper, "sheets"), setting.theme, memory or {})


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

    def keeps_to_its_pages(document: Document) -> bool:
        return len(document.pages) <= pages

    fits = _FITS[:1] if setting.theme.large else _FITS
    versions = (sheet_html(name, setting, {**values, "fit": fit}) for fit in fits)
    return write_fitting_pdf(versions, keeps_to_its_pages, sheet_paper(setting, paper))


def columns_across(setting: Setting, paper: str, letters: float) -> int:
    """Return how many columns of so many letters stand side by side on a paper, at least one."""
    margin = float(setting.theme.measures["page margin"].removesuffix("in"))
    return max(1, int((PAPERS[paper][0] - 2 * margin) * _POINTS * 2 / (setting.theme.text_size * letters)))


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
