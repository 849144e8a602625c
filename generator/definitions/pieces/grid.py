"""A grid of blocks: its keys come in, its frozen definition goes out."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from generator.definitions.faults import Fault
from generator.definitions.fields import Length, Quantity, length
from generator.definitions.nodes import Scalar, fold
from generator.definitions.piece_kind import RECTANGLE, PieceKind
from generator.definitions.pieces.model import PieceModel
from generator.definitions.readers import Leaf, choice
from generator.definitions.reading import Reading, filled_words
from generator.definitions.values import Formula

Turned = Literal["every second"]


def _block(words: Scalar, reading: Reading) -> str:
    name = fold(filled_words(words))
    kind = reading.kind_of(name)
    if kind is not None and ("face" not in kind.nature or kind.edges != RECTANGLE or "of blocks" in kind.nature):
        raise Fault(f"'{name}' is {kind.told}; blocks are tucked panels or plain pieces with four straight sides")
    return name


class Grid(PieceModel):
    """Blocks of one piece joined in rows, with bands of its own cloth between them; it is cut for the bands alone."""

    of_kind: ClassVar = PieceKind(
        "grid",
        RECTANGLE,
        ("block", "cut block", "band", "raw across", "raw along", "joining seam"),
        ("blocks across", "blocks down"),
        copied=True,
        nature=("face", "of blocks"),
    )
    of: Annotated[str, Leaf(_block, {"type": "string"})]
    blocks_across: Quantity
    blocks_down: Quantity
    bands: Length | None = None
    turned: Annotated[Turned, choice(("every second",), "way of turning blocks")] | None = None
    seam: Annotated[Formula, length("seam")] | None = None
