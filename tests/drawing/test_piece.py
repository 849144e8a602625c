"""Diagrams of single pieces: lines as exact places, words that stand clear, whatever the size."""

from fractions import Fraction

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from panels import worksheet_of
from pieces import ALL_SEAMS, HEM, SEAM, circle_cut, envelope_back, piece_cut

from generator.calculation.drawn_up import DrawnUp
from generator.calculation.worked import End
from generator.calculation.worked_piece import Lengths, Made, SeamLine, Shaped
from generator.drawing.piece import draw_piece, sketch_piece
from generator.drawing.piece_plan import Stretch, piece_scale, plan_part
from generator.drawing.style import SMALLEST_TEXT, Style
from generator.lengths import INCH, METRIC

KINDS = (
    "rectangle",
    "facing",
    "strip",
    "bias strip",
    "gathered strip",
    "pleated strip",
    "gathered end",
    "binding",
    "tie",
    "piping",
    "boxing",
)
LARGE = Style(small=12.0, text=14.0, strong=16.0)


def words_of(piece, edition=INCH):
    return [label.words for label in sketch_piece(piece, edition, Style()).labels]


def test_a_piece_is_drawn_in_its_true_proportions():
    """11 in high must fit into 3 in: at 3/11 of its size 5 1/2 in across are 1 1/2 in."""
    plan = plan_part(piece_cut("rectangle", Fraction(11, 2), 11).parts[0])
    assert (plan.across.paper, plan.along.paper) == (Fraction(3, 2), Fraction(3))


def test_a_small_piece_is_not_drawn_larger_than_it_is():
    assert piece_scale(Fraction(1), Fraction(1)) == 1


def test_a_long_strip_keeps_both_its_ends_and_leaves_out_its_middle():
    """7/10 in wide at 7/10 in for each inch; 5 1/2 in of paper hold both ends, each two fifths of it: 2 1/5 in."""
    stretch = Stretch(Fraction(60), Fraction(11, 2), Fraction(7, 10))
    assert stretch.broken
    assert stretch.place(Fraction(1)) == Fraction(7, 10)
    assert stretch.place(Fraction(59)) == Fraction(11, 2) - Fraction(7, 10)
    assert stretch.place(Fraction(30)) is None


def test_the_finished_edge_lies_an_allowance_inside_the_cut_edge_and_the_fold_of_a_hem_a_turn_inside():
    plan = plan_part(piece_cut("rectangle", 12, 12, {**ALL_SEAMS, "top": HEM}).parts[0])
    assert plan.finished == {
        "left": Fraction(1, 2),
        "right": Fraction(1, 2),
        "top": Fraction(5, 4),
        "bottom": Fraction(1, 2),
    }
    assert plan.turns == {"top": Fraction(1, 4)}


def test_the_halves_of_an_envelope_back_have_their_hems_where_they_overlap():
    """(16 + 4) / 2 = 10 finished; cut 12 1/2 less 10 less the seam of 1/2 leaves 2 for a hem of twice 1."""
    left, right = (half.edges for half in envelope_back().parts)
    assert left["right"].end == right["left"].end == End("hem", Fraction(1), Fraction(1))
    assert left["left"].end == right["right"].end == SEAM
    assert left["right"].allowance == 2


def test_both_halves_of_an_envelope_back_are_drawn_with_their_sizes():
    words = words_of(envelope_back())
    assert words[0] == "back: cut 2"
    assert words[1] == "cut 12 1/2 in across by 17 in along; 10 in by 16 in when finished."
    assert words.count("hem 1 in twice") == 2
    assert words.count("cut 12 1/2 in") == 2


def test_unlike_halves_of_a_back_are_each_drawn_with_their_own_size_and_a_hem_turned_twice():
    """The right seam of 1 in makes its half 1/2 in wider: 10 + 1 + 2 = 13 against 12 1/2."""
    words = words_of(envelope_back(right=Fraction(1)))
    told = (
        "left half: cut 12 1/2 in across by 17 in along; right half: cut 13 in across by 17 in along; "
        "each 10 in by 16 in when finished."
    )
    assert " ".join(words[1:-8]).startswith(told)
    assert [words.count(one) for one in ("cut 12 1/2 in", "cut 13 in", "hem 1 in twice")] == [1, 1, 2]


def test_a_circle_tells_its_size_through_and_its_seam():
    words = words_of(circle_cut(10))
    assert words[1] == "cut a circle 10 in through; 9 in through when finished."
    assert "seam 1/2 in" in words


def test_a_piece_cut_after_the_panel_says_so():
    assert "Measure the sewn panel first." in " ".join(words_of(piece_cut("rectangle", 20, 12, after_panel=True)))


def test_a_gathered_strip_tells_the_length_to_gather_to():
    assert "Gather it to 9 in." in " ".join(words_of(piece_cut("gathered strip", 18, 3)))


def test_a_strip_longer_than_the_cloth_tells_the_lengths_it_is_joined_from():
    """58 in from two lengths with seams of 1/2 in: (58 + 1) / 2 = 29 1/2 each."""
    half = Fraction(1, 2)
    lengths = Lengths(2, Fraction(59, 2), Fraction(3), half, slanting=False)
    strip = piece_cut("strip", 58, 3, quantity=2, lengths=lengths)
    words = words_of(strip)
    assert words[0] == "strip: cut 4 lengths"
    assert words[1].startswith("58 in across by 3 in along when joined; ")
    assert "Join it from 2 lengths of 29 1/2 in by 3 in with seams of 1/2 in." in " ".join(words)


def test_a_bias_strip_tells_the_square_it_is_cut_from():
    words = words_of(piece_cut("bias strip", 250, 2, {}, grain="bias", square=Fraction(24)))
    assert "Cut it on the bias, from a square of 24 in." in " ".join(words)


def test_the_rim_of_a_gathered_end_is_told_at_the_edge_that_is_not_gathered():
    canvas = sketch_piece(piece_cut("gathered end", 20, 4, {"bottom": SEAM}), INCH, Style())
    (rim,) = (label for label in canvas.labels if label.words == "seam 1/2 in")
    assert all(rim.y > start[1] for start, end in canvas.segments if start[0] != end[0] and start[1] < 1.2)


def test_a_piece_that_is_not_cut_from_cloth_has_no_picture():
    bought = piece_cut("bought", 1, 1, {}, parts=())
    assert draw_piece(worksheet_of(bought), "bought", Style()) == ()


@pytest.mark.parametrize("kind", KINDS)
@pytest.mark.parametrize(("across", "along"), [(1, 1), (3, 14), (60, 2), (2, 90), (144, 96), (30, 8)])
def test_no_words_cross_in_a_piece_of_any_kind_and_shape(kind, across, along):
    piece = piece_cut(kind, across, along, name="left shoulder frill")
    for style in (Style(), LARGE):
        canvas = sketch_piece(piece, INCH, style)
        assert canvas.crossings() == ()
        assert canvas.width <= 7


@settings(deadline=None, max_examples=60)
@given(
    across=st.integers(4, 800), along=st.integers(4, 800), grain=st.sampled_from(["along", "across", "either", "bias"])
)
def test_no_words_cross_in_a_rectangle_of_any_size(across, along, grain):
    ends = {"left": HEM, "right": End("bound", Fraction(3, 8)), "top": SEAM, "bottom": End("turnover", Fraction(1))}
    piece = piece_cut("rectangle", Fraction(across, 4) + 2, Fraction(along, 4) + 2, ends, grain=grain)
    for edition in (INCH, METRIC):
        assert sketch_piece(piece, edition, Style(small=9)).crossings() == ()


@pytest.mark.parametrize("across", [1, 3, 10, 40])
def test_no_words_cross_in_a_circle(across):
    assert sketch_piece(circle_cut(across, End("seam", Fraction(1, 4))), INCH, Style()).crossings() == ()


def test_all_words_are_at_least_seven_points():
    for piece in (envelope_back(), circle_cut(3), piece_cut("tie", 3, 60)):
        assert min(label.size for label in sketch_piece(piece, INCH, Style()).labels) >= SMALLEST_TEXT


def test_the_same_piece_gives_the_same_bytes_and_its_words_stay_text():
    worksheet = worksheet_of(envelope_back())
    (first,), (second,) = (draw_piece(worksheet, "back", Style()) for _ in range(2))
    assert first == second
    assert ">back: cut 2</text>" in first.svg
    assert first.alt == (
        "The back as it is cut, 12 1/2 in across by 17 in along, with its finished edge inside the allowances."
    )


def test_every_fold_of_a_pleat_is_drawn_with_the_line_that_it_is_laid_on():
    """One inverted pleat: folds at 3 and 7 in are laid on 5 in, so the lines stand equally far apart."""
    folds = ((Fraction(3), Fraction(5)), (Fraction(7), Fraction(5)))
    pleated = piece_cut("pleated strip", 10, 4, made=Made(DrawnUp("top", Fraction(9), folds)))
    canvas = sketch_piece(pleated, INCH, Style())
    plain = sketch_piece(piece_cut("strip", 10, 4), INCH, Style())
    added = [segment for segment in canvas.segments if segment not in plain.segments]
    reach = {}
    for (x, top), (_, bottom) in added:
        reach.setdefault(round(x, 4), []).append(round(bottom - top, 4))
    first, onto, last = sorted(reach)
    assert (onto - first) == pytest.approx(last - onto)
    assert (reach[first], reach[onto], reach[last]) == ([0.25], [0.12, 0.12], [0.25])


def test_a_shape_is_drawn_with_its_cut_line_and_its_seam_line_true_to_scale():
    # A triangle, 4 across and 3 along when finished, cut 1 larger all round where its edges meet; at scale 1/2.
    spots = [(Fraction(x), Fraction(y)) for x, y in ((0, 3), (2, 0), (4, 3))]
    cut = tuple(
        (x, y) for x, y in ((Fraction(-1), Fraction(4)), (Fraction(2), Fraction(-1)), (Fraction(5), Fraction(4)))
    )
    lines = (SeamLine("rim", tuple(spots)), SeamLine("bottom", (spots[2], spots[0])))
    shape = Shaped(lines, cut)
    piece = piece_cut(
        "rectangle",
        6,
        5,
        {"rim": SEAM, "bottom": SEAM},
        outline=shape,
        finished_across=Fraction(4),
        finished_along=Fraction(3),
    )
    canvas = sketch_piece(piece, INCH, Style())
    pens = {layer.pen: layer for layer in canvas._layers if layer.pen}
    (drawn,) = [points for points in pens[Style().cut].outlines if len(points) == 4]
    scale = (drawn[2][0] - drawn[0][0]) / 6
    assert scale == pytest.approx(min(5.5 / 6, 3 / 5))
    tips = [((x - drawn[0][0]) / scale - 1, (y - drawn[1][1]) / scale - 1) for x, y in pens[Style().finish].outlines[0]]
    assert tips == [pytest.approx((float(x), float(y))) for x, y in spots]
    words = words_of(piece)
    assert words[1] == "cut 6 in across by 5 in along; 4 in by 3 in when finished."
    assert {"seam 1/2 in"} <= set(words)
    assert canvas.crossings() == ()
