"""The tables of a sheet: values of a worksheet come in, rows of set text go out; nothing is worked out here."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import groupby

from markupsafe import Markup, escape

from generator.calculation.making_up.laid import LaidOut
from generator.calculation.worked import Panel, RowSet, TuckSet
from generator.calculation.worked_piece import Outline, Piece
from generator.calculation.worked_project import ClothUse, Thickness, Worksheet
from generator.lengths import Edition, on_ruler, say_length, say_range
from generator.rendering.typeset import bare, said, typeset

Fact = tuple[str, Markup]


@dataclass(frozen=True, slots=True)
class CutLine:
    """One line of the list to cut out: how many of what, in which size."""

    number: int
    label: str
    size: Markup


@dataclass(frozen=True, slots=True)
class Mark:
    """One fold mark of a table: its number, where it lies, and the depth of its tuck where depths differ."""

    number: int
    place: Markup
    depth: Markup


def two_way(across: Fraction, along: Fraction, edition: Edition) -> str:
    """Return a size across and along as plain text with one unit.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> two_way(Fraction(109, 4), Fraction(31, 2), INCH)
    '27 1/4 × 15 1/2 in'
    """
    return f"{on_ruler(across, edition)} × {on_ruler(along, edition)} {edition.unit}"


def piece_size(piece: Piece, edition: Edition, *, cut: bool, unit: bool = True) -> Markup:
    """Return the cut or the finished size of a piece; unlike parts are each told, a bought piece has no size.

    Without its unit it is for columns whose heading names it.
    """
    told = f" {edition.unit}" if unit else ""
    whole = (piece.finished_across, piece.finished_along)
    sizes = [
        _sized(part.outline, on_ruler(across, edition), on_ruler(along, edition), told)
        for part in piece.parts
        for across, along in ((part.cut_across, part.cut_along) if cut else whole,)
    ]
    return typeset(" and ".join(dict.fromkeys(sizes)))


def _sized(outline: Outline, across: str, along: str, unit: str) -> str:
    return f"{across}{unit} across the circle" if outline.one_measure else f"{across} × {along}{unit}"


def in_parts(piece: Piece) -> str:
    """Return in how many parts a piece is cut that is not cut in one; empty where it is, or where each is told."""
    if piece.lengths is not None:
        return f", in {piece.lengths.count} parts"
    number = sum(cut.number for cut in piece.cuts)
    if piece.panel is not None or number == 1 or len(piece.cuts) != 1:
        return ""
    return f" each, in {number} parts"


def drawn_up(piece: Piece, edition: Edition) -> Markup:
    """Return to what length a strip is gathered or pleated; nothing for a piece that keeps its length."""
    drawn = piece.made.drawn_up
    if drawn is None or not drawn.to:
        return Markup("")
    return typeset(f"{'gathered' if drawn.gathered else 'pleated'} to {say_length(drawn.to, edition)}")


def finished_size(worksheets: Sequence[Worksheet]) -> str:
    """Return the size of the finished thing in each edition: how large it lies, or how far round and how long it is.

    Examples: '12 × 12 in', '14 × 14 × 2 in', '18 in round, 8 in long', '4, each 16 × 12 in or 40 × 30 cm'.
    """
    number = worksheets[0].laid_out.number
    sizes = [_thing_size(worksheet.laid_out, worksheet.edition) for worksheet in worksheets]
    return f"{f'{number}, each ' if number > 1 else ''}{' or '.join(sizes)}"


def _thing_size(laid: LaidOut, edition: Edition) -> str:
    if laid.round:
        way, length = (laid.across, laid.along) if laid.round == "across" else (laid.along, laid.across)
        return f"{say_length(way, edition)} round, {say_length(length, edition)} long"
    if laid.depth:
        return f"{on_ruler(laid.across, edition)} × {two_way(laid.along, laid.depth, edition)}"
    return two_way(laid.across, laid.along, edition)


def cut_list(cloth: ClothUse, edition: Edition) -> tuple[CutLine, ...]:
    """Return what to cut from one cloth, equal pieces counted together, in the order of the layout."""
    counted: dict[tuple[str, Fraction, Fraction], int] = {}
    for placed in cloth.layout.placed:
        size = (placed.along, placed.across) if placed.turned else (placed.across, placed.along)
        counted[(placed.label, *size)] = counted.get((placed.label, *size), 0) + 1
    return tuple(
        CutLine(number, label, typeset(two_way(across, along, edition)))
        for (label, across, along), number in counted.items()
    )


def key_numbers(panel: Panel, edition: Edition, thickest: Thickness | None = None) -> tuple[Fact, ...]:
    """Return the numbers of a panel that are looked up at the cutting table."""
    tucks = panel.across
    facts: list[Fact] = [("Tucks", escape(tucks.count))]
    if tucks.count:
        facts += [
            ("Depth, stitching to fold", _equal_or_runs(tucks.depths, edition)),
            ("Spacing, mark to mark", _equal_or_runs(tucks.spacings, edition)),
            ("Pitch, stitching to stitching", _equal_or_runs(tucks.pitches, edition)),
            ("Margins, left and right", _pair(tucks.left_margin, tucks.right_margin, edition)),
            ("Cloth hidden by all tucks", said(tucks.take_up, edition)),
            ("Ruler division for marks and rows", said(panel.division, edition) if panel.division else Markup("")),
        ]
    if panel.rows is not None:
        facts += _row_facts(panel.rows, edition)
    if thickest is not None:
        facts.append(("Layers at the thickest", Markup("{}, {}").format(thickest.layers, thickest.where)))
    return tuple((label, value) for label, value in facts if value)


def _row_facts(rows: RowSet, edition: Edition) -> list[Fact]:
    draw_in = _range(rows.draw_in_least, rows.draw_in_most, edition)
    return [
        ("Tack rows", Markup("{}, {}").format(len(rows.rows), rows.plan)),
        ("Rows apart, as ruled", said(rows.spacing, edition)),
        ("Cut longer for draw-in", said(rows.extra, edition) if rows.extra else Markup("")),
        ("Draw-in to expect", draw_in),
    ]


def _pair(left: Fraction, right: Fraction, edition: Edition) -> Markup:
    if left == right:
        return said(left, edition)
    return Markup("{} and {}").format(said(left, edition), said(right, edition))


def _range(least: Fraction, most: Fraction, edition: Edition) -> Markup:
    """Return a range of lengths, or one length where both ends are equal."""
    return typeset(say_range(least, most, edition))


def finished_range(least: Fraction, most: Fraction, edition: Edition) -> Markup:
    """Return where a row ends up."""
    return _range(least, most, edition)


def _equal_or_runs(lengths: Sequence[Fraction], edition: Edition) -> Markup:
    """Return one length where all are equal, two runs of equal ones in order, else the range."""
    runs = [(length, len(list(equal))) for length, equal in groupby(lengths)]
    if len(runs) != 2:
        return _range(min(lengths), max(lengths), edition) if runs else Markup("")
    told = (Markup("{} × {}").format(number, said(length, edition)) for length, number in runs)
    return Markup(", ").join(told)


def mark_rows(tucks: TuckSet, edition: Edition, columns: int) -> tuple[tuple[Mark, ...], ...]:
    """Return the fold marks dealt out in rows of a table, reading across; with the depths where they differ."""
    unequal = len(set(tucks.depths)) > 1
    marks = [
        Mark(number, bare(mark, edition), said(depth, edition) if unequal else Markup(""))
        for number, (mark, depth) in enumerate(zip(tucks.marks, tucks.depths, strict=True), 1)
    ]
    return tuple(tuple(marks[start : start + columns]) for start in range(0, len(marks), columns))


def in_order(labels: Iterable[str]) -> tuple[str, ...]:
    """Return labels without repeats, in the order of their first place."""
    return tuple(dict.fromkeys(labels))
