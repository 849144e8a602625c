"""What is written at a seam: its layers with the side that is up, its allowance, its opening; plain words go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.enclosed_seams import lines_at
from generator.drawing.seams.boxes import FLAT
from generator.drawing.seams.laid import Laid
from generator.drawing.seams.plan import SeamPlan
from generator.lengths import say_length
from generator.listed import listed

# How high work must be, in its widths, for words to stand beside an opening in its side.
_HIGH = 0.8


def layer_words(plan: SeamPlan, worksheet: Worksheet) -> tuple[str, str]:
    """Return what lies above and what lies below, each with the side of its cloth that is seen."""
    lowest, *over = (listed(_labels(layer.pieces, worksheet)) for layer in plan.joined.layers)
    if plan.joined.folded:
        return f"{lowest} folded, wrong side out", ""
    upper = list(dict.fromkeys(reversed(over)))
    both = "both " if len(upper) > 1 else ""
    return f"{' on '.join(upper)}, {both}{_side(plan.over[0], plan)}", f"{lowest}, {_side(plan.below[0], plan)}"


def _labels(names: Sequence[str], worksheet: Worksheet) -> list[str]:
    return [worksheet.pieces[name].label or name for name in dict.fromkeys(names)]


def _side(laid: Laid, plan: SeamPlan) -> str:
    if plan.joined.slipped_in:
        return "right side out" if laid.right_side_up else "wrong side out"
    return "right side up" if laid.right_side_up else "wrong side up"


def laid_title(plan: SeamPlan) -> str:
    """Return the title of the first part."""
    if plan.joined.slipped_in:
        return "Slip in"
    return "Fold" if plan.joined.folded else "Lay"


def is_basted(plan: SeamPlan) -> bool:
    """Return whether layers are only basted on each other, so that they are one piece from then on."""
    return not plan.joined.layers[0].right_side_up and "french" not in plan.joined.sorts


def sewn_words(plan: SeamPlan, worksheet: Worksheet) -> str:
    """Return how far from the edge it is sewn, empty where that differs from side to side."""
    if is_basted(plan):
        return "close to the edge"
    found = {
        _first_line(laid.piece, side, worksheet)
        for laid in plan.below
        for side in plan.joined.sides
        if side in laid.piece.edges and laid.piece.edges[side].allowance > 0
    }
    return f"{say_length(found.pop(), worksheet.edition)} from the edge" if len(found) == 1 else ""


def _first_line(piece: Piece, side: str, worksheet: Worksheet) -> Fraction:
    """How far the first line of stitching lies from the raw edges."""
    lines = lines_at(piece, side, worksheet.edition)
    return lines.first if lines is not None else piece.edges[side].allowance


def opening_words(plan: SeamPlan, worksheet: Worksheet) -> str:
    """Return how long the opening is, empty where there is none."""
    opening = plan.joined.opening
    if opening is not None and opening.zipped:
        return "open the zip"
    return f"open {say_length(opening.length, worksheet.edition)}" if opening is not None else ""


def gap_words(plan: SeamPlan, worksheet: Worksheet) -> str:
    """Return what stays open for good: '2 in at the top of the left and 3 in at the right stay open for good'."""
    told = [
        f"{say_length(gap.length, worksheet.edition)} at the {f'{gap.end} of the {side}' if gap.end else side}"
        for gap, (side, _) in zip(plan.joined.gaps, plan.gaps, strict=True)
    ]
    return f"{listed(told)} stay{'' if len(told) > 1 else 's'} open for good" if told else ""


def opening_beside(plan: SeamPlan) -> bool:
    """Return whether the opening is written beside its edge: at a side that is high enough for the words, turned."""
    whole = plan.whole
    high = whole.bottom - whole.top >= _HIGH * (whole.right - whole.left)
    return plan.opening is not None and plan.opening[0] in FLAT and high


def done_title(plan: SeamPlan) -> str:
    """Return the title of the last part."""
    if plan.joined.turned:
        return "Turn out"
    if plan.joined.turned_in:
        return "Turn in"
    return "A ring" if plan.tube else "Open out"


def done_words(plan: SeamPlan) -> str:
    """Return where the work is turned out, or how it lies."""
    if plan.joined.turned_in:
        return f"{plan.over[-1].piece.label or plan.over[-1].piece.name} inside"
    if not plan.joined.turned:
        return "right side out" if plan.tube else "right sides up"
    if plan.joined.slipped_in:
        return "draw the bag out through the opening"
    if plan.joined.opening is not None:
        return "through the zip" if plan.joined.opening.zipped else "through the opening"
    if len(plan.below[0].piece.parts) > 1 or any(len(laid.piece.parts) > 1 for laid in plan.over):
        return "through the lap"
    return "through the open edge"


def told(plan: SeamPlan, worksheet: Worksheet) -> str:
    """Return the whole act in a few sentences, for who does not see the picture."""
    above, below = layer_words(plan, worksheet)
    lies = f"{above}, lies on {below}" if below else above
    edges = "" if plan.joined.folded or not plan.joined.sides else ", edges level"
    parts = [f"{lies}{edges}."]
    if plan.joined.sides:
        at = "all round" if plan.all_round else f"at the {listed(plan.joined.sides)}"
        where = f", {sewn_words(plan, worksheet)}" if sewn_words(plan, worksheet) else ""
        parts.append(f"{'Basted' if is_basted(plan) else 'Sewn'} {at}{where}.")
    if plan.opening is not None:
        parts.append(f"{opening_words(plan, worksheet).capitalize()} at the {plan.opening[0]}.")
    if plan.gaps:
        parts.append(f"{gap_words(plan, worksheet)}.")
    if plan.joined.turned:
        parts.append(f"Turned out: {done_words(plan)}.")
    return " ".join(parts)[:1].upper() + " ".join(parts)[1:]
