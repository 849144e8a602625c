"""What is told about a piece beside its picture: a worked piece comes in, its number, sizes and caption go out."""

from __future__ import annotations

from generator.calculation.worked_piece import Piece
from generator.calculation.worksheet.lists import each_length, length_word
from generator.drawing.outlines import finished_size_of, size_of
from generator.drawing.piece_marks import drawn_up_words
from generator.lengths import Edition, say_length


def piece_title(piece: Piece) -> str:
    """Return the name of a piece and how many to cut, of a long strip how many lengths."""
    lengths = f" {length_word(piece.lengths)}" if piece.lengths is not None else ""
    return f"{piece.label}: cut {piece.quantity * sum(cut.number for cut in piece.cuts)}{lengths}"


def cut_words(piece: Piece, edition: Edition) -> str:
    """Return the cut size of a piece, of unlike parts each."""
    return " and ".join(dict.fromkeys(size_of(part, edition) for part in piece.parts))


def size_words(piece: Piece, edition: Edition) -> str:
    """Return the sizes of a piece as cut and as finished, and how it comes to be that long where it is joined."""
    later = " Measure the sewn panel first." if piece.after_panel else ""
    cuts = [size_of(part, edition) for part in piece.parts]
    unlike = len(set(cuts)) > 1
    if unlike:
        told = "; ".join(f"{part.name}: cut {cut}" for part, cut in zip(piece.parts, cuts, strict=True))
    else:
        told = f"{cuts[0]} when joined" if piece.lengths is not None else f"cut {cuts[0]}"
    finished = " and ".join(dict.fromkeys(finished_size_of(part, edition) for part in piece.parts))
    told = f"{told}; {'each ' if unlike else ''}{finished} when finished."
    return f"{told}{_joined_words(piece, edition)}{drawn_up_words(piece, edition)}{later}"


def _joined_words(piece: Piece, edition: Edition) -> str:
    """Return from which parts a strip is joined, empty for a piece cut as it is."""
    if piece.pieced is not None:
        sides = " by ".join(say_length(side, edition) for side in (piece.pieced.long, piece.pieced.short))
        return f" Cut it on the bias, from a rectangle of {sides}, in {piece.pieced.strips} strips."
    if piece.square:
        return f" Cut it on the bias, from a square of {say_length(piece.square, edition)}."
    if piece.lengths is None:
        return ""
    lengths = piece.lengths
    seams = "slanting seams" if lengths.slanting else f"seams of {say_length(lengths.allowance, edition)}"
    along = say_length(lengths.along, edition)
    return f" Join it from {each_length(lengths, edition)} by {along} with {seams}."


def caption_words(piece: Piece) -> str:
    """Return what each sort of line means, of those that the piece has."""
    made = piece.made
    hems = any(edge.end.kind == "hem" for part in piece.parts for edge in part.edges.values())
    folds = hems or made.folds or made.pleats
    return "".join(
        (
            "Solid line: cut here. Dots: the finished edge.",
            " Long dashes: a fold." if folds else "",
            " Short dashes: gathering threads." if made.gathered else "",
            "" if piece.grain == "either" else " The arrow lies with the selvage.",
        )
    )
