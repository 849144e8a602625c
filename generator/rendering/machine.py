"""The page for a phone beside the machine: a worksheet comes in, the HTML text of its stops in order goes out.

A stop is what is on the screen at one time: a step, or one row of the step in which the rows are sewn.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from generator.calculation.worked import Panel, Row
from generator.calculation.worked_checks import Checks
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.rendering import addresses
from generator.rendering.cards import SheetEditions
from generator.rendering.environment import sheet_words
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting, size_link
from generator.rendering.state import state_words

SEW_ROWS, STITCH_TUCKS, STITCH_CROSS_TUCKS = "sew rows", "stitch tucks", "stitch cross tucks"
_COLUMNS = 1


@dataclass(frozen=True, slots=True)
class MachineStop:
    """One step or row: its name on the page, where it stands among the others in words, and what it is.

    ``row`` is set where one row is told tuck by tuck, ``checks`` where a step stitches tucks that have check points.
    """

    name: str
    place: str
    step: SheetStep
    row: Row | None = None
    checks: Checks | None = None


def stops(worksheet: Worksheet) -> tuple[MachineStop, ...]:
    """Return the stops of a worksheet in the order of the work."""
    return tuple(stop for step in worksheet.steps for stop in _stops_of(step, worksheet))


def _stops_of(step: SheetStep, worksheet: Worksheet) -> Iterator[MachineStop]:
    name, place = f"step-{step.number}", f"Step {step.number} of {len(worksheet.steps)}"
    panel = worksheet.panels.get(step.pieces[0]) if step.pieces else None
    yield MachineStop(name, place, step, checks=_checks_at(step, panel))
    if step.standard == SEW_ROWS and panel is not None and panel.rows is not None:
        rows = panel.rows.rows
        for row in rows:
            yield MachineStop(f"{name}-row-{row.number}", f"{place}, row {row.number} of {len(rows)}", step, row=row)


def _checks_at(step: SheetStep, panel: Panel | None) -> Checks | None:
    """The check points of the tucks that a step stitches."""
    if panel is None or step.standard not in (STITCH_TUCKS, STITCH_CROSS_TUCKS):
        return None
    return panel.checks if step.standard == STITCH_TUCKS else panel.cross_checks


def render_machine(worksheet: Worksheet, setting: Setting, editions: SheetEditions | None = None) -> str:
    """Return the page for the machine of one size in one edition; its script only hides and shows what is on it.

    ``editions`` tells under which marks the sheet was given out, and what is otherwise since.
    """
    link = size_link(worksheet)
    address = addresses.machine_page(worksheet.project, worksheet.size, worksheet.edition.name)
    return framed_page(
        "machine.html",
        address,
        setting,
        link=link,
        stops=stops(worksheet),
        worker=addresses.relative(address, addresses.WORKER),
        **state_words(worksheet, editions),
        **sheet_words(worksheet, _COLUMNS),
    )
