"""The order of cutting: a layout comes in, its cuts with their names, and what a person does at each, go out.

Cuts across the cloth are numbered from the straightened end, cuts down a strip are 1a, 1b ... from the left selvage.
All measures run on from one edge, so that errors do not add up. Strips that are alike are told once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from itertools import accumulate
from string import ascii_lowercase

from generator.calculation.cutting.cloth import buy_text
from generator.calculation.cutting.layout import HIGHEST
from generator.calculation.laid import LaidStack, LaidStrip, Layout, PlacedItem
from generator.calculation.worked_project import ClothUse
from generator.lengths import Edition, say_length, write_length
from generator.listed import listed


@dataclass(frozen=True, slots=True)
class OrderedStack:
    """A stack that is cut now: the name of the cut down at its right, '' where it reaches the selvage."""

    name: str
    stack: LaidStack
    bottoms: tuple[Fraction, ...]
    """Where each piece ends, from the top of the strip [in]."""

    @property
    def right(self) -> Fraction:
        """Where the cut down lies, from the left selvage [in]."""
        return self.stack.left + self.stack.across


@dataclass(frozen=True, slots=True)
class OrderedStrips:
    """Strips that are alike, one below the other: the numbers of their cuts, the stacks cut now, those that wait."""

    numbers: tuple[int, ...]
    strips: tuple[LaidStrip, ...]
    now: tuple[OrderedStack, ...]
    waiting: tuple[LaidStack, ...]
    width: Fraction

    @property
    def strip(self) -> LaidStrip:
        """The first of them."""
        return self.strips[0]

    @property
    def grows_across(self) -> Fraction:
        """How much wider together the pieces that wait may become [in]."""
        return self.width - self.waiting[-1].left - self.waiting[-1].across

    @property
    def grows_along(self) -> Fraction:
        """How much longer all pieces that wait may become within the strip [in]."""
        return self.strip.along - max(sum(one.along for one in stack.placed) for stack in self.waiting)


def ordered_strips(layout: Layout) -> tuple[OrderedStrips, ...]:
    """Return the strips of a layout in the order of cutting, those that are alike together."""
    ordered: list[OrderedStrips] = []
    number = 0
    for run in layout.runs:
        numbers = tuple(range(number + 1, number + len(run) + 1))
        number += len(run)
        waiting = tuple(stack for stack in run[0].stacks if stack.later)
        ordered.append(OrderedStrips(numbers, run, _named(run[0], numbers[0], layout.width), waiting, layout.width))
    return tuple(ordered)


def _named(strip: LaidStrip, number: int, width: Fraction) -> tuple[OrderedStack, ...]:
    stacks = []
    for stack, letter in zip((one for one in strip.stacks if not one.later), ascii_lowercase * 40, strict=False):
        bottoms = tuple(accumulate(placed.along for placed in stack.placed))
        name = f"{number}{letter}" if stack.left + stack.across < width else ""
        stacks.append(OrderedStack(name, stack, bottoms))
    return tuple(stacks)


def cut_order(use: ClothUse, edition: Edition) -> str:
    """Return what to do, cut by cut, as a list in Markdown; first how long the cloth must be."""
    check = (
        "- Measure along the shorter selvage, from the straightened end: is the cloth "
        f"{say_length(use.layout.length, edition)} long at least? If not, stop, and cut nothing."
    )
    return "\n".join(
        [
            check,
            *_pattern(use, edition),
            *_stripes(use, edition),
            *(line for strips in ordered_strips(use.layout) for line in _lines(strips, edition)),
        ]
    )


def _pattern(use: ClothUse, edition: Edition) -> list[str]:
    """Return what to look for on cloth with a pattern that must match."""
    if use.pattern is None:
        return []
    pieces = {item.piece for item in use.items if item.match is not None}
    follow = [one.numbers for one in ordered_strips(use.layout) if one.strip.placed[0].piece in pieces]
    half = ", or just half a repeat further on where it says so" if use.pattern.half_drop else ""
    strips = listed([numbered("strip", numbers) for numbers in follow])
    return [
        f"- The pattern repeats every {say_length(use.pattern.repeat, edition)} along the cloth. These strips follow "
        f"it: {strips}. All strips of one piece begin at the same place of the pattern{half}. Look before you cut: "
        "where pattern and ruler do not agree, cut by the pattern and measure on from there."
    ]


def _stripes(use: ClothUse, edition: Edition) -> list[str]:
    """Return from where to measure strips in which striped pieces lie side by side."""
    if not use.lead:
        return []
    pieces = {item.piece for item in use.items if item.room}
    ordered = ordered_strips(use.layout)
    where = [one.numbers for one in ordered if pieces & {placed.piece for placed in one.strip.placed}]
    strips, lead = listed([numbered("strip", numbers) for numbers in where]), say_length(use.lead, edition)
    return [
        f"- The striped pieces of {strips} begin on the same stripe. Find the first place, no more than {lead} from "
        "the left selvage, where their left edge lies as it should. Measure the cuts down from there, not from the "
        "selvage."
    ]


def _lines(strips: OrderedStrips, edition: Edition) -> list[str]:
    """Return what to do in strips that are alike."""
    if not strips.now:
        return [_left_whole(strips, edition)]
    places = listed([write_length(strip.bottom, edition) for strip in strips.strips])
    number = len(strips.strips)
    alike = f" {'Both' if number == 2 else f'All {number}'} strips are cut alike:" if number > 1 else ""
    lines = [f"- **{numbered('Cut', strips.numbers)}** across at {places} {edition.unit}.{alike}"]
    lines += [f"  - {_down(stack, strips.strip, edition)}" for stack in strips.now]
    if strips.waiting:
        left = strips.waiting[0].left
        lines.append(
            f"  - What is left of it, from {say_length(left, edition)} to the right selvage, stays whole: "
            f"{_waits(strips, edition)}"
        )
    return lines


def numbered(word: str, numbers: Sequence[int]) -> str:
    """Return the numbers of cuts or strips in words: 'Cut 1', 'Cuts 2 to 4'."""
    return f"{word} {numbers[0]}" if len(numbers) == 1 else f"{word}s {numbers[0]} to {numbers[-1]}"


def _down(ordered: OrderedStack, strip: LaidStrip, edition: Edition) -> str:
    """Return how a stack is cut out and into its pieces."""
    begun = (
        f"**{ordered.name}** down at {say_length(ordered.right, edition)} from the left selvage"
        if ordered.name
        else "What reaches to the right selvage"
    )
    pieces = ordered.stack.placed
    if ordered.bottoms == (strip.along,):
        return f"{begun}: {_told(pieces[0], ordered.stack, edition)}."
    cuts = [
        (f"at {say_length(bottom, edition)}: " if bottom != strip.along else "what is left: ")
        + _told(placed, ordered.stack, edition)
        for placed, bottom in zip(pieces, ordered.bottoms, strict=True)
    ]
    return f"{begun}. Cut it across, measured from its top, {'; '.join(cuts)}."


def _told(placed: PlacedItem, stack: LaidStack, edition: Edition) -> str:
    side = " at the left" if placed.left > stack.left else ""
    trimmed = f", trimmed{side} to {say_length(placed.across, edition)} wide" if placed.across < stack.across else ""
    return f"{placed.label}, {size_words(placed, edition)}{trimmed}"


def size_words(placed: PlacedItem, edition: Edition) -> str:
    """Return the size of a piece as it lies: across the cloth by along it."""
    return f"{write_length(placed.across, edition)} by {say_length(placed.along, edition)}"


def _left_whole(strips: OrderedStrips, edition: Edition) -> str:
    top, bottom = strips.strip.top, strips.strips[-1].bottom
    end = say_length(bottom, edition)
    where = (
        f"{write_length(top, edition)} to {end} from the straightened end" if top else f"the straightened end to {end}"
    )
    return f"- **{numbered('Strip', strips.numbers)}**, from {where}, stays whole: {_waits(strips, edition)}"


def _waits(strips: OrderedStrips, edition: Edition) -> str:
    """Return what waits in a strip, and what room it has to become larger."""
    pieces = [f"{placed.label}, {size_words(placed, edition)}" for stack in strips.waiting for placed in stack.placed]
    counted = [f"{pieces.count(told)} × {told}" if pieces.count(told) > 1 else told for told in dict.fromkeys(pieces)]
    each = ", in each strip" if len(strips.strips) > 1 else ""
    ways = ((strips.grows_across, "across"), (strips.grows_along, "along"))
    more = " and ".join(f"{say_length(length, edition)} more {way}" for length, way in ways if length)
    return f"{'; '.join(counted)}{each}." + (f" There is room for {more}." if more else "")


def proof_words(use: ClothUse, edition: Edition) -> str:
    """Return in one or two sentences what is certain of a layout."""
    layout = use.layout
    limit = HIGHEST[edition.unit]
    held = ["what must match in strips of its own"] if use.pattern else []
    held += [f"no strip higher than {say_length(limit, edition)} or the longest piece"] if layout.length > limit else []
    none = f"o layout cut across, down and across{', with ' if held else ''}{' and '.join(held)}{',' if held else ''}"
    told = {
        "shortest": f"N{none} is shorter.",
        "purchase": f"N{none} needs less from the shop.",
        "open": f"A good layout; n{none} is shorter than {say_length(layout.least, edition)}: at most "
        f"{_bought(use, layout.steps_above, edition)} less.",
    }[layout.proven]
    if layout.possible < layout.length:
        told += f" {say_length(layout.possible, edition)} is possible, harder to cut, and buys the same."
    if layout.apart_costs:
        told += f" That what waits for the sewn panel stays whole costs {_bought(use, layout.apart_costs, edition)}."
    return told


def _bought(use: ClothUse, steps: int, edition: Edition) -> str:
    return buy_text(steps * use.buying.step, edition)
