"""The finished size of every demo project is the thing's: read off its file by hand, in its first size."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.making_up.laid import LaidOut
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.errors import FaultyFileError
from tests.making_up.demo_recipes import PROJECTS, ROOT, room

# How many, across, along, deep [in]; then which way is a way round. Each with how it comes about.
BY_HAND = {
    "awning-cushion": (1, "12", "12", "0", ""),  # front and back alike
    "bosun-seat-pad": (1, "14", "14", "2", ""),  # the boxing is 2 in deep
    "breakwater-runner": (1, "12", "36", "0", ""),
    "capstan-stool": (1, "12", "12", "3", ""),  # the skirt goes down 3 in
    "chandlery-flap": (1, "7", "7", "0", ""),  # the bag: 5 in of flap and 2 in; the flap lies over it
    "cockle-bag": (1, "12", "12", "0", ""),
    "customs-tote": (1, "10", "11", "0", ""),
    "fairway-blind": (1, "24", "40", "0", ""),  # as its file says; on its side it is 40 by 24
    "ferry-runner": (1, "36", "12", "0", ""),  # 8 + 20 + 8
    "galley-valance": (1, "24", "13", "0", ""),  # a band of 6 in and pleats of 7 in
    "gull-window-curtain": (2, "18", "18", "0", ""),  # 24 in x 3/4 wide, 18 in long; turned, for it lies on its side
    "harbour-headboard": (1, "36", "24", "0", ""),
    "lantern-sleeve": (1, "18", "8", "0", "across"),
    "logbook-sleeve": (1, "7", "8", "0", ""),  # 5 + 2 and 7 + 1; the flap is folded over the front
    "net-loft-pinafore": (1, "12", "17", "0", ""),  # half of 21 + 3; a yoke of 5 in and a skirt of 12 in
    "nine-moorings": (1, "22", "22", "0", ""),  # 3 x 6 + 2 x 1 1/2 + 2 x 1/2, bound at the raw edge
    "pier-bolster": (1, "16 1/4", "19", "0", "across"),  # 15 3/4 + 1/2 round; 14 in and two frills of 2 1/2 in
    "pilot-tea-cosy": (1, "11", "9", "0", ""),
    "pincushion-sample": (1, "4", "4", "0", ""),
    "purser-pouch": (1, "9", "6", "0", ""),  # as it hangs, its zip at the top
    "quay-cushion": (1, "12", "12", "0", ""),
    "slipway-smock": (1, "20", "28", "0", ""),  # half of 32 + 8; the hem falls fuller, 24 1/2 in front
    "skiff-mat": (1, "8", "12", "0", ""),
    "tide-table-mats": (4, "16", "12", "0", ""),
}


def sheet_of(name: str) -> Worksheet:
    path = next(path for path in PROJECTS if path.stem == name)
    project = load_project(path, room().room, ROOT)
    return worked_sheet(project, next(iter(project.sizes)), room().room.edition("inch"), room())


def length(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def told(laid: LaidOut) -> tuple[int, Fraction, Fraction, Fraction, str]:
    return laid.number, round(laid.across * 16) / Fraction(16), laid.along, laid.depth, laid.round


@pytest.mark.parametrize("name", BY_HAND)
def test_the_finished_size_is_that_of_the_thing(name: str) -> None:
    number, across, along, depth, way = BY_HAND[name]
    assert told(sheet_of(name).laid_out) == (number, length(across), length(along), length(depth), way)


def test_every_demo_project_is_in_the_table() -> None:
    assert sorted(BY_HAND) == [path.stem for path in PROJECTS]


def test_a_curtain_that_lies_on_its_side_hangs_by_its_left_edge() -> None:
    (curtain,) = sheet_of("gull-window-curtain").laid_out.pieces
    assert curtain.side_at("top") == "left"


def project_in(tmp_path: Path, name: str, said: str) -> Worksheet:
    path = next(path for path in PROJECTS if path.stem == name)
    copy = tmp_path / path.name
    text = path.read_text(encoding="utf-8")
    copy.write_text(text.replace("\nsizes:\n", f"\nfinished size: {said}\nsizes:\n"), encoding="utf-8")
    project = load_project(copy, room().room, ROOT)
    return worked_sheet(project, next(iter(project.sizes)), room().room.edition("inch"), room())


def of_size(sheet: Worksheet) -> list[str]:
    return [one.text.partition(". Look")[0] for one in sheet.findings if "finished size" in one.text]


@pytest.mark.parametrize(
    ("name", "said", "told"),
    [
        ("quay-cushion", "side, side", []),
        (
            "quay-cushion",
            "side + 1 in, side",
            ["finished size says 13 by 12 in; from its seams the thing comes to 12 by 12 in"],
        ),
        ("bosun-seat-pad", "side, side, pad depth", []),
        (
            "bosun-seat-pad",
            "side, side",
            ["finished size says 14 by 14 in; from its seams the thing comes to 14 by 14 by 2 in"],
        ),
        # A panel that is cut to its outline comes out as large as that.
        ("pilot-tea-cosy", "width, height", []),
        (
            "pilot-tea-cosy",
            "width, height - 1 in",
            ["finished size says 11 by 8 in; from its seams the thing comes to 11 by 9 in"],
        ),
    ],
)
def test_a_size_that_the_seams_do_not_come_to_is_told(tmp_path: Path, name: str, said: str, told: list[str]) -> None:
    assert of_size(project_in(tmp_path, name, said)) == told


def test_a_panel_that_is_cut_to_a_shape_of_its_own_may_become_smaller_but_no_larger(tmp_path: Path) -> None:
    # Tucked 13 by 11 in, cut to a shape that the file does not tell.
    path = tmp_path / "cosy.yaml"
    text = (Path(__file__).with_name("projects") / "cabin-door-cushion.yaml").read_text(encoding="utf-8")
    text = text.replace("kind: cushion", "kind: other").partition("edges that meet:")[0].partition("  back:")[0]
    told = {}
    for said in ("10 in or 25 cm, 9 in or 23 cm", "14 in or 35 cm, 9 in or 23 cm"):
        shaped = text.replace("finished across: width", "cut to shape: yes\n    finished across: width")
        path.write_text(shaped.replace("\nsizes:\n", f"\nfinished size: {said}\nsizes:\n"), encoding="utf-8")
        project = load_project(path, room().room, tmp_path)
        told[said[:2]] = of_size(worked_sheet(project, "one", room().room.edition("inch"), room()))
    assert told == {"10": [], "14": ["finished size says 14 by 9 in; from its seams the thing comes to 12 by 14 in"]}


def test_what_the_file_says_of_the_size_wins(tmp_path: Path) -> None:
    assert told(project_in(tmp_path, "quay-cushion", "side + 1 in, side").laid_out)[1:3] == (13, 12)


@pytest.mark.parametrize(("said", "number"), [("side", 1), ("side, side, side, side", 4)])
def test_a_size_of_one_length_or_four_is_refused(tmp_path: Path, said: str, number: int) -> None:
    with pytest.raises(FaultyFileError) as refused:
        project_in(tmp_path, "quay-cushion", said)
    (finding,) = refused.value.findings
    assert finding.place is not None
    assert finding.place.line == 13
    assert finding.text.endswith(f"this is {number} of them")
