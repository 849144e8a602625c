"""Pages of sizes between the named ones: packed worksheets come in, for each its page and the one for the machine."""

from __future__ import annotations

import pickle
from collections.abc import Sequence

from generator.calculation.worked_project import Worksheet
from generator.publishing.jobs import WorkedSize
from generator.publishing.kept_pictures import kept_drawers
from generator.publishing.make.sheets import drawn
from generator.publishing.room import OpenRoom, stamped
from generator.publishing.write import Output
from generator.rendering import addresses
from generator.rendering.between import by_measure
from generator.rendering.machine import render_machine
from generator.rendering.pages import render_between
from generator.rendering.setting import SizeLink

# What is drawn by the numbers of a size; how it is sewn is drawn on the pages of the named sizes beside it.
_OF_THE_SIZE = ("layout ", "piece ", "fold marks ", "cross fold marks ", "checking ", "cross checking ", "ruled rows ")


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
