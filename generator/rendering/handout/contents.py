"""The line that tells what is done on each page of a handout: planned pages and their parts come in."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from generator.rendering.handout.parts import PartWriter, PrintedPart
from generator.rendering.handout.planning import PlannedPage
from generator.rendering.typeset import time_words

CONTENTS = (4, 6, 8, 12)
"""For how many pages the line is measured."""
# Up to so many pages the line has room for times.
_TIMED, _LONGEST = 4, "9 to 12, 1 h 50 min"


@dataclass(frozen=True, slots=True)
class Content:
    """The steps of a page, and how long they take."""

    number: int
    words: str


def contents_of(pages: Sequence[PlannedPage], parts: Mapping[str, PrintedPart]) -> Iterator[Content]:
    """Return what is done on each page: its steps, and on one folded sheet how long they take."""
    for number, page in enumerate(pages, 1):
        acts = [parts[block.name] for block in page.blocks if parts[block.name].number]
        if acts:
            first, last = acts[0].number, acts[-1].number
            steps = f"{first}" if first == last else f"{first} to {last}"
            minutes = sum(act.minutes for act in acts) if len(pages) <= _TIMED else 0
            yield Content(number, f"{steps}, {time_words(minutes)}" if minutes else steps)


def longest_contents(writer: PartWriter) -> Iterator[PrintedPart]:
    """Return what is said of each page, as long as it may become, and of an act that goes on, to be measured."""
    yield PrintedPart("continued", writer.say("continued", 10))
    for pages in CONTENTS:
        told = tuple(Content(page, _LONGEST if pages <= _TIMED else "10 to 12") for page in range(1, pages + 1))
        yield PrintedPart(f"contents-{pages}", writer.say("contents", told))
