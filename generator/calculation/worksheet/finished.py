"""The finished thing of one size: a thing and the acts of its steps come in, the thing laid out goes out."""

from __future__ import annotations

from collections.abc import Sequence

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.book import Book
from generator.calculation.making_up.laid import LaidOut
from generator.calculation.making_up.laying_out import laid_out


def finished_thing(book: Book, acts: Sequence[Act]) -> LaidOut:
    """Return the finished thing laid out, a curtain the way up that it hangs."""
    return laid_out(book.thing, _hangs_by(book, acts) if book.thing.kind == "curtain" else "top")


def _hangs_by(book: Book, acts: Sequence[Act]) -> str:
    """The side of a curtain that the rod runs through, else the one that is fastened up."""
    cased = [act for act in acts if act.does in book.methods and "broad hem" in book.methods[act.does].kinds]
    rods = [item.edge for act in cased for item in book.gives(act)]
    loops = [side for closing in book.thing.closings if closing.kind == "hook and loop" for _, side in closing.on]
    return next((side for side in (*rods, *loops) if side != "all"), "top")
