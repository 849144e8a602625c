"""Bindings and bias strips: what a beginner needs so that the strip covers, comes round and is long enough."""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path

from sewable_room import every_sheet, named, sheets_of

from generator.calculation.pieces.bias import continuous_bias_length
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.lengths import on_ruler, read_length

# What the fold of a bound edge takes at least, and what a square has to spare.
ROOM = {"inch": read_length("1/8 in"), "metric": read_length("3 mm")}
SPARE = {"inch": read_length("3/4 in"), "metric": read_length("2 cm")}


def steps(path: Path, standard: str) -> list[tuple[Worksheet, SheetStep, Piece]]:
    return [
        (sheet, step, sheet.pieces[step.pieces[0]])
        for sheet in sheets_of(path)
        for step in sheet.steps
        if step.standard == standard
    ]


def bound(sheet: Worksheet, strip: Piece) -> str:
    """What a strip is sewn to, as the file writes it."""
    both = [(meeting.join, meeting.to) for meeting in sheet.meetings]
    return " and ".join(a if b == f"{strip.name}.edge" else b for a, b in both if f"{strip.name}.edge" in (a, b))


@every_sheet
def test_a_binding_has_room_for_the_edge_beside_four_times_its_width(path: Path) -> None:
    for sheet, step, strip in steps(path, "bind"):
        width, room = strip.measures["width"], strip.cut_along - 4 * strip.measures["width"]
        assert room >= ROOM[sheet.edition.name], named(sheet, step)
        # It is folded in by its width at both edges, as the step says and the picture shows.
        assert strip.made.folds == (width, strip.cut_along - width), named(sheet, step)
        # Sewn on at its width, round the edge, and one width turned in: what is left reaches the stitching.
        assert strip.cut_along - width - width - room - width >= width


@every_sheet
def test_a_step_that_binds_tells_of_corners_and_of_meeting_ends_where_there_are_such(path: Path) -> None:
    for sheet, step, strip in steps(path, "bind"):
        edges = bound(sheet, strip)
        ring = any(panel.across.ring for panel in sheet.panels.values())
        corners = ".all" in edges or {"left", "bottom"} <= {edge.split(".")[1] for edge in edges.split(" and ")}
        assert ("corner" in step.text.lower()) == corners, named(sheet, step)
        # Neck and armholes of a front and a back go once round.
        both = len({edge.split(".")[0] for edge in edges.split(" and ")}) > 1
        assert ("come round" in step.text) == (".all" in edges or ring or both), named(sheet, step)
        assert f"assembly binding corner {strip.name}" in step.figures, named(sheet, step)


@every_sheet
def test_a_square_for_a_bias_strip_gives_more_than_its_length(path: Path) -> None:
    for sheet, step, strip in steps(path, "cut bias"):
        join = read_length("1/4 in") if sheet.edition.name == "inch" else read_length("6 mm")
        smaller = strip.measures["square"] - SPARE[sheet.edition.name]
        assert continuous_bias_length(smaller, strip.cut_along, join) >= strip.cut_across, named(sheet, step)


@every_sheet
def test_lines_of_a_bias_strip_are_ruled_parallel_to_a_cut_that_the_step_names(path: Path) -> None:
    for sheet, step, strip in steps(path, "cut bias"):
        begun, ruled = ("corner to corner", "parallel to the two long edges")
        if strip.pieced is not None:
            begun, ruled = ("Fold one short side down", "lines parallel to it")
            assert strip.pieced.gives >= strip.cut_across, named(sheet, step)
        assert step.text.index(begun) < step.text.index(ruled), named(sheet, step)
        assert f"assembly bias {strip.name}" in step.figures
        # Round a curve nothing but bias goes.
        curved = any(
            edge.split(".")[1] not in ("left", "right", "top", "bottom", "all")
            for edge in bound(sheet, strip).split(" and ")
        )
        assert curved or re.search(r"along the thread", step.text), named(sheet, step)
        assert Fraction(0) < strip.cut_along


@every_sheet
def test_a_strip_that_waits_is_planned_in_the_table_of_own_measures_as_the_layout_cuts_it(path: Path) -> None:
    for sheet in sheets_of(path):
        pieced = [piece for piece in sheet.pieces.values() if piece.pieced is not None and piece.after_panel]
        for step in sheet.steps if pieced else ():
            if step.standard != "cut later":
                continue
            told: dict[str, list[str]] = {}
            for line in step.text.splitlines():
                if line.endswith(": cut |"):
                    heads = line.strip("| ").split(" | ")
                if line.startswith("| **"):
                    for head, cell in zip(heads, line.strip("| ").split(" | "), strict=True):
                        told.setdefault(head, []).append(cell.strip("*"))
            for piece in pieced:
                sizes = " × ".join(on_ruler(side, sheet.edition) for side in (piece.pieced.long, piece.pieced.short))
                cut = f"{piece.quantity} of {sizes}" if piece.quantity > 1 else sizes
                assert set(told.get(f"{piece.label}: cut", [cut])) == {cut}, named(sheet, step)
