"""The names that a formula may use: a name comes in, its dimension goes out, or a fault that says what was meant."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from generator.definitions.faults import Fault, SilentFault, meant

# Names that people write for what is called otherwise here.
_ALSO = {"finished across": "across", "finished along": "along"}


@dataclass(frozen=True, slots=True)
class Names:
    """What can be named: measures and pieces with their measures, each with its dimension (0 number, 1 length).

    A measure whose own formula is broken has the dimension None: what uses it stays silent. ``none`` says why there
    are no names at all, where there are none. Where ``partial``, a part of the file that gives names is broken, so an
    unknown name may be one of its: it stays silent.
    """

    measures: Mapping[str, int | None] = field(default_factory=dict)
    pieces: Mapping[str, Mapping[str, int]] = field(default_factory=dict)
    none: str = ""
    partial: bool = False

    def measure(self, name: str, offset: int) -> int:
        """Return the dimension of a measure."""
        if name in self.measures:
            dimension = self.measures[name]
            if dimension is None:
                raise SilentFault
            return dimension
        if self.none:
            raise Fault(f"'{name}': {self.none}", offset)
        if name in self.pieces:
            example = next(iter(self.pieces[name]), "across")
            raise Fault(f"'{name}' is a piece; name a measure of it, for example {name}.{example}", offset)
        if self.partial:
            raise SilentFault
        words = name.split()
        for count in range(1, len(words)):
            left, right = " ".join(words[:count]), " ".join(words[count:])
            if left in self.measures and right in self.measures:
                raise Fault(f"a sign is missing between '{left}' and '{right}': + - * or /", offset + len(left) + 1)
        raise Fault(f"there is no measure '{name}'{meant(name, self.measures)}", offset)

    def piece_measure(self, piece: str, measure: str, offset: int) -> tuple[str, int]:
        """Return the full name of a piece's measure, and its dimension."""
        if piece not in self.pieces:
            if self.none:
                raise Fault(f"'{piece}': {self.none}", offset)
            if self.partial:
                raise SilentFault
            raise Fault(f"there is no piece '{piece}'{meant(piece, self.pieces)}", offset)
        known = self.pieces[piece]
        name = measure if measure in known else _ALSO.get(measure, measure)
        if not known:
            raise SilentFault
        if name not in known:
            told = f"'{piece}' has no measure '{measure}'{meant(measure, known)}"
            raise Fault(told, offset + len(piece) + 1)
        return f"{piece}.{name}", known[name]
