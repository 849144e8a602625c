"""The cloths and other things to buy of a project: groups of keys come in, frozen definitions go out."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, ClassVar

from generator.definitions.faults import Fault
from generator.definitions.fields import VALUE, Colour, Fact, Label, Length, Markdown, Quantity, Share, YesNo, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Group, Scalar
from generator.definitions.readers import Leaf, LeafList, Parts, Schema, choice
from generator.definitions.reading import Reading, filled_words, read_value
from generator.definitions.values import Formula
from generator.definitions.vocabulary import WEIGHTS, Weight


@dataclass(frozen=True, slots=True)
class StripeWidth:
    """One stripe of a repeat: its colour in words and its width."""

    colour: str
    width: Formula


def _stripe(words: Scalar, reading: Reading) -> StripeWidth:
    """Return a stripe told as its colour and its width: 'navy 1/2 in'."""
    found = _STRIPE.fullmatch(filled_words(words))
    if found is None:
        raise Fault(f"'{words.text.strip()}' is no stripe; write its colour and its width, for example 'navy 1/2 in'")
    width = read_value(Scalar(found[2], words.at(found.start(2))), reading, purpose="fact")
    return StripeWidth(found[1], width)


# A colour of letters in one or more words, then what can be a width.
_STRIPE = re.compile(r"\s*([^\W\d_]+(?:[ '-][^\W\d_]+)*)\s+([\d½¼¾⅛⅜⅝⅞.].*)", re.DOTALL)
THE_CLASS = 0
_STRIPES = {"anyOf": [{"type": "string"}, {"type": "array", "items": {"type": "string"}}]}


class Cloth(Located):
    """A cloth: its usable width as sold, and what it does.

    ``length`` is that of a remnant. ``shrinkage`` is along the selvage, as a share of 1. ``straighten`` is what is kept
    to make its ends straight, in place of what the room keeps. ``repeat`` is that of stripes or checks across, which
    ``stripes`` tell one by one; ``fold_on`` is the stripe that should lie on the folds. ``pattern_repeat`` is that of a
    pattern along the cloth as sold; on a ``half_drop`` it goes on half a repeat lower in the next breadth.
    """

    completed: ClassVar = ("label",)
    label: Label
    width: Fact
    length: Fact | None = None
    shrinkage: Share = Fraction(0)
    shrinkage_across: Share = Fraction(0)
    straighten: Fact | None = None
    one_way: YesNo = False
    thickness: Fact | None = None
    weight: Annotated[Weight, choice(WEIGHTS, "weight of cloth")] = "medium"
    repeat: Fact | None = None
    stripes: Annotated[tuple[StripeWidth, ...], LeafList(_stripe, _STRIPES)] = ()
    fold_on: Label = ""
    pattern_repeat: Fact | None = None
    half_drop: YesNo = False
    colour: Colour = ""
    frays: YesNo = True
    note: Markdown | None = None

    @property
    def striped(self) -> bool:
        """Whether the file tells of stripes or checks."""
        return self.repeat is not None or bool(self.stripes)

    @classmethod
    def schema(cls, parts: Parts) -> Schema:
        """Return the JSON Schema of a cloth, or of its width alone."""
        return {"anyOf": [{"type": "string"}, super().schema(parts)]}

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that the repeat is told once, by itself or by its stripes, and that a half drop has a repeat."""
        if "repeat" in found.entries and "stripes" in found.entries:
            told = "the repeat follows from the stripes; take 'repeat' or 'stripes' out"
            reading.faults.add(found.entries["repeat"][0].place, told)
        if "half drop" in found.entries and "pattern repeat" not in found.entries:
            told = "a half drop is half of a 'pattern repeat'; write how far the pattern repeats along the cloth too"
            reading.faults.add(found.entries["half drop"][0].place, told)


def _shared(words: Scalar, reading: Reading) -> int:
    """Return how many students share a thing: '4', '4 students' or 'the class'."""
    text = filled_words(words).strip().casefold()
    if text == "the class":
        return THE_CLASS
    found = re.fullmatch(r"([1-9]\d{0,2})(?: students?)?", text, re.ASCII)
    if found is None:
        raise Fault(f"'{text}' is no number of students; write for example 'shared by: 4 students' or 'the class'")
    return int(found[1])


class Supply(Located):
    """Something to buy beside cloth and thread.

    In a class one is bought for so many students as share it; ``THE_CLASS`` is all of them.
    """

    item: Markdown
    quantity: Quantity = standing("1")
    length: Length | None = None
    shared_by: Annotated[int, Leaf(_shared, VALUE)] = 1
    note: Markdown | None = None
