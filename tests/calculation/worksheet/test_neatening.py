"""How raw edges are kept from fraying: what the step says, its tools, its thread by hand; what is refused."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import faults, sheet
from test_enclosed_seams import bag, step_called

SEAM = "seam 5/8 in or 1.5 cm"


def made(way: str, other: str = "") -> str:
    text = bag(SEAM)
    front, back = "    kind: tucked panel\n", "    kind: rectangle\n"
    return text.replace(front, f"{front}    neaten: {way}\n").replace(back, f"{back}    neaten: {other or way}\n")


@pytest.mark.parametrize(
    ("way", "tool", "words"),
    [
        ("zigzag", "machine", "with a zigzag stitch"),
        ("overlock", "overlock machine", "through the overlock machine"),
        ("pinked", "pinking shears", "with the pinking shears"),
    ],
)
def test_the_step_says_how(tmp_path: Path, way: str, tool: str, words: str) -> None:
    step = step_called(sheet(tmp_path, made(way), "medium").steps, "Neaten")
    assert words in step.text
    assert tool in step.tools
    others = {"with a zigzag stitch", "through the overlock machine", "with the pinking shears"} - {words}
    assert not any(other in step.text for other in others)


def test_what_is_not_neatened_has_no_step(tmp_path: Path) -> None:
    found = sheet(tmp_path, made("none"), "medium")
    assert not any(step.title.startswith("Neaten") for step in found.steps)
    assert not any("stays raw" in str(finding) for finding in found.findings)


def test_thread_of_neatening_by_hand(tmp_path: Path) -> None:
    # Three seams of 14, 14 and 10 in are neatened: 38 in. Zigzag 38 x 5 1/2 = 209, overlock 38 x 14 = 532, and a fifth
    # for ends and waste on all of it; pinked takes none.
    lengths = {
        way: sheet(tmp_path / way, made(way), "medium").thread.length for way in ("zigzag", "overlock", "pinked")
    }
    assert lengths["zigzag"] - lengths["pinked"] == 209 * Fraction(6, 5)
    assert lengths["overlock"] - lengths["pinked"] == 532 * Fraction(6, 5)


def test_both_pieces_of_a_seam_say_the_same(tmp_path: Path) -> None:
    told = "both edges of a seam are neatened together, and here 'front' zigzag and 'back' pinked"
    assert any(told in fault for fault in faults(tmp_path, made("zigzag", "pinked"), "medium"))


def by_edge(bottom: str, rest: str) -> str:
    """The bag with its bottom neatened in one way, and all other edges in another."""
    text, said = bag(SEAM), f"    neaten:\n      bottom: {bottom}\n      all: {rest}\n"
    front, back = "    kind: tucked panel\n", "    kind: rectangle\n"
    return text.replace(front, f"{front}{said}").replace(back, f"{back}{said}")


def test_each_edge_may_be_neatened_in_its_own_way(tmp_path: Path) -> None:
    found = sheet(tmp_path, by_edge("pinked", "overlock"), "medium")
    steps = [step for step in found.steps if step.title.startswith("Neaten")]
    text = " ".join(step.text for step in steps)
    assert "with the pinking shears" in text
    assert "through the overlock machine" in text
    assert {"pinking shears", "overlock machine"} <= {tool for step in steps for tool in step.tools}
    assert any("- pinking shears: the bottom edge of the front" in step.text for step in steps)
    # The sides, 14 in each, take 14 times their length; the bottom, pinked, takes none.
    bare = sheet(tmp_path / "pinked", made("pinked"), "medium").thread.length
    assert found.thread.length - bare == 2 * 14 * 14 * Fraction(6, 5)


def test_edges_of_a_seam_that_say_different_things_are_told_by_edge(tmp_path: Path) -> None:
    text = by_edge("pinked", "overlock").replace("bottom: pinked", "bottom: none", 1)
    told = "both edges of a seam are neatened together, and here 'front.bottom' none and 'back.bottom' pinked"
    assert any(told in fault for fault in faults(tmp_path, text, "medium"))
