"""The values that a whole project comes to in one size and edition: plain, frozen, exact; no sums here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction
from typing import Literal

from generator.calculation.cutting.cloth import Buying
from generator.calculation.drawn_up import DrawnUp
from generator.calculation.laid import CutItem, Layout, Match
from generator.calculation.making_up.joined import Attached, Joined
from generator.calculation.making_up.laid import NOTHING_LAID_OUT, LaidOut
from generator.calculation.making_up.thing import Thing
from generator.calculation.pieces.bias import PiecedBias
from generator.calculation.worked import Panel
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_thread import ThreadUse
from generator.errors import Finding
from generator.lengths import Edition, say_length, write_number


@dataclass(frozen=True, slots=True)
class ClothUse:
    """What one cloth of the project comes to: layout on the washed cloth, length to buy.

    ``width`` is the usable width as sold, ``layout.width`` after shrinkage. ``buy`` [in] is rounded up to the shop's
    step and written in ``buy_text``. ``narrowest`` is the narrowest usable width, as sold, for the same purchase.
    ``items`` are what is cut from it. ``pattern`` is that of a cloth with a repeat along it. ``pieced``
    are the strips on the bias, by their piece, that are pieced because that buys less. ``lead`` is where there are
    striped pieces side by side: they begin within so much of the left selvage, on their stripe [in].
    """

    name: str
    label: str
    width: Fraction
    layout: Layout
    buy: Fraction
    buy_text: str
    buying: Buying
    narrowest: Fraction = Fraction(0)
    shrinkage_across: Fraction = Fraction(0)
    one_way: bool = False
    weight: str = "medium"
    thickness: Fraction | None = None
    colour: str = ""
    remnant: Fraction | None = None
    note: str = ""
    items: tuple[CutItem, ...] = ()
    pattern: Match | None = None
    pieced: Mapping[str, PiecedBias] = field(default_factory=dict)
    lead: Fraction = Fraction(0)

    @property
    def left_over(self) -> Fraction:
        """What is left of the cloth as bought when it is washed, straightened and cut [in]."""
        return self.buying.enough(self.buy) - self.layout.length

    @property
    def shrinkage_along(self) -> Fraction:
        """What washing takes of the length, as a share of it [-]."""
        return self.buying.shrinkage


@dataclass(frozen=True, slots=True)
class MeetingWork:
    """Edges sewn to each other, their lengths [in], the ``lines`` of stitching, and the first if it is ``drawn`` up.

    A seam that shuts in its edges, or is understitched, has two lines.
    """

    join: str
    to: str
    join_length: Fraction
    to_length: Fraction
    ease: Fraction
    note: str = ""
    lines: int = 1
    drawn: DrawnUp | None = None


@dataclass(frozen=True, slots=True)
class ClosureWork:
    """A closure: how many, where along the edge [in from its start], buttonhole length [in], words.

    ``length`` and ``width`` are those of what is bought by its length, such as elastic [in], ``lap`` is how far its
    ends lie over each other [in]. A zip of a ``length`` is shortened from one of the length ``bought`` [in].
    Ties and loops are the piece ``strips``, ``each`` so many at every place.
    """

    kind: str
    number: int
    on: str
    onto: str
    overlap: Fraction = Fraction(0)
    diameter: Fraction = Fraction(0)
    thickness: Fraction = Fraction(0)
    positions: tuple[Fraction, ...] = ()
    buttonhole: Fraction = Fraction(0)
    inset: Fraction = Fraction(0)
    text: str = ""
    note: str = ""
    length: Fraction = Fraction(0)
    width: Fraction = Fraction(0)
    lap: Fraction = Fraction(0)
    bought: Fraction = Fraction(0)
    tabs: str = ""
    strips: str = ""
    each: int = 1


@dataclass(frozen=True, slots=True)
class SupplyLine:
    """One line of the shopping list; ``amount`` is written for the edition.

    It says how many (``number``), and how long each is where a length is asked for [in]. In a class one is bought for
    every ``shared_by`` students, for 0 one for all of them.
    """

    item: str
    amount: str
    note: str = ""
    number: Fraction = Fraction(1)
    length: Fraction = Fraction(0)
    shared_by: int = 1


@dataclass(frozen=True, slots=True)
class NewCut:
    """How one side of a waiting piece is cut from a panel as sewn: ``number`` pieces, ``planned`` [in].

    ``follows`` has the measures of panels that it follows, told in words, as they were planned [in]; ``words`` are the
    sum, 'mine + 1', empty where it follows none or unevenly.
    """

    piece: str
    name: str
    number: int
    side: str
    planned: Fraction
    follows: tuple[tuple[str, Fraction], ...]
    words: str


@dataclass(frozen=True, slots=True)
class Thickness:
    """The thickest place of a panel: layers of cloth under the needle, and where they lie, in words."""

    layers: int
    where: str


@dataclass(frozen=True, slots=True)
class SheetStep:
    """One step of the sheet.

    ``text`` is Markdown with every number filled in; ``printed`` the same for the handout, without the ``lists`` that
    it shows as tables and pictures of their own, by their words in brackets. ``figures`` are keys of diagrams ('flat
    cloth front'), ``cautions`` names in the worksheet's cautions. ``standard`` is the standard step it comes from,
    empty for the project's own. ``joined`` is what lies on each other in it, as it is sewn. ``keeps`` tells whether the
    work can be laid aside after it.
    """

    number: int
    title: str
    text: str
    pieces: tuple[str, ...]
    standard: str
    tools: tuple[str, ...]
    cautions: tuple[str, ...]
    figures: tuple[str, ...]
    minutes: int
    session_ends: bool
    printed: str = ""
    lists: tuple[str, ...] = ()
    joined: tuple[Joined, ...] = ()
    keeps: bool = True


@dataclass(frozen=True, slots=True)
class Caution:
    """A caution: its name in the list, its whole text (Markdown), how grave it is, and what later steps call it.

    ``hazard``, ``consequence`` and ``avoid`` are the parts of the text, empty where a room says all at once.
    """

    name: str
    text: str
    level: Literal["warning", "caution", "notice"] = "caution"
    short: str = ""
    hazard: str = ""
    consequence: str = ""
    avoid: str = ""


@dataclass(frozen=True, slots=True)
class DecidingMeasure:
    """The measure by which a size is chosen: what it is called, how long it is [in], and how it is taken."""

    name: str
    length: Fraction
    how: str = ""


@dataclass(frozen=True, slots=True)
class Worksheet:
    """Everything that one project comes to in one size and one edition.

    Drawings, pages, sheets, classes and corrections read this and compute nothing of their own. ``measures`` are the
    size's own values and what follows from them (lengths in inches; plain numbers in ``numbers``). ``sewn`` says when
    the size was test-sewn, empty if it is only computed. ``minutes`` is for one piece of work by an average hand.
    ``as_sewn`` maps a measure of a panel as sewn ('front.across') to its length, when the sheet was worked again to it.
    ``told_first`` names the cautions of the finished thing, which are told before anything is bought.
    ``beginners`` is how many times as long a beginner takes [-].
    ``thickest`` has the thickest place of each panel that has rows or seams.
    ``laid_out`` is the finished thing with the place of each piece in it.
    ``new_cuts`` tell how the waiting pieces follow from the panel as sewn.
    ``deciding`` is the measure by which the size is chosen, ``size_source`` where its body measures come from.
    ``own`` names the measures and numbers that a size gives itself; the others follow from them.
    ``thing`` is what is made, as its making up sees it: parts, seams with their sorts, closings. ``attached`` are
    pieces that are sewn onto it without a seam: straps, ties, pockets.
    """

    project: str
    title: str
    kind: str
    level: str
    summary: str
    size: str
    size_label: str
    size_note: str
    edition: Edition
    measures: Mapping[str, Fraction]
    numbers: Mapping[str, Fraction]
    pieces: Mapping[str, Piece]
    cloths: Mapping[str, ClothUse]
    meetings: tuple[MeetingWork, ...]
    closures: tuple[ClosureWork, ...]
    supplies: tuple[SupplyLine, ...]
    thread: ThreadUse
    steps: tuple[SheetStep, ...]
    cautions: Mapping[str, Caution]
    tools: tuple[str, ...]
    minutes: int
    cost: str = ""
    sewn: str = ""
    as_sewn: Mapping[str, Fraction] = field(default_factory=dict)
    findings: tuple[Finding, ...] = ()
    own: tuple[str, ...] = ()
    thickest: Mapping[str, Thickness] = field(default_factory=dict)
    beginners: Fraction = Fraction(1)
    told_first: tuple[str, ...] = ()
    deciding: DecidingMeasure | None = None
    size_source: str = ""
    laid_out: LaidOut = NOTHING_LAID_OUT
    new_cuts: tuple[NewCut, ...] = ()
    thing: Thing = field(default_factory=lambda: Thing(frozenset(), {}))
    attached: tuple[Attached, ...] = ()

    @property
    def wordless(self) -> Worksheet:
        """The same without the texts of its steps: all that drawings, and sheets beside the handout, ask for."""
        return replace(self, steps=tuple(replace(step, text="", printed="") for step in self.steps))

    @property
    def panels(self) -> Mapping[str, Panel]:
        """The tucked panels by the name of their piece, in the order of the file."""
        return {name: piece.panel for name, piece in self.pieces.items() if piece.panel is not None}

    @property
    def beginners_words(self) -> str:
        """How long a beginner takes for the times of this sheet, empty where no longer."""
        if self.beginners == 1:
            return ""
        return f"beginners take {write_number(self.beginners)} times as long"

    @property
    def notions(self) -> tuple[SupplyLine, ...]:
        """Everything to buy beside cloth and thread: what closes it first, then the supplies."""
        closed = [one for one in self.closures if one.kind not in ("ties", "loops") and one.number]
        return (*(_to_buy(one, self.edition) for one in closed), *self.supplies)


def _to_buy(closure: ClosureWork, edition: Edition) -> SupplyLine:
    """A closure as a line of the shopping list; ties are sewn, not bought."""
    kind = closure.kind.removesuffix("s") if closure.number == 1 else closure.kind
    if closure.length:
        wide = f", {say_length(closure.width, edition)} wide" if closure.width else ""
        return SupplyLine(
            f"{kind}{wide}",
            say_length(closure.bought or closure.length, edition),
            length=closure.bought or closure.length,
        )
    size = f", {say_length(closure.diameter, edition)} across" if closure.diameter else ""
    number = Fraction(closure.number)
    return SupplyLine(f"{kind}{size}", write_number(number), number=number)
