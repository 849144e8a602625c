"""What a text or a formula may ask of a tucked panel, by name: a worked panel comes in, lengths and counts go out."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.panel.tucks import visible_space
from generator.calculation.worked import Panel, RowSet, TuckSet


def panel_measures(panel: Panel, cut_along: Fraction, along: Fraction) -> dict[str, Fraction]:
    """Return every measure that the panel has, lengths in inches."""
    tucks = panel.across
    measures = {
        "across": tucks.finished,
        "along": along,
        "cut across": tucks.cut,
        "cut along": cut_along,
        "number": Fraction(tucks.count),
        "take up": tucks.take_up,
        "left margin": tucks.left_margin,
        "right margin": tucks.right_margin,
        "margin": tucks.left_margin,
        "left hem": _hem(tucks, "left"),
        "right hem": _hem(tucks, "right"),
        "breadths": Fraction(len(panel.breadths) or 1),
        "edge": 2 * (tucks.finished + along),
    }
    if tucks.count:
        measures |= _tuck_measures(tucks)
    measures["released across"] = panel.released.widest if panel.released is not None else tucks.finished
    measures["fullness"] = measures["released across"] / tucks.finished
    if panel.rods is not None:
        measures["rod"] = panel.rods.thick
    if panel.rows is not None:
        measures |= _row_measures(panel.rows)
    extra = measures.setdefault("extra", Fraction(0))
    measures["sewn along"] = cut_along - extra
    if panel.cross is not None:
        measures |= _cross_measures(panel.cross)
    return measures


def _cross_measures(cross: TuckSet) -> dict[str, Fraction]:
    """Return what the second set has: the same measures, each with 'cross' before its name."""
    own = {**_tuck_measures(cross), "margin": cross.left_margin, "take up": cross.take_up}
    names = ("depth", "spacing", "pitch", "margin", "first mark", "last mark", "take up")
    return {
        "cross number": Fraction(cross.count),
        **{f"cross {name}": own[name] for name in names if name in own},
    }


def _hem(tucks: TuckSet, side: str) -> Fraction:
    end = tucks.left if side == "left" else tucks.right
    allowance = tucks.left_allowance if side == "left" else tucks.right_allowance
    return allowance if end.kind == "caught hem" else Fraction(0)


def _tuck_measures(tucks: TuckSet) -> dict[str, Fraction]:
    measures = {
        "depth": max(tucks.depths),
        "least depth": min(tucks.depths),
        "greatest depth": max(tucks.depths),
        "first mark": tucks.marks[0],
        "last mark": tucks.marks[-1],
    }
    if tucks.count > 1:
        measures["spacing"] = tucks.spacings[0]
        measures["pitch"] = tucks.pitches[0]
        measures["visible space"] = visible_space(tucks.pitches[0], tucks.depths[0])
    return measures


def _row_measures(rows: RowSet) -> dict[str, Fraction]:
    return {
        "rows": Fraction(len(rows.rows)),
        "row spacing": rows.spacing,
        "first row": rows.rows[0].ruled if rows.rows else rows.first,
        "last row": rows.rows[-1].ruled if rows.rows else rows.first,
        "layers": Fraction(rows.layers),
        "draw in": rows.extra,
        "extra": rows.extra,
    }
