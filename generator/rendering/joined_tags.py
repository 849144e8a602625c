"""The tags of sheets that are put together: a sheet and its new pages come in, its tags stand in the new file.

A page keeps its marks on what stands on it when it is copied, but not the tree that says what they are. That tree is
copied here, for each copy of a sheet anew, so that every page is read aloud as in its own file.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from pypdf import PageObject, PdfReader, PdfWriter
from pypdf.generic import (
    ArrayObject,
    BooleanObject,
    DictionaryObject,
    IndirectObject,
    NameObject,
    NumberObject,
    PdfObject,
    TextStringObject,
)


class TagWriter:
    """Writes one tree of tags for all sheets of a file."""

    def __init__(self, writer: PdfWriter) -> None:
        self._writer = writer
        self._sheets, self._numbers = ArrayObject(), ArrayObject()
        self._next, self._copies = 0, 0
        self._root = DictionaryObject({NameObject("/Type"): NameObject("/StructTreeRoot")})
        self._root[NameObject("/K")] = self._sheets
        self._root[NameObject("/ParentTree")] = DictionaryObject({NameObject("/Nums"): self._numbers})
        self._reference = writer._add_object(self._root)

    def add(self, reader: PdfReader, pages: Sequence[tuple[PageObject, PageObject]]) -> None:
        """Add the tags of one copy of a sheet, whose pages have become new ones; a sheet without tags adds none."""
        tree = reader.root_object.get("/StructTreeRoot")
        if tree is None:
            return
        self._copies += 1
        copied = _CopiedTags(self._writer, f"{self._copies}-", pages, self._next)
        self._sheets.extend(copied.kids(tree.get_object().raw_get("/K"), self._reference))
        numbers = _numbers(tree["/ParentTree"])
        for number, owner in numbers.items():
            self._numbers += [NumberObject(self._next + number), copied.owners(owner)]
        self._next += max(numbers, default=-1) + 1

    def close(self, language: str) -> None:
        """Put the tree into the file, with its language, if any sheet had tags."""
        if not self._sheets:
            return
        self._root[NameObject("/ParentTreeNextKey")] = NumberObject(self._next)
        about = self._writer.root_object
        about[NameObject("/StructTreeRoot")] = self._reference
        about[NameObject("/MarkInfo")] = DictionaryObject({NameObject("/Marked"): _TRUE})
        about[NameObject("/Lang")] = TextStringObject(language)


class _CopiedTags:
    """The elements of one copy of a sheet; the names of its own places begin with ``before``."""

    def __init__(
        self, writer: PdfWriter, before: str, pages: Sequence[tuple[PageObject, PageObject]], first: int
    ) -> None:
        self._writer, self._before, self._first = writer, before, first
        self._new: dict[int, IndirectObject] = {}
        self._pages = {_place(old.indirect_reference): new.indirect_reference for old, new in pages}
        for old, new in pages:
            new[NameObject("/StructParents")] = NumberObject(first + _whole(old["/StructParents"]))
            new[NameObject("/Annots")] = ArrayObject(self._links(old, new))

    def _links(self, old: PageObject, new: PageObject) -> Iterator[IndirectObject]:
        """The links of a page, each a new one of this copy; those that stay within their sheet lose their way."""
        for found in _listed(old, "/Annots"):
            link = _dictionary(found)
            if "/StructParent" in link and "/URI" in _dictionary(link.get("/A", DictionaryObject())):
                copied = DictionaryObject(
                    {key: value.clone(self._writer) for key, value in link.items() if key != "/P"}
                )
                copied[NameObject("/StructParent")] = NumberObject(self._first + _whole(link["/StructParent"]))
                copied[NameObject("/P")] = new.indirect_reference
                reference = self._writer._add_object(copied)
                self._new[_place(found)] = reference
                yield reference

    def kids(self, found: PdfObject, parent: IndirectObject) -> list[PdfObject]:
        """Return what stands below an element: elements, numbers of what is marked on a page, and links."""
        listed = found.get_object()
        several = listed if isinstance(listed, ArrayObject) else [found]
        return [kid for one in several if (kid := self._kid(one, parent)) is not None]

    def _kid(self, found: PdfObject, parent: IndirectObject) -> PdfObject | None:
        kid = found.get_object()
        if not isinstance(kid, DictionaryObject):
            return kid
        if "/S" in kid:
            return self._element(found, kid, parent)
        told = DictionaryObject({key: value for key, value in kid.items() if key not in ("/Pg", "/Obj")})
        if "/Obj" in kid:
            link = self._new.get(_place(kid.raw_get("/Obj")))
            if link is None:
                return None
            told[NameObject("/Obj")] = link
        if "/Pg" in kid:
            told[NameObject("/Pg")] = self._pages[_place(kid.raw_get("/Pg"))]
        return told

    def _element(self, found: PdfObject, old: DictionaryObject, parent: IndirectObject) -> IndirectObject:
        new = DictionaryObject()
        reference = self._writer._add_object(new)
        if isinstance(found, IndirectObject):
            self._new[found.idnum] = reference
        for key, value in old.items():
            if key == "/K":
                new[key] = ArrayObject(self.kids(value, reference))
            elif key == "/Pg":
                new[key] = self._pages[_place(value)]
            elif key in ("/ID", "/A"):
                new[key] = self._named(value.get_object())
            elif key != "/P":
                new[key] = value.clone(self._writer)
        new[NameObject("/P")] = parent
        return reference

    def _named(self, found: PdfObject) -> PdfObject:
        """A name of a place, or what holds such names, as it is in this copy."""
        if isinstance(found, DictionaryObject):
            return DictionaryObject(
                {
                    key: self._named(value.get_object()) if key == "/Headers" else value.clone(self._writer)
                    for key, value in found.items()
                }
            )
        if isinstance(found, ArrayObject):
            return ArrayObject(self._named(one.get_object()) for one in found)
        return TextStringObject(f"{self._before}{found}")

    def owners(self, found: PdfObject) -> PdfObject:
        """Return the new elements that own what is marked on a page, or a link."""
        several = found.get_object()
        if isinstance(several, ArrayObject):
            return ArrayObject(self._owner(one) for one in several)
        return self._owner(found)

    def _owner(self, found: PdfObject) -> IndirectObject:
        """The new element of an old one; what stands on every page, such as its foot, hangs on no element above it."""
        if _place(found) not in self._new:
            old = _dictionary(found)
            self._element(found, old, self._owner(old.raw_get("/P")))
        return self._new[_place(found)]


_TRUE = BooleanObject(value=True)


def _place(found: PdfObject | None) -> int:
    """The number of what stands by itself in its file."""
    assert isinstance(found, IndirectObject)
    return found.idnum


def _dictionary(found: PdfObject) -> DictionaryObject:
    told = found.get_object()
    assert isinstance(told, DictionaryObject)
    return told


def _whole(number: PdfObject) -> int:
    return int(str(number))


def _listed(holder: DictionaryObject, key: str) -> Sequence[PdfObject]:
    """What a list of a dictionary holds, as it stands there; nothing where there is none."""
    found = holder.get(key)
    listed = found.get_object() if found is not None else None
    return tuple(listed) if isinstance(listed, ArrayObject) else ()


def _numbers(tree: DictionaryObject) -> Mapping[int, PdfObject]:
    """The entries of a number tree."""
    listed = _listed(tree, "/Nums")
    entries = {_whole(number): owner for number, owner in zip(listed[::2], listed[1::2], strict=True)}
    for below in _listed(tree, "/Kids"):
        entries |= _numbers(_dictionary(below))
    return entries
