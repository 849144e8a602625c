"""The picture of a finished thing: a worksheet comes in, a linear picture goes out, made from the thing's own numbers.

Its form is told by ``things/forms.py``, as for the line drawing; a thing without one hangs or lies flat.
"""

from __future__ import annotations

import math
from itertools import pairwise

import numpy as np

from generator.calculation.making_up.items import is_filled
from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import Worksheet
from generator.drawing.labels import Box
from generator.drawing.renders import bends, grounds, props, round_things
from generator.drawing.renders.cameras import Camera, Face, faces
from generator.drawing.renders.colours import Image, linear
from generator.drawing.renders.flat_thing import boxing, lies_round
from generator.drawing.renders.stage import HIGH, MIDDLE, ROOM, WIDE, Scene, Stood, covered_by
from generator.drawing.renders.standing import can_stand
from generator.drawing.renders.studio import over
from generator.drawing.renders.zips import tape
from generator.drawing.things.forms import Form, form_of
from generator.drawing.things.rods import BEYOND, folds_with_rods, has_rods
from generator.drawing.things.shapes import in_the_thing
from generator.drawing.things.views import shapes_of

LAMP_ROOM = Box(MIDDLE - 285, 60, MIDDLE + 285, 480)
HANGS = Box(ROOM.left, 60, ROOM.right, 540)
FLOOR_LINE, FOOT = 0.80, 566.0


def picture_of(worksheet: Worksheet) -> Image:
    """Return the whole picture of a finished thing, linear."""
    form = form_of(worksheet)
    shapes = shapes_of(worksheet, Form("flat", form.flat, lambda point: point))
    if form.name in ("box", "drum"):
        shapes = [shape for shape in shapes if shape.lying is not None]
    covered = [*tape(worksheet), *(shape for shape in shapes if len(shape.covers) > 2)]
    scene = Scene(worksheet, form, covered, covered_by(covered), grounds.field_of(WIDE, HIGH))
    if form.name == "flat" and is_filled(worksheet.thing) and any(lies_round(worksheet, shape) for shape in covered):
        return _standing(scene.stand(bends.cushion(scene.whole), foot=FOOT), scene)
    if form.name == "flat" and can_stand(worksheet):
        return _on_its_edge(scene)
    if tape(worksheet):
        return _lying_on_a_table(scene, scene.stand(bends.pillow(scene.whole, drawn_in=0.025, puffed=0.12)))
    if form.name in _OF_FORMS:
        return _OF_FORMS[form.name](scene)
    return _OF_KINDS.get(worksheet.kind, _on_a_wall)(scene)


def _standing(stood: Stood, scene: Scene) -> Image:
    """A thing that stands on the floor before a wall."""
    ground = grounds.wall_and_floor(scene.field, FLOOR_LINE, pale=stood.pale)
    ground = grounds.cast(ground, stood.cover, right=22, down=12, soft=16, dark=0.36)
    return over(grounds.stood(ground, stood.cover, stood.foot), stood.colour, stood.cover)


def _on_its_edge(scene: Scene) -> Image:
    """A hollow thing that stands on its open lower edge."""
    stood = scene.stand(bends.standing(scene.whole), foot=FOOT - 20)
    ground = grounds.wall_and_floor(scene.field, FLOOR_LINE - 0.1, pale=stood.pale)
    for right, down, soft in ((26, 8, 16), (5, 9, 4)):
        ground = grounds.cast(ground, stood.cover, right=right, down=down, soft=soft, dark=0.4)
    return over(ground, stood.colour, stood.cover)


def _pillow(scene: Scene) -> Image:
    return _standing(scene.stand(bends.pillow(scene.whole), foot=FOOT), scene)


def _roll(scene: Scene) -> Image:
    """A roll lies with the upper end of its flat cloth to the left."""
    _, middle, girth = scene.form.sizes
    whole = scene.whole
    body = [lying for lying in scene.worksheet.laid_out.seen if scene.worksheet.pieces[lying.piece].panel is not None]
    first = (body or list(scene.worksheet.laid_out.seen))[0]
    turned = Box(whole.top, -whole.right, whole.bottom, -whole.left)
    bend = bends.roll(turned, (float(first.top), float(first.bottom)), -middle, girth)
    wide = Box(MIDDLE - 330, ROOM.top, MIDDLE + 330, ROOM.bottom)
    return _standing(scene.stand(bend, quarter=-1, room=wide, foot=FOOT - 20), scene)


def _box(scene: Scene) -> Image:
    """A cushion with sides, seen from above its near side."""
    (deep,) = scene.form.sizes
    whole = scene.whole
    wide, high = whole.right - whole.left, whole.bottom - whole.top
    camera = Camera(0.72, 3.4 * max(wide, high))
    top = Face(whole, (-wide / 2, deep / 2, -high / 2), (1, 0, 0), (0, 0, 1))
    side = Face(Box(0, 0, wide, deep), (-wide / 2, deep / 2, high / 2), (1, 0, 0), (0, -1, 0))
    both = faces(camera, [top, side])
    stood = scene.stand(faces(camera, [top]), within=both.box, foot=FOOT - 25)
    stood = stood.with_side(faces(camera, [side]), boxing(scene.worksheet, wide, deep, stood.thing.pixels))
    return _standing(stood, scene)


def _drum(scene: Scene) -> Image:
    """A round cover with its side: filled it lies on the floor, else it is on a stool."""
    (depth,) = scene.form.sizes
    radius, filled = (scene.whole.right - scene.whole.left) / 2, is_filled(scene.worksheet.thing)
    whole = round_things.whole_of(radius, depth)
    room = ROOM if filled else Box(ROOM.left, ROOM.top, ROOM.right, ROOM.top + 330)
    stood = scene.stand(round_things.face(scene.whole), within=whole, room=room, foot=FOOT - 25 if filled else None)
    girth = math.tau * radius
    around = boxing(scene.worksheet, girth / 2, depth, stood.thing.pixels)
    elastic = [float(one.length) - float(one.lap) for one in scene.worksheet.closures if one.kind == "elastic"]
    drawn_in = max(0.0, 1 - elastic[0] / girth) if elastic else 0.0
    stood = stood.with_side(round_things.side(radius, depth, drawn_in), around)
    if filled:
        return _standing(stood, scene)
    ground = grounds.wall_and_floor(scene.field, 0.7, pale=stood.pale)
    ground = props.legs(ground, stood.place, stood.place.box(whole), FOOT)
    return over(ground, stood.colour, stood.cover)


def _tube(scene: Scene) -> Image:
    glows = scene.worksheet.kind == "lampshade"
    bend = bends.tube(scene.whole, scene.form.sizes[2], glows=glows)
    stood = scene.stand(bend, room=LAMP_ROOM if glows else ROOM, foot=None if glows else FOOT)
    left, top = stood.place.of(bend.box.left, scene.whole.top)
    right, bottom = stood.place.of(bend.box.right, scene.whole.bottom)
    rise = bends.TILT * (right - left) / 2
    rim = Box(left, top - rise, right, top + rise)
    if not glows:
        picture = _standing(stood, scene)
        return over(props.disc(picture, stood.place, rim, stood.mean * np.float32(0.5)), stood.colour, stood.cover)
    ground = grounds.evening_wall(scene.field, (MIDDLE / HIGH, (top + bottom) / 2 / HIGH))
    foot = Box(MIDDLE - 90, HIGH - 66, MIDDLE + 90, HIGH - 34)
    ground = props.disc(ground, stood.place, foot, props.IRON)
    ground = props.bar(ground, stood.place, Box(MIDDLE - 8, bottom, MIDDLE + 8, HIGH - 48), props.IRON)
    ground = props.disc(ground, stood.place, rim, linear(1.0, 0.93, 0.78))
    warm = np.asarray(stood.colour * linear(1.03, 0.96, 0.83), dtype=np.float32)
    return over(ground, warm, stood.cover)


def _hung(scene: Scene) -> Image:
    """A curtain from its rod before a window; a blind with rods hangs level, from a board behind it."""
    lying = next((one for one in scene.worksheet.laid_out.seen if has_rods(scene.worksheet.pieces[one.piece])), None)
    if lying is not None:
        return _blind(scene, lying)
    bend = bends.hung(scene.whole)
    if scene.worksheet.laid_out.number == 2:
        bend = bends.twice(bend, 0.05 * (scene.whole.right - scene.whole.left))
    stood = scene.stand(bend, room=HANGS)
    box = stood.place.box(bend.box)
    ground = props.bar(
        grounds.window(scene.field, _pane(box)),
        stood.place,
        Box(box.left - 26, box.top - 3, box.right + 26, box.top + 10),
    )
    return _hanging(ground, stood)


def _blind(scene: Scene, lying: Lying) -> Image:
    """The ends of its rods stand out at both sides."""
    piece = scene.worksheet.pieces[lying.piece]
    assert piece.panel is not None
    assert piece.panel.rods is not None
    place, thick = in_the_thing(lying), float(piece.panel.rods.thick)
    rods = sorted(place((fold, 0.0))[1] for fold in folds_with_rods(piece))
    stood = scene.stand(bends.rodded(scene.whole, rods, thick), room=HANGS)
    box = stood.place.box(scene.whole)
    ground = grounds.window(scene.field, _pane(box))
    beyond, half = BEYOND * (box.right - box.left), max(thick * stood.place.scale / 2, 2.0)
    for rod in rods:
        _, middle = stood.place.of(0, rod)
        ends = Box(box.left - beyond, middle - half, box.right + beyond, middle + half)
        ground = props.bar(ground, stood.place, ends, grounds.WOOD)
    return _hanging(ground, stood)


def _pane(box: Box) -> tuple[float, float, float, float]:
    """Where the window is behind what hangs before it, in heights of the picture."""
    return (box.left + 12) / HIGH, (box.top - 14) / HIGH, (box.right - 12) / HIGH, max((box.bottom + 30) / HIGH, 1.05)


def _hanging(ground: Image, stood: Stood) -> Image:
    return over(grounds.cast(ground, stood.cover, right=9, down=10, soft=9, dark=0.3), stood.colour, stood.cover)


def _over_an_edge(scene: Scene) -> Image:
    """A runner whose near end hangs over the edge of its table."""
    wide, length, drop = scene.form.sizes
    whole, along = scene.whole, length + drop
    quarter = 0 if whole.bottom - whole.top >= whole.right - whole.left else -1
    left, top = (whole.left, whole.top) if quarter == 0 else (whole.top, -whole.right)
    camera = Camera(0.62, 1.15 * along)
    lying = Face(Box(left, top, left + wide, top + length), (-wide / 2, 0, -length), (1, 0, 0), (0, 0, 1))
    hanging = Face(Box(left, top + length, left + wide, top + along), (-wide / 2, 0, 0), (1, 0, 0), (0, -1, 0))
    stood = scene.stand(faces(camera, [lying, hanging]), quarter=quarter, room=Box(ROOM.left, 24, ROOM.right, 600))
    ground = props.table(grounds.wall(scene.field), stood.place, camera, 0.05 * along, pale=stood.pale)
    ground = grounds.cast(ground, stood.cover, right=7, down=4, soft=4, dark=0.5)
    return over(ground, stood.colour, stood.cover)


def _on_a_wall(scene: Scene) -> Image:
    return _before_a_wall(scene, scene.stand(bends.flat(scene.whole)))


def _before_a_wall(scene: Scene, stood: Stood) -> Image:
    ground = grounds.cast(grounds.wall(scene.field, pale=stood.pale), stood.cover, right=12, down=14, soft=9, dark=0.42)
    return over(ground, stood.colour, stood.cover)


def _worn(scene: Scene) -> Image:
    """A garment: what is gathered below its front spreads."""
    laid = scene.worksheet.laid_out.seen
    gathered = [float(lying.top) for lying in laid if scene.worksheet.pieces[lying.piece].made.drawn_up is not None]
    if not gathered:
        return _on_a_wall(scene)
    return _before_a_wall(scene, scene.stand(bends.flared(scene.whole, min(gathered), 0.34)))


def _at_a_bed(scene: Scene) -> Image:
    stood = scene.stand(bends.flat(scene.whole), room=Box(ROOM.left, 60, ROOM.right, 520))
    return props.bed(_before_a_wall(scene, stood), stood.place, stood.place.box(scene.whole))


def _on_a_table(scene: Scene) -> Image:
    return _lying_on_a_table(scene, scene.stand(bends.flat(scene.whole)))


def _lying_on_a_table(scene: Scene, stood: Stood) -> Image:
    ground = grounds.table_top(scene.field, pale=stood.pale)
    ground = grounds.cast(ground, stood.cover, right=6, down=7, soft=4, dark=0.55)
    return over(ground, stood.colour, stood.cover)


def _laid_for_a_meal(scene: Scene) -> Image:
    """A mat, with a plate where its cloth is plain enough for one."""
    stood = scene.stand(bends.flat(scene.whole))
    picture = _lying_on_a_table(scene, stood)
    bare = _plain_run(scene.worksheet)
    radius = 0.5 * min(bare[1] - bare[0], 0.86 * (scene.whole.bottom - scene.whole.top))
    if radius < 3:
        return picture
    centre = stood.place.of((bare[0] + bare[1]) / 2, (scene.whole.top + scene.whole.bottom) / 2)
    return props.plate(picture, stood.place, centre, 0.94 * radius * stood.place.scale)


def _plain_run(worksheet: Worksheet) -> tuple[float, float]:
    """The widest part of a thing without tucks, from left to right [in]."""
    first = worksheet.laid_out.seen[0]
    panel = worksheet.pieces[first.piece].panel
    feet = panel.across.stitching if panel is not None and not first.turned else ()
    lines = [float(first.left), *(float(first.left + foot) for foot in feet), float(first.right)]
    return max(pairwise(lines), key=lambda run: run[1] - run[0])


_OF_FORMS = {
    "pillow": _pillow,
    "roll": _roll,
    "box": _box,
    "drum": _drum,
    "tube": _tube,
    "hung": _hung,
    "over an edge": _over_an_edge,
}
_OF_KINDS = {
    "mats": _laid_for_a_meal,
    "sleeve": _on_a_table,
    "sample": _on_a_table,
    "garment": _worn,
    "headboard": _at_a_bed,
}
