"""What follows from a panel that came out otherwise: pieces that wait for it come in, a table of new cuts goes out.

The panel's measure is moved by one step of the ruler after the other, and each waiting piece is worked again from it
with the project's own formulas, so that a piece as wide as the panel and one that goes round it each change as they do.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import groupby
from operator import itemgetter

from generator.calculation.pieces.bias import PiecedBias
from generator.calculation.pieces.cut import Cut
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.bias_cloth import rectangle_of
from generator.calculation.worksheet.pieces.piece import worked_piece
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.lengths import Edition, on_ruler

STEPS = 4
"""How many steps of 1/8 in or 3 mm to either side are told; what is farther off is worked anew as a sheet."""
_BOTH = (
    "Are two measures off? Begin with the first table. Then add, or take away, what the next table says more or less "
    "than in its bold line.",
)
SIDES = {"across": "from left to right", "along": "from top to bottom"}


def own_measure_words(scope: Scope, pieces: Sequence[Piece]) -> str:
    """Return what each waiting piece is cut for every measure that a panel may have come to, as Markdown.

    Parameters
    ----------
    scope : Scope
        The project in one size and edition, with every panel worked.
    pieces : Sequence of Piece
        Those that a step is about; only the waiting ones are told.

    Returns
    -------
    str
        A table for each measure of a panel that a waiting piece follows, measures with equal cuts in one row, that with
        the planned one in bold; where none follows, a sentence that says so. A measure at which a piece cannot be
        worked is left out.
    """
    waiting = [piece.name for piece in pieces if piece.after_panel]
    panels = [scope.piece(name) for name in scope.project.pieces]
    sewn_first = [panel for panel in panels if panel.panel is not None and not panel.after_panel]
    tables = [_table(scope, panel, side, waiting) for panel in sewn_first for side in SIDES if waiting]
    told = [table for table in tables if table]
    if not told:
        return "Is it wider or narrower? These pieces do not follow it: ask before you cut them."
    return "\n\n".join(
        (
            "Is it wider or narrower? Find the measure of your own panel in the first column, cut what stands beside "
            "it, and write it on your sheet. The row in bold has the planned measure.",
            *told,
            *(_BOTH if len(told) > 1 else ()),
            "Does your measure lie between two rows? Take the larger. Is it not among them? Ask for a sheet "
            "worked to it.",
        )
    )


def _table(scope: Scope, panel: Piece, side: str, waiting: Sequence[str]) -> str:
    planned = scope.sewn.get(f"{panel.name}.{side}", panel.measures[side])
    rows = list(works_at(scope, panel, side, planned, waiting))
    # A piece that is cut alike in every row does not follow this measure.
    followers = [place for place in range(len(waiting)) if len({pieces[place].cuts for _, pieces in rows}) > 1]
    if not followers:
        return ""
    unit = scope.edition.unit
    heads = [f"{panel.label} {SIDES[side]} ({unit})", *(f"{rows[0][1][place].label}: cut" for place in followers)]
    lines = [_line(heads), _line(["---"] * len(heads))]
    cuts = [(at, tuple(_cut_words(pieces[place], scope.edition) for place in followers)) for at, pieces in rows]
    for told, alike in groupby(cuts, key=itemgetter(1)):
        measures = [at for at, _ in alike]
        ends = dict.fromkeys(on_ruler(at, scope.edition) for at in (measures[0], measures[-1]))
        cells = [" to ".join(ends), *told]
        lines.append(_line([f"**{one}**" for one in cells] if planned in measures else cells))
    return "\n".join(lines)


def _pieced_anew(scope: Scope, piece: Piece, planned: PiecedBias | None) -> Piece:
    """Return a piece as it is now; one on the bias is pieced as planned, from a rectangle of the same long side."""
    return piece if planned is None else replace(piece, pieced=rectangle_of(scope, piece, planned.long))


def _line(cells: Sequence[str]) -> str:
    # A label may hold the sign that parts the cells.
    return f"| {' | '.join(cell.replace('|', '/') for cell in cells)} |"


def _cut_words(piece: Piece, edition: Edition) -> str:
    return ", ".join(_size(cut, piece.quantity, edition) for cut in piece.cuts)


def _size(cut: Cut, quantity: int, edition: Edition) -> str:
    number = cut.number * quantity
    size = f"{on_ruler(cut.across, edition)} × {on_ruler(cut.along, edition)}"
    return f"{number} of {size}" if number > 1 else size


def works_at(
    scope: Scope, panel: Piece, side: str, planned: Fraction, waiting: Sequence[str]
) -> Iterator[tuple[Fraction, tuple[Piece, ...]]]:
    """The waiting pieces as they are cut for the planned measure and for those some steps off it."""

    def work(other: Scope, name: str) -> Piece:
        # The panel itself stays as it is: its cloth has been cut and sewn.
        return panel if name == panel.name else worked_piece(other, name)

    for step in range(-STEPS, STEPS + 1):
        at = planned + step * scope.edition.wish_step
        other = Scope(scope.project, scope.size, scope.edition, scope.room, work)
        other.sewn = {**scope.sewn, f"{panel.name}.{side}": at}
        try:
            yield at, tuple(_pieced_anew(other, other.piece(name), scope.pieced.get(name)) for name in waiting)
        except AlreadyReportedError:
            continue
