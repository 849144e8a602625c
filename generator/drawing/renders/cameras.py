"""A picture of planes by a pinhole: planes in space come in, for each place of the picture what is seen goes out.

Space is in inches, x to the right, y up, z toward the viewer. A plane has an origin, and directions of its own across
and along.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from generator.drawing.labels import Box
from generator.drawing.renders.bends import Bend, Bent, faced
from generator.drawing.renders.grids import Grid

Point3 = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Camera:
    """A pinhole that looks at the origin from above the z axis: its elevation [rad] and its distance [in]."""

    elevation: float
    distance: float

    def sees(self, point: Point3) -> tuple[float, float]:
        """Return where a point is seen, x to the right and y down, in the size that it has at the origin."""
        sine, cosine = math.sin(self.elevation), math.cos(self.elevation)
        up, near = point[1] * cosine - point[2] * sine, point[1] * sine + point[2] * cosine
        share = self.distance / max(self.distance - near, 1e-3)
        return point[0] * share, -up * share

    def meets(self, x: Grid, y: Grid, origin: Point3, normal: Point3) -> tuple[Grid, Grid, Grid]:
        """Return where what is seen at places of the picture meets a plane."""
        sine, cosine = math.sin(self.elevation), math.cos(self.elevation)
        eye = (0.0, self.distance * sine, self.distance * cosine)
        ways = (x, -y * cosine - self.distance * sine, y * sine - self.distance * cosine)
        apart = sum((place - from_eye) * way for place, from_eye, way in zip(origin, eye, normal, strict=True))
        along = sum(way * part for way, part in zip(ways, normal, strict=True))
        reach = np.float32(apart) / np.where(np.abs(along) < 1e-6, np.float32(-1e-6), along)
        reach = np.where(reach > 0, reach, np.float32(1e6))
        found = [(from_eye + reach * way).astype(np.float32) for from_eye, way in zip(eye, ways, strict=True)]
        return found[0], found[1], found[2]


@dataclass(frozen=True, slots=True)
class Face:
    """A part of a flat thing on a plane: its rectangle on the thing, where its corner lies, and which way it runs."""

    part: Box
    corner: Point3
    across: Point3
    along: Point3

    @property
    def normal(self) -> Point3:
        """The direction out of its seen side."""
        (a, b, c), (d, e, f) = self.across, self.along
        return (c * e - b * f, a * f - c * d, b * d - a * e)

    def corners(self) -> list[Point3]:
        """Return its corners in space."""
        wide, high = self.part.right - self.part.left, self.part.bottom - self.part.top
        return [
            _moved(self.corner, (self.across, one * wide), (self.along, other * high))
            for one in (0, 1)
            for other in (0, 1)
        ]


def _moved(point: Point3, *ways: tuple[Point3, float]) -> Point3:
    x, y, z = (start + sum(way[axis] * far for way, far in ways) for axis, start in enumerate(point))
    return x, y, z


def faces(camera: Camera, shown: Sequence[Face]) -> Bend:
    """Return a form of faces, none of which hides another."""
    seen = [camera.sees(corner) for face in shown for corner in face.corners()]
    box = Box(min(x for x, _ in seen), min(y for _, y in seen), max(x for x, _ in seen), max(y for _, y in seen))

    def at(x: Grid, y: Grid) -> Bent:
        across, along, inside = (np.zeros_like(x) for _ in range(3))
        light = np.ones_like(x)
        for face in shown:
            u, v = on_face(camera, face, x, y)
            here = (u >= face.part.left) & (u <= face.part.right) & (v >= face.part.top) & (v <= face.part.bottom)
            across, along = np.where(here, u, across), np.where(here, v, along)
            bright = float(faced(*(np.float32(part) for part in _to_viewer(camera, face.normal))))  # type: ignore[arg-type]
            light, inside = np.where(here, np.float32(bright), light), np.where(here, np.float32(1), inside)
        return Bent(across, along, light, inside)

    return Bend(box, at)


def on_face(camera: Camera, face: Face, x: Grid, y: Grid) -> tuple[Grid, Grid]:
    """Return where on a thing the places of a picture lie, on the plane of one of its faces."""
    places = camera.meets(x, y, face.corner, face.normal)
    apart = [place - start for place, start in zip(places, face.corner, strict=True)]
    u = face.part.left + sum(way * one for way, one in zip(face.across, apart, strict=True))
    v = face.part.top + sum(way * one for way, one in zip(face.along, apart, strict=True))
    return np.asarray(u, dtype=np.float32), np.asarray(v, dtype=np.float32)


def _to_viewer(camera: Camera, normal: Point3) -> Point3:
    """A direction in space as one in the picture: right, down, toward the viewer."""
    sine, cosine = math.sin(camera.elevation), math.cos(camera.elevation)
    x, y, z = normal
    return x, -(y * cosine - z * sine), y * sine + z * cosine
