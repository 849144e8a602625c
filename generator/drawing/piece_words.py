"""What is told about a piece beside its picture: a worked piece comes in, its number, sizes and caption go out."""

from __future__ import annotations

from generator.calculation.worked import Piece
from generator.drawing.piece_marks import FOLDED, drawn_up_words
from generator.drawing.piece_plan import half_across
from generator.lengths import Edition, say_length


def piece_title(piece: Piece) -> str:
    """Return the name of a piece and how many to cut, of a long strip how many lengths."""
    lengths = " lengths" if _is_joined(piece) else ""
    return f"{piece.label}: cut {piece.quantity * piece.parts}{lengths}"


def _is_joined(piece: Piece) -> bool:
    """Whether a piece is joined from lengths, so that its cut size is that of no cloth that is cut."""
    return piece.parts > 1 and piece.kind != "envelope back" and "square" not in piece.measures


def cut_words(piece: Piece, edition: Edition) -> str:
    """Return the cut size of a piece."""
    across, along = (say_length(length, edition) for length in (piece.cut_across, piece.cut_along))
    return f"a circle {across} through" if piece.shape == "circle" else f"{across} across by {along} along"


def size_words(piece: Piece, edition: Edition) -> str:
    """Return the sizes of a piece as cut and as finished, and how it comes to be that long where it is joined."""
    across = half_across(piece) if piece.kind == "envelope back" else piece.finished_across
    finished = [say_length(length, edition) for length in (across, piece.finished_along)]
    if piece.shape == "circle":
        return f"cut {cut_words(piece, edition)}; {finished[0]} through when finished"
    when = "when hemmed" if piece.kind == "envelope back" else "when finished"
    later = " Measure the sewn panel first." if piece.after_panel else ""
    cut = cut_words(piece, edition)
    cut = f"{cut} when joined" if _is_joined(piece) else f"cut {cut}"
    told = f"{cut}; {finished[0]} by {finished[1]} {when}."
    return f"{told}{_joined_words(piece, edition)}{drawn_up_words(piece, edition)}{later}"


def _joined_words(piece: Piece, edition: Edition) -> str:
    """Return from which parts a strip is joined, empty for a piece cut as it is."""
    if "square" in piece.measures:
        return f" Cut it on the bias, from a square of {say_length(piece.measures['square'], edition)}."
    if not _is_joined(piece):
        return ""
    each = f"{say_length(piece.part_across, edition)} by {say_length(piece.part_along, edition)}"
    seams = "slanting seams" if piece.diagonal else f"seams of {say_length(piece.join_allowance, edition)}"
    return f" Join it from {piece.parts} lengths of {each} with {seams}."


def caption_words(piece: Piece) -> str:
    """Return what each sort of line means, of those that the piece has."""
    folds = piece.kind in FOLDED or any(edge.end.kind == "hem" for edge in piece.edges.values())
    return "".join(
        (
            "Solid line: cut here. Dots: the finished edge.",
            " Long dashes: a fold." if folds or piece.kind in ("pleated strip", "envelope back") else "",
            " Short dashes: gathering threads." if piece.kind in ("gathered strip", "gathered end") else "",
            "" if piece.grain == "either" else " The arrow lies with the selvage.",
        )
    )
