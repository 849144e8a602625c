"""The warnings about a rounded panel, each with its whole text, and the silence where there is nothing to say."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from tuck_panels import even_panel, inches, seam

from generator.calculation.panel.findings import (
    blind_finding,
    ring_finding,
    size_finding,
    spacing_finding,
    thickness_finding,
    tuck_findings,
)
from generator.calculation.panel.marks import laid_out, rounded
from generator.calculation.worked import End, TuckSet
from generator.lengths import INCH, METRIC, MILLIMETRE


def panel(pitch: str = "3/4", count: int = 5) -> TuckSet:
    return rounded(even_panel(count, "3/8", pitch, (seam(), seam()), ("3/4", "3/4")), INCH)


def test_a_panel_that_comes_out_has_nothing_to_warn_of() -> None:
    assert tuck_findings(panel(), INCH) == ()
    assert tuck_findings(panel(count=1), INCH) == ()
    assert tuck_findings(panel(count=0), INCH) == ()


def test_a_size_more_than_a_sixteenth_off_is_told() -> None:
    off = replace(panel(), asked=inches("4 3/8"))
    assert tuck_findings(off, INCH) == (
        "the panel finishes 4 1/2 in wide, 1/8 in more than asked for; cut what it is sewn to by the panel, or change "
        "the spacing",
    )
    assert tuck_findings(replace(panel(), asked=inches("4 7/16")), INCH) == ()


def test_another_spacing_than_asked_for_is_told() -> None:
    assert tuck_findings(replace(panel(), wish=inches("1 5/8")), INCH) == (
        "the spacing is 1 1/2 in, not 1 5/8 in as asked for, so that the size comes out",
    )


def test_spacings_that_differ_by_the_rounding_only_are_not_told() -> None:
    # A pitch of 0.7: spacings 1 7/16 and 1 1/2 about 1.45.
    uneven = panel("0.7")
    assert len(set(uneven.spacings)) == 2
    assert tuck_findings(uneven, INCH) == ()
    assert tuck_findings(replace(uneven, wish=inches("1 5/8")), INCH) == (
        "the spacing is 1 7/16 to 1 1/2 in (marks on the ruler, so not all alike), not 1 5/8 in as asked for, so "
        "that the size comes out",
    )


def test_the_worst_blind_tuck_is_named() -> None:
    # Depths 1/4, 1, 1/2 on a pitch of 1/2: the second covers 1/2 beyond.
    depths = tuple(map(inches, ("1/4", "1", "1/2")))
    raw = (End("raw"), End("raw"))
    blind = laid_out(depths, [2 * depth for depth in depths], (inches("1/2"),) * 2, raw, (inches("1"), inches("1")))
    assert tuck_findings(replace(rounded(blind, INCH), wish=Fraction(0)), INCH) == (
        "tuck 2 is deeper than its pitch by 1/2 in and covers the next stitching: blind tucks; space them wider to "
        "show",
    )


def test_a_ring_whose_seam_leaves_the_foot_no_room_is_told() -> None:
    narrow = rounded(even_panel(4, "1/8", "1/2", (seam(), seam()), ("1/4", "1/4")), INCH)
    assert tuck_findings(narrow, INCH) == ()
    assert tuck_findings(replace(narrow, ring=True), INCH) == (
        "the closing seam lies 1/4 in from the nearest tuck, less than the 3/8 in that the presser foot needs; close "
        "the ring before the first and the last tuck are stitched",
    )


def test_a_sample_settles_the_doubt_about_thickness() -> None:
    thick = Fraction(1, 50)
    # 5 tucks: 2 x 5 / 50 = 1/5 narrower (3/16 on the ruler), 0.3 x 5 / 50 = 0.03 wider (less than a mark).
    assert tuck_findings(panel(), INCH, thick) == (
        "cloth of this thickness could make 5 tucks up to 3/16 in narrower; sew a sample and measure it",
    )
    assert tuck_findings(panel(), INCH, thick, sampled=True) == ()
    assert thickness_finding(1, thick, INCH) == ""
    # 17 tucks of 0.3 mm: 10.2 and 1.53 mm, to the nearest millimetre.
    assert thickness_finding(17, Fraction(3, 10) * MILLIMETRE, METRIC) == (
        "cloth of this thickness could make 17 tucks up to 1 cm narrower or 2 mm wider; sew a sample and measure it"
    )


def test_a_millimetre_and_a_half_is_the_metric_limit() -> None:
    metric = rounded(even_panel(3, "3/8", "3/4", (seam(), seam()), ("3/4", "3/4")), METRIC)
    at_the_limit = replace(metric, asked=metric.finished - Fraction(3, 2) * MILLIMETRE)
    assert size_finding(at_the_limit, METRIC) == ""
    beyond = size_finding(replace(metric, asked=metric.finished + Fraction(8, 5) * MILLIMETRE), METRIC)
    assert "2 mm less than asked for" in beyond


def test_a_trifle_more_than_a_sixteenth_is_told() -> None:
    # 333/5000 is 0.0666, 1/16 is 0.0625, 1/15 would be 0.0667.
    assert "1/16 in less than asked for" in size_finding(
        replace(panel(), asked=panel().finished + Fraction(333, 5000)), INCH
    )


def test_two_tucks_have_a_spacing_to_tell_of_and_one_has_none() -> None:
    assert spacing_finding(replace(panel(count=2), wish=inches("1 5/8")), INCH) == (
        "the spacing is 1 1/2 in, not 1 5/8 in as asked for, so that the size comes out"
    )
    assert spacing_finding(replace(panel(count=1), wish=inches("1 5/8")), INCH) == ""


def test_uneven_spacings_that_reach_the_wish_are_not_told() -> None:
    uneven = panel("0.7")
    for reached in ("1 7/16", "1 1/2"):
        assert spacing_finding(replace(uneven, wish=inches(reached)), INCH) == ""


@pytest.mark.parametrize(
    ("depths", "number", "by"),
    [
        ("1 1/4 1/4", 1, "1/2 in"),
        ("1/4 1/4 1", 3, "1/2 in"),
        ("1 1 1/4", 1, "1/2 in"),
        ("3/4 1/4 1/4 1", 4, "1/2 in"),
        ("1 1/4 1/4 3/4", 1, "1/2 in"),
    ],
)
def test_the_tuck_that_covers_most_is_named_wherever_it_stands(depths: str, number: int, by: str) -> None:
    # A pitch of 1/2 throughout: 1 in covers 1/2 beyond, 3/4 covers 1/4, 1/4 leaves 1/4.
    deep = tuple(map(inches, depths.split()))
    raw = (End("raw"), End("raw"))
    pitches = (inches("1/2"),) * (len(deep) - 1)
    blind = laid_out(deep, [2 * depth for depth in deep], pitches, raw, (inches("1"), inches("1")))
    assert blind_finding(rounded(blind, INCH), INCH).startswith(f"tuck {number} is deeper than its pitch by {by} ")


def test_a_closing_seam_just_clear_of_the_foot_is_well() -> None:
    clear = rounded(even_panel(4, "1/8", "3/4", (seam(), seam()), ("3/8", "3/8")), INCH)
    assert ring_finding(replace(clear, ring=True), INCH) == ""


def test_one_tuck_of_very_thick_cloth_is_doubted_alone() -> None:
    # 1/8 in thick: 1/4 narrower; 0.3/8 wider is less than a mark. Five of 1/24: 5/12 narrower, 1/16 wider.
    assert thickness_finding(1, inches("1/8"), INCH) == (
        "cloth of this thickness could make 1 tuck up to 1/4 in narrower; sew a sample and measure it"
    )
    assert thickness_finding(5, Fraction(1, 24), INCH) == (
        "cloth of this thickness could make 5 tucks up to 7/16 in narrower or 1/16 in wider; sew a sample and measure "
        "it"
    )
    # 2 x 5 / 80 is 1/8 and no more.
    assert thickness_finding(5, Fraction(1, 80), INCH) == ""
