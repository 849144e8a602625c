"""Tables for the shop and the work basket: editions come in, tables of set text go out; all numbers are worked out."""

from __future__ import annotations

from fractions import Fraction

from markupsafe import Markup, escape

from generator.calculation.cutting.cloth import buy_text
from generator.calculation.pieces.buttons import buttonhole, from_lignes
from generator.calculation.pieces.fullness import PUBLISHED_FULLNESS, gathered_length
from generator.lengths import INCH, METRE, METRIC, MILLIMETRE, YARD, Edition, round_up, write_length, write_number
from generator.rendering.reference_tuck_tables import ReferenceTable
from generator.rendering.typeset import said, typeset

_EIGHTHS = (1, 2, 3, 4, 5, 6, 7, 8, 10, 12, 14, 16, 18, 20, 24, 28, 32, 40)
_TENTHS = (1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 12, 15, 18, 20, 25, 30, 40, 50)
_LIGNES = (16, 18, 20, 24, 28, 30, 32, 36, 40, 45)
_BUTTONS = {
    INCH.unit: (
        tuple(Fraction(eighths, 8) for eighths in (3, 4, 5, 6, 7, 8, 9, 10)),
        (Fraction(1, 16), Fraction(1, 8), Fraction(3, 16)),
    ),
    METRIC.unit: (
        tuple(across * MILLIMETRE for across in (10, 12, 15, 18, 20, 22, 25, 30)),
        tuple(thick * MILLIMETRE for thick in (2, 3, 4)),
    ),
}
_INCH_AND_YARD = "1 yd = 0.9144 m and 1 in = 25.4 mm exactly: L. V. Judson, Addendum to NBS Circular 572."


def shop_tables(editions: tuple[Edition, ...]) -> tuple[ReferenceTable, ...]:
    """Return the tables of cloth, buttons and fullness for the editions of a room."""
    shops = {edition.unit: edition for edition in (INCH, METRIC, *editions)}
    holes = tuple(_buttonholes(edition) for edition in editions)
    return (_yards(shops["cm"]), _metres(shops["in"]), _fullness(editions), *holes, _lignes())


def _yards(metric: Edition) -> ReferenceTable:
    rows = []
    for eighths in _EIGHTHS:
        length = Fraction(eighths, 8) * YARD
        asked = buy_text(round_up(length, metric.buy_step), metric)
        exact = f"{write_number(length / METRE)} m"
        rows.append((typeset(buy_text(length, INCH)), said(length, INCH), typeset(exact), typeset(asked)))
    return ReferenceTable(
        "yards",
        "Yards in metres",
        "Ask for the length in the last column where cloth is sold by the metre: it is never too short.",
        tuple(map(escape, ("Yards", "Inches", "Metres exactly", "Ask for"))),
        tuple(rows),
        _INCH_AND_YARD,
    )


def _metres(inch: Edition) -> ReferenceTable:
    rows = []
    for tenths in _TENTHS:
        length = Fraction(tenths, 10) * METRE
        asked = buy_text(round_up(length, inch.buy_step), inch)
        rows.append((typeset(buy_text(length, METRIC)), said(length, inch), typeset(asked)))
    return ReferenceTable(
        "metres",
        "Metres in yards",
        "Inches are to the nearest mark of the ruler. Ask for the length in the last column: it is never too short.",
        tuple(map(escape, ("Metres", "Inches, about", "Ask for"))),
        tuple(rows),
        _INCH_AND_YARD,
    )


def _fullness(editions: tuple[Edition, ...]) -> ReferenceTable:
    """Published fullness, with the strip that it makes for a usual length of edge."""
    edges = tuple(YARD if edition.unit == "in" else METRE for edition in editions)
    rows = []
    for use in PUBLISHED_FULLNESS:
        strips = [
            _between(
                buy_text(gathered_length(edge, use.least), edition), buy_text(gathered_length(edge, use.most), edition)
            )
            for edge, edition in zip(edges, editions, strict=True)
        ]
        times = _between(_mixed(use.least), _mixed(use.most))
        rows.append((escape(use.use), times, *strips, escape(use.source)))
    heads = (f"For an edge of {buy_text(edge, edition)}" for edge, edition in zip(edges, editions, strict=True))
    return ReferenceTable(
        "fullness",
        "Fullness",
        "Length of the strip divided by the length of the finished edge, as printed books have it. They differ widely, "
        "and so does cloth: gather a sample.",
        (escape("Use"), escape("Times the edge"), *map(typeset, heads), escape("Source")),
        tuple(rows),
        "As named in each line.",
    )


def _mixed(number: Fraction) -> str:
    """A plain number as a whole and a common fraction."""
    return write_length(number, INCH)


def _between(least: str, most: str) -> Markup:
    return typeset(least) if least == most else Markup("{} to {}").format(typeset(least), typeset(most))


def _buttonholes(edition: Edition) -> ReferenceTable:
    buttons, thicknesses = _BUTTONS[edition.unit]
    rows = [
        (said(across, edition), *(said(buttonhole(across, thick), edition) for thick in thicknesses))
        for across in buttons
    ]
    return ReferenceTable(
        f"buttonholes-{edition.name}",
        f"Buttonholes, {'centimetres' if edition.unit == 'cm' else 'inches'}",
        "Diameter and thickness together, for a flat button; the bars at the ends come beside it. Try it on a scrap.",
        (escape("Button"), *(Markup("{} thick").format(said(thick, edition)) for thick in thicknesses)),
        tuple(rows),
        "University of Minnesota Agricultural Extension, Buttons and Buttonholes, 1965.",
    )


def _lignes() -> ReferenceTable:
    rows = []
    for lignes in _LIGNES:
        across = from_lignes(Fraction(lignes))
        millimetres = write_number(Fraction(round(across / MILLIMETRE * 10), 10))
        rows.append((escape(lignes), typeset(write_length(across, INCH, unit=True)), typeset(f"{millimetres} mm")))
    return ReferenceTable(
        "lignes",
        "Buttons in lignes",
        "The button trade measures in lignes; forty are an inch. Millimetres are to the nearest tenth.",
        tuple(map(escape, ("Lignes", "Inches", "Millimetres"))),
        tuple(rows),
        "Dictionary of Dry Goods, “Line”.",
    )
