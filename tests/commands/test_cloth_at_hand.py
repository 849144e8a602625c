"""``tuckwright explore PROJECT --have``: which sizes can be cut from the pieces of cloth that there are, by hand.

The cushion of 16 in: front 32 by 17 in, two backs of 12 1/2 by 17 in. That of 12 in: backs of 10 1/2 by 13 in, and the
front is 13 in long as well.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from room_here import CUSHION, room

from tests.room import Answer, put, run


def explored(folder: Path, *have: str, text: str = CUSHION, more: tuple[str, ...] = ()) -> Answer:
    options = [word for piece in have for word in ("--have", piece)]
    return run(room(folder, slip_cushion=text), "explore", "slip-cushion", *options, *more)


def said_of(size: str, told: Answer) -> str:
    """What is said of one size, on one line."""
    start = next(place for place, line in enumerate(told.lines) if line.startswith(f"{size}:"))
    lines = [told.lines[start]]
    for line in told.lines[start + 1 :]:
        if not line.startswith(" "):
            break
        lines.append(line.strip())
    return " ".join(lines)


def test_pieces_are_shared_out_to_what_there_is(tmp_path: Path) -> None:
    told = explored(tmp_path, "32x17", "25x17")
    assert told.code == 0
    assert told.lines[0].startswith("cotton: 32 by 17 in and 25 by 17 in, across by along the selvage")
    assert said_of("medium", told) == (
        "medium: yes 32 by 17 in: front, 32 by 17, at 0 and 0 "
        "25 by 17 in: back, 12 1/2 by 17, at 0 and 0; back, 12 1/2 by 17, at 12 1/2 and 0"
    )


def test_what_does_not_fit_in_any_way_is_a_plain_no(tmp_path: Path) -> None:
    # A sixteenth too narrow for both backs.
    told = explored(tmp_path, "32x17", "24 15/16 x 17")
    assert said_of("medium", told) == (
        "medium: no; as its sheet cuts them, the pieces do not fit with cuts across, down and across"
    )
    assert said_of("small", told).startswith("small: yes")


def test_the_grain_is_kept(tmp_path: Path) -> None:
    # 17 by 32 would hold the front only lying the other way of the cloth.
    assert said_of("medium", explored(tmp_path, "17x32", "25x17")).startswith("medium: no")


def test_a_piece_that_could_be_joined_otherwise_is_never_refused(tmp_path: Path) -> None:
    strip = (
        "  frill:\n    kind: strip\n    length: 60 in or 150 cm\n    width: 2 in or 5 cm\n    edges:\n      all: raw\n"
    )
    text = put(CUSHION, ("steps:\n", f"{strip}steps:\n"))
    # 60 on 44 are two lengths of 30 1/2. On 20 they would be four of 15 3/4; that is asked for too.
    told = explored(tmp_path, "32x17", "25x17", "20x8", text=text)
    assert said_of("medium", told).startswith("medium: yes")
    short = explored(tmp_path, "32x17", "25x17", text=text)
    assert said_of("medium", short) == "medium: not certain; a piece that is joined could be joined otherwise"


def test_a_pattern_is_not_promised_to_match(tmp_path: Path) -> None:
    text = put(
        CUSHION,
        ("label: cotton", "label: cotton\n    pattern repeat: 9 in or 20 cm"),
        ("  front:\n", "  front:\n    quantity: 2\n"),
    )
    told = explored(tmp_path, "44x90", text=text)
    assert said_of("medium", told) == "medium: not certain; its pattern must match, which the places here do not see"


def test_metric_cloth_is_told_in_centimetres(tmp_path: Path) -> None:
    told = explored(tmp_path, "112x100", more=("--edition", "metric"))
    assert told.lines[0].startswith("cotton: 112 by 100 cm, across by along")
    assert said_of("small", told).startswith("small: yes 112 by 100 cm: front,")


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (
            ("slip-cushion",),
            "Error: name a project and the pieces of cloth that you have: 'explore PROJECT --have 30x18'",
        ),
        (
            ("--have", "30x18"),
            "Error: name a project and the pieces of cloth that you have: 'explore PROJECT --have 30x18'",
        ),
        (
            ("slip-cushion", "--have", "30"),
            "Error: Invalid value for --have: '30': write across by along the selvage, such as 30x18",
        ),
        (
            ("slip-cushion", "--have", "30x0"),
            "Error: Invalid value for --have: nothing cannot be worked with; write a length such as 3/8",
        ),
        (
            ("slip-cushion", "--have", "30x18", "--of", "lining"),
            "Error: Invalid value for --of: 'slip-cushion' has no cloth 'lining'; it has: face",
        ),
    ],
)
def test_what_cannot_be_asked_is_told_with_what_can(words: tuple[str, ...], says: str, tmp_path: Path) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), "explore", *words)
    assert told.code == 2
    assert says in " ".join(told.err.split())
