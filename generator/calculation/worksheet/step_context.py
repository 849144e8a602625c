"""What the steps of one worksheet are told from: the scope and everything worked out before the steps."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculation.making_up.acts import Act
from generator.calculation.making_up.joining import Joiner
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import ClosureWork, ClothUse, MeetingWork
from generator.calculation.worksheet.scope import Scope
from generator.definitions.techniques import Technique


@dataclass(frozen=True, slots=True)
class StepContext:
    """What the steps of one worksheet are told from; without a ``joiner`` nothing is told of their seams.

    ``acts`` are those of all steps, in order.
    """

    scope: Scope
    pieces: Mapping[str, Piece]
    cloths: Mapping[str, ClothUse]
    meetings: tuple[MeetingWork, ...]
    closures: tuple[ClosureWork, ...]
    techniques: Mapping[str, Technique]
    joiner: Joiner | None = None
    acts: tuple[Act, ...] = ()
