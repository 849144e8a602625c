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
from generator.drawing.assemblies.envelope import envelope_stages
from generator.drawing.assemblies.frill import frill_stages
from generator.drawing.assemblies.gathered_end import gathered_end_stages
from generator.drawing.assemblies.pieced_bias import pieced_bias_stages
from generator.drawing.assemblies.roll import roll_closure, roll_stages
from generator.drawing.assemblies.stage_canvas import Stage, Subject, set_up
from generator.drawing.canvas import Canvas
from generator.drawing.picture import Picture
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
    "frill": Assembly(
        _drawn_up(in_the_middle=False),
        frill_stages,
        "A strip marked in quarters with two gathering threads, and the same strip drawn up on an edge.",
        "Match the quarters of strip and edge before you spread the gathers.",
    ),
    "boxing": Assembly(
        _turns_corners("faces"),
        boxing_stages,
        "A cushion from a corner: its face, and the boxing round it with one seam.",
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
        "Grey is the wrong side. Long dashes are ruled and then cut; dashes with dots are the seams.",
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


def draw_assembly(worksheet: Worksheet, name: str, style: Style) -> tuple[Picture, ...]:
    """Return the drawings that apply to a piece, or of one kind of making up for the first piece that it applies to.

    Raises
    ------
    KeyError
        If neither a piece nor a kind of making up has this name.
    """
    if name in worksheet.pieces:
        subject = Subject(worksheet, worksheet.pieces[name])
        return tuple(_drawn(kind, subject, style) for kind in applying(subject))
    subjects = (Subject(worksheet, piece) for piece in worksheet.pieces.values())
    return tuple(_drawn(name, subject, style) for subject in subjects if ASSEMBLIES[name].applies(subject))[:1]


def assembly_names(worksheet: Worksheet) -> tuple[str, ...]:
    """Return the names of the pieces for which there is a drawing of making up, in the order of the file."""
    return tuple(name for name, piece in worksheet.pieces.items() if applying(Subject(worksheet, piece)))


def applying(subject: Subject) -> tuple[str, ...]:
    """Return the kinds of making up that apply to a piece."""
    return tuple(name for name, kind in ASSEMBLIES.items() if kind.applies(subject))


def sketch_assembly(name: str, subject: Subject, style: Style) -> Canvas:
    """Return the canvas of one kind of making up."""
    return set_up(ASSEMBLIES[name].stages(subject), style, f"assembly {name} {subject.piece.name}")


def _drawn(name: str, subject: Subject, style: Style) -> Picture:
    kind = ASSEMBLIES[name]
    return sketch_assembly(name, subject, style).picture(kind.alt, kind.caption)
