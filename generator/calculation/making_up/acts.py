"""What a step does: techniques as making up sees them, acts, and steps made of acts; plain, frozen, no sums here."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.making_up.thing import Edge
from generator.errors import Place

ANY = ""


@dataclass(frozen=True, slots=True)
class Method:
    """A technique as making up sees it: what it gives to which pieces and seams, and what it needs.

    ``kinds`` are kinds of pieces or the words in ``_FITS``; none means whatever its states are due to. One that gives
    nothing known may have done anything.
    """

    name: str
    kinds: tuple[str, ...] = ()
    sews: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    gives: tuple[str, ...] = ()
    before: tuple[str, ...] = ()

    @property
    def known(self) -> bool:
        """Whether it says what it does."""
        return bool(self.gives)


@dataclass(frozen=True, slots=True)
class Act:
    """One thing that a step does: a technique by its name, or 'sew', 'lay', 'baste' and the like.

    ``what`` and ``onto`` are edges; an edge without a name stands for the whole piece. ``word`` is what is set or put
    in, or the technique that is looked after. ``length`` is that of an opening [in], None where nobody says it; it lies
    in the middle of its edge or at its ``end``, and may stay open ``for_good``.
    ``right_sides`` tells that right sides lie together.
    """

    does: str
    what: tuple[Edge, ...] = ()
    onto: tuple[Edge, ...] = ()
    word: str = ""
    place: Place | None = None
    length: Fraction | None = None
    right_sides: bool = True
    end: str = ""
    for_good: bool = False

    @property
    def pieces(self) -> tuple[str, ...]:
        """Every piece that it names, each once."""
        return tuple(dict.fromkeys(piece for piece, _ in self.what + self.onto))


@dataclass(frozen=True, slots=True)
class Doing:
    """One step of a recipe: its acts in order. One that is not ``known`` may do anything to its ``pieces``."""

    title: str
    acts: tuple[Act, ...]
    place: Place | None = None
    pieces: tuple[str, ...] = ()
    known: bool = True
    own: bool = False
