"""What a project file says of a panel's tucks and rows: groups of keys come in, frozen definitions go out."""

from __future__ import annotations

from typing import Annotated

from generator.definitions.fields import (
    Count,
    Drawing,
    Fact,
    Graduation,
    Label,
    Length,
    Quantity,
    Span,
    Whole,
    YesNo,
    length,
    span,
    standing_span,
)
from generator.definitions.keyed import Items, Located
from generator.definitions.nodes import Group, Listing, Scalar, fold
from generator.definitions.readers import Leaf, choice
from generator.definitions.reading import Reading
from generator.definitions.values import CountWish, Formula, Range
from generator.definitions.vocabulary import (
    GIVES,
    HEADRAILS,
    HELD,
    LONE_EDGE_TUCKS,
    ONE_WAY,
    PLANS,
    PRESSED,
    STARTS,
    STITCHING_ENDS,
    Gives,
    Held,
    LoneEdgeTucks,
    Pressed,
    Start,
    StitchingEnds,
)

Depth = Annotated[Formula, length("depth")]
Spacing = Annotated[Formula, length("spacing")]
Pitches = Annotated[Range, span("pitch", falling=True)]
Stops = Annotated[Range, span("finished", falling=True)]
HeldBy: Leaf = choice(HELD, "way to hold the tucks")


RELEASED = ("stitched from", "stitched to", "released from", "released to")


class Run(Located):
    """Neighbouring tucks of one depth, or of depths that grow or fall evenly.

    ``pitch`` lies between the tucks of the run, or grows or falls evenly from the first to the last; ``pitch_after``
    between its last tuck and the next run's first. Of tucks pressed one way ``visible_space`` may be told in its place.
    """

    number: Count = CountWish("any")
    depth: Graduation
    pitch: Pitches | None = None
    visible_space: Length | None = None
    pitch_after: Length | None = None

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that what lies between the tucks is told in one of the two ways."""
        told = [key for key in ("pitch", "visible space") if key in found.entries]
        if not told:
            reading.faults.add(found.place, "'pitch' is missing here; or tell what shows by 'visible space'")
        if len(told) > 1:
            place = found.entries["visible space"][0].place
            reading.faults.add(place, "'pitch' and 'visible space' exclude each other; take one of the two out")


class Rings(Located):
    """Rings along every rod of a blind, for the cords of a headrail that is bought with all its safety parts."""

    from_sides: Length
    headrail: Annotated[str, choice(HEADRAILS, "headrail that cords may hang on")]

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that cords hang on nothing but a headrail with its safety parts."""
        if "headrail" not in found.entries:
            told = (
                "rings are for cords, and a child caught in the cord of a blind can strangle. Take the rings out, and "
                "lift the rods on to hooks; or, only where the headrail is bought with all its safety parts and fitted "
                f"by its maker's text, write 'headrail: {HEADRAILS[0]}' here"
            )
            reading.faults.add(found.place, told)


class Tucks(Located):
    """One set of parallel tucks: equal ones by depth and spacing, or runs of unequal ones.

    ``gives`` is what may change so that the finished size comes out exactly. A ring has no ends and no margins.
    A left or right margin that is None is as ``margin``. ``pressed`` is how tucks lie that no row turns.
    ``rod`` is the thickness of a rod in each of them, with ``rings`` along it. Tucks that are let go are stitched from
    one place to another, from the top down, or released between two; a range goes evenly from the first to the last.
    """

    depth: Depth | None = None
    spacing: Spacing | None = None
    number: Count = CountWish("any")
    gives: Annotated[Gives, choice(GIVES, "part that can give")] = "margin"
    margin: Span = standing_span("1/2 in to 2 in or 1 cm to 5 cm")
    left_margin: Span | None = None
    right_margin: Span | None = None
    ring: YesNo = False
    runs: Items[Run] = ()
    mirror: YesNo = False
    middle_pitch: Length | None = None
    pressed: Annotated[Pressed, choice(PRESSED, "way to press tucks")] | None = None
    rod: Length | None = None
    rings: Rings | None = None
    stitched_from: Stops | None = None
    stitched_to: Stops | None = None
    released_from: Stops | None = None
    released_to: Stops | None = None
    stitching_ends: Annotated[StitchingEnds, choice(STITCHING_ENDS, "way to secure stitching")] = "tied"

    @property
    def released(self) -> bool:
        """Whether they are stitched over a part of their length only."""
        return any((self.stitched_from, self.stitched_to, self.released_from))

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that tucks are told in one of the two ways."""
        _report_released(found, reading)
        if "rings" in found.entries and "rod" not in found.entries:
            told = "rings are sewn on along rods; say under 'rod' how thick those are, or take the rings out"
            reading.faults.add(found.entries["rings"][0].place, told)
        _report_visible_spaces(found, reading)
        if "runs" in found.entries:
            for key in ("depth", "spacing", "number", "ring"):
                if key in found.entries:
                    place = found.entries[key][0].place
                    reading.faults.add(place, f"'{key}' does not go with runs; every run has its own")
            return
        for key in ("depth", "spacing"):
            if key not in found.entries:
                reading.faults.add(found.place, f"'{key}' is missing here; or tell unequal tucks by 'runs'")
        for key in ("mirror", "middle pitch"):
            if key in found.entries:
                reading.faults.add(found.entries[key][0].place, f"'{key}' goes with runs only")


def _report_released(found: Group, reading: Reading) -> None:
    """Report keys of released tucks that do not go together, or not with the rest."""
    told = {key: found.entries[key][0].place for key in RELEASED if key in found.entries}
    stitched, released = (
        [key for key in RELEASED if key.startswith(word) and key in told] for word in ("stitched", "released")
    )
    if stitched and released:
        text = f"'{stitched[0]}' and '{released[0]}' exclude each other: say where tucks are stitched, or where not"
        reading.faults.add(told[released[0]], text)
    elif len(released) == 1:
        missing = "released to" if released[0] == "released from" else "released from"
        text = (
            f"'{missing}' is missing here; tucks that are let go as far as an edge are told by 'stitched to' or "
            "'stitched from'"
        )
        reading.faults.add(told[released[0]], text)
    if not told and "stitching ends" in found.entries:
        text = "'stitching ends' goes with tucks that end within the panel; write 'stitched to', or take it out"
        reading.faults.add(found.entries["stitching ends"][0].place, text)
    for key, place in list(told.items())[:1]:
        if "rod" in found.entries:
            text = f"'{key}' does not go with 'rod', whose tucks run from edge to edge; take one of the two out"
            reading.faults.add(place, text)


def _report_visible_spaces(found: Group, reading: Reading) -> None:
    """Report what shows beside tucks that are not pressed one way, of which nobody knows what lies on what."""
    pressed, runs = found.get("pressed"), found.get("runs")
    word = fold(pressed.text) if isinstance(pressed, Scalar) else ""
    if word in ONE_WAY or not isinstance(runs, Listing):
        return
    for run in runs.items:
        if isinstance(run, Group) and "visible space" in run.entries:
            told = (
                "what shows beside a tuck is known where all are pressed one way; write 'pressed: right' or "
                "'pressed: left' under 'tucks', or give the pitch"
            )
            reading.faults.add(run.entries["visible space"][0].place, told)


class Rows(Located):
    """The tack rows of a panel: a plan by name or drawn, where the rows lie, and how they are sewn.

    Without a ``start`` rows begin by bulk, or at the right where the room or ``back_and_forth`` says so.
    ``draw_in`` is the loss of one interval as measured; it takes the place of the computed one. Without a word about
    lone edge tucks they are turned out where that fits, else left upright.
    """

    plan: Annotated[str, choice(PLANS, "turn plan")] | None = None
    drawn_plan: Drawing | None = None
    group: Whole = 2
    number: Count = CountWish("any")
    spacing: Spacing
    first: Span = standing_span("1 in to 3 in or 2.5 cm to 8 cm")
    start: Annotated[Start, choice(STARTS, "end of a row")] | None = None
    back_and_forth: YesNo = False
    draw_in: Fact | None = None
    lone_edge_tucks: Annotated[LoneEdgeTucks, choice(LONE_EDGE_TUCKS, "way to lay an edge tuck")] | None = None
    top_held: Annotated[Held, HeldBy] = "as the next row"
    bottom_held: Annotated[Held, HeldBy] = "as the next row"

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that the plan is named or drawn, not both."""
        named, drawn = found.entries.get("plan"), found.entries.get("drawn plan")
        if named and drawn:
            told = f"'plan' and 'drawn plan' exclude each other; the plan is given on line {named[0].place.line}"
            reading.faults.add(drawn[0].place, told)
        if not named and not drawn:
            reading.faults.add(found.place, "'plan' is missing here; name a plan, or draw one under 'drawn plan'")
        turned, start = found.entries.get("back and forth"), found.entries.get("start")
        if turned and start and isinstance(start[1], Scalar) and fold(start[1].text) == "by bulk":
            told = (
                "'back and forth' does not go with 'start: by bulk', which chooses the end of every row; take one out"
            )
            reading.faults.add(turned[0].place, told)


class Sample(Located):
    """A sewn sample: so many tucks of a depth on a flat length, and what it finished at; facts, so one unit is enough.

    ``rows_before`` and ``rows_after`` are the distance of two rows before and after the tucks were turned.
    """

    tucks: Quantity
    depth: Fact
    flat: Fact
    finished: Fact
    rows_before: Fact | None = None
    rows_after: Fact | None = None
    cloth: Label = ""
    note: Label = ""
