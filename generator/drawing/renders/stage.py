"""The stage of a picture: a thing laid flat and its form come in, the thing where it stands in its picture goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box
from generator.drawing.renders import grounds
from generator.drawing.renders.bends import Bend
from generator.drawing.renders.colours import Image
from generator.drawing.renders.flat_thing import flat_thing
from generator.drawing.renders.grids import Grid
from generator.drawing.renders.padding import thickened
from generator.drawing.renders.standing import can_stand, thickness
from generator.drawing.renders.studio import FINER, Placed, over, placed, shown
from generator.drawing.renders.thing_grid import FlatThing
from generator.drawing.things.forms import Form
from generator.drawing.things.shapes import Shape

WIDE, HIGH = 1216, 640  # of the whole picture; its middle part of 720 places stands alone
MIDDLE = WIDE / 2
ROOM = Box(MIDDLE - 300, 46, MIDDLE + 300, 566)
MOST_PLACES = 1_600_000  # of a flat thing


@dataclass(frozen=True, slots=True)
class Scene:
    """A thing before it is put into its picture: its form, its shapes laid flat, and where it stands."""

    worksheet: Worksheet
    form: Form
    shapes: Sequence[Shape]
    whole: Box
    field: grounds.Field

    def stand(
        self, bend: Bend, *, quarter: int = 0, room: Box = ROOM, foot: float | None = None, within: Box | None = None
    ) -> Stood:
        """Return the thing in its form, as large as a room lets it, or lets a box that is larger."""
        place = placed(within or bend.box, (WIDE, HIGH), room, foot)
        area = max((self.whole.right - self.whole.left) * (self.whole.bottom - self.whole.top), 1e-9)
        pixels = min(place.scale * FINER, float(np.sqrt(MOST_PLACES / area)))
        thing = flat_thing(self.worksheet, self.shapes, self.whole, pixels, quarter=quarter)
        if self.form.name == "flat":
            thing = thickened(thing, thickness(self.worksheet), stands=can_stand(self.worksheet))
        colour, cover = shown(thing, bend, place)
        return Stood(place, colour, cover, thing)


@dataclass(frozen=True, slots=True)
class Stood:
    """A thing where it stands in its picture: its colours, each as bright as it is covered, and what it covers."""

    place: Placed
    colour: Image
    cover: Grid
    thing: FlatThing

    @property
    def pale(self) -> bool:
        """Whether its cloth is so pale that it wants a deeper ground."""
        covered = float(self.cover.sum())
        return covered > 0 and float(self.colour.sum()) / 3 / covered > grounds.PALE

    @property
    def mean(self) -> Image:
        """The colour of it on the whole."""
        return np.asarray(self.colour.sum(axis=(0, 1)) / max(float(self.cover.sum()), 1.0), dtype=np.float32)

    def with_side(self, bend: Bend, thing: FlatThing) -> Stood:
        """Return it with a further side of its form, which is a thing of its own."""
        colour, cover = shown(thing, bend, self.place)
        return replace(self, colour=over(self.colour, colour, cover), cover=np.maximum(self.cover, cover))

    @property
    def foot(self) -> int:
        """The lowest line of it [places from the top]."""
        rows = np.flatnonzero(self.cover.max(axis=1) > 0.5)
        return int(rows[-1]) if len(rows) else HIGH - 1


def covered_by(shapes: Sequence[Shape]) -> Box:
    """Return the rectangle that shapes cover [in]."""
    points = [point for shape in shapes for point in shape.covers]
    return Box(
        min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points)
    )
