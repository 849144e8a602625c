"""Panels made by hand from the formulas, for tests of diagrams: a count, a depth and a spacing come in."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.worked import BreadthJoin, End, Hand, Panel, Row, RowSet, TuckSet, Turn
from generator.calculation.worked_checks import CheckPoint, Checks
from generator.calculation.worked_piece import EdgeWork, Part, Piece, Straight
from generator.calculation.worked_project import Worksheet
from generator.calculation.worked_thread import ThreadUse
from generator.lengths import INCH, Edition

SEAM = End("seam", Fraction(1, 2))
LINKED = ((Turn.RIGHT, Turn.LEFT), (Turn.LEFT, Turn.RIGHT))


def tuck_set_of(
    count: int,
    depth: Fraction = Fraction(3, 8),
    spacing: Fraction = Fraction(3, 2),
    *,
    ends: tuple[End, End] = (SEAM, SEAM),
    margin: Fraction = Fraction(3, 4),
) -> TuckSet:
    """Equal tucks; the first mark is allowance + margin + depth from the edge, at a caught hem twice margin + depth."""
    take_up, pitch = 2 * depth, spacing - 2 * depth
    left, right = (margin + depth if end.kind == "caught hem" else end.first + end.second for end in ends)
    first = left + margin + depth
    marks = tuple(first + place * spacing for place in range(count))
    finished = 2 * margin + pitch * (count - 1)
    return TuckSet(
        depths=(depth,) * count,
        take_ups=(take_up,) * count,
        marks=marks,
        stitching=tuple(margin + place * pitch for place in range(count)),
        left_margin=margin,
        right_margin=margin,
        left=ends[0],
        right=ends[1],
        left_allowance=left,
        right_allowance=right,
        cut=left + finished + count * take_up + right,
        finished=finished,
        asked=finished,
        wish=spacing,
        grid=Fraction(1, 8),
    )


def row_words(turns: Sequence[Turn], start: Hand) -> tuple[str, ...]:
    """Toward is the side not yet sewn: from the left that is the right side, and the other way about."""
    unsewn = Turn.RIGHT if start == "left" else Turn.LEFT
    order = turns if start == "left" else tuple(reversed(turns))
    return tuple("upright" if turn is Turn.UPRIGHT else "toward" if turn is unsewn else "away" for turn in order)


def row_set_of(
    count: int,
    rows: int = 4,
    cell: tuple[tuple[Turn, ...], ...] = LINKED,
    *,
    spacing: Fraction = Fraction(3),
    start: Hand = "right",
) -> RowSet:
    """Rows ruled at a spacing from 2 in below the cut edge, in the plan of a repeat cell; no draw-in."""
    made = []
    for row in range(rows):
        cells = cell[row % len(cell)]
        turns = tuple(cells[tuck % len(cells)] for tuck in range(count))
        ruled = 2 + row * spacing
        least = most = ruled - Fraction(1, 2)
        made.append(Row(row + 1, ruled, least, most, start, turns, row_words(turns, start)))
    return RowSet("linked cells", cell, tuple(made), spacing, Fraction(3, 2), (), (), *(Fraction(0),) * 3, layers=5)


def panel_of(count: int, depth: Fraction = Fraction(3, 8), spacing: Fraction = Fraction(3, 2), rows: int = 4) -> Panel:
    """A panel with seams of 1/2 in, margins of 3/4 in and rows 3 in apart; a check point after every sixth tuck."""
    tucks = tuck_set_of(count, depth, spacing)
    points = tuple(
        CheckPoint(
            after=after,
            start="the cut edge",
            end=f"fold mark {after + 1}",
            mark=after + 1,
            expect=tucks.marks[after] - 2 * depth * after,
            within=Fraction(1, 8),
            absorb=Fraction(1, 8),
        )
        for after in range(6, count, 6)
    )
    whole = CheckPoint(
        count, "the cut edge", "the far cut edge", 0, tucks.cut - tucks.take_up, Fraction(1, 8), Fraction(0)
    )
    return Panel(tucks, rows=row_set_of(count, rows) if rows else None, checks=Checks((*points, whole)))


def piece_of(panel: Panel, name: str = "front", along: Fraction = Fraction(15)) -> Piece:
    """The panel as a piece with seams of 1/2 in all round, ``along`` inches finished along the tucks."""
    tucks, half = panel.across, Fraction(1, 2)
    sides = {"left": along, "right": along, "top": tucks.finished, "bottom": tucks.finished}
    edges = {side: EdgeWork(side, length, SEAM, half) for side, length in sides.items()}
    return Piece(
        name=name,
        label=name,
        kind="tucked panel",
        cloth="face",
        quantity=1,
        grain="along",
        parts=(Part(Straight(), tucks.cut, along + 1, tucks.finished, along, edges),),
        finished_across=tucks.finished,
        finished_along=along,
        edges=edges,
        panel=panel,
    )


def worksheet_of(*pieces: Piece, edition: Edition = INCH) -> Worksheet:
    """A worksheet that holds these pieces and nothing else."""
    return Worksheet(
        project="trial",
        title="Trial panel",
        kind="sample",
        level="first project",
        summary="",
        size="medium",
        size_label="medium",
        size_note="",
        edition=edition,
        measures={},
        numbers={},
        pieces={piece.name: piece for piece in pieces},
        cloths={},
        meetings=(),
        closures=(),
        supplies=(),
        thread=ThreadUse(Fraction(0), "", 0),
        steps=(),
        cautions={},
        tools=(),
        minutes=0,
    )


def joined(panel: Panel, tuck: int, *, foot: Hand = "left") -> Panel:
    """The panel with a join at one foot of a tuck."""
    tucks = panel.across
    half = tucks.take_ups[tuck - 1] / 2
    at = tucks.marks[tuck - 1] + (-half if foot == "left" else half)
    join = BreadthJoin(tuck, foot, at, covered=2, rows=4, hidden=False, text="Stitch it in the ditch.")
    return Panel(tucks, rows=panel.rows, checks=panel.checks, breadths=(at, tucks.cut - at), joins=(join,))
