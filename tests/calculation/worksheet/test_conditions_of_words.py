"""What the words of a step ask of rows, seams and the whole project, each answered by a hand-made file."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, put, scope_of, sheet

from generator.calculation.worksheet.conditions import holds
from generator.calculation.worksheet.row_bulk import bulk_words, bulky_rows, row_runs
from generator.lengths import INCH

MEETS = "  - join: front.all\n    to: back.all\n"


def holding(folder: Path, text: str, *names: str, asked: set[str]) -> set[str]:
    scope = scope_of(folder, text)
    pieces = [scope.piece(name) for name in names]
    return {one for one in asked if holds(one, pieces, scope)}


@pytest.mark.parametrize(
    ("edges", "told"),
    [
        (("front.top", "back.top"), {"crosses tucks"}),
        (("front.left", "back.left"), {"along tucks"}),
        (("front.all", "back.all"), {"crosses tucks", "along tucks"}),
        # No tuck lies in the back.
        (("back.top", "back.bottom"), set()),
    ],
)
def test_a_seam_crosses_tucks_or_runs_along_them(tmp_path: Path, edges: tuple[str, str], told: set[str]) -> None:
    text = put(CUSHION, (MEETS, f"  - join: {edges[0]}\n    to: {edges[1]}\n"))
    asked = {"crosses tucks", "along tucks"}
    assert holding(tmp_path, text, "front", "back", asked=asked) == told
    # A step on the front alone sews nothing to it.
    assert holding(tmp_path, text, "front", asked=asked) == set()


def test_others_wait_where_a_piece_that_is_cut_after_the_panel_follows_its_length(tmp_path: Path) -> None:
    waits = put(CUSHION, ("kind: envelope back\n", "kind: envelope back\n    cut: after the panel\n"))
    back = "finished across: front.across\n    finished along: "
    follows = put(waits, (f"{back}side", f"{back}front.along"))
    assert holding(tmp_path, follows, "front", asked={"others wait"}) == {"others wait"}
    # It is cut as long as planned, whatever the front comes to.
    assert holding(tmp_path, waits, "front", asked={"others wait"}) == set()
    assert holding(tmp_path, CUSHION, "front", asked={"others wait"}) == set()


def test_a_margin_is_wide_from_four_inches(tmp_path: Path) -> None:
    def with_margin(span: str) -> str:
        return put(CUSHION, ("margin: 3/4 in to 1 1/2 in", f"left margin: 1 in\n      right margin: {span}"))

    spans = ("1 in to 3 in", "4 in to 6 in")
    assert [holding(tmp_path, with_margin(span), "front", asked={"wide margin"}) for span in spans] == [
        set(),
        {"wide margin"},
    ]


def test_rows_begun_by_bulk_have_no_more_than_half_of_the_panel_under_the_arm(tmp_path: Path) -> None:
    # 18 1/4 in long, rows at 1 5/8 and every 3: three lie in the upper half and begin at the left, three in the lower.
    bulk = put(CUSHION, ("start: right", "start: by bulk"))
    front = sheet(tmp_path, bulk, "medium").pieces["front"]
    assert front.panel is not None
    assert front.panel.rows is not None
    assert [row.start for row in front.panel.rows.rows] == ["left"] * 3 + ["right"] * 3
    assert bulky_rows(front, INCH) == ()
    assert row_runs(front) == "Rows 1 to 3 begin at the left, rows 4 to 6 begin at the right"
    asked = {"by bulk", "under the arm", "back and forth"}
    assert holding(tmp_path, bulk, "front", asked=asked) == {"by bulk"}
    # Begun at the right, row 1 has 16 5/8 in below it, row 2 13 5/8 and row 3 10 5/8; row 4 has 7 5/8, less than 8.
    plain = sheet(tmp_path, CUSHION, "medium").pieces["front"]
    assert bulk_words(plain, INCH) == "Rows 1 to 3"
    assert holding(tmp_path, CUSHION, "front", asked=asked) == {"under the arm"}
    # Begun at the left, the lower rows have what lies above them: 10 5/8, 13 5/8 and 16 5/8.
    left = sheet(tmp_path, put(CUSHION, ("start: right", "start: left")), "medium").pieces["front"]
    assert bulk_words(left, INCH) == "Rows 4 to 6"


def started(folder: Path, text: str, site: str = "") -> list[str]:
    panel = sheet(folder, text, "medium", site=site).pieces["front"].panel
    assert panel is not None
    assert panel.rows is not None
    return [row.start for row in panel.rows.rows]


UNSAID = ("      start: right\n", "")
SHORT = ("side: 16 in or 40 cm", "side: 8 in or 20 cm")


def test_rows_begin_by_bulk_where_a_project_does_not_say_where(tmp_path: Path) -> None:
    bulk = put(CUSHION, ("start: right", "start: by bulk"))
    assert started(tmp_path, put(CUSHION, UNSAID)) == started(tmp_path, bulk) == ["left"] * 3 + ["right"] * 3


def test_a_room_may_say_no_to_bulk_and_a_project_may_still_ask_for_it(tmp_path: Path) -> None:
    no = "rows by bulk: no\n"
    assert started(tmp_path, put(CUSHION, UNSAID), site=no) == ["right"] * 6
    bulk = put(CUSHION, ("start: right", "start: by bulk"))
    assert started(tmp_path, bulk, site=no) == ["left"] * 3 + ["right"] * 3


def test_rows_to_and_fro_begin_at_the_right_where_a_project_does_not_say_where(tmp_path: Path) -> None:
    text = put(CUSHION, ("      start: right\n", "      back and forth: yes\n"))
    assert started(tmp_path, text) == ["right", "left"] * 3
    assert holding(tmp_path, text, "front", asked={"by bulk", "back and forth"}) == {"back and forth"}


def test_a_panel_that_lies_flat_under_the_arm_begins_all_its_rows_at_the_right(tmp_path: Path) -> None:
    # Begun at the right, row 1 of a panel 9 in and a little more long has less than 8 in below it.
    small = put(CUSHION, ("start: right", "start: by bulk"), SHORT)
    front = sheet(tmp_path, small, "medium").pieces["front"]
    assert front.panel is not None
    assert front.panel.rows is not None
    first = front.panel.rows.rows[0]
    assert front.cut_along - first.ruled <= 8 < front.cut_along
    assert {row.start for row in front.panel.rows.rows} == {"right"}
    assert holding(tmp_path, small, "front", asked={"by bulk", "under the arm"}) == set()


def test_a_row_begun_at_the_other_end_is_told_backwards_with_its_words_exchanged(tmp_path: Path) -> None:
    by_bulk, right = (
        sheet(tmp_path, put(CUSHION, ("start: right", f"start: {start}")), "medium").pieces["front"].panel
        for start in ("by bulk", "right")
    )
    assert by_bulk is not None
    assert by_bulk.rows is not None
    assert right is not None
    assert right.rows is not None
    other = {"toward": "away", "away": "toward", "upright": "upright"}
    first, same = by_bulk.rows.rows[0], right.rows.rows[0]
    assert first.turns == same.turns
    assert first.words == tuple(other[word] for word in reversed(same.words))


def test_to_and_fro_does_not_go_with_bulk(tmp_path: Path) -> None:
    text = put(CUSHION, ("start: right", "start: by bulk\n      back and forth: yes"))
    line = text.splitlines().index("      back and forth: yes") + 1
    assert faults(tmp_path, text, "medium") == [
        f"projects/jetty.yaml:{line}:7: 'back and forth' does not go with 'start: by bulk', which chooses the end of "
        "every row; take one out"
    ]
