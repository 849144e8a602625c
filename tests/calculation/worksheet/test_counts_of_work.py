"""What a step, a text and a spool are counted from: measures, operations and lines of a cushion and a wrap by hand."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, WRAP, inches, sheet

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.worked_piece import Lengths, Made, Piece
from generator.calculation.worked_thread import ThreadUse
from generator.calculation.worksheet.threads import (
    Sewing,
    plain_stitching,
    row_stitching,
    thread_use,
    tuck_stitching,
    written_thread,
)
from generator.calculation.worksheet.times import WORK
from generator.calculation.worksheet.work import SewnStretch, Work
from generator.lengths import INCH, METRE, METRIC, YARD


@pytest.fixture(name="front")
def front_of_the_cushion(tmp_path: Path) -> Piece:
    """20 tucks 3/8 deep every 1 1/2 on 16 by 16, cut 32 by 18 1/4, six rows 3 in apart."""
    return sheet(tmp_path, CUSHION, "medium").pieces["front"]


@pytest.fixture(name="back")
def back_of_the_cushion(tmp_path: Path) -> Piece:
    return sheet(tmp_path, CUSHION, "medium").pieces["back"]


@pytest.fixture(name="wrap")
def wrap_of_the_bolster(tmp_path: Path) -> Piece:
    return sheet(tmp_path, WRAP, "neck").pieces["wrap"]


def measured(piece: Piece, names: str) -> list[Fraction]:
    return [piece.measures[name] for name in names.split(", ")]


def test_a_text_may_ask_the_tucks_of_a_panel(front: Piece) -> None:
    # p 3/4, so 3/8 shows; marks from 1 3/4 to 1 3/4 + 19 x 1 1/2 = 30 1/4; 20 x 3/4 taken up; 2 x (16 + 16) round.
    assert measured(front, "number, depth, least depth, greatest depth") == inches("20, 3/8, 3/8, 3/8")
    assert measured(front, "spacing, pitch, visible space, take up") == inches("1 1/2, 3/4, 3/8, 15")
    assert measured(front, "first mark, last mark, margin, left margin") == inches("1 3/4, 30 1/4, 7/8, 7/8")
    assert measured(front, "across, along, cut across, cut along") == inches("16, 16, 32, 18 1/4")
    assert measured(front, "left hem, right hem, breadths, edge") == inches("0, 0, 1, 64")


def test_a_panel_in_one_breadth_has_no_joins(front: Piece) -> None:
    assert front.panel is not None
    assert (front.panel.breadths, front.panel.joins) == ((), ())
    assert (front.panel.join_allowance, front.lengths) == (0, None)


def test_a_text_may_ask_the_rows_of_a_panel(front: Piece) -> None:
    # Six rows from 1 5/8 to 16 5/8; 1 1/4 in extra of the 18 1/4; three layers where folds meet, one more in a seam.
    assert measured(front, "rows, row spacing, first row, last row") == inches("6, 3, 1 5/8, 16 5/8")
    assert measured(front, "extra, draw in, sewn along, layers") == inches("1 1/4, 1 1/4, 17, 4")


def test_a_text_may_ask_the_caught_hems_of_a_wrap(wrap: Piece) -> None:
    # Margins 2 1/4 and 2 1/2, half a tuck 3/8 more each; marks 5 1/4 to 5 1/4 + 18 x 1 1/2.
    assert measured(wrap, "left hem, right hem, margin, right margin") == inches("2 5/8, 2 7/8, 2 1/4, 2 1/2")
    assert measured(wrap, "first mark, last mark") == inches("5 1/4, 32 1/4")


def counted(work: str, pieces: Sequence[Piece] = (), **done: object) -> dict[str, Fraction]:
    return {name: count for name, count in WORK[work](Work(tuple(pieces), **done)).items() if count}  # type: ignore[arg-type]


def test_the_work_on_two_fronts_is_counted(front: Piece) -> None:
    two = [replace(front, quantity=2)]
    # Tucks 2 x 20, each 18 1/4 long: 730; rows 2 x 6, each 16 long with 20 tucks to turn; four edges of 16.
    assert counted("cut pieces", two) == {"cut a piece": 2}
    assert counted("mark folds", two) == {"mark a fold": 40}
    assert counted("crease tucks", two) == {"crease": 730}
    assert counted("stitch tucks", two) == {"stitch": 730, "start a seam": 40}
    assert counted("rule rows", two) == {"rule a row": 12}
    assert counted("turn tucks", two) == {"turn a tuck": 240, "stitch": 192, "start a seam": 12}
    assert counted("sew edges", two) == {"press": 128, "stitch": 128, "start a seam": 8}
    assert counted("gather edges", two) == {"gather": 64}
    # Both ends of both, 16 wide each; one is measured before it is cut.
    assert counted("trim ends", two) == {"rule a row": 2, "cut along a line": 64, "baste": 64}
    # 64 round either: pinned, stay-stitched, cut.
    assert counted("cut to shape", two) == {"pin": 128, "stitch": 128, "cut along a line": 128, "start a seam": 2}
    assert counted("fasten edges", two) == {"sew by hand": 128}
    assert counted("measure", two) == {"rule a row": 6}
    assert counted("baste pieces", two) == {"pin": 32, "baste": 32, "start a seam": 2}


def test_a_panel_without_rows_or_joins_has_none_to_work_on(front: Piece) -> None:
    assert front.panel is not None
    plain = replace(front, panel=replace(front.panel, rows=None))
    assert counted("rule rows", [plain]) == counted("join breadths", [plain]) == counted("join lengths", [plain]) == {}
    assert row_stitching(plain) == 0


def test_seams_are_counted_by_length_corners_and_number() -> None:
    # Four mats 60 round with four corners each; a seam of 12, straight.
    seams = SewnStretch(Fraction(60), 4, 4), SewnStretch(Fraction(12))
    sewn = {"pin": 252, "stitch": 252, "press": 252, "start a seam": 5, "turn a corner": 16}
    assert counted("sew seams", seams=seams) == sewn
    assert counted("baste seams", seams=seams) == {"pin": 252, "baste": 252, "start a seam": 5, "turn a corner": 16}
    # Both folds of a binding are pressed, and it is sewn down by hand.
    bound = {"turn a hem": 504, "pin": 252, "stitch": 252, "sew by hand": 252, "start a seam": 5, "turn a corner": 16}
    assert counted("bind edges", seams=seams) == bound
    # A hem is turned twice.
    assert counted("hem edges", hems=seams) == {
        "turn a hem": 504,
        "stitch": 252,
        "start a seam": 5,
        "turn a corner": 16,
    }
    assert counted("neaten seams", neatened=seams[1:]) == {"stitch": 12, "start a seam": 1}
    assert counted("close openings", openings=seams[1:]) == {"pin": 12, "sew by hand": 12, "start a seam": 1}
    assert counted("turn out", turned=1) == {"turn out": 1}
    assert counted("sew seams") == counted("turn out") == counted("hem edges") == {}


def test_a_step_that_does_not_say_what_it_sews_sews_half_the_way_round(front: Piece, back: Piece) -> None:
    # 64 in round each, half of both together.
    assert counted("sew seams", [front, back]) == {"stitch": 64, "start a seam": 2}
    assert counted("sew by hand", [front, back]) == {"sew by hand": 16}
    assert counted("sew by hand") == {"sew by hand": 8}
    assert counted("make buttonholes", [front]) == counted("sew buttons", [front]) == {}


def test_an_envelope_back_has_two_hems_and_a_lap(back: Piece) -> None:
    # Two hems 16 long, turned twice; a lap of 4 is pinned and basted at the top and at the bottom.
    told = {"turn a hem": 64, "stitch": 32, "start a seam": 2, "pin": 8, "baste": 8}
    assert counted("hem halves", [back]) == told


def test_strips_are_counted_by_their_lengths(back: Piece) -> None:
    part = replace(back.parts[0], cut_across=Fraction(100), cut_along=Fraction(2))
    joined = Lengths(10, Fraction(12), Fraction(2), Fraction(1, 2), slanting=False)
    strip = replace(back, edges={}, parts=(part,), lengths=joined, quantity=2)
    # Ten lengths are nine joins, on both strips.
    assert counted("join lengths", [strip]) == {"join a length": 18}
    assert counted("sew bands", [strip]) == {"turn a hem": 200, "stitch": 400, "start a seam": 4, "turn out": 2}
    # A square of 15 has 7 1/2 lines 2 apart, so 8; two seams; 100 of strip to cut.
    bias = replace(strip, square=Fraction(15), quantity=1)
    assert counted("cut bias", [bias]) == {"join a length": 2, "rule a row": 8, "cut along a line": 100}
    assert counted("join ends", [bias]) == {}
    assert counted("join ends", [replace(bias, edges={"edge": back.edges["top"]})]) == {"join a length": 1}


def test_pleats_are_marked_laid_and_basted(back: Piece) -> None:
    pleats = tuple((Fraction(place), Fraction(place + 1)) for place in range(6))
    pleated = replace(back, made=Made(DrawnUp("top", Fraction(16), pleats)))
    assert counted("lay pleats", [pleated]) == {"mark a fold": 12, "turn a tuck": 12, "baste": 16}


def test_one_of_two_linings_has_half_of_their_seam(front: Piece) -> None:
    lining = replace(front, quantity=2)
    # 16 + 16 + 16 round three sides, with two corners; each of the two linings has half of it.
    assert counted("sew linings", [lining]) == {"pin": 48, "stitch": 48, "start a seam": 2, "turn a corner": 2}


def test_what_is_cut_after_the_panel_is_counted_then(front: Piece, back: Piece) -> None:
    # The back is cut in two parts.
    later = replace(back, after_panel=True)
    assert counted("cut pieces", [front, back]) == {"cut a piece": 3}
    assert (counted("cut pieces", [front, later]), counted("cut later", [front, later])) == (
        {"cut a piece": 1},
        {"cut a piece": 2},
    )
    assert counted("cut later", [replace(later, parts=())]) == {}


def test_an_edge_on_the_fold_is_not_sewn_and_no_edges_are_one_seam(front: Piece) -> None:
    top = front.edges["top"]
    folded = replace(front, edges={**front.edges, "top": replace(top, end=replace(top.end, kind="fold"))})
    assert counted("sew edges", [folded])["stitch"] == 48
    assert counted("sew edges", [replace(front, edges={})]) == {"start a seam": 1}


def test_every_line_of_stitching_has_its_length(front: Piece, back: Piece, wrap: Piece) -> None:
    assert front.panel is not None
    crossed = replace(front, panel=replace(front.panel, cross=front.panel.across))
    # 20 lines of 18 1/4, 20 across of 16; rows 6 x 16; two caught hems of 14 on the wrap; two hems of 17 at the back.
    assert (tuck_stitching(front), tuck_stitching(crossed), tuck_stitching(back)) == (365, 685, 0)
    assert (row_stitching(front), row_stitching(back)) == (96, 0)
    assert (plain_stitching(front), plain_stitching(wrap), plain_stitching(back)) == (0, 28, 34)


@pytest.mark.parametrize(
    ("made", "number", "length"),
    [
        (Made(), 1, 0),
        (Made(DrawnUp("top", Fraction(20))), 1, 80),  # two lines of 40 to gather by
        (Made(DrawnUp("top", Fraction(0))), 1, 80),
        (Made(DrawnUp("top", Fraction(20), ((Fraction(1), Fraction(2)),))), 1, 0),  # pleats need no thread
        (Made(stitched=Fraction(60)), 1, 60),
        (Made(), 3, 4),  # two joins 2 in long
        (Made(stitched=Fraction(60)), 3, 64),
    ],
)
def test_a_piece_is_sewn_by_what_is_made_of_it(back: Piece, made: Made, number: int, length: int) -> None:
    part = replace(back.parts[0], cut_across=Fraction(40))
    joined = Lengths(number, Fraction(50), Fraction(2), Fraction(1, 2), slanting=False)
    strip = replace(back, edges={}, parts=(part,), lengths=joined, made=made)
    assert plain_stitching(strip) == length
    # A join goes over the whole width of the strip, also where each length is shorter than that.
    short = replace(strip, lengths=replace(joined, across=Fraction(1)))
    assert plain_stitching(short) == length
    # From corner to corner of a square a join is nearly the root of two, 17/12, longer.
    slanting = replace(strip, lengths=replace(joined, slanting=True))
    assert plain_stitching(slanting) == length + (number - 1) * 2 * Fraction(5, 12)


def test_thread_is_told_in_whole_yards_or_metres_and_nothing_sewn_takes_none(back: Piece) -> None:
    assert (written_thread(Fraction(21, 10) * YARD, INCH), written_thread(61 * METRE, METRIC)) == ("3 yd", "61 m")
    sewing = Sewing(100 * YARD, Fraction(1, 5), Fraction(10), lambda _cloth: Fraction(0))
    unsewn = replace(back, edges={}, made=Made())
    assert thread_use([unsewn], [], {}, sewing, INCH) == ThreadUse(Fraction(0), "none", 0)
