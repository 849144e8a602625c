"""A zip between cloth and lining, from its end: sewn in one seam, and turned away from its teeth."""

from __future__ import annotations

from generator.calculation.making_up.seams import zip_linings
from generator.calculation.making_up.thing import Closing
from generator.drawing.assemblies.marks import note, span
from generator.drawing.assemblies.stage_canvas import Stage, StageCanvas, Subject
from generator.drawing.cloth_edge import draw_ply
from generator.lengths import say_length

_BASE, _APART = 0.8, 0.11
_SEAM, _RAW = 0.85, 1.45
_TEETH = 0.05


def lined_zip(subject: Subject) -> Closing | None:
    """Return the lined zip that a piece is the first to bear, None where there is none."""
    thing = subject.worksheet.thing
    closings = [one for one in thing.closings if zip_linings(one, thing)]
    return next((one for one in closings if one.on[0][0] == subject.piece.name), None)


def lined_zip_stages(subject: Subject) -> tuple[Stage, ...]:
    """Return one side of a zip with its layers as they are sewn, and turned to their right sides."""
    closing = lined_zip(subject)
    assert closing is not None
    seam = say_length(subject.piece.edges[closing.on[0][1]].allowance, subject.worksheet.edition)
    return (
        Stage("1 One seam through all three", 2.0, 1.35, lambda canvas: _sewn(canvas, seam)),
        Stage("2 Turned away from the teeth", 2.0, 1.35, _turned),
    )


def _teeth(canvas: StageCanvas, x: float, y: float) -> None:
    canvas.circle((x, y), _TEETH, fill=canvas.style.ink)


def _sewn(canvas: StageCanvas, seam: str) -> None:
    """Cloth, zip and lining with their seam; the raw edges are at the right, the teeth inside."""
    lining, zip_, cloth = (_BASE - _APART * place for place in (2, 1, 0))
    draw_ply(canvas, ((0.1, cloth), (_RAW, cloth)))
    draw_ply(canvas, ((0.3, zip_), (_RAW - 0.12, zip_)))
    draw_ply(canvas, ((0.1, lining), (_RAW, lining)))
    _teeth(canvas, 0.58, zip_)
    canvas.line(((_SEAM, lining - 0.14), (_SEAM, cloth + 0.14)), canvas.style.stitch)
    note(canvas, "lining, wrong side up", (0.1, 0.15), (0.35, lining - 0.02))
    note(canvas, "zip, right side down", (1.0, 0.32), (1.2, zip_ - 0.02))
    note(canvas, "cloth, right side up", (0.1, _BASE + 0.45), (0.35, cloth + 0.02))
    span(canvas, seam, (_SEAM, cloth + 0.24), (_RAW, cloth + 0.24))


def _turned(canvas: StageCanvas) -> None:
    """Cloth and lining folded back at the seam, the zip between them, its teeth beside both folds."""
    fold, end, middle = 0.72, 1.85, _BASE - 0.05
    for way, far in ((-1, 0.2), (1, 0.2)):
        near = middle + way * 0.1
        outer = middle + way * far
        draw_ply(canvas, ((end, outer), (fold, outer), (fold, near), (end - 0.4, near)))
    draw_ply(canvas, ((0.2, middle), (end - 0.5, middle)))
    _teeth(canvas, 0.47, middle)
    stitch = fold + 0.14
    canvas.line(((stitch, middle - 0.34), (stitch, middle + 0.34)), canvas.style.stitch)
    note(canvas, "cloth", (1.2, 0.15), (1.4, middle - 0.22))
    note(canvas, "lining", (1.2, middle + 0.5), (1.4, middle + 0.22))
    note(canvas, "teeth", (0.1, 0.32), (0.47, middle - 0.06))
    note(canvas, "along the fold", (0.1, middle + 0.5), (stitch, middle + 0.3))
