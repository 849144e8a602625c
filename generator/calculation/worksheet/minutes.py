"""The minutes of a step: its techniques and acts come in, its time at the room's rates goes out.

What techniques count is told by them (``work:``); a step of a project's own is counted from its acts.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.making.timing import operation_minutes, printed_minutes
from generator.calculation.making_up.acts import Act
from generator.calculation.worksheet.step_context import StepContext
from generator.calculation.worksheet.times import WORK, Counts
from generator.calculation.worksheet.work import Work, work_of
from generator.definitions.vocabulary import CLOSURES

# Work that is counted from the closures: its rate, and the kinds of closure it is done to.
_CLOSING = {
    "make buttonholes": ("buttonhole", ("buttons",)),
    "sew buttons": ("sew a button", ("buttons",)),
    "set fasteners": ("sew a button", tuple(kind for kind, facts in CLOSURES.items() if "set flat" in facts)),
    "set zip": ("join a length", ("zip",)),
    "thread elastic": ("join a length", ("elastic",)),
}
# What an act of a step's own counts, where it names no technique.
_ACTS: Mapping[str, tuple[str, ...]] = MappingProxyType(
    {
        "sew": ("sew seams",),
        "lay": ("baste pieces",),
        "baste": ("baste pieces",),
        "turn out": ("turn out",),
        "close": ("close openings",),
        "put in": ("sew by hand",),
        "neaten": ("neaten seams",),
        "set": ("set fasteners",),
        "fasten": ("fasten edges",),
    }
)


def technique_minutes(context: StepContext, kinds: Iterable[str], act: Act, names: Sequence[str]) -> int:
    """Return the minutes of one technique, done on some pieces."""
    return _printed(context, _counts(context, kinds, work_of(context, [act], names)))


def own_minutes(context: StepContext, acts: Sequence[Act]) -> int:
    """Return the minutes of a step of a project's own from its acts; none for one that only looks."""
    counts: Counts = {}
    for act in acts:
        technique = context.techniques.get(act.does)
        names = [name for name in dict.fromkeys(piece for piece, _ in act.what) if name in context.pieces]
        work = work_of(context, [act], names)
        kinds = technique.work if technique is not None else _ACTS.get(act.does, ())
        if kinds == ("sew seams",) and not work.seams:
            kinds = ("sew edges",)
        counts = _added(counts, _counts(context, kinds, work))
    return _printed(context, counts)


def _counts(context: StepContext, kinds: Iterable[str], work: Work) -> Counts:
    counts: Counts = {}
    for kind in kinds:
        counts = _added(counts, WORK[kind](work))
        if kind in _CLOSING:
            operation, closing = _CLOSING[kind]
            number = sum(one.number for one in context.closures if one.kind in closing)
            counts = _added(counts, {operation: Fraction(number)})
    return counts


def _added(counts: Counts, more: Counts) -> Counts:
    return {name: counts.get(name, Fraction(0)) + more.get(name, Fraction(0)) for name in (*counts, *more)}


def _printed(context: StepContext, counts: Counts) -> int:
    return printed_minutes(operation_minutes(counts, context.scope.room.rates))
