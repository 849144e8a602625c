"""A grid of blocks: put together from its cut pieces, seam by seam, and the draft of nine blocks worked by hand."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import pytest

from generator.calculation.pieces.grid import Blocks, shown, worked_grid
from generator.errors import CalculationError
from generator.lengths import read_length

WIDTHS = [Fraction(0), Fraction(2), Fraction(5, 4)]
SEAMS = [Fraction(1, 4), Fraction(3, 8)]
GRIDS = [
    Blocks("block", (wide, high), (Fraction(8), along), band, seam)
    for wide, high, along, band, seam in product((1, 2, 3, 5), (1, 2, 4), (Fraction(8), Fraction(19, 2)), WIDTHS, SEAMS)
    if wide * high > 1
]


def joined(lengths: list[Fraction], seam: Fraction) -> Fraction:
    """Pieces sewn one after the other: every seam takes its allowance from both."""
    whole = lengths[0]
    for length in lengths[1:]:
        whole = whole - seam + length - seam
    return whole


@pytest.mark.parametrize("grid", GRIDS)
def test_a_grid_comes_out_as_its_cut_pieces_put_together(grid: Blocks) -> None:
    (wide, high), cut = grid.number, [side + 2 * grid.seam for side in grid.block]
    cuts = {band.name: band for band in grid.bands}
    row: list[Fraction] = []
    for place in range(wide):
        row += [cut[0]] if not grid.band or place == 0 else [cuts["short band"].across, cut[0]]
    column: list[Fraction] = []
    for place in range(high):
        column += [cut[1]] if not grid.band or place == 0 else [cuts["long band"].along, cut[1]]
    assert (joined(row, grid.seam), joined(column, grid.seam)) == grid.raw
    # A short band is as high as a block, a long one as wide as a row; of both there are as many as there are gaps.
    if grid.band and wide > 1:
        assert (cuts["short band"].along, cuts["short band"].number) == (cut[1], high * (wide - 1))
    if grid.band and high > 1:
        assert (cuts["long band"].across, cuts["long band"].number) == (joined(row, grid.seam), high - 1)
    # Every seam is as long as what it joins.
    seams = high * (len(row) - 1) * cut[1] + (len(column) - 1) * joined(row, grid.seam)
    assert grid.seams == seams


@pytest.mark.parametrize("grid", GRIDS)
def test_blocks_lie_apart_by_their_bands_and_within_the_seams_of_the_whole(grid: Blocks) -> None:
    across, along = grid.raw
    places = list(grid.places())
    assert len(places) == grid.number[0] * grid.number[1]
    covered = sum((grid.block[0] * grid.block[1] for _ in places), Fraction(0))
    inner = (across - 2 * grid.seam) * (along - 2 * grid.seam)
    gaps = (grid.number[0] - 1) * grid.band * (along - 2 * grid.seam)
    gaps += (grid.number[1] - 1) * grid.band * (across - 2 * grid.seam)
    crossings = (grid.number[0] - 1) * (grid.number[1] - 1) * grid.band**2
    assert covered == inner - gaps + crossings
    _, _, left, top, _ = places[-1]
    assert (left + grid.block[0] + grid.seam, top + grid.block[1] + grid.seam) == grid.raw


@pytest.mark.parametrize(
    ("block", "band", "seam", "raw", "bands"),
    [
        # 3 x 8 + 2 x 2 + 2 x 1/4; bands 2 + 1/2 wide, short ones 8 + 1/2 long.
        ("8 in", "2 in", "1/4 in", "28 1/2 in", [("2 1/2 in", "8 1/2 in"), ("28 1/2 in", "2 1/2 in")]),
        # 60 + 10 + 1.4 cm; 5 + 1.4 wide, 20 + 1.4 long.
        ("20 cm", "5 cm", "7 mm", "71.4 cm", [("6.4 cm", "21.4 cm"), ("71.4 cm", "6.4 cm")]),
    ],
)
def test_nine_blocks_as_worked_by_hand(
    block: str, band: str, seam: str, raw: str, bands: list[tuple[str, str]]
) -> None:
    size = read_length(block)
    grid = Blocks("mooring", (3, 3), (size, size), read_length(band), read_length(seam), turned=True)
    assert grid.raw == (read_length(raw), read_length(raw))
    assert [(one.number, one.across, one.along) for one in grid.bands] == [
        (number, read_length(across), read_length(along)) for number, (across, along) in zip((6, 2), bands, strict=True)
    ]
    # The tucks run up and down in five and across in four, and no two neighbours lie alike.
    lying = {(row, place): turned for row, place, _, _, turned in grid.places()}
    assert sum(lying.values()) == 4
    assert all(lying[row, place] != lying[row, place + 1] for row in (1, 2, 3) for place in (1, 2))
    assert all(lying[row, place] != lying[row + 1, place] for row in (1, 2) for place in (1, 2, 3))


def test_a_wider_binding_hides_part_of_the_outer_blocks() -> None:
    # From the seam to the raw edge the outer block has 8 and its allowance of 1/4; the binding covers 3/8 of that.
    assert shown(Fraction(8), Fraction(1, 4), Fraction(3, 8)) == Fraction(33, 4) - Fraction(3, 8)


@pytest.mark.parametrize(
    ("grid", "said"),
    [
        (Blocks("block", (1, 1), (Fraction(8), Fraction(8)), Fraction(2), Fraction(1, 4)), "two blocks at least"),
        (Blocks("block", (2, 0), (Fraction(8), Fraction(8)), Fraction(2), Fraction(1, 4)), "two blocks at least"),
        (Blocks("block", (2, 2), (Fraction(8), Fraction(9)), Fraction(2), Fraction(1, 4), turned=True), "as wide as"),
        (Blocks("block", (2, 2), (Fraction(8), Fraction(8)), Fraction(-1), Fraction(1, 4)), "take 'bands' out"),
        (Blocks("block", (2, 2), (Fraction(8), Fraction(8)), Fraction(2), Fraction(0)), "the seam of a grid"),
    ],
)
def test_a_grid_that_cannot_be_joined_is_refused(grid: Blocks, said: str) -> None:
    with pytest.raises(CalculationError, match=said):
        worked_grid(grid)
