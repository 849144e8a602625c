"""Diagrams of cutting layouts: true places, every piece told, words that stand clear."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from layouts import shelves
from panels import worksheet_of

from generator.calculation.cutting.cloth import Buying
from generator.calculation.worked_project import ClothUse
from generator.drawing.layout import PAGE, draw_cutting, draw_layout, sketch_layout
from generator.drawing.layout_plan import HIGH, layout_scale, numbered_strips, plan_layout
from generator.drawing.layout_words import PieceWords
from generator.drawing.style import SMALLEST_TEXT, Style
from generator.lengths import INCH, METRIC, YARD

CUSHION = shelves(44, [("front", Fraction(109, 4), Fraction(31, 2), 1), ("back", Fraction(25, 2), 17, 2)])
SMALL = shelves(
    44,
    [
        ("wrap", 39, 23, 1),
        ("frill", 22, 5, 4),
        ("binding", 44, Fraction(1, 2), 2),
        ("pincushion", 3, 3, 9),
        ("tab", Fraction(3, 4), Fraction(3, 4), 3),
    ],
)


def words_of(layout, edition=INCH):
    return [
        [label.words for label in canvas.labels] for canvas in sketch_layout(layout, edition, Style(), key="layout")
    ]


def test_strips_are_numbered_from_the_cut_end_with_their_pieces_from_the_left_selvage():
    strips = numbered_strips(CUSHION)
    assert [(strip.number, strip.top, strip.bottom) for strip in strips] == [(1, 0, 17), (2, 17, Fraction(65, 2))]
    assert [[piece.label for piece in strip.pieces] for strip in strips] == [["back", "back"], ["front"]]


def test_a_layout_lies_true_to_scale_with_its_whole_width_on_the_paper():
    """44 in on 4 3/4 in of paper: 19/176; 32 1/2 in long come out 3.51 in, well on the page."""
    (part,) = plan_layout(CUSHION)
    assert part.scale == Fraction(19, 176)
    assert (part.wide, part.high) == (Fraction(19, 4), Fraction(65, 2) * Fraction(19, 176))


def test_a_layout_longer_than_the_page_is_broken_between_strips():
    layout = shelves(44, [("back", Fraction(25, 2), 17, 24)])
    parts = plan_layout(layout)
    # 8 strips of 17 in at 3 to 44: 1.16 in of paper each, three to a picture of 4 in
    assert len(parts) == 3
    assert [strip.number for part in parts for strip in part.strips] == list(range(1, 9))
    assert all(part.high <= HIGH for part in parts)
    assert parts[1].top == parts[0].bottom


def test_a_strip_longer_than_the_page_is_drawn_smaller_and_not_broken():
    layout = shelves(54, [("panel", 50, 120, 1)])
    assert layout_scale(layout.width, layout.length, Fraction(120)) == HIGH / 120


def test_every_cut_across_is_numbered_with_its_distance_from_the_cut_end():
    (words,) = words_of(CUSHION)
    assert [told for told in words if told[:2] in ("1:", "2:")] == ["1: 17", "2: 32 1/2"]


def test_every_piece_is_told_with_its_cut_size_in_it_or_beside_it():
    (words,) = words_of(SMALL)
    told = " ".join(words)
    for expected in (
        "wrap, 39 by 23 in",
        "frill, 22 by 5 in",
        "pincushion, 3 by 3 in, 9 times",
        "tab, 3/4 by 3/4 in, 3 times",
        "binding, 44 by 1/2 in",
    ):
        assert expected in told
    assert words.count("a") == 9


def test_the_width_and_the_length_are_dimensioned():
    (words,) = words_of(CUSHION)
    assert {"44 in wide", "32 1/2 in long", "selvage"} <= set(words)


def test_the_words_of_a_piece_are_turned_where_it_is_narrow_and_left_out_where_it_is_tiny():
    words, style = PieceWords("strap", "3 by 60 in"), Style()
    assert words.lines(2.0, 1.0, style) == (("strap, 3 by 60 in",), False)
    assert words.lines(0.3, 2.0, style) == (("strap, 3 by 60 in",), True)
    assert words.lines(0.7, 0.4, style) == (("strap", "3 by 60 in"), False)
    assert words.lines(0.1, 0.1, style) == ((), False)


@pytest.mark.parametrize(
    "layout", [CUSHION, SMALL, shelves(5, [("sample", 4, 5, 2)]), shelves(60, [("tiny", 1, 1, 1)])]
)
def test_no_words_cross_and_the_picture_fits_the_page(layout):
    for style in (Style(), Style(small=12.0, text=14.0, strong=16.0)):
        for canvas in sketch_layout(layout, INCH, style, key="layout"):
            assert canvas.crossings() == ()
            assert canvas.width <= PAGE
            assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT


sizes = st.integers(1, 160).map(lambda eighths: Fraction(eighths, 4))


@settings(deadline=None, max_examples=40)
@given(
    st.lists(
        st.tuples(st.sampled_from(["front", "left back", "frill"]), sizes, sizes, st.integers(1, 9)),
        min_size=1,
        max_size=5,
    )
)
def test_no_words_cross_in_any_layout(items):
    for canvas in sketch_layout(shelves(44, items), METRIC, Style(), key="layout"):
        assert canvas.crossings() == ()


def test_the_longer_text_tells_the_layout_cut_by_cut():
    picture = draw_cutting(CUSHION, "cotton", INCH, Style(), key="layout face")[0]
    assert picture.text == (
        "Cut 1 at 17 in from the cut end: back 12 1/2 by 17 in, back 12 1/2 by 17 in.\n"
        "Cut 2 at 32 1/2 in from the cut end: front 27 1/4 by 15 1/2 in."
    )
    assert picture.alt == "Cutting layout on cotton, 44 in wide, 32 1/2 in long: 3 pieces in 2 strips."


def test_the_layout_of_a_project_cloth_is_drawn_and_gives_the_same_bytes():
    use = ClothUse("face", "plain cotton", Fraction(44), CUSHION, Fraction(36), "1 yd", Buying(YARD / 8))
    worksheet = replace(worksheet_of(), cloths={"face": use})
    first, second = (draw_layout(worksheet, "face", Style()) for _ in range(2))
    assert first == second
    assert first[0].key == "layout face"
    assert "plain cotton" in first[0].alt
