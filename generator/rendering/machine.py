"""The page for a phone beside the machine: a worksheet comes in, the HTML text of its stops in order goes out.

A stop is what is on the screen at one time: a step, or one row of the step in which the rows are sewn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.calculation.worked import Panel, Row
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.rendering import addresses
from generator.rendering.environment import sheet_words
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting, size_link

SEW_ROWS, STITCH_TUCKS = "sew rows", "stitch tucks"
_COLUMNS = 1


@dataclass(frozen=True, slots=True)
class MachineStop:
    """One step or row: its name on the page, where it stands among the others in words, and what it is.

    ``row`` is set where one row is told tuck by tuck, ``panel`` where a step stitches the tucks that check points are
    for.
    """

    name: str
    place: str
    step: SheetStep
    row: Row | None = None
    panel: Panel | None = None


def stops(worksheet: Worksheet) -> tuple[MachineStop, ...]:
    """Return the stops of a worksheet in the order of the work."""
    return tuple(stop for step in worksheet.steps for stop in _stops_of(step, worksheet))


def _stops_of(step: SheetStep, worksheet: Worksheet) -> Iterator[MachineStop]:
    name, place = f"step-{step.number}", f"Step {step.number} of {len(worksheet.steps)}"
    panel = worksheet.panels.get(step.pieces[0]) if step.pieces else None
    yield MachineStop(name, place, step, panel=panel if step.standard == STITCH_TUCKS else None)
    if step.standard == SEW_ROWS and panel is not None and panel.rows is not None:
        rows = panel.rows.rows
        for row in rows:
            yield MachineStop(f"{name}-row-{row.number}", f"{place}, row {row.number} of {len(rows)}", step, row=row)


def render_machine(worksheet: Worksheet, setting: Setting) -> str:
    """Return the page for the machine of one size in one edition; its script only hides and shows what is on it."""
    link = size_link(worksheet)
    address = addresses.machine_page(worksheet.project, worksheet.size, worksheet.edition.name)
    return framed_page(
        "machine.html",
        address,
        setting,
        link=link,
        stops=stops(worksheet),
        worker=addresses.relative(address, addresses.WORKER),
        **sheet_words(worksheet, _COLUMNS),
    )
