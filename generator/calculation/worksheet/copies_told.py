"""What a step says of copies that are fixed to other pieces: worked pieces come in, Markdown goes out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.calculation.worked_piece import Piece
from generator.lengths import Edition, say_length


def copy_list(copies: Sequence[Piece], pieces: Mapping[str, Piece], edition: Edition) -> str:
    """Return what each copy is fixed to, and how far it reaches there."""
    return "\n".join(
        f"- {copy.label}, on the {pieces[copy.lies_on].label}: {_reach(copy, pieces[copy.lies_on], edition)}"
        for copy in copies
        if copy.lies_on
    )


def _reach(copy: Piece, below: Piece, edition: Edition) -> str:
    own = {side: edge.allowance for side, edge in copy.edges.items()}
    if not any(own.values()) and any(edge.allowance for edge in below.edges.values()):
        return f"its edges on the seam lines, {_inside(below, edition)}"
    if own == {side: below.edges[side].allowance for side in own if side in below.edges}:
        return "its edges level with the cut edges"
    beyond = " or ".join(dict.fromkeys(say_length(reach, edition) for reach in own.values()))
    # What is bound or raw is finished at its cut edge.
    line = "the seam lines" if any(edge.allowance for edge in below.edges.values()) else "the cut edges"
    return f"its edges {beyond} beyond {line}"


def _inside(below: Piece, edition: Edition) -> str:
    """How far the seam lines lie inside the cut edges, what most edges have last."""
    sides: dict[str, list[str]] = {}
    for side, edge in below.edges.items():
        sides.setdefault(say_length(edge.allowance, edition), []).append(below.said(side))
    *rarer, most = sorted(sides, key=lambda told: len(sides[told]))
    if not rarer:
        return f"{most} inside the cut edges"
    singly = ", ".join(f"{told} inside the {' and '.join(sides[told])}" for told in rarer)
    return f"{singly} and {most} inside the other cut edges"
