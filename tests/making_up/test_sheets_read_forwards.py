"""A sheet is read forwards with scissors in the hand: its tables, checks and pictures say the same, in that order."""

from __future__ import annotations

import io
from dataclasses import replace

import pdfplumber
import pytest

from generator.calculation.panel.remedies import check_rule
from generator.calculation.worked_project import DecidingMeasure, Worksheet
from generator.calculation.worksheet.sheet import worked_sheet
from generator.definitions.project import load_project
from generator.definitions.theme import load_theme
from generator.lengths import on_ruler
from generator.rendering.handout.sheet import render_handout
from generator.rendering.handout.tables import cut_rows, size_measures
from generator.rendering.setting import Setting
from tests.making_up.demo_recipes import PROJECTS, ROOT, room


def sheet(name: str, size: str, edition: str = "inch") -> Worksheet:
    project = load_project(next(path for path in PROJECTS if path.stem == name), room().room, ROOT)
    return worked_sheet(project, size, room().room.edition(edition), room())


def read(worksheet: Worksheet) -> str:
    theme = load_theme(ROOT / "themes" / "plain")
    setting = Setting(
        theme=theme, room="The net store", place="Saltersquay", welcome="Come in.", edition_mark="2031-03"
    )
    with pdfplumber.open(io.BytesIO(render_handout(worksheet, setting, "Letter"))) as pdf:
        return " ".join(" ".join(page.extract_text() for page in pdf.pages).split())


@pytest.mark.parametrize("name", ["pier-bolster", "ferry-runner", "gull-window-curtain", "quay-cushion"])
def test_the_cut_table_tells_of_a_piece_in_its_own_directions(name: str) -> None:
    project = load_project(next(path for path in PROJECTS if path.stem == name), room().room, ROOT)
    worksheet = sheet(name, next(iter(project.sizes)))
    sizes = {str(row.size.striptags()): str(row.note) for row in cut_rows(worksheet)}
    for panel in worksheet.panels:
        piece = worksheet.pieces[panel]
        for cut in piece.cuts:
            size = f"{on_ruler(cut.across, worksheet.edition)} × {on_ruler(cut.along, worksheet.edition)}"
            told = [note for one, note in sizes.items() if one.replace("\N{FRACTION SLASH}", "/") == size]
            assert told, (size, sizes)
            assert ("on its side in the picture" in told[0]) == (piece.grain == "across")


def test_both_halves_of_an_envelope_follow_the_panel_as_sewn_both_ways() -> None:
    # A panel that is left longer, for there is less to trim, needs a back as long.
    for name, size in (("quay-cushion", "small"), ("awning-cushion", "deck")):
        follows = {cut.side: (cut.follows, cut.words) for cut in sheet(name, size).new_cuts}
        assert [measure for measure, _ in follows["along"][0]] == ["front, along"], name
        # Half an inch of allowance at the top and at the bottom.
        assert follows["along"][1] == "mine + 1", name
        assert [measure for measure, _ in follows["across"][0]] == ["front, across"], name


def test_a_size_is_asked_for_by_the_measure_that_chooses_it() -> None:
    told = [(name, str(value)) for name, value in size_measures(sheet("quay-cushion", "small"))]
    assert told == [("pad", "13"), ("side", "12")]
    assert [name for name, _ in size_measures(sheet("pier-bolster", "bed"))] == ["form", "length", "buttons"]
    # The student measures the shade, and the sleeve is wider by its ease: 24 - 3/8.
    told = size_measures(sheet("lantern-sleeve", "table"))
    assert [name for name, _ in told] == ["shade", "girth", "drop"]
    assert told[0][1].striptags() == "23 5/8"
    # A size may say first what is not measured.
    runner = replace(sheet("breakwater-runner", "kitchen"), own=("width", "length"))
    chosen = DecidingMeasure("length", runner.measures["length"])
    assert [name for name, _ in size_measures(replace(runner, deciding=chosen))] == ["length", "width"]


def test_no_rule_shares_out_among_tucks_that_cannot_change() -> None:
    pinafore = sheet("net-loft-pinafore", "2 to 3", "metric")
    assert not any(pinafore.panels["yoke"].checks.leeway.changes)
    rule = check_rule(pinafore.panels["yoke"].checks.leeway, pinafore.edition)
    assert rule == "Go on, and do as the last line says."
    quay = sheet("quay-cushion", "small")
    assert "stitch one of the next tucks" in check_rule(quay.panels["front"].checks.leeway, quay.edition)


def test_a_place_to_stop_comes_after_the_checks_and_no_picture_is_sought_elsewhere_that_stands_here() -> None:
    told = read(sheet("net-loft-pinafore", "2 to 3", "metric"))
    assert 0 < told.index("Stop and measure") < told.index("A good place to stop")
    # The step that joins skirt and yoke has its own pictures of how they are laid and sewn; what is gathered second is
    # gathered like the first, whose step is named with the words that are not told again.
    assert "The picture stands at step" not in told
    assert "Gather: skirt" in told.partition("(how: step 8)")[0][-500:]
    assert "The picture stands at step 13." in read(sheet("pier-bolster", "bed"))
