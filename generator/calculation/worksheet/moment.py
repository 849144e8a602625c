"""A standard step at its place in the recipe: its act and all that was done before it; frozen, asked by its texts."""

from __future__ import annotations

from dataclasses import dataclass

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.book import Book
from generator.calculation.making_up.items import Item, sewn_items
from generator.calculation.making_up.thing import Seam
from generator.calculation.worksheet.step_context import StepContext


@dataclass(frozen=True, slots=True)
class Moment:
    """A standard step at its place in the recipe: its act, the acts of all steps before it and what they have given."""

    context: StepContext
    act: Act
    before: tuple[Act, ...] = ()
    given: frozenset[Item] = frozenset()

    @property
    def book(self) -> Book | None:
        """The thing and its techniques, None where nothing is known of them."""
        return self.context.joiner.book if self.context.joiner is not None else None

    @property
    def gives(self) -> tuple[Item, ...]:
        """What the step gives."""
        return self.book.gives(self.act) if self.book is not None else ()

    @property
    def seams(self) -> tuple[Seam, ...]:
        """The seams that the step sews or neatens."""
        if self.book is None:
            return ()
        gives = set(self.gives)
        whole = {item.on for item in gives if item.state in ("neat", "turned out")}
        return tuple(
            seam for seam in self.book.thing.seams if gives & set(sewn_items(seam)) or f"#{seam.number}" in whole
        )
