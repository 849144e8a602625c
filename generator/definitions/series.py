"""Sizes given as a series or a table: their group comes in, the same group with every size written out goes out.

A series is written out before anything else reads it, so that its sizes are those that a person would have written one
by one. ``named`` lists the sizes; every other line gives one measure for all of them.
"""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction
from itertools import pairwise

from generator.definitions.conversion import edition_of
from generator.definitions.faults import Fault, Faults, SilentFault
from generator.definitions.formula import FormulaReader, Side
from generator.definitions.names import Names
from generator.definitions.nodes import Group, Key, Listing, Node, Scalar, fold
from generator.definitions.reading import Reading, filled_words
from generator.definitions.sizes import Size, dimensions
from generator.definitions.terms import Constant, Term, parts_of, worked_out
from generator.definitions.values import Formula
from generator.errors import CalculationError, Place
from generator.lengths import EDITIONS, Edition, on_step, write_length, write_number
from generator.limits import MOST_SIZES

NAMED = "named"
Entries = dict[str, tuple[Key, Node]]
_RISING = re.compile(r"\s*(\d{1,4})\s+to\s+(\d{1,4})\s+by\s+(\d{1,4})\s*", re.ASCII)
_NAMES = Names(none="a series gives plain lengths and numbers; what follows from them stands under measures")


def with_series(tree: Group, faults: Faults) -> tuple[Group, bool]:
    """Return a project whose sizes are written out, and whether they were given as a series.

    Examples
    --------
    ``named: small, large`` and ``side: 12 in by 2 in`` are the sizes small with a side of 12 in, large with 14 in.
    """
    sizes = tree.get("sizes")
    named = sizes.get(NAMED) if isinstance(sizes, Group) else None
    if not isinstance(sizes, Group) or not isinstance(named, Scalar | Listing):
        return tree, False
    place = sizes.entries[NAMED][0].place
    try:
        groups = _written_out(sizes, _names(named), faults)
    except Fault as fault:
        if fault.text:
            faults.add(named.place, fault.text)
        groups = {}
    entries: Entries = {fold(name): (Key(name, place), Group(inner, place)) for name, inner in groups.items()}
    known = tree.entries["sizes"][0]
    return replace(tree, entries={**tree.entries, "sizes": (known, replace(sizes, entries=entries))}), True


def _written_out(sizes: Group, names: Sequence[str], faults: Faults) -> dict[str, Entries]:
    """Return the keys of every size.

    Raises
    ------
    SilentFault
        If a line cannot be read, after all have been.
    """
    written: dict[str, Entries] = {name: {} for name in names}
    sound = True
    for folded, (key, node) in sizes.entries.items():
        if folded == NAMED or isinstance(node, Group):
            continue
        try:
            values = _values(node, len(names))
        except Fault as fault:
            faults.add(node.at(fault.offset) if isinstance(node, Scalar) else node.place, fault.text)
            sound = False
            continue
        for name, value in zip(names, values, strict=True):
            written[name][folded] = (key, value)
    for key, node in sizes.entries.values():
        if isinstance(node, Group):
            own = next((name for name in names if fold(name) == fold(key.text)), "")
            if own:
                written[own].update(node.entries)
            else:
                told = f"'{key.text}' is none of the sizes; write its name behind 'named' too, or take it out"
                faults.add(key.place, told)
    if not sound:
        raise SilentFault
    return written


def _names(found: Node) -> list[str]:
    """Return the names of a series, in order."""
    if isinstance(found, Scalar):
        counted = _RISING.fullmatch(found.text)
        if counted:
            return _counted(*map(int, counted.groups()))
        names = [part.strip() for part in filled_words(found).split(",")]
    else:
        items = found.items if isinstance(found, Listing) else ()
        names = [item.text.strip() if isinstance(item, Scalar) else "" for item in items]
    if not all(names):
        raise Fault("the names of the sizes are wanted here, with a comma between: small, medium, large")
    if len(names) > MOST_SIZES:
        raise Fault(_too_many(len(names)))
    twice = next((name for place, name in enumerate(names) if fold(name) in map(fold, names[:place])), "")
    if twice:
        raise Fault(f"'{twice}' stands twice; give every size a name of its own")
    return names


def _counted(least: int, most: int, step: int) -> list[str]:
    """Return the names of sizes that are called by numbers."""
    if step == 0 or most < least or (most - least) % step:
        raise Fault(f"no step of {step} leads from {least} to {most}; write for example '2 to 14 by 2'")
    count = (most - least) // step + 1
    if count > MOST_SIZES:
        raise Fault(_too_many(count))
    return [str(number) for number in range(least, most + 1, step)]


def _too_many(count: int) -> str:
    return f"{count} sizes; a project has {MOST_SIZES} at most, so divide it into several projects"


def _values(found: Node, count: int) -> list[Scalar]:
    """Return the value of a measure in every size, each as it would be written."""
    if not isinstance(found, Scalar):
        raise Fault("one line is wanted here: a first value and 'by' a step, or a value for each size with commas")
    form = _form(filled_words(found))
    sides = [_side(side, form, count) for side in FormulaReader(found.text, _NAMES).sides(form)]
    return [Scalar(" or ".join(words), found.place) for words in zip(*sides, strict=True)]


def _form(text: str) -> tuple[str, ...]:
    """Return what parts the values of a line: commas, or the words of a series that rises by steps."""
    if not re.search(r"\bby\b", text):
        return (",",)
    return ("to", "by") if re.search(r"\bto\b", text) else ("by",)


def _side(side: Side, form: tuple[str, ...], count: int) -> list[str]:
    """Return how each size's value would be written on one side of 'or'."""
    values = [_fixed(term, offset) for term, offset in side]
    if form == (",",):
        if len(values) not in (1, count):
            told = f"{len(values)} values for {count} sizes; write one for each, or one that holds for all"
            raise Fault(told, side[-1][1])
        values *= count // len(values)
    else:
        values = _rising(values, form, count, side)
    units = [part.unit for term, _ in side for part in parts_of(term) if isinstance(part, Constant) and part.unit]
    if len({edition_of(unit) for unit in units}) > 1:
        told = "inches and centimetres in one value; write the inch value, then 'or', then the metric value"
        raise Fault(told, side[0][1])
    bare = next((offset for term, offset in side if units and term.dimension == 0), None)
    if bare is not None:
        raise Fault("a length is wanted here, this is a plain number; write its unit, as in 1/2 in or 1 cm", bare)
    if not units:
        return [write_number(value) for value in values]
    return [write_length(value, EDITIONS[edition_of(units[0])], unit=True) for value in values]


def _rising(values: list[Fraction], form: tuple[str, ...], count: int, side: Side) -> list[Fraction]:
    """Return the values of a series that rises by equal steps: ``first by step`` or ``first to last by step``."""
    if len(values) != len(form) + 1:
        raise Fault(
            "a series is written '12 in by 2 in', or '12 in to 16 in by 2 in', on both sides of 'or'", side[-1][1]
        )
    first, step, at = values[0], values[-1], side[-1][1]
    if step <= 0:
        raise Fault("the step of a series is more than nothing; where values stay or fall, write one for each size", at)
    if len(form) == 2:
        steps = (values[1] - first) / step
        if steps.denominator != 1:
            raise Fault("these steps do not end at the last value; change the step or one of the ends", at)
        if steps + 1 != count:
            raise Fault(f"these steps make {steps + 1} values, and {count} sizes are named", at)
    return [first + number * step for number in range(count)]


def _fixed(term: Term, offset: int) -> Fraction:
    try:
        return worked_out(term, EDITIONS["inch"], _no_name)
    except CalculationError as refusal:
        raise Fault(str(refusal), offset) from None


def _no_name(name: str) -> Fraction:
    raise KeyError(name)


def check_series(sizes: Mapping[str, Size], reading: Reading) -> None:
    """Hold that sizes in a series differ and rise by their first length, and that a ruler of the room has each value.

    Every other measure rises or falls all the way: a value that turns back is a slip of the pen.
    """
    sorts = dimensions(sizes)
    first = next((name for name, sort in sorts.items() if sort == 1), "")
    for name in sorts:
        column = {size: one.values[name] for size, one in sizes.items() if name in one.values}
        faults = (_fault(name, column, EDITIONS[one], reading, must_rise=name == first) for one in reading.editions)
        found = next(filter(None, faults if len(column) == len(sizes) else ()), None)
        if found:
            reading.faults.add(*found)


def _fault(
    name: str, column: Mapping[str, Formula], edition: Edition, reading: Reading, *, must_rise: bool
) -> tuple[Place, str] | None:
    """Return the first value of a measure that no ruler has or that is out of order, and what is said of it."""
    values = [(size, formula.fixed(edition), formula) for size, formula in column.items()]
    mark = reading.marks.get(edition.name, edition.mark)
    for size, value, formula in values:
        if formula.dimension == 1 and not on_step(value, mark):
            told, finest = (write_length(one, edition, unit=True) for one in (value, mark))
            told = f"'{name}' of size '{size}' is {told}, which no ruler of this room has ({finest} is its finest mark)"
            return formula.place, f"{told}; choose a first value and a step on its marks"
    grows = must_rise or values[-1][1] >= values[0][1]
    for (before, less, _), (after, more, formula) in pairwise(values):
        if (more < less) if grows else (more > less):
            told = f"from size '{before}' to '{after}' '{name}' becomes {'less' if grows else 'more'}"
            return formula.place, f"{told}; the sizes of a series stand in order, the smallest first"
        if must_rise and more == less:
            told = f"sizes '{before}' and '{after}' both have a {name} of {write_length(more, edition, unit=True)}"
            return formula.place, f"{told}; a size is chosen by it, so it must be another in every size"
    return None
