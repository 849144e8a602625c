"""One sheet of a print run: its PDF and its copies come in, how much paper it takes goes out.

What reads PDFs is loaded when somebody asks for the number of pages; whoever publishes a word would wait for it.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from pkgutil import resolve_name


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
        number: int = resolve_name("generator.rendering.joined:number_of_pages")(self.pdf)
        return number

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
