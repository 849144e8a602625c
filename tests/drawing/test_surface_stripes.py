"""Which cloth lies uppermost on a panel, and so which stripe: measured back from the picture by hand."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import numpy as np
import pytest
from panels import panel_of, piece_of, tuck_set_of, worksheet_of

from generator.calculation.striped import PanelStripes, Stripe, TuckColours
from generator.calculation.worked import Turn
from generator.drawing.catalogue import draw
from generator.drawing.style import Style
from generator.drawing.surface import draw_surface
from generator.drawing.surface_geometry import HeldLine, Surface
from generator.drawing.surface_light import relief
from generator.drawing.surface_stripes import cloth_seen, stripes_seen

PIXELS = 80
# Three tucks 3/8 in deep, marks at 1 5/8, 3 1/8 and 4 5/8, stitched at 3/4, 1 1/2 and 2 1/4 of 3 in; seams of 1/2 in.
TUCKS = tuck_set_of(3)
NONE = TuckColours((), (), (), ())
TICKING = PanelStripes((Stripe("navy", Fraction(1)), Stripe("white", Fraction(1, 2))), Fraction(0), NONE)


def shown(turns: tuple[Turn, ...], at: str) -> float:
    """The place on the flat cloth that is seen at a place across the panel, in the middle of its row [in]."""
    row = HeldLine(Fraction(2), turns, "right")
    seen = relief(Surface(Fraction(3), Fraction(4), TUCKS.stitching, TUCKS.depths, (row,)), PIXELS)
    return float(cloth_seen(seen, TUCKS)[2 * PIXELS, int(Fraction(at) * PIXELS)])


@pytest.mark.parametrize(
    ("turn", "at", "place"),
    [
        # Before the first tuck the cloth is the seam and what has been passed: 1/2 + 3/8.
        (Turn.RIGHT, "3/8", "7/8"),
        # A flap turned right from its foot at 3/4 shows its left side, from 1 1/4 at the foot to the mark at 1 5/8.
        (Turn.RIGHT, "7/8", "11/8"),
        # Past its fold at 1 1/8 the panel is seen again: 1/2 + 5/4 and the 3/4 that tuck 1 hides.
        (Turn.RIGHT, "5/4", "5/2"),
        # Turned left from 3/4 it lies over 3/8 to 3/4 and shows its right side, from 2 at the foot to 1 5/8.
        (Turn.LEFT, "5/8", "15/8"),
        # Behind the last tuck: 1/2 + 11/4 and three times 3/4.
        (Turn.LEFT, "11/4", "11/2"),
    ],
)
def test_each_place_shows_the_cloth_that_lies_there(turn: Turn, at: str, place: str) -> None:
    assert shown((turn,) * 3, at) == pytest.approx(float(Fraction(place)), abs=2.5 / PIXELS)


def test_a_stripe_is_told_from_where_the_repeat_begins() -> None:
    # A plain end of the panel: 0 to 3/4 in is cloth from 1/2 to 1 1/4; navy reaches to 1, white on to 1 1/2.
    seen = relief(Surface(Fraction(3), Fraction(4), TUCKS.stitching, TUCKS.depths), PIXELS)
    row = stripes_seen(seen, TUCKS, TICKING)[2 * PIXELS, : round(0.7 * PIXELS)]
    changes = (np.flatnonzero(np.diff(row)) + 1) / PIXELS
    assert row[0] == 0
    assert changes == pytest.approx([0.5], abs=2 / PIXELS)
    moved = stripes_seen(seen, TUCKS, replace(TICKING, start=Fraction(3, 4)))[2 * PIXELS]
    assert moved[round(0.1 * PIXELS)] == 1  # 0.6 + 3/4 = 1.35 lies in the white


def test_a_striped_panel_is_drawn_otherwise_than_a_plain_one() -> None:
    panel = panel_of(5)
    plain = worksheet_of(piece_of(panel))
    striped = worksheet_of(piece_of(replace(panel, stripes=TICKING)))
    (piece,) = plain.pieces
    one, other = (draw_surface(sheet, piece, Style())[0] for sheet in (plain, striped))
    assert one.svg != other.svg
    one, other = (draw(sheet, f"fold marks {piece}", Style())[0] for sheet in (plain, striped))
    # 9 1/4 in of cloth: navy an inch wide from every 1 1/2 in, so seven times, white six times in between.
    assert other.svg.count("<path") - one.svg.count("<path") == 13
