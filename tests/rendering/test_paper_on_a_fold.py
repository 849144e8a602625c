"""Half a paper for a piece that is cut on a fold: its tiles, its lines in points in the PDF, its words, its faults."""

from __future__ import annotations

import io
from fractions import Fraction
from functools import cache
from math import hypot
from pathlib import Path
from tempfile import TemporaryDirectory

import pdfplumber
import pytest
import shapes_room
from opened_pdf import texts
from room_setting import setting

from generator.calculation.shapes.fold import folds_on_itself
from generator.calculation.worked_project import Worksheet
from generator.drawing.paper_pattern import fold_of, papers_of, plan_paper
from generator.drawing.paper_places import name_place
from generator.errors import FaultyFileError
from generator.lengths import INCH, METRIC
from generator.rendering.handout.tables import cut_rows
from generator.rendering.paper_pattern import render_paper_pattern
from tests.room import demo_room, opened_room, put, write_room

FOLDED = put(
    shapes_room.PROJECT,
    ("    kind: rectangle\n    grain: across\n", "    kind: rectangle\n    on a fold: yes\n"),
    ("    outline: circle\n", "    outline: circle\n    on a fold: yes\n"),
)


@cache
def folded(edition: str) -> Worksheet:
    with TemporaryDirectory() as folder:
        room = opened_room(write_room(Path(folder), {"projects/shapes.yaml": FOLDED}))
        return next(one for one in room.worksheets("shapes") if one.edition.name == edition)


@cache
def printed(edition: str) -> bytes:
    return render_paper_pattern(folded(edition), setting(), "Letter")


@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_half_a_paper_has_fewer_tiles_and_ends_at_the_fold(edition: str) -> None:
    ruler = INCH if edition == "inch" else METRIC
    names = {}
    for piece, part, shape in papers_of(folded(edition)):
        tiles = plan_paper(shape, ruler, fold_of(piece, part))
        names[piece.name] = [tile.name for tile in tiles]
        if piece.on_fold:
            assert tiles[0].left == part.finished_across / 2
    # Half a circle cut 15 in through is 7 1/2 wide: 2 tiles across, 2 down, where the whole takes 3 by 2. Half of the
    # yoke, 11 5/8 wide and 22 long: 2 by 3, where the whole takes 4 by 3.
    assert names["top"] == ["A1", "A2", "B1", "B2"]
    assert names["yoke"] == ["A1", "A2", "B1", "B2", "C1", "C2"]


@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_the_half_lies_within_a_tenth_of_a_point_and_its_fold_on_the_frame(edition: str) -> None:
    ruler = INCH if edition == "inch" else METRIC
    wanted: list[tuple[object, ...] | None] = []
    for piece, part, shape in papers_of(folded(edition)):
        fold = fold_of(piece, part)
        wanted += [None, *((shape, tile, fold) for tile in plan_paper(shape, ruler, fold))]
    with pdfplumber.open(io.BytesIO(printed(edition))) as read:
        assert len(read.pages) == len(wanted)
        for page, held in zip(read.pages, wanted, strict=True):
            if held is None:
                inch, five = sorted((one["width"], one["height"]) for one in page.rects if not one["fill"])[:2]
                assert [*inch, *five] == pytest.approx([72, 72, *[5 / 2.54 * 72] * 2], abs=0.1)
                continue
            shape, tile, fold = held
            wide = float(tile.right - tile.left) * 72
            (frame,) = [one for one in page.rects if not one["fill"] and abs(one["width"] - wide) < 1]
            spots = [spot for one in (*page.curves, *page.lines) if not one["fill"] for spot in one["pts"]]
            for across, down in (spot for spot in shape.cut if tile.holds(spot)):
                x = frame["x0"] + float(across - tile.left) * 72
                y = frame["top"] + float(down - tile.top) * 72
                assert min(hypot(x - to_x, y - to_y) for to_x, to_y in spots) < 0.1
            if fold is not None and tile.name.endswith("1"):
                heavy = [one for one in page.lines if abs(one["x0"] - frame["x0"]) < 0.1 and one["x0"] == one["x1"]]
                assert heavy, tile.name


def test_words_say_how_it_is_laid_and_that_it_is_half() -> None:
    told = " ".join(texts(printed("inch")))
    for words in ("yoke, cut 1 on the fold", "neck, whole 14", "shoulder, 2", "bottom, whole 22 in"):
        assert words in told, words
    assert "right shoulder" not in told
    assert "This is half of the piece." in told
    steps = {step.standard: step.text for step in folded("inch").steps}
    assert "**On a fold: top and yoke.**" in steps["cut"]
    assert "Fold the rectangle in half, right sides together, left edge on right edge." in steps["cut"]


def test_the_cut_table_says_it_and_the_rectangle_is_whole() -> None:
    sheet = folded("inch")
    assert sheet.pieces["yoke"].cut_across == Fraction(93, 4)
    assert any("on a fold" in row.note for row in cut_rows(sheet)), [row.note for row in cut_rows(sheet)]


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (
            (
                "    outline: rounded bottom 2 in or 5 cm\n",
                "    on a fold: yes\n    outline: rounded bottom 2 in or 5 cm\n",
            ),
            "bias",
        ),
        (
            (
                "    outline: circle\n    on a fold: yes\n    finished across: wide\n",
                "    on a fold: yes\n    finished across: wide\n    finished along: wide\n",
            ),
            "own",
        ),
        (("      mirror: yes\n", "      mirror: no\n"), "alike"),
    ],
)
def test_what_cannot_be_cut_on_a_fold_is_refused(tmp_path: Path, change: tuple[str, str], why: str) -> None:
    told = {
        "bias": "'pocket' is not cut on a fold: cloth that lies on the bias is not folded: it stretches at the fold",
        "own": "'top' is not cut on a fold: only a piece with an outline of its own is cut by paper",
        "alike": "'yoke' is not cut on a fold: its two halves are not alike; take 'on a fold' out",
    }
    text = put(FOLDED, change)
    if why == "alike":
        text = put(
            text,
            (
                "- bottom: line to 0, 20 in or 0, 50 cm",
                "- bottom: line to 0, 20 in or 0, 50 cm\n        - left: line to 0, 4 in or 0, 10 cm",
            ),
        )
    with pytest.raises(FaultyFileError) as fault:
        opened_room(write_room(tmp_path, {"projects/shapes.yaml": text})).worksheets("shapes")
    assert any(told[why] in str(one) for one in fault.value.findings), fault.value.findings


def test_a_shape_with_a_notch_on_one_side_does_not_fold_on_itself() -> None:
    notched = [(0, 0), (4, 0), (4, 2), (3, 2), (3, 3), (4, 3), (4, 4), (0, 4)]
    assert not folds_on_itself([(Fraction(x), Fraction(y)) for x, y in notched], Fraction(2))


def test_a_narrow_facing_is_named_beside_the_names_of_its_edges() -> None:
    sheet = demo_room().worksheets("cockle-bag")[0]
    (part, shape) = next((part, shape) for piece, part, shape in papers_of(sheet) if piece.name == "facing")
    across, down = name_place(part, shape, on_fold=False)
    assert across == part.finished_across / 4
    # A quarter of the way along the mouth has fallen by half of its 1 1/2 in: the facing lies from 3/4 to about 2 3/4.
    assert 1.5 < down < 2
    (wide, whole) = next((part, shape) for piece, part, shape in papers_of(sheet) if piece.name == "panel")
    assert name_place(wide, whole, on_fold=False)[0] == wide.finished_across / 2
