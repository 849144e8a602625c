"""The finished thing of one size: a thing and its steps come in, the thing laid out as it hangs goes out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from generator.calculation.making_up.acts import Method
from generator.calculation.making_up.book import book_of
from generator.calculation.making_up.laid import LaidOut
from generator.calculation.making_up.laying_out import laid_out
from generator.calculation.making_up.thing import Thing
from generator.calculation.worksheet.making import doing_of
from generator.definitions.steps import Step


def finished_thing(thing: Thing, steps: Sequence[Step], methods: Mapping[str, Method]) -> LaidOut:
    """Return the finished thing laid out, a curtain the way up that it hangs."""
    return laid_out(thing, _hangs_by(thing, steps, methods) if thing.kind == "curtain" else "top")


def _hangs_by(thing: Thing, steps: Sequence[Step], methods: Mapping[str, Method]) -> str:
    """The side of a curtain that the rod runs through, else the one that is fastened up."""
    acts = [act for step in steps for act in doing_of(step, methods).acts]
    book = book_of(thing, methods, acts)
    cased = [act for act in acts if act.does in methods and "broad hem" in methods[act.does].kinds]
    rods = [item.edge for act in cased for item in book.gives(act)]
    loops = [side for closing in thing.closings if closing.kind == "hook and loop" for _, side in closing.on]
    return next((side for side in (*rods, *loops) if side != "all"), "top")
