"""The cloths and other things to buy of a project: groups of keys come in, frozen definitions go out."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated

from generator.definitions.fields import Colour, Fact, Label, Length, Markdown, Quantity, Share, YesNo, choice, standing
from generator.definitions.keyed import Placed
from generator.definitions.vocabulary import WEIGHTS, Weight


class Cloth(Placed):
    """A cloth: its usable width as sold, and what it does.

    ``length`` is that of a remnant. ``shrinkage`` is along the selvage, as a share of 1. ``repeat`` is that of stripes
    or checks across, ``fold_on`` the stripe that should lie on the folds.
    """

    label: Label
    width: Fact
    length: Fact | None = None
    shrinkage: Share = Fraction(0)
    shrinkage_across: Share = Fraction(0)
    one_way: YesNo = False
    thickness: Fact | None = None
    weight: Annotated[Weight, choice(WEIGHTS, "weight of cloth")] = "medium"
    repeat: Fact | None = None
    fold_on: Label = ""
    colour: Colour = ""
    note: Markdown | None = None


class Supply(Placed):
    """Something to buy beside cloth and thread."""

    item: Markdown
    quantity: Quantity = standing("1")
    length: Length | None = None
    note: Markdown | None = None
