"""What closes a thing and can hurt a child: ties at a neck are refused, snaps bring their caution along."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import faults, put, sheet, warnings
from test_enclosed_seams import bag

SEAM = "seam 1/2 in or 1.5 cm"
CLOSED = """\
closures:
  - kind: KIND
    number: 1
    on: front.top
    onto: back.top
    overlap: 1 in or 2.5 cm
edges that meet:
"""
TOLD = (
    "a tie at a child's neck can strangle; close it with snaps, buttons or hook and loop, and keep ties below the arms"
)


def closed(kind: str, *, children: bool = True, named: str = "front") -> str:
    text = put(bag(SEAM), ("edges that meet:\n", CLOSED.replace("KIND", kind)))
    text = put(text, ("kind: bag\n", "kind: bag\ncautions: small children\n")) if children else text
    return text.replace("front", named)


@pytest.mark.parametrize("named", ["neck band", "collar"])
def test_a_tie_at_the_neck_of_a_child_is_refused_with_its_line(tmp_path: Path, named: str) -> None:
    text = closed("ties", named=named)
    line = text[: text.index("  - kind: ties")].count("\n") + 1
    assert any(
        fault.startswith(f"projects/jetty.yaml:{line}:") and TOLD in fault for fault in faults(tmp_path, text, "medium")
    )


@pytest.mark.parametrize(
    ("kind", "children", "named"), [("snaps", True, "collar"), ("ties", False, "collar"), ("ties", True, "front")]
)
def test_other_closures_other_places_and_grown_ups_are_not(
    tmp_path: Path, kind: str, named: str, *, children: bool
) -> None:
    found = sheet(tmp_path, closed(kind, children=children, named=named), "medium")
    assert not any("strangle" in told for told in warnings(found))


@pytest.mark.parametrize(("kind", "caution"), [("snaps", "small parts"), ("magnet", "magnets")])
def test_snaps_and_magnets_bring_their_caution_to_page_one(tmp_path: Path, kind: str, caution: str) -> None:
    assert caution in sheet(tmp_path, closed(kind, children=False), "medium").told_first


def test_hook_and_loop_brings_none(tmp_path: Path) -> None:
    assert sheet(tmp_path, closed("hook and loop", children=False), "medium").told_first == ()
