"""Diagrams of cutting layouts: true places, every piece told, words that stand clear."""

from dataclasses import replace
from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from layouts import shelves, used
from panels import worksheet_of

from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem
from generator.drawing.layout import PAGE, draw_cutting, draw_layout, sketch_layout
from generator.drawing.layout_plan import HIGH, Patch, layout_scale, plan_layout
from generator.drawing.layout_words import PieceWords
from generator.drawing.style import SMALLEST_TEXT, Style
from generator.lengths import INCH, METRIC

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
        [label.words for label in canvas.labels]
        for canvas in sketch_layout(used(layout), edition, Style(), key="layout")
    ]


def laid_out(*items, width=44):
    return cutting_layout(items, Fraction(width))


def test_a_layout_lies_true_to_scale_with_its_whole_width_on_the_paper():
    """44 in on 4 3/4 in of paper: 19/176; 32 1/2 in long come out 3.51 in, well on the page."""
    (part,) = plan_layout(CUSHION)
    assert part.scale == Fraction(19, 176)
    assert (part.wide, part.high) == (Fraction(19, 4), Fraction(65, 2) * Fraction(19, 176))
    assert [(strip.top, strip.bottom) for strip in part.strips] == [(0, 17), (17, Fraction(65, 2))]


def test_strips_that_are_alike_are_drawn_once():
    (part,) = plan_layout(shelves(44, [("back", Fraction(25, 2), 17, 24)]))
    # 8 strips of three backs
    (strip,) = part.strips
    assert strip.ordered.numbers == tuple(range(1, 9))
    assert [one.bottom for one in strip.ordered.strips] == [17 * number for number in range(1, 9)]
    (words,) = words_of(shelves(44, [("back", Fraction(25, 2), 17, 24)]))
    assert "1 to 8" in words
    assert "All alike, cut across at 17, 34, 51, 68, 85, 102, 119 and 136" in " ".join(words)


def test_a_layout_longer_than_the_page_is_broken_between_strips():
    layout = shelves(44, [(f"back {number}", 40, 30 - number, 1) for number in range(8)])
    parts = plan_layout(layout)
    # Strips of 30, 29 ... 23 at 3 to 44: 2.05 in of paper and a little less each, two at most on 4 in.
    assert [number for part in parts for strip in part.strips for number in strip.ordered.numbers] == list(range(1, 9))
    assert len(parts) > 1
    assert all(part.high <= HIGH for part in parts)
    assert [part.begins for part in parts[:2]] == [
        "the straightened end",
        f"cut {parts[0].strips[-1].ordered.numbers[-1]}",
    ]


def test_a_strip_longer_than_the_page_is_drawn_smaller_and_not_broken():
    layout = shelves(54, [("panel", 50, 120, 1)])
    assert layout_scale(layout.width, layout.length, Fraction(120)) == HIGH / 120


def test_every_cut_across_is_numbered_with_its_distance_from_the_straightened_end():
    (words,) = words_of(CUSHION)
    assert [told for told in words if told[:2] in ("1:", "2:")] == ["1: 17", "2: 32 1/2"]


def test_every_cut_down_is_named_with_its_distance_from_the_left_selvage():
    (words,) = words_of(CUSHION)
    # Backs of 12 1/2 side by side, then a front of 27 1/4.
    assert [told for told in words if told[:2] in ("1a", "1b", "2a")] == ["1a 12 1/2", "1b 25", "2a 27 1/4"]


def test_cuts_down_a_low_strip_are_told_beside_it():
    (words,) = words_of(shelves(44, [("tie", 10, 2, 3), ("front", 40, 20, 1)]))
    # Cut 1 is below the front; the strip of ties is 2 in, 0.2 in of paper.
    assert "Cut it down at 10 (2a), 20 (2b) and 30 (2c) from the left" in " ".join(words)


def test_a_stack_is_cut_across_from_its_top_and_what_is_narrower_is_trimmed():
    cover = CutItem("cover", "cover", Fraction(15), Fraction(67, 4), 1)
    ends = CutItem("end", "end", Fraction(67, 4), Fraction(7, 2), 1)
    label = CutItem("label", "label", Fraction(12), Fraction(7, 2), 1)
    layout = laid_out(cover, ends, label, width=33)
    (part,) = plan_layout(layout)
    (strip,) = part.strips
    # The end lies above the label: 3 1/2 and 7 from the top; beside the label 4 3/4 are left over, below both 9 3/4,
    # beside all 33 - 15 - 16 3/4 = 1 1/4.
    assert [ordered.bottoms for ordered in strip.ordered.now] == [(Fraction(67, 4),), (Fraction(7, 2), 7)]
    sizes = [(patch.right - patch.left, patch.bottom - patch.top) for patch in strip.left_over]
    assert sizes == [
        (Fraction(19, 4), Fraction(7, 2)),
        (Fraction(67, 4), Fraction(39, 4)),
        (Fraction(5, 4), Fraction(67, 4)),
    ]
    assert "Cut the part left of 1b across at 3 1/2 and 7 from its top" in " ".join(words_of(layout)[0])


def test_what_waits_is_kept_whole_to_the_selvage():
    front = CutItem("front", "front", Fraction(24), Fraction(18), 1)
    back = CutItem("back", "back", Fraction(16), Fraction(17), 1, later=True)
    layout = laid_out(front, back)
    (part,) = plan_layout(layout)
    (strip,) = part.strips
    assert strip.kept == Patch(Fraction(24), Fraction(0), Fraction(44), Fraction(18))
    assert strip.left_over == ()
    (words,) = words_of(layout)
    assert "Keep whole; it may grow 4 in across and 1 in along" in " ".join(words)
    assert "1b" not in " ".join(words)


def test_a_strip_that_waits_whole_bears_its_number_in_brackets_and_is_not_cut():
    # A front 30 in wide leaves no room for backs of 16 in beside it: they wait below it, from 18 to 35 in.
    front = CutItem("front", "front", Fraction(30), Fraction(18), 1)
    back = CutItem("back", "back", Fraction(16), Fraction(17), 2, later=True)
    (canvas,) = sketch_layout(used(laid_out(front, back)), INCH, Style(), key="layout")
    told = {label.words: label.bold for label in canvas.labels if label.words.strip("()").startswith(("1: ", "2: "))}
    assert told == {"1: 18": True, "(2: 35)": False}


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
    assert words.count("A") == 9


def test_the_width_and_the_straightened_end_are_told():
    (words,) = words_of(CUSHION)
    assert {"44 in wide, the straightened end", "selvage"} <= set(words)


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
        for canvas in sketch_layout(used(layout), INCH, style, key="layout"):
            assert canvas.crossings() == ()
            assert canvas.width <= PAGE
            assert min(label.size for label in canvas.labels) >= SMALLEST_TEXT


sizes = st.integers(1, 160).map(lambda eighths: Fraction(eighths, 4))
items = st.lists(
    st.tuples(st.sampled_from(["front", "left back", "frill"]), sizes, sizes, st.integers(1, 9), st.booleans()),
    min_size=1,
    max_size=5,
)


@settings(deadline=None, max_examples=40)
@given(items)
def test_no_words_cross_in_any_layout(items):
    laid = shelves(44, [item[:4] for item in items])
    for canvas in sketch_layout(used(laid), METRIC, Style(), key="layout"):
        assert canvas.crossings() == ()


@settings(deadline=None, max_examples=30)
@given(items)
def test_no_words_cross_in_any_layout_of_stacks_and_of_what_waits(items):
    cut = [
        CutItem(f"{name} {place}", f"{name} {place}", across, along, number, later=later)
        for place, (name, across, along, number, later) in enumerate(items)
    ]
    layout = cutting_layout(cut, Fraction(44), looks=20_000)
    for canvas in sketch_layout(used(layout), INCH, Style(), key="layout"):
        assert canvas.crossings() == ()


def test_the_longer_text_tells_the_order_of_cutting():
    picture = draw_cutting(used(CUSHION), INCH, Style(), key="layout face")[0]
    assert picture.text == (
        "Measure along the shorter selvage, from the straightened end: is the cloth 32 1/2 in long at least? If not, "
        "stop, and cut nothing.\n"
        "Cut 1 across at 17 in.\n"
        "1a down at 12 1/2 in from the left selvage: back, 12 1/2 by 17 in.\n"
        "1b down at 25 in from the left selvage: back, 12 1/2 by 17 in.\n"
        "Cut 2 across at 32 1/2 in.\n"
        "2a down at 27 1/4 in from the left selvage: front, 27 1/4 by 15 1/2 in.\n"
        "No layout cut across, down and across is shorter."
    )
    assert picture.alt == "Cutting layout on cotton, 44 in wide, 32 1/2 in long: 3 pieces in 2 strips."


def test_the_layout_of_a_project_cloth_is_drawn_and_gives_the_same_bytes():
    use = replace(used(CUSHION), label="plain cotton")
    worksheet = replace(worksheet_of(), cloths={"face": use})
    first, second = (draw_layout(worksheet, "face", Style()) for _ in range(2))
    assert first == second
    assert first[0].key == "layout face"
    assert "plain cotton" in first[0].alt
