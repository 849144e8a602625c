"""What a strip goes along: runs of edges as files write them, whether they have corners, ends, curves."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, put, scope_of

from generator.calculation.worksheet.conditions import holds
from generator.calculation.worksheet.followed import closed, edges_of, followed, round_corners, straight

FLAP = "flap.left and flap.bottom and flap.right"
RIM = "  rim:\n    kind: binding\n    length: 64 in or 160 cm\n    width: 1/2 in or 1 cm\n"
MEETS = "  - join: front.all\n    to: back.all\n"


def test_a_run_is_read_as_a_file_may_write_it() -> None:
    assert edges_of("front.top") == (("front", "top"),)
    assert edges_of(" end panel.top   and plain-middle.top ") == (("end panel", "top"), ("plain middle", "top"))


def test_a_strip_follows_what_its_long_edge_is_sewn_to_from_either_side_of_a_meeting() -> None:
    meetings = [
        (edges_of("flap.top"), edges_of("bag.top")),
        (edges_of(FLAP), edges_of("rim.edge")),
        (edges_of("rim.edge"), edges_of("end.rim")),
    ]
    assert followed(meetings, "rim") == (edges_of(FLAP), edges_of("end.rim"))
    assert followed(meetings, "bag") == ()


@pytest.mark.parametrize(
    ("run", "corners", "round_", "plain"),
    [
        ("front.all", True, True, True),
        (FLAP, True, False, True),
        ("front.left and front.top and front.right and front.bottom", True, True, True),
        ("front.top", False, False, True),
        # One edge goes on in the next piece: no corner lies between them.
        ("end panel.top and middle.top", False, False, True),
        # Two edges of one piece that lie opposite each other do not meet in a corner.
        ("front.left and front.right", False, False, True),
        ("end.rim", False, True, False),
        ("ring.top", False, True, True),
        ("ring.left", False, False, True),
    ],
)
def test_corners_ends_and_curves_are_those_of_the_edges(run: str, corners: bool, round_: bool, plain: bool) -> None:
    runs = (edges_of(run),)
    assert (round_corners(runs), closed(runs, {"ring"}), straight(runs)) == (corners, round_, plain)


def test_a_strip_that_is_sewn_to_nothing_goes_nowhere() -> None:
    assert not round_corners(())
    assert not closed((), ())
    assert not straight(())


@pytest.mark.parametrize(
    ("other", "asked"),
    [("front.all", {"corners", "round", "straight"}), ("front.top", {"straight"})],
)
def test_a_step_on_a_binding_asks_about_its_way(tmp_path: Path, other: str, asked: set[str]) -> None:
    text = put(
        CUSHION,
        ("edges that meet:", f"{RIM}edges that meet:"),
        (MEETS, f"{MEETS}  - join: {other}\n    to: rim.edge\n    ease: 64 in or 160 cm\n"),
    )
    scope = scope_of(tmp_path, text)
    assert {one for one in ("corners", "round", "straight") if holds(one, [scope.piece("rim")], scope)} == asked
    assert not any(holds(one, [scope.piece("back")], scope) for one in ("corners", "round", "straight"))
    assert not any(holds(one, [], scope) for one in ("corners", "round", "straight"))
