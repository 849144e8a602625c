"""``tuckwright explore PROJECT --have``: cloth at hand comes in, which sizes can be cut from it is printed."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from contextlib import suppress
from fractions import Fraction

import click

from generator.calculation.cutting.remnants import FromRemnants, LiesOn, Remnant, cut_from_remnants
from generator.calculation.laid import CutItem
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, worked_sheet
from generator.commands.columns import UNIT_WORDS, indented
from generator.commands.edge_words import typed_measure
from generator.commands.working import edition_of, opened, with_own_cloth
from generator.definitions.project import Project
from generator.errors import FaultyFileError
from generator.lengths import Edition, say_length, write_length


def told_of_remnants(project: str, have: Sequence[str], cloth: str | None, edition: str | None) -> str:
    """Return for every size of a project whether it can be cut from what there is, and where its pieces lie."""
    found, shared, _ = opened(project)
    ruler = edition_of(found, edition, shared.room)
    remnants = [_typed(text, ruler) for text in have]
    name = cloth or next(iter(found.cloths))
    if name not in found.cloths:
        known = ", ".join(found.cloths)
        raise click.BadParameter(f"'{project}' has no cloth '{name}'; it has: {known}", param_hint="--of")
    there = " and ".join(_size(remnant, ruler) for remnant in remnants)
    head = (
        f"{found.cloths[name].label}: {there}, across by along the selvage, as washed and straightened. Places in "
        f"{UNIT_WORDS[ruler.unit]}, from the left and from the top."
    )
    return "\n".join(
        [head, *(line for size in found.sizes for line in _lines(found, size, name, remnants, ruler, shared))]
    )


def _typed(text: str, edition: Edition) -> Remnant:
    """Return the piece of cloth that was typed as '30x18'."""
    sides = re.split(r"\s*[x×]\s*", text.strip())
    if len(sides) != 2:
        raise click.BadParameter(f"'{text}': write across by along the selvage, such as 30x18", param_hint="--have")
    across, along = (typed_measure(side, edition, "--have") for side in sides)
    return Remnant(across, along)


def _lines(
    project: Project, size: str, cloth: str, remnants: Sequence[Remnant], edition: Edition, shared: RoomContext
) -> Iterator[str]:
    """Yield what is told of one size."""
    answer, why = _answer(project, size, cloth, remnants, edition, shared)
    if answer is not None and answer.lying is not None:
        yield f"{size}: yes"
        for place, remnant in enumerate(remnants):
            lying = [_place(one, edition) for one in answer.lying if one.remnant == place]
            if lying:
                yield from indented(f"  {_size(remnant, edition)}: ", "; ".join(lying))
    elif answer is not None and answer.certain and not why:
        yield f"{size}: no; as its sheet cuts them, the pieces do not fit with cuts across, down and across"
    else:
        yield from indented(f"{size}: not certain; ", why or "not every way of cutting it was tried")


def _answer(
    project: Project, size: str, cloth: str, remnants: Sequence[Remnant], edition: Edition, shared: RoomContext
) -> tuple[FromRemnants | None, str]:
    """Return what was found, and why it is no more than that."""
    try:
        sheet = worked_sheet(project, size, edition, shared)
    except FaultyFileError as fault:
        return None, next((one.text for one in fault.findings if one.level == "error"), "it cannot be worked")
    if cloth not in sheet.cloths:
        return FromRemnants((), certain=True), ""
    items = sheet.cloths[cloth].items
    if any(item.match is not None for item in items):
        return None, "its pattern must match, which the places here do not see"
    answer, joined = cut_from_remnants(items, remnants, edition), _joined(sheet, cloth)
    if answer.lying is not None or not joined:
        return answer, ""
    whole = [item for item in items if item.piece not in joined]
    widths = sorted({remnant.across for remnant in remnants}, reverse=True)
    for there in _items_at_widths(widths, project, size, cloth, edition, shared):
        answer = cut_from_remnants([*whole, *(item for item in there if item.piece in joined)], remnants, edition)
        if answer.lying is not None:
            break
    return answer, "a piece that is joined could be joined otherwise"


def _items_at_widths(
    widths: Sequence[Fraction], project: Project, size: str, cloth: str, edition: Edition, shared: RoomContext
) -> Iterator[Sequence[CutItem]]:
    """Yield what is cut from a cloth if it were as wide as a remnant; a width on which it cannot be sewn gives none."""
    for width in widths:
        own = (f"{cloth}.width={write_length(width, edition, unit=True)}",)
        with suppress(FaultyFileError):
            yield worked_sheet(with_own_cloth(project, own, edition), size, edition, shared).cloths[cloth].items


def _joined(sheet: Worksheet, cloth: str) -> set[str]:
    """Return the pieces of a cloth that are cut in a way that another width of cloth would change."""
    return {
        name
        for name, piece in sheet.pieces.items()
        if piece.cloth == cloth
        and (piece.lengths is not None or piece.square or (piece.panel is not None and piece.panel.breadths))
    }


def _size(remnant: Remnant, edition: Edition) -> str:
    return f"{write_length(remnant.across, edition)} by {say_length(remnant.along, edition)}"


def _place(one: LiesOn, edition: Edition) -> str:
    def say(length: Fraction) -> str:
        return write_length(length, edition)

    return f"{one.label}, {say(one.across)} by {say(one.along)}, at {say(one.left)} and {say(one.top)}"
