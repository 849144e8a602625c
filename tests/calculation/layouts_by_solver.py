"""The promised cuts as a whole-number programme for a general solver: across, down, across; what is narrower trimmed.

A piece opens a stack or lies in the stack that an earlier piece has opened; a stack opens a strip or lies in the strip
that an earlier stack has opened. So every layout has exactly one description.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from itertools import combinations_with_replacement
from math import lcm
from typing import Any

from ortools.sat.python import cp_model

from generator.calculation.laid import CutItem


class ThreeCuts:
    """The programme of some pieces on cloth of a width; sizes in whole numbers of a common part of an inch."""

    def __init__(self, items: Sequence[CutItem], width: Fraction, *, apart: bool) -> None:
        single = [item for item in items for _ in range(item.quantity)]
        self.part = lcm(
            width.denominator, *(side.denominator for item in single for side in (item.across, item.along, item.room))
        )
        self.width = int(width * self.part)
        self.model = cp_model.CpModel()
        self.highest = int(sum(max(item.across, item.along) for item in single) * self.part)
        sizes = [self._size(item) for item in single]
        pairs = [(one, other) for other, one in combinations_with_replacement(range(len(single)), 2)]
        self.inside = {pair: self.model.new_bool_var(f"piece {pair}") for pair in pairs}
        self.beside = {pair: self.model.new_bool_var(f"stack {pair}") for pair in pairs}
        self.length = self.model.new_int_var(0, self.highest, "length")
        self._stacks(sizes, [item.later for item in single] if apart else [False] * len(single))
        self._strips()

    def _size(self, item: CutItem) -> tuple[Any, Any]:
        """Across and along, whichever way a piece lies that may be turned."""
        across, along = int((item.across + item.room) * self.part), int(item.along * self.part)
        if not item.turnable or across == along:
            return across, along
        turned = self.model.new_bool_var("turned")
        return across + turned * (along - across), along + turned * (across - along)

    def _stacks(self, sizes: Sequence[tuple[Any, Any]], later: Sequence[bool]) -> None:
        number = range(len(sizes))
        self.across = [self.model.new_int_var(0, self.width, f"width {place}") for place in number]
        self.along = [self.model.new_int_var(0, self.highest, f"height {place}") for place in number]
        for one in number:
            self.model.add_exactly_one(self.inside[one, other] for other in range(one + 1))
        for one, other in self.inside:
            if later[one] != later[other]:
                self.model.add(self.inside[one, other] == 0)
            self.model.add_implication(self.inside[one, other], self.inside[other, other])
            self.model.add(self.across[other] >= sizes[one][0]).only_enforce_if(self.inside[one, other])
        for other in number:
            taken = []
            for one in range(other, len(sizes)):
                high = self.model.new_int_var(0, self.highest, f"in stack {one} {other}")
                self.model.add(high >= sizes[one][1]).only_enforce_if(self.inside[one, other])
                taken.append(high)
            self.model.add(self.along[other] >= sum(taken))

    def _strips(self) -> None:
        number = range(len(self.across))
        heights = [self.model.new_int_var(0, self.highest, f"strip {place}") for place in number]
        for one in number:
            self.model.add(sum(self.beside[one, other] for other in range(one + 1)) == self.inside[one, one])
        for other in number:
            taken = []
            for one in range(other, len(self.across)):
                lies = self.beside[one, other]
                self.model.add_implication(lies, self.beside[other, other])
                wide = self.model.new_int_var(0, self.width, f"in strip {one} {other}")
                self.model.add(wide >= self.across[one]).only_enforce_if(lies)
                self.model.add(heights[other] >= self.along[one]).only_enforce_if(lies)
                taken.append(wide)
            self.model.add(sum(taken) <= self.width)
        self.model.add(self.length == sum(heights))


def is_shortest(items: Sequence[CutItem], width: Fraction, length: Fraction, *, apart: bool = False) -> bool:
    """Whether the solver proves that no layout of the promised cuts is shorter than a length that one has."""
    cuts = ThreeCuts(items, width, apart=apart)
    cuts.model.add(cuts.length < int(length * cuts.part))
    solver = cp_model.CpSolver()
    solver.parameters.num_workers = 1
    solver.parameters.max_deterministic_time = 200
    status = solver.solve(cuts.model)
    assert status in (cp_model.INFEASIBLE, cp_model.FEASIBLE, cp_model.OPTIMAL), solver.status_name(status)
    return status == cp_model.INFEASIBLE
