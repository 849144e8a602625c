"""The rescue sheet: a worksheet comes in, a PDF with a page for each of its tucked panels goes out.

What can go wrong, how it is seen, and what can still be undone at which step, with the numbers of this size.
"""

from __future__ import annotations

from dataclasses import dataclass

from markupsafe import Markup

from generator.calculation.panel.correction_words import said_tucks
from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked import Panel, RowSet
from generator.calculation.worked_checks import CheckPoint, Checks, Correction
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.rendering.one_page import edition_values, written_sheet
from generator.rendering.setting import Setting
from generator.rendering.tables import finished_range


@dataclass(frozen=True, slots=True)
class RowGroup:
    """Rows that are sewn alike: their numbers, the end where they start, and their turns in words."""

    numbers: str
    start: str
    turns: str


@dataclass(frozen=True, slots=True)
class CheckedTucks:
    """The check points of one set of tucks, and what to do at the middle one, if there tucks can be changed."""

    title: str
    checks: Checks
    corrections: tuple[Correction, ...]


@dataclass(frozen=True, slots=True)
class PanelTrouble:
    """One panel as the rescue sheet tells it; ``checked`` are its tucks and, where it has them, its cross tucks."""

    piece: Piece
    panel: Panel
    take_up: Markup
    depth: Markup
    whole: CheckPoint | None
    checked: tuple[CheckedTucks, ...]
    row_groups: tuple[RowGroup, ...]


def render_rescue(worksheet: Worksheet, setting: Setting, paper: str) -> bytes:
    """Return the rescue sheet of one size, a page for each panel."""
    panels = tuple(panel_trouble(worksheet, name) for name, panel in worksheet.panels.items() if panel.across.count)
    values = {**edition_values([worksheet]), "panels": panels, "said_tucks": said_tucks}
    return written_sheet("rescue", setting, paper, values, pages=max(1, len(panels)))


def panel_trouble(worksheet: Worksheet, name: str) -> PanelTrouble:
    """Return what the rescue sheet tells of one panel."""
    panel, edition = worksheet.panels[name], worksheet.edition
    sets = (("Check points", panel.checks), ("Check points of the cross tucks", panel.cross_checks))
    return PanelTrouble(
        piece=worksheet.pieces[name],
        panel=panel,
        take_up=finished_range(min(panel.across.take_ups), max(panel.across.take_ups), edition),
        depth=finished_range(min(panel.across.depths), max(panel.across.depths), edition),
        whole=next((point for point in panel.checks.points if not point.mark), None),
        checked=tuple(checked_tucks(title, checks) for title, checks in sets if checks.points),
        row_groups=row_groups(panel.rows) if panel.rows else (),
    )


def checked_tucks(title: str, checks: Checks) -> CheckedTucks:
    """Return a set of tucks with the corrections of its middle check point, if those say what tucks to change."""
    points = [point for point in checks.points if point.mark]
    middle = points[len(points) // 2].after if points else 0
    told = tuple(one for one in checks.corrections if one.after == middle)
    return CheckedTucks(title, checks, told if any(one.steps for one in told) else ())


def row_groups(rows: RowSet) -> tuple[RowGroup, ...]:
    """Return the rows that are sewn alike together, in the order of their first row."""
    groups: dict[tuple[str, tuple[str, ...]], list[int]] = {}
    for row in rows.rows:
        groups.setdefault((row.start, row.words), []).append(row.number)
    return tuple(
        RowGroup(", ".join(str(number) for number in numbers), start, spoken_row(words))
        for (start, words), numbers in groups.items()
    )
