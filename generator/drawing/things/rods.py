"""A blind from the back: its panel as it hangs comes in, its outline with stitching, rods and rings goes out."""

from __future__ import annotations

from dataclasses import replace

from generator.calculation.making_up.laid import Lying
from generator.calculation.worked import Turn
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Point
from generator.drawing.things.forms import form_of
from generator.drawing.things.shapes import Shape, in_the_thing, piece_shape

RING = 0.012  # of the width of a blind: the radius of its rings
BEYOND = 0.03  # of its width: how far the rods are drawn beyond its sides


def has_rods(piece: Piece) -> bool:
    """Return whether rods go into the tucks of a piece."""
    return piece.panel is not None and piece.panel.rods is not None


def folds_with_rods(piece: Piece) -> list[float]:
    """Return where the rods in the tucks of a panel lie, across it [in]."""
    assert piece.panel is not None
    assert piece.panel.rods is not None
    tucks, thick = piece.panel.across, float(piece.panel.rods.thick)
    turns = piece.panel.pressed or (Turn.RIGHT,) * tucks.count
    return [
        float(foot) + (-1 if turn is Turn.LEFT else 1) * (float(depth) - thick / 2)
        for foot, depth, turn in zip(tucks.stitching, tucks.depths, turns, strict=True)
    ]


def rods_from_behind(worksheet: Worksheet, lying: Lying) -> list[Shape]:
    """Return a blind from the back: the sides change places there, so everything is drawn as in a mirror."""
    piece, form = worksheet.pieces[lying.piece], form_of(worksheet)
    assert piece.panel is not None
    assert piece.panel.rods is not None
    tucks, rods, place = piece.panel.across, piece.panel.rods, in_the_thing(lying)
    along, beyond = float(piece.finished_along), BEYOND * float(piece.finished_along)
    middle = float(lying.left + lying.across / 2)

    def behind(point: Point) -> Point:
        x, y = place(point)
        return 2 * middle - x, y

    folds = folds_with_rods(piece)
    outline = replace(piece_shape(worksheet, lying, form), lying=None, form=None)
    feet = tuple((behind((float(foot), 0.0)), behind((float(foot), along))) for foot in tucks.stitching)
    hidden = tuple((behind((fold, 0.0)), behind((fold, along))) for fold in folds)
    ends = tuple(
        (behind((fold, start)), behind((fold, start + beyond))) for fold in folds for start in (-beyond, along)
    )
    radius = RING * along
    rings = tuple((behind((fold, along - float(at))), radius) for fold in folds for at in rods.rings)
    edges, stitched = (*outline.edges, *ends), (*outline.stitched, *feet)
    return [replace(outline, edges=edges, stitched=stitched, hidden=hidden, buttons=rings)]
