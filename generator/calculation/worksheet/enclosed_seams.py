"""Edges finished by seams that shut them in, or rolled: worked pieces and seams come in, findings and words go out."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping, Sequence
from contextlib import suppress
from fractions import Fraction
from types import MappingProxyType

from generator.calculation.making_up.items import TRIMMED
from generator.calculation.making_up.thing import Edge, Seam, Thing
from generator.calculation.pieces.enclosed import EnclosedSeam, felled_seam, french_seam
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import MeetingWork
from generator.calculation.worksheet.lists import edge_words
from generator.calculation.worksheet.pieces.shaped import is_curved
from generator.calculation.worksheet.scope import AlreadyReportedError, Scope
from generator.errors import Place
from generator.lengths import Edition, say_length

_LINES: Mapping[str, Callable[[Fraction, Edition], EnclosedSeam]] = MappingProxyType(
    {"french seam": french_seam, "felled seam": felled_seam}
)
# Edges of a straight piece that its tucks run into, or its cross tucks.
_ENDS, _SIDES = ("top", "bottom"), ("left", "right")


def lines_at(piece: Piece, side: str, edition: Edition) -> EnclosedSeam | None:
    """Return the lines of the seam that shuts in an edge; None where its seam is another.

    Raises
    ------
    CalculationError
        If its allowance is too narrow.
    """
    edge = piece.edges.get(side)
    return _LINES[edge.end.way](edge.end.first, edition) if edge is not None and edge.end.shuts_in else None


def report_enclosed(scope: Scope, thing: Thing, pieces: Mapping[str, Piece]) -> None:
    """Report edges whose seam cannot shut them in, and rolled hems that run across tucks."""
    met = {edge for seam in thing.seams for edge in seam.edges}
    for name, piece in pieces.items():
        model = scope.project.pieces[name]
        for side, edge in piece.edges.items():
            place = model.finish(side).place
            if edge.end.way == "rolled hem" and _is_crossed(piece, side):
                text = f"a rolled hem cannot go over tucks, and they run into '{name}.{side}'; write 'bound', or a hem"
                scope.report("error", text, place, name)
            if edge.end.shuts_in:
                with suppress(AlreadyReportedError), scope.reporting(place, name):
                    lines_at(piece, side, scope.edition)
                if (name, side) not in met:
                    text = f"'{name}.{side}' is to be closed by a {edge.end.way} and meets no other edge"
                    scope.report("error", f"{text}; write under 'edges that meet' what it is sewn to", place, name)
            _report_trimmed(scope, thing, (name, side), place)
    for seam in thing.seams:
        for pair in seam.pairs:
            _report_pair(scope, seam, pair, pieces)


def _report_trimmed(scope: Scope, thing: Thing, edge: Edge, place: Place | None) -> None:
    """Report an edge that is trimmed at its finished line and meets another, and a faced one that meets no facing."""
    end, told = thing.parts[edge[0]].ends.get(edge[1], ""), f"'{edge[0]}.{edge[1]}'"
    seams = [seam for seam in thing.seams if edge in seam.edges]
    if end in TRIMMED and seams:
        text = f"{told} is {end} and is sewn to something as well; write a seam there, or take the meeting out"
        scope.report("error", text, place, edge[0])
    facings = [seam for seam in seams if seam.sort in ("facing", "shaped facing")]
    kinds = (part.facts for seam in facings for part in map(thing.parts.__getitem__, seam.pieces))
    if end == "faced" and not any({"turned in", "along an edge"} & facts for facts in kinds):
        text = f"{told} is faced and meets no facing; write under 'edges that meet' the facing that is sewn to it"
        scope.report("error", text, place, edge[0])


def _report_pair(scope: Scope, seam: Seam, pair: tuple[Edge, Edge], pieces: Mapping[str, Piece]) -> None:
    """Report two edges that one seam cannot shut in together."""
    ends = [pieces[name].edges[side].end for name, side in pair if side in pieces[name].edges]
    ways = [end.way for end in ends if end.shuts_in]
    if not ways:
        return
    one, other = (f"'{name}.{side}'" for name, side in pair)
    if len(ends) < len(pair) or len(set(ends)) > 1:
        text = f"a {ways[0]} shuts in both edges: give {one} and {other} the same finish, with the same width"
        scope.report("error", text, seam.place)
    elif any(is_curved(pieces[name], side) for name, side in pair):
        text = f"a {ways[0]} lies flat on a straight edge only, and {one} or {other} is curved"
        scope.report("error", f"{text}; write a seam there, bound on the bias or neatened", seam.place)
    elif all(_is_crossed(pieces[name], side) for name, side in pair):
        text = f"tucks run into both {one} and {other}, so a {ways[0]} would be twelve layers thick"
        scope.report("error", f"{text}; write a seam there and neaten it", seam.place)


def _is_crossed(piece: Piece, side: str) -> bool:
    """Whether tucks run into an edge of a panel; into any edge of one that is cut to shape."""
    panel = piece.panel
    if panel is None:
        return False
    along, across = panel.across.count > 0, panel.cross is not None
    if side in _SIDES:
        return across
    return along if side in _ENDS else along or across


def enclosed_list(
    seams: Sequence[Seam], meetings: Sequence[MeetingWork], pieces: Mapping[str, Piece], edition: Edition
) -> str:
    """Return where both lines of each seam lie that shuts in its edges; seams alike are told in one line."""
    told: dict[str, list[str]] = {}
    for seam in seams:
        words = next(_line_words(seam, pieces, edition), "")
        if words:
            join, to = (edge_words(run, pieces) for run in (meetings[seam.number].join, meetings[seam.number].to))
            told.setdefault(words, []).append(f"{join}, to {to}")
    return "\n".join(f"- {'; '.join(edges)}: {words}" for words, edges in told.items())


def _line_words(seam: Seam, pieces: Mapping[str, Piece], edition: Edition) -> Iterator[str]:
    for (name, side), _ in seam.pairs:
        lines = lines_at(pieces[name], side, edition)
        if lines is not None:
            first, second = say_length(lines.first, edition), say_length(lines.second, edition)
            yield (
                f"first line {first} from the raw edges, second {second} from the fold"
                if seam.sort == "french"
                else f"first line {first} from the raw edges; trim one to {second}; the fell is "
                f"{say_length(lines.shows, edition)} wide"
            )
