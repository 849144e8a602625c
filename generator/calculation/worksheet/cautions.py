"""The cautions of a sheet: tools of its steps and what its project asks for come in, safety messages go out."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping, Sequence

from generator.calculation.worked_project import Caution
from generator.calculation.worksheet.scope import Scope
from generator.definitions.caution_rule import OwnCaution, own_cautions
from generator.definitions.project import Project

CautionRules = Mapping[str, OwnCaution]


def rules_of(project: Project, shared: CautionRules) -> dict[str, OwnCaution]:
    """Return all cautions that a project knows by their names: the tool's, the room's, and last its own."""
    asked = (project.cautions, *(step.cautions for step in project.steps))
    return {**shared, **{one.name: one for each in asked for one in own_cautions(each)}}


def cautions_for(rules: CautionRules, tools: Collection[str], asked: Collection[str]) -> tuple[str, ...]:
    """Return the names of the cautions that tools bring along, or that are asked for by their name or place."""
    return tuple(name for name, rule in rules.items() if name in asked or {*rule.when} & {*tools, *asked})


# What makes a caution of the finished thing matter: a state, before whose step it is told.
_MATTERS_FROM = {
    "pillows near babies": "filled",
    "small parts": "set",
    "magnets": "set",
    "blind cords": "rods in",
    "lamp": "fitted",
}


def told_at(states: Sequence[Collection[str]], places: Iterable[str]) -> dict[int, tuple[str, ...]]:
    """Return at which steps, counted from 1, the cautions of the finished thing are told again.

    ``states`` are those that each step gives. One that no step gives, or that is not about a state, waits for the last.
    """
    told: dict[int, tuple[str, ...]] = {}
    for place in places:
        state = _MATTERS_FROM.get(place)
        number = next((number for number, given in enumerate(states, 1) if state in given), len(states))
        told[number] = (*told.get(number, ()), place)
    return told


def worked_cautions(scope: Scope, rules: CautionRules, names: Collection[str]) -> dict[str, Caution]:
    """Return cautions with their texts filled in, in the order of the rules."""
    return {name: _caution(scope, name, rule) for name, rule in rules.items() if name in names}


def _caution(scope: Scope, name: str, rule: OwnCaution) -> Caution:
    return Caution(
        name=name,
        text=rule.told(scope.text),
        level=rule.level,
        short=rule.short or name,
        hazard=rule.hazard,
        consequence=rule.consequence,
        avoid=scope.text(rule.avoid).strip(),
    )
