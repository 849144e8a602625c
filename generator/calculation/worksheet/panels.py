"""Tucked panels: a panel of a project file comes in, the worked piece with tucks, rows and check points goes out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.cutting.joins import breadth_joins
from generator.calculation.pieces.plain_pieces import plain_allowance
from generator.calculation.worked import BreadthJoin, Panel, RowSet, TuckSet
from generator.calculation.worked_checks import NO_CHECKS
from generator.calculation.worked_piece import EdgeWork, Part, Piece, Straight
from generator.calculation.worksheet.panel_checks import across_checks, cross_checks
from generator.calculation.worksheet.panel_measures import panel_measures
from generator.calculation.worksheet.panel_released import freed, stitched_stretches, worked_released
from generator.calculation.worksheet.panel_rods import worked_rods
from generator.calculation.worksheet.panel_rows import check_crossing, worked_rows
from generator.calculation.worksheet.panel_shape import PanelBox, panel_box, shaped_tucks
from generator.calculation.worksheet.panel_stripes import worked_stripes
from generator.calculation.worksheet.panel_tucks import pressed_of, worked_cross_tucks, worked_tucks
from generator.calculation.worksheet.pieces.shaped import edge_measures, shaped_sizes
from generator.calculation.worksheet.pieces.sizes import allowances, ends_of
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.lengths import Edition, coarsest_grid

_SIDES = ("left", "right", "top", "bottom")


def worked_panel(scope: Scope, name: str, model: TuckedPanel) -> Piece:
    """Return a tucked panel worked out whole; warnings are reported to the scope."""
    shape = shaped_sizes(scope, name, model, ends_of(scope, model)) if model.outline is not None else None
    box = panel_box(scope, model, shape)
    panel, cut_along = _panel(scope, name, model, box)
    across = panel.across.finished
    along = panel.cross.finished if panel.cross else box.along
    edges = freed(_edges(scope, name, box, (panel.across, along)), panel.free if shape is None else {})
    quantity = scope.quantity(model)
    named = {"quantity": Fraction(quantity), **{f"{side} allowance": edge.allowance for side, edge in edges.items()}}
    outer = freed(shape.edges, panel.free) if shape is not None else edges
    shaped = {**edge_measures(outer), **allowances(outer)} if shape is not None else {}
    return Piece(
        name=name,
        label=model.label or name,
        kind=model.kind,
        cloth=scope.cloth_of(model),
        quantity=quantity,
        grain=model.grain,
        parts=(Part(Straight(), panel.across.cut, cut_along, across, along, edges),),
        finished_across=across,
        finished_along=along,
        edges=outer,
        measures=named | panel_measures(panel, cut_along, along) | shaped,
        note=scope.note_of(model),
        pair=model.pair,
        hangs_by=model.hangs_by,
        panel=panel,
        after_panel=model.cut == "after the panel",
        shaped=bool(model.cut_to_shape) or shape is not None,
        trimmed_to=box.part,
        matches=True,
    )


def _panel(scope: Scope, name: str, model: TuckedPanel, box: PanelBox) -> tuple[Panel, Fraction]:
    """The tucks, rows, joins and check points of a panel, and its cut length along the tucks [in]."""
    tucks = worked_tucks(scope, name, model, box)
    cross = worked_cross_tucks(scope, name, model, box) if model.cross_tucks else None
    if cross is not None:
        check_crossing(scope, name, model, (tucks, cross))
    stitched = stitched_stretches(scope, name, model, box, tucks)
    rows, cut_along = worked_rows(scope, name, model, box, (tucks, stitched)) if cross is None else (None, cross.cut)
    panel = Panel(
        across=tucks,
        cross=cross,
        rows=rows,
        pressed=pressed_of(model, tucks.count),
        rods=worked_rods(scope, name, model, tucks, box.along),
    )
    breadths, joins, allowance = _joined(scope, model, panel)
    panel = replace(
        panel,
        checks=across_checks(scope, name, panel, joins),
        cross_checks=cross_checks(scope, name, cross) if cross is not None else NO_CHECKS,
        breadths=breadths,
        joins=joins,
        join_allowance=allowance,
        sampled=model.sample is not None,
        division=_division((*tucks.marks, *(cross.marks if cross else ()), *_ruled(rows)), scope.edition),
        stripes=worked_stripes(scope, name, model, tucks),
        shaped_ends=shaped_tucks(scope, name, model, box, (tucks, stitched)),
        released=worked_released(scope, name, model, box, (panel, stitched, cut_along)),
    )
    return panel, cut_along


def _ruled(rows: RowSet | None) -> tuple[Fraction, ...]:
    return tuple(row.ruled for row in rows.rows) if rows is not None else ()


def _division(places: tuple[Fraction, ...], edition: Edition) -> Fraction:
    """The coarsest division of the ruler that holds all places; everything lies on its finest mark."""
    grid = coarsest_grid(places, edition)
    return edition.mark if grid is None else edition.grids[grid]


def _edges(scope: Scope, name: str, box: PanelBox, size: tuple[TuckSet, Fraction]) -> dict[str, EdgeWork]:
    """The edges of a panel; where it has been sewn and measured, they are as long as measured."""
    tucks, along = size
    across, along = scope.sewn.get(f"{name}.across", tucks.finished), scope.sewn.get(f"{name}.along", along)
    ends = box.ends
    allowances = {
        "left": tucks.left_allowance,
        "right": tucks.right_allowance,
        "top": plain_allowance(ends["top"]),
        "bottom": plain_allowance(ends["bottom"]),
    }
    return {
        side: EdgeWork(side, along if side in ("left", "right") else across, ends[side], allowances[side])
        for side in _SIDES
    }


def _joined(
    scope: Scope, model: TuckedPanel, panel: Panel
) -> tuple[tuple[Fraction, ...], tuple[BreadthJoin, ...], Fraction]:
    """The breadths of a panel that is wider than its cloth; nothing where one breadth is enough."""
    width = scope.washed_width(scope.cloth_of(model))
    if model.grain != "along" or panel.across.cut <= width:
        return (), (), Fraction(0)
    allowance = scope.value(model.join_allowance)
    turns = tuple(row.turns for row in panel.rows.rows) if panel.rows else panel.turned
    held = (panel.rows.top, panel.rows.bottom) if panel.rows else ()
    breadths, joins = breadth_joins(
        panel.across, turns, width, allowance, edition=scope.edition, held=held, pressed=bool(panel.pressed)
    )
    return breadths, joins, allowance
