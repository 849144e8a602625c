"""Edges with an allowance that nothing is sewn to: a thing and its recipe come in, what stays raw is told."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from generator.calculation.making_up.acts import Doing
from generator.calculation.making_up.thing import Component, Edge, Thing
from generator.calculation.worksheet.scope import Scope

# Pieces that are finished in a way of their own: straps, piping, what is made up by itself, what lies along an edge.
_OWN_WAY = frozenset(
    {"strap", "adds nothing", "bought ready", "made", "closes", "drawn together", "along an edge", "boxes"}
)
# A strip is sewn along one long edge after the other by the one name of both.
_LONG = ("top", "bottom")


def report_raw_edges(scope: Scope, thing: Thing, recipe: Iterable[Doing]) -> None:
    """Warn of each edge that is to be sewn and meets nothing, of pieces that are sewn to something."""
    steps = list(recipe)
    for part in thing.parts.values():
        raw = list(_raw(part, thing)) if _is_sewn_in(part, thing) and not _own_steps(part, steps) else []
        if raw:
            edges = ", ".join(f"'{part.name}.{side}'" for side in raw)
            over = ", let it go over the edge ('kind: binding')" if "band" in part.facts else ""
            told = f"nothing is sewn to {edges}, so raw cloth will show; write what meets there under 'edges that meet'"
            told += f"{over}, or give a finish in the lines of the piece:"
            lines = "".join(f"\n  {side}: hem 1/4 in then 1/4 in or 6 mm then 6 mm" for side in raw)
            scope.report("warning", f"{told}\nedges:{lines}", part.place, part.name, of_file=True)


def _is_sewn_in(part: Component, thing: Thing) -> bool:
    apart = part.lies_on or part.sewn_on or _OWN_WAY & part.facts
    return (
        not apart
        and bool(thing.seams_of(part.name))
        and not any(other.blocks == part.name for other in thing.parts.values())
    )


def _raw(part: Component, thing: Thing) -> Iterator[str]:
    met = set(_met(part.name, thing))
    yield from (side for side, end in part.ends.items() if end == "seam" and side not in met)


def _met(piece: str, thing: Thing) -> Iterator[str]:
    """The edges of a piece that are sewn to something, closed, or covered by what is laid on."""
    edges: list[Edge] = [edge for seam in thing.seams for edge in seam.edges]
    edges += [edge for closing in thing.closings for edge in (*closing.on, *closing.onto)]
    yield from (side for name, side in edges if name == piece)
    along = [seam for seam in thing.seams if (piece, "edge") in seam.edges]
    yield from _LONG[: len(along)]
    # Two copies that line a bag are sewn to each other when they line it.
    lines_a_bag = thing.parts[piece].quantity > 1 and any(seam.sort == "tops" for seam in thing.seams_of(piece))
    if lines_a_bag or any(seam.sort == "binding" for seam in along):
        yield from thing.parts[piece].ends


def _own_steps(part: Component, steps: Iterable[Doing]) -> bool:
    """Whether a step of the file's own does something to it, which may well finish its edges."""
    return any(doing.own and part.name in doing.pieces for doing in steps)
