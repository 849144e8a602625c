"""How work lies when its seam is sewn: layers as they were sewn come in, turned or opened out they go out."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import replace

from generator.calculation.making_up.joined import Joined
from generator.calculation.making_up.laid import CLOCKWISE, opposite
from generator.drawing.labels import Box
from generator.drawing.seams.boxes import grown
from generator.drawing.seams.laid import Laid, is_hung
from generator.drawing.seams.shapes import box_round, folded_over, hung_from

BAG = 3  # sides that are sewn of what is no longer flat


def opened(joined: Joined, below: tuple[Laid, ...], over: tuple[Laid, ...]) -> tuple[Laid, ...]:
    """Return what was turned out by its finished edges, else each upper piece beside its seam."""
    if joined.slipped_in:
        return over
    lower = tuple(_sewn(laid, joined.sides) for laid in below)
    all_of_them = all(is_hung(laid.piece) for laid in over)
    if joined.turned or len(joined.pieces) == 1 or (len(joined.sides) >= BAG and not all_of_them):
        return lower
    shapes = any(laid.outline is not None for laid in over)
    if shapes and (joined.turned_in or not joined.sides):
        return lower
    return (*lower, *(_flipped(laid) if laid.outline is None else _shape_flipped(laid) for laid in over))


def _sewn(laid: Laid, sides: Iterable[str]) -> Laid:
    """A piece without the cloth beyond those sides that lie in a seam."""
    if laid.outline is None:
        gone = {side: getattr(laid.finished, side) for side in sides}
        return replace(laid, cut=replace(laid.cut, **gone), right_side_up=True)
    beyond = {name: float(edge.allowance) for name, edge in laid.piece.edges.items()}
    outline = laid.outline.without_seams(set(sides), beyond)
    return replace(laid, outline=outline, cut=box_round(outline.cut), right_side_up=True)


def _shape_flipped(laid: Laid) -> Laid:
    """A piece folded over its seam, or a strip that then stands out from it."""
    assert laid.outline is not None
    line = laid.edges[laid.own]
    if is_hung(laid.piece):
        outline = hung_from(line, laid.own, -float(laid.piece.finished_along), 0.0)
    else:
        beyond = {name: float(edge.allowance) for name, edge in laid.piece.edges.items()}
        outline = folded_over(laid.outline.without_seams({laid.own}, beyond), line)
    return replace(laid, outline=outline, finished=outline.finished, cut=box_round(outline.cut), right_side_up=True)


def _flipped(laid: Laid) -> Laid:
    """A piece folded over its seam: it lies outside, right side up."""
    box, at = laid.finished, laid.at
    move = {"left": -(box.right - box.left), "right": box.right - box.left}.get(at, 0.0)
    down = {"top": -(box.bottom - box.top), "bottom": box.bottom - box.top}.get(at, 0.0)
    far = {side: abs(getattr(laid.cut, side) - getattr(box, side)) for side in CLOCKWISE}
    there = Box(box.left + move, box.top + down, box.right + move, box.bottom + down)
    beyond = {**far, at: far[opposite(at)], opposite(at): 0.0} if at else far
    turned = opposite(at) if at else ""
    return replace(laid, finished=there, cut=grown(there, beyond), right_side_up=True, at=turned)
