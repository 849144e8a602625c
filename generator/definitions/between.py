"""Sizes between the named ones: the sizes of a project and a step come in, every step that lies between goes out."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping
from dataclasses import replace
from itertools import pairwise
from typing import Annotated

from generator.definitions.faults import Fault, meant
from generator.definitions.fields import VALUE, Label
from generator.definitions.in_proportion import Values, in_order, part
from generator.definitions.keyed import Located
from generator.definitions.names import Names
from generator.definitions.nodes import Scalar
from generator.definitions.own_size import own_size
from generator.definitions.readers import Leaf
from generator.definitions.reading import Reading, fixed, read_value
from generator.definitions.sizes import Size, dimensions
from generator.definitions.values import Formula
from generator.lengths import EDITIONS, Edition, say_length, write_length, write_number
from generator.limits import MOST_BETWEEN


def _step(words: Scalar, reading: Reading) -> Formula:
    inside = replace(reading, names=Names(none="a step from size to size is a plain length"))
    found = read_value(words, inside, purpose="finished")
    if not found.names and min(fixed(found, edition) for edition in EDITIONS.values()) <= 0:
        raise Fault("a step from size to size is more than nothing; write for example '1/2 in or 1 cm'")
    return found


class Between(Located):
    """Sizes worked out between the named ones: how far it is from one to the next, and by which length of theirs."""

    every: Annotated[Formula, Leaf(_step, VALUE)]
    of: Label = ""


def deciding_length(between: Between | None, sizes: Mapping[str, Size]) -> str:
    """Return the name of the length by which sizes go on: the one that is named, else their first; '' without any."""
    said = between.of if between else ""
    return said or next((name for name, sort in dimensions(sizes).items() if sort == 1), "")


def sizes_between(between: Between | None, sizes: Mapping[str, Size], edition: Edition) -> Iterator[tuple[str, Size]]:
    """Give every size between the named ones in an edition, as ``sheet --with`` would make it of the same values.

    Each is named by the length that they go on by: that stays where what follows from it is corrected.

    From the least named size on, each is a step longer. What else a size gives lies in the same proportion between the
    named sizes before and after it, to the nearest 1/8 in or 5 mm, and whole where both of these are whole.

    Examples
    --------
    Between 14 x 36 in and 16 x 54 in the half way is 15 x 45 in.
    """
    for values in steps_between(between, sizes, edition) if between else ():
        sorts = dimensions(sizes)
        texts = {
            name: write_length(value, edition, unit=True) if sorts[name] else write_number(value)
            for name, value in values.items()
        }
        yield _name(deciding_length(between, sizes), values, edition), own_size(sizes, texts, edition)


def _name(by: str, values: Values, edition: Edition) -> str:
    return f"{by} {write_length(values[by], edition, unit=True)}"


def steps_between(between: Between, sizes: Mapping[str, Size], edition: Edition) -> Iterator[Values]:
    """Give the values of every size between the named ones, lengths in inches; those of a named size are left out."""
    by, sorts, step = deciding_length(between, sizes), dimensions(sizes), between.every.fixed(edition)
    named = in_order(by, sizes, edition)
    least = named[0][by]
    for before, after in pairwise(named):
        number = (before[by] - least) // step + 1
        while (at := least + number * step) < after[by]:
            share = (at - before[by]) / (after[by] - before[by])
            yield {
                name: at if name == by else part(before[name], after[name], share, sort, edition)
                for name, sort in sorts.items()
            }
            number += 1


def check_between(between: Between | None, sizes: Mapping[str, Size], reading: Reading) -> None:
    """Report why there can be no sizes between, in the editions of the project."""
    if between is None or not sizes or reading.faults.errors:
        return
    lengths = [name for name, sort in dimensions(sizes).items() if sort == 1]
    if between.of and between.of not in lengths:
        told = f"'{between.of}' is no length that the sizes give{meant(between.of, lengths)}"
    elif not lengths:
        told = "sizes between need a length that every size gives"
    elif len(sizes) == 1:
        told = "there is one size only, so nothing lies between; name the least and the largest"
    else:
        told = next((fault for name in reading.editions if (fault := _fault(between, sizes, EDITIONS[name]))), "")
    if told:
        reading.faults.add(between.place, told)


def _fault(between: Between, sizes: Mapping[str, Size], edition: Edition) -> str:
    """What keeps sizes from lying between in one edition, or nothing."""
    by, step = deciding_length(between, sizes), between.every.fixed(edition)
    named = in_order(by, sizes, edition)
    for before, after in pairwise(named):
        at = say_length(before[by], edition)
        if before[by] == after[by]:
            return f"two sizes have a {by} of {at}; sizes between go on by it, so it must be another in every size"
        falling = next((name for name in before if after[name] < before[name]), "")
        if falling:
            return (
                f"from a {by} of {at} to one of {say_length(after[by], edition)} '{falling}' becomes less; what lies "
                "between follows its neighbours, so everything else must stay or grow with it"
            )
    least, most = (say_length(one[by], edition) for one in (named[0], named[-1]))
    number = (named[-1][by] - named[0][by]) / step
    if number > MOST_BETWEEN:
        told = f"{math.ceil(number)} steps of {write_length(step, edition, unit=True)} from {least} to {most}"
        return f"{told}; a project has {MOST_BETWEEN} at most, so take a longer step"
    names = [_name(by, values, edition) for values in steps_between(between, sizes, edition)]
    taken = next((name for name in names if name in sizes), "")
    if taken:
        return f"a size is called '{taken}' already, as one between would be; give it another name"
    if not names:
        return (
            f"no step of {write_length(step, edition, unit=True)} lies between {least} and {most}; take a shorter one"
        )
    return ""
