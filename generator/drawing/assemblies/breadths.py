"""Two breadths of cloth joined at the foot of a tuck: seen from the end of the tuck, standing and turned."""

from __future__ import annotations

from generator.drawing.assemblies.marks import note
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import draw_ply

FOOT, BASE, TALL = 1.3, 0.8, 0.6


def breadth_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return the seam at the foot of the standing tuck with its allowances inside, and the tuck turned over it."""
    joins = subject.piece.panel.joins if subject.piece.panel else ()
    side = 1 if joins and joins[0].foot == "right" else -1
    told = [f"first join: tuck {join.tuck}, {join.foot} foot" for join in joins[:1]]
    covered = [f"covered in {join.covered} of {join.rows} rows" for join in joins[:1] if join.rows]
    return (
        Stage("Seam at the foot of the tuck", 2.7, 1.15, lambda canvas: _standing(canvas, side, told)),
        Stage("Turned, it covers the seam", 2.6, 1.15, lambda canvas: _turned(canvas, side, covered)),
    )


def _standing(canvas: StageCanvas, side: int, told: list[str]) -> None:
    """Draw one ply down the near side of the tuck, the other breadth with its allowance turned up inside."""
    half, top = 0.09, BASE - TALL
    near, far = FOOT + side * half, FOOT - side * half
    inside = near - side * 0.07
    draw_ply(canvas, ((FOOT + side * 1.1, BASE), (near, BASE), (near - side * 0.05, BASE - 0.3)))
    over = ((FOOT - side * 1.1, BASE), (far, BASE), (far, top), (near + side * 0.03, top), (near + side * 0.03, BASE))
    draw_ply(canvas, (*over[:-1], (near + side * 0.03, BASE - 0.05)))
    canvas.line(((FOOT - 0.2, BASE - 0.06), (FOOT + 0.2, BASE - 0.06)), canvas.style.stitch)
    note(canvas, "seam", (FOOT + side * 0.65, BASE - 0.45), (inside + side * 0.08, BASE - 0.03), hold="centre")
    for words in told:
        canvas.text(words, FOOT, BASE + 0.25)


def _turned(canvas: StageCanvas, side: int, told: list[str]) -> None:
    """Draw the tuck lying over the side on which the seam is."""
    fold, seam = FOOT + side * TALL, FOOT + side * 0.1
    first, second = BASE - 0.1, BASE - 0.19
    over = ((FOOT - side * 0.9, BASE), (FOOT, BASE), (FOOT, second), (fold, second), (fold, first), (seam, first))
    draw_ply(canvas, (*over, (seam, BASE)))
    draw_ply(canvas, ((seam, BASE), (FOOT + side * 1.1, BASE)))
    note(canvas, "seam, out of sight", (FOOT + side * 0.3, BASE - 0.55), (seam, BASE - 0.02), hold="centre")
    for words in told:
        canvas.text(words, FOOT, BASE + 0.25)
