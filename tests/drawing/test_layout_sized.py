"""Layouts at a size that is given: one picture, everything told, nothing across anything else."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import Phase, given, settings
from hypothesis import strategies as st
from layouts import used
from panels import worksheet_of

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem, Match
from generator.drawing.layout_sized import draw_sized_layout, heights_of_layout, sketched
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style
from generator.lengths import INCH

LARGE = Style(small=16.0, text=17.0, strong=20.0)
CUSHION = [
    CutItem("front", "front", Fraction(109, 4), Fraction(31, 2), 1),
    CutItem("back", "back", Fraction(25, 2), Fraction(17), 2, later=True),
    CutItem("tie", "tie", Fraction(3, 2), Fraction(9), 5),
]
DROPS = [CutItem("curtain", "curtain", Fraction(40), Fraction(189, 2), 9, match=Match(Fraction(27)))]

sizes = st.integers(1, 160).map(lambda eighths: Fraction(eighths, 4))
some_items = st.lists(
    st.tuples(st.sampled_from(["front", "left back", "frill"]), sizes, sizes, st.integers(1, 9), st.booleans()),
    min_size=1,
    max_size=5,
).map(
    lambda items: [
        CutItem(f"{name} {place}", f"{name} {place}", across, along, number, later=later)
        for place, (name, across, along, number, later) in enumerate(items)
    ]
)


def worksheet_for(items):
    layout = cutting_layout(items, Fraction(44), looks=20_000)
    return replace(worksheet_of(), cloths={"face": used(layout)})


def words_at(worksheet, style, width, height):
    return " ".join(label.words for label in sketched(worksheet, "face", style, DrawnSize(width, height)).labels)


@pytest.mark.parametrize("items", [CUSHION, DROPS], ids=["cushion", "drops"])
@pytest.mark.parametrize(("style", "width"), [(Style(), 93.0), (LARGE, 180.0)], ids=["9 pt", "16 pt"])
def test_every_cut_and_every_piece_is_told_at_every_height(items, style, width):
    worksheet = worksheet_for(items)
    found = heights_of_layout(worksheet, "face", style, width)
    assert found.least < found.natural <= found.greatest
    for height in (found.least, found.natural, found.greatest):
        canvas = sketched(worksheet, "face", style, DrawnSize(width, height))
        assert canvas.crossings() == ()
        assert min(label.size for label in canvas.labels) >= style.small
        told = " ".join(label.words for label in canvas.labels)
        assert all(item.label in told for item in items)
        assert "44 in wide" in told


def test_the_cloth_is_as_large_as_the_height_allows():
    worksheet = worksheet_for(CUSHION)
    found = heights_of_layout(worksheet, "face", Style(), 93.0)

    def longest(height):
        canvas = sketched(worksheet, "face", Style(), DrawnSize(93.0, height))
        return max(abs(end[0] - start[0]) for start, end in canvas.segments)

    assert longest(found.least) < longest(found.greatest)


def test_strips_that_match_tell_where_their_drop_ends():
    worksheet = worksheet_for(DROPS)
    found = heights_of_layout(worksheet, "face", Style(), 93.0)
    told = words_at(worksheet, Style(), 93.0, found.natural)
    assert "Strips 1 to 8:" in told
    assert "across at 94 1/2" in told


def test_what_waits_is_told_below_the_cloth():
    worksheet = worksheet_for(CUSHION)
    found = heights_of_layout(worksheet, "face", Style(), 93.0)
    assert "Keep whole" in words_at(worksheet, Style(), 93.0, found.natural)


@settings(deadline=None, max_examples=20, phases=[Phase.explicit, Phase.generate])
@given(some_items)
def test_no_words_cross_and_none_leaves_the_paper(items):
    worksheet = worksheet_for(items)
    found = heights_of_layout(worksheet, "face", Style(), 93.0)
    for height in (found.least, found.natural, found.greatest):
        assert sketched(worksheet, "face", Style(), DrawnSize(93.0, height)).crossings() == ()


def test_the_same_layout_gives_the_same_picture():
    worksheet = worksheet_for(CUSHION)
    first, second = (draw_sized_layout(worksheet, "face", Style(), DrawnSize(93.0, 120.0)) for _ in range(2))
    assert first == second
    assert first.key == "layout face"
    assert first.alt.startswith("Cutting layout on cotton, 44 in wide")
    assert INCH.unit in first.alt
