"""What goes right round: a thing comes in, whether a seam, or several, close two of its faces all round goes out."""

from __future__ import annotations

from generator.calculation.making_up.thing import SIDES, Component, Edge, Seam, Thing, pieces_of


def closing_seams(seam: Seam, thing: Thing) -> tuple[Seam, ...]:
    """Return the seams that close the same two faces all round together, in order; none where they leave an edge.

    One of them may be all. Seams that shut in their own edges have their own way.
    """
    names = set(seam.pieces)
    if any("face" not in facts or "opens" in facts for facts in (thing.parts[name].facts for name in names)):
        return ()
    between = tuple(one for one in thing.seams if set(one.pieces) == names and _is_open(one, thing))
    copies = len(names) == 1 and thing.parts[seam.pieces[0]].quantity > 1
    if seam not in between or not (len(names) == 2 or (copies and all(one == other for one, other in seam.pairs))):
        return ()
    sewn = {edge for one in between for edge in one.edges}
    return between if all((name, side) in sewn for name in names for side in sides_round(thing.parts[name])) else ()


def _is_open(seam: Seam, thing: Thing) -> bool:
    """Whether the edges of a seam are raw when it is sewn, and not bound, faced or shut in."""
    return all(end_of(edge, thing) == "seam" for edge in seam.edges)


def all_round(seam: Seam, thing: Thing) -> bool:
    """Return whether two pieces are sewn to each other right round."""
    one, other = pieces_of(seam.join), pieces_of(seam.to)
    if len(one) != 1 or len(other) != 1 or one == other:
        return False
    sides = {edge for pair in seam.pairs for edge in pair}
    faces = all("face" in thing.parts[name].facts for name in (*one, *other))
    return faces and {edge[1] for edge in sides if edge[0] == one[0]} >= set(sides_round(thing.parts[one[0]]))


def sides_round(part: Component) -> list[str]:
    """Return the edges that go right round a piece: those of its outline, else its four sides; no opening in it."""
    return [side for side in part.ends if side in SIDES or "own edges" in part.facts]


def end_of(edge: Edge, thing: Thing) -> str:
    """Return the finish of an edge."""
    return thing.parts[edge[0]].ends.get(edge[1], "seam")
