"""A seam from its acts: a worksheet and a name such as '11-1' come in, one picture of any size goes out.

The name is the number of the step and the place of what it joins there. Parts of the picture stand side by side, or
one below the other where the work is long.
"""

from __future__ import annotations

from generator.calculation.making_up.joined import Joined
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Box
from generator.drawing.picture import Picture
from generator.drawing.seams.frames import Frame, FramePlace, draw_frame, frames_of, inside, widest_words
from generator.drawing.seams.paper import fitted
from generator.drawing.seams.plan import SeamPlan, plan_seam
from generator.drawing.seams.words import told
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style

GAP = 0.12
LONG = 2.6  # work this many times as long as it is wide is drawn in parts one below the other
MOST, LEAST = 1.4, 0.5  # how high what is drawn may become, and must be [in]


def seam_names(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the names of all seams of a worksheet that have a picture."""
    return tuple(name for name, joined in _all(worksheet).items() if plan_seam(worksheet, joined) is not None)


def _all(worksheet: Worksheet) -> dict[str, Joined]:
    return {f"{step.number}-{place}": joined for step in worksheet.steps for place, joined in enumerate(step.joined, 1)}


def _planned(worksheet: Worksheet, name: str) -> SeamPlan:
    plan = plan_seam(worksheet, _all(worksheet)[name])
    if plan is None:
        raise KeyError(f"the seam '{name}' has no picture: a piece of it is no flat rectangle")
    return plan


def draw_seam(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the picture of what a step joins, drawn at a size.

    Raises
    ------
    KeyError
        If there is nothing of that name, or nothing of it can be drawn.
    """
    plan = _planned(worksheet, name)
    canvas = sketch_seam(worksheet, name, style, size)
    sewn = "Dashes are the stitching. " if plan.joined.sides and plan.joined.does == "sew" else ""
    return canvas.picture(told(plan, worksheet), f"{sewn}Hatched: the wrong side.")


def sketch_seam(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Canvas:
    """Return the canvas of what a step joins."""
    plan = _planned(worksheet, name)
    frames, stacked = _arranged(plan, worksheet, style, size.inches[0])
    canvas = canvas_of(size, style, f"seam {name}")
    rooms = _rooms(frames, style, size.inches, stacked=stacked)
    # What lies and what is sewn are the same cloth, so they are drawn alike.
    alike = [
        fitted(canvas, frame.cloth, inside(frame, room, style), (0, 0)).scale
        for frame, room in zip(frames, rooms, strict=True)
    ]
    for number, (frame, room) in enumerate(zip(frames, rooms, strict=True), 1):
        scale = min(alike[:2]) if number < len(alike) == 3 else alike[number - 1]
        draw_frame(canvas, frame, plan, worksheet, FramePlace(room, str(number) if len(frames) > 1 else "", scale))
    return canvas


def heights_of_seam(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture can be at a width [mm].

    Raises
    ------
    KeyError
        If there is nothing of that name, or nothing of it can be drawn.
    """
    plan = _planned(worksheet, name)
    wide = width / MILLIMETRES
    frames, stacked = _arranged(plan, worksheet, style, wide)
    room = wide if stacked else _column(len(frames), wide)
    words = [frame.words_high(style, room) for frame in frames]
    natural = [_natural(frame, room, style) for frame in frames]
    if stacked:
        least = [LEAST * min(1.0, high) for high in natural]
        gaps = GAP * (len(frames) - 1)
        return Heights.of_inches(*(sum(words) + gaps + sum(highs) for highs in (least, natural)))
    high = max(natural)
    return Heights.of_inches(*(max(words) + cloth for cloth in (min(high, max(LEAST, high * 0.75)), high)))


def _natural(frame: Frame, room: float, style: Style) -> float:
    """How high the cloth of a frame is drawn in a room of a width."""
    clear, cloth = frame.margins(style), frame.cloth
    wide = room - clear.get("left", 0.0) - clear.get("right", 0.0)
    high = min(MOST, max(LEAST, wide * (cloth.bottom - cloth.top) / (cloth.right - cloth.left)))
    return high + clear.get("top", 0.0) + clear.get("bottom", 0.0)


def _column(number: int, width: float) -> float:
    return (width - GAP * (number - 1)) / number


def _arranged(plan: SeamPlan, worksheet: Worksheet, style: Style, width: float) -> tuple[tuple[Frame, ...], bool]:
    """The parts, and whether they stand one below the other: the work is long, or a word is wider than a column."""
    frames = frames_of(plan, worksheet)
    wide, high = plan.whole.right - plan.whole.left, plan.whole.bottom - plan.whole.top
    if len(frames) > 1 and (wide > LONG * high or widest_words(frames, style) > _column(len(frames), width)):
        return frames_of(plan, worksheet, few=True), True
    return frames, False


def _rooms(frames: tuple[Frame, ...], style: Style, size: tuple[float, float], *, stacked: bool) -> list[Box]:
    width, height = size
    if not stacked:
        column = _column(len(frames), width)
        return [Box(at, 0.0, at + column, height) for at in (place * (column + GAP) for place in range(len(frames)))]
    words = [frame.words_high(style, width) for frame in frames]
    natural = [_natural(frame, width, style) for frame in frames]
    share = (height - GAP * (len(frames) - 1) - sum(words)) / sum(natural)
    rooms, top = [], 0.0
    for high, cloth in zip(words, natural, strict=True):
        rooms.append(Box(0.0, top, width, top + high + cloth * share))
        top = rooms[-1].bottom + GAP
    return rooms
