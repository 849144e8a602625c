"""The thread of a sheet or a class, worked: nothing comes in, what lists and bills read goes out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction


@dataclass(frozen=True, slots=True)
class ThreadColour:
    """Thread of one colour: its name, the work that it is for, its length [in], written, and spools to buy."""

    name: str
    work: str
    length: Fraction
    length_text: str
    spools: int

    @property
    def words(self) -> str:
        """What to ask for, behind the word thread: ', rust, for tucks and rows'."""
        return f", {self.name}, for {self.work}"


@dataclass(frozen=True, slots=True)
class ThreadUse:
    """Thread for the whole project: length [in], written, and spools to buy; in colours where it has any."""

    length: Fraction
    length_text: str
    spools: int
    colours: tuple[ThreadColour, ...] = ()

    @property
    def lines(self) -> tuple[tuple[str, str, int], ...]:
        """What a list says of it: the words behind 'thread', its length and its spools, a line for each colour."""
        if not self.colours:
            return (("", self.length_text, self.spools),)
        return tuple((one.words, one.length_text, one.spools) for one in self.colours)
