"""What a part of a technique may ask before it is told: words and pieces come in, yes or no goes out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from itertools import pairwise
from types import MappingProxyType

from generator.calculation.turning.facing import even_facing, panel_gaps
from generator.calculation.turning.turns import AWAY, TOWARD
from generator.calculation.worked import Panel, RowSet, Turn
from generator.calculation.worked_piece import Piece, Round
from generator.calculation.worksheet.followed import (
    EdgesInRow,
    closed,
    closed_by_seams,
    round_corners,
    runs_of,
    straight,
)
from generator.calculation.worksheet.making import waits_for
from generator.calculation.worksheet.moment import Moment
from generator.calculation.worksheet.moments import MOMENT_CONDITIONS
from generator.calculation.worksheet.panel_stripes import striped_panel
from generator.calculation.worksheet.pieces.placed import has_mouth, turned_under
from generator.calculation.worksheet.row_bulk import bulky_rows, wide_margins
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel

Test = Callable[[Sequence[Piece], Scope], bool]


def holds(condition: str, pieces: Sequence[Piece], scope: Scope, moment: Moment | None = None) -> bool:
    """Return whether a condition holds for the pieces of a step, at its place in the recipe; 'not ' turns it round."""
    if condition.startswith("not "):
        return not holds(condition[4:], pieces, scope, moment)
    if condition in MOMENT_CONDITIONS:
        return moment is not None and MOMENT_CONDITIONS[condition](moment)
    return CONDITIONS[condition](pieces, scope)


def _panels(pieces: Sequence[Piece]) -> list[Panel]:
    return [piece.panel for piece in pieces if piece.panel is not None]


def _rows(pieces: Sequence[Piece]) -> list[RowSet]:
    return [panel.rows for panel in _panels(pieces) if panel.rows is not None]


def _edge(kind: str) -> Test:
    return lambda pieces, _scope: any(edge.end.kind == kind for piece in pieces for edge in piece.edges.values())


def _caught(side: str) -> Test:
    return lambda pieces, _scope: any(
        (panel.across.left if side == "left" else panel.across.right).kind == "caught hem" for panel in _panels(pieces)
    )


def _panel(test: Callable[[Panel], bool]) -> Test:
    return lambda pieces, _scope: any(test(panel) for panel in _panels(pieces))


def _evenly_spaced(panel: Panel) -> bool:
    """Whether one spacing was asked for, whatever the ruler made of it, or all marks stand equally far apart."""
    return panel.across.wish > 0 or len(set(panel.across.spacings)) <= 1


def _rowed(test: Callable[[RowSet], bool]) -> Test:
    return lambda pieces, _scope: any(test(rows) for rows in _rows(pieces))


def _one_way(pieces: Sequence[Piece], scope: Scope) -> bool:
    return any(scope.project.cloths[piece.cloth].one_way for piece in pieces if piece.cloth)


def _shrinks(pieces: Sequence[Piece], scope: Scope) -> bool:
    return any(scope.share(scope.project.cloths[piece.cloth].shrinkage) > 0 for piece in pieces if piece.cloth)


def _striped(pieces: Sequence[Piece], scope: Scope) -> bool:
    return any(striped_panel(scope, piece) for piece in pieces)


def _way(test: Callable[[Sequence[EdgesInRow]], bool]) -> Test:
    """Ask a test about what the first piece, a strip, is sewn to along its length."""
    return lambda pieces, scope: bool(pieces) and test(_runs(pieces[0], scope))


def _runs(strip: Piece, scope: Scope) -> Sequence[EdgesInRow]:
    return runs_of(scope.project.edges_that_meet, strip.name)


def _comes_round(pieces: Sequence[Piece], scope: Scope) -> bool:
    runs = _runs(pieces[0], scope) if pieces else ()
    named = {name: scope.piece(name) for run in runs for name, _ in run}
    rings = {name for name, piece in named.items() if piece.panel is not None and piece.panel.across.ring}
    meetings = [(one.join.edges, one.to.edges) for one in scope.project.edges_that_meet]
    if any(closed_by_seams(run, _beside(named.values()), meetings) for run in runs):
        return True
    return closed(runs, rings, {name for name, piece in named.items() if len(piece.edges) > 1 and "rim" in piece.edges})


def _beside(pieces: Iterable[Piece]) -> dict[tuple[str, str], tuple[str, str]]:
    """The edges before and after each edge of a shape."""
    found = {}
    for piece in pieces:
        sides = piece.shape.sides if piece.shape is not None else ()
        for place, side in enumerate(sides):
            found[piece.name, side] = (sides[place - 1], sides[(place + 1) % len(sides)])
    return found


def _meets(*sides: str) -> Test:
    """Ask whether the pieces of a step are sewn to each other at such an edge of a panel."""

    def test(pieces: Sequence[Piece], scope: Scope) -> bool:
        names = {piece.name for piece in pieces}
        panels = {piece.name for piece in pieces if piece.panel is not None}
        if not panels:
            return False
        meetings = [(*one.join.edges, *one.to.edges) for one in scope.project.edges_that_meet]
        within = [edges for edges in meetings if {name for name, _ in edges} <= names]
        return any(
            name in panels and side in (*sides, "all") and not _free(scope.piece(name), side)
            for edges in within
            for name, side in edges
        )

    return test


def _free(piece: Piece, side: str) -> bool:
    """Whether the tucks of a panel are let go at an edge."""
    return piece.panel is not None and side in piece.panel.free


def _has_end_allowances(pieces: Sequence[Piece], _scope: Scope) -> bool:
    # What is hemmed before it is marked hides no stroke.
    plain = [piece for piece in pieces if piece.panel is not None and piece.panel.rods is None]
    ends = [piece.edges.get(side) for piece in plain for side in ("top", "bottom")]
    return bool(ends) and all(end is not None and end.allowance > 0 for end in ends)


def _wide_margin(pieces: Sequence[Piece], scope: Scope) -> bool:
    return any(any(wide_margins(panel.across, scope.edition)) for panel in _panels(pieces))


def _under_the_arm(pieces: Sequence[Piece], scope: Scope) -> bool:
    return any(bulky_rows(piece, scope.edition) for piece in pieces)


def _waits(pieces: Sequence[Piece], scope: Scope) -> bool:
    return waits_for(scope, {f"{piece.name}.along" for piece in pieces if piece.panel is not None})


def _by_bulk(pieces: Sequence[Piece], scope: Scope) -> bool:
    """Whether rows begin at both ends, and not to and fro."""
    models = [scope.project.pieces[piece.name] for piece in pieces]
    to_and_fro = any(isinstance(model, TuckedPanel) and model.rows and model.rows.back_and_forth for model in models)
    ends = [{row.start for row in panel.rows.rows} for panel in _panels(pieces) if panel.rows]
    return not to_and_fro and any(len(starts) > 1 for starts in ends)


def _alternates(rows: RowSet) -> bool:
    """Whether one row after the other begins at the other end."""
    starts = [row.start for row in rows.rows]
    return len(starts) > 1 and all(one != other for one, other in pairwise(starts))


def _is_round_end(piece: Piece) -> bool:
    closes = piece.made.gathered and piece.made.drawn_up is not None and not piece.made.drawn_up.to
    return closes or any(isinstance(part.outline, Round) for part in piece.parts)


def _said(word: str) -> Callable[[RowSet], bool]:
    return lambda rows: any(word in row.words for row in rows.rows)


def _has_upright(rows: RowSet) -> bool:
    return any(turn is Turn.UPRIGHT for row in rows.rows for turn in row.turns)


def _faces(rows: RowSet) -> bool:
    return any(
        (left, right) == (Turn.RIGHT, Turn.LEFT)
        for row in rows.rows
        for left, right in zip(row.turns, row.turns[1:], strict=False)
    )


def _faces_evenly(pieces: Sequence[Piece], scope: Scope) -> bool:
    return any(even_facing(panel_gaps(panel), scope.edition) for panel in _panels(pieces))


CONDITIONS: Mapping[str, Test] = MappingProxyType(
    {
        "caught hem": lambda pieces, scope: _caught("left")(pieces, scope) or _caught("right")(pieces, scope),
        "caught hem left": _caught("left"),
        "caught hem right": _caught("right"),
        "hem": _edge("hem"),
        "seam": _edge("seam"),
        "bound": _edge("bound"),
        "rows": lambda pieces, _scope: bool(_rows(pieces)),
        "rods": _panel(lambda panel: panel.rods is not None),
        "rings": _panel(lambda panel: panel.rods is not None and bool(panel.rods.rings)),
        "evenly spaced": _panel(_evenly_spaced),
        "on its side": lambda pieces, _scope: any(piece.quarters for piece in pieces),
        "upright edges": _rowed(lambda rows: any(Turn.UPRIGHT in (row.turns[0], row.turns[-1]) for row in rows.rows)),
        "upright": _rowed(_has_upright),
        "one way": _one_way,
        "one way now": lambda pieces, scope: _one_way([piece for piece in pieces if not piece.after_panel], scope),
        "one way later": lambda pieces, scope: _one_way([piece for piece in pieces if piece.after_panel], scope),
        "back and forth": _rowed(_alternates),
        "joined": _panel(lambda panel: bool(panel.joins)),
        "cross tucks": _panel(lambda panel: panel.cross is not None),
        "sample": _panel(lambda panel: panel.sampled),
        "ring": _panel(lambda panel: panel.across.ring),
        "equal": _panel(lambda panel: len(set(panel.across.depths)) == 1),
        "unequal": _panel(lambda panel: len(set(panel.across.depths)) > 1),
        "facing": _rowed(_faces),
        "even facing": _faces_evenly,
        "draw in": _rowed(lambda rows: rows.extra > 0),
        "one tuck": _panel(lambda panel: panel.across.count == 1),
        "several tucks": _panel(lambda panel: panel.across.count > 1),
        "cut after the panel": lambda pieces, _scope: any(piece.after_panel for piece in pieces),
        "held": _rowed(lambda rows: bool(rows.top or rows.bottom)),
        "cut to shape": lambda pieces, _scope: any(piece.shaped for piece in pieces),
        "shrinkage": _shrinks,
        "sheer": lambda pieces, scope: any(
            scope.project.cloths[one.cloth].weight == "sheer" for one in pieces if one.cloth
        ),
        "stripes": _striped,
        "own shape": lambda pieces, _scope: any(piece.trimmed_to is not None for piece in pieces),
        "caught tucks": _panel(lambda panel: any(one.catch_top or one.catch_bottom for one in panel.shaped_ends)),
        "released": _panel(lambda panel: panel.released is not None),
        "stops alike": _panel(lambda panel: panel.released is not None and len(set(panel.released.stops)) == 1),
        "ends tied": _panel(lambda panel: panel.released is not None and panel.released.tied),
        "shapes": lambda pieces, _scope: any(part.shape is not None for piece in pieces for part in piece.parts),
        "on a fold": lambda pieces, _scope: any(piece.on_fold for piece in pieces),
        "in the seam": lambda pieces, _scope: any(
            edge.allowance > 0 for piece in pieces if piece.lies_on for edge in piece.edges.values()
        ),
        "on tucks": lambda pieces, scope: any(
            scope.piece(piece.lies_on).panel is not None for piece in pieces if piece.lies_on
        ),
        "on tucked blocks": lambda pieces, scope: any(
            blocks is not None and scope.piece(blocks.of).panel is not None
            for blocks in (scope.piece(piece.lies_on).blocks for piece in pieces if piece.lies_on)
        ),
        "turned under": lambda pieces, scope: any(turned_under(piece, scope.edition) for piece in pieces),
        "open edge": lambda pieces, _scope: any(has_mouth(piece) for piece in pieces),
        "turned blocks": lambda pieces, _scope: any(
            piece.blocks is not None and piece.blocks.turned for piece in pieces
        ),
        "bands": lambda pieces, _scope: any(piece.bands for piece in pieces),
        "corners": _way(round_corners),
        "round": _comes_round,
        "straight": _way(straight),
        "several": lambda pieces, _scope: any(piece.quantity > 1 for piece in pieces),
        "others wait": _waits,
        "pair": lambda pieces, _scope: any(piece.pair for piece in pieces),
        "toward": _rowed(_said(TOWARD)),
        "away": _rowed(_said(AWAY)),
        "crosses tucks": _meets("top", "bottom"),
        "along tucks": _meets("left", "right"),
        "wide margin": _wide_margin,
        "end allowances": _has_end_allowances,
        "under the arm": _under_the_arm,
        "by bulk": _by_bulk,
        "slanting": lambda pieces, _scope: any(
            piece.lengths is not None and piece.lengths.slanting for piece in pieces
        ),
        "pieced": lambda pieces, _scope: any(piece.pieced is not None for piece in pieces),
        "round ends": lambda pieces, _scope: any(map(_is_round_end, pieces)),
    }
)
