"""Samples of all turn plans: a style comes in, one small picture of each plan of the table goes out."""

from __future__ import annotations

from generator.calculation.turning.plans import PLANS, turn_plan
from generator.drawing.picture import Picture
from generator.drawing.style import Style
from generator.drawing.surface import draw_plan_sample


def draw_plan_samples(style: Style) -> dict[str, Picture]:
    """Return a picture of every turn plan by its name."""
    return {name: draw_plan_sample(turn_plan(name).cell, style, name) for name in PLANS}
