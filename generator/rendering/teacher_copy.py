"""The teacher's copy: the worksheets of a project in one edition come in, a PDF with every size side by side goes out.

On its first page stand the numbers to check by, one column a size; behind them what to show when, usual mistakes, and
where to stop.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass

from markupsafe import Markup, escape

from generator.calculation.worked import Panel
from generator.calculation.worked_checks import CheckPoint, Checks
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.lengths import Edition
from generator.rendering.one_page import columns_across, edition_values, written_sheet
from generator.rendering.setting import Setting
from generator.rendering.tables import in_order, key_numbers, piece_size
from generator.rendering.typeset import said

Rows = tuple[tuple[str, tuple[Markup, ...]], ...]
_LETTERS_A_SIZE = 20


@dataclass(frozen=True, slots=True)
class NumberGroup:
    """Rows of numbers under one heading, one cell a size; a cell is empty where a size has no such number."""

    title: str
    rows: Rows


@dataclass(frozen=True, slots=True)
class SideBySide:
    """Some sizes of a project side by side."""

    sizes: tuple[str, ...]
    groups: tuple[NumberGroup, ...]


@dataclass(frozen=True, slots=True)
class TaughtStep:
    """A step of some sizes: the step as the first of them has it, and how long it takes, from the least to the most.

    ``only`` names the sizes that have it, where others do not.
    """

    step: SheetStep
    least: int
    most: int
    only: tuple[str, ...]


def render_teacher_copy(worksheets: Sequence[Worksheet], setting: Setting, paper: str) -> bytes:
    """Return the teacher's copy of a project: a page or more of numbers, sizes side by side, and a page of words."""
    most = max(2, columns_across(setting, paper, _LETTERS_A_SIZE) - 1)
    tables = [side_by_side(worksheets[start : start + most]) for start in range(0, len(worksheets), most)]
    steps = taught_steps(worksheets)
    values = {**edition_values(worksheets), "tables": tables, "labels": _labels(worksheets), "steps": steps}
    values["beginners"] = worksheets[0].beginners_words
    return written_sheet("teacher_copy", setting, paper, values, pages=len(tables) + 1)


def side_by_side(worksheets: Sequence[Worksheet]) -> SideBySide:
    """Return the numbers of some sizes, one column each."""
    groups = [NumberGroup("Pieces, across × along", _piece_rows(worksheets))]
    for name in in_order(name for worksheet in worksheets for name in worksheet.panels):
        label = _labels(worksheets)[name]
        groups.append(NumberGroup(f"{label}: key numbers", _key_rows(worksheets, name)))
        for title, checks in (("check points", _across), ("check points of the cross tucks", _cross)):
            rows = _check_rows(worksheets, name, checks)
            groups.append(NumberGroup(f"{label}: {title}, after tuck: measure", rows))
    return SideBySide(
        tuple(worksheet.size_label for worksheet in worksheets), tuple(group for group in groups if group.rows)
    )


def taught_steps(worksheets: Sequence[Worksheet]) -> tuple[TaughtStep, ...]:
    """Return the steps of all sizes in their order; the same work in several sizes is one step."""
    order: list[str] = []
    found: dict[str, list[tuple[Worksheet, SheetStep]]] = {}
    for worksheet in worksheets:
        place = 0
        for step in worksheet.steps:
            work = f"{step.standard}|{step.title}"
            if work in found:
                place = order.index(work) + 1
            else:
                order.insert(place, work)
                place += 1
            found.setdefault(work, []).append((worksheet, step))
    return tuple(_taught(found[work], len(worksheets)) for work in order)


def _taught(found: Sequence[tuple[Worksheet, SheetStep]], sizes: int) -> TaughtStep:
    minutes = [step.minutes for _, step in found]
    having = in_order(worksheet.size_label for worksheet, _ in found)
    return TaughtStep(found[0][1], min(minutes), max(minutes), having if len(having) < sizes else ())


def _labels(worksheets: Sequence[Worksheet]) -> dict[str, str]:
    return {name: piece.label for worksheet in worksheets for name, piece in worksheet.pieces.items()}


def _piece_rows(worksheets: Sequence[Worksheet]) -> Rows:
    labels = _labels(worksheets)
    return tuple(
        _piece_row(worksheets, name, label, cut=cut) for name, label in labels.items() for cut in (True, False)
    )


def _piece_row(worksheets: Sequence[Worksheet], name: str, label: str, *, cut: bool) -> tuple[str, tuple[Markup, ...]]:
    cells = []
    for worksheet in worksheets:
        piece = worksheet.pieces.get(name)
        told = Markup("") if piece is None else piece_size(piece, worksheet.edition, cut=cut)
        cells.append(Markup("about {}").format(told) if cut and piece and piece.after_panel and told else told)
    return f"{label}, {'cut' if cut else 'finished'}", tuple(cells)


def _key_rows(worksheets: Sequence[Worksheet], name: str) -> Rows:
    facts = [dict(_facts(worksheet, name)) if name in worksheet.panels else {} for worksheet in worksheets]
    labels = in_order(label for told in facts for label in told)
    return tuple((label, tuple(told.get(label, Markup("")) for told in facts)) for label in labels)


def _facts(worksheet: Worksheet, name: str) -> Iterator[tuple[str, Markup]]:
    """The key numbers of a panel, with its first and last mark and where its rows are ruled."""
    panel, edition = worksheet.panels[name], worksheet.edition
    yield from key_numbers(panel, edition, worksheet.thickest.get(name))
    tucks = panel.across
    if tucks.count:
        yield (
            "First and last mark",
            Markup("{} and {}").format(said(tucks.marks[0], edition), said(tucks.marks[-1], edition)),
        )
    if panel.rows is not None and panel.rows.rows:
        ruled = [row.ruled for row in panel.rows.rows]
        yield "First and last row, ruled", Markup("{} and {}").format(said(ruled[0], edition), said(ruled[-1], edition))


def _across(panel: Panel) -> Checks:
    return panel.checks


def _cross(panel: Panel) -> Checks:
    return panel.cross_checks


def _check_rows(worksheets: Sequence[Worksheet], name: str, checks: Callable[[Panel], Checks]) -> Rows:
    """The check points in their order; the one over the whole panel stands in the last row."""
    panels = [worksheet.panels.get(name) for worksheet in worksheets]
    points = [checks(panel).points if panel is not None else () for panel in panels]
    inside = [[point for point in found if point.mark] for found in points]
    whole = [[point for point in found if not point.mark] for found in points]
    chosen = [
        (f"Check {place + 1}", [found[place : place + 1] for found in inside]) for place in range(max(map(len, inside)))
    ]
    told = [*chosen, ("Whole panel", whole)] if any(whole) else chosen
    return tuple((label, tuple(_checks(found, worksheets[0].edition) for found in row)) for label, row in told)


def _checks(points: Sequence[CheckPoint], edition: Edition) -> Markup:
    return Markup("").join(_check(point, edition) for point in points)


def _check(point: CheckPoint, edition: Edition) -> Markup:
    return Markup("<b>{}</b>: {} ± {}").format(
        escape(point.after), said(point.expect, edition), said(point.within, edition)
    )
