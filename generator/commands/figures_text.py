"""The figures of a worksheet as a table that a person likes to read: a worksheet comes in, text goes out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.pieces.cut import Cut
from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked import Panel, RowSet, TuckSet
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.cut_order import proof_words
from generator.commands.columns import UNIT_WORDS, in_columns, indented
from generator.lengths import Edition, on_ruler, say_length


def figures_text(worksheet: Worksheet) -> str:
    """Return the numbers of a worksheet as plain text in columns."""
    edition = worksheet.edition
    lines = [
        f"{worksheet.title}, size {worksheet.size_label}",
        f"{edition.name} edition, lengths in {UNIT_WORDS[edition.unit]}",
        "",
        *_pieces(worksheet),
    ]
    for piece in worksheet.pieces.values():
        if piece.panel is not None:
            lines += ["", f"{piece.label}: tucks", *_tucks(piece.panel.across, edition)]
            lines += _panel(piece.panel, edition)
    lines += [
        "",
        "Cloth",
        *_cloths(worksheet),
        "",
        *(f"Thread{words}  {length}, spools: {spools}" for words, length, spools in worksheet.thread.lines),
    ]
    lines += _findings(worksheet)
    return "\n".join(lines)


def _pieces(worksheet: Worksheet) -> list[str]:
    edition = worksheet.edition
    rows: list[tuple[str, ...]] = [
        ("piece", "number", "cut across", "cut along", "finished across", "finished along", "cloth")
    ]
    for piece in worksheet.pieces.values():
        for cut in piece.cuts:
            sides = (cut.across, cut.along, piece.finished_across, piece.finished_along)
            number = str(piece.quantity * cut.number)
            rows.append((_named(piece, cut), number, *(on_ruler(side, edition) for side in sides), piece.cloth))
    return in_columns(rows)


def _named(piece: Piece, cut: Cut) -> str:
    if cut.name:
        return f"{piece.label}, {cut.name}"
    return piece.label if cut.number == 1 else f"{piece.label} (in {cut.number} parts)"


def _tucks(tucks: TuckSet, edition: Edition) -> list[str]:
    if not tucks.count:
        return ["  no tucks fit: the piece is plain"]
    facts = [
        ("number", str(tucks.count)),
        ("depth", _span(tucks.depths, edition)),
        ("spacing, fold to fold", _span(tucks.spacings, edition)),
        ("pitch, stitching to stitching", _span(tucks.pitches, edition)),
        (
            "margins, left and right",
            f"{on_ruler(tucks.left_margin, edition)} and {on_ruler(tucks.right_margin, edition)}",
        ),
        ("taken up by the tucks", on_ruler(tucks.take_up, edition)),
    ]
    return [
        *(f"  {name:<30}{value}" for name, value in facts),
        *indented(
            f"  {'fold marks from the cut edge':<30}", ", ".join(on_ruler(mark, edition) for mark in tucks.marks)
        ),
    ]


def _span(lengths: Sequence[Fraction], edition: Edition) -> str:
    if not lengths:
        return "none"
    least, most = on_ruler(min(lengths), edition), on_ruler(max(lengths), edition)
    return least if least == most else f"{least} to {most}"


def _panel(panel: Panel, edition: Edition) -> list[str]:
    lines = []
    for point in (*panel.checks.points, *panel.cross_checks.points):
        where = f"after tuck {point.after}: {point.start} to {point.end}"
        lines.append(
            f"  check {where} = {say_length(point.expect, edition)}, within {say_length(point.within, edition)}"
        )
    if panel.rows is not None:
        lines += _rows(panel.rows, edition)
    return lines


def _rows(rows: RowSet, edition: Edition) -> list[str]:
    lines = [
        f"  rows ({rows.plan}), ruled from the top cut edge; {on_ruler(rows.extra, edition)} cut extra for draw-in"
    ]
    for row in rows.rows:
        ends = f"ends at {on_ruler(row.least, edition)} to {on_ruler(row.most, edition)}"
        lines.append(f"    row {row.number}: ruled at {on_ruler(row.ruled, edition)}, {ends}, start at the {row.start}")
        lines += indented("      ", spoken_row(row.words))
    return lines


def _cloths(worksheet: Worksheet) -> list[str]:
    edition = worksheet.edition
    rows: list[tuple[str, ...]] = [("cloth", "usable width", "layout", "at least", "fits from width", "buy")]
    for use in worksheet.cloths.values():
        lengths = (use.width, use.layout.length, use.layout.lower_bound, use.narrowest)
        rows.append((f"{use.name} ({use.label})", *(on_ruler(length, edition) for length in lengths), use.buy_text))
    told = (indented(f"  {use.name}: ", proof_words(use, edition)) for use in worksheet.cloths.values())
    return [*in_columns(rows), *(line for lines in told for line in lines)]


def _findings(worksheet: Worksheet) -> list[str]:
    told = [str(finding) for finding in worksheet.findings if finding.level != "note"]
    return ["", *told] if told else []
