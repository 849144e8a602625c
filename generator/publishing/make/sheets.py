"""What is drawn and set: packed worksheets come in; pages of sizes, handouts, strips and other sheets are written.

Each picture is drawn once, for the page and for every paper. What is written is told for the pages that lead to it. A
size between the named ones has its two pages only.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterable, Mapping, Sequence

from generator.calculation.worked_project import Worksheet
from generator.publishing.jobs import SheetLinks, SizeTold, Stamp, WorkedSize
from generator.publishing.kept_pictures import kept_drawers, kept_heights
from generator.publishing.room import OpenRoom, stamped
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.between import by_measure
from generator.rendering.cards import SheetEditions, SheetLink
from generator.rendering.environment import read_templates
from generator.rendering.figures import Pictures
from generator.rendering.handout.measuring import KeptHeights
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.sheet import render_handouts
from generator.rendering.machine import render_machine
from generator.rendering.pages import render_between, render_size
from generator.rendering.pdf import read_style_sheet
from generator.rendering.setting import Setting, SizeLink, size_link
from generator.rendering.sheet_kinds import SheetOrder, project_orders, room_orders, size_orders
from generator.rendering.styles import SHEET_STYLES, paper_style

# For each edition the packed worksheets of each project that has it.
ByEdition = tuple[Mapping[str, Sequence[bytes]], ...]
_TEMPLATES = frozenset(
    {
        "size.html",
        "parts/picture.html",
        "machine.html",
        "handout.html",
        "handout/parts.html",
        "handout/measured.html",
        "sheets/marking_strip.html",
        "sheets/base.html",
        "sheets/rescue.html",
    }
)
# What is drawn by the numbers of a size; how it is sewn is drawn on the pages of the named sizes beside it.
_OF_THE_SIZE = ("layout ", "piece ", "fold marks ", "cross fold marks ", "checking ", "cross checking ", "ruled rows ")


def read_beforehand(room: OpenRoom) -> None:
    """Read the templates and style sheets of all that is made of one size, so that workers find them read.

    Fonts are left to each worker: the library that sets letters looks for them in threads, which no worker inherits.

    Raises
    ------
    PublishError
        If a style sheet is not understood.
    """
    read_templates(room.theme, _TEMPLATES)
    for paper in room.setting.papers:
        for sheet in SHEET_STYLES:
            read_style_sheet(paper_style(room.theme, paper, sheet))


def make_size(room: OpenRoom, output: Output, worked: WorkedSize) -> SizeTold:
    """Write everything of one size and edition, and return what sheets about all sizes need of it."""
    setting = stamped(room.setting, worked.stamp)
    worksheet: Worksheet = pickle.loads(worked.worksheet)  # noqa: S301 -- packed by this run
    links: tuple[SizeLink, ...] = pickle.loads(worked.links)  # noqa: S301 -- as above
    orders = list(size_orders(worksheet, setting.sheets))
    with kept_drawers(room, {worked.wordless: worksheet}) as drawers:
        drawer = drawers[worked.wordless]
        with output.timed("pictures"):
            pictures = drawn(drawer)
        with output.timed("pages"):
            further = [one for order in orders for one in order.links(setting.papers)]
            beside = (links, worked.editions, further)
            for address, page in pages(worksheet, pictures, setting, beside).items():
                output.add(address, page)
        with kept_heights(room, worked.wordless) as heights:
            make_handouts(room, output, worksheet, worked.stamp, drawer, heights)
    with output.timed("further sheets"):
        for order in orders:
            for paper in setting.papers:
                output.add(order.address(paper), order.render(setting, paper))
    return SizeTold(worked.wordless)


def make_handouts(
    room: OpenRoom,
    output: Output,
    worksheet: Worksheet,
    stamp: Stamp,
    drawer: Drawer,
    heights: KeptHeights | None = None,
) -> None:
    """Write the handouts of one size and edition, with pictures by what draws them, and heights that are known."""
    with output.timed("handouts"):
        for address, sheet in handouts(worksheet, stamped(room.setting, stamp), drawer, heights).items():
            output.add(address, sheet)


def pages(
    worksheet: Worksheet,
    pictures: Pictures,
    setting: Setting,
    beside: tuple[Sequence[SizeLink], SheetEditions | None, Sequence[SheetLink]] = ((), None, ()),
) -> dict[str, bytes]:
    """Return the two pages of one size and edition, by their address.

    ``beside`` are its fellow sizes, its editions, and the sheets beside its handout.
    """
    link, (links, editions, further) = size_link(worksheet), beside
    return {
        link.page: render_size(worksheet, pictures, setting, links, editions, further).encode(),
        addresses.machine_page(link.project, link.size, link.edition): render_machine(
            worksheet, setting, editions, pictures
        ).encode(),
    }


def drawn(drawer: Drawer, kinds: tuple[str, ...] = ("",)) -> Pictures:
    """Return every picture that pages show whose key begins with one of ``kinds``, by its key."""
    return {key: (picture,) for key, picture in drawer.for_pages(kinds).items()}


def handouts(
    worksheet: Worksheet, setting: Setting, drawer: Drawer, heights: KeptHeights | None = None
) -> dict[str, bytes]:
    """Return the handout on every paper, by its address."""
    link = size_link(worksheet)
    sheets = render_handouts(worksheet, setting, setting.papers, drawer, heights)
    return {link.handout(paper): sheet for paper, sheet in sheets.items()}


def make_further(room: OpenRoom, output: Output, worksheets: Sequence[bytes], stamp: Stamp) -> SheetLinks:
    """Write the sheets about all sizes of a project."""
    return _made(room, output, project_orders(_unpacked(worksheets), room.setting.sheets), stamp)


def make_room(room: OpenRoom, output: Output, editions: ByEdition, stamp: Stamp) -> SheetLinks:
    """Write the sheets of the whole room; no more than the worksheets of an edition are unpacked for them at a time."""
    unpacked = ({name: _unpacked(sizes) for name, sizes in projects.items()} for projects in editions)
    orders = (order for projects in unpacked for order in room_orders(projects, room.setting.sheets))
    return _made(room, output, orders, stamp)


def _unpacked(worksheets: Sequence[bytes]) -> list[Worksheet]:
    """Worksheets without the texts of their steps: a changed word there makes no sheet about all sizes again."""
    return [pickle.loads(packed).wordless for packed in worksheets]  # noqa: S301 -- packed by this run


def _made(room: OpenRoom, output: Output, orders: Iterable[SheetOrder], stamp: Stamp) -> SheetLinks:
    links: list[SheetLink] = []
    setting = stamped(room.setting, stamp)
    for order in orders:
        for paper in room.setting.papers:
            with output.timed("further sheets"):
                output.add(order.address(paper), order.render(setting, paper))
        links += order.links(room.setting.papers)
    return SheetLinks(tuple(links))


def make_between(room: OpenRoom, output: Output, sizes: Sequence[WorkedSize]) -> None:
    """Write the pages of sizes of one edition."""
    unpacked: dict[str, Worksheet] = {one.wordless: pickle.loads(one.worksheet) for one in sizes}  # noqa: S301 -- packed by this run
    with output.timed("pages of sizes between"), kept_drawers(room, unpacked) as drawers:
        for worked in sizes:
            setting, worksheet = stamped(room.setting, worked.stamp), unpacked[worked.wordless]
            named: tuple[SizeLink, ...] = pickle.loads(worked.links)  # noqa: S301 -- as above
            address = worksheet.project, worksheet.size, worksheet.edition.name
            pictures = drawn(drawers[worked.wordless], _OF_THE_SIZE)
            page = render_between(worksheet, pictures, setting, named, worked.editions)
            output.add(addresses.size_page(*address), page.encode())
            machine = render_machine(by_measure(worksheet), setting, worked.editions, pictures)
            output.add(addresses.machine_page(*address), machine.encode())
