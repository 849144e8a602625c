"""What is shown of a finished thing and said of it: a worksheet comes in, what to render and plain words go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.making_up.laid import LaidOut, Lying
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.drawing.renders.standing import can_stand
from generator.drawing.surface import surface_words
from generator.drawing.surface_geometry import surface_of
from generator.drawing.things.words import thing_words

WHOLE = (720, 640)  # the picture of a thing that stands alone, in dots
SHARED = (1200, 630)  # the picture for those who share a page, in dots


def height_of(width: int) -> int:
    """Return how high the picture of a thing is at a width, both in dots."""
    return round(width * WHOLE[1] / WHOLE[0])


def shown_alone(worksheet: Worksheet) -> Worksheet | None:
    """Return a worksheet that can be shown: where nobody knows how its pieces lie, its first panel hangs alone.

    None where it has neither.
    """
    if worksheet.laid_out.seen:
        return worksheet
    panel = next((piece for piece in worksheet.pieces.values() if piece.panel is not None), None)
    if panel is None:
        return None
    lying = Lying(panel.name, Fraction(0), Fraction(0), panel.finished_across, panel.finished_along)
    return replace(worksheet, laid_out=LaidOut((lying,), lying.across, lying.along))


def picture_words(worksheet: Worksheet) -> tuple[str, str]:
    """Return what a person sees in the picture of a finished thing, and what to know of it."""
    alt, _ = thing_words(worksheet, "front", "standing" if can_stand(worksheet) else "")
    panels = [worksheet.pieces[lying.piece] for lying in worksheet.laid_out.seen]
    rows = max((len(piece.panel.rows.rows) for piece in panels if piece.panel and piece.panel.rows), default=0)
    turned = f" Its tucks are turned at {rows} {'row' if rows == 1 else 'rows'} of stitching." if rows else ""
    return f"{alt}{turned}", f"{worksheet.size_label}, drawn from its numbers"


def near_panel(worksheet: Worksheet) -> Piece | None:
    """Return the panel that is shown close to: the one with the most tucks of those that are seen."""
    seen = [worksheet.pieces[lying.piece] for lying in worksheet.laid_out.seen]
    counts = {piece.name: piece.panel.across.count for piece in seen if piece.panel is not None}
    most = max(counts, key=lambda name: counts[name], default="")
    return worksheet.pieces[most] if counts.get(most) else None


def near_words(panel: Piece) -> tuple[str, str]:
    """Return what a person sees in the close view of a panel, and what to look for."""
    return f"Close to, as sewn. {surface_words(panel, surface_of(panel))}", "its tucks close to"
