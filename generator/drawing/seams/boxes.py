"""Rectangles of cloth: how they hold each other, grow, lie level and cover each other; inches, y downwards."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from generator.drawing.labels import Box, Segment

FLAT, RIM = ("left", "right"), "rim"


def around(boxes: Iterable[Box]) -> Box:
    """Return the box round others."""
    found = list(boxes)
    return Box(
        min(box.left for box in found),
        min(box.top for box in found),
        max(box.right for box in found),
        max(box.bottom for box in found),
    )


def grown(box: Box, beyond: Mapping[str, float]) -> Box:
    """Return a box with the cloth beyond each of its sides."""
    return Box(
        box.left - beyond.get("left", 0.0),
        box.top - beyond.get("top", 0.0),
        box.right + beyond.get("right", 0.0),
        box.bottom + beyond.get("bottom", 0.0),
    )


def level(at: str, base: Box, size: tuple[float, float]) -> Box:
    """Return a rectangle of a size, level with one side of another and in its middle; with none, in the middle."""
    wide, high = size
    left = {"left": base.left, "right": base.right - wide}.get(at, (base.left + base.right - wide) / 2)
    top = {"top": base.top, "bottom": base.bottom - high}.get(at, (base.top + base.bottom - high) / 2)
    return Box(left, top, left + wide, top + high)


def sides_of(box: Box) -> dict[str, Segment]:
    """Return the sides of a rectangle, clockwise."""
    return {
        "left": ((box.left, box.bottom), (box.left, box.top)),
        "top": ((box.left, box.top), (box.right, box.top)),
        "right": ((box.right, box.top), (box.right, box.bottom)),
        "bottom": ((box.right, box.bottom), (box.left, box.bottom)),
    }


def share(upper: Box, lower: Box) -> float:
    """Return how much of the lower rectangle the upper one covers, as a part of it."""
    wide = max(0.0, min(upper.right, lower.right) - max(upper.left, lower.left))
    high = max(0.0, min(upper.bottom, lower.bottom) - max(upper.top, lower.top))
    return wide * high / ((lower.right - lower.left) * (lower.bottom - lower.top))
