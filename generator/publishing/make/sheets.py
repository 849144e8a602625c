"""Sheets beside the handouts: packed worksheets come in, sheets about all sizes or all projects are written.

What is written is told for the pages that lead to it.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterable, Mapping, Sequence

from generator.calculation.worked_project import Worksheet
from generator.publishing.jobs import SheetLinks, Stamp
from generator.publishing.room import OpenRoom, stamped
from generator.publishing.write import Output
from generator.rendering.cards import SheetLink
from generator.rendering.sheet_kinds import SheetOrder, project_orders, room_orders

# For each edition the packed worksheets of each project that has it.
ByEdition = tuple[Mapping[str, Sequence[bytes]], ...]


def make_further(room: OpenRoom, output: Output, worksheets: Sequence[bytes], stamp: Stamp) -> SheetLinks:
    """Write the sheets about all sizes of a project."""
    return _made(room, output, project_orders(_unpacked(worksheets)), stamp)


def make_room(room: OpenRoom, output: Output, editions: ByEdition, stamp: Stamp) -> SheetLinks:
    """Write the sheets of the whole room; no more than the worksheets of an edition are unpacked for them at a time."""
    unpacked = ({name: _unpacked(sizes) for name, sizes in projects.items()} for projects in editions)
    return _made(room, output, (order for projects in unpacked for order in room_orders(projects)), stamp)


def _unpacked(worksheets: Sequence[bytes]) -> list[Worksheet]:
    return [pickle.loads(packed) for packed in worksheets]  # noqa: S301 -- packed by this run


def _made(room: OpenRoom, output: Output, orders: Iterable[SheetOrder], stamp: Stamp) -> SheetLinks:
    links, setting = [], stamped(room.setting, stamp)
    for order in orders:
        for paper in room.setting.papers:
            address = order.address(paper)
            with output.timed("further sheets"):
                output.add(address, order.render(setting, paper))
            links.append(SheetLink(order.kind.title, _edition(order), paper, address))
    return SheetLinks(tuple(links))


def _edition(order: SheetOrder) -> str:
    """The edition of a sheet, empty where one sheet tells all editions."""
    if not order.kind.each_edition:
        return ""
    subject = order.subject
    worksheets = next(iter(subject.values())) if isinstance(subject, Mapping) else subject
    name: str = worksheets[0].edition.name
    return name
