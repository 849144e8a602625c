"""Cloth: the worked pieces of a project come in, what to cut, how to lay it out and what to buy goes out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import replace
from fractions import Fraction
from functools import partial

from generator.calculation.cutting.cloth import buy_text, width_to_ask_for
from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.cutting.stripes import side_by_side
from generator.calculation.laid import CutItem, Layout, Match
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import ClothUse
from generator.calculation.worksheet.bias_cloth import offer_straight_grain, pieced_where_cheaper
from generator.calculation.worksheet.panel_stripes import room_for_stripe
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.errors import CalculationError
from generator.limits import MOST_PARTS


def cut_items(piece: Piece, *, one_way: bool = False) -> tuple[CutItem, ...]:
    """Return the rectangles of cloth that a piece is cut from, as they lie on the cloth.

    A piece whose ``across`` runs with the selvage lies on its side; a one-way cloth allows no piece to be turned.
    """
    turnable = piece.grain in ("either", "bias") and not one_way
    return tuple(
        CutItem(
            piece.name,
            f"{piece.label}, {cut.name}" if cut.name else piece.label,
            *((cut.along, cut.across) if piece.grain == "across" else (cut.across, cut.along)),
            piece.quantity * cut.number,
            turnable,
            later=piece.after_panel,
        )
        for cut in piece.cuts
    )


def cloth_uses(scope: Scope, pieces: Sequence[Piece]) -> dict[str, ClothUse]:
    """Return every cloth of the project that something is cut from; what cannot be laid out is reported."""
    uses = {}
    for name in scope.project.cloths:
        try:
            items = items_of_cloth(scope, name, pieces)
            _refuse_too_many(items)
            if items:
                uses[name] = _chosen(scope, name, items, [piece for piece in pieces if piece.cloth == name])
        except CalculationError as fault:
            scope.report("error", str(fault), scope.project.cloths[name].place)
        except AlreadyReportedError:
            continue
    return uses


def _chosen(scope: Scope, name: str, items: tuple[CutItem, ...], pieces: Sequence[Piece]) -> ClothUse:
    """Return what a cloth comes to, its strips on the bias as they buy least; what may be said of it is reported."""
    using = partial(_use, scope, name)
    use = pieced_where_cheaper(scope, using(items), pieces, using)
    offer_straight_grain(scope, use, pieces)
    if use.remnant is not None:
        _compare(scope, name, use.layout.length, use.buying.enough(use.remnant))
    return use


def items_of_cloth(scope: Scope, name: str, pieces: Sequence[Piece]) -> tuple[CutItem, ...]:
    """Return everything that is cut from one cloth, with the room that panels on stripes need."""
    one_way = scope.project.cloths[name].one_way
    pattern = _pattern(scope, name)
    return tuple(
        replace(item, room=room, turnable=item.turnable and not room)
        for piece in pieces
        if piece.cloth == name
        for item in _matched(piece, cut_items(piece, one_way=one_way), pattern)
        for room in [room_for_stripe(scope, piece, item.across)]
    )


def _pattern(scope: Scope, name: str) -> Match | None:
    """The pattern of a cloth with a repeat along it, as it is when the cloth has been washed."""
    cloth = scope.project.cloths[name]
    if cloth.pattern_repeat is None:
        return None
    buying, repeat = scope.buying(name), scope.value(cloth.pattern_repeat)
    with scope.reporting(cloth.pattern_repeat.place):
        if repeat <= 0:
            raise CalculationError(
                f"'pattern repeat' comes to {scope.say(repeat)}; measure along the cloth from one place of the pattern "
                "to the next like it"
            )
    return Match(buying.washed(repeat), cloth.half_drop)


def _matched(piece: Piece, items: Sequence[CutItem], pattern: Match | None) -> Iterator[CutItem]:
    """Yield the items of a piece; on a pattern those that must match say so, in a half drop every other breadth."""
    if pattern is None or not piece.matches or piece.grain != "along" or sum(item.quantity for item in items) == 1:
        yield from items
        return
    pattern = replace(pattern, at_selvage=piece.lengths is not None)
    before = 0
    for item in items:
        each = item.quantity // piece.quantity
        shifted = (each + before % 2) // 2 if pattern.half_drop else 0
        before += each
        if shifted < each:
            yield replace(item, quantity=(each - shifted) * piece.quantity, match=pattern)
        if shifted:
            label = f"{item.label}, half a repeat on"
            yield replace(item, label=label, quantity=shifted * piece.quantity, match=replace(pattern, shifted=True))


def _refuse_too_many(items: Sequence[CutItem]) -> None:
    parts = sum(item.quantity for item in items)
    if parts > MOST_PARTS:
        raise CalculationError(
            f"{parts} parts are cut from this cloth; more than {MOST_PARTS} are not laid out. Write what one student "
            "makes, and let a class say how many make it"
        )


def _compare(scope: Scope, name: str, needed: Fraction, left: Fraction) -> None:
    """Report whether a piece of cloth at hand, washed and straightened, holds the layout [in]."""
    place = scope.project.cloths[name].place
    if left >= needed:
        scope.report("note", f"the piece of '{name}' is long enough: {scope.say(left - needed)} are left over", place)
        return
    text = (
        f"the piece of '{name}' is {scope.say(needed - left)} too short when it is washed and straightened: the layout "
        f"needs {scope.say(needed)}; take a smaller size, a wider cloth, or cut a piece from another cloth"
    )
    scope.report("warning", text, place)


def _side_by_side(scope: Scope, name: str, items: Sequence[CutItem]) -> Layout | None:
    """Return the layout in which copies of one striped piece begin on the same stripe; None where there are none."""
    width = scope.washed_width(name)
    striped = [item for item in items if item.room]
    if len(striped) != 1 or striped[0].quantity == 1 or 2 * striped[0].across + striped[0].room > width:
        return None
    room, usable = side_by_side(striped[0].across, striped[0].room, width)
    closer = [replace(item, room=room, alone=True) if item.room else item for item in items]
    if any(min(item.across, item.along if item.turnable else item.across) > usable for item in closer):
        return None
    layout = cutting_layout(closer, usable, scope.edition, scope.buying(name))
    return replace(layout, width=width, narrowest=layout.narrowest + width - usable)


def _use(scope: Scope, name: str, items: tuple[CutItem, ...]) -> ClothUse:
    cloth = scope.project.cloths[name]
    buying = scope.buying(name)
    layout = cutting_layout(items, scope.washed_width(name), scope.edition, buying)
    lead = Fraction(0)
    closer = _side_by_side(scope, name, items)
    if closer is not None and buying.bought(closer.length) < buying.bought(layout.length):
        layout, lead = closer, max(item.room for item in items)
    buy = buying.bought(layout.length)
    across = scope.share(cloth.shrinkage_across)
    width = scope.value(cloth.width)
    remnant = scope.value(cloth.length) if cloth.length else None
    return ClothUse(
        name=name,
        label=cloth.label,
        width=width,
        layout=layout,
        buy=buy,
        buy_text=buy_text(buy, scope.edition),
        buying=buying,
        narrowest=min(width, width_to_ask_for(layout.narrowest, across, scope.edition)),
        shrinkage_across=across,
        one_way=cloth.one_way,
        weight=cloth.weight,
        thickness=scope.value(cloth.thickness) if cloth.thickness else None,
        colour=cloth.colour or "",
        remnant=remnant,
        note=scope.text(cloth.note),
        items=items,
        pattern=next((item.match for item in items if item.match is not None), None),
        lead=lead,
    )
