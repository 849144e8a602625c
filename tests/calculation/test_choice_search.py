"""The chosen plan beside a plain search over all counts, and the limits of every plan over random wishes."""

from __future__ import annotations

from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st
from ply_by_ply import worked_forwards
from tuck_panels import inches, seam

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.choice import TuckWish, choice_cost, choose_tucks, ranked_choices
from generator.calculation.worked import End
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC, MILLIMETRE, Edition, on_step, read_length


def always_out(_count: int) -> tuple[str, str]:
    return ("out", "out")


def cheapest_by_search(wish: TuckWish) -> tuple[Fraction, int] | None:
    """Search every count in whole sixteenths, by another way of counting: the cost and the count of the best."""
    sixteenth = [int(16 * length) for length in (wish.finished, wish.depth, wish.spacing, *wish.left_margin)]
    finished, depth, spacing, fewest, most = sixteenth
    fewest = max(fewest, depth + 2 if wish.lies else 6)
    found = []
    for count in range(1, 400):
        left_over = finished - (count - 1) * (spacing - 2 * depth)
        if left_over % 2 or not 2 * fewest <= left_over <= 2 * most or count % wish.rule.multiple:
            continue
        first = 8 + left_over // 2 + depth
        marks = [first + place * spacing for place in range(count)]
        cost = next(c for c, grid in enumerate((16, 8, 4, 2, 1)) if all(mark % grid == 0 for mark in marks))
        middle = sum(sixteenth[3:])
        found.append((cost, abs(left_over - middle), count))
    best = min(found, default=None)
    return (Fraction(best[0]), best[2]) if best else None


@st.composite
def wishes(draw: st.DrawFn) -> TuckWish:
    depth = Fraction(draw(st.integers(2, 12)), 16)
    spacing = 2 * depth + Fraction(draw(st.integers(1, 16)), 8)
    least = Fraction(draw(st.integers(0, 8)), 8)
    bounds = (least, least + Fraction(draw(st.integers(0, 16)), 8))
    return TuckWish(
        Fraction(draw(st.integers(20, 160)), 4),
        depth,
        spacing,
        (seam(), seam()),
        bounds,
        bounds,
        rule=CountRule(draw(st.sampled_from([1, 2, 3, 4]))),
        lies=draw(st.sampled_from([None, always_out])),
    )


@settings(max_examples=300, deadline=None)
@given(wishes())
def test_no_count_is_cheaper_than_the_chosen_one(wish: TuckWish) -> None:
    best = cheapest_by_search(wish)
    if best is None:
        try:
            tucks = choose_tucks(wish, INCH)
        except CalculationError:
            return
        assert tucks.spacings
        assert tucks.spacings[0] != wish.spacing
        return
    tucks = choose_tucks(wish, INCH)
    assert (choice_cost(tucks, INCH), tucks.count) == best


@st.composite
def rough_wishes(draw: st.DrawFn) -> tuple[TuckWish, Edition]:
    """Draw wishes whose lengths are on no ruler, with any ends."""
    edition = draw(st.sampled_from([INCH, METRIC]))
    unit = inches("1/8") if edition is INCH else 3 * MILLIMETRE
    depth = draw(st.integers(1, 8)) * edition.mark * 2
    widths = st.builds(lambda steps: steps * unit / 3, st.integers(1, 12))
    kinds = ("seam", "hem", "caught hem", "bound", "turnover", "fold", "selvage", "raw")
    both = [End(draw(st.sampled_from(kinds)), draw(widths), draw(widths)) for _ in range(2)]
    both = [end if end.kind == "hem" else End(end.kind, end.first) for end in both]
    least = draw(widths)
    bounds = (least, least + draw(widths) * 3)
    wish = TuckWish(
        draw(st.integers(10, 400)) * unit * Fraction(2, 3),
        depth,
        2 * depth + draw(widths),
        (both[0], both[1]),
        bounds,
        bounds,
        gives=draw(st.sampled_from(["margin", "spacing", "depth"])),
        take_up=draw(st.sampled_from([None, 2 * depth - Fraction(1, 160)])),
        lies=draw(st.sampled_from([None, always_out])),
        facing=draw(st.booleans()),
    )
    return wish, edition


@settings(max_examples=100, deadline=None)
@given(rough_wishes())
def test_every_choice_is_on_the_ruler_and_keeps_its_limits(asked: tuple[TuckWish, Edition]) -> None:
    wish, edition = asked
    try:
        choices = ranked_choices(wish, edition, 4)
    except CalculationError:
        return
    assert list(choices) == sorted(choices, key=lambda choice: choice.cost)
    for choice in choices:
        tucks = choice.tucks
        assert worked_forwards(tucks) == (tucks.finished, tucks.stitching)
        assert abs(tucks.finished - tucks.asked) <= edition.mark / 2
        assert all(on_step(mark, edition.mark) for mark in tucks.marks)
        assert all(pitch > 0 for pitch in tucks.pitches)
        for margin in (tucks.left_margin, tucks.right_margin):
            assert wish.left_margin[0] - edition.mark < margin < wish.left_margin[1] + edition.mark
            assert margin >= (tucks.depths[0] if wish.lies else read_length("3/8 in" if edition is INCH else "1 cm"))


@st.composite
def rings(draw: st.DrawFn) -> TuckWish:
    depth = Fraction(draw(st.integers(1, 6)), 8)
    spacing = 2 * depth + Fraction(draw(st.integers(2, 16)), 8)
    bounds = (Fraction(0), Fraction(0))
    return TuckWish(
        Fraction(draw(st.integers(40, 400)), 8),
        depth,
        spacing,
        (seam(), seam()),
        bounds,
        bounds,
        rule=CountRule(draw(st.sampled_from([1, 2, 4]))),
        ring=True,
    )


@settings(max_examples=100, deadline=None)
@given(rings())
def test_a_ring_has_as_many_pitches_as_tucks(wish: TuckWish) -> None:
    for choice in ranked_choices(wish, INCH, 3):
        tucks = choice.tucks
        across_seam = tucks.left_margin + tucks.right_margin
        even = tucks.finished / tucks.count
        assert tucks.ring
        assert tucks.count % wish.rule.multiple == 0
        assert sum(tucks.pitches) + across_seam == tucks.finished == wish.finished
        assert all(abs(pitch - even) <= inches("1/16") for pitch in (*tucks.pitches, across_seam))
