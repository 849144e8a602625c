"""Edges of panels and plain pieces that are eased, gathered or pleated to shorter ones, worked by hand."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import pytest
from rooms_on_disk import faults, inches, put, sheet, warnings

from generator.calculation.pieces.drawn_edges import edge_pleat_lines, edge_pleats, hands_of
from generator.calculation.worked_project import Worksheet
from generator.errors import CalculationError
from generator.lengths import INCH, METRIC

# A skirt of 18 1/2 in on a band of 12: 18 1/2 / 12 = 1 13/24.
APRON = """\
title: Deckhand apron
kind: garment
summary: |
  A skirt on a band.
sizes:
  child:
    wide: 12 in or 30 cm
cloths:
  face:
    label: lawn
    width: 44 in or 112 cm
    weight: light
pieces:
  skirt:
    kind: rectangle
    finished across: 18 1/2 in or 47 cm
    finished along: 16 in or 40 cm
    edges:
      left: hem 1/4 in or 6 mm
      right: hem 1/4 in or 6 mm
      top: seam 1/2 in or 1.5 cm
      bottom: hem 1/2 in or 1.5 cm
  band:
    kind: rectangle
    finished across: wide
    finished along: 4 in or 10 cm
    edges: seam 1/2 in or 1.5 cm
edges that meet:
  - join: skirt.top
    to: band.bottom
    how: gathered
steps:
  - use: as usual
"""


def apron(folder: Path, *changes: tuple[str, str], edition: str = "inch") -> Worksheet:
    return sheet(folder, put(APRON, *changes), "child", edition)


def test_an_edge_is_gathered_by_quarters(tmp_path: Path) -> None:
    found = apron(tmp_path)
    (drawn,) = found.pieces["skirt"].drawn
    # Half as long again: three layers, as closed pleats have.
    assert (drawn.side, drawn.to, drawn.gathered, drawn.layers) == ("top", 12, True, 3)
    text = next(step.text for step in found.steps if step.title.startswith("Gather"))
    assert "the top edge of the skirt: 18 1/2 in to 12 in. Its quarters are 4 5/8 in long" in text
    assert "those of the bottom edge of the band 3 in" in text
    joined = next(step.text for step in found.steps if step.title.startswith("Join"))
    assert "gathered to 12 in between the seam lines" in joined


def test_it_is_gathered_when_its_sides_are_hemmed_and_before_the_seam(tmp_path: Path) -> None:
    titles = [step.title.split(":")[0] for step in apron(tmp_path).steps]
    hemmed = next(place for place, title in enumerate(titles) if title.startswith("Hem"))
    assert hemmed < titles.index("Gather the edge") < titles.index("Join")


def test_gathering_takes_two_threads_along_the_edge(tmp_path: Path) -> None:
    # Two rows of 18 1/2 in, 2 1/2 times as much thread and a fifth for ends: 111 in more than eased.
    eased = apron(tmp_path, ("how: gathered", "ease: 6 1/2 in"))
    assert apron(tmp_path).thread.length - eased.thread.length == 2 * Fraction(37, 2) * Fraction(5, 2) * Fraction(6, 5)


PLEATED = ("how: gathered", "how: pleated\n    pleats: 6")


def test_six_pleats_draw_18_1_2_up_to_12(tmp_path: Path) -> None:
    # (18 1/2 - 12) / 12 = 13/24, on the ruler 1/2; six of them hide 6, and 1/2 is eased in.
    found = apron(tmp_path, PLEATED)
    (drawn,) = found.pieces["skirt"].drawn
    assert (len(drawn.pleats), drawn.to, drawn.layers) == (6, 12, 3)
    assert drawn.depth == Fraction(1, 2)
    text = next(step.text for step in found.steps if step.title.startswith("Pleat"))
    assert "18 1/2 in to 12 in in 6 pleats 1/2 in deep" in text
    # The hems at the sides are made by then: the first pleat has 2 1/12 of the edge and is turned to the left in its
    # middle, creased at 1 1/24 + 1 and laid on 1 1/24.
    assert "1: 2 1/16 on 1 1/16" in text
    assert "Ease in the 1/2 in that are left, evenly." in text


def folded(lines: list[tuple[Fraction, Fraction]], length: Fraction) -> Fraction:
    """How long an edge is when every fold is laid on its line: ply by ply, what is hidden lies between two lines."""
    hidden = sorted(tuple(sorted(line)) for line in lines)
    assert all(one[1] <= other[0] for one, other in pairwise(hidden)), "pleats take the same cloth"
    assert hidden[0][0] >= 0
    assert hidden[-1][1] <= length
    return length - sum((last - first for first, last in hidden), Fraction(0))


@pytest.mark.parametrize("lie", ["left", "right", "outward", "inward"])
@pytest.mark.parametrize(
    ("longer", "shorter", "number"), [("37/2", "12", 6), ("30", "12", 7), ("24", "8", 8), ("17", "16", 3)]
)
def test_pleats_laid_ply_by_ply_come_out_at_the_edge(lie: str, longer: str, shorter: str, number: int) -> None:
    length, edge = Fraction(longer), Fraction(shorter)
    for edition in (INCH, METRIC):
        pleats = edge_pleats(length, edge, number, edition)
        lines = [(line.fold, line.onto) for line in edge_pleat_lines(pleats, hands_of(lie, number), Fraction(0))]
        assert folded(lines, length) == edge + pleats.eased
        assert 0 <= pleats.eased < 2 * number * edition.mark
        # Every pleat is turned as asked: creased right of the line it is laid on, it lies to the left.
        turned = [-1 if fold > onto else 1 for fold, onto in lines]
        half = number // 2
        middle = [1] * (number % 2)
        wanted = {
            "left": [-1] * number,
            "right": [1] * number,
            "outward": [-1] * half + middle + [1] * half,
            "inward": [1] * half + middle + [-1] * half,
        }
        assert turned == wanted[lie]


def test_as_many_layers_as_lie_over_each_other_at_a_pleat() -> None:
    # Brute force: each fold lays two plies over d of the finished edge, so count them at every place of 1/32.
    for number in (2, 3, 5, 6):
        pleats = edge_pleats(Fraction(24), Fraction(12), number, INCH)
        lines = edge_pleat_lines(pleats, hands_of("right", number), Fraction(0))
        places = [Fraction(place, 32) + Fraction(1, 64) for place in range(12 * 32)]
        covered = [
            1 + 2 * sum(min(x.finished, x.under) < at < max(x.finished, x.under) for x in lines) for at in places
        ]
        assert max(covered) <= pleats.layers


@pytest.mark.parametrize(
    ("longer", "shorter", "number", "says"),
    [
        ("12", "12", 3, "must be longer"),
        ("18", "12", 0, "0 pleats draw nothing up"),
        ("12 1/8", "12", 6, "6 pleats would be less than 1/16 in deep"),
        ("48", "12", 2, "2 pleats would be 9 in deep, deeper than the 6 in from one to the next"),
    ],
)
def test_pleats_that_cannot_be(longer: str, shorter: str, number: int, says: str) -> None:
    with pytest.raises(CalculationError, match=says):
        edge_pleats(inches(longer)[0], inches(shorter)[0], number, INCH)


def test_ease_is_a_tolerance_and_a_twentieth_the_most(tmp_path: Path) -> None:
    half = ("finished across: 18 1/2 in or 47 cm", "finished across: 12 1/2 in or 31.5 cm")
    told = warnings(apron(tmp_path, half, ("how: gathered", "how: eased")))
    # The three other edges of the band are sewn to nothing here, which is told.
    assert ["raw cloth will show" in one for one in told] == [True]
    assert apron(tmp_path, half, ("how: gathered", "ease: 3/4 in or 2 cm")).meetings[0].ease == Fraction(3, 4)
    much = apron(
        tmp_path,
        ("finished across: 18 1/2 in or 47 cm", "finished across: 13 in or 33 cm"),
        ("how: gathered", "how: eased"),
    )
    assert any("1 in is more than a twentieth of the edge" in one for one in warnings(much))


def test_between_eased_and_gathered_there_is_a_gap(tmp_path: Path) -> None:
    little = apron(tmp_path, ("finished across: 18 1/2 in or 47 cm", "finished across: 14 in or 35 cm"))
    assert any("gathered edges are 1 1/4 times as long at the least" in one for one in warnings(little))


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        (
            [("how: gathered", "how: gathered\n    ease: 1 in")],
            "'ease' goes with edges that are eased, and these are gathered",
        ),
        ([("how: gathered", "how: pleated")], "'pleats' is missing here"),
        ([("how: gathered", "how: gathered\n    pleats: 4")], "'pleats' goes with pleats; write 'how: pleated'"),
        ([("how: gathered", "how: ruffled")], "'ruffled' is no way in which edges meet"),
        (
            [("finished across: 18 1/2 in or 47 cm", "finished across: 10 in")],
            "must be longer than the one it is sewn to",
        ),
        ([("    how: gathered\n", "")], "or write 'how: gathered', or 'how: pleated' with the number of 'pleats'"),
        (
            [("skirt.top\n    to: band.bottom", "skirt.top and skirt.bottom\n    to: band.bottom")],
            "write a line for each edge",
        ),
    ],
)
def test_what_is_refused(tmp_path: Path, changes: list[tuple[str, str]], says: str) -> None:
    assert says in "".join(faults(tmp_path, put(APRON, *changes), "child"))


TUCKED = (
    "    kind: rectangle\n    finished across: 18 1/2 in or 47 cm",
    "    kind: tucked panel\n    tucks:\n      depth: 1/4 in or 6 mm\n      spacing: 2 in or 5 cm\n"
    "      margin: 1 in to 3 in or 2 cm to 8 cm\n      pressed: left\n    finished across: 18 1/2 in or 47 cm",
)


def test_tucks_in_a_gathered_edge_are_told_of_in_all_but_light_cloth(tmp_path: Path) -> None:
    told = warnings(apron(tmp_path, TUCKED, ("weight: light", "weight: medium")))
    assert any("holds tucks and is drawn up as well; in a medium cloth" in one for one in told)
    assert not any("holds tucks and is drawn up" in one for one in warnings(apron(tmp_path, TUCKED)))


def test_layers_of_tucks_and_gathers_add_up(tmp_path: Path) -> None:
    # Three layers of a tuck, two more of gathers beside it, and one of the band: six.
    plain = ("bottom: hem 1/2 in or 1.5 cm", "bottom: selvage")
    assert apron(tmp_path, TUCKED, plain).thickest["skirt"].layers == 6
