"""A whole worksheet made by hand, for tests of pages and sheets: a cushion with a tucked front and an envelope back."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from generator.calculation.cutting.cloth import Buying
from generator.calculation.laid import CutItem, LaidStack, LaidStrip, Layout, PlacedItem
from generator.calculation.making_up.laid import LaidOut
from generator.calculation.turning.turns import row_words
from generator.calculation.worked import End, Panel, Row, RowSet, TuckSet, Turn
from generator.calculation.worked_checks import CheckPoint, Checks, Correction
from generator.calculation.worked_piece import Part, Piece, Straight
from generator.calculation.worked_project import (
    Caution,
    ClosureWork,
    ClothUse,
    SheetStep,
    SupplyLine,
    Worksheet,
)
from generator.calculation.worked_thread import ThreadUse
from generator.errors import Finding
from generator.lengths import INCH, Edition, read_length

LINKED = ((Turn.RIGHT, Turn.LEFT), (Turn.LEFT, Turn.RIGHT))


def cushion(edition: Edition = INCH, *, count: int = 17, title: str = "Slack Tide cushion", rows: int = 5) -> Worksheet:
    """Equal tucks: mark i at 1 5/8 + (i - 1) 1 1/2, stitching at 3/4 + (i - 1) 3/4; in centimetres the same plan."""
    front = _front(edition, count, rows)
    return Worksheet(
        project="slack-tide-cushion",
        title=title,
        kind="cushion",
        level="some practice",
        summary="A cushion whose front is drawn into **linked cells**, with a back that closes like an envelope.",
        size="14 inch",
        size_label="Pad of 14 in" if edition is INCH else "Pad of 35 cm",
        size_note="Cut a little smaller than the pad, so that the cover is full.",
        edition=edition,
        measures={},
        numbers={},
        pieces={"front": front, "back": _back(edition, front)},
        cloths={"face": _cloth(edition, front)},
        meetings=(),
        closures=(_closure(edition),),
        supplies=(SupplyLine("cushion pad", "1", "feather, with its own cover"), SupplyLine("tailor's chalk", "1")),
        thread=ThreadUse(Fraction(2400), "67 yd" if edition is INCH else "61 m", 1),
        steps=_steps(edition),
        cautions=CAUTIONS,
        tools=("ruler", "chalk", "iron", "scissors", "awl", "machine"),
        minutes=265,
        laid_out=LaidOut((), front.finished_across, front.finished_along),
        findings=(Finding("warning", "The cloth is one-way; lay both halves of the back the same way up."),),
    )


def _length(edition: Edition, inch: str, metric: str) -> Fraction:
    return read_length(inch, "in") if edition is INCH else read_length(metric, "cm")


def tucks(edition: Edition, count: int) -> TuckSet:
    depth, spacing = _length(edition, "3/8", "1"), _length(edition, "1 1/2", "4")
    margin, seam = _length(edition, "3/4", "2"), _length(edition, "1/2", "1.5")
    marks = tuple(seam + margin + depth + place * spacing for place in range(count))
    stitching = tuple(margin + place * (spacing - 2 * depth) for place in range(count))
    finished = 2 * margin + (count - 1) * (spacing - 2 * depth)
    return TuckSet(
        depths=(depth,) * count,
        take_ups=(2 * depth,) * count,
        marks=marks,
        stitching=stitching,
        left_margin=margin,
        right_margin=margin,
        left=End("seam", seam),
        right=End("seam", seam),
        left_allowance=seam,
        right_allowance=seam,
        cut=finished + 2 * seam + 2 * depth * count,
        finished=finished,
        asked=finished,
        wish=spacing,
        grid=_length(edition, "1/8", "0.5"),
    )


def _front(edition: Edition, count: int, rows: int) -> Piece:
    across = tucks(edition, count)
    along, cut_along = _length(edition, "14 1/2", "37"), _length(edition, "16 1/4", "41.5")
    panel = Panel(
        across=across,
        rows=_rows(edition, count, rows),
        checks=Checks(_checkpoints(edition, across), _corrections(edition, across)),
    )
    return Piece(
        name="front",
        label="Front",
        kind="tucked panel",
        cloth="face",
        quantity=1,
        grain="along",
        parts=(Part(Straight(), across.cut, cut_along, across.finished, along),),
        finished_across=across.finished,
        finished_along=along,
        panel=panel,
    )


def _rows(edition: Edition, count: int, number: int) -> RowSet:
    step, first = _length(edition, "2 3/4", "7"), _length(edition, "2", "5")
    rows = []
    for place in range(number):
        turns = tuple(LINKED[place % 2][tuck % 2] for tuck in range(count))
        ruled = first + place * step
        finished = ruled - _length(edition, "5/8", "1.5")
        least = finished - place * _length(edition, "1/8", "0.3")
        rows.append(Row(place + 1, ruled, least, finished, "right", turns, row_words(turns, "right")))
    return RowSet(
        plan="linked cells",
        repeat=LINKED,
        rows=tuple(rows),
        spacing=step,
        first=first,
        top=(),
        bottom=(),
        extra=_length(edition, "3/4", "2"),
        draw_in_least=_length(edition, "1/2", "1.2"),
        draw_in_most=_length(edition, "1 1/8", "2.8"),
        layers=5,
    )


def _checkpoints(edition: Edition, across: TuckSet) -> tuple[CheckPoint, ...]:
    points = []
    for after in range(6, across.count, 6):
        expect = across.marks[after] - sum(across.take_ups[:after])
        within = _length(edition, "1/8", "0.3")
        points.append(
            CheckPoint(after, "the left cut edge", f"fold mark {after + 1}", after + 1, expect, within, within)
        )
    return tuple(points)


def _corrections(edition: Edition, across: TuckSet) -> tuple[Correction, ...]:
    mark = _length(edition, "1/16", "0.1")
    text = "Stitch the next two tucks {} {}, then go on as before."
    step = "1/16 in" if edition is INCH else "1 mm"
    return tuple(
        Correction(
            after,
            sign * 4 * mark,
            (((after + 1, after + 2), sign * mark),),
            text.format(step, "shallower" if sign < 0 else "deeper"),
        )
        for after in range(6, across.count, 6)
        for sign in (-1, 1)
    )


def _back(edition: Edition, front: Piece) -> Piece:
    half = _length(edition, "10", "25")
    cut = _length(edition, "12 1/2", "31"), _length(edition, "15 1/2", "40")
    return Piece(
        name="back",
        label="Envelope back",
        kind="envelope back",
        cloth="face",
        quantity=2,
        grain="along",
        parts=(Part(Straight(), *cut, half, front.finished_along),),
        finished_across=half,
        finished_along=front.finished_along,
        note="Cut it when the front has been measured.",
    )


def _cloth(edition: Edition, front: Piece) -> ClothUse:
    zero, width, length = Fraction(0), _length(edition, "44", "112"), _length(edition, "31 3/4", "81.5")
    back_across, back_along = _length(edition, "12 1/2", "31"), _length(edition, "15 1/2", "40")
    placed = (
        PlacedItem("front", "Front", 1, zero, zero, front.cut_across, front.cut_along, False),
        PlacedItem("back", "Envelope back", 1, zero, front.cut_along, back_across, back_along, False),
        PlacedItem("back", "Envelope back", 2, back_across, front.cut_along, back_across, back_along, False),
    )
    stacks = tuple(LaidStack(one.left, one.across, later=False, placed=(one,)) for one in placed)
    strips = (LaidStrip(zero, front.cut_along, stacks[:1]), LaidStrip(front.cut_along, back_along, stacks[1:]))
    return ClothUse(
        name="face",
        label="Undyed linen, medium weight",
        width=width,
        layout=Layout(width, length, strips, length, length, "shortest", _length(edition, "27 1/4", "90"), length),
        buy=_length(edition, "36", "90"),
        buy_text="1 yd" if edition is INCH else "0.9 m",
        buying=Buying(edition.buy_step),
        one_way=True,
        note="Wash it before cutting.",
        items=(
            CutItem("front", "Front", front.cut_across, front.cut_along, 1),
            CutItem("back", "Envelope back", back_across, back_along, 2, later=True),
        ),
    )


def _closure(edition: Edition) -> ClosureWork:
    zero = Fraction(0)
    return ClosureWork("overlap", 0, "back", "back", _length(edition, "4", "10"), zero, zero, (), zero, zero, "")


CAUTIONS: Mapping[str, Caution] = {
    "iron": Caution("iron", "The iron and its steam burn. Test the heat on a scrap, and keep fingers off the crease."),
    "needle": Caution("needle", "Hold the tucks down with an awl, **never with fingers** near the needle."),
}


def _step(
    number: int,
    title: str,
    text: str,
    *figures: str,
    tools: tuple[str, ...] = (),
    ends: bool = False,
    lists: tuple[str, ...] = (),
) -> SheetStep:
    cautions = tuple({"iron": "iron", "machine": "needle"}[tool] for tool in tools if tool in ("iron", "machine"))
    return SheetStep(number, title, text, ("front",), "", tools, cautions, figures, 25, ends, text, lists)


def _steps(edition: Edition) -> tuple[SheetStep, ...]:
    depth = "3/8 in" if edition is INCH else "1 cm"
    return (
        _step(
            1,
            "Cut the pieces",
            "Square the cloth. Cut the strips across the width, then each piece from its strip.\n\n"
            "- Cut the front first.\n- Write its name on the *wrong* side of each piece.",
            "layout face",
            tools=("scissors",),
            lists=("cuts",),
        ),
        _step(
            2,
            "Mark the folds",
            "Mark every fold on both long edges, always from the **left** cut edge, never from "
            "mark to mark: then errors do not add up.",
            "fold marks front",
            tools=("ruler", "chalk"),
            lists=("marks",),
        ),
        _step(3, "Crease", "Crease from mark to mark, straight along the grain, a few at a time.", tools=("iron",)),
        _step(
            4,
            f"Stitch the tucks {depth} deep",
            f"Stitch each tuck {depth} from its fold, all in the same order. Measure at the check points.",
            "stitching front",
            tools=("machine",),
            ends=True,
            lists=("check points",),
        ),
        _step(
            5,
            "Rule the rows",
            "Leave the tucks standing. Rule the rows square to the tucks, measured from the top cut edge.",
            "fold marks front",
            tools=("ruler",),
            lists=("ruled rows",),
        ),
        _step(
            6,
            "Sew row by row",
            "Turn each tuck as the map says, and sew over it. Start with a back stitch.",
            "quarter turn front",
            "turns front",
            tools=("awl", "machine"),
            lists=("rows",),
        ),
        _step(
            7,
            "Sew on the back",
            "Lay the halves of the back on the front, right sides together, and sew all round.",
            tools=("machine",),
        ),
    )
