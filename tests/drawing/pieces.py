"""Pieces made by hand for tests of diagrams: a kind, a cut size and the finish of its edges come in."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from typing import Any

from generator.calculation.worked import EdgeWork, End, Piece

SEAM = End("seam", Fraction(1, 2))
HEM = End("hem", Fraction(1, 4), Fraction(1))
SIDES = ("left", "right", "top", "bottom")
ALL_SEAMS: Mapping[str, End] = dict.fromkeys(SIDES, SEAM)


def allowance(end: End) -> Fraction:
    """A seam or a turnover takes its width, a hem both its turns, everything else nothing."""
    return end.first + end.second if end.kind in ("seam", "hem", "turnover") else Fraction(0)


def piece_cut(
    kind: str, across: Fraction | int, along: Fraction | int, ends: Mapping[str, End] = ALL_SEAMS, **more: Any
) -> Piece:
    """A piece cut ``across`` by ``along``; its finished size follows from its edges unless it is given."""
    beyond = {side: allowance(end) for side, end in ends.items()}
    name = more.pop("name", kind)
    values: dict[str, Any] = {
        "name": name,
        "label": name,
        "kind": kind,
        "shape": "rectangle",
        "cloth": "face",
        "quantity": 1,
        "grain": "along",
        "cut_across": Fraction(across),
        "cut_along": Fraction(along),
        "finished_across": across - beyond.get("left", Fraction(0)) - beyond.get("right", Fraction(0)),
        "finished_along": along - beyond.get("top", Fraction(0)) - beyond.get("bottom", Fraction(0)),
        "edges": {side: EdgeWork(side, Fraction(1), end, beyond[side]) for side, end in ends.items()},
        **more,
    }
    return Piece(**values)


def circle_cut(across: Fraction | int, seam: End = SEAM, **more: Any) -> Piece:
    """A circle ``across`` through as cut."""
    finished = Fraction(across) - 2 * seam.first
    return piece_cut(
        "circle",
        across,
        across,
        {"rim": seam},
        shape="circle",
        finished_across=finished,
        finished_along=finished,
        **more,
    )


def envelope_back(width: int = 16, overlap: int = 4, hem: int = 1) -> Piece:
    """Halves of (W + o)/2, cut a + 2 w wider: 16 and 4 with a seam of 1/2 and a hem of twice 1 give 12 1/2."""
    across = Fraction(width + overlap, 2) + Fraction(1, 2) + 2 * hem
    measures = {"overlap": Fraction(overlap), "hem": Fraction(hem)}
    return piece_cut(
        "envelope back",
        across,
        width + 1,
        name="back",
        measures=measures,
        finished_across=Fraction(width),
        finished_along=Fraction(width),
        parts=2,
    )
