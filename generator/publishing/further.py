"""Sheets beside the handouts: packed worksheets come in, sheets about all sizes or all projects are written.

What is written is told for the pages that lead to it.
"""

from __future__ import annotations

import pickle
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import asdict

from generator.calculation.worked_project import Worksheet
from generator.publishing.jobs import FurtherJob, Outcome, RoomJob, Stamp
from generator.publishing.opened import OpenRoom, stamped
from generator.publishing.written import Stopwatch, Written
from generator.rendering.setting import SheetLink
from generator.rendering.sheet_kinds import SheetOrder, project_orders, room_orders


def make_further(room: OpenRoom, job: FurtherJob) -> Outcome:
    """Write the sheets about all sizes of a project."""
    return _made(room, project_orders(_unpacked(job.worksheets)), job.stamp, Written(job.out))


def make_room(room: OpenRoom, job: RoomJob) -> Outcome:
    """Write the sheets of the whole room; no more than the worksheets of an edition are unpacked for them at a time."""
    unpacked = ({name: _unpacked(sizes) for name, sizes in projects.items()} for projects in job.editions)
    orders = (order for projects in unpacked for order in room_orders(projects))
    return _made(room, orders, job.stamp, Written(job.out))


def _unpacked(worksheets: Sequence[bytes]) -> list[Worksheet]:
    return [pickle.loads(packed) for packed in worksheets]  # noqa: S301 -- packed by this run


def _made(room: OpenRoom, orders: Iterable[SheetOrder], stamp: Stamp, written: Written) -> Outcome:
    watch, links, setting = Stopwatch(), [], stamped(room.setting, stamp)
    for order in orders:
        for paper in room.setting.papers:
            address = order.address(paper)
            with watch.on("further sheets"):
                written.add(address, order.render(setting, paper))
            links.append(asdict(SheetLink(order.kind.title, _edition(order), paper, address)))
    return Outcome(looks=room.looks, files=written.files, card={"sheets": links}, seconds=watch.seconds)


def _edition(order: SheetOrder) -> str:
    """The edition of a sheet, empty where one sheet tells all editions."""
    if not order.kind.each_edition:
        return ""
    subject = order.subject
    worksheets = next(iter(subject.values())) if isinstance(subject, Mapping) else subject
    name: str = worksheets[0].edition.name
    return name
