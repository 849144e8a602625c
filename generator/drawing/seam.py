"""A seam from its acts: a worksheet and a name such as '11-1' come in, one picture of any size goes out.

The name is the number of the step and the place of what it joins there. Parts of the picture stand side by side, or
one below the other where the work is long.
"""

from __future__ import annotations

from dataclasses import dataclass

from generator.calculation.making_up.joined import Joined
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Box
from generator.drawing.picture import Picture
from generator.drawing.seams.frames import Frame, FramePlace, draw_frame, frames_of, inside, widest_words
from generator.drawing.seams.paper import fitted
from generator.drawing.seams.plan import plan_seam
from generator.drawing.seams.round_end import plan_round_end, round_end_frames, round_end_told
from generator.drawing.seams.words import told
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style

GAP = 0.12
LONG = 2.6  # work this many times as long as it is wide is drawn in parts one below the other
MOST, LEAST = 1.4, 0.5  # how high what is drawn may become, and must be [in]


@dataclass(frozen=True, slots=True)
class SeamDrawing:
    """What there is to draw of a seam: its parts, or fewer of them, and its words."""

    parts: tuple[Frame, ...]
    few: tuple[Frame, ...]
    alt: str
    sewn: bool

    @property
    def long(self) -> bool:
        """Whether the work is so long that its parts stand one below the other."""
        cloth = self.parts[0].cloth
        return cloth.right - cloth.left > LONG * (cloth.bottom - cloth.top)


def seam_names(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the names of all seams of a worksheet that have a picture."""
    return tuple(name for name, joined in _all(worksheet).items() if _drawing(worksheet, joined) is not None)


def _all(worksheet: Worksheet) -> dict[str, Joined]:
    return {f"{step.number}-{place}": joined for step in worksheet.steps for place, joined in enumerate(step.joined, 1)}


def _drawing(worksheet: Worksheet, joined: Joined) -> SeamDrawing | None:
    """What can be drawn: flat layers on each other, a round end on a ring, else nothing."""
    sewn = bool(joined.sides) and joined.does == "sew"
    plan = plan_seam(worksheet, joined)
    if plan is not None:
        parts, few = (frames_of(plan, worksheet, few=one) for one in (False, True))
        return SeamDrawing(parts, few, told(plan, worksheet), sewn)
    end = plan_round_end(worksheet, joined)
    if end is not None:
        parts = round_end_frames(end, worksheet)
        return SeamDrawing(parts, parts, round_end_told(end, worksheet), sewn)
    return None


def _named(worksheet: Worksheet, name: str) -> SeamDrawing:
    drawing = _drawing(worksheet, _all(worksheet)[name])
    if drawing is None:
        raise KeyError(f"the seam '{name}' has no picture: a piece of it is no flat rectangle or round")
    return drawing


def draw_seam(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the picture of what a step joins, drawn at a size.

    Raises
    ------
    KeyError
        If there is nothing of that name, or nothing of it can be drawn.
    """
    drawing = _named(worksheet, name)
    sewn = "Dashes are the stitching. " if drawing.sewn else ""
    return sketch_seam(worksheet, name, style, size).picture(drawing.alt, f"{sewn}Hatched: the wrong side.")


def sketch_seam(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Canvas:
    """Return the canvas of what a step joins."""
    frames, stacked = _arranged(_named(worksheet, name), style, size.inches[0])
    canvas = canvas_of(size, style, f"seam {name}")
    rooms = _rooms(frames, style, size.inches, stacked=stacked)
    # What lies and what is sewn are the same cloth, so they are drawn alike.
    alike = [
        fitted(canvas, frame.cloth, inside(frame, room, style), (0, 0)).scale
        for frame, room in zip(frames, rooms, strict=True)
    ]
    for number, (frame, room) in enumerate(zip(frames, rooms, strict=True), 1):
        scale = min(alike[:2]) if number < len(alike) == 3 else alike[number - 1]
        draw_frame(canvas, frame, FramePlace(room, str(number) if len(frames) > 1 else "", scale))
    return canvas


def heights_of_seam(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture can be at a width [mm].

    Raises
    ------
    KeyError
        If there is nothing of that name, or nothing of it can be drawn.
    """
    wide = width / MILLIMETRES
    frames, stacked = _arranged(_named(worksheet, name), style, wide)
    room = wide if stacked else _column(len(frames), wide)
    words = [frame.words_high(style, room) for frame in frames]
    natural = [_natural(frame, room, style) for frame in frames]
    if stacked:
        least = [LEAST * min(1.0, high) for high in natural]
        gaps = GAP * (len(frames) - 1)
        return Heights.of_inches(*(sum(words) + gaps + sum(highs) for highs in (least, natural)))
    high = max(natural)
    return Heights.of_inches(*(max(words) + cloth for cloth in (min(high, max(LEAST, high * 0.55)), high)))


def _natural(frame: Frame, room: float, style: Style) -> float:
    """How high the cloth of a frame is drawn in a room of a width."""
    clear, cloth = frame.margins(style), frame.cloth
    wide = room - clear.get("left", 0.0) - clear.get("right", 0.0)
    high = min(MOST, max(LEAST, wide * (cloth.bottom - cloth.top) / (cloth.right - cloth.left)))
    return high + clear.get("top", 0.0) + clear.get("bottom", 0.0)


def _column(number: int, width: float) -> float:
    return (width - GAP * (number - 1)) / number


def _arranged(drawing: SeamDrawing, style: Style, width: float) -> tuple[tuple[Frame, ...], bool]:
    """The parts, and whether they stand one below the other: the work is long, or a word is wider than a column."""
    number = len(drawing.parts)
    if number > 1 and (drawing.long or widest_words(drawing.parts, style) > _column(number, width)):
        return drawing.few, True
    return drawing.parts, False


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
