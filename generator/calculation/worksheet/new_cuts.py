"""The sum for a piece that waits for the sewn panel: pieces come in, sums in words go out.

Each waiting piece is worked anew with the panel's measure some steps off, by the project's own formulas. Where its cut
grows evenly with the measure, the sum says how: 'mine + 1', 'half of mine + 4 1/2'.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.calculation.pieces.cut import Cut
from generator.calculation.worked_piece import Piece
from generator.calculation.worked_project import NewCut
from generator.calculation.worksheet.own_measure import SIDES, works_at
from generator.calculation.worksheet.scope import Scope
from generator.lengths import Edition, on_ruler

_SHARES = {
    Fraction(1): "",
    Fraction(1, 2): "half of ",
    Fraction(2): "twice ",
    Fraction(1, 4): "a quarter of ",
    Fraction(4): "4 times ",
    Fraction(-1): "",
    Fraction(-2): "twice ",
}
_MINUS = "\N{MINUS SIGN}"


@dataclass(frozen=True, slots=True)
class _Moved:
    """The waiting pieces as they follow one measure of a panel, by the measure it came to [in]."""

    panel: Piece
    side: str
    planned: Fraction
    works: Mapping[Fraction, tuple[Piece, ...]]


def new_cuts(scope: Scope, pieces: Mapping[str, Piece]) -> tuple[NewCut, ...]:
    """Return how the cut of every waiting piece follows from the panel as sewn, side by side of the piece.

    A side that follows unevenly has no sum in words.
    """
    waiting = [name for name, piece in pieces.items() if piece.after_panel]
    sewn_first = [piece for piece in pieces.values() if piece.panel is not None and not piece.after_panel]
    moved = [_moved(scope, panel, side, waiting) for panel in sewn_first for side in SIDES if waiting]
    return tuple(cut for place, name in enumerate(waiting) for cut in _cuts(pieces[name], place, moved, scope.edition))


def _moved(scope: Scope, panel: Piece, side: str, waiting: Sequence[str]) -> _Moved:
    planned = scope.sewn.get(f"{panel.name}.{side}", panel.measures[side])
    return _Moved(panel, side, planned, dict(works_at(scope, panel, side, planned, waiting)))


def _cuts(piece: Piece, place: int, moved: Sequence[_Moved], edition: Edition) -> Iterator[NewCut]:
    for number, cut in enumerate(piece.cuts):
        for side in ("across", "along"):
            found = [
                (one, {at: _side(works[place].cuts, number, side) for at, works in one.works.items()}) for one in moved
            ]
            followed = [(one, sums) for one, sums in found if len(set(sums.values())) > 1]
            planned = _side(piece.cuts, number, side)
            yield NewCut(
                piece=piece.label,
                name=cut.name,
                number=cut.number * piece.quantity,
                side=side,
                planned=planned,
                follows=tuple((f"{one.panel.label}, {one.side}", one.planned) for one, _ in followed),
                words=sum_words(planned, [(one.side, one.planned, sums) for one, sums in followed], edition),
            )


def _side(cuts: Sequence[Cut], number: int, side: str) -> Fraction:
    return cuts[number].across if side == "across" else cuts[number].along


def sum_words(
    cut: Fraction, followed: Sequence[tuple[str, Fraction, Mapping[Fraction, Fraction]]], edition: Edition
) -> str:
    """Return the sum in words by which a cut follows measures of a panel; nothing where it does not grow evenly.

    Parameters
    ----------
    cut : Fraction
        As planned [in].
    followed : sequence of (str, Fraction, mapping of Fraction to Fraction)
        The side of the panel, its planned measure, and the cut for each measure it may have come to [in].
    edition : Edition
        How lengths are said; a cut may be off the sum by less than its finest mark.

    Examples
    --------
    A back of 17 in for a panel of 16 in, and of 17 1/8 for 16 1/8, is the measure and 1 in.

    >>> from generator.lengths import INCH
    >>> back = {Fraction(16): Fraction(17), Fraction(129, 8): Fraction(137, 8)}
    >>> sum_words(Fraction(17), [("across", Fraction(16), back)], INCH)
    'mine + 1'
    """
    shares = [_share(cut, planned, sums, edition) for _, planned, sums in followed]
    if not followed or not all(shares):
        return ""
    mine = ["mine"] if len(followed) == 1 else [f"mine {side}" for side, _, _ in followed]
    added = cut - sum(share * planned for share, (_, planned, _) in zip(shares, followed, strict=True))
    plus = [f"{_SHARES[share]}{name}" for share, name in zip(shares, mine, strict=True) if share > 0]
    minus = [f"{_SHARES[share]}{name}" for share, name in zip(shares, mine, strict=True) if share < 0]
    if added:
        (plus if added > 0 else minus).append(on_ruler(abs(added), edition))
    return f" {_MINUS} ".join((" + ".join(plus), *minus))


def _share(cut: Fraction, planned: Fraction, sums: Mapping[Fraction, Fraction], edition: Edition) -> Fraction:
    """Return how much of a measure a cut takes, 0 where that is not the same everywhere."""
    return next(
        (
            share
            for share in _SHARES
            if all(abs(found - cut - share * (at - planned)) < edition.mark for at, found in sums.items())
        ),
        Fraction(0),
    )
