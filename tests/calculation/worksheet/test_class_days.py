"""The days of a class, what is cut beforehand, and what a teacher is told of time and cloth."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from class_on_disk import CLASS, TIMED, the_class
from rooms_on_disk import put

from generator.calculation.making.classes import Kit
from generator.calculation.making.timetable import clock
from generator.errors import FaultyFileError


def test_the_timetable_follows_the_beginners(tmp_path: Path) -> None:
    # Minutes of the sheet doubled: cut 30, fold and stitch 120, rows 80 (a session may end), back 20, closing 40: 290.
    # 3 h less a break of 15 are 165 minutes, 2 1/2 h are 150.  The first ends after the stitching, at 150, for going on
    # would break the rows off; 140 are left for the second.  No step ends near the middle of the first session, so the
    # break stands there: 80 minutes on, within the stitching.
    found = the_class(tmp_path, CLASS, TIMED)
    first, second = found.timetable.sessions
    assert [(clock(entry.starts), entry.minutes, entry.step) for entry in first.entries if entry.minutes] == [
        ("9:30", 30, 1),
        ("10:00", 50, 2),
        ("10:50", 15, 0),
        ("11:05", 70, 2),
    ]
    assert [(clock(entry.starts), entry.minutes) for entry in second.entries if entry.minutes] == [
        ("9:30", 80),
        ("10:50", 20),
        ("11:10", 40),
    ]
    assert (first.spare, second.spare, found.timetable.left_over) == (15, 10, 0)
    assert found.preparation == 0


def test_what_is_cut_beforehand_leaves_the_timetable(tmp_path: Path) -> None:
    # A kit has three parts to cut, the front is one: two thirds of the doubled 15 minutes are left, 20.
    # Before the class the room cuts three fronts at 5 minutes each.
    text = put(CLASS, ("    own cloth: yes\n", "    number: 1\n")) + "cut beforehand: front\n"
    found = the_class(tmp_path, put(text, ("  - size: small\n    number: 1\n", "")), TIMED)
    cutting = found.timetable.sessions[0].entries[0]
    assert (cutting.title, cutting.minutes) == ("Cut the pieces (front cut beforehand)", 20)
    assert found.preparation == 15


def test_a_piece_that_waits_for_the_panel_is_not_cut_beforehand(tmp_path: Path) -> None:
    later = put(TIMED, ("    kind: envelope back\n", "    kind: envelope back\n    cut: after the panel\n"))
    text = put(CLASS, ("  - size: small\n    own cloth: yes\n", "")) + "cut beforehand: front, back\n"
    found = the_class(tmp_path, text, later)
    assert [finding.text for finding in found.findings] == [
        "back is cut to the sewn panel, so it cannot be cut beforehand"
    ]
    assert found.kits[0].beforehand == ("front",)
    # Only the front is cut at once, and that is done.
    cutting = found.timetable.sessions[0].entries[0]
    assert (cutting.title, cutting.minutes) == ("Cut the pieces (front cut beforehand)", 0)


def test_who_brings_cloth_cuts_all_of_it_in_the_class(tmp_path: Path) -> None:
    # The small kit, whose place brings cloth, is now the one that takes longest: nothing of it is cut beforehand.
    found = the_class(tmp_path, CLASS + "cut beforehand: front, back\n", TIMED)
    assert found.slowest.kit == Kit("small", "inch")
    cutting = found.timetable.sessions[0].entries[0]
    assert (cutting.title, cutting.minutes) == ("Cut the pieces", 30)


def test_work_that_the_sessions_cannot_hold_is_said(tmp_path: Path) -> None:
    # 290 minutes of work; one session of 165 is left.
    text = put(CLASS, ("  - day: 2031-03-15\n    starts: 9:30\n    ends: 12:00\n", ""))
    assert [finding.text for finding in the_class(tmp_path, text, TIMED).findings] == [
        "the work takes 4:50 h and the sessions hold 2:45 h of it; 125 minutes are left over: cut more beforehand, "
        "or add time"
    ]


def test_a_narrower_cloth_that_changes_the_cutting_is_said(tmp_path: Path) -> None:
    # The medium front is 32 across; on 30 it is joined from two breadths, which its handout does not say.
    found = the_class(tmp_path, CLASS + "cloths:\n  face:\n    width: 30 in or 76 cm\n", TIMED)
    assert [finding.text for finding in found.findings] == [
        "on the cloth of this class front of size medium is cut otherwise than its handout says, because the cloth has "
        "another width: go by the kit slips"
    ]
    assert found.cloths["face"].use.width == 30
    assert sum(piece.label.startswith("front, breadth") for piece in found.cloths["face"].use.layout.placed) == 6


def test_a_wider_cloth_that_changes_nothing_is_not_spoken_of(tmp_path: Path) -> None:
    # On 60: a front of 32 leaves 28 for two halves of 12 1/2: three strips of 18 1/4.
    found = the_class(tmp_path, CLASS + "cloths:\n  face:\n    width: 60 in or 152 cm\n", TIMED)
    assert found.findings == ()
    assert found.cloths["face"].use.layout.length == Fraction(219, 4)


def test_a_remnant_too_short_for_the_class_is_said(tmp_path: Path) -> None:
    # 2 1/2 yd are needed, 2 yd are there; a single kit needs only one.
    short = put(TIMED, ("label: cotton\n", "label: cotton\n    length: 2 yd or 1.8 m\n"))
    assert [finding.text for finding in the_class(tmp_path, of=short).findings] == [
        "the piece of 'face' is too short for this class: 2 yd is there, 2 1/2 yd is needed"
    ]


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            ("breaks: 15 minutes", "breaks: 180 minutes"),
            "site/classes/mornings.yaml:8:5: the session on 2031-03-08 has no time to sew: 9:30 to 12:30 with a break "
            "of 180 minutes",
        ),
        (
            ("places:\n", "cloths:\n  face:\n    width: 10 in or 25 cm\nplaces:\n"),
            "site/classes/mornings.yaml:17:5: back is 12 1/2 in across, but the cloth is only 10 in wide; take a wider "
            "cloth, or write it as two pieces that meet in a seam (size medium, inch)",
        ),
    ],
)
def test_a_class_that_cannot_be_held_is_refused_at_its_line(tmp_path: Path, change: tuple[str, str], says: str) -> None:
    only_medium = put(CLASS, ("  - size: small\n    own cloth: yes\n", ""))
    with pytest.raises(FaultyFileError) as refused:
        the_class(tmp_path, put(only_medium, change))
    assert [str(finding) for finding in refused.value.findings if finding.level == "error"] == [says]
