"""Pieces made by hand for tests of diagrams: a kind, a cut size and the finish of its edges come in."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import pairwise
from typing import Any

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.shapes.by_word import oval
from generator.calculation.shapes.cut_line import SeamEdge
from generator.calculation.shapes.segments import Segment, StraightLine
from generator.calculation.worked import End
from generator.calculation.worked_piece import EdgeWork, Made, Part, Piece, Round, Straight
from generator.calculation.worksheet.pieces.shaped import drawn_shape
from generator.lengths import INCH

SEAM = End("seam", Fraction(1, 2))
HEM = End("hem", Fraction(1, 4), Fraction(1))
SIDES = ("left", "right", "top", "bottom")
NOTHING = Fraction(0)
# What is made of a piece, by the word of its kind.
MADE: Mapping[str, Made] = {
    "gathered strip": Made(DrawnUp("top", Fraction(9))),
    "gathered end": Made(DrawnUp("top", NOTHING)),
    "pleated strip": Made(DrawnUp("top", Fraction(9), ((Fraction(1), Fraction(2)),))),
    "boxing": Made(goes_round="faces"),
    "binding": Made(goes_round="an edge", folds=(Fraction(1, 4), Fraction(1, 2), Fraction(3, 4))),
    "tie": Made(folds=(Fraction(1, 2),)),
    "piping": Made(goes_round="a cord", folds=(Fraction(1, 2),)),
}
ALL_SEAMS: Mapping[str, End] = dict.fromkeys(SIDES, SEAM)


def allowance(end: End) -> Fraction:
    """A seam or a turnover takes its width, a hem both its turns, everything else nothing."""
    return end.first + end.second if end.kind in ("seam", "hem", "turnover") else Fraction(0)


def piece_cut(
    kind: str, across: Fraction | int, along: Fraction | int, ends: Mapping[str, End] = ALL_SEAMS, **more: Any
) -> Piece:
    """A piece cut ``across`` by ``along``; its finished size follows from its edges unless it is given."""
    beyond = {side: allowance(end) for side, end in ends.items()}
    name, outline = more.pop("name", kind), more.pop("outline", Straight())
    edges = {side: EdgeWork(side, Fraction(1), end, beyond[side]) for side, end in ends.items()}
    finished = (
        more.pop("finished_across", across - beyond.get("left", NOTHING) - beyond.get("right", NOTHING)),
        more.pop("finished_along", along - beyond.get("top", NOTHING) - beyond.get("bottom", NOTHING)),
    )
    values: dict[str, Any] = {
        "name": name,
        "label": name,
        "kind": kind,
        "cloth": "face",
        "quantity": 1,
        "grain": "along",
        "parts": (Part(outline, Fraction(across), Fraction(along), *finished, edges),),
        "finished_across": finished[0],
        "finished_along": finished[1],
        "edges": edges,
        "made": MADE.get(kind, Made()),
        **more,
    }
    return Piece(**values)


def circle_cut(across: Fraction | int, seam: End = SEAM, **more: Any) -> Piece:
    """A circle ``across`` through as cut."""
    finished = Fraction(across) - 2 * seam.first
    rim = SeamEdge("rim", oval(finished, finished)["rim"], seam.first)
    return piece_cut(
        "circle",
        across,
        across,
        {"rim": seam},
        outline=Round(drawn_shape([rim], INCH)[0]),
        finished_across=finished,
        finished_along=finished,
        **more,
    )


def shape_cut(seam: End = SEAM, **edges: tuple[Segment, ...]) -> Piece:
    """A piece with an outline of its own: its edges by their names, clockwise, each sewn with the same seam."""
    name = str(edges.pop("name", "shape"))
    sewn = [SeamEdge(edge, lines, seam.first) for edge, lines in edges.items()]
    shape, size, cut = drawn_shape(sewn, INCH)
    ends = dict.fromkeys(edges, seam)
    return piece_cut("rectangle", *cut, ends, name=name, outline=shape, finished_across=size[0], finished_along=size[1])


def straight(*spots: tuple[int, int]) -> tuple[Segment, ...]:
    """Straight lines from spot to spot."""
    exact = [(Fraction(x), Fraction(y)) for x, y in spots]
    return tuple(StraightLine(*ends) for ends in pairwise(exact))


def envelope_back(width: int = 16, overlap: int = 4, hem: int = 1, right: Fraction = Fraction(1, 2)) -> Piece:
    """Halves of (W + o)/2, cut a + 2 w wider: 16 and 4 with a seam of 1/2 and a hem of twice 1 give 12 1/2."""
    size, each, turn = Fraction(width), Fraction(width + overlap, 2), Fraction(hem)
    opening = EdgeWork("opening", size, End("hem", turn, turn), 2 * turn)
    around = {side: EdgeWork(side, size, end, end.first) for side, end in ALL_SEAMS.items()}
    around["right"] = EdgeWork("right", size, End("seam", right), right)
    halves = tuple(
        Part(Straight(), each + around[seam].allowance + 2 * turn, size + 1, each, size, edges, f"{seam} half")
        for seam, edges in (("left", {**around, "right": opening}), ("right", {**around, "left": opening}))
    )
    return piece_cut(
        "envelope back",
        width,
        width,
        name="back",
        edges=around,
        finished_across=size,
        finished_along=size,
        parts=halves,
        made=Made(lap=Fraction(overlap)),
    )
