"""Cords of a blind: pieces, cautions and what is bought come in, faults go out.

A cord at a blind can strangle a child. No sheet tells of a cord but that of a headrail which is bought with all its
safety parts and fitted by its maker's text.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence

from generator.definitions.cloths import Supply
from generator.definitions.pieces.model import PieceModel
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.reading import Reading

CAUTION = "blind cords"
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
