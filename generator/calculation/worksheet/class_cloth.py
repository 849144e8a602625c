"""The cloth of a class: kits come in, for each cloth one cutting layout over all kits and what to buy go out.

A layout over all kits is never longer than the layouts of the kits one after the other.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from generator.calculation.cutting.cloth import buy_text, length_to_buy
from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.worked import CutItem, Layout, PlacedItem
from generator.calculation.worked_project import ClothUse
from generator.calculation.worksheet.class_kits import KitWork
from generator.lengths import Edition


@dataclass(frozen=True, slots=True)
class ClassClothUse:
    """One cloth of a class: its layout over all kits, and the kits cut from it.

    ``apart`` is how long the layouts of the kits would be one after the other [in].
    """

    use: ClothUse
    kits: int
    apart: Fraction


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
    first = kits[0].worksheet.cloths[name]
    singles = [(work.worksheet.cloths[name].layout, work.count.cut) for work in kits]
    apart = sum((layout.length * times for layout, times in singles), Fraction(0))
    items = [item for work in kits for item in _items(work, name, mixed=mixed)]
    layout = cutting_layout(items, first.layout.width, edition)
    if layout.length > apart:
        layout = one_after_the_other(singles, layout.lower_bound)
    buy = length_to_buy(layout.length, first.shrinkage_along, edition)
    use = replace(first, layout=layout, buy=buy, buy_text=buy_text(buy, edition))
    return ClassClothUse(use, sum(work.count.cut for work in kits), apart)


def _items(work: KitWork, cloth: str, *, mixed: bool) -> list[CutItem]:
    """What is cut from one cloth for all kits of one size; the label says of which size."""
    of_size = f"{work.kit.size} {work.kit.edition}" if mixed else work.kit.size
    return [
        replace(item, label=f"{item.label}, {of_size}", quantity=item.quantity * work.count.cut)
        for piece, items in work.pieces
        if piece.cloth == cloth
        for item in items
    ]


def one_after_the_other(layouts: Sequence[tuple[Layout, int]], lower_bound: Fraction) -> Layout:
    """Return layouts laid one below the other on one length of cloth, each as often as its number says."""
    placed: list[PlacedItem] = []
    strips: list[tuple[Fraction, Fraction]] = []
    top = Fraction(0)
    copies: dict[tuple[str, str], int] = {}
    for layout in (layout for layout, times in layouts for _ in range(times)):
        for piece in layout.placed:
            copy = copies[piece.piece, piece.label] = copies.get((piece.piece, piece.label), 0) + 1
            placed.append(replace(piece, copy=copy, top=piece.top + top))
        strips += [(begins + top, along) for begins, along in layout.strips]
        top += layout.length
    return Layout(
        width=layouts[0][0].width,
        length=top,
        placed=tuple(placed),
        strips=tuple(strips),
        lower_bound=lower_bound,
        optimal=top == lower_bound,
        narrowest=max(layout.narrowest for layout, _ in layouts),
    )


def short_remnants(cloths: Mapping[str, ClassClothUse], say: Edition) -> list[str]:
    """Return a sentence for every cloth of which the piece at hand is too short for the class."""
    return [
        f"the piece of '{name}' is too short for this class: {buy_text(cloth.use.remnant, say)} is there, "
        f"{cloth.use.buy_text} is needed"
        for name, cloth in cloths.items()
        if cloth.use.remnant is not None and cloth.use.remnant < cloth.use.buy
    ]
