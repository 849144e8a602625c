"""Striped cloth: the stripes of a project file and a panel's tucks come in, the colours on fold and space go out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.cutting.stripes import middle_of, off_the_repeat, spacing_on_repeat, tuck_colours
from generator.calculation.panel.wish import TuckWish
from generator.calculation.striped import PanelStripes, Stripe
from generator.calculation.worked import TuckSet
from generator.calculation.worksheet.scope import Scope
from generator.definitions.cloths import Cloth
from generator.definitions.pieces import TuckedPanel
from generator.errors import CalculationError


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


def stripe_words(scope: Scope, found: PanelStripes, tucks: TuckSet) -> str:
    """Return where to cut so that the folds meet their stripe, and what lies where when the tucks are turned."""
    colours = found.colours
    return (
        f"For that the left cut edge lies {scope.say(tucks.marks[0])} to the left of the middle of a "
        f"{' and '.join(colours.fold)} stripe. A tuck turned to the right shows {_named(colours.left)}, one turned to "
        f"the left shows {_named(colours.right)}; the cloth between two tucks is {_named(colours.space)}."
    )


def _named(colours: tuple[str, ...]) -> str:
    """Colours in their order: 'navy, white and navy'."""
    return colours[0] if len(colours) == 1 else f"{', '.join(colours[:-1])} and {colours[-1]}"


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
    if any(stripe.width < scope.edition.fine for stripe in stripes):
        least = scope.say(scope.edition.fine)
        raise CalculationError(f"every stripe must be {least} wide or more; measure it on the cloth, or take it out")
    return stripes
