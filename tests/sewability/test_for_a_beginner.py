"""What a beginner reads: numbers in place of hands, each thing before it is needed, nothing that does not apply."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from sewable_room import ROOT, SHARED, every_sheet, named, sheets_of

from generator.calculation.worked import Panel
from generator.calculation.worked_project import SheetStep, Worksheet
from generator.calculation.worksheet.conditions import holds
from generator.drawing.canvas import canvas_of
from generator.drawing.catalogue import figure_keys
from generator.drawing.ruled_rows import ruled_line, sketch_ruled_rows
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style
from generator.drawing.svg import PathGroup
from generator.lengths import read_length

# What fingers and cloth go through at least, and what stays sewn beside the corners; common practice, no source.
LEAST = {"inch": read_length("2 1/2 in"), "metric": read_length("6 cm")}
BESIDE = {"inch": read_length("1 1/2 in"), "metric": read_length("4 cm")}
FLAT = {"inch": read_length("8 in"), "metric": read_length("20 cm")}


def steps(path: Path, *standard: str) -> list[tuple[Worksheet, SheetStep]]:
    return [(sheet, step) for sheet in sheets_of(path) for step in sheet.steps if step.standard in standard]


def panel_of(sheet: Worksheet, step: SheetStep) -> Panel:
    return sheet.panels[step.pieces[0]]


@every_sheet
def test_no_step_measures_by_a_hand(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            assert not re.search(r"hand's (?:width|length|breadth)|thumb's", step.text), named(sheet, step)


@every_sheet
def test_an_opening_is_told_as_a_number_before_anything_is_sewn(path: Path) -> None:
    for sheet, step in steps(path, "line and turn", "line bag"):
        told = re.search(r"opening of ([\d /.]+ (?:in|cm))", step.text)
        assert told is not None, named(sheet, step)
        assert told.start() < re.search(r"\bSew\b", step.text).start()  # type: ignore[union-attr]
        long = read_length(told[1])
        piece = sheet.pieces[step.pieces[0]]
        longer = max(piece.finished_across, piece.finished_along)
        assert LEAST[sheet.edition.name] <= long <= longer - BESIDE[sheet.edition.name], named(sheet, step)


@every_sheet
def test_corners_are_trimmed_by_a_number_and_before_a_zigzag_runs_round_them(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            trimmed = re.search(r"[Tt]rim the corners", step.text)
            zigzag = re.search("zigzag", step.text)
            if trimmed and step.standard:
                assert re.search(r"corners to (?:1/8 in|3 mm) from the stitching", step.text), named(sheet, step)
            if trimmed and zigzag:
                assert trimmed.start() < zigzag.start(), named(sheet, step)


@every_sheet
def test_tucks_are_basted_when_the_panel_has_been_cut_to_its_length(path: Path) -> None:
    for sheet, step in steps(path, "trim"):
        cut = re.search(r"\b[Cc]ut\b|Straighten", step.text)
        baste = re.search(r"\bbaste\b", step.text)
        if sheet.pieces[step.pieces[0]].shaped:
            assert baste is None, named(sheet, step)
            assert "Trim the panel to" not in step.text, named(sheet, step)
            assert "scissors" not in step.tools, named(sheet, step)
            # Its picture would show where to cut.
            assert not {f"trimming {name}" for name in step.pieces} & {*figure_keys(sheet)}, named(sheet, step)
        else:
            assert cut is not None
            assert baste is not None
            assert ("the row next to it" in step.text) == bool(panel_of(sheet, step).rows), named(sheet, step)
            assert cut.start() < baste.start(), named(sheet, step)


@every_sheet
def test_a_seam_is_pressed_away_from_tucks_only_where_it_crosses_them(path: Path) -> None:
    for sheet, step in steps(path, "join pieces"):
        within = [
            edge
            for meeting in sheet.meetings
            for edge in (*meeting.join.split(" and "), *meeting.to.split(" and "))
            if {one.split(".")[0] for one in (*meeting.join.split(" and "), *meeting.to.split(" and "))}
            <= set(step.pieces)
        ]
        sides = {edge.split(".")[1] for edge in within if edge.split(".")[0] in sheet.panels}
        crosses, along = bool(sides & {"top", "bottom", "all"}), bool(sides & {"left", "right", "all"})
        assert ("away from the tucks" in step.text) == crosses, named(sheet, step)
        assert ("towards the plain cloth" in step.text) == (along and not crosses), named(sheet, step)


@every_sheet
def test_only_words_that_a_row_uses_are_explained(path: Path) -> None:
    for sheet, step in steps(path, "sew rows"):
        rows = panel_of(sheet, step).rows
        assert rows is not None
        used = {word for row in rows.rows for word in row.words}
        told = {word.lower() for word in re.findall(r"\*\*(Toward|Away|Upright)\*\*", step.text)}
        assert told == used, named(sheet, step)


@every_sheet
def test_a_casing_is_told_at_the_edge_that_has_it(path: Path) -> None:
    for sheet, step in steps(path, "casing"):
        piece = sheet.pieces[step.pieces[0]]
        told = re.search(r"at the (left|right|top|bottom) edge", step.text)
        assert told is not None
        end = piece.edges[told[1]].end
        assert end.kind == "hem"
        assert end.first < end.second, named(sheet, step)
        assert "no hem" not in step.text


@every_sheet
def test_rows_with_most_of_a_large_panel_under_the_arm_are_named_with_what_to_do(path: Path) -> None:
    for sheet, step in steps(path, "sew rows"):
        piece, panel = sheet.pieces[step.pieces[0]], panel_of(sheet, step)
        assert panel.rows is not None
        under = [
            row.number
            for row in panel.rows.rows
            if (piece.cut_along - row.ruled if row.start == "right" else row.ruled)
            > max(FLAT[sheet.edition.name], piece.cut_along / 2)
        ]
        assert ("under the machine's arm. Roll it up" in step.text) == bool(under), named(sheet, step)
        if under:
            assert re.search(rf"Rows? {under[0]}\b", step.text), named(sheet, step)


def test_a_long_runner_is_begun_by_bulk() -> None:
    for sheet, step in steps(ROOT / "projects" / "breakwater-runner.yaml", "sew rows"):
        piece, panel = sheet.pieces[step.pieces[0]], panel_of(sheet, step)
        assert panel.rows is not None
        upper = [row.start for row in panel.rows.rows if 2 * row.ruled < piece.cut_along]
        lower = [row.start for row in panel.rows.rows if 2 * row.ruled > piece.cut_along]
        assert (set(upper), set(lower)) == ({"left"}, {"right"})
        assert f"Rows 1 to {len(upper)} begin at the left" in step.text
        assert "Every second row" not in step.text


@every_sheet
def test_rows_over_a_band_of_tucks_do_not_run_over_the_plain_cloth(path: Path) -> None:
    wide = {"inch": read_length("4 in"), "metric": read_length("10 cm")}
    for sheet, step in steps(path, "rule rows", "sew rows"):
        across = panel_of(sheet, step).across
        plain = max(across.left_margin, across.right_margin) >= wide[sheet.edition.name] and not across.ring
        told = "over the tucks only" in step.text or "before the first tuck as it lies" in step.text
        assert told == plain, named(sheet, step)


@every_sheet
def test_no_step_says_how_far_nothing_is(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            assert not re.search(r"(?<![\d/.])0 (?:in|cm|mm)\b", step.text), named(sheet, step)


@every_sheet
def test_what_waits_keeps_its_cloth_whole(path: Path) -> None:
    for sheet, step in steps(path, "cut"):
        waits = any(piece.after_panel for piece in sheet.pieces.values())
        assert ("stays whole" in step.text) == waits, named(sheet, step)
        # A cut down never lies right of what waits: to the selvage the cloth stays in one piece.
        assert not re.search(r"stays whole[^\n]*\n  - \*\*", step.text), named(sheet, step)


@every_sheet
def test_of_several_one_is_measured_before_the_next_is_marked(path: Path) -> None:
    for sheet, step in steps(path, "mark folds"):
        several = sheet.pieces[step.pieces[0]].quantity > 1
        told = step.text.find("before you mark the next")
        assert (0 <= told < step.text.index("Mark every place")) == several, named(sheet, step)


@pytest.mark.parametrize("word", ["baste", "neaten", "shank", "in the ditch", "grade"])
def test_a_word_of_the_trade_is_explained_where_it_is_used(word: str) -> None:
    """Beside the word, in the same step, stands what it means."""
    meanings = {
        "baste": "long\nstitches|long stitches|baste the lap|[Bb]aste (?:it inside|on|them|inside|the other|it there)",
        "neaten": "zigzag",
        "shank": "stem",
        "in the ditch": "where binding and cloth meet|a thread outside the seam",
        "grade": "different widths",
    }
    texts = [
        f"{step.title}\n{step.text}"
        for path in (ROOT / "projects").glob("*.yaml")
        for sheet in sheets_of(path)
        for step in sheet.steps
        if step.standard and re.search(rf"\b{word}\b", f"{step.title}\n{step.text}", re.IGNORECASE)
    ]
    assert texts
    assert [text for text in texts if not re.search(meanings[word], text)] == []


def test_what_stay_stitching_is_stands_beside_the_word() -> None:
    # No project of the room cuts a panel to a shape that its file does not tell.
    text = (ROOT / "generator" / "definitions" / "techniques" / "cut-to-shape.yaml").read_text(encoding="utf-8")
    assert re.findall(r"[Ss]tay-stitch[^.]*short machine stitches", text)
    assert len(re.findall(r"[Ss]tay-stitch", text)) == 1


@every_sheet
def test_one_way_cloth_is_told_where_a_piece_of_it_is_cut(path: Path) -> None:
    for sheet, step in steps(path, "cut", "cut later"):
        later = step.standard == "cut later"
        cut = [sheet.pieces[name] for name in step.pieces if sheet.pieces[name].after_panel is later]
        one_way = any(sheet.cloths[piece.cloth].one_way for piece in cut if piece.cloth)
        assert ("*one way*" in step.text) == one_way, named(sheet, step)
        drawn = any(part.shape for piece in cut for part in piece.parts)
        assert ("marking pen" in step.tools) == (one_way or drawn), named(sheet, step)


@every_sheet
def test_a_caught_hem_is_made_before_its_tuck_is_stitched(path: Path) -> None:
    for sheet, step in steps(path, "crease"):
        hem = step.text.find("is a hem, held by")
        assert hem < step.text.index("Stitch them"), named(sheet, step)


@every_sheet
def test_the_order_of_hems_is_told_where_hems_meet(path: Path) -> None:
    for sheet, step in steps(path, "hem"):
        hemmed = [
            {side for side, edge in sheet.pieces[name].edges.items() if edge.end.kind == "hem"} for name in step.pieces
        ]
        # The sides of a blind are hemmed in a step of their own, before its folds are marked.
        rodded = any(sheet.panels[name].rods is not None for name in step.pieces if name in sheet.panels)
        meet = not rodded and any(sides & {"left", "right"} and sides & {"top", "bottom"} for sides in hemmed)
        assert ("Sides come before" in step.text) == meet, named(sheet, step)
        # Edges are told as they hang; where they lay on the table stands behind them.
        for line in re.findall(r"^- .*$", re.sub(r" \(\w+ on the table\)", "", step.text), re.MULTILINE):
            assert not re.search(r"(?:top|bottom).* and (?:left|right)", line), line
        first = re.search(r"\b(left|right|top|bottom)\b[^:]*: turn", step.text)
        assert first is not None
        assert first[1] in ("left", "right") or not meet, named(sheet, step)


@every_sheet
def test_a_panel_that_is_too_short_takes_from_seams_only_where_it_has_them(path: Path) -> None:
    for sheet, step in steps(path, "trim"):
        piece = sheet.pieces[step.pieces[0]]
        seams = all(piece.edges[side].allowance for side in ("top", "bottom"))
        assert seams or "narrower" not in step.text, named(sheet, step)


def test_the_rows_of_a_mat_are_drawn_over_its_band_of_tucks_only() -> None:
    """A row ends a little beyond the last tuck as it lies turned."""
    mats = sheets_of(ROOT / "projects" / "tide-table-mats.yaml")
    sheet = next(one for one in mats if (one.size, one.edition.name) == ("breakfast", "inch"))
    panel = sheet.panels["mat"]
    canvas = canvas_of(DrawnSize(93, 70), Style(), "rows")
    sketch_ruled_rows(canvas, panel, float(sheet.pieces["mat"].cut_along), sheet.edition)
    tacked = next(
        layer for layer in canvas._layers if isinstance(layer, PathGroup) and layer.pen == ruled_line(Style())
    )
    (start, _), (end, _) = tacked.outlines[0]
    edges = [x for x, _ in next(one for one in canvas.segments if one[0][1] == one[1][1] and one[0][0] == start)]
    # Sewn, the last of the tucks stands past the middle of its band; the plain half of the mat gets no line.
    sewn, last = float(panel.across.sewn), float(panel.across.feet[-1] + panel.across.depths[-1])
    assert last / sewn < (end - start) / (edges[1] - edges[0]) < last / sewn + 0.06


@pytest.mark.parametrize(("project", "corners"), [("pier-bolster", False), ("quay-cushion", True)])
def test_only_a_thing_with_corners_is_filled_corners_first(project: str, corners: bool) -> None:
    for sheet in sheets_of(ROOT / "projects" / f"{project}.yaml"):
        pieces = tuple(sheet.pieces.values())
        parts = (one for one in SHARED.techniques["fill"].parts if one.when)
        told = [part.say.text for part in parts if all(holds(one, pieces, None) for one in part.when)]  # type: ignore[arg-type]
        assert len(told) == 1
        assert ("corners first" in told[0]) == corners


@every_sheet
def test_what_waits_is_cut_to_a_panel_only_where_the_new_cuts_follow_it(path: Path) -> None:
    for sheet in sheets_of(path):
        followed = {measure for cut in sheet.new_cuts for measure, _ in cut.follows}
        for name, panel in sheet.panels.items():
            waits = panel.checks.leeway.others == "wait"
            assert not waits or any(measure.startswith(sheet.pieces[name].label) for measure in followed), name
        for step in sheet.steps:
            if "cut the other pieces to it" in step.text:
                along = f"{sheet.pieces[step.pieces[0]].label}, along"
                assert along in followed, named(sheet, step)


def test_the_lining_of_the_cosy_is_smaller_than_its_outside_and_its_padding_ends_at_the_seam() -> None:
    # Its lining lies inside the padding; padding in a seam makes it stiff.
    for sheet in sheets_of(ROOT / "projects" / "pilot-tea-cosy.yaml"):
        panel, lining, padding = (sheet.pieces[name] for name in ("panel", "cosy lining", "padding"))
        assert panel.trimmed_to is not None
        less = read_length("1/4 in" if sheet.edition.name == "inch" else "6 mm")
        assert lining.finished_across == panel.trimmed_to.finished_across - less
        assert lining.finished_along == panel.trimmed_to.finished_along - less / 2
        assert (padding.cut_across, padding.cut_along) == (lining.finished_across, lining.finished_along)
