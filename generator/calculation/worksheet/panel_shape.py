"""The rectangle of a panel before it is cut to shape: its keys come in, its finished size, edges and shape go out.

A panel with an outline is tucked as a rectangle with room around the shape, and cut to the shape after.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.shapes.released import LEAST_DEPTHS, Stretches, shortest, within
from generator.calculation.shapes.tuck_ends import TuckEnd, tuck_ends
from generator.calculation.worked import End, TuckSet
from generator.calculation.worked_piece import Part, Shaped
from generator.calculation.worksheet.pieces.shaped import SLIP
from generator.calculation.worksheet.pieces.sizes import PieceSizes, edge_ends, on_ruler
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.errors import CalculationError
from generator.lengths import round_up


@dataclass(frozen=True, slots=True)
class PanelBox:
    """The rectangle that is tucked: its finished size [in], how its four edges end, and the shape it is cut to."""

    across: Fraction
    along: Fraction
    ends: Mapping[str, End]
    part: Part | None = None


def panel_box(scope: Scope, model: TuckedPanel, shape: PieceSizes | None) -> PanelBox:
    """Return the rectangle of a panel; around a shape it has what the cut line needs, and room."""
    if shape is None:
        assert model.finished_across is not None
        assert model.finished_along is not None
        return PanelBox(scope.value(model.finished_across), scope.value(model.finished_along), edge_ends(scope, model))
    if model.tucks.ring:
        raise CalculationError("a panel closed to a ring has no outline; take 'outline' or 'ring' out")
    room = scope.value(model.room_around)
    if room < 0:
        raise CalculationError(f"'room around' comes to {scope.say(room)}; write how much is left around, 0 or more")
    (part,) = shape.parts
    outline = part.shape
    assert outline is not None
    beyond = _beyond(outline, part, scope.edition.wish_step)
    ends = {side: End("seam", reach + room) for side, reach in beyond.items()}
    return PanelBox(*shape.finished, ends, on_ruler(part, scope.edition.mark))


def _beyond(outline: Shaped, part: Part, step: Fraction) -> dict[str, Fraction]:
    """How far the cut line reaches beyond each side of the finished shape, up to a division of the ruler [in]."""
    across, along = ([spot[way] for spot in outline.cut] for way in (0, 1))
    reach = {
        "left": -min(across),
        "right": max(across) - part.finished_across,
        "top": -min(along),
        "bottom": max(along) - part.finished_along,
    }
    return {side: round_up(max(length - SLIP, Fraction(0)), step) for side, length in reach.items()}


def shaped_tucks(
    scope: Scope, name: str, model: TuckedPanel, box: PanelBox, sewn: tuple[TuckSet, Sequence[Stretches]]
) -> tuple[TuckEnd, ...]:
    """Return the tucks as the shape ends them; those of which too little is stitched to hold are refused."""
    if box.part is None or box.part.shape is None:
        return ()
    tucks, stitched = sewn
    lines = box.part.shape.lines
    around = [spot for line in lines for spot in line.spots]
    found = tuck_ends([*around, around[0]], tucks.stitching, tucks.depths)
    for tuck, depth in enumerate(tucks.depths, 1):
        held = stitched[tuck - 1] if stitched else ((Fraction(0), box.along),)
        left = [part for one in found if one.tuck == tuck for part in within(held, one.top, one.bottom)]
        length = shortest(tuple(left))
        if length < LEAST_DEPTHS * depth:
            text = (
                f"tuck {tuck} is stitched over only {scope.say(length)} when the panel is cut to its shape, too short "
                f"to hold: less than {LEAST_DEPTHS} of its depths, {scope.say(LEAST_DEPTHS * depth)} (a limit of our "
                "own); "
                f"write a wider margin{', or stitch it further' if stitched else ''}"
            )
            scope.report("error", text, model.tucks.place, name)
    return found
