"""An opened PDF comes in, what it holds goes out: its dictionaries, its tags, the words of its pages."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

import pikepdf
import pypdfium2
from pikepdf import Array, Dictionary, Object, Stream

from tests.built_site import BuiltSite


@dataclass(frozen=True)
class Tag:
    """One element of the tree of tags: what it is, what it stands in, and whether there is anything in it."""

    kind: str
    inside: str
    element: Dictionary
    filled: bool

    @property
    def heads(self) -> int:
        """How many heads a cell of a table names as its own."""
        told = self.element.get("/A", Dictionary())
        return len(told.get("/Headers", Array())) if isinstance(told, Dictionary) else 0


def _tags(found: object, inside: str) -> Iterator[Tag]:
    """The elements below one; what is no element is a piece of a page."""
    if isinstance(found, Array):
        for one in found:
            yield from _tags(one, inside)
    elif isinstance(found, Dictionary) and "/S" in found:
        kind = str(found.S)
        below = list(_tags(found.get("/K"), kind))
        pieces = [one for one in _each(found.get("/K")) if not (isinstance(one, Dictionary) and "/S" in one)]
        yield Tag(kind, inside, found, bool(pieces) or any(tag.filled for tag in below))
        yield from below


def _each(found: object) -> list[object]:
    if found is None:
        return []
    return list(found) if isinstance(found, Array) else [found]


@dataclass(frozen=True)
class ReadSheet:
    """One sheet of a site, open."""

    path: Path
    pdf: pikepdf.Pdf
    site: BuiltSite

    @cached_property
    def dictionaries(self) -> list[Dictionary]:
        """Every dictionary of the file, those of streams included, once."""
        return list(self._inside(self.pdf.objects, set()))

    def _inside(self, objects: object, seen: set[tuple[int, int]]) -> Iterator[Dictionary]:
        for found in objects:  # type: ignore[attr-defined]
            if isinstance(found, Stream):
                yield from self._inside([found.stream_dict], seen)
            elif isinstance(found, Dictionary):
                yield found
                yield from self._inside([value for value in found.values() if _direct(value)], seen)
            elif isinstance(found, Array):
                yield from self._inside([value for value in found if _direct(value)], seen)

    @cached_property
    def tags(self) -> list[Tag]:
        """Every element of the tree of tags, in the order of reading."""
        return list(_tags(self.pdf.Root.get("/StructTreeRoot", Dictionary()).get("/K"), ""))

    @cached_property
    def texts(self) -> list[str]:
        with pypdfium2.PdfDocument(self.path) as read:
            return [" ".join(page.get_textpage().get_text_bounded().split()) for page in read]

    @cached_property
    def places(self) -> set[str]:
        """The names of all places that links of this file may lead to."""
        names = self.pdf.Root.get("/Names", Dictionary()).get("/Dests")
        return set() if names is None else {str(name) for name in pikepdf.NameTree(names)}


def _direct(value: Object) -> bool:
    """Whether a value stands inside its parent; what stands by itself is met among the objects of the file."""
    return isinstance(value, Object) and not value.is_indirect and isinstance(value, Dictionary | Array | Stream)
