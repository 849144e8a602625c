"""Every panel of the room, sewn on paper: folded again at its printed marks it measures what its sheet says."""

from fractions import Fraction
from itertools import pairwise
from pathlib import Path

from sewable_room import ROOT, every_sheet, panels, sheets_of

from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_project import Worksheet
from generator.lengths import MILLIMETRE, on_step

# Where marks of equal tucks without a sample fall at worst. A caught hem moves its first mark by two for each one that
# the margin moves, so marks beside it fall on eighths.
EASY = {"inch": Fraction(1, 4), "metric": 5 * MILLIMETRE}
EASY_BESIDE_A_CAUGHT_HEM = {"inch": Fraction(1, 8), "metric": 5 * MILLIMETRE}


def sewn_width(tucks: TuckSet) -> Fraction:
    """Walk over the flat cloth from left to right and add up what shows when it is folded at the marks.

    Every place on the cloth is in an allowance, in a tuck (half its take-up on each side of its mark), or shows.
    """
    hidden = [
        (mark - take_up / 2, mark + take_up / 2) for mark, take_up in zip(tucks.marks, tucks.take_ups, strict=True)
    ]
    under_left = tucks.marks[0] / 2 if tucks.left.kind == "caught hem" else plain_under(tucks, "left")
    far = tucks.cut - tucks.marks[-1]
    under_right = far / 2 if tucks.right.kind == "caught hem" else plain_under(tucks, "right")
    hidden = [(Fraction(0), under_left), *hidden, (tucks.cut - under_right, tucks.cut)]
    shown = Fraction(0)
    for (_, left_off), (starts, _) in pairwise(hidden):
        assert starts >= left_off, "two folds need the same cloth"
        shown += starts - left_off
    return shown


def plain_under(tucks: TuckSet, side: str) -> Fraction:
    end = tucks.left if side == "left" else tucks.right
    return end.first + end.second if end.kind in ("seam", "hem", "turnover") else Fraction(0)


def tuck_sets(panel: Panel) -> list[TuckSet]:
    return [panel.across] if panel.cross is None else [panel.across, panel.cross]


@every_sheet
def test_a_panel_folded_at_its_marks_is_as_wide_as_its_sheet_says(path: Path) -> None:
    for sheet in sheets_of(path):
        for name, panel in panels(sheet):
            piece = sheet.pieces[name]
            assert sewn_width(panel.across) == panel.across.finished == piece.finished_across
            if panel.cross is not None:
                assert sewn_width(panel.cross) == panel.cross.finished == piece.finished_along


@every_sheet
def test_a_panel_finishes_as_its_file_asks_to_less_than_a_mark(path: Path) -> None:
    for sheet in sheets_of(path):
        for _, panel in panels(sheet):
            for tucks in tuck_sets(panel):
                assert abs(tucks.finished - tucks.asked) < sheet.edition.mark


@every_sheet
def test_every_printed_mark_lies_on_the_ruler(path: Path) -> None:
    for sheet in sheets_of(path):
        mark = sheet.edition.mark
        for name, panel in panels(sheet):
            printed = [*(place for tucks in tuck_sets(panel) for place in tucks.marks), *panel.breadths]
            printed += [sheet.pieces[name].cut_across, sheet.pieces[name].cut_along]
            printed += [row.ruled for row in panel.rows.rows] if panel.rows else []
            assert all(on_step(place, mark) for place in printed)


@every_sheet
def test_marks_of_equal_tucks_fall_on_easy_divisions(path: Path) -> None:
    for sheet in sheets_of(path):
        for name, panel in panels(sheet):
            if sheet.pieces[name].shape:
                continue  # Its paper is laid by the tucks, with room around: no margin is left to choose.
            for tucks in tuck_sets(panel):
                exact = all(take_up == 2 * depth for take_up, depth in zip(tucks.take_ups, tucks.depths, strict=True))
                if not exact or len(set(tucks.depths)) > 1:
                    continue
                caught = "caught hem" in (tucks.left.kind, tucks.right.kind)
                easy = (EASY_BESIDE_A_CAUGHT_HEM if caught else EASY)[sheet.edition.name]
                assert all(on_step(place, easy) for place in tucks.marks), f"{sheet.size}, {sheet.edition.name}"


@every_sheet
def test_no_outer_fold_is_caught_in_a_seam_or_a_binding(path: Path) -> None:
    for sheet in sheets_of(path):
        for _, panel in panels(sheet):
            tucks = panel.across
            rows = panel.rows.rows if panel.rows else ()
            for first, margin, end in ((True, tucks.left_margin, tucks.left), (False, tucks.right_margin, tucks.right)):
                place, out = (0, "<") if first else (-1, ">")
                turned_out = any(row.turns[place].value == out for row in rows)
                width = end.first if end.kind == "bound" else Fraction(0)
                assert margin >= (tucks.depths[place] + width if turned_out and not tucks.ring else Fraction(0))


@every_sheet
def test_every_row_ends_up_between_the_finished_edges(path: Path) -> None:
    for sheet in sheets_of(path):
        for name, panel in panels(sheet):
            for row in panel.rows.rows if panel.rows else ():
                assert 0 < row.least <= row.most < sheet.pieces[name].finished_along


@every_sheet
def test_edges_that_meet_are_equally_long(path: Path) -> None:
    for sheet in sheets_of(path):
        for meeting in sheet.meetings:
            apart = abs(meeting.join_length - meeting.to_length - meeting.ease)
            assert apart < sheet.edition.mark, f"{meeting.join} and {meeting.to} in {sheet.size}"


@every_sheet
def test_every_piece_fits_on_its_cloth(path: Path) -> None:
    for sheet in sheets_of(path):
        for use in sheet.cloths.values():
            for placed in use.layout.placed:
                assert placed.left >= 0
                assert placed.left + placed.across <= use.layout.width
                assert placed.top + placed.along <= use.layout.length
            assert use.buy >= use.layout.length


def test_the_seat_pad_for_a_chair_worked_by_hand() -> None:
    """Chair, inches: 32 in of cloth, seams of 1/2 in, 15 tucks 1/2 in deep, marked every 2 in from 2 in to 30 in.

    Each tuck hides 1 in, so 32 - 15 = 17 in are left, and 16 in between the seams. The first stitching lies
    2 - 1/2 = 1 1/2 in from the cut edge, 1 in from the seam; the last as far from the other: 16 - 1 - 14 x 1 = 1.
    """
    sheet = sheet_of("bosun-seat-pad", "chair", "inch")
    tucks = sheet.panels["top"].across
    assert (tucks.cut, tucks.count) == (32, 15)
    assert tucks.marks == tuple(Fraction(2 * number) for number in range(1, 16))
    assert (tucks.finished, tucks.left_margin, tucks.right_margin) == (16, 1, 1)


def test_the_breakfast_mat_worked_by_hand() -> None:
    """Breakfast, centimetres: bound, so the cut edge is the finished edge; 48 cm, 8 tucks 5 mm deep, from 4 to 18 cm.

    Each tuck hides 1 cm: 48 - 8 = 40. The first stitching lies 4 - 0.5 = 3.5 cm from the edge, the last
    18 - 0.5 - 7 = 10.5 cm, so that 40 - 10.5 = 29.5 cm stay plain.
    """
    sheet = sheet_of("tide-table-mats", "breakfast", "metric")
    tucks, centimetre = sheet.panels["mat"].across, 10 * MILLIMETRE
    assert tucks.cut == 48 * centimetre
    assert tucks.marks == tuple((4 + 2 * number) * centimetre for number in range(8))
    assert tucks.stitching[0] == Fraction(7, 2) * centimetre
    assert tucks.stitching[-1] == Fraction(21, 2) * centimetre
    assert (tucks.finished, tucks.right_margin) == (40 * centimetre, Fraction(59, 2) * centimetre)


def sheet_of(project: str, size: str, edition: str) -> Worksheet:
    found = sheets_of(ROOT / "projects" / f"{project}.yaml")
    return next(sheet for sheet in found if (sheet.size, sheet.edition.name) == (size, edition))
