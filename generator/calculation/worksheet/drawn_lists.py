"""Edges that are gathered or pleated to what they meet, in words: pieces and meetings come in, lists go out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.pieces.drawn_edges import least_sections
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import MeetingWork
from generator.calculation.worksheet.lists import edge_words
from generator.lengths import Edition, on_ruler, say_length

_BESIDE = {"top": "left", "bottom": "left", "left": "top", "right": "top"}


def drawn_meetings(pieces: Sequence[Piece], meetings: Sequence[MeetingWork]) -> Iterator[tuple[MeetingWork, DrawnUp]]:
    """Return the meetings at which an edge of these pieces is drawn up."""
    names = {piece.name for piece in pieces}
    for meeting in meetings:
        if meeting.drawn is not None and meeting.join.partition(".")[0] in names:
            yield meeting, meeting.drawn


def gathered_list(
    pieces: Sequence[Piece], meetings: Sequence[MeetingWork], everything: Mapping[str, Piece], edition: Edition
) -> str:
    """Return each edge that is gathered, to what length, and how far its quarters lie apart on both edges."""
    lines = []
    for meeting, drawn in drawn_meetings(pieces, meetings):
        if drawn.gathered:
            quarters = [say_length(part, edition) for part in least_sections(meeting.join_length, meeting.to_length, 4)]
            lines.append(
                f"- {edge_words(meeting.join, everything)}: {say_length(meeting.join_length, edition)} to "
                f"{say_length(meeting.to_length, edition)}. Its quarters are {quarters[0]} long, those of "
                f"{edge_words(meeting.to, everything)} {quarters[1]}."
            )
    return "\n".join(lines)


def pleated_list(
    pieces: Sequence[Piece], meetings: Sequence[MeetingWork], everything: Mapping[str, Piece], edition: Edition
) -> str:
    """Return each edge that is pleated, to what length, with the lines of its pleats and what is left to ease in."""
    lines = []
    for meeting, drawn in drawn_meetings(pieces, meetings):
        if drawn.gathered:
            continue
        piece = everything[meeting.join.partition(".")[0]]
        number, depth = len(drawn.pleats), say_length(drawn.depth, edition)
        folds = " · ".join(
            f"{place}: {on_ruler(fold, edition)} on {on_ruler(onto, edition)}"
            for place, (fold, onto) in enumerate(drawn.pleats, 1)
        )
        rest = meeting.join_length - meeting.to_length - 2 * number * drawn.depth
        eased = f" Ease in the {say_length(rest, edition)} that are left, evenly." if rest else ""
        pleats = f"{number} pleat{'s' if number != 1 else ''} {depth} deep"
        lines.append(
            f"- {edge_words(meeting.join, everything)}: {say_length(meeting.join_length, edition)} to "
            f"{say_length(meeting.to_length, edition)} in {pleats}. Folds ({edition.unit}, from its "
            f"{piece.said(_BESIDE.get(drawn.side, 'left'))} end, at the raw edge): {folds}.{eased}"
        )
    return "\n".join(lines)
