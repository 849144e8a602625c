"""The finished thing, drawn from its own numbers: a worksheet and 'front' or 'back' come in, one picture goes out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence

from generator.calculation.making_up.laid import Lying
from generator.calculation.worked_project import Worksheet
from generator.drawing.canvas import Canvas, canvas_of
from generator.drawing.labels import Box, Point
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style
from generator.drawing.things.forms import Form
from generator.drawing.things.shapes import Shape, in_the_thing
from generator.drawing.things.views import back_shapes, front_shapes
from generator.drawing.things.words import thing_words
from generator.drawing.tucked import draw_tucks

BORDER = 0.03  # for the thickness of lines, and a little air [in]
SIDES = {"front": front_shapes, "back": back_shapes}


def thing_names(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the sides from which a finished thing is drawn: the back only where it shows something of its own."""
    return tuple(side for side, shapes in SIDES.items() if worksheet.laid_out.pieces and shapes(worksheet))


def draw_thing(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the finished thing from one side, drawn as large as a size lets it.

    Raises
    ------
    KeyError
        If it is not drawn from that side.
    """
    canvas = sketch_thing(worksheet, name, style, size)
    alt, caption = thing_words(worksheet, name)
    return canvas.picture(alt, caption)


def sketch_thing(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Canvas:
    """Return the canvas of the finished thing from one side."""
    shapes = _shapes(worksheet, name)
    canvas = canvas_of(size, style, f"thing {name}")
    whole = extent(shapes)
    room = (canvas.width - 2 * BORDER, canvas.height - 2 * BORDER)
    scale = min(room[0] / (whole.right - whole.left), room[1] / (whole.bottom - whole.top))
    paper = _Paper(canvas, whole, scale)
    for shape in shapes:
        paper.draw(worksheet, shape)
    return canvas


def heights_of_thing(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the drawing can be at a width [mm]: no higher than the thing itself would be.

    Raises
    ------
    KeyError
        If it is not drawn from that side.
    """
    whole = extent(_shapes(worksheet, name))
    border = 2 * BORDER * MILLIMETRES
    full = (width - border) * (whole.bottom - whole.top) / (whole.right - whole.left) + border
    return Heights(min(full, 0.35 * width), min(full, 0.75 * width), full)


def _shapes(worksheet: Worksheet, name: str) -> list[Shape]:
    shapes = SIDES[name](worksheet)
    if not shapes:
        raise KeyError(f"the {name} of '{worksheet.project}' shows nothing of its own")
    return shapes


def extent(shapes: Iterable[Shape]) -> Box:
    """Return what shapes cover in all [in of the thing]."""
    points = [point for shape in shapes for line in (shape.covers, *shape.edges, *shape.lines) for point in line]
    return Box(
        min(x for x, _ in points), min(y for _, y in points), max(x for x, _ in points), max(y for _, y in points)
    )


class _Paper:
    """Where the thing lies on paper: in the middle, at a scale."""

    def __init__(self, canvas: Canvas, whole: Box, scale: float) -> None:
        self.canvas, self.scale = canvas, scale
        wide, high = (whole.right - whole.left) * scale, (whole.bottom - whole.top) * scale
        self.corner = ((canvas.width - wide) / 2 - whole.left * scale, (canvas.height - high) / 2 - whole.top * scale)

    def at(self, point: Point) -> Point:
        """Return the place of a point of the form on paper."""
        return self.corner[0] + point[0] * self.scale, self.corner[1] + point[1] * self.scale

    def draw(self, worksheet: Worksheet, shape: Shape) -> None:
        """Draw one shape over those before it."""
        canvas, style = self.canvas, self.canvas.style
        if shape.covers:
            canvas.area(self.all(shape.covers), style.paper)
        if shape.lying is not None and shape.form is not None:
            place = self.of_panel(shape.form, shape.lying)
            if shape.covers:
                with canvas.clipped(self.all(shape.covers)):
                    draw_tucks(canvas, worksheet.pieces[shape.lying.piece], place, self.scale)
            else:
                draw_tucks(canvas, worksheet.pieces[shape.lying.piece], place, self.scale)
        canvas.lines((self.all(line) for line in shape.lines), style.hatch)
        canvas.lines((self.all(line) for line in shape.stitched), style.trim)
        canvas.lines((self.all(line) for line in shape.hidden), style.finish)
        canvas.lines((self.all(line) for line in shape.edges), style.outline)
        for middle, radius in shape.buttons:
            canvas.circle(self.at(middle), radius * self.scale, fill=style.paper, pen=style.outline)

    def all(self, points: Sequence[Point]) -> list[Point]:
        """Return the places of points on paper."""
        return [self.at(point) for point in points]

    def of_panel(self, form: Form, lying: Lying) -> Callable[[Point], Point | None]:
        """Return what tells the place of a point of a panel on paper, None where its form hides it."""
        in_thing = in_the_thing(lying)

        def place(point: Point) -> Point | None:
            found = form.place(in_thing(point))
            return None if found is None else self.at(found)

        return place
