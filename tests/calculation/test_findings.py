"""The warnings about a rounded panel, each with its whole text, and the silence where there is nothing to say."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from tuck_panels import even_panel, inches, seam

from generator.calculation.panel.findings import thickness_finding, tuck_findings
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
        "the spacing is 1 7/16 in to 1 1/2 in (marks on the ruler, so not all alike), not 1 5/8 in as asked for, so "
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
