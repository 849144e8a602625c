"""What the steps say: nothing is left to be filled in, every number is the sheet's own, sentences are short."""

import math
import re
from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from sewable_room import ROOM, ROOT, SHARED, every_sheet, named, sheets_of

from generator.calculation.laid import Layout
from generator.calculation.making.needles import NEEDLES
from generator.calculation.pieces.openings import turning_opening
from generator.calculation.worked import Panel
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.definitions.project import load_project
from generator.lengths import EDITIONS, read_length

UNITS = {"inch": "in", "metric": "(?:cm|mm)"}
LONGEST_SENTENCE = 30
# Lengths that a technique brings itself: a bias join, a play, what is left beside the tucks, a loose end of piping; the
# gap for an elastic, what is left of a zip beyond its new stop.
OWN_LENGTHS = {
    "inch": ("1/4 in", "1/8 in", "1/2 in", "4 in", "2 in"),
    "metric": ("6 mm", "3 mm", "1 cm", "10 cm", "5 cm", "1.2 cm"),
}


@every_sheet
def test_no_text_has_anything_left_to_fill_in(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            for text in (step.title, step.text):
                assert text.strip(), named(sheet, step)
                assert not re.search(r"\{\{|\}\}|\[[a-z ]+\]|\bNone\b|Fraction", text), named(sheet, step)


@every_sheet
def test_no_list_is_empty(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            paragraphs = re.split(r"\n\s*\n", step.text)
            assert all(paragraph.strip() for paragraph in paragraphs), named(sheet, step)
            for paragraph, after in zip(paragraphs, [*paragraphs[1:], ""], strict=True):
                # Where there are several cloths, the name of each stands before its own list.
                if paragraph.rstrip().endswith(":"):
                    assert re.match(r"- \S|Marks \(|Rows \(|The [^\n]*:$", after.rstrip()), named(sheet, step)


@every_sheet
def test_every_length_in_a_standard_step_is_on_the_sheet(path: Path) -> None:
    for sheet in sheets_of(path):
        known = lengths_on(sheet)
        for step in sheet.steps:
            if step.standard:
                for told in lengths_in(step.text, sheet):
                    assert told in known or told in added(path, sheet), f"{named(sheet, step)} says {told}"


def lengths_in(text: str, sheet: Worksheet) -> set[Fraction]:
    number = r"(?:\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
    told = re.findall(rf"{number} {UNITS[sheet.edition.name]}\b", text)
    return {read_length(length) for length in told}


def added(path: Path, sheet: Worksheet) -> set[Fraction]:
    """Lengths that the project itself adds to its standard steps."""
    steps = load_project(path, ROOM, ROOT).steps
    texts = [words.text for step in steps for words in (step.begin_with, step.add) if words is not None]
    return lengths_in("\n".join(texts), sheet)


def lengths_on(sheet: Worksheet) -> set[Fraction]:
    """Every length of the worksheet, to the ruler, and what a step works out from two of them."""
    known = {read_length(length) for length in OWN_LENGTHS[sheet.edition.name]}
    known |= {stitch for needle in NEEDLES for stitch in (needle.shortest, needle.longest)}
    for piece in sheet.pieces.values():
        known |= of_piece(piece, sheet.edition.mark)
    known |= set(sheet.measures.values())
    for cloth in sheet.cloths.values():
        known |= laid_lengths(cloth.layout)
    for closure in sheet.closures:
        known |= {closure.buttonhole, closure.overlap, closure.inset, *closure.positions}
        known |= {closure.length, closure.bought, closure.width, closure.lap}
        known |= {read_length(length) for length in re.findall(r"[\d /.]*\d (?:in|cm|mm)", closure.text)}
    for meeting in sheet.meetings:
        known |= {meeting.join_length, meeting.to_length}
    mark = sheet.edition.mark
    return known | {round(length / mark) * mark for length in known}


def laid_lengths(layout: Layout) -> set[Fraction]:
    """Where the cuts of a layout lie, and how far these places are from each other."""
    across = {Fraction(0), layout.width}
    along = {Fraction(0), layout.length}
    for strip in layout.strips:
        along |= {strip.top, strip.top + strip.along}
        for stack in strip.stacks:
            across |= {stack.left, stack.left + stack.across}
    for placed in layout.placed:
        across |= {placed.left, placed.left + placed.across}
        along |= {placed.top, placed.top + placed.along}
    return {abs(one - other) for places in (across, along) for one in places for other in places}


def of_piece(piece: Piece, mark: Fraction) -> set[Fraction]:
    known = {piece.cut_across, piece.cut_along, piece.finished_across, piece.finished_along, piece.square}
    known |= {*piece.measures.values()}
    if piece.finished_across and piece.finished_along:
        known |= {
            turning_opening(piece.finished_across, piece.finished_along, edition) for edition in EDITIONS.values()
        }
    if piece.lengths is not None:
        known |= {piece.lengths.across, piece.lengths.along, piece.lengths.allowance, *piece.lengths.others}
    if piece.pieced is not None:
        known |= {piece.pieced.short, piece.pieced.long, piece.pieced.gives // mark * mark}
    for edge in piece.edges.values():
        known |= {edge.allowance, edge.end.first, edge.end.second, edge.finished}
        if edge.end.shuts_in:
            # The first line of a seam that is sewn twice leaves 1/4 in or 6 mm for the second.
            known |= {edge.end.first - read_length("1/4 in"), edge.end.first - read_length("6 mm")}
    if piece.made.pleats:
        section, depth = piece.measures["edge"] / piece.measures["pleats"], piece.measures["pleat depth"]
        known |= {max(section / 2, depth), section + 2 * depth, 2 * depth}
    if piece.made.goes_round == "an edge":
        known |= {piece.cut_along - 2 * piece.measures["width"], (piece.cut_across - piece.measures["length"]) / 2}
    if piece.kind == "tie":
        known.add((piece.cut_along - 2 * piece.measures["width"]) / 2)
    if "shown" in piece.measures:
        known.add(piece.cut_along / 2)  # a tab of a zip is folded across its middle
    known.add(2 * piece.finished_across)
    return known | (of_panel(piece.panel, piece, mark) if piece.panel else set())


def of_panel(panel: Panel, piece: Piece, mark: Fraction) -> set[Fraction]:
    known = {panel.join_allowance, *panel.breadths, *(join.at for join in panel.joins)}
    known |= {one.length for one in panel.shaped_ends}
    if panel.released is not None:
        known |= {panel.released.widest, *(at for own in panel.released.stops for at in own)}
    for tucks in (panel.across, panel.cross):
        if tucks is not None:
            known |= {*tucks.marks, *tucks.depths, *tucks.spacings, tucks.cut, tucks.cut - tucks.marks[-1]}
            known.add(tucks.cut - tucks.take_up)
    sides = zip(pairwise(panel.across.stitching), pairwise(panel.across.depths), strict=True)
    known |= {abs(right - left - sum(depths)) for (left, right), depths in sides}
    for point in (*panel.checks.points, *panel.cross_checks.points):
        known |= {point.expect, point.within}
    if panel.rows is not None:
        rows = panel.rows
        known |= {row.ruled for row in rows.rows} | {rows.extra, piece.cut_along - rows.extra}
        # What does not draw in falls off, half at either end.
        falls = {max(Fraction(0), rows.extra - drawn) / 2 for drawn in (rows.draw_in_least, rows.draw_in_most)}
        known |= {rounding(length / mark) * mark for length in falls for rounding in (math.floor, math.ceil)}
    return known


@every_sheet
def test_marks_and_rows_told_in_a_step_are_the_sheets(path: Path) -> None:
    for sheet in sheets_of(path):
        for step in sheet.steps:
            if step.standard not in ("mark folds", "mark cross folds", "rule rows"):
                continue
            panel = sheet.panels[step.pieces[0]]
            listed = next(line for line in step.text.splitlines() if line.startswith(("Marks (", "Rows (")))
            told = [
                read_length(entry.split(": ")[1], sheet.edition.unit) for entry in listed.split(": ", 1)[1].split(" · ")
            ]
            if step.standard == "rule rows":
                assert panel.rows is not None
                assert told == [row.ruled for row in panel.rows.rows]
            else:
                tucks = panel.across if step.standard == "mark folds" else panel.cross
                assert tucks is not None
                assert told == list(tucks.marks)


@pytest.mark.parametrize("name", sorted(SHARED.techniques))
def test_a_technique_speaks_in_short_sentences(name: str) -> None:
    for part in SHARED.techniques[name].parts:
        plain = re.sub(r"\{\{.*?\}\}", "number", re.sub(r"\[[a-z ]+\]", "list", part.say.text))
        for sentence in re.split(r"(?<=[.?!:;])\s+", plain):
            assert len(sentence.split()) <= LONGEST_SENTENCE, sentence


def test_every_technique_is_used_by_a_project() -> None:
    used = {
        step.standard
        for path in (ROOT / "projects").glob("*.yaml")
        for sheet in sheets_of(path)
        for step in sheet.steps
    }
    # The demo room tells these in words of its own steps, or has no such seam; projects of tests/making_up use them.
    own = {"turn out", "felled seam", "set zip", "sew on", "set ties", "embroider"}
    own |= {"sew and turn", "pleat edge", "gather edge", "trim edges"}
    assert set(SHARED.techniques) - used == own


def test_no_text_converts_one_unit_into_the_other() -> None:
    for path in (ROOT / "projects").glob("*.yaml"):
        for sheet in sheets_of(path):
            other = UNITS["metric" if sheet.edition.name == "inch" else "inch"]
            for step in sheet.steps:
                assert not re.search(rf"\d {other}\b(?! the| a )", step.text), named(sheet, step)
    assert set(ROOM.editions) == {"inch", "metric"}
