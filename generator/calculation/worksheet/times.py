"""How long a step takes: a kind of work and what it is done to come in, counts for the room's rates go out.

``WORK`` maps the words after ``work:`` in a technique to the operations that they are made of. Lengths are counted in
inches, everything else in ones. A new kind of work is one entry.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from math import ceil
from types import MappingProxyType

from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.threads import lines_on, tuck_lines
from generator.calculation.worksheet.work import SewnStretch, Work

Counts = dict[str, Fraction]
_NOTHING = Fraction(0)
# A little sewing by hand of which nobody tells the length, such as a few stitches that hold a shade's cover [in].
_HAND_LENGTH = Fraction(8)
# So much sewing by hand closes one end of a tuck on its rod [in]; common practice, no source.
_ROD_END = Fraction(3)


def _each(work: Work, count: Callable[[Piece], Mapping[str, Fraction | int]]) -> Counts:
    """Count something of every piece, times its copies."""
    return _sum((count(piece), piece.quantity) for piece in work.pieces)


def _along(stretches: Iterable[SewnStretch], *operations: str) -> Counts:
    """Count operations along stretches, each begun once and turned at its corners; one named twice is done twice."""
    return _sum(
        ({**_times(operations, one.length), "start a seam": 1, "turn a corner": one.corners}, one.times)
        for one in stretches
    )


def _times(operations: Iterable[str], length: Fraction) -> Counts:
    counts: Counts = {}
    for operation in operations:
        counts[operation] = counts.get(operation, _NOTHING) + length
    return counts


def _sum(parts: Iterable[tuple[Mapping[str, Fraction | int], int]]) -> Counts:
    counts: Counts = {}
    for part, times in parts:
        for operation, count in part.items():
            counts[operation] = counts.get(operation, _NOTHING) + count * times
    return counts


def _cut(*, later: bool) -> Callable[[Work], Counts]:
    """Count the cuts of the pieces that are cut at once, or of those that wait for the sewn panel."""

    def cuts(piece: Piece) -> Mapping[str, int]:
        return {"cut a piece": sum(cut.number for cut in piece.cuts) if piece.after_panel is later else 0}

    return lambda work: _each(work, cuts)


def _tucks(piece: Piece) -> int:
    return piece.panel.across.count if piece.panel else 0


def _rows(piece: Piece) -> int:
    return len(piece.panel.rows.rows) if piece.panel and piece.panel.rows else 0


def _stitch_tucks(piece: Piece) -> Mapping[str, Fraction | int]:
    return {"stitch": tuck_lines(piece), "start a seam": _tucks(piece)}


def _let_go(piece: Piece) -> Mapping[str, Fraction]:
    """What is not stitched of each tuck is opened and pressed."""
    return {"press": _tucks(piece) * piece.cut_along - tuck_lines(piece)}


def _turn_tucks(piece: Piece) -> Mapping[str, Fraction | int]:
    rows = _rows(piece)
    return {"turn a tuck": rows * _tucks(piece), "stitch": rows * piece.finished_across, "start a seam": rows}


def _put_in_rods(piece: Piece) -> Mapping[str, Fraction | int]:
    """A few stitches by hand at both ends of each tuck, and as many for each ring."""
    rings = len(piece.panel.rods.rings) if piece.panel and piece.panel.rods else 0
    return {"sew by hand": _ROD_END * _tucks(piece) * (2 + rings)}


def _edges(piece: Piece) -> Mapping[str, Fraction | int]:
    """The edges of a piece, all round."""
    length = _round(piece)
    return {"press": length, "stitch": length, "start a seam": max(1, len(piece.edges))}


def _round(piece: Piece) -> Fraction:
    sides = [edge.finished for edge in piece.edges.values() if edge.end.kind not in ("fold", "selvage")]
    return sum(sides, _NOTHING)


def _sew_seams(work: Work) -> Counts:
    """Seams that are pinned, sewn and pressed; of a step that does not say which, half the way round its pieces."""
    if work.seams or not work.pieces:
        return _along(work.seams, "pin", "stitch", "press")
    halves = sum((piece.quantity * _round(piece) for piece in work.pieces), _NOTHING) / 2
    return {"stitch": halves, "start a seam": Fraction(len(work.pieces))}


def _halves(piece: Piece) -> Mapping[str, Fraction | int]:
    """The hems of the parts of a piece, and their lap, which is pinned and basted at both its ends."""
    edges = [edge.finished for part in piece.parts for edge in part.edges.values() if edge.end.kind == "hem"]
    length, lap = sum(edges, _NOTHING), 2 * piece.made.lap
    return {"turn a hem": 2 * length, "stitch": length, "start a seam": len(edges), "pin": lap, "baste": lap}


def _lengths(piece: Piece) -> Mapping[str, int]:
    return {"join a length": piece.lengths.count - 1 if piece.lengths is not None else 0}


def _bias(piece: Piece) -> Mapping[str, Fraction | int]:
    """A square is cut and joined twice, ruled with parallel lines, and cut along them as far as the strip is long.

    A strip that is pieced is ruled at both sides of every part of it, and joined between them.
    """
    if piece.pieced is not None:
        joins, lines = piece.pieced.strips - 1, piece.pieced.strips + 1
        return {"join a length": joins, "rule a row": lines, "cut along a line": piece.cut_across}
    lines = ceil(piece.square / piece.cut_along) if piece.cut_along else 0
    return {"join a length": 2, "rule a row": lines, "cut along a line": piece.cut_across}


def _breadths(piece: Piece) -> Mapping[str, Fraction | int]:
    joins = len(piece.panel.joins) if piece.panel else 0
    return {**_times(("pin", "stitch", "press"), joins * piece.cut_along), "start a seam": joins}


def _bands(piece: Piece) -> Mapping[str, Fraction | int]:
    """A strip folded and pressed along its length, sewn along both its long sides or one and an end, and turned."""
    return {"turn a hem": piece.cut_across, "stitch": 2 * piece.cut_across, "start a seam": 2, "turn out": 1}


def _pleats(piece: Piece) -> Mapping[str, Fraction | int]:
    """Two marks a pleat at the top and two below, and the top edge, which is basted by hand."""
    pleats = len(piece.made.pleats)
    return {"mark a fold": 2 * pleats, "turn a tuck": 2 * pleats, "baste": piece.edges["top"].finished if pleats else 0}


def _drawn_edges(piece: Piece) -> Mapping[str, Fraction | int]:
    """Edges that are gathered, and those that are laid in pleats: marked at both lines of each, and basted."""
    gathered = sum((piece.edges[one.side].finished for one in piece.drawn if one.gathered), _NOTHING)
    pleats = sum(len(one.pleats) for one in piece.drawn)
    basted = sum((one.to for one in piece.drawn if not one.gathered), _NOTHING)
    return {"gather": gathered, "mark a fold": pleats, "turn a tuck": pleats, "baste": basted}


def _ends(piece: Piece) -> Mapping[str, Fraction | int]:
    """The two ends of a panel: measured once, cut along a line, basted."""
    return {"rule a row": 1, **_times(("cut along a line", "baste"), 2 * piece.finished_across)}


def _shape(piece: Piece) -> Mapping[str, Fraction | int]:
    round_it = 2 * (piece.finished_across + piece.finished_along)
    return {**_times(("pin", "stitch", "cut along a line"), round_it), "start a seam": 1}


def _basted(piece: Piece) -> Mapping[str, Fraction | int]:
    """A piece that is pinned and basted along its shorter side, like a strap."""
    length = min(piece.finished_across, piece.finished_along)
    return {**_times(("pin", "baste"), length), "start a seam": 1}


def _ironed(piece: Piece) -> Mapping[str, Fraction]:
    """A piece pressed all over, the iron put down side by side."""
    return {"press": sum(lines_on(piece), _NOTHING)}


def _underlined(piece: Piece) -> Mapping[str, Fraction | int]:
    return {**_times(("pin", "baste"), _round(piece)), "start a seam": 1}


def _quilted(piece: Piece) -> Mapping[str, Fraction | int]:
    lines = lines_on(piece)
    return {**_times(("pin", "baste", "stitch"), sum(lines, _NOTHING)), "start a seam": len(lines)}


def _fasten(piece: Piece) -> Mapping[str, Fraction]:
    return {"sew by hand": _round(piece)}


def _blocks(piece: Piece) -> Mapping[str, Fraction | int]:
    """The seams of a grid: of each row its short ones, then those between the rows."""
    if piece.blocks is None:
        return {}
    wide, high = piece.blocks.number
    seams = (high * (wide - 1) + high - 1) * (2 if piece.blocks.band else 1)
    return {**_times(("pin", "stitch", "press"), piece.blocks.seams), "start a seam": seams}


def _linings(piece: Piece) -> Mapping[str, Fraction | int]:
    """One of two linings that are sewn to each other at both sides and the bottom: half of that seam."""
    sides = (2 * piece.finished_along + piece.finished_across) / 2
    return {**_times(("pin", "stitch"), sides), "start a seam": 1, "turn a corner": 1}


WORK: Mapping[str, Callable[[Work], Counts]] = MappingProxyType(
    {
        "cut pieces": _cut(later=False),
        "cut later": _cut(later=True),
        "mark folds": lambda work: _each(work, lambda piece: {"mark a fold": _tucks(piece)}),
        "crease tucks": lambda work: _each(work, lambda piece: {"crease": _tucks(piece) * piece.cut_along}),
        "stitch tucks": lambda work: _each(work, _stitch_tucks),
        "measure": lambda work: _each(work, lambda piece: {"rule a row": 3}),
        "press tucks": lambda work: _each(work, lambda piece: {"press": _tucks(piece) * piece.cut_along}),
        "let tucks go": lambda work: _each(work, _let_go),
        "put in rods": lambda work: _each(work, _put_in_rods),
        "rule rows": lambda work: _each(work, lambda piece: {"rule a row": _rows(piece)}),
        "turn tucks": lambda work: _each(work, _turn_tucks),
        "trim ends": lambda work: _each(work, _ends),
        "cut to shape": lambda work: _each(work, _shape),
        "join breadths": lambda work: _each(work, _breadths),
        "join lengths": lambda work: _each(work, _lengths),
        "join ends": lambda work: _each(work, lambda piece: {"join a length": 1 if "edge" in piece.edges else 0}),
        "cut bias": lambda work: _each(work, _bias),
        "sew bands": lambda work: _each(work, _bands),
        "hem halves": lambda work: _each(work, _halves),
        "hem edges": lambda work: _along(work.hems, "turn a hem", "turn a hem", "stitch"),
        "gather edges": lambda work: _each(work, lambda piece: {"gather": piece.cut_across}),
        "draw up edges": lambda work: _each(work, _drawn_edges),
        "lay pleats": lambda work: _each(work, _pleats),
        "sew seams": _sew_seams,
        "sew linings": lambda work: _each(work, _linings),
        "baste seams": lambda work: _along(work.seams, "pin", "baste"),
        "baste pieces": lambda work: _each(work, _basted),
        "bind edges": lambda work: _along(work.seams, "turn a hem", "turn a hem", "pin", "stitch", "sew by hand"),
        "face edges": lambda work: _along(work.seams, "pin", "stitch", "stitch", "press"),
        "neaten seams": lambda work: _along(work.neatened, "stitch"),
        "turn out": lambda work: {"turn out": Fraction(work.turned)},
        "close openings": lambda work: _along(work.openings, "pin", "sew by hand"),
        "join blocks": lambda work: _each(work, _blocks),
        "sew edges": lambda work: _each(work, _edges),
        "fasten edges": lambda work: _each(work, _fasten),
        "sew by hand": lambda work: {"sew by hand": _HAND_LENGTH * max(1, len(work.pieces))},
        "fuse pieces": lambda work: _each(work, _ironed),
        "underline pieces": lambda work: _each(work, _underlined),
        "quilt pieces": lambda work: _each(work, _quilted),
        "make buttonholes": lambda work: {},
        "sew buttons": lambda work: {},
        "set fasteners": lambda work: {},
        "set zip": lambda work: {"start a seam": Fraction(4)},
        "thread elastic": lambda work: _each(work, lambda piece: {"pin": piece.finished_across}),
    }
)
