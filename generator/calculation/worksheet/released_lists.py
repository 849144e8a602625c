"""Tucks that are let go, in words: where their stitching stops, which edges are free; pieces come in, text goes out."""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.worked import Panel
from generator.calculation.worked_piece import Piece
from generator.lengths import Edition, say_length

_BELOW = "below the top cut edge"


def stop_lines(panel: Panel, edition: Edition) -> str:
    """Return the lines that are ruled across the cloth, where all tucks stop alike: 'a line 8 in below the top ...'."""
    said = [say_length(place, edition) for place in panel.released.stops[0]] if panel.released is not None else []
    return f"{'a line' if len(said) == 1 else 'two lines,'} {' and '.join(said)} {_BELOW}"


def stop_list(panel: Panel, edition: Edition) -> str:
    """Return where the stitching of each tuck stops, from the top cut edge."""
    told = panel.released.stops if panel.released is not None else ()
    return "\n".join(
        f"- Tuck {tuck}: {' and '.join(say_length(place, edition) for place in places)}."
        for tuck, places in enumerate(told, 1)
    )


def stitched_way(panel: Panel) -> str:
    """Return from where to where each tuck is sewn: 'from the top edge to the line, and no further'.

    Where tucks stop unlike, each has a stroke across its fold in the place of the line.
    """
    if panel.released is None:
        return "from the top edge to the bottom edge"
    ((first, _), *more), stops = panel.released.sewn[0], panel.released.stops
    line = "line" if len(set(stops)) == 1 else "stroke"
    if more:
        return f"from the top edge to the upper {line}, and from the lower {line} to the bottom edge"
    if len(stops[0]) > 1:
        return f"from the upper {line} to the lower {line}, and no further"
    if first > 0:
        return f"from the {line} to the bottom edge"
    return f"from the top edge to the {line}, and no further"


def free_edges(pieces: Sequence[Piece]) -> str:
    """Return the edges at which tucks are let go: 'the bottom edge'."""
    return " and ".join(f"the {edge} edge" for piece, edge in _free(pieces))


def free_widths(pieces: Sequence[Piece], edition: Edition) -> str:
    """Return how wide a panel must measure where its tucks are let go."""
    panel = next(
        (piece.panel for piece in pieces if piece.panel is not None and piece.panel.released is not None), None
    )
    if panel is None or panel.released is None:
        return ""
    sewn = say_length(panel.across.finished, edition)
    told = [f"{say_length(piece.edges[edge].finished, edition)} along the {edge} edge" for piece, edge in _free(pieces)]
    wide = " and ".join(told) or f"{say_length(panel.released.widest, edition)} in the open part"
    return f"**Right when** it measures {sewn} where the tucks are stitched, and {wide}, between its finished sides."


def held_edges(panel: Panel) -> str:
    """Return at which edges the tucks are basted flat."""
    held = [side for side in ("top", "bottom") if side not in panel.free]
    if not held:
        return "Nothing is basted: no edge holds these tucks."
    return f"Baste the tucks flat along the {' and the '.join(held)}, inside the allowance, by hand with long stitches."


def _free(pieces: Sequence[Piece]) -> list[tuple[Piece, str]]:
    return [(piece, edge) for piece in pieces if piece.panel is not None for edge in piece.panel.free]
