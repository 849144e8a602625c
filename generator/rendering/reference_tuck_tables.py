"""Tables of tucks and rows for the reference: an edition comes in, tables of set text go out; all is worked out."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

from markupsafe import Markup, escape

from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel.stitching_errors import random_error, systematic_error
from generator.calculation.panel.tolerance import check_points
from generator.calculation.reference_rows import RowLoss, row_loss
from generator.calculation.reference_tables import (
    COUNTS,
    hidden_cloth,
    tucks_in_width,
    usual_depths,
    usual_spacings,
    usual_widths,
)
from generator.calculation.worked import End, TuckSet
from generator.lengths import (
    CENTIMETRE,
    INCH,
    METRIC,
    Edition,
    round_down,
    round_nearest,
    round_up,
    say_length,
    say_range,
    write_number,
)
from generator.rendering.typeset import said, typeset

_OURS = "Worked out by the formulas of this tool; no published source."
_PRACTICE = "Common practice, no source."
_CHECKED_TUCKS, _CHECKED_DEPTH, _CHECKED_SPACING = 48, 3, 12
_ROWS_APART = {INCH.unit: (2, 3, 4, 5, 6, 8, 10), METRIC.unit: (5, 8, 10, 12, 15, 20, 25)}
_ROW_DEPTHS = slice(1, 5)


@dataclass(frozen=True, slots=True)
class ReferenceTable:
    """One table: its name on the page, its title, what to know before reading it, headings, rows and source.

    The first cell of a row heads it.
    """

    name: str
    title: str
    note: str
    columns: tuple[Markup, ...]
    rows: tuple[tuple[Markup, ...], ...]
    source: str


def percent_range(least: Fraction, most: Fraction) -> str:
    """Return two shares as a range in percent, to the nearest tenth.

    Examples
    --------
    >>> percent_range(Fraction(1, 17), Fraction(1, 7)), percent_range(Fraction(0), Fraction(0))
    ('5.9 to 14.3 %', '0 %')
    """
    low, high = (write_number(Fraction(round(share * 1000), 10)) for share in (least, most))
    return f"{low} %" if low == high else f"{low} to {high} %"


def tuck_tables(edition: Edition) -> tuple[ReferenceTable, ...]:
    """Return the tables of tucks of one edition."""
    return (_hidden(edition), _fitting(edition), _drawn_in(edition), _errors(edition))


def _hidden(edition: Edition) -> ReferenceTable:
    rows = zip(COUNTS, hidden_cloth(edition), strict=True)
    return ReferenceTable(
        f"hidden-{edition.name}",
        f"Cloth hidden by tucks, {_units(edition)}",
        "Twice the depth for each tuck, before the thickness of the cloth. A sewn sample knows better.",
        (escape("Tucks"), *(Markup("{} deep").format(said(depth, edition)) for depth in usual_depths(edition))),
        tuple((escape(count), *(said(length, edition) for length in hidden)) for count, hidden in rows),
        "L. I. Baldt, Clothing for Women, 1916.",
    )


def _fitting(edition: Edition) -> ReferenceTable:
    """How many tucks fit a finished width, with the margins and the cloth that belong to it."""
    sorts = usual_spacings(edition)
    rows = []
    for width in usual_widths(edition):
        fits = [tucks_in_width(width, depth, spacing, edition) for depth, spacing in sorts]
        cells = [
            Markup("<b>{}</b>, margins {}, cloth {}").format(
                fit.count, said(fit.margin, edition), said(fit.cloth, edition)
            )
            for fit in fits
        ]
        rows.append((said(width, edition), *cells))
    heads = (Markup("{} deep, {} apart").format(said(depth, edition), said(apart, edition)) for depth, apart in sorts)
    return ReferenceTable(
        f"fitting-{edition.name}",
        f"Tucks in a finished width, {_units(edition)}",
        "Between two seams, with room at the edges for a tuck that is turned outward. The cloth is flat, without "
        "seam allowances; apart is from mark to mark.",
        (escape("Finished width"), *heads),
        tuple(rows),
        f"The division: NIMI, CITS Dress Making, Trade Practical vol. 2. Margins: {_PRACTICE.lower()}",
    )


def _drawn_in(edition: Edition) -> ReferenceTable:
    depths = usual_depths(edition)[_ROW_DEPTHS]
    rows = [
        (said(spacing, edition), *(_loss(row_loss(depth, spacing), edition) for depth in depths))
        for spacing in (number * edition.unit_length for number in _ROWS_APART[edition.unit])
    ]
    return ReferenceTable(
        f"draw-in-{edition.name}",
        f"Length lost between two rows, {_units(edition)}",
        "Where every tuck goes over from one side to the other. Expect a value in the range; cut for the larger one.",
        (escape("Rows apart"), *(Markup("{} deep").format(said(depth, edition)) for depth in depths)),
        tuple(rows),
        _OURS,
    )


def _loss(loss: RowLoss, edition: Edition) -> Markup:
    if loss.lost is None:
        return escape("too close")
    # An upper bound that is rounded down is none: cloth is cut by it.
    least, most = round_down(loss.lost.least, edition.mark), round_up(loss.lost.most, edition.mark)
    told = typeset(say_range(least, most, edition))
    return Markup("{}; sew a sample").format(told) if loss.tight else told


def _errors(edition: Edition) -> ReferenceTable:
    """What a check point lets pass, and what small errors of depth add up to by then."""
    fine = say_length(edition.mark, edition)
    rows = [
        (
            escape(point.after),
            said(point.within, edition),
            said(systematic_error(point.after, edition.mark), edition),
            said(round_nearest(random_error(point.after, edition.mark), edition.mark), edition),
        )
        for point in check_points(_long_panel(edition), edition)
    ]
    return ReferenceTable(
        f"checks-{edition.name}",
        f"What errors of stitching come to, {_units(edition)}",
        "A check point lets pass what is usual. More than that means that the guide is off: every tuck then loses "
        "twice the error.",
        (
            escape("After tuck"),
            escape("Give or take"),
            typeset(f"Off, if every line is {fine} too deep"),
            typeset(f"Off, if lines are {fine} off by chance"),
        ),
        tuple(rows),
        f"{_OURS} What is usual: {_PRACTICE.lower()}",
    )


def _long_panel(edition: Edition) -> TuckSet:
    """A panel with many tucks, on which every check point comes up."""
    step = CENTIMETRE / 3 if edition.unit == "cm" else Fraction(1, 8)
    depth, spacing = _CHECKED_DEPTH * step, _CHECKED_SPACING * step
    margin, seam = 2 * depth, End("seam", edition.unit_length)
    tucks = laid_out(
        (depth,) * _CHECKED_TUCKS,
        (2 * depth,) * _CHECKED_TUCKS,
        (spacing,) * (_CHECKED_TUCKS - 1),
        (seam, seam),
        (margin, margin),
    )
    return rounded(tucks, edition)


def _units(edition: Edition) -> str:
    return "centimetres" if edition.unit == "cm" else "inches"
