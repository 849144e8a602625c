"""Embroidery: where a design lies on a piece and how large it is; its keys come in, a frozen definition goes out."""

from __future__ import annotations

from typing import Annotated

from generator.definitions.faults import Fault
from generator.definitions.fields import Finished, Label, Length, standing
from generator.definitions.keyed import Located
from generator.definitions.nodes import Scalar, fold
from generator.definitions.readers import Leaf
from generator.definitions.reading import Reading, filled_words

_FLAT = ("tucked panel", "rectangle")


def _piece(words: Scalar, reading: Reading) -> str:
    """Return the name of a piece that can be embroidered: it lies flat, and its edges are straight."""
    name = fold(filled_words(words))
    kind = reading.kind_of(name)
    if kind is not None and kind.word not in _FLAT:
        raise Fault(f"'{name}' is {kind.told}; a tucked panel or a rectangle is embroidered here")
    return name


class Embroidery(Located):
    """A design of one's own on a piece: an area, or a line where one of ``across`` and ``along`` is nothing.

    It lies ``from_left`` and ``from_top`` of the finished edges, in the middle where nothing is said. ``thread`` is its
    colour, ``length`` how much of it; without it as the design says.
    """

    on: Annotated[str, Leaf(_piece, {"type": "string"})]
    across: Finished = standing("0 in")
    along: Finished = standing("0 in")
    from_left: Length | None = None
    from_top: Length | None = None
    thread: Label = ""
    length: Length | None = None
