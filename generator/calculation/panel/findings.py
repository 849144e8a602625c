"""What a person should know about a rounded set of tucks: the set comes in, warnings with their remedy go out."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from generator.calculation.count_rule import say_tucks
from generator.calculation.panel.sample import thickness_doubt
from generator.calculation.panel.tucks import visible_space
from generator.calculation.panel_ends import foot_room
from generator.calculation.worked import TuckSet
from generator.lengths import MILLIMETRE, Edition, say_length, say_range


def tuck_findings(
    tucks: TuckSet,
    edition: Edition,
    thickness: Fraction | None = None,
    *,
    sampled: bool = False,
    shown: Sequence[Fraction] | None = None,
) -> tuple[str, ...]:
    """Return everything to warn of in a rounded set of tucks.

    Parameters
    ----------
    tucks : TuckSet
        A rounded set.
    edition : Edition
        How lengths are said.
    thickness : Fraction, optional
        Thickness of one layer of the cloth, t [in], where it is known.
    sampled : bool
        Whether the take-up was measured on a sample, which settles the doubt about thickness.
    shown : sequence of Fractions, optional
        What shows of each pitch where tucks are pressed [in]; otherwise any may lie on any.

    Returns
    -------
    tuple of str
        Warnings, whole sentences without a stop; empty where there is nothing to say.

    Examples
    --------
    Tucks 1/2 in deep with a pitch of 3/8 in each cover 1/8 in beyond the next stitching.

    >>> from generator.calculation.panel.marks import laid_out, rounded
    >>> from generator.calculation.worked import End
    >>> from generator.lengths import INCH
    >>> half, ends, margins = Fraction(1, 2), (End("raw"), End("raw")), (Fraction(1), Fraction(1))
    >>> blind = rounded(laid_out((half,) * 2, (half * 2,) * 2, (Fraction(3, 8),), ends, margins), INCH)
    >>> tuck_findings(blind, INCH)
    ('tuck 1 is deeper than its pitch by 1/8 in and covers the next stitching: blind tucks; space them wider to show',)

    References
    ----------
    Derived from the sums named in each finding.
    """
    found = [size_finding(tucks, edition), spacing_finding(tucks, edition)]
    found.append(blind_finding(tucks, edition) if shown is None else covered_finding(shown, edition))
    found.append(ring_finding(tucks, edition))
    if thickness is not None and not sampled:
        found.append(thickness_finding(tucks.count, thickness, edition))
    return tuple(text for text in found if text)


def size_finding(tucks: TuckSet, edition: Edition) -> str:
    """Return a warning where the panel comes out more than 1/16 in (1.5 mm) off the size asked for."""
    off = tucks.finished - tucks.asked
    limit = 3 * MILLIMETRE / 2 if edition.unit == "cm" else Fraction(1, 16)
    if abs(off) <= limit:
        return ""
    return (
        f"the panel finishes {say_length(tucks.finished, edition)} wide, {say_length(abs(off), edition)} "
        f"{'more' if off > 0 else 'less'} than asked for; cut what it is sewn to by the panel, or change the spacing"
    )


def spacing_finding(tucks: TuckSet, edition: Edition) -> str:
    """Return a warning where the spacing is not the one asked for, by more than the rounding of its marks."""
    if tucks.count < 2 or not tucks.wish:
        return ""
    narrow, wide = min(tucks.spacings), max(tucks.spacings)
    if narrow == wide == tucks.wish or (narrow != wide and narrow <= tucks.wish <= wide):
        return ""
    used = say_range(narrow, wide, edition)
    if narrow != wide:
        used = f"{used} (marks on the ruler, so not all alike)"
    return f"the spacing is {used}, not {say_length(tucks.wish, edition)} as asked for, so that the size comes out"


def blind_finding(tucks: TuckSet, edition: Edition) -> str:
    """Return a warning where a tuck that lies flat covers the next one's stitching."""
    shows = [
        (visible_space(pitch, max(tucks.depths[place], tucks.depths[place + 1])), place)
        for place, pitch in enumerate(tucks.pitches)
    ]
    least, place = min(shows, default=(Fraction(0), 0))
    if least >= 0:
        return ""
    number = place + 1 if tucks.depths[place] >= tucks.depths[place + 1] else place + 2
    return (
        f"tuck {number} is deeper than its pitch by {say_length(-least, edition)} and covers the next stitching: "
        "blind tucks; space them wider to show"
    )


def covered_finding(shown: Sequence[Fraction], edition: Edition) -> str:
    """Return a warning where pressed tucks cover the next stitching or each other's folds.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> covered_finding((Fraction(1, 4), Fraction(-1, 8)), INCH)[:60]
    'between tucks 2 and 3 nothing shows: as they are pressed, cl'
    """
    least, place = min(((space, place) for place, space in enumerate(shown, 1)), default=(Fraction(0), 0))
    if least >= 0:
        return ""
    return (
        f"between tucks {place} and {place + 1} nothing shows: as they are pressed, cloth lies on cloth there by "
        f"{say_length(-least, edition)}; space them wider to show"
    )


def ring_finding(tucks: TuckSet, edition: Edition) -> str:
    """Return a warning where the closing seam of a ring leaves the presser foot no room beside a tuck."""
    room = min(tucks.left_margin, tucks.right_margin)
    if not tucks.ring or room >= foot_room(edition):
        return ""
    return (
        f"the closing seam lies {say_length(room, edition)} from the nearest tuck, less than the "
        f"{say_length(foot_room(edition), edition)} that the presser foot needs; close the ring before the first and "
        "the last tuck are stitched"
    )


def thickness_finding(count: int, thickness: Fraction, edition: Edition) -> str:
    """Return a warning where the cloth's thickness could put a row of tucks off by more than 1/8 in (3 mm).

    Examples
    --------
    20 tucks in cloth 1/50 in thick: up to 0.8 in narrower or 0.12 in wider, as the ruler says 13/16 and 1/8 in.

    >>> from generator.lengths import INCH
    >>> print(thickness_finding(20, Fraction(1, 50), INCH))
    cloth of this thickness could make 20 tucks up to 13/16 in narrower or 1/8 in wider; sew a sample and measure it
    """
    least, most = thickness_doubt(count, thickness)
    if most <= edition.wish_step:
        return ""
    off = f"{say_length(most, edition)} narrower"
    if -least >= edition.mark:
        off += f" or {say_length(-least, edition)} wider"
    return f"cloth of this thickness could make {say_tucks(count)} up to {off}; sew a sample and measure it"
