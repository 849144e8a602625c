"""The tucked panel: its keys come in, its frozen definition goes out."""

from __future__ import annotations

from typing import Annotated, Any, ClassVar

from generator.definitions.faults import Fault, meant
from generator.definitions.fields import YesNo, length, standing
from generator.definitions.nodes import Group, Node, Scalar, fold
from generator.definitions.piece_kind import RECTANGLE, PieceKind
from generator.definitions.pieces.model import OutlinedModel
from generator.definitions.readers import Leaf, Parts, Schema, choice
from generator.definitions.reading import Reading, filled_words
from generator.definitions.tucks import RELEASED, Rows, Sample, Tucks
from generator.definitions.values import Formula
from generator.definitions.vocabulary import HANGS, Hangs

_LENGTHS = (
    "depth,least depth,greatest depth,spacing,pitch,visible space,margin,left margin,right margin,take up,first mark,"
    "last mark,row spacing,first row,last row,draw in,extra,sewn along,left hem,right hem,cross depth,cross spacing,"
    "cross pitch,cross margin,cross first mark,cross last mark,cross take up,rod,released across"
)


def _room_sample(words: Scalar, reading: Reading) -> object:
    """Return the room's sample of a name."""
    name = fold(filled_words(words))
    if name not in reading.samples:
        raise Fault(f"the room keeps no sample '{name}'{meant(name, reading.samples)}; they stand in site.yaml")
    return reading.samples[name]


def _text(found: Node | None) -> str:
    return found.text if isinstance(found, Scalar) else ""


def _report_released_cross(tucks: Group, reading: Reading) -> None:
    """Report cross tucks that are to be let go: they hold the first set down from side to side."""
    for key in RELEASED:
        if key in tucks.entries:
            told = f"cross tucks are stitched from side to side; take '{key}' out, or write it under 'tucks'"
            reading.faults.add(tucks.entries[key][0].place, told)


class _SampleOf(Leaf):
    """A sample: written out, or the name of one that the room keeps."""

    def value(self, found: Node, reading: Reading) -> Any:
        """Return the sample."""
        return Sample.value(found, reading) if isinstance(found, Group) else super().value(found, reading)

    def schema(self, parts: Parts) -> Schema:
        """Return the JSON Schema of a sample or a name."""
        return {"anyOf": [super().schema(parts), Sample.schema(parts)]}


class TuckedPanel(OutlinedModel):
    """A panel of tucks that run along it; one with an outline is tucked first, with room around, and cut after."""

    of_kind: ClassVar = PieceKind(
        "tucked panel",
        edges=RECTANGLE,
        measures=tuple(_LENGTHS.split(",")),
        numbers=("number", "rows", "breadths", "layers", "cross number", "fullness"),
        nature=("panel", "face"),
        copied=True,
    )
    completed: ClassVar = ("finished across", "finished along")
    tucks: Tucks
    hangs_by: Annotated[Hangs, choice(HANGS, "edge to hang by")] = "top"
    cross_tucks: Tucks | None = None
    rows: Rows | None = None
    sample: Annotated[Sample | None, _SampleOf(_room_sample, {"type": "string"})] = None
    join_allowance: Annotated[Formula, length("seam")] = standing("1/4 in or 6 mm")
    cut_to_shape: YesNo = False
    room_around: Annotated[Formula, length()] = standing("1 in or 2.5 cm")

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that tucks are turned in rows or pressed, not both, and that only the first set is pressed."""
        super().check_keys(found, reading)
        for key in ("tucks", "cross tucks"):
            tucks = found.get(key)
            if key == "cross tucks" and isinstance(tucks, Group):
                _report_released_cross(tucks, reading)
            pressed = tucks.entries.get("pressed") if isinstance(tucks, Group) else None
            if pressed is None or not isinstance(tucks, Group):
                continue
            if key == "cross tucks":
                told = "cross tucks stand when they are sewn; take 'pressed' out, or write it under 'tucks'"
                reading.faults.add(pressed[0].place, told)
            elif "rows" in found.entries and fold(_text(pressed[1])) != "standing":
                line = found.entries["rows"][0].place.line
                told = f"the rows on line {line} turn these tucks; take 'pressed' out, or the rows"
                reading.faults.add(pressed[0].place, told)
            elif fold(_text(pressed[1])) in ("up", "down") and fold(_text(found.get("hangs by"))) not in (
                "left",
                "right",
            ):
                told = (
                    "tucks run up and down on the table, so they are pressed to the left or right; up and down are for "
                    "what hangs by its left or right edge: write 'hangs by: left', or press them left or right"
                )
                reading.faults.add(pressed[1].place, told)
            elif fold(_text(tucks.get("ring"))) == "yes" and fold(_text(pressed[1])) in ("outward", "inward"):
                told = "a ring has no middle that tucks could face or leave; write 'pressed: left' or 'pressed: right'"
                reading.faults.add(pressed[1].place, told)

    @classmethod
    def keys_schema(cls, parts: Parts) -> Schema:
        """Return the JSON Schema of its keys; rows may be a plan by its name."""
        found = super().keys_schema(parts)
        properties = found["properties"]
        return {**found, "properties": {**properties, "rows": {"anyOf": [{"type": "string"}, properties["rows"]]}}}
