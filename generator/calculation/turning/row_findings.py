"""What a teacher should know about rows that can be sewn: rows and wish come in, sentences with a remedy go out."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from generator.calculation.turning.draw_in import comfortable_spacing
from generator.calculation.turning.facing import facing_gaps, facing_words
from generator.calculation.turning.intervals import Swing, interval_draw_in, is_tight, panel_swing
from generator.calculation.turning.row_wish import RowWish
from generator.calculation.worked import RowSet, TuckSet
from generator.lengths import Edition, round_up, say_length, say_range


def row_findings(wish: RowWish, rows: RowSet, tucks: TuckSet, edition: Edition) -> tuple[str, ...]:
    """Return the warnings about the rows of a panel, each with what to do.

    Parameters
    ----------
    wish : RowWish
        What was asked for.
    rows : RowSet
        The rows as chosen.
    tucks : TuckSet
        The sewn tucks.
    edition : Edition
        The unit of the sentences.

    Returns
    -------
    tuple[str, ...]
        The warnings; empty where there is nothing to say.

    References
    ----------
    Common practice, no source.
    """
    turned = [row.turns for row in rows.rows]
    between = [panel_swing(one, other, tucks.depths) for one, other in pairwise(turned)]
    found = [
        _tight(wish, between, edition),
        _rippling(between),
        _unlikely_sample(wish, between, edition),
        _opposed("top", rows, panel_swing(rows.top, turned[0], tucks.depths), edition),
        _opposed("bottom", rows, panel_swing(rows.bottom, turned[-1], tucks.depths), edition),
        _trimmed_off(rows, wish, edition),
        _untrimmable(rows, wish),
        _overlapping(rows, tucks, edition),
    ]
    return tuple(text for text in found if text)


def edge_note(wish: RowWish, rows: RowSet, edition: Edition) -> str:
    """Return what to know where a row may end up nearer to an edge than its range allows.

    The first row is planned within the range. How much the length draws in is known within bounds only, so the row may
    end up nearer to the edge; its own range tells how near.

    Parameters
    ----------
    wish : RowWish
        What was asked for.
    rows : RowSet
        The rows as chosen.
    edition : Edition
        The unit of the sentence.

    Returns
    -------
    str
        The sentence; empty where the range is kept whatever the draw-in.

    References
    ----------
    Common practice, no source.
    """
    least, _ = wish.first
    near = min(rows.rows[0].least, wish.finished_along - rows.rows[-1].most)
    if near >= least:
        return ""
    planned, may, asked = (say_length(length, edition) for length in (rows.first, near, least))
    return (
        f"the rows are planned {planned} from the edges, but by how much the length draws in the outer ones may end up "
        f"{may} from them, less than the {asked} asked for; ask for more, or sew a sample and give its draw-in"
    )


def _tight(wish: RowWish, between: list[Swing], edition: Edition) -> str:
    tight = [swings for swings in between if is_tight(wish.spacing, swings)]
    if not tight or wish.measured_draw_in is not None:
        return ""
    hardest = max(tight, key=lambda swings: swings.depth * swings.half_turns)
    better = round_up(comfortable_spacing(hardest.depth, hardest.half_turns), edition.mark)
    apart, deep = say_length(wish.spacing, edition), say_length(hardest.depth, edition)
    return (
        f"rows {apart} apart are close for tucks {deep} deep: "
        f"the length draws in much and unevenly; sew a sample first, or rule them {say_length(better, edition)} apart"
    )


def _rippling(between: list[Swing]) -> str:
    uneven = sum(swings.uneven for swings in between)
    if not uneven:
        return ""
    where = "between the rows" if uneven == len(between) else f"in {uneven} of the {len(between)} intervals"
    return (
        f"{where} some tucks swing over and others lie as they did, so the panel may ripple and draw in less than is "
        "planned; sew a sample, and let the panel settle flat before it is trimmed"
    )


def _unlikely_sample(wish: RowWish, between: list[Swing], edition: Edition) -> str:
    measured = wish.measured_draw_in
    if measured is None or not between:
        return ""
    least = max(interval_draw_in(wish.spacing, swings).least for swings in between)
    if measured >= least:
        return ""
    return (
        f"a draw-in of {say_length(measured, edition)} was measured in an interval and less than "
        f"{say_length(least, edition)} is hardly possible; measure the sample again, from the first row to the last"
    )


def _opposed(name: str, rows: RowSet, swings: Swing, edition: Edition) -> str:
    if not is_tight(rows.first, swings):
        return ""
    needed = round_up(comfortable_spacing(swings.depth, swings.half_turns), edition.mark)
    return (
        f"the {name} edge lays the tucks otherwise than the row {say_length(rows.first, edition)} from it, and "
        f"{say_length(needed, edition)} would be needed to turn them over; hold the edge as the next row, or keep the "
        "first row further from it"
    )


def _trimmed_off(rows: RowSet, wish: RowWish, edition: Edition) -> str:
    if rows.rows[0].least > 0 and rows.rows[-1].most < wish.finished_along:
        return ""
    loss = say_range(rows.draw_in_least, rows.draw_in_most, edition)
    return (
        f"the length draws in by {loss}: with the least of it the outer rows would be trimmed off; keep the first row "
        "further from the edge, or sew a sample and give its draw-in"
    )


def _untrimmable(rows: RowSet, wish: RowWish) -> str:
    names = [
        f"the {name} edge is a {end.kind}"
        for name, end in zip(("top", "bottom"), wish.ends, strict=True)
        if end.kind in ("fold", "selvage")
    ]
    if not names or rows.extra == 0:
        return ""
    return (
        f"{' and '.join(names)} and the panel is trimmed at both ends after the rows are sewn; "
        "finish that edge with a seam or a hem, or choose a plan that does not draw in"
    )


def _overlapping(rows: RowSet, tucks: TuckSet, edition: Edition) -> str:
    least = min(facing_gaps(tucks, [row.turns for row in rows.rows]).values(), default=Fraction(0))
    return f"in a facing pair {facing_words(least, edition)}" if least < 0 else ""
