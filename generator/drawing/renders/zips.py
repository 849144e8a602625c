"""A zip along the upper edge of a thing: a worksheet comes in, its tape, tabs, teeth and slider go out."""

from __future__ import annotations

import numpy as np

from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import ClosureWork, Worksheet
from generator.drawing.labels import Box
from generator.drawing.renders.colours import linear, mixed
from generator.drawing.renders.grids import Grid, blurred
from generator.drawing.renders.thing_grid import FlatThing
from generator.drawing.things.shapes import Shape

TAPE = 0.5  # how much of a zip is seen above the cloth [in]
TEETH, TOOTH = 0.2, 0.09  # how wide its teeth are, and how far from one to the next [in]
SLIDER = Box(0.0, -0.16, 0.36, 0.16)  # from where it stands on the teeth [in]
PULL = Box(0.1, 0.1, 0.26, 0.85)
METAL = linear(0.72, 0.66, 0.52)


def _upper_zip(worksheet: Worksheet) -> tuple[Lying, ClosureWork] | None:
    """The zip in an upper edge of what is seen from the front."""
    laid = {one.piece: one for one in worksheet.laid_out.seen}
    for closure in worksheet.closures:
        piece, _, side = closure.on.partition(".")
        if closure.kind == "zip" and piece in laid and side and laid[piece].lies_at(side) == "top":
            return laid[piece], closure
    return None


def _run(lying: Lying, closure: ClosureWork) -> tuple[float, float]:
    """From where to where its teeth reach [in]; what is left at its ends are tabs."""
    middle, half = float(lying.left + lying.right) / 2, float(min(closure.length, lying.across)) / 2
    return middle - half, middle + half


def tape(worksheet: Worksheet) -> list[Shape]:
    """Return the tape above the edge, and the tabs at its ends."""
    found = _upper_zip(worksheet)
    if found is None:
        return []
    lying, closure = found
    (start, end), top = _run(lying, closure), float(lying.top)
    face = worksheet.pieces[lying.piece].cloth
    tab = worksheet.pieces[closure.tabs].cloth if closure.tabs in worksheet.pieces else face
    parts = ((float(lying.left), start, tab), (start, end, face), (end, float(lying.right), tab))
    return [
        Shape(covers=((left, top - TAPE), (right, top - TAPE), (right, top + 0.05), (left, top + 0.05)), cloth=cloth)
        for left, right, cloth in parts
        if right > left
    ]


def with_teeth(thing: FlatThing, worksheet: Worksheet) -> FlatThing:
    """Return a flat thing, before it is lit, with the teeth and the slider of its zip, which is closed."""
    found = _upper_zip(worksheet)
    if found is None:
        return thing
    lying, closure = found
    (start, end), middle = _run(lying, closure), float(lying.top) - TAPE / 2
    number = int((end - start) / TOOTH)
    teeth = np.zeros_like(thing.cover)
    for place in range(number):
        left, up = start + place * TOOTH, (place % 2) * 0.25 * TEETH
        _mark(thing, teeth, Box(left, middle - TEETH / 2 + up, left + 0.6 * TOOTH, middle + TEETH / 4 + up))
    slider = np.zeros_like(thing.cover)
    for part in (SLIDER, PULL):
        at = end - SLIDER.right
        _mark(thing, slider, Box(at + part.left, middle + part.top, at + part.right, middle + part.bottom))
    for metal, high in ((teeth, 0.04), (slider, 0.1)):
        soft = blurred(metal, max(1, round(0.02 * thing.pixels)))
        thing.height = np.where(metal > 0, thing.height + np.float32(high) * soft, thing.height).astype(np.float32)
        thing.colour = mixed(thing.colour, np.broadcast_to(METAL, thing.colour.shape), metal)
    return thing


def _mark(thing: FlatThing, covered: Grid, box: Box) -> None:
    covered[thing.slices(box)] = 1
