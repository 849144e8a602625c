"""The tack rows of a panel: keys of the project file come in, the rows and the length to cut go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.panel.sample import sample_draw_in
from generator.calculation.shapes.released import Stretches
from generator.calculation.turning.layers import LayerLimits, crossed_findings, limits_of
from generator.calculation.turning.row_findings import edge_note
from generator.calculation.turning.rows import RowWish, choose_rows, cut_along, row_findings
from generator.calculation.worked import End, RowSet, Start, TuckSet
from generator.calculation.worksheet.panel_shape import PanelBox
from generator.calculation.worksheet.panel_tucks import count_rule, settled_plan
from generator.calculation.worksheet.row_bulk import FLAT
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.tucks import Rows


def worked_rows(
    scope: Scope, name: str, model: TuckedPanel, box: PanelBox, sewn: tuple[TuckSet, Sequence[Stretches]]
) -> tuple[RowSet | None, Fraction]:
    """Return the rows of a panel, None where its tucks are not turned, and its cut length along the tucks [in].

    Rows are spread over so much of the panel as all its tucks are stitched over from the top.
    """
    tucks, stitched = sewn
    finished, ends = box.along, (box.ends["top"], box.ends["bottom"])
    held = min((own[0][1] for own in stitched), default=finished)
    plan = settled_plan(scope, model, tucks)
    if model.rows is None or plan is None:
        return None, cut_along(None, finished, ends, scope.edition)
    keys = model.rows
    wish = RowWish(
        finished_along=held,
        ends=ends if held == finished else (ends[0], End("raw")),
        plan=plan,
        spacing=scope.value(keys.spacing),
        first=scope.bounds(keys.first),
        number=count_rule(scope, keys.number),
        start=_start(scope, keys),
        flat=FLAT[scope.edition.name],
        back_and_forth=keys.back_and_forth,
        top_held=keys.top_held,
        bottom_held=keys.bottom_held if held == finished else "free",
        measured_draw_in=_measured_draw_in(scope, model),
        limits=_limits(scope),
    )
    with scope.reporting(keys.spacing.place, name):
        rows = choose_rows(wish, tucks, scope.edition)
    for text in row_findings(wish, rows, tucks, scope.edition):
        scope.report("warning", text, keys.place, name)
    if note := edge_note(wish, rows, scope.edition):
        scope.report("note", note, keys.first.least.place, name)
    return rows, cut_along(rows, finished, ends, scope.edition)


def _start(scope: Scope, keys: Rows) -> Start:
    """Return where rows begin: as the project says, else by bulk, which the room or rows to and fro rule out."""
    if keys.start is not None:
        return keys.start
    return "by bulk" if scope.room.rows_by_bulk and not keys.back_and_forth else "right"


def check_crossing(scope: Scope, name: str, model: TuckedPanel, sets: tuple[TuckSet, TuckSet]) -> None:
    """Report where tucks that cross make the cloth too thick for the needle; more than the room sews is refused."""
    assert model.cross_tucks is not None
    with scope.reporting(model.cross_tucks.place, name):
        thick = crossed_findings(*sets, limits_of(_limits(scope), scope.weight_of(model)))
    if thick:
        scope.report("warning", thick, model.cross_tucks.place, name)


def _limits(scope: Scope) -> LayerLimits:
    return LayerLimits(scope.room.layers_warn, scope.room.layers_refuse)


def _measured_draw_in(scope: Scope, model: TuckedPanel) -> Fraction | None:
    """What one interval between rows lost: as the rows say, else as the panel's sample says, else not measured."""
    if model.rows is not None and model.rows.draw_in is not None:
        return scope.value(model.rows.draw_in)
    sample = model.sample
    if sample is None or sample.rows_before is None or sample.rows_after is None:
        return None
    return sample_draw_in(scope.value(sample.rows_before), scope.value(sample.rows_after))
