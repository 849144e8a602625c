"""What a teacher asks of the rows of a panel, as one value; the sums of the rows read it."""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction

from generator.calculation.count_rule import CountRule
from generator.calculation.turning.held import Held
from generator.calculation.turning.layers import LayerLimits
from generator.calculation.turning.repeat import TurnPlan
from generator.calculation.worked import End, Start


@dataclass(frozen=True, slots=True)
class RowWish:
    """The rows of one panel as asked for; lengths in inches.

    ``ends`` are the finishes of the top and the bottom edge. ``spacing`` is from row to row as ruled; ``first`` the
    least and the most from a finished edge to the row next to it. ``start`` is the end where row 1 is begun; by bulk,
    each row begins where less of the panel lies under the arm of the machine, if more than ``flat`` would lie there.
    ``measured_draw_in`` is what one interval lost on a sewn sample. ``limits`` are the layers that the room sews.
    """

    finished_along: Fraction
    ends: tuple[End, End]
    plan: TurnPlan
    spacing: Fraction
    first: tuple[Fraction, Fraction]
    number: CountRule = field(default_factory=CountRule)
    start: Start = "right"
    flat: Fraction = Fraction(0)
    back_and_forth: bool = False
    top_held: Held = "as the next row"
    bottom_held: Held = "as the next row"
    measured_draw_in: Fraction | None = None
    limits: LayerLimits = field(default_factory=LayerLimits)
