"""What every sheet must hold to: an opened PDF comes in, its faults go out as sentences.

Everything is read from the file's objects themselves; only the words on the pages come through a second library.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from itertools import pairwise
from pathlib import Path

import pikepdf
from handout_checks import HANDOUT_CHECKS
from links import resolved
from pikepdf import Array, Dictionary, Object
from sheet_reading import ReadSheet

from tests.built_site import BuiltSite

PAPERS = {"letter": (612.0, 792.0), "a4": (595.276, 841.890)}  # points
FORBIDDEN = frozenset(
    (
        "/JavaScript",
        "/JS",
        "/EmbeddedFile",
        "/EmbeddedFiles",
        "/Filespec",
        "/Launch",
        "/OpenAction",
        "/AA",
        "/AF",
        "/XFA",
    )
)


def syntax(sheet: ReadSheet) -> Iterator[str]:
    job = pikepdf.Job(["pikepdf", "--check", str(sheet.path)])
    job.run()
    if job.exit_code or job.has_warnings:
        yield f"qpdf finds fault with it: {job.exit_code}"


def pages(sheet: ReadSheet) -> Iterator[str]:
    """Each page says which one it is of how many, and has something to read beside that."""
    total = len(sheet.texts)
    if total != len(sheet.pdf.pages) or not total:
        yield f"has {total} or {len(sheet.pdf.pages)} pages"
    for number, text in enumerate(sheet.texts, 1):
        told = re.findall(r"\bpage (\d+) of (\d+)", text)
        if told != [(str(number), str(total))]:
            yield f"page {number} of {total} calls itself {told}"


def paper(sheet: ReadSheet) -> Iterator[str]:
    [wanted] = [size for name, size in PAPERS.items() if name in sheet.path.stem.split("-")]
    for number, page in enumerate(sheet.pdf.pages, 1):
        box = [float(edge) for edge in page.mediabox]
        size = (box[2] - box[0], box[3] - box[1])
        if max(abs(is_ - was) for is_, was in zip(size, wanted, strict=True)) > 0.01 or page.get("/Rotate", 0):
            yield f"page {number} is {size}, not {wanted}"


def tagged(sheet: ReadSheet) -> Iterator[str]:
    root = sheet.pdf.Root
    if not root.get("/MarkInfo", Dictionary()).get("/Marked") or not root.get("/StructTreeRoot", Dictionary()).get(
        "/K"
    ):
        yield "is not tagged"
    if 'pdfuaid:part="1"' not in _about(root) and "<pdfuaid:part>1<" not in _about(root):
        yield "does not say that it is PDF/UA"
    for number, page in enumerate(sheet.pdf.pages, 1):
        if "/StructParents" not in page:
            yield f"nothing on page {number} is tagged"


def _about(root: Object) -> str:
    return root.Metadata.read_bytes().decode() if "/Metadata" in root else ""


def named(sheet: ReadSheet) -> Iterator[str]:
    root = sheet.pdf.Root
    if not re.fullmatch(r"[a-z]{2}(-[A-Z]{2})?", str(root.get("/Lang", ""))):
        yield f"says that its language is {root.get('/Lang')!r}"
    if not str(sheet.pdf.docinfo.get("/Title", "")).strip():
        yield "has no title"
    if not root.get("/ViewerPreferences", Dictionary()).get("/DisplayDocTitle"):
        yield "does not ask for its title to be shown"


def outline(sheet: ReadSheet) -> Iterator[str]:
    """A sheet of more than two pages has bookmarks, and every bookmark leads to a page of it."""
    with sheet.pdf.open_outline() as opened:
        entries = list(_entries(opened.root))
    if len(sheet.pdf.pages) > 2 and not entries:
        yield "has no outline"
    for entry in entries:
        if not entry.title or _leads_nowhere(sheet, entry.destination or (entry.action or {}).get("/D")):
            yield f"the bookmark {entry.title!r} leads nowhere"


def _entries(items: list[pikepdf.OutlineItem]) -> Iterator[pikepdf.OutlineItem]:
    for item in items:
        yield item
        yield from _entries(item.children)


def fonts(sheet: ReadSheet) -> Iterator[str]:
    """Every font that any page, drawing or form uses is inside the file, and only the letters that are used."""
    for font in sheet.dictionaries:
        if font.get("/Type") != "/Font" or font.get("/Subtype") == "/Type0":
            continue
        name, inside = str(font.get("/BaseFont")), font.get("/FontDescriptor", Dictionary())
        if font.get("/Subtype") == "/Type3":
            yield "has letters drawn as pictures"
        elif not {"/FontFile", "/FontFile2", "/FontFile3"} & {*inside.keys()}:
            yield f"the font {name} is not inside"
        elif not re.match(r"/[A-Z]{6}\+", name):
            yield f"the font {name} is inside whole"


def figures(sheet: ReadSheet) -> Iterator[str]:
    """Every figure is told in words."""
    found = [element for element in sheet.dictionaries if element.get("/S") == "/Figure"]
    silent = [element for element in found if not str(element.get("/Alt", "")).strip()]
    if silent:
        yield f"{len(silent)} of {len(found)} figures are not told in words"


def headings(sheet: ReadSheet) -> Iterator[str]:
    """The first heading is of the first rank, and no rank is skipped on the way down."""
    ranks = [int(tag.kind[2:]) for tag in sheet.tags if re.fullmatch(r"/H[1-6]", tag.kind)]
    if not ranks or ranks[0] != 1:
        yield "does not begin with a heading of the first rank"
    for before, rank in pairwise(ranks):
        if rank > before + 1:
            yield f"a heading of rank {rank} follows one of rank {before}"
    if any(not tag.filled for tag in sheet.tags if tag.kind.startswith("/H")):
        yield "has an empty heading"


def tables(sheet: ReadSheet) -> Iterator[str]:
    """Every cell with something in it names its heads, and no head is empty."""
    for tag in sheet.tags:
        if tag.kind == "/TD" and tag.filled and not tag.heads:
            yield "a cell of a table has no head"
        if tag.kind == "/TH" and not tag.filled:
            yield "the head of a table is empty"


def lists(sheet: ReadSheet) -> Iterator[str]:
    """Every item stands in a list, and a list holds nothing but items."""
    for tag in sheet.tags:
        if (tag.kind == "/LI") != (tag.inside == "/L") and tag.kind != "/Caption":
            yield f"{tag.kind[1:]} stands in {tag.inside[1:] or 'nothing'}"


def links(sheet: ReadSheet) -> Iterator[str]:
    """Every link leads to a place in the file, or to a file of the room's own site where that has an address."""
    for link in sheet.dictionaries:
        if link.get("/Subtype") != "/Link":
            continue
        action = link.get("/A", Dictionary())
        uri, place = str(action.get("/URI", "")), link.get("/Dest", action.get("/D"))
        if uri and not _is_our_own(sheet.site, uri):
            yield f"a link leads to {uri}"
        elif not uri and _leads_nowhere(sheet, place):
            yield f"a link leads nowhere: {place!r}"
        if "/StructParent" not in link:
            yield "a link is not tagged"


def _is_our_own(site: BuiltSite, uri: str) -> bool:
    inside = uri.removeprefix(site.address).partition("#")[0]
    return bool(site.address) and uri.startswith(site.address) and resolved("index.html", inside) in site.names


def _leads_nowhere(sheet: ReadSheet, place: object) -> bool:
    if isinstance(place, Array):
        return not any(page.obj.objgen == place[0].objgen for page in sheet.pdf.pages)
    return place is None or str(place) not in sheet.places


def nothing_else(sheet: ReadSheet) -> Iterator[str]:
    """Nothing in a sheet runs, is attached, or is asked for from elsewhere."""
    for found in sheet.dictionaries:
        told = {*found.keys(), str(found.get("/S", "")), str(found.get("/Type", ""))} & FORBIDDEN
        if told:
            yield f"holds {', '.join(sorted(told))}"


SheetCheck = Callable[[ReadSheet], Iterator[str]]
CHECKS: tuple[SheetCheck, ...] = (
    syntax,
    pages,
    paper,
    tagged,
    named,
    outline,
    fonts,
    figures,
    headings,
    tables,
    lists,
    links,
    nothing_else,
    *HANDOUT_CHECKS,
)


def faults_of(path: Path, site: BuiltSite) -> list[str]:
    """Everything that is wrong with one sheet."""
    with pikepdf.open(path) as pdf:
        sheet = ReadSheet(path, pdf, site)
        return [fault for check in CHECKS for fault in check(sheet)]
