"""Sheets put together for one print run: PDFs come in with their copies, one PDF in the order of printing goes out."""

from __future__ import annotations

import io
import logging
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from pypdf import PdfReader, PdfWriter
from pypdf.errors import PyPdfError
from pypdf.generic import BooleanObject, NameObject

from generator.rendering.joined_tags import TagWriter

# What it says of a damaged file is no message of this tool: such a file has no pages that are known.
logging.getLogger("pypdf").setLevel(logging.CRITICAL)


@dataclass(frozen=True)
class PrintedPaper:
    """One sheet of a print run: what it is, of which size and edition, for whom, and how many copies of it.

    ``cut`` tells that it is cut from its paper, so that nothing may stand on its back.
    """

    title: str
    pdf: bytes
    size: str = ""
    edition: str = ""
    student: str = ""
    copies: int = 1
    cut: bool = False

    @property
    def named(self) -> str:
        """What it is, of which size and edition, and for whom."""
        return ", ".join(told for told in (self.title, self.size, self.edition, self.student) if told)

    @cached_property
    def pages(self) -> int:
        """How many printed pages one copy has."""
        return len(PdfReader(io.BytesIO(self.pdf)).pages)

    def paper(self, *, both_sides: bool) -> int:
        """Return how many sheets of paper all copies take.

        Examples
        --------
        Three copies of five pages take three sheets each when both sides are printed; what is cut from its paper takes
        a sheet a page.

        >>> leaves = PrintedPaper("Handout", b"", copies=3)
        >>> leaves.__dict__["pages"] = 5
        >>> leaves.paper(both_sides=True), leaves.paper(both_sides=False)
        (9, 15)
        """
        one_side = self.cut or not both_sides
        return self.copies * (self.pages if one_side else (self.pages + 1) // 2)


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
