"""The cloth of a class: kits come in, for each cloth one cutting layout over all kits and what to buy go out.

A layout over all kits is never longer than the layouts of the kits one after the other.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.calculation.cutting.cloth import Buying, buy_text
from generator.calculation.cutting.layout import LOOKS, cutting_layout
from generator.calculation.laid import CutItem, LaidStrip, Layout, PlacedItem, below_each_other
from generator.calculation.worked_project import ClothUse
from generator.calculation.worksheet.class_kits import KitWork
from generator.lengths import Edition, on_ruler, round_up


@dataclass(frozen=True, slots=True)
class ClassClothUse:
    """One cloth of a class: its layout over all kits, and the kits cut from it.

    ``apart`` is how long the layouts of the kits would be one after the other [in]; ``later`` whether some of its
    pieces wait for a sewn panel.
    """

    use: ClothUse
    kits: int
    apart: Fraction
    later: bool = False


def class_cloths(kits: Sequence[KitWork], brought: Sequence[str], edition: Edition) -> dict[str, ClassClothUse]:
    """Return every cloth that the room cuts for a class; cloths that the students bring are left out."""
    mixed = len({work.kit.edition for work in kits}) > 1
    cloths = {}
    for name in dict.fromkeys(name for work in kits for name in work.worksheet.cloths):
        groups = [work for work in kits if work.count.cut and name in work.worksheet.cloths]
        if groups and name not in brought:
            cloths[name] = _class_cloth(name, groups, edition, mixed=mixed)
    return cloths


def _class_cloth(name: str, kits: Sequence[KitWork], edition: Edition, *, mixed: bool) -> ClassClothUse:
    first = min((work.worksheet.cloths[name] for work in kits), key=lambda use: use.layout.width)
    items = {work.kit: _items(work, name, edition, mixed=mixed) for work in kits}
    of_all = [replace(item, quantity=item.quantity * work.count.cut) for work in kits for item in items[work.kit]]
    layout = cutting_layout(of_all, first.layout.width, edition, first.buying, 2 * LOOKS)
    singles = [
        (cutting_layout(items[work.kit], first.layout.width, edition, first.buying), work.count.cut) for work in kits
    ]
    apart = sum((single.length * times for single, times in singles), Fraction(0))
    if layout.length > apart:
        layout = one_after_the_other(singles, layout, first.buying)
    buy = first.buying.bought(layout.length)
    use = replace(first, layout=layout, buy=buy, buy_text=buy_text(buy, edition), lead=Fraction(0))
    later = any(item.later for of_kit in items.values() for item in of_kit)
    return ClassClothUse(use, sum(work.count.cut for work in kits), apart, later)


def _items(work: KitWork, cloth: str, edition: Edition, *, mixed: bool) -> list[CutItem]:
    """What is cut from one cloth for one kit of a size; the label says of which size, and what is only cut later.

    A layout has one ruler. A piece of the other edition is cut out as large as that ruler shows it, or a little larger;
    its label tells the size that it is trimmed to.
    """
    of_size = f"{work.kit.size} {work.kit.edition}" if mixed else work.kit.size

    def label(item: CutItem) -> str:
        later = ("later",) if item.later else ()
        return ", ".join((item.label, of_size, *_own_size(item, work, edition), *later))

    return [
        replace(
            item,
            label=label(item),
            across=round_up(item.across, edition.mark),
            along=round_up(item.along, edition.mark),
            room=round_up(item.room, edition.mark),
            kit=of_size,
        )
        for item in work.worksheet.cloths[cloth].items
    ]


def _own_size(item: CutItem, work: KitWork, edition: Edition) -> tuple[str, ...]:
    """The size of a piece of another edition, in its own unit."""
    own = work.worksheet.edition
    if own.name == edition.name:
        return ()
    return (f"trimmed to {on_ruler(item.across, own)} × {on_ruler(item.along, own)} {own.unit}",)


def one_after_the_other(layouts: Sequence[tuple[Layout, int]], together: Layout, buying: Buying) -> Layout:
    """Return layouts one below the other, each as often as its number says, in place of one that came out longer."""
    copies: Counter[tuple[str, str]] = Counter()
    strips: list[LaidStrip] = []
    for layout in (layout for layout, times in layouts for _ in range(times)):
        strips += [_again(strip, copies) for strip in layout.strips]
    length = sum((strip.along for strip in strips), Fraction(0))
    more = (buying.bought(length) - buying.bought(together.length)) / buying.step
    return replace(
        together,
        length=length,
        strips=below_each_other(strips),
        possible=length,
        steps_above=together.steps_above + int(more),
        proven="open" if together.steps_above + more else "purchase",
    )


def _again(strip: LaidStrip, copies: Counter[tuple[str, str]]) -> LaidStrip:
    """Return a strip that is cut once more, so that its pieces are the next copies."""

    def another(placed: PlacedItem) -> PlacedItem:
        copies[placed.piece, placed.label] += 1
        return replace(placed, copy=copies[placed.piece, placed.label])

    stacks = (replace(stack, placed=tuple(map(another, stack.placed))) for stack in strip.stacks)
    return replace(strip, stacks=tuple(stacks))


def short_remnants(cloths: Mapping[str, ClassClothUse], say: Edition) -> list[str]:
    """Return a sentence for every cloth of which the piece at hand is too short for the class."""
    return [
        f"the piece of '{name}' is too short for this class: {buy_text(cloth.use.remnant, say)} is there, "
        f"{cloth.use.buy_text} is needed"
        for name, cloth in cloths.items()
        if cloth.use.remnant is not None and cloth.use.remnant < cloth.use.buy
    ]
