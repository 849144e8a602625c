"""What the step that sews a facing on tells of its edges: its moment comes in, conditions and words go out."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.making_up.facings import joined_ends
from generator.calculation.making_up.seams import facings_of
from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.moment import Moment
from generator.lengths import say_length

Spots = tuple[tuple[Fraction, Fraction], ...]
# The square of the sine of 15 degrees: a line that turns more than so at one point has a corner there. Our own limit.
_CORNER = Fraction(67, 1000)


def _faced(moment: Moment) -> Iterable[tuple[Piece, str]]:
    """The facings that the step sews on, each with an edge of it that it sews."""
    for seam in moment.seams:
        names = facings_of(seam, moment.book.thing) if moment.book is not None else ()
        if seam.sort == "shaped facing":
            sides = dict.fromkeys(edge for pair in seam.pairs for edge in pair if edge[0] in names)
            yield from ((moment.context.pieces[name], side) for name, side in sides)


def _turns(moment: Moment) -> Iterable[tuple[bool, bool]]:
    """Every turn of the faced edges, as (outward, a corner): also those where one edge goes on in the next."""
    for piece in {piece.name: piece for piece, _ in _faced(moment)}.values():
        sides = {side for one, side in _faced(moment) if one.name == piece.name}
        lines = [line.spots for line in piece.shape.lines if line.name in sides] if piece.shape is not None else []
        for line in _in_one(lines):
            for before, here, after in zip(line, line[1:], line[2:], strict=False):
                first, second = _way(before, here), _way(here, after)
                turn = first[0] * second[1] - first[1] * second[0]
                on = first[0] * second[0] + first[1] * second[1]
                if turn:
                    yield turn > 0, on <= 0 or turn * turn > _CORNER * (turn * turn + on * on)


def _in_one(lines: list[Spots]) -> Iterable[Spots]:
    """Lines of which one ends where the next begins, as one line."""
    joined: list[Spots] = []
    for line in lines:
        if joined and joined[-1][-1] == line[0]:
            joined[-1] = (*joined[-1], *line[1:])
        else:
            joined.append(line)
    return joined


def _way(one: tuple[Fraction, Fraction], other: tuple[Fraction, Fraction]) -> tuple[Fraction, Fraction]:
    return other[0] - one[0], other[1] - one[1]


def _ends_joined(moment: Moment) -> bool:
    return moment.book is not None and any(
        any(True for _ in joined_ends(moment.book.thing.parts[piece.name], moment.book.thing))
        for piece, _ in _faced(moment)
    )


def _seam_line(moment: Moment) -> str:
    """How far the seam lies from the raw edges; where that differs, of which edge."""
    said: dict[str, list[str]] = {}
    for piece, side in _faced(moment):
        told = said.setdefault(say_length(piece.edges[side].allowance, moment.context.scope.edition), [])
        told += [] if side in told else [side]
    if len(said) == 1:
        return next(iter(said))
    return ", ".join(f"{length} at the {' and '.join(sides)}" for length, sides in said.items())


def _trimmed(way: str) -> Callable[[Moment], bool]:
    """Whether the step finishes an edge in a way and trims it."""
    return lambda moment: any(way in words for words in _trimmed_edges(moment))


def _trimmed_edges(moment: Moment) -> list[str]:
    """The edges that the step stitches or seals and then trims, each with how and how wide is cut away."""
    told = []
    for item in moment.gives:
        if item.state == "edge trimmed":
            piece = moment.context.pieces[item.on.rpartition(".")[0]]
            edge = piece.edges[item.edge]
            width = say_length(edge.allowance, moment.context.scope.edition)
            told.append(f"- {piece.label}, {piece.said(item.edge)}: {edge.end.word}, {width} cut away")
    return told


FACING_CONDITIONS: Mapping[str, Callable[[Moment], bool]] = MappingProxyType(
    {
        "hollow edge": lambda moment: any(not outward and not corner for outward, corner in _turns(moment)),
        "outward edge": lambda moment: any(outward and not corner for outward, corner in _turns(moment)),
        "inner corner": lambda moment: any(not outward and corner for outward, corner in _turns(moment)),
        "outer corner": lambda moment: any(outward and corner for outward, corner in _turns(moment)),
        "ends joined": _ends_joined,
        "stitched edge": _trimmed("stitched and trimmed"),
        "sealed edge": _trimmed("sealed and trimmed"),
    }
)
FACING_BRACKETS: Mapping[str, Callable[[Moment], str]] = MappingProxyType(
    {"seam line": _seam_line, "trimmed edges": lambda moment: "\n".join(_trimmed_edges(moment))}
)
