"""Words in a diagram: their size and where they may stand; anchors and widths come in, places and boxes go out.

Lengths are inches on paper with y downwards, sizes of type points. Nothing is drawn here.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np

from generator.drawing.built_words import LetterRun, capital_middle, set_words
from generator.drawing.typeface import TYPEFACE, Typeface

Point = tuple[float, float]
Segment = tuple[Point, Point]
Hold = Literal["left", "centre", "right"]

# The top and the bottom of a line of type, in em from the baseline; a raised numerator is the highest.
ASCENT = 0.8
DESCENT = 0.22
POINTS = 72


@dataclass(frozen=True, slots=True)
class Box:
    """A rectangle on paper [in], y downwards."""

    left: float
    top: float
    right: float
    bottom: float

    def grown(self, gap: float) -> Box:
        """Return the box with a gap added all round [in]."""
        return Box(self.left - gap, self.top - gap, self.right + gap, self.bottom + gap)

    def overlaps(self, other: Box) -> bool:
        """Return whether two boxes share more than an edge."""
        return (
            self.left < other.right and other.left < self.right and self.top < other.bottom and other.top < self.bottom
        )

    def is_cut_by(self, segment: Segment) -> bool:
        """Return whether a straight line runs through the inside of the box."""
        (start_x, start_y), (end_x, end_y) = segment
        entry, leave = 0.0, 1.0
        for start, step, low, high in (
            (start_x, end_x - start_x, self.left, self.right),
            (start_y, end_y - start_y, self.top, self.bottom),
        ):
            if step == 0:
                if not low < start < high:
                    return False
                continue
            # The stretch of the line between both edges, as shares of its length; the box is where both stretches meet.
            near, far = sorted(((low - start) / step, (high - start) / step))
            entry, leave = max(entry, near), min(leave, far)
        return entry < leave


@dataclass(frozen=True, slots=True)
class Label:
    """Words at a place: ``x`` is where ``hold`` says, ``y`` the middle of the capitals [in].

    ``size`` in points. ``turned`` words read upwards; then ``hold`` counts along them, from their lower end. Words with
    a ``backing`` stand on a patch of that colour and may lie over lines. ``colour`` is empty for black.
    """

    words: str
    x: float
    y: float
    size: float
    hold: Hold = "centre"
    turned: bool = False
    bold: bool = False
    backing: str = ""
    colour: str = ""
    font: Typeface = TYPEFACE

    @property
    def runs(self) -> tuple[LetterRun, ...]:
        """The runs of letters in which the words are set."""
        return set_words(self.words, self.font, bold=self.bold).runs

    @property
    def box(self) -> Box:
        """The room that the words take [in]."""
        width = label_width(self)
        before = {"left": 0.0, "centre": width / 2, "right": width}[self.hold]
        em = self.size / POINTS
        middle = capital_middle(self.font)
        above, below = (ASCENT - middle) * em, (DESCENT + middle) * em
        if self.turned:
            return Box(self.x - above, self.y - (width - before), self.x + below, self.y + before)
        return Box(self.x - before, self.y - above, self.x + width - before, self.y + below)

    def moved(self, right: float = 0.0, down: float = 0.0) -> Label:
        """Return the label at another place [in]."""
        return replace(self, x=self.x + right, y=self.y + down)


def text_width(words: str, size: float, *, bold: bool = False, font: Typeface = TYPEFACE) -> float:
    """Return the width of words set letter by letter, fractions built, at a size in points [in]."""
    return set_words(words, font, bold=bold).width * size / POINTS


def label_width(label: Label) -> float:
    """Return how wide the words of a label are [in]."""
    return text_width(label.words, label.size, bold=label.bold, font=label.font)


def text_height(size: float) -> float:
    """Return the height of a line of type at a size in points [in]."""
    return (ASCENT + DESCENT) * size / POINTS


_TOGETHER = re.compile(r"\d+ \d+/\d+\S*|\S+")


def text_lines(
    words: str, size: float, width: float, *, bold: bool = False, font: Typeface = TYPEFACE
) -> tuple[str, ...]:
    """Return words broken into lines that are no wider than a width [in]; a longer word stands alone.

    A whole number stays with its fraction.
    """
    lines: list[str] = []
    for word in _TOGETHER.findall(words):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and text_width(longer, size, bold=bold, font=font) <= width:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def levels(anchors: Sequence[float], widths: Sequence[float], gap: float, most: int = 2) -> tuple[int, ...] | None:
    """Return on which level each label stands when centred over its anchor, or None if they do not fit.

    Level 0 is nearest to the anchors. A label on a higher level has a straight leader down to its anchor, which must
    pass between the labels below. Anchors come in rising order.

    Parameters
    ----------
    anchors : sequence of float
        Where the labels point to [in].
    widths : sequence of float
        How wide they are [in].
    gap : float
        The least room between two labels, and between a label and a leader [in].
    most : int
        How many levels there may be [-].

    Returns
    -------
    tuple of int or None
        The level of each label.

    Examples
    --------
    Labels of 3 at every 2 stand in turn on two levels; at every 1 a leader would cut its neighbour.

    >>> levels((0, 2, 4, 6), (3, 3, 3, 3), 0)
    (0, 1, 0, 1)
    >>> levels((0, 1, 2), (3, 3, 3), 0) is None
    True
    """
    ends = [float("-inf")] * most
    last_leader = [float("-inf")] * most
    chosen: list[int] = []
    for anchor, width in zip(anchors, widths, strict=True):
        left, right = anchor - width / 2, anchor + width / 2
        for level in range(most):
            clear = ends[level] + gap <= left and last_leader[level] + gap <= left
            if clear and all(end + gap <= anchor for end in ends[:level]):
                break
        else:
            return None
        ends[level] = right
        for below in range(level):
            last_leader[below] = anchor
        chosen.append(level)
    return tuple(chosen)


def spread(wanted: Sequence[float], sizes: Sequence[float], low: float, high: float) -> tuple[float, ...] | None:
    """Return the middles of labels along one line, as near to where they are wanted as their sizes allow.

    Labels keep their order and stay between ``low`` and ``high`` [in]; None if they cannot. Neighbours that push each
    other become one block around their common middle (least squares), then the blocks are pressed in at both ends.

    Examples
    --------
    >>> spread((1.0, 1.0, 5.0), (1.0, 1.0, 1.0), 0.0, 6.0)
    (0.5, 1.5, 5.0)
    """
    if sum(sizes) > high - low + 1e-9:
        return None
    blocks: list[tuple[float, float, int]] = []  # sum of wanted starts less offset inside, length, labels
    for middle, size in zip(wanted, sizes, strict=True):
        pull, length, number = middle - size / 2, size, 1
        # The mean of where its labels pull a block is where their squared distances are least together.
        while blocks and blocks[-1][0] / blocks[-1][2] + blocks[-1][1] > pull / number:
            # Each label that joins pulls from where the block begins, so the length before it is taken off.
            before_pull, before_length, before_number = blocks.pop()
            pull = before_pull + pull - number * before_length
            length, number = before_length + length, before_number + number
        blocks.append((pull, length, number))
    return _pressed(blocks, sizes, low, high)


def _pressed(
    blocks: Sequence[tuple[float, float, int]], sizes: Sequence[float], low: float, high: float
) -> tuple[float, ...]:
    starts: list[float] = []
    for pull, _, number in blocks:
        start = pull / number
        for size in sizes[len(starts) : len(starts) + number]:
            starts.append(start)
            start += size
    # From the left first, then from the right: what the second pass moves has room, for all sizes together fit.
    floor, ceiling = low, high
    for place, size in enumerate(sizes):
        starts[place] = max(starts[place], floor)
        floor = starts[place] + size
    for place in range(len(sizes) - 1, -1, -1):
        starts[place] = min(starts[place], ceiling - sizes[place])
        ceiling = starts[place]
    return tuple(start + size / 2 for start, size in zip(starts, sizes, strict=True))


def crossings(labels: Iterable[Label], segments: Iterable[Segment] = ()) -> tuple[str, ...]:
    """Return every pair of labels that overlap, and every label that a line runs through, in words.

    Examples
    --------
    >>> crossings((Label("one", 1, 1, 8), Label("two", 1.1, 1, 8)))
    ("'one' and 'two' overlap",)
    """
    # Boxes that touch share a thin edge after rounding; that is no crossing.
    placed = [(label, label.box.grown(-0.004)) for label in labels]
    found = [
        f"'{label.words}' and '{other.words}' overlap"
        for place, (label, box) in enumerate(placed)
        for other, other_box in placed[place + 1 :]
        if box.overlaps(other_box)
    ]
    open_labels = [(label, box) for label, box in placed if not label.backing]
    lines = list(segments)
    found += [
        f"a line runs through '{label.words}'" for label, box, line in _near(open_labels, lines) if box.is_cut_by(line)
    ]
    return tuple(found)


def _near(placed: Sequence[tuple[Label, Box]], lines: Sequence[Segment]) -> Iterator[tuple[Label, Box, Segment]]:
    """Yield every label with every line that it may be cut by, line after line."""
    if not placed or not lines:
        return
    # A drawing has some ten thousand pairs; nearly all are told apart by their boxes, all at once.
    ends = np.array(lines)
    (left, top), (right, bottom) = ends.min(axis=1).T, ends.max(axis=1).T
    boxes = np.array([(box.left, box.top, box.right, box.bottom) for _, box in placed])
    apart = (
        (boxes[:, 2] < left[:, None])
        | (right[:, None] < boxes[:, 0])
        | (boxes[:, 3] < top[:, None])
        | (bottom[:, None] < boxes[:, 1])
    )
    for line, place in np.argwhere(~apart):
        yield (*placed[place], lines[line])
