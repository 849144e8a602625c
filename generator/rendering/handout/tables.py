"""The tables of a handout: values of a worksheet come in, rows of set text go out; nothing is worked out here."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from markupsafe import Markup

from generator.calculation.laid import CutItem
from generator.calculation.notes import notes_in_turn
from generator.calculation.panel.remedies import check_rule, moved_marks, remedy
from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_checks import CheckPoint, Checks
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import NewCut, Worksheet
from generator.lengths import Edition, on_ruler, say_length, say_range
from generator.rendering.tables import drawn_up, piece_size
from generator.rendering.typeset import as_sentence, bare, typeset

# Between the number of parts and the size of what is joined of them.
_MAKE = " make "


@dataclass(frozen=True, slots=True)
class CutRow:
    """A row of the cut table: ``step`` is where a ``piece`` is cut that waits, 0 where it is cut now."""

    number: int
    label: Markup
    finished: Markup
    note: Markup
    size: Markup
    step: int
    piece: str


@dataclass(frozen=True, slots=True)
class CheckRow:
    """A row of checks: after which tuck, from where to where, what it should be, what is fine, how to put it right."""

    after: int
    start: str
    end: str
    expect: Markup
    fine: Markup
    remedy: Markup


@dataclass(frozen=True, slots=True)
class CheckTable:
    """The check rows of one set of tucks, with the rule above them; ``start`` where all are measured from one edge."""

    rule: Markup
    moved: Markup
    start: str
    rows: tuple[CheckRow, ...]


@dataclass(frozen=True, slots=True)
class LaterRow:
    """A row of what is cut later: what is measured and its plan, the sum in words, the planned cut."""

    follows: str
    measure: Markup
    cut: str
    words: Markup
    planned: Markup


def cut_rows(worksheet: Worksheet) -> tuple[CutRow, ...]:
    """Return what to cut, cloth by cloth: what is cut now before what waits."""
    later = next((step.number for step in worksheet.steps if "own measure" in step.lists), 0)
    several = len(worksheet.cloths) > 1
    rows: dict[tuple[str, str, str, bool], int] = {}
    for cloth in worksheet.cloths.values():
        for item in cloth.items:
            size = _cut_size(item, worksheet)
            # What a label says after a comma, such as that the cloth is washed, stands where it is bought.
            label = f"{item.label}, {cloth.label.partition(',')[0]}" if several else item.label
            key = (label, item.piece, size, item.later)
            rows[key] = rows.get(key, 0) + item.quantity
    found: list[CutRow] = []
    for (label, name, size, waits), number in rows.items():
        piece = worksheet.pieces.get(name)
        told = (_finished(piece, label, worksheet.edition), _cut_note(piece, worksheet.edition))
        found.append(CutRow(number, typeset(label), *told, typeset(size), later if waits else 0, name))
    return tuple(_told_once(sorted(found, key=lambda row: bool(row.step))))


def _told_once(rows: Iterable[CutRow]) -> Iterator[CutRow]:
    """The rows of a cut table; what the parts of a piece come to together stands in the first of them."""
    told: set[tuple[str, Markup]] = set()
    for row in rows:
        again = (row.piece, row.finished) in told and _MAKE in row.finished
        told.add((row.piece, row.finished))
        yield replace(row, finished=Markup("")) if again else row


def _cut_size(item: CutItem, worksheet: Worksheet) -> str:
    """The cut size as the piece lies before you, as its finished size and all steps tell it, not as on the cloth."""
    piece = worksheet.pieces.get(item.piece)
    sides = (item.along, item.across) if _lies_turned(piece) else (item.across, item.along)
    return " × ".join(on_ruler(side, worksheet.edition) for side in sides)


def _lies_turned(piece: Piece | None) -> bool:
    """Whether a piece lies on its side on the cloth."""
    return piece is not None and piece.grain == "across"


def _finished(piece: Piece | None, label: str, edition: Edition) -> Markup:
    """The finished size of a piece, of its parts together; of a grid that of bands which are told by their name."""
    if piece is None:
        return Markup("")
    band = next((part for part in piece.parts if piece.blocks and f", {part.name}" in label), None)
    if band is not None:
        return typeset(" × ".join(on_ruler(side, edition) for side in (band.finished_across, band.finished_along)))
    number = sum(cut.number for cut in piece.cuts)
    return Markup("{}{}").format(
        f"{number}{_MAKE}" if number > 1 else "", piece_size(piece, edition, cut=False, unit=False)
    )


def _cut_note(piece: Piece | None, edition: Edition) -> Markup:
    """What else is told of a piece: how it lies, the note of its project, to what it is drawn up."""
    if piece is None:
        return Markup("")
    paper = "cut to the paper" if any(part.shape for part in piece.parts) else ""
    turned = "on its side in the picture" if _lies_turned(piece) else ""
    told = (turned, paper, piece.note, str(drawn_up(piece, edition).striptags()))
    return typeset(notes_in_turn(told))


def check_table(tucks: TuckSet, checks: Checks, edition: Edition) -> CheckTable:
    """Return the checks of a set of tucks, each with its remedy in its row."""
    rule, moved = check_rule(checks.leeway, edition), moved_marks(checks.leeway)
    rows = tuple(_check_row(tucks, point, checks, edition) for point in checks.points)
    starts = {row.start for row in rows}
    return CheckTable(typeset(rule), typeset(moved), starts.pop() if len(starts) == 1 else "", rows)


def _check_row(tucks: TuckSet, point: CheckPoint, checks: Checks, edition: Edition) -> CheckRow:
    least, most = point.expect - point.within, point.expect + point.within
    return CheckRow(
        after=point.after,
        start=point.start,
        end=point.end,
        expect=bare(point.expect, edition),
        fine=typeset(f"{on_ruler(least, edition)} to {on_ruler(most, edition)}"),
        remedy=typeset(as_sentence(remedy(tucks, point, checks, edition))),
    )


def later_rows(cuts: Sequence[NewCut], edition: Edition) -> tuple[LaterRow, ...]:
    """Return how each waiting piece is cut from a measure of one's own.

    A side that no measure moves stands beside the one that is: 'back, across (12 along)'.
    """
    alike = groupby(cuts, key=lambda cut: (cut.piece, cut.name, cut.number))
    return tuple(row for _, sides in alike for row in _rows_of_cut(tuple(sides), edition))


def _rows_of_cut(sides: Sequence[NewCut], edition: Edition) -> Iterator[LaterRow]:
    moved = [cut for cut in sides if cut.follows]
    kept = [cut for cut in sides if not cut.follows]
    if len(moved) != 1:
        return (yield from (_later_row(cut, "", edition) for cut in sides))
    beside = "".join(f" ({on_ruler(cut.planned, edition)} {cut.side})" for cut in kept)
    yield _later_row(moved[0], beside, edition)


def _later_row(cut: NewCut, beside: str, edition: Edition) -> LaterRow:
    words = cut.words or ("see the table" if cut.follows else "as planned")
    name = f"{cut.piece}, {cut.name}" if cut.name else cut.piece
    number = f"{cut.number} \N{MULTIPLICATION SIGN} " if cut.number > 1 else ""
    return LaterRow(
        follows=" and ".join(measure for measure, _ in cut.follows),
        measure=Markup(" and ").join(bare(planned, edition) for _, planned in cut.follows),
        cut=f"{number}{name}, {cut.side}{beside}",
        words=typeset(words),
        planned=bare(cut.planned, edition),
    )


def size_measures(worksheet: Worksheet) -> tuple[tuple[str, Markup], ...]:
    """Return the measure that a size is chosen by, then those that it gives itself, by name, with their values."""
    told = worksheet.deciding
    chosen = [(told.name, bare(told.length, worksheet.edition))] if told else []
    measured = [
        (name, bare(worksheet.measures[name], worksheet.edition))
        for name in worksheet.own
        if name in worksheet.measures and (told is None or name != told.name)
    ]
    counted = [(name, typeset(f"{worksheet.numbers[name]}")) for name in worksheet.own if name in worksheet.numbers]
    return (*chosen, *measured, *counted)


def panel_sentence(worksheet: Worksheet, name: str) -> Markup:
    """Return the numbers of a panel in a sentence."""
    return typeset("; ".join(_panel_words(worksheet, name)) + ".")


def _panel_words(worksheet: Worksheet, name: str) -> Iterator[str]:
    panel, edition = worksheet.panels[name], worksheet.edition
    tucks = panel.across
    if tucks.count:
        yield f"{tucks.count} {'tucks' if tucks.count > 1 else 'tuck'}{_tuck_words(tucks, edition)}"
        yield f"margins {_pair(tucks, edition)}"
    if panel.cross is not None and panel.cross.count:
        yield f"{panel.cross.count} cross tucks{_tuck_words(panel.cross, edition)}"
    yield from _row_words(panel)
    if name in worksheet.thickest:
        thickest = worksheet.thickest[name]
        yield f"at most {thickest.layers} layers, {thickest.where}"


def _tuck_words(tucks: TuckSet, edition: Edition) -> str:
    deep = f" {say_range(min(tucks.depths), max(tucks.depths), edition)} deep"
    if not tucks.pitches:
        return deep
    return f"{deep}, {say_range(min(tucks.pitches), max(tucks.pitches), edition)} from stitching to stitching"


def _pair(tucks: TuckSet, edition: Edition) -> str:
    left, right = (say_length(margin, edition) for margin in (tucks.left_margin, tucks.right_margin))
    return left if left == right else f"{left} and {right}"


def _row_words(panel: Panel) -> Iterator[str]:
    if panel.rows is not None:
        number = len(panel.rows.rows)
        yield f"{number} {'rows' if number > 1 else 'row'}, {panel.rows.plan}"
