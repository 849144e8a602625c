"""How thick a flat thing is, and whether it stands: a worksheet comes in.

A thing of two faces, such as a bag or a cosy, is thick in its middle and thin at its edge.
"""

from __future__ import annotations

from generator.calculation.worked_project import Worksheet

HOLLOW, WADDED = 0.1, 0.2  # of its smaller side: how thick a thing of two faces is, and one with wadding in it
STANDS = 0.9  # of its width: how long a lower edge is on which a thing can stand


def is_wadded(worksheet: Worksheet) -> bool:
    """Return whether wadding is sewn into a thing."""
    return any(piece.fixed == "sewn in" for piece in worksheet.pieces.values())


def thickness(worksheet: Worksheet) -> float:
    """Return how thick a flat thing is, in parts of its smaller side: nothing for one layer that lies or hangs."""
    laid = worksheet.laid_out
    behind = {(one.left, one.top, one.right, one.bottom) for one in laid.pieces if one.layer == "behind"}
    if not any((one.left, one.top, one.right, one.bottom) in behind for one in laid.seen):
        return 0.0
    return WADDED if is_wadded(worksheet) else HOLLOW


def can_stand(worksheet: Worksheet) -> bool:
    """Return whether a thing stands on a table: wadded, with two faces, and straight along its lower edge."""
    first = worksheet.laid_out.seen[0]
    shape = worksheet.pieces[first.piece].shape
    if shape is None or first.turned or not (thickness(worksheet) and is_wadded(worksheet)):
        return False
    spots = [spot for line in shape.lines for spot in line.spots]
    lowest = max(y for _, y in spots)
    across = [x for x, y in spots if y == lowest]
    return max(across) - min(across) >= STANDS * float(first.across)
