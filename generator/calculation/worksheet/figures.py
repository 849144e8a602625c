"""The figures of a worksheet as plain nested values: exact text in the edition's unit, never a float.

The shape is a stable interface: keys may be added, none is renamed or removed. Rows end up within a range, because
tucks draw in, so ``rows.finished`` holds a pair (least, most) for each row.
"""

from __future__ import annotations

from fractions import Fraction
from typing import Any

from generator.calculation.making_up.joined import Joined, Opening
from generator.calculation.striped import PanelStripes
from generator.calculation.turning.pressed import spaces_shown
from generator.calculation.turning.turns import spoken_row
from generator.calculation.worked import Panel, Released, RowSet, TuckSet
from generator.calculation.worked_checks import Checks
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import ClosureWork, MeetingWork, Worksheet
from generator.calculation.worksheet.cloth_figures import cloth_figures
from generator.calculation.worksheet.threads import thread_figures
from generator.lengths import Edition, write_length


def figures(worksheet: Worksheet) -> dict[str, Any]:
    """Return all numbers of a worksheet, ready for JSON."""
    edition = worksheet.edition
    return {
        "project": worksheet.project,
        "size": worksheet.size,
        "edition": edition.name,
        "unit": edition.unit,
        "measures": {name: write_length(length, edition) for name, length in worksheet.measures.items()},
        "numbers": {name: str(number) for name, number in worksheet.numbers.items()},
        "finished": _finished(worksheet),
        "pieces": {name: piece_figures(piece, edition) for name, piece in worksheet.pieces.items()},
        "meetings": [
            {
                "join": meeting.join,
                "to": meeting.to,
                "join_length": write_length(meeting.join_length, edition),
                "to_length": write_length(meeting.to_length, edition),
                **_drawn(meeting, edition),
            }
            for meeting in worksheet.meetings
        ],
        "closures": [_closure(closure, edition) for closure in worksheet.closures],
        "cloth": {name: cloth_figures(use, edition) for name, use in worksheet.cloths.items()},
        "thread": thread_figures(worksheet.thread),
        "supplies": [{"item": line.item, "amount": line.amount} for line in worksheet.supplies],
        "minutes": worksheet.minutes,
        "joined": [{"step": step.number, **_joined(one, edition)} for step in worksheet.steps for one in step.joined],
        "thickest": {name: {"layers": one.layers, "where": one.where} for name, one in worksheet.thickest.items()},
        "cost": worksheet.cost,
        "as_sewn": {name: write_length(length, edition) for name, length in worksheet.as_sewn.items()},
        "findings": [
            {"level": finding.level, "piece": finding.piece, "text": finding.text} for finding in worksheet.findings
        ],
    }


def _drawn(meeting: MeetingWork, edition: Edition) -> dict[str, Any]:
    """How the first edge is gathered or pleated to the second, and both lines of every pleat; nothing elsewhere."""
    if meeting.drawn is None:
        return {}
    return {"how": meeting.drawn.way, "pleats": [_lengths(fold, edition) for fold in meeting.drawn.pleats]}


def _joined(one: Joined, edition: Edition) -> dict[str, Any]:
    """What a step joins, from below: its layers, the sides at which it is sewn, the opening that stays."""

    def told(opening: Opening) -> dict[str, str]:
        where = {"at": opening.end} if opening.end else {}
        where |= {"closed by": "zip"} if opening.zipped else {}
        return {"edge": ".".join(opening.edge), "length": write_length(opening.length, edition), **where}

    return {
        "does": one.does,
        "sorts": list(one.sorts),
        "layers": [
            {"pieces": list(layer.pieces), "right_side_up": layer.right_side_up, "at": layer.at, "own": layer.own}
            for layer in one.layers
        ],
        "sides": list(one.sides),
        "opening": one.opening and told(one.opening),
        "open_for_good": [told(gap) for gap in one.gaps],
        "turned": one.turned,
    }


def _finished(worksheet: Worksheet) -> dict[str, Any]:
    """The finished thing: its size, how many there are, and which way is a way round."""
    laid, edition = worksheet.laid_out, worksheet.edition
    size = {**_sides(laid.across, laid.along, edition), "depth": write_length(laid.depth, edition)}
    return {**size, "round": laid.round, "number": laid.number}


def piece_figures(piece: Piece, edition: Edition) -> dict[str, Any]:
    """Return the numbers of one piece."""
    worked: dict[str, Any] = {
        "kind": piece.kind,
        "cloth": piece.cloth,
        "quantity": piece.quantity,
        "cut": _sides(piece.cut_across, piece.cut_along, edition),
        "finished": _sides(piece.finished_across, piece.finished_along, edition),
    }
    if piece.panel is None and (piece.square or sum(cut.number for cut in piece.cuts) > 1):
        worked["parts"] = _parts(piece, edition)
    if piece.fixed:
        worked |= {"fixed": piece.fixed, "lies_on": piece.lies_on}
    if piece.made.pleats:
        worked["pleats"] = [_lengths(fold, edition) for fold in piece.made.pleats]
    if piece.quarters:
        worked["hangs_by"] = piece.hangs_by
    if piece.panel is not None:
        worked |= _panel(piece.panel, edition)
    return worked


def _sides(across: Fraction, along: Fraction, edition: Edition) -> dict[str, str]:
    return {"across": write_length(across, edition), "along": write_length(along, edition)}


def _parts(piece: Piece, edition: Edition) -> dict[str, Any]:
    """The parts of a piece: how many, and the largest; those of unlike sizes each by its name."""
    largest = max(piece.cuts, key=lambda cut: (cut.across, cut.along))
    told = {"count": sum(cut.number for cut in piece.cuts), **_sides(largest.across, largest.along, edition)}
    if len(piece.cuts) == 1:
        return told
    each = [{"part": cut.name, "count": cut.number, **_sides(cut.across, cut.along, edition)} for cut in piece.cuts]
    return {**told, "each": each}


def _released(released: Released, edition: Edition) -> dict[str, Any]:
    """Tucks that are let go: where they are stitched, once where all are alike, and how much longer free edges are."""
    told = [[_lengths(stretch, edition) for stretch in own] for own in released.stitched]
    each = told[:1] if len(set(released.stitched)) == 1 else told
    return {
        "stitched": [stretch for own in each for stretch in own],
        "free": {edge: write_length(width, edition) for edge, width in released.free.items()},
        "ends": "tied" if released.tied else "sewn back",
    }


def _panel(panel: Panel, edition: Edition) -> dict[str, Any]:
    worked: dict[str, Any] = {"tucks": _tucks(panel.across, edition)}
    if panel.cross is not None:
        worked["cross_tucks"] = _tucks(panel.cross, edition)
    if panel.rows is not None:
        worked["rows"] = _rows(panel.rows, edition)
    if panel.rods is not None:
        worked["rods"] = {
            "thick": write_length(panel.rods.thick, edition),
            "rings": _lengths(panel.rods.rings, edition),
        }
    if panel.pressed:
        shown = _alike(spaces_shown(panel.across, panel.pressed), edition) if len(panel.pressed) > 1 else []
        worked["pressed"] = {"turns": "".join(turn.value for turn in panel.pressed), "shown": shown}
    if panel.released is not None:
        worked["released"] = _released(panel.released, edition)
    worked["checkpoints"] = _checks(panel.checks, edition)
    if panel.cross is not None:
        worked["cross_checkpoints"] = _checks(panel.cross_checks, edition)
    if panel.stripes is not None:
        worked["stripes"] = _stripes(panel.stripes, edition)
    if panel.joins:
        worked["breadths"] = _lengths(panel.breadths, edition)
        worked["joins"] = [
            {"tuck": join.tuck, "foot": join.foot, "at": write_length(join.at, edition), "hidden": join.hidden}
            for join in panel.joins
        ]
    return worked


def _checks(checks: Checks, edition: Edition) -> list[dict[str, Any]]:
    return [
        {
            "after": point.after,
            "from": point.start,
            "to": point.end,
            "expect": write_length(point.expect, edition),
            "within": write_length(point.within, edition),
        }
        for point in checks.points
    ]


def _lengths(lengths: tuple[Fraction, ...], edition: Edition) -> list[str]:
    return [write_length(length, edition) for length in lengths]


def _alike(lengths: tuple[Fraction, ...], edition: Edition) -> str | list[str]:
    """One text where all are equal, else the list of them."""
    if len(set(lengths)) == 1:
        return write_length(lengths[0], edition)
    return _lengths(lengths, edition)


def _tucks(tucks: TuckSet, edition: Edition) -> dict[str, Any]:
    return {
        "count": tucks.count,
        "depth": _alike(tucks.depths, edition),
        "spacing": _alike(tucks.spacings, edition),
        "pitch": _alike(tucks.pitches, edition),
        "take_up": write_length(tucks.take_up, edition),
        "margins": _lengths((tucks.left_margin, tucks.right_margin), edition),
        "marks": _lengths(tucks.marks, edition),
        "stitching": _lengths(tucks.stitching, edition),
    }


def _stripes(stripes: PanelStripes, edition: Edition) -> dict[str, Any]:
    colours = stripes.colours
    return {
        "repeat": write_length(stripes.repeat, edition),
        "left_cut_edge": write_length(stripes.start, edition),
        "fold": list(colours.fold),
        "turned_right": list(colours.left),
        "turned_left": list(colours.right),
        "space": list(colours.space),
    }


def _rows(rows: RowSet, edition: Edition) -> dict[str, Any]:
    return {
        "plan": rows.plan,
        "spacing": write_length(rows.spacing, edition),
        "ruled": _lengths(tuple(row.ruled for row in rows.rows), edition),
        "finished": [_lengths((row.least, row.most), edition) for row in rows.rows],
        "start": [row.start for row in rows.rows],
        "turns": [" ".join(row.words) for row in rows.rows],
        "spoken": [spoken_row(row.words) for row in rows.rows],
        "extra": write_length(rows.extra, edition),
        "layers": rows.layers,
    }


def _closure(closure: ClosureWork, edition: Edition) -> dict[str, Any]:
    return {
        "kind": closure.kind,
        "number": closure.number,
        "on": closure.on,
        "onto": closure.onto,
        "positions": _lengths(closure.positions, edition),
        "buttonhole": write_length(closure.buttonhole, edition),
        **({"length": write_length(closure.length, edition)} if closure.length else {}),
        **({"bought": write_length(closure.bought, edition)} if closure.bought else {}),
        **({"width": write_length(closure.width, edition)} if closure.width else {}),
    }
