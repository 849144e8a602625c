"""A grid of blocks in a project: what follows from it in numbers, steps, pictures and the finished thing."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.drawing.catalogue import draw_for_page
from generator.drawing.style import Style
from generator.drawing.things.forms import form_of
from generator.drawing.things.views import shapes_of
from generator.errors import FaultyFileError, Finding
from generator.rendering.handout.tables import cut_rows
from tests.making_up.demo_recipes import room

MOORINGS = (Path(__file__).with_name("projects") / "nine-buoys.yaml").read_text(encoding="utf-8")
NARROW = MOORINGS.replace("blocks across: 3", "blocks across: 2").replace("blocks down: 3", "blocks down: 1")


def sheet(folder: Path, text: str = MOORINGS, size: str = "wall", edition: str = "inch") -> Worksheet:
    path = folder / "moorings.yaml"
    path.write_text(text, encoding="utf-8")
    return worked_sheet(load_project(path, room().room, folder), size, room().room.edition(edition), room())


def errors(folder: Path, text: str) -> list[Finding]:
    try:
        found = sheet(folder, text).findings
    except FaultyFileError as error:
        found = tuple(error.findings)
    return [one for one in found if one.level != "note"]


def test_blocks_and_bands_are_cut_as_often_as_the_grid_has_them(tmp_path: Path) -> None:
    told = sheet(tmp_path)
    assert told.pieces["mooring"].quantity == 9
    # 2 + 1/2 by 8 + 1/2, and 3 x 8 + 2 x 2 + 1/2.
    cuts = [(cut.name, cut.number, cut.across, cut.along) for cut in told.pieces["hanging"].cuts]
    half = Fraction(1, 2)
    assert cuts == [("short band", 6, 2 + half, 8 + half), ("long band", 2, 28 + half, 2 + half)]
    assert (told.laid_out.across, told.laid_out.along) == (28 + half, 28 + half)
    # Finished 2 by 8, and 2 wide between the seams of the whole, 28 1/2 - 1/2.
    rows = {str(row.label.striptags()): str(row.finished.striptags()) for row in cut_rows(told)}
    assert [rows[f"hanging, {name} band, darker cotton"] for name in ("short", "long")] == ["2 × 8", "28 × 2"]
    # An inch of padding and backing beyond the bound edge.
    assert {told.pieces[name].cut_across for name in ("padding", "backing")} == {30 + half}


def test_time_and_thread_are_counted_for_every_block(tmp_path: Path) -> None:
    many, two = (sheet(tmp_path, text) for text in (MOORINGS, NARROW))
    tucks = [next(step.minutes for step in one.steps if step.standard == "stitch tucks") for one in (many, two)]
    # Nine blocks and two, to the nearest five minutes.
    assert abs(2 * tucks[0] - 9 * tucks[1]) <= 9 * Fraction(5, 2) + 2 * Fraction(5, 2)
    assert many.thread.length > 3 * two.thread.length


def test_the_steps_tell_the_sizes_that_are_measured(tmp_path: Path) -> None:
    steps = {step.standard: step for step in sheet(tmp_path, edition="metric").steps}
    assert "from raw edge to raw edge: 21.4 cm." in steps["lay out grid"].text
    assert "Every second one is turned by a quarter" in steps["lay out grid"].text
    assert "Every row measures 71.4 cm" in steps["join grid"].text
    assert "Every seam is 7 mm from the raw edge." in steps["join grid"].text
    assert steps["lay out grid"].figures == ("blocks hanging",)
    plain = sheet(tmp_path, MOORINGS.replace("    bands: band\n    turned: every second\n", ""))
    (joined,) = (step for step in plain.steps if step.standard == "join grid")
    assert "Press the allowances of the first row all to the right" in joined.text
    assert "band" not in joined.text


def test_what_is_quilted_to_a_grid_is_told_by_its_cut_edge_and_sewn_between_tucks(tmp_path: Path) -> None:
    (quilt,) = (step for step in sheet(tmp_path).steps if step.standard == "quilt")
    # A binding goes round the cut edge, 28 1/2 in long; padding and backing are cut 30 1/2.
    assert "- padding, on the hanging: its edges 1 in beyond the cut edges" in quilt.text
    assert "In the blocks quilt in the visible spaces between the tucks" in quilt.text
    assert "lines that you rule" not in quilt.text
    # The padding lies on the wrong side of the hanging, the backing on the padding.
    laid = [[(layer.pieces, layer.right_side_up) for layer in one.layers] for one in quilt.joined]
    hanging, padding, backing = (("hanging",), False), (("padding",), True), (("backing",), True)
    assert laid == [[hanging, padding], [padding, backing]]


def test_the_picture_has_an_arrow_and_a_name_for_every_block(tmp_path: Path) -> None:
    picture = draw_for_page(sheet(tmp_path), "blocks hanging", Style())
    assert [f"{row}-{place}" in picture.svg for row in (1, 2, 3) for place in (1, 2, 3)] == [True] * 9
    assert "bands cut 2 1/2 in wide" in picture.alt
    assert "3 rows of 3 blocks" in picture.alt


def test_the_finished_thing_shows_every_block_the_way_it_lies(tmp_path: Path) -> None:
    told = sheet(tmp_path)
    blocks = [one.lying for one in shapes_of(told, form_of(told)) if one.lying and one.lying.piece == "mooring"]
    quarter = Fraction(1, 4)
    assert [block.turned for block in blocks] == [0, 1, 0, 1, 0, 1, 0, 1, 0]
    assert sorted({block.left for block in blocks}) == [quarter, 10 + quarter, 20 + quarter]
    assert sorted({block.top for block in blocks}) == [quarter, 10 + quarter, 20 + quarter]


@pytest.mark.parametrize(
    ("old", "new", "said"),
    [
        ("    edges: seam 1/4 in or 7 mm\n", "    edges: seam 1/2 in or 1 cm\n", "make both alike, by 'edges' there"),
        ("finished along: block\n", "finished along: block + 1 in or block + 2 cm\n", "must be as wide as it is high"),
        ("    kind: tucked panel\n", "    kind: tucked panel\n    quantity: 8\n", "its grid has 9 blocks"),
        ("edges: bound 1/4 in or 7 mm", "edges: bound 3/8 in or 1 cm", "show 7 7/8 in and the others 8 in"),
        ("blocks across: 3\n    blocks down: 3", "blocks across: 1\n    blocks down: 1", "two blocks at least"),
        ("of: mooring", "of: binding", "blocks are tucked panels or plain pieces"),
        ("of: mooring", "of: buoy", "there is no piece 'buoy'"),
    ],
)
def test_a_grid_that_does_not_fit_is_told(tmp_path: Path, old: str, new: str, said: str) -> None:
    assert old in MOORINGS
    found = errors(tmp_path, MOORINGS.replace(old, new, 1))
    assert any(said in one.text for one in found), found
    assert all(one.place is not None for one in found)


def test_blocks_are_finished_before_they_are_laid_out(tmp_path: Path) -> None:
    early = "  - use: lay out grid, join grid\n    on: hanging\n    session ends: yes\n"
    assert early in MOORINGS
    moved = MOORINGS.replace(early, "").replace(
        "  - use: rule rows, sew rows, trim\n", f"{early}  - use: rule rows, sew rows, trim\n"
    )
    told = [one.text for one in errors(tmp_path, moved)]
    assert any(text.startswith("'lay out grid' needs 'rule rows', 'sew rows' and 'trim' before it") for text in told), (
        told
    )
