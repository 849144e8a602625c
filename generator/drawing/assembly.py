"""How pieces go together: a worksheet and the name of a piece come in, the drawings that apply to it go out.

Each kind of making up is one file in ``assemblies`` and one line in the table here.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from generator.calculation.worked_piece import GoesRound, Made
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.followed import edges_of, followed, round_corners
from generator.drawing.assemblies.bias import bias_stages
from generator.drawing.assemblies.binding import binding_stages
from generator.drawing.assemblies.binding_corner import binding_corner_stages
from generator.drawing.assemblies.board import board_stages
from generator.drawing.assemblies.boxing import boxing_stages
from generator.drawing.assemblies.breadths import breadth_stages
from generator.drawing.assemblies.enclosed_seam import encloses, felled_stages, french_stages
from generator.drawing.assemblies.envelope import envelope_stages
from generator.drawing.assemblies.frill import frill_stages
from generator.drawing.assemblies.gathered_end import gathered_end_stages
from generator.drawing.assemblies.lined_zip import lined_zip, lined_zip_stages
from generator.drawing.assemblies.pieced_bias import pieced_bias_stages
from generator.drawing.assemblies.roll import roll_closure, roll_stages
from generator.drawing.assemblies.stage_canvas import Stage, Subject, in_rows, set_up
from generator.drawing.canvas import Canvas
from generator.drawing.picture import Picture
from generator.drawing.sizes import MILLIMETRES, DrawnSize, Heights
from generator.drawing.style import Style

Applies = Callable[[Subject], bool]


@dataclass(frozen=True, slots=True)
class Assembly:
    """A kind of making up: when it applies to a piece, its stages, what a person sees, what to look for."""

    applies: Applies
    stages: Callable[[Subject], tuple[Stage, ...]]
    alt: str
    caption: str


def _made(test: Callable[[Made], object]) -> Applies:
    return lambda subject: bool(test(subject.piece.made))


def _drawn_up(*, in_the_middle: bool) -> Applies:
    """Apply to a piece that is gathered: to an edge, or to nothing in the middle of a round."""
    return _made(lambda made: made.gathered and made.drawn_up and (made.drawn_up.to == 0) is in_the_middle)


def _turns_corners(what: GoesRound) -> Applies:
    """Apply to a strip that turns a corner on its way round something."""

    def applies(subject: Subject) -> bool:
        meetings = ((edges_of(meeting.join), edges_of(meeting.to)) for meeting in subject.worksheet.meetings)
        return subject.piece.made.goes_round == what and round_corners(followed(meetings, subject.piece.name))

    return applies


def _turned_over(subject: Subject) -> bool:
    return any(edge.end.kind == "turnover" for edge in subject.piece.edges.values())


def _encloses(way: str) -> Applies:
    return lambda subject: encloses(way, subject)


ASSEMBLIES: dict[str, Assembly] = {
    "breadths": Assembly(
        lambda subject: bool(subject.piece.panel and subject.piece.panel.joins),
        breadth_stages,
        "A tuck from its end, twice: standing with a seam between breadths at its foot, and turned over the seam.",
        "The seam lies at the foot, where the turned tuck covers it.",
    ),
    "envelope back": Assembly(
        _made(lambda made: made.lap),
        envelope_stages,
        "The two halves of an envelope back lapped over each other, from above, and from the end on the front.",
        "The hemmed edges lie over each other; the seam goes round all layers.",
    ),
    "roll": Assembly(
        lambda subject: roll_closure(subject) is not None,
        roll_stages,
        "A wrap round a roll, from its end with the lap and a button on top, and from the front with all buttons.",
        "The outer edge laps over the inner one; the dotted line is the edge beneath.",
    ),
    "gathered end": Assembly(
        _drawn_up(in_the_middle=True),
        gathered_end_stages,
        "The end of a roll, twice: a strip sewn to the tube, with threads along it, and drawn up round a button.",
        "Draw up both threads together, knot them, and cover the knot.",
    ),
    "french seam": Assembly(
        _encloses("french seam"),
        french_stages,
        "A French seam from its end, three times: sewn wrong sides together, turned and sewn again, and opened.",
        "Dashed: the stitching. The raw edges end up between the two lines.",
    ),
    "felled seam": Assembly(
        _encloses("felled seam"),
        felled_stages,
        "A felled seam from its end, three times: sewn, one allowance trimmed, the other folded over it and sewn down.",
        "Dashed: the stitching.",
    ),
    "lined zip": Assembly(
        lambda subject: lined_zip(subject) is not None,
        lined_zip_stages,
        "One side of a zip from its end, twice: cloth, zip and lining sewn in one seam, then turned off the teeth.",
        "Dashed: the stitching. The other side is sewn in the same way.",
    ),
    "frill": Assembly(
        _drawn_up(in_the_middle=False),
        frill_stages,
        "A strip marked in quarters with two gathering threads, and the same strip drawn up on an edge.",
        "Match the quarters of strip and edge before you spread the gathers.",
    ),
    "boxing": Assembly(
        _turns_corners("faces"),
        boxing_stages,
        "A cushion from a corner: its face, and the boxing round it with a seam at a back corner.",
        "Clip the boxing to its seam line where it turns a corner.",
    ),
    "binding": Assembly(
        _made(lambda made: made.goes_round == "an edge"),
        binding_stages,
        "An edge from its end, three times: the binding sewn on in its first fold, turned over, and sewn down.",
        "Dashed: the stitching.",
    ),
    "binding corner": Assembly(
        _turns_corners("an edge"),
        binding_corner_stages,
        "A binding at a corner, three times: sewn on up to it, folded straight up, folded down along the next edge.",
        "Short dashes are the stitching. The second fold lies level with the edge that is done.",
    ),
    "bias": Assembly(
        lambda subject: "square" in subject.piece.measures and subject.piece.pieced is None,
        bias_stages,
        "A bias strip: a square cut corner to corner, its halves joined and ruled, the ends joined moved by one strip.",
        "The wrong side is up where it is ruled. Long dashes are ruled and then cut; dashes with dots are the seams.",
    ),
    "pieced bias": Assembly(
        lambda subject: subject.piece.pieced is not None,
        pieced_bias_stages,
        "A pieced bias strip: a rectangle ruled along the fold of its short side, and two strips joined at a corner.",
        "Long dashes are ruled and then cut; dashes with dots are the seam.",
    ),
    "board": Assembly(
        _turned_over,
        board_stages,
        "A padded board with its panel: from the end, and from the back with the middles numbered 1 to 4.",
        "Fasten the middles first, in the order of the numbers, then outwards.",
    ),
}


def draw_assembly(worksheet: Worksheet, name: str, style: Style, size: DrawnSize) -> Picture:
    """Return the picture of one kind of making up of a piece, such as 'envelope back back', at a size.

    Raises
    ------
    KeyError
        If there is no such kind, or it does not apply to the piece.
    """
    kind, subject = _found(worksheet, name)
    told = ASSEMBLIES[kind]
    return sketch_assembly(kind, subject, style, size).picture(told.alt, told.caption)


def heights_of_assembly(worksheet: Worksheet, name: str, style: Style, width: float) -> Heights:
    """Return how high the picture is at a width [mm].

    Raises
    ------
    KeyError
        If there is no such kind, or it does not apply to the piece.
    """
    kind, subject = _found(worksheet, name)
    return Heights.of_inches(in_rows(ASSEMBLIES[kind].stages(subject), style, width / MILLIMETRES).height)


def assembly_names(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the names of all drawings of making up: the kind and the piece, in the order of the file."""
    return tuple(
        f"{kind} {name}" for name, piece in worksheet.pieces.items() for kind in applying(Subject(worksheet, piece))
    )


def applying(subject: Subject) -> tuple[str, ...]:
    """Return the kinds of making up that apply to a piece."""
    return tuple(name for name, kind in ASSEMBLIES.items() if kind.applies(subject))


def sketch_assembly(name: str, subject: Subject, style: Style, size: DrawnSize | None = None) -> Canvas:
    """Return the canvas of one kind of making up, at a size or as large as a page lets it."""
    stages, key = ASSEMBLIES[name].stages(subject), f"assembly {name} {subject.piece.name}"
    if size is None:
        return set_up(in_rows(stages, style), style, key)
    return set_up(in_rows(stages, style, size.inches[0]), style, key, size.inches)


def _found(worksheet: Worksheet, name: str) -> tuple[str, Subject]:
    for kind in ASSEMBLIES:
        piece = worksheet.pieces.get(name.removeprefix(f"{kind} "))
        if name.startswith(f"{kind} ") and piece is not None and kind in applying(Subject(worksheet, piece)):
            return kind, Subject(worksheet, piece)
    raise KeyError(f"no way of making up is called '{name}'")
