"""Turn plans: a name or a drawing comes in, a plan that tells every tuck's turn at every row goes out.

To add a plan, write a builder of its repeat cell (one line a row, one sign a tuck) and enter it in ``PLANS``.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from types import MappingProxyType
from typing import get_args

from generator.calculation.panel_ends import Lie
from generator.calculation.turning.repeat import Cell, TurnPlan
from generator.calculation.worked import Turn
from generator.errors import CalculationError

__all__ = ["PLANS", "TurnPlan", "drawn_plan", "turn_plan"]

MOST_ALIKE = 50
MOST_SIGNS = 2_000


def _cell(*lines: str) -> Cell:
    return tuple(tuple(Turn(sign) for sign in line) for line in lines)


def _shifted(line: str, by: int) -> str:
    return line[-by % len(line) :] + line[: -by % len(line)]


def _has_facing(cell: Cell) -> bool:
    """Whether two neighbours are turned to each other anywhere, also where the repeat meets itself."""
    pairs = ((one, other) for row in cell for one, other in zip(row, row[1:] + row[:1], strict=True))
    return (Turn.RIGHT, Turn.LEFT) in pairs


def _plan(name: str, description: str, lines: tuple[str, ...], multiple: int = 1) -> TurnPlan:
    cell = _cell(*lines)
    return TurnPlan(name, name.capitalize(), cell, _has_facing(cell), description, multiple=multiple)


def _one_way(_group: int) -> TurnPlan:
    return _plan("one way", "All tucks lie to the right at every row; the length does not draw in.", (">",))


def _ripples(_group: int) -> TurnPlan:
    return _plan("ripples", "All tucks lie one way, at the next row all lie the other way.", (">", "<"))


def _linked_cells(_group: int) -> TurnPlan:
    return _plan(
        "linked cells",
        "Tucks are turned to each other in pairs; at every second row the pairs move along by one tuck.",
        ("><", "<>"),
    )


def _scattered_pairs(_group: int) -> TurnPlan:
    return _plan(
        "scattered pairs",
        "Every second pair is turned to itself, the pairs between stand; at the next row they change places.",
        ("><..", "..><"),
        multiple=2,
    )


def _bands(group: int) -> TurnPlan:
    line = ">" * group + "<" * group
    return _plan(
        "bands",
        f"Groups of {group} lie one way and groups of {group} the other; at the next row every group changes sides.",
        (line, _shifted(line, group)),
        multiple=group,
    )


def _slants(group: int) -> TurnPlan:
    line = ">" * group + "<" * group
    return _plan(
        "slants",
        f"Groups of {group} lie one way and groups of {group} the other; each row moves them along by one tuck.",
        tuple(_shifted(line, by) for by in range(2 * group)),
    )


def _zigzags(group: int) -> TurnPlan:
    line = ">" * group + "<" * group
    there_and_back = (*range(group), *range(group, 0, -1))
    return _plan(
        "zigzags",
        f"Groups of {group} lie one way and groups of {group} the other; they move along by one tuck a row, "
        f"after {group} rows back again.",
        tuple(_shifted(line, by) for by in there_and_back),
    )


def _diamonds(group: int) -> TurnPlan:
    widths = (*range(group, 0, -1), *range(group))
    return _plan(
        "diamonds",
        f"Tucks are turned to the middle of groups of {2 * group}; row by row fewer of them, until all are turned "
        "out of the group, then more again.",
        tuple("<" * (group - width) + ">" * width + "<" * width + ">" * (group - width) for width in widths),
        multiple=2 * group,
    )


PLANS: Mapping[str, Callable[[int], TurnPlan]] = MappingProxyType(
    {
        "linked cells": _linked_cells,
        "ripples": _ripples,
        "bands": _bands,
        "diamonds": _diamonds,
        "slants": _slants,
        "zigzags": _zigzags,
        "scattered pairs": _scattered_pairs,
        "one way": _one_way,
    }
)


def turn_plan(name: str, group: int = 2, lone: Lie = "out") -> TurnPlan:
    """Return a plan of the table by its name.

    Parameters
    ----------
    name : str
        A name in ``PLANS``.
    group : int
        Tucks that lie alike side by side [-], in the plans made of groups.
    lone : Lie
        How to lay an edge tuck that has lost its partner.

    Returns
    -------
    TurnPlan
        The plan.

    Raises
    ------
    CalculationError
        If there is no such plan, or a group or a way to lie that cannot be.

    Examples
    --------
    >>> [[turn.value for turn in row] for row in turn_plan("linked cells").turns(2, 3)]
    [['>', '<', '>'], ['<', '>', '<']]

    References
    ----------
    Common practice, no source.
    """
    if name not in PLANS:
        raise CalculationError(f"there is no turn plan '{name}'; there are: {', '.join(PLANS)}, or draw your own")
    if not 1 <= group <= MOST_ALIKE:
        raise CalculationError(f"a group of {group} tucks cannot be turned; give a group of 1 to {MOST_ALIKE}")
    return _with_lone(PLANS[name](group), lone)


def drawn_plan(text: str, lone: Lie = "out") -> TurnPlan:
    r"""Return a plan that a teacher has drawn with signs.

    Parameters
    ----------
    text : str
        One line a row, one sign a tuck: ``<`` lies to the left, ``>`` to the right, ``.`` stays upright; spaces between
        the signs and empty lines above and below do not count.
    lone : Lie
        How to lay an edge tuck that has lost its partner.

    Returns
    -------
    TurnPlan
        The plan; it repeats over the panel and may be broken off anywhere.

    Raises
    ------
    CalculationError
        If a line holds another sign or is longer or shorter than the first, or nothing is drawn; names the line.

    Examples
    --------
    >>> drawn_plan("> <\n< >").cell == turn_plan("linked cells").cell
    True

    References
    ----------
    Common practice, no source.
    """
    lines = ["".join(line.split()) for line in text.splitlines()]
    drawn = [(number, line) for number, line in enumerate(lines, 1) if line]
    if not drawn:
        raise CalculationError("nothing is drawn in the drawn plan; write one line a row with the signs < > .")
    for number, line in drawn:
        _check_line(number, line, drawn[0])
    cell = _cell(*(line for _, line in drawn))
    plan = TurnPlan("drawn plan", "Drawn plan", cell, _has_facing(cell), "The turns are drawn by hand.")
    return _with_lone(plan, lone)


def _check_line(number: int, line: str, first: tuple[int, str]) -> None:
    signs = {turn.value for turn in Turn}
    wrong = next((sign for sign in line if sign not in signs), None)
    if wrong is not None:
        raise CalculationError(
            f"line {number} of the drawn plan has a sign '{wrong}'; only < (left), > (right) and . (upright) are signs"
        )
    if len(line) != len(first[1]):
        raise CalculationError(
            f"line {number} of the drawn plan has {len(line)} signs and line {first[0]} has {len(first[1])}; "
            "every line needs one sign for each tuck of the repeat"
        )
    if len(line) > MOST_SIGNS:
        raise CalculationError(f"line {number} of the drawn plan has more than {MOST_SIGNS} signs; draw one repeat")


def _with_lone(plan: TurnPlan, lone: Lie) -> TurnPlan:
    if lone not in get_args(Lie):
        raise CalculationError(f"lone edge tucks cannot lie '{lone}'; give out, in or upright")
    return replace(plan, lone=lone)
