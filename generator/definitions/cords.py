"""Cords that can strangle a child: pieces, closures, cautions and what is bought come in, faults go out.

No sheet tells of a cord at a blind but that of a headrail which is bought with all its safety parts and fitted by its
maker's text, and none ties anything at a child's neck (EN 14682, on cords of children's clothes; from memory).
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence

from generator.definitions.closures import Closure
from generator.definitions.cloths import Supply
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.reading import Reading

CAUTION = "blind cords"
CHILDREN = "small children"
_NECK = re.compile(r"\b(neck|throat|collar|hood)", re.IGNORECASE)
_CORD = re.compile(r"\b(cord|string|chain|lift tape)s?\b", re.IGNORECASE)


def check_cords(
    pieces: Mapping[str, PieceModel], supplies: Sequence[Supply], cautions: Collection[str], reading: Reading
) -> None:
    """Hold that a blind has no cord but that of a bought headrail, and that its sheet then warns of it."""
    blinds = [piece.tucks for piece in pieces.values() if isinstance(piece, TuckedPanel) and piece.tucks.rod]
    ringed = [tucks.rings for tucks in blinds if tucks.rings is not None]
    if ringed and CAUTION not in cautions:
        told = (
            f"cords hang on these rings; write 'cautions: {CAUTION}' at the head of the file, so that the sheet warns"
        )
        reading.faults.add(ringed[0].place, told)
    if not blinds or ringed:
        return
    for supply in supplies:
        found = _CORD.search(supply.item.text)
        if found:
            told = (
                f"'{found[0]}' is bought for a blind, and a child caught in it can strangle. Take it out: rods lift on "
                "to hooks. Only with a headrail that is bought with all its safety parts, write 'rings' under 'tucks'"
            )
            reading.faults.add(supply.place, told)


def check_neck(closures: Sequence[Closure], cautions: Collection[str], reading: Reading) -> None:
    """Hold that nothing is tied at the neck of what small children wear."""
    if CHILDREN not in cautions:
        return
    for closure in closures:
        named = [word for run in closure.edges for edge in run.edges for word in edge]
        if closure.kind == "ties" and any(_NECK.search(word) for word in named):
            told = (
                "a tie at a child's neck can strangle; close it with snaps, buttons or hook and loop, and keep ties "
                "below the arms"
            )
            reading.faults.add(closure.place, told)
