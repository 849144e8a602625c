"""Laying out and rounding: properties over random panels, with the cloth folded ply by ply as the second route."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from ply_by_ply import worked_forwards
from tuck_panels import even_panel, inches, seam

from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.panel_ends import first_mark
from generator.calculation.worked import End, TuckSet
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, Edition, coarsest_grid, on_step

KINDS = ("seam", "hem", "caught hem", "bound", "turnover", "fold", "selvage", "raw")


def lengths(least: str, most: str) -> st.SearchStrategy[Fraction]:
    """Return lengths in steps that no ruler has: 1/320 and 1/254 in."""
    return st.builds(
        lambda length, step: inches(least) + length * step % (inches(most) - inches(least)),
        st.integers(0, 10_000),
        st.sampled_from([Fraction(1, 320), Fraction(1, 254), Fraction(1, 16)]),
    )


@st.composite
def ends(draw: st.DrawFn) -> End:
    kind = draw(st.sampled_from(KINDS))
    first = draw(lengths("1/8", "1")) if kind in ("seam", "hem", "bound", "turnover") else Fraction(0)
    return End(kind, first, draw(lengths("1/8", "2")) if kind == "hem" else Fraction(0))


@st.composite
def panels(draw: st.DrawFn, most: int) -> TuckSet:
    count = draw(st.integers(0, most))
    depths = [draw(lengths("1/8", "2")) for _ in range(min(count, 3))]
    depths = (depths * count)[:count]
    thick = draw(st.sampled_from([Fraction(0), Fraction(1, 160), Fraction(-1, 50)]))
    gaps = [draw(lengths("1/8", "3")) for _ in range(min(count, 2))]
    pitches = (gaps * count)[: max(count - 1, 0)]
    margins = (draw(lengths("1/4", "3")), draw(lengths("1/4", "3")))
    both = (draw(ends()), draw(ends()))
    if not count:
        both = tuple(End("seam", Fraction(1, 2)) if end.kind == "caught hem" else end for end in both)
    return laid_out(depths, [2 * depth + thick for depth in depths], pitches, both, margins)


def keeps_its_sums(exact: TuckSet, edition: Edition) -> None:
    """Assert everything that rounding promises."""
    printed, step = rounded(exact, edition), edition.mark
    assert worked_forwards(printed) == (printed.finished, printed.stitching)
    assert abs(printed.finished - exact.finished) <= step / 2
    assert printed.depths == exact.depths
    assert all(on_step(length, step) for length in (*printed.marks, printed.cut))
    slack = [step / 2] * printed.count
    if printed.count and exact.left.kind == "caught hem":
        slack[0] = step
        assert on_step(printed.marks[0], 2 * step)
    near = zip(printed.marks, exact.marks, slack, strict=True)
    assert all(abs(mark - true) <= play for mark, true, play in near)
    assert printed.cut == printed.finished + printed.take_up + printed.left_allowance + printed.right_allowance
    if printed.count:
        far = first_mark(exact.right, printed.right_margin, printed.take_ups[-1])
        near_end = first_mark(exact.left, printed.left_margin, printed.take_ups[0])
        assert (printed.marks[0], printed.cut - printed.marks[-1]) == (near_end, far)
        place = coarsest_grid(printed.marks, edition)
        assert place is not None
        assert printed.grid == edition.grids[place]


@settings(max_examples=250, deadline=None)
@given(panels(9), st.sampled_from([INCH, METRIC]))
def test_folding_at_the_printed_marks_gives_the_printed_size(exact: TuckSet, edition: Edition) -> None:
    keeps_its_sums(exact, edition)


@settings(max_examples=40, deadline=None)
@given(panels(300), st.sampled_from([INCH, METRIC]))
def test_hundreds_of_tucks_fold_up_to_the_printed_size(exact: TuckSet, edition: Edition) -> None:
    keeps_its_sums(exact, edition)


@settings(max_examples=120, deadline=None)
@given(panels(9))
def test_the_exact_layout_folds_up_to_itself(exact: TuckSet) -> None:
    assert worked_forwards(exact) == (exact.finished, exact.stitching)


@settings(max_examples=120, deadline=None)
@given(panels(9))
def test_the_cloth_laid_ply_by_ply_is_as_long_as_the_cut(exact: TuckSet) -> None:
    # Unfolded from left to right: what goes under, what shows, down and up every tuck, what goes under.
    under = [_goes_under(exact.left, exact, 0), _goes_under(exact.right, exact, -1)]
    plies = [under[0], exact.left_margin]
    shown = [*exact.pitches, exact.right_margin]
    marks = []
    for take_up, after in zip(exact.take_ups, shown, strict=True) if exact.count else ():
        plies.append(take_up / 2)
        marks.append(sum(plies))
        plies += [take_up / 2, after]
    plies.append(under[1] if exact.count else exact.right_margin + under[1])
    assert sum(plies) == exact.cut
    assert tuple(marks) == exact.marks


def _goes_under(end: End, tucks: TuckSet, place: int) -> Fraction:
    """Return the turned-under cloth: the raw edge of a caught hem reaches from the edge to the fold of its tuck."""
    if end.kind == "caught hem":
        margin = tucks.left_margin if place == 0 else tucks.right_margin
        return margin + tucks.take_ups[place] / 2
    return {"seam": end.first, "turnover": end.first, "hem": end.first + end.second}.get(end.kind, Fraction(0))


def test_rounding_what_lies_on_the_ruler_changes_nothing() -> None:
    exact = even_panel(17, "3/8", "3/4", (seam(), seam()), ("3/4", "3/4"))
    assert rounded(exact, INCH) == replace(exact, grid=inches("1/8"))


def test_errors_of_rounding_do_not_add_up() -> None:
    # A pitch of 1/3 puts the marks at 1 + k x 5/6; the hundredth lies at 1 + 99 x 5/6 = 83 1/2 exactly.
    exact = even_panel(100, "1/4", "1/3", (End("raw"), End("raw")), ("3/4", "3/4"))
    assert rounded(exact, INCH).marks[99] == inches("83 1/2")


REFUSALS = {
    "every tuck has one depth and one take-up, and between two tucks there is one pitch": lambda: laid_out(
        [inches("1/4")], [], [], (seam(), seam()), (inches("1"), inches("1"))
    ),
    "a caught hem 1/4 in deep is not deeper than the tuck of 1/4 in that holds it: widen the margin": lambda: (
        even_panel(2, "1/4", "1", (End("caught hem"), seam()), ("0", "1"))
    ),
    "two fold marks fall on one division of the ruler; space the tucks wider": lambda: rounded(
        laid_out(
            [inches("1/64")] * 2, [inches("1/64")] * 2, [inches("0.001")], (seam(), seam()), (inches("1"), inches("1"))
        ),
        INCH,
    ),
    "a caught hem needs a tuck to hold it; write 'hem' or 'seam' for a plain panel": lambda: even_panel(
        0, "1/4", "1", (End("caught hem"), seam()), ("1", "1")
    ),
    "the outermost tuck would be stitched beyond the edge of the panel": lambda: rounded(
        laid_out([inches("1/4")], [inches("17/32")], [], (End("raw"), End("raw")), (Fraction(0), inches("1"))), INCH
    ),
    "tuck 2 needs cloth that is already folded": lambda: worked_forwards(
        replace(even_panel(2, "1/4", "1/2", (seam(), seam()), ("1", "1")), marks=(inches("1 3/4"), inches("2")))
    ),
    "the last tuck needs cloth that lies beyond the finished edge": lambda: worked_forwards(
        replace(even_panel(1, "1/4", "1/2", (seam(), seam()), ("1", "1")), cut=inches("2"))
    ),
}


@pytest.mark.parametrize("text", REFUSALS)
def test_marks_that_cannot_be_are_refused(text: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        REFUSALS[text]()
    assert str(refusal.value) == text


def test_a_plain_panel_has_half_its_width_on_either_side() -> None:
    # 5 1/32 in and two seams: 6 1/32, between two marks the upper one, 6 1/16; 5 1/16 finished.
    plain = rounded(even_panel(0, "1/4", "1", (seam(), seam()), ("2", "3 1/32")), INCH)
    assert (plain.finished, plain.left_margin, plain.right_margin) == (
        inches("5 1/16"),
        inches("2 17/32"),
        inches("2 17/32"),
    )
    assert (plain.grid, plain.wish) == (1, 0)


def test_two_tucks_wish_for_the_spacing_that_they_have() -> None:
    assert even_panel(2, "1/4", "1", (seam(), seam()), ("1", "1")).wish == inches("1 1/2")


def test_a_tuck_may_be_stitched_at_the_very_edge() -> None:
    on_edge = rounded(even_panel(2, "1/4", "1", (End("raw"), End("raw")), ("0", "0")), INCH)
    assert (on_edge.left_margin, on_edge.right_margin, on_edge.finished) == (0, 0, 1)


@pytest.mark.parametrize("ends", [(End("caught hem"), End("raw")), (End("raw"), End("caught hem"))])
def test_a_hem_that_rounding_makes_too_shallow_is_refused(ends: tuple[End, End]) -> None:
    # Margin 1/128: 1/4 + 1/128 deep and so held by its tuck; on the ruler 1/4, as deep as the tuck.
    tiny = tuple("1/128" if end.kind == "caught hem" else "1" for end in ends)
    exact = even_panel(2, "1/4", "1", ends, (tiny[0], tiny[1]))
    with pytest.raises(
        CalculationError, match=r"^a caught hem 1/4 in deep is not deeper than the tuck of 1/4 in that holds it"
    ):
        rounded(exact, INCH)
