"""The shortest layout of strips, proven: a table of strips and counts come in, strips go out.

The piece that is hardest to place lies in some strip. The search tries all heights and fillings of that strip and lays
the rest the same way. What makes it quick: pieces of equal size are one kind; a filling with room for another
piece, or in which a harder piece could take an easier one's place, need not be tried; what was found or proven
about a rest is kept; and the weights of the pieces say how much of a strip may be wasted at most.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from generator.calculation.cutting.layout_bounds import StripBounds
from generator.calculation.cutting.layout_kinds import Counts, StripTable
from generator.calculation.cutting.layout_weights import SCALE


@dataclass(frozen=True, slots=True)
class CutStrip:
    """A strip across the cloth: its height and how many pieces of each kind are cut from it."""

    height: int
    take: Counts


class SearchTooLongError(Exception):
    """The search has used up the positions it was given."""


class SearchBudget:
    """How many positions may still be looked at: a limit that, unlike a clock, gives the same layout every day."""

    def __init__(self, left: int) -> None:
        self._left = left

    def spend(self) -> None:
        """Count one look, or give up."""
        self._left -= 1
        if self._left < 0:
            raise SearchTooLongError


class _Fillings:
    """All fillings worth trying of a strip of one height that holds a piece of the hardest kind."""

    def __init__(
        self, table: StripTable, counts: Counts, height: int, weights: Sequence[int], budget: SearchBudget
    ) -> None:
        self._across, self._along = table.across(height), table.along(height)
        self._harder, self._height, self._budget = table.harder, height, budget
        self._first = table.hardest(counts)
        self._left = [count - (place == self._first) for place, count in enumerate(counts)]
        self._take = [0] * len(counts)
        places = [place for place, count in enumerate(self._left) if count and self._across[place] <= table.width]
        places.sort(key=lambda place: (-weights[place] / self._across[place], -self._across[place], place))
        self._places = places
        self._rest = [0] * (len(places) + 1)
        for position in reversed(range(len(places))):
            place = places[position]
            self._rest[position] = self._rest[position + 1] + self._left[place] * self._across[place]
        self._weights = weights
        self._room = table.width - self._across[self._first]

    def worth(self, need: int) -> Iterator[Counts]:
        """Yield the fillings that weigh ``need`` at least."""
        self._found: list[Counts] = []
        self._grow(0, self._room, self._room + 1, need - self._weights[self._first])
        return iter(self._found)

    def _grow(self, start: int, room: int, skipped: int, need: float) -> None:
        """Go on from the kind at ``start``; ``skipped`` is the width of the narrowest piece left out so far."""
        self._budget.spend()
        for position in range(start, len(self._places)):
            if room - self._rest[position] >= skipped or not self._reaches(position, room, need):
                return
            place = self._places[position]
            across, left = self._across[place], self._left[place]
            for number in range(min(left, room // across), 0, -1):
                self._take[place] = number
                narrowest = min(skipped, across) if number < left else skipped
                weight = number * self._weights[place]
                self._grow(position + 1, room - number * across, narrowest, need - weight)
            self._take[place] = 0
            skipped = min(skipped, across)
        if skipped > room and need <= 0 and self._worth_trying(room):
            take = list(self._take)
            take[self._first] += 1
            self._found.append(tuple(take))

    def _reaches(self, position: int, room: int, need: float) -> bool:
        """Whether the kinds from a position on could still bring the weight needed, if one might be split."""
        for later in range(position, len(self._places)):
            if need <= 0:
                return True
            place = self._places[later]
            width = self._left[place] * self._across[place]
            if width > room:
                return need <= self._weights[place] * room / self._across[place] + 1
            room -= width
            need -= self._left[place] * self._weights[place]
        return need <= 0

    def _worth_trying(self, room: int) -> bool:
        """Whether the filling needs this height and no harder piece could take the place of one in it."""
        used = [place for place in self._places if self._take[place]]
        if max(self._along[place] for place in [self._first, *used]) < self._height:
            return False
        return not any(
            self._take[harder] < self._left[harder] and 0 <= self._across[harder] - self._across[place] <= room
            for place in used
            for harder in self._harder[place]
        )


class StripSearch:
    """Finds the shortest layouts for any part of the pieces of one table."""

    def __init__(self, table: StripTable, bounds: StripBounds, budget: SearchBudget) -> None:
        self._table, self._bounds, self._budget = table, bounds, budget
        self._known: dict[Counts, tuple[int, CutStrip]] = {}
        self._proven: dict[Counts, int] = {}

    def bound(self, counts: Counts) -> int:
        """Return the best lower bound known of the length for some pieces [unit]."""
        if counts not in self._proven:
            self._proven[counts] = self._bounds.length(counts)
        return self._proven[counts]

    def shortest(self, counts: Counts, limit: int) -> int | None:
        """Return the length of the shortest layout if it is below a limit, else None [unit]."""
        if not any(counts):
            return 0 if limit > 0 else None
        if counts in self._known:
            length = self._known[counts][0]
            return length if length < limit else None
        bound = self.bound(counts)
        if bound >= limit:
            return None
        self._budget.spend()
        best: tuple[int, CutStrip] | None = None
        for least, strip, rest in self._first_strips(counts, limit):
            if least >= limit or limit == bound:
                break
            after = self.shortest(rest, limit - strip.height)
            if after is not None:
                limit = strip.height + after
                best = (limit, strip)
        if best is None:
            self._proven[counts] = max(bound, limit)
            return None
        self._known[counts] = best
        return best[0]

    def _first_strips(self, counts: Counts, limit: int) -> list[tuple[int, CutStrip, Counts]]:
        """Return the strips that could hold the hardest piece, the most promising first."""
        weights, total = self._bounds.heaviest(counts)
        found = []
        for height in self._table.heights_for(counts, self._table.hardest(counts)):
            need = total - (limit - 1 - height) * SCALE
            for take in _Fillings(self._table, counts, height, weights, self._budget).worth(need):
                rest = tuple(count - taken for count, taken in zip(counts, take, strict=True))
                least = height + self.bound(rest)
                if least < limit:
                    found.append((least, CutStrip(height, take), rest))
        return sorted(found, key=lambda entry: (entry[0], -entry[1].height, entry[2]))

    def strips(self, counts: Counts) -> list[CutStrip]:
        """Return the strips of the shortest layout, which must have been found before."""
        strips = []
        while any(counts):
            strip = self._known[counts][1]
            strips.append(strip)
            counts = tuple(count - taken for count, taken in zip(counts, strip.take, strict=True))
        return strips
