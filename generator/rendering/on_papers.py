"""One sheet on several papers: pages set once come in, the bytes of a PDF for each paper go out.

Papers differ by little, so what is set on the part that all of them hold is good for each: only the edges of its pages
are moved. That costs nothing beside setting a sheet again, and it is the same sheet on every paper.
"""

from __future__ import annotations

import io
from collections.abc import Iterable
from copy import copy

import pydyf

from generator.rendering.pdf import SheetSetter
from generator.rendering.setter import Document
from generator.rendering.styles import PAPERS

_POINTS = 72.0


def set_on(papers: Iterable[str]) -> tuple[float, float]:
    """Return the width and height that several papers hold [in].

    Examples
    --------
    A4 is narrower than Letter, and higher:

    >>> [round(side * 25.4, 1) for side in set_on(["Letter", "A4"])]
    [210.0, 279.4]
    """
    sides = [PAPERS[paper] for paper in papers]
    return min(width for width, _ in sides), min(height for _, height in sides)


def written_on(
    setter: SheetSetter, document: Document, papers: Iterable[str], page: tuple[float, float]
) -> dict[str, bytes]:
    """Return the pages that were set last as PDF on every paper.

    Parameters
    ----------
    setter : SheetSetter
        What has set them.
    document : Document
        The pages.
    papers : iterable of str
        Their names.
    page : tuple of float
        The width and height [in] on which the pages were set; no paper is less.

    Returns
    -------
    dict of str to bytes
        By the name of the paper. What is set lies in the middle of its height; what its width is more lies on the
        outer side, for the inner one has the room for holes.

    Raises
    ------
    PublishError
        If anything is missing or refused; the message names it.
    """
    found: dict[str, bytes] = {}

    def write_each(_document: Document, pdf: pydyf.PDF) -> None:
        pdf.objects = [_Packed(one) if isinstance(one, pydyf.Stream) else one for one in pdf.objects]
        for paper in papers:
            found[paper] = _on_paper(pdf, PAPERS[paper], page)
        # The library writes the pages once more when this returns, which nobody reads.
        del pdf.objects[1:]

    setter.written(document, write_each)
    return found


class _Packed(pydyf.Stream):  # type: ignore[misc]  # the library has no types
    """A finished stream, packed once for all papers."""

    def __init__(self, stream: pydyf.Stream) -> None:
        super().__init__()
        self.number = stream.number
        self._written: bytes = stream.data

    @property
    def data(self) -> bytes:
        """Data contained in the object."""
        return self._written


def _on_paper(pdf: pydyf.PDF, paper: tuple[float, float], page: tuple[float, float]) -> bytes:
    # Writing adds to a file, and pages are shared: what is written is a copy, as far down as it differs.
    written, output = copy(pdf), io.BytesIO()
    written.objects = list(pdf.objects)
    (width, height), (least_width, least_height) = ((side * _POINTS for side in sides) for sides in (paper, page))
    low = (least_height - height) / 2
    pages = [found for found in pdf.objects if isinstance(found, pydyf.Dictionary) and found.get("Type") == "/Page"]
    for number, one in enumerate(pages, 1):
        left = least_width - width if number % 2 == 0 else 0.0
        moved = copy(one)
        for box in ("MediaBox", "TrimBox", "BleedBox"):
            moved[box] = pydyf.Array([left, low, left + width, low + height])
        written.objects[one.number] = moved
    written.write(output, compress=True)
    return output.getvalue()
