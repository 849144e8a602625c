"""What a file may ask of tucks, finishes and names: number, sample, stripes, bindings; whole refusals."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, inches, put, sheet, warnings

from generator.calculation.worked import TuckSet

MARGIN = "      margin: 3/4 in to 1 1/2 in or 2 cm to 3 cm\n"
# Without rows no turn plan asks for a number of its own.
PLAIN = put(
    CUSHION,
    (
        "    rows:\n      plan: linked cells\n      spacing: 3 in or 7.5 cm\n"
        "      first: 1 in to 3 in or 3 cm to 7 cm\n      start: right\n",
        "",
    ),
    ("  - use: rule rows, sew rows, trim\n    on: front\n    session ends: yes\n", ""),
)


def tucks(folder: Path, text: str) -> TuckSet:
    panel = sheet(folder, text, "medium").pieces["front"].panel
    assert panel is not None
    return panel.across


def numbered(number: str) -> str:
    return put(PLAIN, (MARGIN, f"      number: {number}\n{MARGIN}"))


@pytest.mark.parametrize(
    ("number", "count", "margin"),
    [
        # 16 - (n - 1) x 3/4, halved: 19 tucks leave 1 1/4, 20 leave 7/8; both are within 3/4 to 1 1/2.
        ("odd", 19, "1 1/4"),
        ("even", 20, "7/8"),
        ("multiple of 10", 20, "7/8"),
        ("multiple of 19", 19, "1 1/4"),
        ("multiple of 1", None, ""),
        ("19", 19, "1 1/4"),
    ],
)
def test_the_number_of_tucks_may_be_asked_for(tmp_path: Path, number: str, count: int | None, margin: str) -> None:
    found = tucks(tmp_path, numbered(number))
    if count is None:
        assert found.marks == tucks(tmp_path, PLAIN).marks
    else:
        assert (found.count, found.left_margin, found.right_margin) == (count, *inches(margin) * 2)


def test_a_multiple_of_nothing_is_refused(tmp_path: Path) -> None:
    text = numbered("multiple of (2 - 2)")
    assert [one.split(" ", 1)[1] for one in faults(tmp_path, text, "medium")] == [
        "the number of tucks is to be a multiple of 0; write 1 or more (size medium, inch)"
    ]


def test_a_mirrored_panel_has_its_middle_pitch_between_its_halves(tmp_path: Path) -> None:
    runs = (
        "      runs:\n        - number: 3\n          depth: 1/4 in\n          pitch: 1 in\n"
        "          pitch after: 2 in\n"
        "        - number: 2\n          depth: 1/4 in to 1/2 in\n          pitch: 1 1/4 in\n"
        "      mirror: yes\n      middle pitch: 3 in\n"
    )
    text = put(
        PLAIN,
        ("      depth: 3/8 in or 1 cm\n      spacing: 1 1/2 in or 4 cm\n", runs),
        (MARGIN, "      margin: 1/2 in to 4 in\n"),
    )
    found = tucks(tmp_path, text)
    # Three of 1/4, then from 1/4 to 1/2 in two, and the same backwards.
    assert found.depths == tuple(inches("1/4, 1/4, 1/4, 1/4, 1/2, 1/2, 1/4, 1/4, 1/4, 1/4"))
    # Stitching to stitching, left to left, on the finished panel: 1, 1, 2, 1 1/4, then 3 in the middle, and back.
    assert found.pitches == tuple(inches("1, 1, 2, 1 1/4, 3, 1 1/4, 2, 1, 1"))
    # 2 x (1 + 1 + 2 + 1 1/4) + 3 = 13 1/2 of 16 are taken: 1 1/4 at both sides.
    assert (found.left_margin, found.right_margin) == tuple(inches("1 1/4, 1 1/4"))


def bound(width: str, more: str = "") -> str:
    rim = f"  rim:\n    kind: binding\n    length: 64 in or 160 cm\n    width: {width} in or 1 cm\n"
    return put(
        CUSHION, ("edges that meet:", f"{more}{rim}edges that meet:"), ("all: seam 1/2 in or 1.5 cm", "all: bound")
    )


def test_a_bound_edge_without_a_width_is_as_wide_as_the_binding(tmp_path: Path) -> None:
    front = sheet(tmp_path, bound("3/8"), "medium").pieces["front"]
    assert {edge.end.kind for edge in front.edges.values()} == {"bound"}
    assert {edge.end.first for edge in front.edges.values()} == set(inches("3/8"))


def test_a_bound_edge_may_say_its_own_width(tmp_path: Path) -> None:
    text = put(bound("3/8"), ("all: bound", "all: bound 1/4 in"))
    assert {edge.end.first for edge in sheet(tmp_path, text, "medium").pieces["front"].edges.values()} == set(
        inches("1/4")
    )


def test_an_edge_without_an_allowance_has_that_of_the_room_or_of_the_project(tmp_path: Path) -> None:
    bare = put(CUSHION, ("all: seam 1/2 in or 1.5 cm", "all: seam"))
    own = put(bare, ("sizes:\n", "seam: 3/8 in or 1 cm\nsizes:\n"))
    room = sheet(tmp_path, bare, "medium", site="seam: 1 in or 2.5 cm\n")
    assert room.pieces["front"].edges["top"].allowance == 1
    assert sheet(tmp_path, own, "medium").pieces["front"].edges["top"].allowance == inches("3/8")[0]


def test_a_panel_cut_after_another_or_to_shape_says_so(tmp_path: Path) -> None:
    later = sheet(
        tmp_path, put(CUSHION, ("kind: tucked panel\n", "kind: tucked panel\n    cut: after the panel\n")), "medium"
    )
    first = sheet(tmp_path, CUSHION, "medium").pieces["front"]
    assert (later.pieces["front"].after_panel, first.after_panel, first.shaped) == (True, False, False)
    assert (first.kind, len(first.parts), first.measures["quantity"]) == ("tucked panel", 1, 1)
    assert first.panel is not None
    # 18 1/4 are cut of 17 in with seams: 1 1/4 in extra, half of it at either end.
    assert (first.panel.trim_along, first.panel.sampled, first.panel.breadths) == (inches("5/8")[0], False, ())
    # What is off by no more than is fine asks for nothing.
    within = {point.after: point.within for point in first.panel.checks.points}
    assert first.panel.checks.corrections
    assert all(abs(step.off) > within[step.after] for step in first.panel.checks.corrections)


def test_a_panel_without_rows_has_nothing_to_trim(tmp_path: Path) -> None:
    plain = sheet(tmp_path, PLAIN, "medium").pieces["front"]
    assert plain.panel is not None
    assert (plain.panel.trim_along, plain.panel.rows, plain.cut_along) == (0, None, 17)


def test_folds_on_whole_repeats_are_warned_of_nowhere(tmp_path: Path) -> None:
    text = put(CUSHION, ("label: cotton", "label: cotton\n    stripes: navy 1 in, white 1/2 in\n    fold on: white"))
    assert warnings(sheet(tmp_path, text, "medium")) == []


def test_a_lone_tuck_has_its_space_up_to_the_right_edge(tmp_path: Path) -> None:
    cloth = "label: cotton\n    stripes: navy 3 in, white 3 in\n    fold on: white"
    one = put(numbered("1"), ("label: cotton", cloth), ("margin: 3/4 in to 1 1/2 in", "margin: 7 in to 9 in"))
    panel = sheet(tmp_path, one, "medium").pieces["front"].panel
    assert panel is not None
    assert panel.stripes is not None
    # Margins 8; the fold at 1/2 + 8 + 3/8 = 8 7/8. The middle of the white is 4 1/2: 4 1/2 - 8 7/8 + 6 = 1 5/8.
    assert panel.across.marks == tuple(inches("8 7/8"))
    assert panel.stripes.start == inches("1 5/8")[0]


def test_a_measure_that_fails_is_told_once_however_often_it_is_asked(tmp_path: Path) -> None:
    text = put(
        CUSHION, ("lap: larger(side / 4, 3 in)", "lap: side / (side - side) * 1 in"), ("title: Close", "title: Close")
    )
    twice = put(text, ("overlap: lap", "overlap: lap + lap"), ("{{ lap }}", "{{ lap }} and {{ lap + lap }}"))
    assert [one.split(" ", 1)[1] for one in faults(tmp_path, twice, "medium")] == [
        "something is divided by a value that comes to nothing (size medium, inch)"
    ]
