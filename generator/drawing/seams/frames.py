"""The parts of a picture of a seam, laid, sewn and done: a plan and room on paper come in, each is drawn by itself."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from functools import partial
from typing import Any

from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas
from generator.drawing.labels import Box, Label, Point, text_height, text_lines, text_width
from generator.drawing.patterns import LEADER_DOT
from generator.drawing.seams import words
from generator.drawing.seams.boxes import FLAT, around
from generator.drawing.seams.paper import Paper, fitted
from generator.drawing.seams.plan import SeamPlan
from generator.drawing.seams.scenes import LINE, TICK, done, lay, layer_points, sew, sew_and_show
from generator.drawing.style import Style

AIR = 0.06
ARROW, RIM = 0.16, 0.1  # what an arrow and the mouth of a ring need outside the cloth [in]


def _nowhere(paper: Paper) -> tuple[Point | None, Point | None]:
    return None, None


@dataclass(frozen=True, slots=True)
class Frame:
    """One part: its title, the words above and below what is drawn, the cloth in it, and what draws it.

    ``beside`` are sides at which words stand, ``clear`` those that something reaches out of, and by how much [in].
    ``keep`` is how much of its longer side is never left out [in of cloth]. ``points`` are places that the words above
    and below lead to.
    """

    title: str
    above: str
    below: str
    cloth: Box
    draw: Callable[[Paper], None]
    beside: tuple[str, ...] = ()
    clear: Mapping[str, float] = field(default_factory=dict)
    keep: float = 0.0
    points: Callable[[Paper], tuple[Point | None, Point | None]] = _nowhere

    def margins(self, style: Style) -> dict[str, float]:
        """Return the room beside the cloth that is kept clear at each side [in]."""
        return {**dict.fromkeys(self.beside, LINE * text_height(style.small)), **self.clear}

    def lines(self, words: str, style: Style, width: float) -> Sequence[str]:
        """Return words as lines that fit a width [in], broken after a comma before anywhere else."""
        if "\n" in words:
            return [line for part in words.split("\n") for line in self.lines(part, style, width)]
        if text_width(words, style.small, font=style.font) <= width:
            return (words,) if words else ()
        parts = [f"{part}," for part in words.split(", ")]
        parts[-1] = parts[-1].removesuffix(",")
        return [line for part in parts for line in text_lines(part, style.small, width, font=style.font)]

    def words_high(self, style: Style, width: float) -> float:
        """Return the height that its title and words take at a width [in]."""
        rows = 1 + len(self.lines(self.above, style, width)) + len(self.lines(self.below, style, width))
        return rows * LINE * text_height(style.small) + 2 * AIR


@dataclass(frozen=True, slots=True)
class FramePlace:
    """Where a part is drawn, its number (empty where it is the only one), and the largest scale for its cloth."""

    room: Box
    number: str
    scale: float


def frames_of(plan: SeamPlan, worksheet: Worksheet, *, few: bool = False) -> tuple[Frame, ...]:
    """Return the parts that apply, ``few`` with laying and sewing in one; what is not turned out at once has no end."""
    above, below = words.layer_words(plan, worksheet)
    opening = words.opening_words(plan, worksheet)
    at = plan.opening[0] if plan.opening is not None else ""
    beside = (at,) if words.opening_beside(plan) else ()
    over, under = opening if at == "top" else "", opening if at != "top" and not beside else ""
    where = ", ".join(filter(None, (words.sewn_words(plan, worksheet), under)))
    gaps = words.gap_words(plan, worksheet)
    basted = words.is_basted(plan)
    laid, sewn = words.laid_title(plan), "Baste" if basted else "Sew"
    keep, points = _kept(plan), partial(layer_points, plan=plan)

    def frame(title: str, above: str, below: str, draw: Callable[..., None], **more: Any) -> Frame:
        return Frame(title, above, below, plan.whole, partial(draw, plan=plan, worksheet=worksheet), keep=keep, **more)

    laying = frame(laid, above, below, lay, points=points)
    ends = dict.fromkeys((side for side, _ in plan.gaps), TICK)
    sewing = frame(sewn, over, _lines(where, gaps), sew, beside=beside, clear=ends)
    if few:
        title = f"{laid}, {sewn.lower()} {where}".strip()
        told = _lines(above, over), _lines(below, under, gaps)
        sewing = frame(title, *told, sew_and_show, beside=beside, clear=ends, points=points)
    opened = around(one.cut for one in plan.opened)
    last = Frame(
        words.done_title(plan), "", words.done_words(plan), opened, partial(done, plan=plan), clear=_reaching(plan)
    )
    if plan.joined.does == "turn out":
        return (last,)
    if not plan.joined.sides:
        return (laying,)
    first = (sewing,) if few else (laying, sewing)
    return first if basted or plan.inside_out else (*first, last)


def _lines(*told: str) -> str:
    return "\n".join(words for words in told if words)


def _reaching(plan: SeamPlan) -> dict[str, float]:
    """What reaches out of the work when it is done: the arrow of its way out, the mouth of a ring."""
    clear = {"top" if plan.joined.sides[0] in FLAT else "right": RIM} if plan.tube else {}
    halves = any(len(laid.piece.parts) > 1 for laid in plan.over)
    if plan.joined.turned and not halves:
        clear[plan.way_out[0]] = ARROW
    return clear


def inside(frame: Frame, room: Box, style: Style) -> Box:
    """Return where the cloth of a frame may lie in its room: below its title, between its words."""
    high, width = LINE * text_height(style.small), room.right - room.left
    clear = frame.margins(style)
    above, below = (len(frame.lines(told, style, width)) for told in (frame.above, frame.below))
    return Box(
        room.left + clear.get("left", 0.0),
        room.top + high * (1 + above) + AIR + clear.get("top", 0.0),
        room.right - clear.get("right", 0.0),
        room.bottom - high * below - AIR - clear.get("bottom", 0.0),
    )


def draw_frame(canvas: Canvas, frame: Frame, place: FramePlace) -> None:
    """Draw one part in its room: title, words, cloth, words."""
    style, room = canvas.style, place.room
    high, width = LINE * text_height(style.small), room.right - room.left
    middle = (room.left + room.right) / 2
    canvas.text(f"{place.number} {frame.title}".strip(), middle, room.top + high / 2, bold=True)
    above = [
        canvas.text(line, middle, room.top + high * (row + 1.5))
        for row, line in enumerate(frame.lines(frame.above, style, width))
    ]
    lines = frame.lines(frame.below, style, width)
    below = [canvas.text(line, middle, room.bottom - high * (len(lines) - row - 0.5)) for row, line in enumerate(lines)]
    paper = fitted(canvas, frame.cloth, inside(frame, room, style), (0.0, frame.keep), place.scale)
    frame.draw(paper)
    paper.torn(frame.cloth)
    upper, lower = frame.points(paper)
    for label in above[-1:] if upper is not None else ():
        _leader(canvas, label, label.box.bottom, upper or (0.0, 0.0))
    for label in below[:1] if lower is not None else ():
        _leader(canvas, label, label.box.top, lower or (0.0, 0.0))


def _kept(plan: SeamPlan) -> float:
    return max(abs(value) for point in plan.opening[1] for value in point) if plan.opening is not None else 0.0


def _leader(canvas: Canvas, label: Label, y: float, target: Point) -> None:
    x = max(label.box.left, min(target[0], label.box.right))
    canvas.line(((x, y), target), canvas.style.measure)
    canvas.dots([target], LEADER_DOT)


def widest_words(frames: Sequence[Frame], style: Style) -> float:
    """Return the width of the longest word or title in some frames [in], which no room may fall below."""
    told = [word for frame in frames for word in f"{frame.above} {frame.below}".split()]
    titles = [text_width(f"1 {frame.title}", style.small, bold=True, font=style.font) for frame in frames]
    return max([*titles, *(text_width(word, style.small, font=style.font) for word in told)])
