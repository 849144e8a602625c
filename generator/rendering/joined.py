"""Sheets put together for one print run: PDFs come in with their copies, one PDF in the order of printing goes out."""

from __future__ import annotations

import io
import logging
from collections.abc import Sequence
from pathlib import Path

from pypdf import PdfReader, PdfWriter
from pypdf.errors import PyPdfError
from pypdf.generic import BooleanObject, NameObject

from generator.rendering.joined_tags import TagWriter
from generator.rendering.printed_paper import PrintedPaper

# What it says of a damaged file is no message of this tool: such a file has no pages that are known.
logging.getLogger("pypdf").setLevel(logging.CRITICAL)


def number_of_pages(pdf: bytes) -> int:
    """Return how many pages a sheet has."""
    return len(PdfReader(io.BytesIO(pdf)).pages)


def pages_of(sheet: Path) -> int | None:
    """Return how many pages the file of a sheet has, None where there is none or it is no sheet."""
    try:
        return len(PdfReader(sheet).pages) or None
    except (OSError, PyPdfError):
        return None


def joined(papers: Sequence[PrintedPaper], *, both_sides: bool) -> bytes:
    """Return all copies of all sheets as one PDF that asks for its true size, in order.

    Parameters
    ----------
    papers : sequence of PrintedPaper
        In the order of printing.
    both_sides : bool
        Whether both sides of the paper are printed. Then a blank page stands wherever the next sheet would begin on the
        back of another, and behind each page that is cut from its paper.

    Returns
    -------
    bytes
        The PDF, tagged as the single sheets are, with a bookmark for each copy.
    """
    writer = PdfWriter()
    tags, language = TagWriter(writer), ""
    for paper in papers:
        reader = PdfReader(io.BytesIO(paper.pdf))
        language = language or str(reader.root_object.get("/Lang", "en"))
        for _ in range(paper.copies):
            first, pages = len(writer.pages), []
            for number, page in enumerate(reader.pages, 1):
                pages.append((page, writer.add_page(page)))
                if both_sides and (paper.cut or (number == len(reader.pages) and number % 2)):
                    writer.add_blank_page()
            tags.add(reader, pages)
            writer.add_outline_item(title=paper.named, page_number=first)
    tags.close(language)
    writer.add_metadata({"/Title": papers[0].title if papers else ""})
    preferences = writer.create_viewer_preferences()
    preferences[NameObject("/PrintScaling")] = NameObject("/None")
    preferences[NameObject("/DisplayDocTitle")] = BooleanObject(value=True)
    written = io.BytesIO()
    writer.write(written)
    return written.getvalue()
