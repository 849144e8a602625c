"""How a check point is put right, in one short line: check points and what can give come in, words go out.

The handout tells it in the row of the check; what to do for each measure that is off stands on the rescue sheet.
"""

from __future__ import annotations

from collections.abc import Iterator

from generator.calculation.panel.correction_words import said_tucks
from generator.calculation.worked import TuckSet
from generator.calculation.worked_checks import CheckPoint, Checks, Leeway
from generator.lengths import Edition, say_length


def check_rule(leeway: Leeway, edition: Edition) -> str:
    """Return by how much a tuck is stitched otherwise where a check is off by two marks of the ruler.

    A tuck takes cloth twice, so half of what is off is shared out, a mark to a tuck. Where no tuck can change unseen,
    there is nothing to share, and the last check says what to do.

    Examples
    --------
    >>> from generator.lengths import INCH
    >>> check_rule(Leeway(()), INCH).split("; ")[1]
    'for each 1/8 in too wide, 1/16 in deeper. Then set the guide back.'
    """
    if leeway.changes and not any(leeway.changes):
        return "Go on, and do as the last line says."
    off, by = say_length(2 * edition.mark, edition), say_length(edition.mark, edition)
    return (
        f"For each {off} too {leeway.narrow} stitch one of the next tucks {by} shallower; "
        f"for each {off} too {leeway.wide}, {by} deeper. Then set the guide back."
    )


def moved_marks(leeway: Leeway) -> str:
    """Return what moving the fold marks wins back."""
    kept = ", but for the last one, towards the hem that its tuck holds" if leeway.hem else ""
    return f"Moving the marks wins nothing back{kept}."


def remedy(tucks: TuckSet, point: CheckPoint, checks: Checks, edition: Edition) -> str:
    """Return how one check point is put right: with which tucks, how far they reach, and what else gives."""
    leeway = checks.leeway
    if point.mark:
        return ". ".join(_before_the_end(tucks, point, leeway, edition))
    return ". ".join(_at_the_end(tucks, leeway, edition))


def _before_the_end(tucks: TuckSet, point: CheckPoint, leeway: Leeway, edition: Edition) -> Iterator[str]:
    able = [number for number, change in enumerate(leeway.changes, 1) if number > point.after and change]
    if not able or not point.absorb:
        yield f"The rest cannot change unseen: do as after tuck {tucks.count}"
        return
    yield f"{said_tucks(able)}: up to {say_length(point.absorb, edition)}"
    if len(able) > 2:
        return
    free = [number for number in range(point.after + 1, tucks.count + 1) if number not in leeway.joined]
    if leeway.leaves_out and free:
        back = max(tucks.take_ups[number - 1] for number in free)
        yield f"Too {leeway.narrow} by more: leave one out, it gives back {say_length(back, edition)}"
    if leeway.hem:
        by = say_length(2 * edition.mark, edition)
        yield f"Or move the last mark {by} towards the far edge for each {say_length(edition.mark, edition)}"
    yield f"More? As after tuck {tucks.count}"


def _at_the_end(tucks: TuckSet, leeway: Leeway, edition: Edition) -> Iterator[str]:
    mark, twice = say_length(edition.mark, edition), say_length(2 * edition.mark, edition)
    if any(leeway.changes):
        yield f"Sew one tuck again for each {twice}: {mark} shallower or deeper"
    if leeway.leaves_out and len(leeway.joined) < tucks.count:
        back = max(take_up for number, take_up in enumerate(tucks.take_ups, 1) if number not in leeway.joined)
        yield f"Too {leeway.narrow}: a whole tuck gives back {say_length(back, edition)}"
    if leeway.lets_out:
        yield f"The allowances give {say_length(leeway.lets_out, edition)}"
    if max(leeway.trims):
        yield f"Too {leeway.wide}: {_trimmed(tucks, leeway)}"
    if not (any(leeway.changes) or leeway.leaves_out or leeway.lets_out) and leeway.others == "none":
        yield f"Too {leeway.narrow}: leave it so"
    if leeway.others == "wait":
        yield "Or leave it: what waits is cut to it"
    if leeway.others == "cut":
        yield "Or trim what is sewn to it"


def _trimmed(tucks: TuckSet, leeway: Leeway) -> str:
    if tucks.ring:
        return "a wider closing seam takes it in"
    if not min(leeway.trims):
        return f"trim the {leeway.sides[leeway.trims.index(max(leeway.trims))]} edge"
    return f"trim the {'sides' if leeway.sides == ('left', 'right') else 'ends'}"
