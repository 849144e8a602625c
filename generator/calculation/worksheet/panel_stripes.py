"""Striped cloth: the stripes of a project file and a panel's tucks come in, the colours on fold and space go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.cutting.stripes import middle_of, off_the_repeat, spacing_on_repeat, tuck_colours
from generator.calculation.panel.wish import TuckWish
from generator.calculation.striped import PanelStripes, Stripe
from generator.calculation.worked import Panel, TuckSet
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.scope import Scope
from generator.definitions.cloths import Cloth
from generator.definitions.pieces.panel import TuckedPanel
from generator.errors import CalculationError
from generator.listed import listed


def on_stripes(scope: Scope, model: TuckedPanel, wish: TuckWish) -> TuckWish:
    """Return a wish with its spacing on whole repeats of a striped cloth, so that every fold meets the same stripe."""
    repeat = _repeat(scope, _cloth(scope, model))
    return replace(wish, spacing=spacing_on_repeat(wish.spacing, repeat)) if repeat and wish.spacing else wish


def worked_stripes(scope: Scope, name: str, model: TuckedPanel, tucks: TuckSet) -> PanelStripes | None:
    """Return where the stripes lie on a panel's tucks, None where the file does not tell them; strays are reported."""
    cloth = _cloth(scope, model)
    repeat = _repeat(scope, cloth)
    if not repeat or not tucks.count:
        return None
    off = off_the_repeat(tucks.marks, repeat)
    if off > scope.edition.mark:
        text = (
            f"not all folds lie on the same stripe: they are off by up to {scope.say(off)}, because the marks do not "
            f"lie a multiple of {scope.say(repeat)} apart; let the margins give, or choose such a spacing"
        )
        scope.report("warning", text, model.tucks.place, name)
    stripes = _stripes(scope, cloth)
    if not stripes:
        return None
    with scope.reporting(cloth.place, name):
        fold = middle_of(stripes, cloth.fold_on)
        take_up = tucks.take_ups[0]
        spacing = tucks.spacings[0] if tucks.spacings else take_up + tucks.right_margin
        colours = tuck_colours(stripes, fold, take_up, spacing)
    return PanelStripes(stripes, (fold - tucks.marks[0]) % repeat, colours)


def striped_panel(scope: Scope, piece: Piece) -> Panel | None:
    """Return the panel of a piece that has tucks and lies on striped cloth, None for any other piece."""
    panel = piece.panel
    if panel is None or not panel.across.count or not piece.cloth:
        return None
    return panel if scope.project.cloths[piece.cloth].striped else None


def start_words(scope: Scope, piece: Piece) -> str:
    """Return where on the stripes a panel begins, so that its folds meet theirs; empty for any other piece."""
    panel = striped_panel(scope, piece)
    if panel is None:
        return ""
    stripe = "the stripe that you want on the folds"
    if panel.stripes is not None:
        stripe = f"the middle of one {' and '.join(panel.stripes.colours.fold)} stripe"
    elif scope.project.cloths[piece.cloth].fold_on:
        stripe = f"the {scope.project.cloths[piece.cloth].fold_on} stripe"
    part, on = piece.label, ""
    if panel.breadths:
        part, on = f"{part}, breadth 1", " Cut every other breadth so that the stripes go on across its seam."
    return f"{part}: its left cut edge lies {scope.say(panel.across.marks[0])} to the left of {stripe}.{on}"


def room_for_stripe(scope: Scope, piece: Piece, across: Fraction) -> Fraction:
    """Return the cloth beside a panel in which it is moved until it meets its stripe; a cloth too narrow is warned of.

    Wherever the stripes lie at the left edge, the stripe wanted comes up within one repeat.
    """
    if striped_panel(scope, piece) is None:
        return Fraction(0)
    cloth = scope.project.cloths[piece.cloth]
    repeat, left = _repeat(scope, cloth), scope.washed_width(piece.cloth) - across
    if 0 <= left < repeat:
        text = (
            f"{piece.label} may not meet its stripe: the cloth has {scope.say(left)} to spare beside it, and finding "
            f"the stripe may take {scope.say(repeat)}; take wider cloth"
        )
        scope.report("warning", text, cloth.place, piece.name)
    return max(Fraction(0), min(repeat, left))


def stripe_words(found: PanelStripes) -> str:
    """Return what lies where when the tucks are turned."""
    left, right = listed(found.colours.left), listed(found.colours.right)
    turned = (
        f"A tuck turned to either side shows {left}"
        if left == right
        else f"A tuck turned to the right shows {left}, one turned to the left shows {right}"
    )
    return f"{turned}; the cloth between two tucks is {listed(found.colours.space)}."


def _cloth(scope: Scope, model: TuckedPanel) -> Cloth:
    return scope.project.cloths[scope.cloth_of(model)]


def _repeat(scope: Scope, cloth: Cloth) -> Fraction:
    """One repeat as told, or as its stripes come to; nothing where the cloth has none [in]."""
    if cloth.repeat is not None:
        repeat = scope.value(cloth.repeat)
        return spacing_on_repeat(repeat, repeat)
    return sum((stripe.width for stripe in _stripes(scope, cloth)), Fraction(0))


def _stripes(scope: Scope, cloth: Cloth) -> tuple[Stripe, ...]:
    stripes = tuple(Stripe(stripe.colour, scope.value(stripe.width)) for stripe in cloth.stripes)
    if any(stripe.width < scope.edition.mark for stripe in stripes):
        least = scope.say(scope.edition.mark)
        raise CalculationError(f"every stripe must be {least} wide or more; measure it on the cloth, or take it out")
    return stripes
