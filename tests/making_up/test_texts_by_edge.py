"""Texts of standard steps tell what applies at their place: corners, rims, raw seams, what hangs near; nothing else."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from generator.calculation.turning.turns import Hand, Turn, row_words
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.drawing.catalogue import draw_sized, heights
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style
from generator.drawing.things.views import front_shapes
from generator.errors import FaultyFileError
from generator.rendering.handout.tables import cut_rows
from tests.making_up.demo_recipes import PROJECTS, ROOT, room

ROUND = """\
title: Buoy cushion
kind: cushion
summary: A round box cushion with a frill at its foot.
sizes:
  one:
    wide: 14 in or 36 cm
cloths:
  face:
    label: cotton
    width: 44 in or 112 cm
pieces:
  top:
    kind: circle
    diameter: wide
  under:
    kind: circle
    diameter: wide
  band:
    kind: boxing
    edge: top.edge
    depth: 2 in or 5 cm
edges that meet:
  - join: top.rim
    to: band.edge
  - join: under.rim
    to: band.edge
"""


def sheet_of(path: Path) -> Worksheet:
    project = load_project(path, room().room, ROOT)
    return worked_sheet(project, list(project.sizes)[-1], room().room.edition("inch"), room())


def step(name: str, standard: str, place: int = 0) -> SheetStep:
    found = sheet_of(next(path for path in PROJECTS if path.stem == name))
    return [one for one in found.steps if one.standard == standard][place]


def written(folder: Path, text: str) -> Worksheet:
    path = folder / "it.yaml"
    path.write_text(text, encoding="utf-8")
    return sheet_of(path)


def of(sheet: Worksheet, standard: str) -> str:
    return next(one.text for one in sheet.steps if one.standard == standard)


def test_a_boxing_is_turned_out_by_its_own_step() -> None:
    boxing = step("bosun-seat-pad", "make boxing").text
    turned = boxing.index("Draw the work out")
    assert boxing.index("Trim the corners") < boxing.index("Unpin every tie") < turned
    assert "Fold the ring in four" in boxing


def test_a_ring_is_neatened_in_the_order_of_the_work() -> None:
    text = step("lantern-sleeve", "neaten").text
    order = ("wrong side out", "to one side", "trim them to 1/4 in", "zigzag", "right side out again")
    places = [text.index(words) for words in order]
    assert places == sorted(places)


def test_a_boxing_beside_piping_is_sewn_with_the_zip_foot(tmp_path: Path) -> None:
    boxing = step("bosun-seat-pad", "make boxing")
    assert "zip foot" in boxing.tools
    assert boxing.text.index("zip foot") < boxing.text.index("Sew round")
    assert "zip foot" not in of(written(tmp_path, ROUND), "make boxing")


def test_unequal_sides_of_a_box_are_measured(tmp_path: Path) -> None:
    text = next(path for path in PROJECTS if path.stem == "bosun-seat-pad").read_text(encoding="utf-8")
    longer = text.replace("    finished along: side\n", "    finished along: side + 4 in or side + 10 cm\n")
    # The deep chair is 18 wide: corners after 18, then 22, then 18 inches.
    assert "[corner marks]" not in longer
    assert "18 in, 40 in and 58 in away" in of(written(tmp_path, longer), "make boxing")


def test_corners_all_round_a_cushion_are_trimmed_when_its_seam_is_neatened(tmp_path: Path) -> None:
    text = next(path for path in PROJECTS if path.stem == "awning-cushion").read_text(encoding="utf-8")
    start, end = text.index("  - title: Close the cover"), text.index("  - use: fill")
    standard = "  - use: join pieces, neaten, turn out\n    on: front, back\n    uses: blunt point\n"
    cushion = written(tmp_path, text[:start] + standard + text[end:])
    assert "Trim the corners" in of(cushion, "neaten")
    turned = of(cushion, "turn out")
    assert "Push the corners out" in turned
    assert "Trim the corners" not in turned


def test_a_round_box_has_no_corners(tmp_path: Path) -> None:
    boxing = of(written(tmp_path, ROUND.replace("top.edge", "around(wide)")), "make boxing")
    assert "corner" not in boxing
    assert "Clip the edge of the band every 1/2 in" in boxing
    assert "leave a quarter open" in boxing


@pytest.mark.parametrize(
    ("name", "standard", "told", "untold"),
    [
        # The flap's bag is not lined: its seams stay raw. The tote's are shut in by the lining.
        ("chandlery-flap", "bag", ["sew round the raw edges"], ["Pin every"]),
        ("customs-tote", "bag", ["Pin every strap to the middle"], ["neaten"]),
        ("customs-tote", "line bag", ["Let every strap lie between the two"], ["if there are any"]),
        # Along a frill, or up a sleeve, there are no corners.
        ("pier-bolster", "neaten", [], ["corner"]),
        ("lantern-sleeve", "neaten", [], ["corner"]),
        # The strap is caught in the facing's seam, the skirt is not.
        ("net-loft-pinafore", "face edge", ["the end of every strap", "Pin every skirt and every strap"], ["a tie"]),
        ("net-loft-pinafore", "join pieces", [], ["Pin every"]),
        ("breakwater-runner", "line and turn", ["no tuck runs into", "Do not press the tucks"], ["Clip the"]),
        # Of the skirt's edges its hem is one; its frills have three.
        ("gull-window-curtain", "casing", ["at the left edge of the piece"], []),
    ],
)
def test_what_applies_is_told_and_nothing_else(name: str, standard: str, told: list[str], untold: list[str]) -> None:
    text = step(name, standard).text
    assert [words for words in told if words not in text] == []
    assert [words for words in untold if words in text] == []


def test_a_ring_without_rows_is_closed_without_a_word_of_rows(tmp_path: Path) -> None:
    text = next(path for path in PROJECTS if path.stem == "lantern-sleeve").read_text(encoding="utf-8")
    assert "Match the rows" in of(written(tmp_path, text), "close ring")
    start = text.index("    rows:\n")
    plain = text[:start] + text[text.index("    edges:\n", start) :]
    ring = of(written(tmp_path, plain[: plain.index("\nsteps:")] + "\n"), "close ring")
    assert "rows" not in ring
    assert "Pin both ends" in ring


@pytest.mark.parametrize(("name", "standard"), [("capstan-stool", "casing"), ("capstan-stool", "cut to shape")])
def test_nobody_is_told_to_print_a_pattern_or_of_a_curve_that_is_none(name: str, standard: str) -> None:
    text = step(name, standard).text
    assert "Print" not in text
    assert "curved" not in text


def test_hems_are_told_by_the_edges_of_the_step() -> None:
    frill, skirt = step("net-loft-pinafore", "hem"), step("net-loft-pinafore", "hem", 1)
    assert (frill.title, skirt.title) == (
        "Hem the left, right and bottom edges: shoulder frill",
        "Hem the bottom edge: skirt",
    )
    assert "Sides come before top and bottom" in frill.text
    assert "Sides come before top and bottom" not in skirt.text


def test_a_panel_is_trimmed_to_the_length_that_it_has_at_that_moment(tmp_path: Path) -> None:
    # Before its cross tucks the flap is as long as it was cut, afterwards as long as it finishes.
    assert "It should be 13 1/2 in long, with the allowances" in step("chandlery-flap", "trim").text
    text = next(path for path in PROJECTS if path.stem == "chandlery-flap").read_text(encoding="utf-8")
    trim, cross = (
        "  - use: trim\n    on: flap\n",
        "  - use: stitch cross tucks\n    on: flap\n",
    )
    later = written(tmp_path, text.replace(trim, "").replace(cross, cross + trim))
    assert "It should be 8 1/2 in long between its finished edges" in of(later, "trim")


def test_a_hem_that_is_asked_for_by_its_edge_is_told_alone(tmp_path: Path) -> None:
    text = next(path for path in PROJECTS if path.stem == "gull-window-curtain").read_text(encoding="utf-8")
    one = text.replace(
        "  - use: casing\n    on: curtain\n",
        "  - use: casing\n    on: curtain.right\n  - use: hem\n    on: curtain.left\n",
    )
    told = written(
        tmp_path,
        one.replace("      - hem curtain.right\n", "").replace("    does: hem curtain.right\n", "    does: nothing\n"),
    )
    assert "at the right edge of the piece" in of(told, "casing")
    hem = next(step for step in told.steps if step.standard == "hem")
    assert hem.title == "Hem the left edge: curtain"
    assert "right" not in hem.text.split("\n\n")[1]


FRILLED = """\
title: Ferry clerk's cushion
kind: cushion
summary: A tucked front with a frill all round.
sizes:
  chair:
    side: 14 in or 36 cm
cloths:
  face:
    label: plain cotton
    width: 44 in or 112 cm
pieces:
  front:
    kind: tucked panel
    finished across: side
    finished along: side
    tucks:
      depth: 3/8 in or 1 cm
      spacing: 1 1/2 in or 4 cm
      margin: 3/4 in to 2 in or 2 cm to 5 cm
  frill:
    kind: gathered strip
    edge: 4 * front.across
    fullness: 1 1/2
    drop: 2 in or 5 cm
    edges:
      all: seam
      bottom: hem 1/4 in or 6 mm
  back:
    kind: rectangle
    finished across: front.across
    finished along: front.across
edges that meet:
  - join: frill.left
    to: frill.right
  - join: front.all
    to: frill.top
  - join: front.all
    to: back.all
"""


def test_a_seam_that_is_sewn_already_is_not_told_again(tmp_path: Path) -> None:
    # The frill is closed to a ring, neatened, hemmed and gathered before it is sewn to the front.
    sheet = written(tmp_path, FRILLED)
    ring, round_it = (step for step in sheet.steps if step.standard == "join pieces")
    assert "the left edge of the frill, to the right edge of the frill" in ring.text
    assert "Press the seam flat, as it lies." in ring.text
    assert "corner" not in ring.text
    assert "the right edge of the frill" not in round_it.text
    assert "all edges of the front, to the top edge of the frill: 56 in" in round_it.text
    assert "Push a little more of the gathers to each corner" in round_it.text
    assert [len(ring.joined), len(round_it.joined)] == [1, 1]
    assert round_it.joined[0].layers[0].pieces == ("front",)


PAIR = FRILLED.replace("    kind: tucked panel\n", "    kind: tucked panel\n    quantity: 2\n    pair: yes\n")


def test_a_pair_says_exactly_how_the_second_differs(tmp_path: Path) -> None:
    rows = "    rows:\n      plan: slants\n      spacing: 3 in or 8 cm\n  frill:\n"
    told = {step.standard: step.text for step in written(tmp_path, PAIR.replace("  frill:\n", rows, 1)).steps}
    assert "On the other measure the same marks from its right cut edge" in told["mark folds"]
    assert "begin each row at its other end; the words stay as they are, in the same order" in told["sew rows"]
    assert "as in a mirror" not in told["hem"]
    plain = {step.standard: step.text for step in written(tmp_path, PAIR.replace("    pair: yes\n", "")).steps}
    assert "its right cut edge" not in plain["mark folds"]


@pytest.mark.parametrize("width", [93.0, 180.0])
def test_the_pictures_of_a_pair_tell_how_the_second_differs(tmp_path: Path, width: float) -> None:
    rows = "    rows:\n      plan: slants\n      spacing: 3 in or 8 cm\n  frill:\n"
    pair = written(tmp_path, PAIR.replace("  frill:\n", rows, 1))
    alone = written(tmp_path, PAIR.replace("    pair: yes\n", "").replace("  frill:\n", rows, 1))
    style = Style()
    for key, words in (("fold marks front", "its right"), ("turns front", "begin each row at its other end")):
        pictures = []
        for sheet in (pair, alone):
            high = heights(sheet, key, style, width).least
            pictures.append(draw_sized(sheet, key, style, DrawnSize(width, high)))
        drawn = [" ".join(re.findall(r"<text[^>]*>([^<]*)<", picture.svg)) for picture in pictures]
        assert [words in one for one in drawn] == [True, False], drawn
        assert [words in picture.alt for picture in pictures] == [True, False]


@pytest.mark.parametrize("start", ["left", "right"])
def test_a_mirrored_row_begun_at_its_other_end_has_the_same_words(start: Hand) -> None:
    turns = (Turn.RIGHT, Turn.LEFT, Turn.UPRIGHT, Turn.RIGHT)
    mirrored = (Turn.LEFT, Turn.UPRIGHT, Turn.RIGHT, Turn.LEFT)
    other: Hand = "left" if start == "right" else "right"
    assert row_words(mirrored, other) == row_words(turns, start)
    assert row_words(mirrored, start) != row_words(turns, start)


def test_the_cut_table_says_that_a_piece_is_a_pair(tmp_path: Path) -> None:
    sheet = written(tmp_path, PAIR)
    assert (sheet.pieces["front"].quantity, sheet.pieces["front"].note) == (2, "a pair: a left and a right")
    front = next(row for row in cut_rows(sheet) if "front" in row.label)
    assert "a pair: a left and a right" in front.note
    size = "    finished across: 5 in or 12 cm\n    finished along: 6 in or 15 cm\n"
    size += "    outline: rounded bottom 1 in or 3 cm\n"
    pocket = f"  pocket:\n    kind: rectangle\n{size}    quantity: 2\n    pair: yes\n    note: Of felt.\n"
    shaped = PAIR.replace("edges that meet:\n", f"{pocket}edges that meet:\n")
    cut = "a pair: cut with the cloth folded right sides together, or one with the paper turned over"
    assert written(tmp_path, shaped).pieces["pocket"].note == f"Of felt; {cut}"


def test_the_second_curtain_of_a_pair_hangs_as_in_a_mirror(tmp_path: Path) -> None:
    text = next(path for path in PROJECTS if path.stem == "gull-window-curtain").read_text(encoding="utf-8")
    pair = written(tmp_path, text.replace("    quantity: 2\n", "    quantity: 2\n    pair: yes\n", 1))
    shapes = front_shapes(pair)
    panels = [shape for shape in shapes if shape.lying is not None]
    first, second = (shape.form.place((1.0, 2.0)) for shape in panels if shape.form is not None)
    width = float(pair.laid_out.across)
    assert first is not None
    assert second is not None
    # One inch from the left edge of the first, one inch from the right edge of the second.
    assert second[0] - width * 1.08 == pytest.approx(width - first[0])


def test_a_pair_of_one_is_refused(tmp_path: Path) -> None:
    alone = FRILLED.replace("    kind: tucked panel\n", "    kind: tucked panel\n    pair: yes\n")
    with pytest.raises(FaultyFileError) as refused:
        written(tmp_path, alone)
    assert [one.text for one in refused.value.findings] == [
        "a pair is a left and a right, and 1 cannot be halved; write quantity: 2"
    ]
