"""Sewn tucks for the tests of rows: a count, depths and a pitch come in, a panel's tucks go out, by their formulas."""

from __future__ import annotations

from fractions import Fraction

from generator.calculation.worked import End, TuckSet, Turn

SEAM = End("seam", Fraction(1, 2))
SIGNS = {"<": Turn.LEFT, ">": Turn.RIGHT, ".": Turn.UPRIGHT}


def signed(text: str) -> tuple[Turn, ...]:
    return tuple(SIGNS[sign] for sign in text)


def written(turns: tuple[Turn, ...]) -> str:
    return "".join(turn.value for turn in turns)


def uneven_tucks(
    depths: tuple[Fraction, ...], pitches: tuple[Fraction, ...], margin: Fraction = Fraction(1), ring: bool = False
) -> TuckSet:
    """Tucks of any depths; on a ring the margin counts once at either end of the round."""
    stitching = [margin]
    for pitch in pitches:
        stitching.append(stitching[-1] + pitch)
    marks = [margin + depths[0]]
    for before, after, pitch in zip(depths, depths[1:], pitches, strict=False):
        marks.append(marks[-1] + before + pitch + after)
    allowance = Fraction(0) if ring else Fraction(1, 2)
    finished = stitching[-1] + margin
    return TuckSet(
        depths=depths,
        take_ups=tuple(2 * depth for depth in depths),
        marks=tuple(mark + allowance for mark in marks),
        stitching=tuple(stitching),
        left_margin=margin,
        right_margin=margin,
        left=SEAM,
        right=SEAM,
        left_allowance=allowance,
        right_allowance=allowance,
        cut=finished + 2 * sum(depths) + 2 * allowance,
        finished=finished,
        asked=finished,
        wish=pitches[0] + 2 * depths[0] if pitches else Fraction(0),
        grid=Fraction(1, 16),
        ring=ring,
    )


def even_tucks(count: int, depth: Fraction, pitch: Fraction, ring: bool = False) -> TuckSet:
    """Equal tucks; on a ring the two margins together are one pitch."""
    margin = pitch / 2 if ring else Fraction(1)
    return uneven_tucks((depth,) * count, (pitch,) * (count - 1), margin, ring)
