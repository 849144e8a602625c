"""Tucks that are let go: the keys, tucks and rows of a panel come in, where they are stitched and free go out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from generator.calculation.pieces.plain_pieces import plain_allowance
from generator.calculation.shapes.released import (
    BEYOND_DEPTHS,
    LEAST_DEPTHS,
    Stretches,
    clear_of,
    evenly,
    released_width,
    shortest,
    widest_of,
)
from generator.calculation.shapes.tuck_ends import crossed_edges
from generator.calculation.worked import Panel, Released, TuckSet
from generator.calculation.worked_piece import EdgeWork
from generator.calculation.worksheet.panel_shape import PanelBox
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.errors import CalculationError


def stitched_stretches(scope: Scope, name: str, model: TuckedPanel, box: PanelBox, tucks: TuckSet) -> list[Stretches]:
    """Return where each tuck is stitched, from and to [in from the finished top]; empty where all are to both edges."""
    keys = model.tucks
    if not keys.released or not tucks.count:
        return []
    along, count = box.along, tucks.count

    def places(key: str, otherwise: Fraction) -> list[Fraction]:
        span = getattr(keys, key)
        first, last = scope.bounds(span) if span is not None else (otherwise, otherwise)
        return evenly(first, last, count, scope.edition.mark, mirror=keys.mirror)

    with scope.reporting(keys.place, name):
        if keys.released_from is not None:
            gaps = list(zip(places("released_from", along), places("released_to", along), strict=True))
            _refuse_outside(scope, gaps, along, "released")
            found: list[Stretches] = [((Fraction(0), first), (last, along)) for first, last in gaps]
        else:
            sewn = list(zip(places("stitched_from", Fraction(0)), places("stitched_to", along), strict=True))
            _refuse_outside(scope, sewn, along, "stitched")
            found = [(one,) for one in sewn]
        _refuse_short(scope, found, tucks)
    return found


def _refuse_outside(scope: Scope, told: Sequence[tuple[Fraction, Fraction]], along: Fraction, word: str) -> None:
    """Refuse places that lie outside of the panel or in the wrong order, and tucks that are not let go at all."""
    for tuck, (first, last) in enumerate(told, 1):
        if not 0 <= first < last <= along:
            raise CalculationError(
                f"tuck {tuck} is {word} from {scope.say(first)} to {scope.say(last)} of {scope.say(along)}: write "
                f"'{word} from' and '{word} to' from the top down, within the panel"
            )
    if word == "released" and any(first == 0 or last == along for first, last in told):
        raise CalculationError(
            "tucks that are released as far as an edge are told by 'stitched from' or 'stitched to'; write one of these"
        )
    for place, edge in ((0, Fraction(0)), (1, along)):
        at_edge = {ends[place] == edge for ends in told}
        if word == "stitched" and len(at_edge) > 1:
            side = ("top", "bottom")[place]
            raise CalculationError(
                f"some tucks are stitched to the {side} edge and some are not, so that edge would not lie straight; "
                f"let all of them end {scope.say(scope.edition.mark)} or more before it, or none"
            )
    if word == "stitched" and all(first == 0 and last == along for first, last in told):
        raise CalculationError("these tucks are stitched from edge to edge; take 'stitched from' and 'stitched to' out")


def _refuse_short(scope: Scope, found: Sequence[Stretches], tucks: TuckSet) -> None:
    for tuck, (own, depth) in enumerate(zip(found, tucks.depths, strict=True), 1):
        least = LEAST_DEPTHS * depth
        if shortest(own) < least:
            raise CalculationError(
                f"tuck {tuck} is stitched over {scope.say(shortest(own))} only, too short to hold: less than "
                f"{LEAST_DEPTHS} of its depths, {scope.say(least)} (a limit of our own); stitch it further, or make it "
                "shallower"
            )


def worked_released(
    scope: Scope, name: str, model: TuckedPanel, box: PanelBox, sewn: tuple[Panel, Sequence[Stretches], Fraction]
) -> Released | None:
    """Return where the tucks of a panel are let go; what crosses them there is refused."""
    panel, stitched, cut_along = sewn
    if not stitched:
        return None
    tucks = panel.across
    with scope.reporting(model.tucks.place, name):
        _refuse_crossed(scope, panel, stitched)
    free = _freed_sides(tucks, stitched, box.along)
    if box.part is not None and box.part.shape is not None:
        free = _freed_edges(scope, name, model, box, (tucks, stitched))
    upper = plain_allowance(box.ends["top"])

    def marked(at: Fraction) -> Fraction:
        """An edge is met where it is cut."""
        return Fraction(0) if at == 0 else cut_along if at == box.along else _marked(panel, at, upper)

    marks = tuple(tuple((marked(first), marked(last)) for first, last in own) for own in stitched)
    stops = tuple(tuple(at for ends in own for at in ends if at not in (0, cut_along)) for own in marks)
    widest = widest_of(tucks.finished, tucks.take_ups, stitched)
    return Released(tuple(stitched), marks, stops, free, widest, model.tucks.stitching_ends == "tied")


def _refuse_crossed(scope: Scope, panel: Panel, stitched: Sequence[Stretches]) -> None:
    """Refuse rows and cross tucks that do not lie on the stitching of every tuck."""
    across = [("row", row.number, (row.least + row.most) / 2) for row in panel.rows.rows] if panel.rows else []
    if panel.cross is not None:
        across += [("cross tuck", number, at) for number, at in enumerate(panel.cross.stitching, 1)]
    if panel.rows is not None and any(own[0][0] > 0 or len(own) > 1 for own in stitched):
        raise CalculationError(
            "rows turn tucks that are stitched from the top edge down; write 'stitched to' alone, with the panel "
            "turned so that its held edge is the top, or take the rows out and press the tucks"
        )
    for word, number, at in across:
        for tuck, (own, depth) in enumerate(zip(stitched, panel.across.depths, strict=True), 1):
            if not clear_of(own, at, depth):
                raise CalculationError(
                    f"{word} {number} lies {scope.say(at)} below the top, and tuck {tuck} is not stitched there, or "
                    f"its stitching ends less than {BEYOND_DEPTHS} of its depths away (a limit of our own): stitch "
                    f"the tucks further, or keep the {word}s off the part that is let go"
                )


def _freed_sides(tucks: TuckSet, stitched: Sequence[Stretches], along: Fraction) -> dict[str, Fraction]:
    """Return by how much the top and the bottom of a rectangle are longer where the tucks do not reach them [in]."""
    wider = {
        side: released_width(Fraction(0), tucks.take_ups, stitched, at)
        for side, at in (("top", Fraction(0)), ("bottom", along))
    }
    return {side: width for side, width in wider.items() if width}


def _freed_edges(
    scope: Scope, name: str, model: TuckedPanel, box: PanelBox, sewn: tuple[TuckSet, Sequence[Stretches]]
) -> dict[str, Fraction]:
    """Return by how much the edges of a shape are longer where tucks are let go [in]; a slanting one is reported."""
    assert box.part is not None
    assert box.part.shape is not None
    tucks, stitched = sewn
    free: dict[str, Fraction] = {}
    teeth: dict[str, Fraction] = {}
    lines = box.part.shape.lines
    for foot, depth, take_up, own in zip(tucks.stitching, tucks.depths, tucks.take_ups, stitched, strict=True):
        for edge, at, slope in crossed_edges(lines, foot):
            if not any(first <= at <= last for first, last in own):
                free[edge] = free.get(edge, Fraction(0)) + take_up
                teeth[edge] = max(teeth.get(edge, Fraction(0)), slope * depth)
    for edge, tooth in teeth.items():
        if tooth > scope.edition.mark:
            text = (
                f"tucks are let go at the edge '{edge}', which slants there: cut over the folded tucks it comes out "
                f"in teeth of {scope.say(tooth)}. Draw that edge straight and square to the tucks, or stitch them as "
                "far as it"
            )
            scope.report("warning", text, model.tucks.place, name)
    return free


def _marked(panel: Panel, at: Fraction, upper: Fraction) -> Fraction:
    """Return how far below the top cut edge a place of the finished panel is marked before anything is sewn [in].

    Rows draw the cloth in as far as the last one; cross tucks take cloth above the place.
    """
    rows = panel.rows.rows if panel.rows is not None else ()
    if rows:
        return rows[-1].ruled + at - (rows[-1].least + rows[-1].most) / 2
    cross = zip(panel.cross.stitching, panel.cross.take_ups, strict=True) if panel.cross is not None else ()
    return at + upper + sum((take for place, take in cross if place < at), Fraction(0))


def freed(edges: Mapping[str, EdgeWork], free: Mapping[str, Fraction]) -> dict[str, EdgeWork]:
    """Return edges as long as they are where tucks are let go at them."""
    return {
        name: replace(edge, finished=edge.finished + free[name]) if name in free else edge
        for name, edge in edges.items()
    }
