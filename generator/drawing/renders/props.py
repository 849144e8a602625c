"""What shows a thing in use and is no part of it: a rod, a lamp's foot, a bed, a plate, the table under a runner."""

from __future__ import annotations

import numpy as np

from generator.drawing.labels import Box, Point
from generator.drawing.renders.cameras import Camera, Face, on_face
from generator.drawing.renders.colours import Image, linear
from generator.drawing.renders.grids import Grid
from generator.drawing.renders.grounds import DARK_WOOD, WOOD, cast, grained
from generator.drawing.renders.studio import Placed, over

BRASS, IRON = linear(0.52, 0.42, 0.28), linear(0.23, 0.2, 0.18)
SHEET, PLATE = linear(0.95, 0.945, 0.93), linear(0.97, 0.965, 0.95)


def _centres(place: Placed) -> tuple[Grid, Grid]:
    """The middles of the places of a picture."""
    right, down = (np.arange(size, dtype=np.float32) + np.float32(0.5) for size in (place.wide, place.high))
    return right[np.newaxis], down[:, np.newaxis]


def _rounded(place: Placed, box: Box, corner: float) -> Grid:
    """How far each place lies inside a rectangle with round corners, negative outside [places]."""
    right, down = _centres(place)
    away = [
        np.abs(run - (start + end) / 2) - ((end - start) / 2 - corner)
        for run, start, end in ((right, box.left, box.right), (down, box.top, box.bottom))
    ]
    outside = np.sqrt(np.square(np.maximum(away[0], 0)) + np.square(np.maximum(away[1], 0)))
    return np.asarray(corner - outside - np.minimum(np.maximum(away[0], away[1]), 0), dtype=np.float32)


def _covers(inside: Grid) -> Grid:
    return np.asarray(np.clip(inside + 0.5, 0, 1), dtype=np.float32)


def bar(ground: Image, place: Placed, box: Box, colour: Image = BRASS) -> Image:
    """Return a ground with a round bar before it, such as a rod or the stem of a lamp."""
    wide, high = box.right - box.left, box.bottom - box.top
    inside = _rounded(place, box, min(wide, high) / 2)
    right, down = _centres(place)
    share = (down - box.top) / high if wide >= high else (right - box.left) / wide
    light = 0.55 + 0.9 * np.exp(-np.square((share - 0.3) / 0.22))
    cover = _covers(inside)
    shaded = np.broadcast_to(light[..., np.newaxis] * colour, (*cover.shape, 3)) * cover[..., np.newaxis]
    return over(cast(ground, cover, right=6, down=8, soft=4, dark=0.3), shaded, cover)


def disc(ground: Image, place: Placed, box: Box, colour: Image) -> Image:
    """Return a ground with an ellipse before it, evenly lit."""
    middle = ((box.left + box.right) / 2, (box.top + box.bottom) / 2)
    half = (max(box.right - box.left, 1) / 2, max(box.bottom - box.top, 1) / 2)
    cover = _ellipse(place, middle, half)
    return over(ground, np.asarray(cover[..., np.newaxis] * colour, dtype=np.float32), cover)


def legs(ground: Image, place: Placed, seat: Box, foot: float) -> Image:
    """Return a ground with the four legs of a stool, below what its seat covers [places], down to a line."""
    wide, middle = seat.right - seat.left, (seat.left + seat.right) / 2
    high = foot - seat.bottom
    picture = cast(
        ground,
        _ellipse(place, (middle, foot - 0.06 * high), (0.5 * wide, 0.16 * high)),
        right=14,
        down=4,
        soft=14,
        dark=0.4,
    )
    for aside, stands, dark in ((-0.2, -0.22, 0.55), (0.2, 0.22, 0.55), (-0.33, -0.4, 1.0), (0.33, 0.4, 1.0)):
        top, end = seat.bottom - 0.3 * high, foot - (0.3 * high if dark < 1 else 0)
        picture = _leg(picture, place, (middle + aside * wide, top), (middle + stands * wide, end), 0.028 * wide, dark)
    return picture


def _leg(ground: Image, place: Placed, top: Point, end: Point, half: float, dark: float) -> Image:
    """A ground with one round leg, thinner below, and darker above in the shadow of its seat."""
    right, down = _centres(place)
    share = np.clip((down - top[1]) / (end[1] - top[1]), 0, 1)
    here = np.float32(half) * (1 - 0.3 * share)
    beside = (right - (top[0] + share * (end[0] - top[0]))) / here
    cover = _covers((1 - np.abs(beside)) * here) * _covers(end[1] - down) * _covers(down - top[1])
    light = (
        (0.5 + 0.75 * np.exp(-np.square((beside + 0.35) / 0.55)))
        * (0.55 + 0.45 * np.clip(1.8 * share - 0.4, 0, 1))
        * dark
    )
    shaded = np.asarray((light * cover)[..., np.newaxis] * WOOD, dtype=np.float32)
    return over(ground, shaded, np.asarray(cover, dtype=np.float32))


def _ellipse(place: Placed, centre: Point, half: Point) -> Grid:
    right, down = _centres(place)
    away = np.sqrt(np.square((right - centre[0]) / half[0]) + np.square((down - centre[1]) / half[1]))
    return _covers((1 - away) * min(half))


def plate(ground: Image, place: Placed, centre: tuple[float, float], radius: float) -> Image:
    """Return a ground with a plate on it: a rim, a hollow, and the light on their edges."""
    right, down = _centres(place)
    x, y = (right - centre[0]) / radius, (down - centre[1]) / radius
    away = np.sqrt(x * x + y * y)
    cover = _covers((1 - away) * radius)
    towards = -(0.77 * x + 0.64 * y) / np.maximum(away, 0.02)
    slope = np.exp(-np.square((away - 0.7) / 0.035)) - 0.6 * np.exp(-np.square((away - 0.97) / 0.02))
    light = 0.97 - 0.16 * towards * slope - 0.03 * (away < 0.68)
    shaded = np.asarray(light[..., np.newaxis] * PLATE * cover[..., np.newaxis], dtype=np.float32)
    shadow = round(radius * 0.05)
    return over(cast(ground, cover, right=shadow, down=shadow, soft=max(2, shadow), dark=0.45), shaded, cover)


def bed(picture: Image, place: Placed, board: Box) -> Image:
    """Return a picture with a made bed before a headboard whose box in the picture is given."""
    wide, high = board.right - board.left, board.bottom - board.top
    top = board.bottom - 0.08 * high
    mattress = Box(board.left - 0.03 * wide, top, board.right + 0.03 * wide, place.high + 60.0)
    picture = _soft(picture, place, mattress, 22, SHEET * np.float32(0.9))
    for start in (0.05, 0.525):
        left = board.left + start * wide
        pillow = Box(left, top - 0.26 * high, left + 0.425 * wide, top + 0.08 * high)
        picture = _soft(picture, place, pillow, 0.1 * high, SHEET)
    return picture


def _soft(ground: Image, place: Placed, box: Box, corner: float, colour: Image) -> Image:
    """A ground with something filled before it: round at its edges."""
    inside = _rounded(place, box, corner)
    cover = _covers(inside)
    _, down = _centres(place)
    edge = np.clip(inside / max(corner, 1), 0, 1)
    fall = np.clip((down - box.top) / max(box.bottom - box.top, 1), 0, 1)
    light = (0.62 + 0.38 * np.sqrt(edge)) * (1.04 - 0.24 * fall)
    shaded = np.asarray(light[..., np.newaxis] * colour * cover[..., np.newaxis], dtype=np.float32)
    return over(cast(ground, cover, right=6, down=4, soft=8, dark=0.4), shaded, cover)


def table(ground: Image, place: Placed, camera: Camera, board: float, *, pale: bool) -> Image:
    """Return a ground with a table before it whose near edge lies at the origin, ``board`` thick [in]."""
    right, down = _centres(place)
    shape = (place.high, place.wide)
    x = np.broadcast_to((right - place.left) / np.float32(place.scale), shape).astype(np.float32)
    y = np.broadcast_to((down - place.top) / np.float32(place.scale), shape).astype(np.float32)
    origin = Box(0, 0, 0, 0)
    wood = DARK_WOOD if pale else WOOD
    across, near = on_face(camera, Face(origin, (0, 0, 0), (1, 0, 0), (0, 0, 1)), x, y)
    _, under = on_face(camera, Face(origin, (0, 0, 0), (1, 0, 0), (0, -1, 0)), x, y)
    # The far part of the table fades into the wall, where it would swim.
    on_top = _covers(-near * place.scale) * np.clip(2 + near / (0.75 * camera.distance), 0, 1)
    light = np.clip(1.08 + 0.1 * near / camera.distance, 0.6, 1.1)
    picture = _laid(ground, grained(across, near, wood) * light[..., np.newaxis], on_top)
    edge = _covers(under * place.scale) * _covers((board - under) * place.scale)
    picture = _laid(picture, np.broadcast_to(wood * np.float32(0.62), (*shape, 3)), edge)
    return _laid(
        picture, np.broadcast_to(wood * np.float32(0.12) + 0.004, (*shape, 3)), _covers((under - board) * place.scale)
    )


def _laid(under: Image, above: Image, cover: Grid) -> Image:
    return np.asarray(under * (1 - cover[..., np.newaxis]) + above * cover[..., np.newaxis], dtype=np.float32)
