"""One caution, the tool's or a room's: a group of keys comes in; when it is told, how grave it is, its words go out."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Literal

from generator.definitions.fields import Label, Markdown
from generator.definitions.keyed import Keyed
from generator.definitions.nodes import Group
from generator.definitions.readers import choice, choices
from generator.definitions.reading import Reading
from generator.definitions.values import Text
from generator.definitions.vocabulary import CAUTIONS, TOOLS

Grave = Literal["warning", "caution", "notice"]
GRAVE: tuple[Grave, ...] = ("warning", "caution", "notice")
_PARTS = ("hazard", "consequence", "avoid")


class CautionRule(Keyed):
    """When a caution is told, how grave it is, what can happen, what comes of it, what to do, and who advises it.

    ``text`` says all of it at once, in a room's own words. ``short`` is what later steps call it.
    """

    when: Annotated[tuple[str, ...], choices((*TOOLS, *CAUTIONS), "tool or place")]
    text: Markdown | None = None
    level: Annotated[Grave, choice(GRAVE, "level of a caution")] = "caution"
    hazard: Label = ""
    consequence: Label = ""
    avoid: Markdown | None = None
    short: Label = ""
    source: Label = ""

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that a caution says all at once or in all three parts."""
        parts = [key for key in _PARTS if key in found.entries]
        if "text" in found.entries:
            for key in parts:
                told = f"'{key}' does not go with 'text'; say all in 'text', or in 'hazard', 'consequence' and 'avoid'"
                reading.faults.add(found.entries[key][0].place, told)
        elif len(parts) < len(_PARTS):
            missing = " and ".join(f"'{key}'" for key in _PARTS if key not in parts) if parts else "'text'"
            wanted = "a caution has a 'text', or 'hazard', 'consequence' and 'avoid'"
            reading.faults.add(found.place, f"{missing} is missing here; {wanted}")

    def told(self, fill: Callable[[Text], str]) -> str:
        """Return the whole caution as Markdown; ``fill`` fills the placeholders of a text."""
        if self.text is not None:
            return fill(self.text)
        return f"**{self.hazard}.** {self.consequence} {fill(self.avoid) if self.avoid else ''}"
