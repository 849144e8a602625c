"""What plain pieces, strips and their cloths come to on a worksheet, each size and measure worked by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, inches, put, sheet

from generator.calculation.laid import CutItem
from generator.calculation.pieces.cut import Cut
from generator.calculation.worked import End
from generator.calculation.worked_piece import EdgeWork, Lengths, Piece, Round, Straight
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet import lists
from generator.calculation.worksheet.cloths import cut_items
from generator.calculation.worksheet.figures import figures
from generator.calculation.worksheet.pieces.sizes import whole
from generator.lengths import INCH


def with_piece(keys: str, *changes: tuple[str, str]) -> str:
    """The cushion with one more piece, 'extra', of the keys given one a line."""
    lines = "".join(f"    {key}\n" for key in keys.split("\n"))
    return put(CUSHION, ("edges that meet:", f"  extra:\n{lines}edges that meet:"), *changes)


def extra(folder: Path, keys: str) -> Piece:
    return sheet(folder, with_piece(keys), "medium").pieces["extra"]


def sizes(piece: Piece) -> list[object]:
    return [piece.cut_across, piece.cut_along, piece.finished_across, piece.finished_along]


KIND = "kind: tucked panel\n"
OBLONG = "finished across: 10 in or 25 cm\nfinished along: 6 in or 15 cm"


@pytest.mark.parametrize("kind", ["rectangle", "facing"])
def test_a_rectangle_with_a_hem_a_raw_edge_and_a_seam(tmp_path: Path, kind: str) -> None:
    # Across 10 + two seams of 1/2 = 11. Along 6 + a hem of 1/4 and 3/4 = 1 in, and nothing at the raw edge: 7.
    # Once round: 2 x (10 + 6) = 32.
    ends = (
        "edges:\n  left: seam\n  right: seam 1/2 in or 1.5 cm"
        "\n  top: hem 1/4 in then 3/4 in or 6 mm then 20 mm\n  bottom: raw"
    )
    piece = extra(tmp_path, f"kind: {kind}\n{OBLONG}\n{ends}\nlabel: lining\nnote: Cut it last.")
    assert sizes(piece) == inches("11, 7, 10, 6")
    assert (piece.kind, piece.label, piece.cloth, piece.note) == (
        kind,
        "lining",
        "face",
        "Cut it last.",
    )
    assert (piece.after_panel, piece.cuts) == (False, (Cut(1, *inches("11, 7")),))
    assert [part.outline for part in piece.parts] == [Straight()]
    assert dict(piece.measures) == dict(
        zip(
            ("across", "along", "cut across", "cut along", "quantity", "edge"),
            inches("10, 6, 11, 7, 1, 32"),
            strict=True,
        )
    ) | {
        "left allowance": inches("1/2")[0],
        "right allowance": inches("1/2")[0],
        "top allowance": 1,
        "bottom allowance": 0,
    }


def test_a_circle_is_cut_with_an_allowance_all_round(tmp_path: Path) -> None:
    # 5 + 2 x 1/2 = 6. Round it: 3.14159 x 5 = 15.708, up to 1/8: 15 3/4.
    piece = extra(tmp_path, "kind: circle\ndiameter: 5 in or 13 cm\nquantity: 2\nedges:\n  rim: seam 1/2 in or 1.5 cm")
    assert (piece.parts[0].outline, piece.quantity, sizes(piece)) == (Round(), 2, inches("6, 6, 5, 5"))
    assert (list(piece.edges), piece.edges["rim"].finished, piece.edges["rim"].allowance) == (
        ["rim"],
        *inches("15 3/4, 1/2"),
    )
    assert [piece.measures[name] for name in ("diameter", "cut diameter", "edge", "rim allowance")] == inches(
        "5, 6, 15 3/4, 1/2"
    )


def test_an_envelope_back_is_cut_in_two_parts(tmp_path: Path) -> None:
    # Each half (16 + 4) / 2 + 1/2 + 2 x 1 = 12 1/2, without its hem 12 1/2 - 2 = 10 1/2; once round 64.
    back = sheet(tmp_path, CUSHION, "medium").pieces["back"]
    assert back.cuts == (Cut(2, *inches("12 1/2, 17")),)
    assert [back.measures[name] for name in ("overlap", "hem", "half across", "edge")] == inches("4, 1, 10 1/2, 64")
    assert cut_items(back) == (CutItem("back", "back", *inches("12 1/2, 17"), 2),)


UNLIKE = put(
    CUSHION,
    ("    hem: 1 in or 2.5 cm\n    edges:\n", "    hem: 1 in or 2.5 cm\n    edges:\n      left: seam 1 in or 2.5 cm\n"),
)


def test_halves_of_unlike_seams_are_each_cut_to_their_own_size(tmp_path: Path) -> None:
    # The half with the side seam of 1 in is 10 + 1 + 2 = 13, the other 10 + 1/2 + 2 = 12 1/2.
    found = sheet(tmp_path, UNLIKE, "medium")
    back = found.pieces["back"]
    assert [(cut.name, cut.number, cut.across, cut.along) for cut in back.cuts] == [
        ("left half", 1, *inches("13, 17")),
        ("right half", 1, *inches("12 1/2, 17")),
    ]
    # Forwards from the cloth: what is left of each without its side seam and its hem laps to the 16 of the cover.
    seams = [part.edges[side].allowance for part, side in zip(back.parts, ("left", "right"), strict=True)]
    hemmed = [part.cut_across - 2 - seam for part, seam in zip(back.parts, seams, strict=True)]
    assert sum(hemmed) - 4 == 16
    assert [item.label for item in cut_items(back)] == ["back, left half", "back, right half"]
    told = figures(found)["pieces"]["back"]["parts"]
    assert told["each"] == [
        {"part": "left half", "count": 1, "across": "13", "along": "17"},
        {"part": "right half", "count": 1, "across": "12 1/2", "along": "17"},
    ]
    assert {one.label for one in found.cloths["face"].layout.placed} == {"front", "back, left half", "back, right half"}


def test_the_step_measures_each_half_as_it_is_hemmed(tmp_path: Path) -> None:
    # 13 - 2 and 12 1/2 - 2; halves alike are told together.
    assert lists.half_list(sheet(tmp_path, UNLIKE, "medium").pieces["back"], INCH) == (
        "The left half now measures 11 in from its raw edge to its hemmed edge, the right half 10 1/2 in. "
        "Left and right are seen on their own right side: face down on the front, the left half lies at the right."
    )
    assert lists.half_list(sheet(tmp_path, CUSHION, "medium").pieces["back"], INCH) == (
        "Each half now measures 10 1/2 in from its raw edge to its hemmed edge."
    )


@pytest.mark.parametrize(
    ("keys", "expected", "edge"),
    [
        # 20 + 2 x 1/2 by 3 + 2 x 1/2.
        ("kind: strip\nlength: 20 in\nwidth: 3 in\nedges:\n  all: seam", "21, 4, 20, 3", 20),
        ("kind: boxing\nedge: 20 in\ndepth: 3 in\nedges:\n  all: seam", "21, 4, 20, 3", 20),
        # Four times 1/2 and 1/8 for the edge in it; 20 and an end of 1/2 at both sides.
        ("kind: binding\nlength: 20 in\nwidth: 1/2 in", "21, 2 1/8, 20, 1/2", 20),
        # A tie folded lengthwise: 2 x 1 + 2 x 1/2.
        ("kind: tie\nlength: 20 in\nwidth: 1 in", "21, 3, 20, 1", 20),
        # 20 x 2 gathered = 40, both ends 1/2; 3 + 1/2 + 1/2. It is 20 long where it is gathered.
        ("kind: gathered strip\nedge: 20 in\nfullness: 2\ndrop: 3 in\nedges:\n  all: seam", "41, 4, 40, 3", 20),
        # Four knife pleats of 1/2: 20 + 4 x 2 x 1/2 = 24, and a seam all round.
        (
            "kind: pleated strip\nedge: 20 in\nstyle: knife\npleats: 4\npleat depth: 1/2 in\ndrop: 3 in\n"
            "edges:\n  all: seam",
            "25, 4, 24, 3",
            20,
        ),
    ],
)
def test_a_strip_is_cut_by_its_kind(tmp_path: Path, keys: str, expected: str, edge: int) -> None:
    text = with_piece(keys.replace(" in\n", " in or 5 cm\n"))
    piece = sheet(tmp_path, text.replace("width: 1/2 in\n", "width: 1/2 in or 1 cm\n"), "medium").pieces["extra"]
    assert sizes(piece) == inches(expected)
    assert (piece.measures["edge"], piece.lengths) == (edge, None)


def test_an_edge_for_which_an_outline_has_no_side_is_refused_and_not_left_out() -> None:
    one = Fraction(1)
    rim = EdgeWork("rim", one, End("seam", one), one)
    with pytest.raises(ValueError, match=r"Straight\(\) has no side for the edges \['rim'\]"):
        whole((one, one), (one, one), {"rim": rim})
    (part,) = whole((one, one), (one, one), {"rim": rim}, Round())
    assert part.edges == {"rim": rim}


def test_what_is_bought_is_not_cut(tmp_path: Path) -> None:
    found = sheet(tmp_path, with_piece("kind: bought\nlabel: cushion pad"), "medium")
    pad = found.pieces["extra"]
    assert (pad.parts, sizes(pad), cut_items(pad), dict(pad.edges)) == ((), [0, 0, 0, 0], (), {})
    assert {placed.piece for placed in found.cloths["face"].layout.placed} == {"front", "back"}


def test_the_grain_says_how_a_piece_lies_and_whether_it_may_turn(tmp_path: Path) -> None:
    piece = extra(tmp_path, f"kind: rectangle\nquantity: 3\n{OBLONG}")
    flat, turned = tuple(inches("10, 6")), tuple(inches("6, 10"))
    for grain, one_way, lies, turnable in (
        ("along", False, flat, False),
        ("across", False, turned, False),
        ("either", False, flat, True),
        ("bias", False, flat, True),
        ("either", True, flat, False),
    ):
        item = CutItem("extra", "extra", *lies, 3, turnable)
        part = replace(piece.parts[0], cut_across=flat[0], cut_along=flat[1])
        bare = replace(piece, grain=grain, parts=(part,))  # type: ignore[arg-type]
        assert cut_items(bare, one_way=one_way) == (item,)


@pytest.mark.parametrize(("one_way", "length"), [("no", "37"), ("yes", "46 1/4")])
def test_a_cloth_of_one_way_turns_no_piece(tmp_path: Path, one_way: str, length: str) -> None:
    # 20 by 11 fits neither beside a front of 32 nor beside two backs of 12 1/2 on 44: 18 1/4 + 17 + 11 = 46 1/4.
    # Turned it is 11 by 20 and lies beside the front, in a strip of 20: 20 + 17 = 37.
    keys = "kind: rectangle\ngrain: either\nfinished across: 19 in or 48 cm\nfinished along: 10 in or 25 cm"
    text = with_piece(keys, ("label: cotton", f"label: cotton\n    one way: {one_way}\n    colour: rust"))
    use = sheet(tmp_path, text, "medium").cloths["face"]
    assert (use.one_way, use.colour, use.layout.length) == (one_way == "yes", "rust", inches(length)[0])
    assert any(placed.turned for placed in use.layout.placed) is (one_way == "no")


def told_of_the_cloth(found: Worksheet) -> list[str]:
    return [finding.text for finding in found.findings if "the piece of" in finding.text]


@pytest.mark.parametrize(
    ("length", "says"),
    [
        # The layout is 35 1/4 long. A yard shrunk by a tenth is 32 2/5, 31 2/5 when straightened: 3 17/20 too short, to
        # a sixteenth 3 7/8.
        (
            "36 in",
            "the piece of 'face' is 3 7/8 in too short when it is washed and straightened: the layout needs 35 1/4 in; "
            "take a smaller size, a wider cloth, or cut a piece from another cloth",
        ),
        # 41 1/9 less a tenth are 37, 36 when straightened: 3/4 more than 35 1/4.
        ("370/9 in", "the piece of 'face' is long enough: 3/4 in are left over"),
    ],
)
def test_a_remnant_is_compared_as_it_is_after_washing(tmp_path: Path, length: str, says: str) -> None:
    text = put(CUSHION, ("label: cotton", f"label: cotton\n    shrinkage: 10%\n    length: {length}"))
    assert told_of_the_cloth(sheet(tmp_path, text, "medium")) == [says]


def test_a_remnant_that_is_just_long_enough_is_enough(tmp_path: Path) -> None:
    found = sheet(tmp_path, put(CUSHION, ("label: cotton", "label: cotton\n    length: 36 1/4 in")), "medium")
    assert told_of_the_cloth(found) == ["the piece of 'face' is long enough: 0 in are left over"]


@pytest.mark.parametrize(
    ("keys", "says"),
    [
        (
            "kind: tie\nlength: 2000000 in\nwidth: 1 in or 2 cm",
            "'2000000 in' comes to more than 1000000 in; is it in the right unit?",
        ),
        (
            "kind: strip\nlength: 9000 in\nwidth: 1 in or 2 cm\nedges:\n  all: seam",
            # 200 lengths of 44 in lose 199 in: 8601 in at most.
            "a strip of 9001 in would be joined from more than 200 lengths of cloth 44 in wide; are its length and the "
            "width of the cloth in the right units?",
        ),
        (f"kind: rectangle\nquantity: 2001\n{OBLONG}", "'2001' comes to 2001; more than 2000 are not worked out"),
    ],
)
def test_a_piece_beyond_all_measure_is_refused(tmp_path: Path, keys: str, says: str) -> None:
    told = faults(tmp_path, with_piece(keys), "medium")
    assert [one.split(" ", 1)[1] for one in told] == [f"{says} (size medium, inch)"]


def test_the_most_lengths_are_still_joined(tmp_path: Path) -> None:
    # 200 lengths of 44 in hold 200 x 44 - 199 x 1 = 8601: 8600 in and two seams of 1/2 are just that.
    # On a cloth of their own: so many beside other pieces are a long search for the layout, which is not asked here.
    tape = ("pieces:", "  tape:\n    label: tape\n    width: 44 in or 112 cm\npieces:")
    keys = "kind: strip\ncloth: tape\nlength: 8600 in\nwidth: 1 in or 2 cm\nedges:\n  all: seam"
    piece = sheet(tmp_path, with_piece(keys, tape), "medium").pieces["extra"]
    assert piece.lengths == Lengths(200, Fraction(44), *inches("2, 1/2"), slanting=False)


def test_a_cloth_that_nothing_is_cut_from_is_left_out_and_those_after_it_are_not(tmp_path: Path) -> None:
    felt, silk = (f"  {name}:\n    label: {name}\n    width: 44 in or 112 cm\n" for name in ("felt", "silk"))
    keys = f"kind: rectangle\ncloth: silk\n{OBLONG}"
    found = sheet(tmp_path, with_piece(keys, ("pieces:", f"{felt}{silk}pieces:")), "medium")
    assert list(found.cloths) == ["face", "silk"]


def test_every_cloth_that_is_too_narrow_is_told(tmp_path: Path) -> None:
    silk = "  silk:\n    label: silk\n    width: 6 in or 14 cm\n"
    keys = f"kind: rectangle\ncloth: silk\ngrain: across\n{OBLONG}"
    narrow = with_piece(
        keys, ("width: 44 in", "width: 10 in"), ("pieces:", f"{silk}pieces:"), (KIND, f"{KIND}    grain: across\n")
    )
    # 6 and two seams of 1/2 are 7, and it lies on its side; so does the front, which is 18 1/4 across the cloth.
    assert [one.split(" ", 1)[1].split(";")[0] for one in faults(tmp_path, narrow, "medium")] == [
        "front is 18 1/4 in across, but the cloth is only 10 in wide",
        "extra is 7 in across, but the cloth is only 6 in wide",
    ]


@pytest.mark.parametrize(
    ("keys", "size"),
    [
        ("kind: rectangle\nfinished across: 1/1000 in\nfinished along: 6 in", "1/1000 in by 6 in"),
        ("kind: circle\ndiameter: 1/1000 in", "1/1000 in by 1/1000 in"),
        ("kind: tie\nlength: 20 in\nwidth: 1/1000 in", "20 in by 1/1000 in"),
    ],
)
def test_a_piece_narrower_than_any_mark_of_the_ruler_is_refused(tmp_path: Path, keys: str, size: str) -> None:
    told = f"'extra' is finished {size}, less than the finest mark of the room's ruler, 1/16 in; look at its numbers"
    found = faults(tmp_path, with_piece(keys), "medium")
    assert any(told in one for one in found), found
