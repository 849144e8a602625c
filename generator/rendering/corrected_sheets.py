"""What changed alike on several sheets: changes of an edition come in, each told once with the sheets that have it."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from generator.calculation.worksheet.editions import ChangedNumber, SheetName, alike_together
from generator.lengths import EDITIONS
from generator.listed import listed


@dataclass(frozen=True, slots=True)
class SameChanges:
    """Changes that stand on each of some sheets, and on no other sheet of their project."""

    sheets: tuple[SheetName, ...]
    changes: tuple[ChangedNumber, ...]

    @property
    def data(self) -> str:
        """The sheets as a script reads them: size and edition."""
        return json.dumps(self.sheets, ensure_ascii=False)

    @property
    def unit(self) -> str:
        """The unit of its numbers; empty where its sheets have several, so that it can only be texts that changed."""
        units = {EDITIONS[edition].unit if edition in EDITIONS else "" for _, edition in self.sheets}
        return units.pop() if len(units) == 1 else ""

    def named(self, labels: Mapping[str, str]) -> str:
        """Return which sheets they are: 'Small and Large, inch and metric edition'."""
        sizes: dict[str, list[str]] = {}
        for size, edition in self.sheets:
            sizes.setdefault(edition, []).append(labels.get(size, size))
        editions: dict[tuple[str, ...], list[str]] = {}
        for edition, found in sizes.items():
            editions.setdefault(tuple(found), []).append(edition)
        return "; ".join(f"{listed(found)}, {listed(units)} edition" for found, units in editions.items())


def told_once(changes: Sequence[ChangedNumber]) -> tuple[SameChanges, ...]:
    """Return changes with the sheets that have them, in the order in which they first come."""
    sheets: dict[tuple[str, str, str, str], list[ChangedNumber]] = {}
    for change in changes:
        sheets.setdefault((change.piece, change.what, change.was, change.now), []).append(change)
    together: dict[tuple[SheetName, ...], list[ChangedNumber]] = {}
    for found in sheets.values():
        names = tuple(dict.fromkeys((change.size, change.edition) for change in found))
        together.setdefault(names, []).append(found[0])
    return tuple(SameChanges(names, alike_together(found)) for names, found in together.items())
