"""A finished thing from the front and from the back: a worksheet comes in, its shapes from far to near go out."""

from __future__ import annotations

from dataclasses import replace

from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import ClosureWork, Worksheet
from generator.drawing.labels import Box
from generator.drawing.things.bands import bands
from generator.drawing.things.extras import before, behind
from generator.drawing.things.forms import Form, form_of
from generator.drawing.things.rods import has_rods, rods_from_behind
from generator.drawing.things.shapes import Shape, between, box_of, piece_shape
from generator.drawing.tucked import shown_parts

APART = 0.08  # between two of a pair, in parts of the width


def front_shapes(worksheet: Worksheet) -> list[Shape]:
    """Return the thing from the front; a pair of curtains hangs side by side."""
    form = form_of(worksheet)
    if worksheet.laid_out.number == 2 and form.name == "hung":
        mirrored = any(worksheet.pieces[lying.piece].pair for lying in worksheet.laid_out.seen)
        return [*shapes_of(worksheet, form), *shapes_of(worksheet, _beside(form, mirrored=mirrored))]
    return shapes_of(worksheet, form)


def _beside(form: Form, *, mirrored: bool) -> Form:
    """The same beside it, as in a mirror where the two are a left and a right."""
    wide = (form.flat.right - form.flat.left) * (1 + APART)

    def place(point: tuple[float, float]) -> tuple[float, float] | None:
        x, y = point
        found = form.place((form.flat.left + form.flat.right - x if mirrored else x, y))
        return None if found is None else (found[0] + wide, found[1])

    return replace(form, place=place)


def shapes_of(worksheet: Worksheet, form: Form) -> list[Shape]:
    """Return what is seen of one thing from the front in a form, from far to near."""
    laid = worksheet.laid_out
    lower = [lying for lying in laid.pieces if lying.layer == "behind" and _stands_out(lying, laid.seen)]
    shapes = [*behind(worksheet, form), *(piece_shape(worksheet, lying, form) for lying in lower)]
    for lying in laid.seen:
        shapes += [*bands(worksheet, lying, form), piece_shape(worksheet, lying, form)]
        shapes += [*_blocks(worksheet, lying, form), *_patches(worksheet, lying, form)]
    return [*shapes, *before(worksheet, form)]


def _stands_out(lying: Lying, seen: tuple[Lying, ...]) -> bool:
    """Whether a piece that lies behind is seen beyond those before it."""
    box, whole = box_of(lying), [box_of(one) for one in seen]
    return (
        box.left < min(one.left for one in whole)
        or box.top < min(one.top for one in whole)
        or box.right > max(one.right for one in whole)
        or box.bottom > max(one.bottom for one in whole)
    )


def _blocks(worksheet: Worksheet, lying: Lying, form: Form) -> list[Shape]:
    """The blocks of a grid in their places, every second one turned where it says so."""
    grid = worksheet.pieces[lying.piece]
    blocks = grid.blocks
    if blocks is None:
        return []
    (wide, high), found = blocks.block, []
    finished = (grid.edges["left"].allowance, grid.edges["top"].allowance)
    for _, _, left, top, turned in blocks.places(finished):
        block = lying.bearing(blocks.of, wide, high, (left, top))
        found.append(piece_shape(worksheet, replace(block, turned=(block.turned + turned) % 4), form))
    return found


def _patches(worksheet: Worksheet, lying: Lying, form: Form) -> list[Shape]:
    """What is sewn on the face of a piece: where its file says, else in the middle."""
    found = []
    for one in worksheet.attached:
        piece = worksheet.pieces[one.piece]
        if one.onto == (lying.piece, "") and piece.parts and not piece.made.folds:
            at = (piece.on_piece.left, piece.on_piece.top) if piece.on_piece is not None else None
            patch = lying.bearing(piece.name, piece.finished_across, piece.finished_along, at)
            found.append(piece_shape(worksheet, patch, form))
    return found


def back_shapes(worksheet: Worksheet) -> list[Shape]:
    """Return the thing from the back where that tells more than the front: rods, a lap, buttons, a pocket."""
    laid = worksheet.laid_out
    rodded = next((one for one in laid.seen if has_rods(worksheet.pieces[one.piece])), None)
    if rodded is not None:
        return rods_from_behind(worksheet, rodded)
    rolled, form = _closed_on_itself(worksheet), form_of(worksheet, back=True)
    if form.name == "roll" and rolled is not None:
        return [*_front_of_roll(worksheet, form), _buttons(worksheet, rolled, form)]
    shown = {lying.piece for lying in laid.seen}
    backs = [lying for lying in laid.pieces if lying.layer == "behind" and lying.piece not in shown]
    form = form_of(worksheet)
    for lying in backs:
        halves = worksheet.pieces[lying.piece].parts if len(worksheet.pieces[lying.piece].parts) == 2 else ()
        patches = _patches(worksheet, lying, form)
        if halves:
            return [piece_shape(worksheet, lying, form), _lap(worksheet, lying, form)]
        if patches:
            return [*bands(worksheet, lying, form), piece_shape(worksheet, lying, form), *patches]
    return []


def _closed_on_itself(worksheet: Worksheet) -> ClosureWork | None:
    """The closure by which a piece is closed round a form."""
    return next(
        (
            one
            for one in worksheet.closures
            if one.on != one.onto and one.on.rpartition(".")[0] == one.onto.rpartition(".")[0]
        ),
        None,
    )


def _front_of_roll(worksheet: Worksheet, form: Form) -> list[Shape]:
    return [*(piece_shape(worksheet, one, form) for one in worksheet.laid_out.seen), *before(worksheet, form)]


def _buttons(worksheet: Worksheet, closure: ClosureWork, form: Form) -> Shape:
    """The buttons along the edge that lies on top."""
    lying = worksheet.laid_out.seen[0]
    x = float(lying.left) + float(closure.overlap) / 2
    radius = float(closure.diameter) / 2
    middles = [form.place((x, float(lying.top) + float(place))) for place in closure.positions]
    return Shape(buttons=tuple((middle, radius) for middle in middles if middle is not None))


def _lap(worksheet: Worksheet, lying: Lying, form: Form) -> Shape:
    """Where the halves of a back lap: the hemmed edge on top, and dotted the one under it."""
    box, piece = box_of(lying), worksheet.pieces[lying.piece]
    left, right = (float(part.finished_across) for part in piece.parts)
    top, hidden = (_upright(box, x) for x in (box.left + left, box.right - right))
    return Shape(
        edges=tuple(tuple(part) for part in shown_parts(top, form.place)),
        hidden=tuple(tuple(part) for part in shown_parts(hidden, form.place)),
    )


def _upright(box: Box, x: float) -> list[tuple[float, float]]:
    return between((x, box.top), (x, box.bottom))
