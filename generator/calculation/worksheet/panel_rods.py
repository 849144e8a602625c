"""The rods in the tucks of a blind, and rings along them: keys of the project file come in, worked rods go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.panel.rods import ring_places, rod_depth
from generator.calculation.worked import Rods, TuckSet
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.errors import CalculationError
from generator.lengths import round_up

_CORDS = (
    "cords hang on these rings: with nothing but the bought headrail, every safety part that comes with it, all of it "
    "fitted by its maker's text, and the warning on the sheet; where small children are, hang it without cords"
)


def worked_rods(scope: Scope, name: str, model: TuckedPanel, tucks: TuckSet, along: Fraction) -> Rods | None:
    """Return the rods of a panel; tucks that are too shallow for them are refused, cords on rings are warned of."""
    if model.tucks.rod is None:
        return None
    rod, edition = scope.value(model.tucks.rod), scope.edition
    with scope.reporting(model.tucks.rod.place, name):
        least, shallow = rod_depth(rod, edition), min(tucks.depths, default=Fraction(0))
        if tucks.count and shallow < least:
            needed = scope.say(round_up(least, edition.mark))
            raise CalculationError(
                f"tucks {scope.say(shallow)} deep hold no rod {scope.say(rod)} thick: half way round it and room to "
                f"slide it in take {needed}; make them {needed} deep, or take a thinner rod"
            )
    rings: tuple[Fraction, ...] = ()
    if model.tucks.rings is not None:
        place = model.tucks.rings.place
        with scope.reporting(place, name):
            rings = ring_places(along, scope.value(model.tucks.rings.from_sides), edition)
        scope.report("warning", _CORDS, place, name)
    return Rods(rod, rings)
