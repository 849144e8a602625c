"""Tucks that are stitched over a part of the panel and let go below it, worked by hand, and by laying the cloth out."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise
from pathlib import Path

import numpy as np
import pytest
from rooms_on_disk import faults, inches, put, sheet, warnings

from generator.calculation.worked import Panel
from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.figures import figures
from generator.drawing.catalogue import draw_sized
from generator.drawing.released import plan_released
from generator.drawing.renders.near import cut_out, near_window
from generator.drawing.sizes import DrawnSize
from generator.drawing.style import Style
from generator.drawing.surface_geometry import held_share, surface_of
from generator.lengths import CENTIMETRE, read_length

# A yoke 12 in wide: 11 tucks of 1/4 in, pitch 1 in, let go below 4 in. 12 + 11 x 1/2 = 17 1/2 wide there.
BLOUSE = """\
title: Harbour blouse front
kind: garment
summary: |
  Tucks from the yoke to the chest.
sizes:
  child:
    wide: 12 in or 30 cm
cloths:
  face:
    label: lawn
    width: 44 in or 112 cm
    weight: light
pieces:
  front:
    kind: tucked panel
    finished across: wide
    finished along: 16 in or 40 cm
    tucks:
      depth: 1/4 in or 5 mm
      spacing: 1 1/2 in or 3.5 cm
      number: 11
      margin: 1/2 in to 3 in or 1 cm to 8 cm
      stitched to: 4 in or 10 cm
      pressed: outward
    edges:
      left: seam 1/2 in or 1.5 cm
      right: seam 1/2 in or 1.5 cm
      top: seam 1/2 in or 1.5 cm
      bottom: hem 1/4 in then 1 in or 6 mm then 2.5 cm
  yoke:
    kind: rectangle
    finished across: front.across
    finished along: 4 in or 10 cm
    edges: seam 1/2 in or 1.5 cm
edges that meet:
  - join: front.top
    to: yoke.bottom
steps:
  - use: cut
  - use: mark folds, crease, stitch tucks, press tucks, release tucks
    on: front
  - use: join pieces
    on: front, yoke
  - use: hem
    on: front
"""


def panel_of(found: Worksheet) -> Panel:
    panel = found.pieces["front"].panel
    assert panel is not None
    return panel


def test_a_yoke_of_12_is_17_1_2_wide_where_its_tucks_are_let_go(tmp_path: Path) -> None:
    # Cut 12 + 11 x 1/2 + 1 = 18 1/2, along 16 + 1/2 + 1 1/4 = 17 3/4. Marked 1/2 + 4 below the top cut edge.
    found = sheet(tmp_path, BLOUSE, "child")
    front, panel = found.pieces["front"], panel_of(found)
    assert [front.cut_across, front.cut_along] == inches("18 1/2, 17 3/4")
    assert [front.edges["top"].finished, front.edges["bottom"].finished] == inches("12, 17 1/2")
    assert front.measures["released across"] == read_length("17 1/2 in")
    # 17 1/2 of 12 are 1 11/24.
    assert front.measures["fullness"] == Fraction(35, 24)
    assert panel.released is not None
    assert set(panel.released.stops) == {tuple(inches("4 1/2"))}
    assert panel.released.free == {"bottom": read_length("5 1/2 in")}


def test_the_metric_edition_is_worked_anew(tmp_path: Path) -> None:
    # 11 tucks of 5 mm give back 11 cm: 30 + 11 = 41. Marked 1.5 + 10.
    front = sheet(tmp_path, BLOUSE, "child", "metric").pieces["front"]
    assert front.edges["bottom"].finished == 41 * CENTIMETRE
    assert front.panel is not None
    assert front.panel.released is not None
    assert front.panel.released.stops[0] == (Fraction(23, 2) * CENTIMETRE,)


def laid_out(panel: Panel, at: Fraction) -> Fraction:
    """How wide a thread across the cloth lies at a height: walked along the cloth, folded back where it is sewn."""
    assert panel.released is not None
    tucks = panel.across
    # Every tuck hides the cloth from half its take-up before its mark to half behind it, where it is stitched.
    hidden = [
        (mark - take / 2, mark + take / 2)
        for mark, take, own in zip(tucks.marks, tucks.take_ups, panel.released.stitched, strict=True)
        if any(first <= at <= last for first, last in own)
    ]
    edges = [tucks.left_allowance, *(place for pair in hidden for place in pair), tucks.right_edge]
    return sum((after - before for before, after in list(pairwise(edges))[::2]), Fraction(0))


@pytest.mark.parametrize(
    "keys",
    [
        "stitched to: 4 in",
        "stitched to: 3 in to 6 in",
        "stitched from: 10 in",
        "stitched from: 3 in\n      stitched to: 9 in to 7 in",
        "released from: 4 in\n      released to: 12 in",
    ],
)
def test_widths_are_those_of_the_cloth_laid_out_thread_by_thread(tmp_path: Path, keys: str) -> None:
    alone = BLOUSE[: BLOUSE.index("  yoke:")]
    found = sheet(tmp_path, put(alone, ("stitched to: 4 in or 10 cm", keys)), "child")
    front, panel = found.pieces["front"], panel_of(found)
    assert front.edges["top"].finished == laid_out(panel, Fraction(0))
    assert front.edges["bottom"].finished == laid_out(panel, Fraction(16))
    widest = max(laid_out(panel, Fraction(place, 4)) for place in range(65))
    assert found.pieces["front"].cut_across - 1 >= widest
    assert front.measures["released across"] == widest


def test_what_a_seam_meets_at_a_free_edge_is_the_full_width(tmp_path: Path) -> None:
    told = "".join(faults(tmp_path, put(BLOUSE, ("stitched to: 4 in or 10 cm", "stitched from: 10 in")), "child"))
    assert "'front.top' is 17 1/2 in and 'yoke.bottom' is 12 in: 5 1/2 in apart" in told


def test_stops_that_go_evenly_from_the_first_tuck_to_the_last(tmp_path: Path) -> None:
    # From 3 to 8 over ten steps: half an inch each.
    found = sheet(tmp_path, put(BLOUSE, ("stitched to: 4 in or 10 cm", "stitched to: 3 in to 8 in")), "child")
    released = panel_of(found).released
    assert released is not None
    assert [own[0][1] for own in released.stitched] == [Fraction(6 + step, 2) for step in range(11)]
    text = next(step.text for step in found.steps if step.title.startswith("Mark the folds"))
    assert "- Tuck 1: 3 1/2 in.\n- Tuck 2: 4 in." in text


def test_tucks_that_are_let_go_bring_no_layers_to_that_edge(tmp_path: Path) -> None:
    panel = panel_of(sheet(tmp_path, BLOUSE, "child"))
    assert panel.held("top") == panel.pressed
    assert panel.held("bottom") == ()


def test_thread_counts_what_is_stitched(tmp_path: Path) -> None:
    # 11 tucks of 4 1/2 in instead of 17 3/4 in: 13 1/4 x 11 = 145 3/4 in less of stitching, times 2 1/2 and 1.2, 12 yd.
    whole = sheet(tmp_path, put(BLOUSE, ("      stitched to: 4 in or 10 cm\n", ""), (", release tucks", "")), "child")
    less = whole.thread.length - sheet(tmp_path, BLOUSE, "child").thread.length
    hem = Fraction(11, 2)  # the hem is so much longer where the tucks are let go
    assert less == (Fraction(583, 4) - hem) * Fraction(5, 2) * Fraction(6, 5)


def test_the_steps_tell_where_to_stop_and_how_to_end(tmp_path: Path) -> None:
    steps = {step.title.partition(":")[0]: step.text for step in sheet(tmp_path, BLOUSE, "child").steps}
    assert "Rule a line 4 1/2 in below the top cut edge across the whole cloth" in steps["Mark the folds"]
    assert "from the top edge to the line, and no further" in steps["Stitch the tucks"]
    assert "do not sew back" in steps["Stitch the tucks"]
    assert "Do not knot them as well" not in steps["Stitch the tucks"]
    assert (
        "it measures 12 in where the tucks are stitched, and 17 1/2 in along the bottom edge"
        in steps["Let the tucks go"]
    )
    hem = next(text for title, text in steps.items() if title.startswith("Hem"))
    assert "the hem runs over flat cloth" in hem
    assert "Where a hem crosses tucks" not in hem


def test_ends_are_tied_or_sewn_back_never_both(tmp_path: Path) -> None:
    back = put(BLOUSE, ("      pressed: outward", "      stitching ends: sewn back\n      pressed: outward"))
    text = next(step.text for step in sheet(tmp_path, back, "child").steps if step.title.startswith("Stitch the tucks"))
    assert "Do not knot them as well" in text
    assert "do not sew back" not in text


def test_a_recipe_that_never_lets_them_go_is_told(tmp_path: Path) -> None:
    found = sheet(tmp_path, put(BLOUSE, (", release tucks", "")), "child").findings
    assert any("no step lets the tucks of 'front' go; 'join pieces' needs it" in str(one) for one in found)


CROSS = """\
      pressed: outward
    cross tucks:
      depth: 1/4 in
      spacing: 1 1/2 in
      number: 1
      margin: 1 in to 15 in
      left margin: {} in
"""


@pytest.mark.parametrize(
    ("changes", "says"),
    [
        (
            [("stitched to: 4 in or 10 cm", "stitched to: 3/4 in")],
            "tuck 1 is stitched over 3/4 in only, too short to hold: less than 4 of its depths, 1 in (a limit of",
        ),
        ([("stitched to: 4 in or 10 cm", "stitched to: 17 in")], "tuck 1 is stitched from 0 in to 17 in of 16 in"),
        ([("stitched to: 4 in or 10 cm", "stitched to: 16 in")], "are stitched from edge to edge; take"),
        ([("stitched to: 4 in or 10 cm", "stitched to: 4 in to 16 in")], "some tucks are stitched to the bottom edge"),
        (
            [("stitched to: 4 in or 10 cm", "released from: 0 in\n      released to: 8 in")],
            "tucks that are released as far as an edge are told by 'stitched from'",
        ),
        ([("stitched to: 4 in or 10 cm", "released from: 8 in")], "'released to' is missing here"),
        (
            [("stitched to: 4 in or 10 cm", "stitched to: 4 in\n      released to: 8 in")],
            "'stitched to' and 'released to' exclude each other",
        ),
        ([("stitched to: 4 in or 10 cm", "stitching ends: tied")], "'stitching ends' goes with tucks that end within"),
        (
            [("      pressed: outward\n", CROSS.format(8))],
            "cross tuck 1 lies 8 in below the top, and tuck 1 is not stitched there",
        ),
        (
            [("      pressed: outward\n", CROSS.format("3 3/4"))],
            "cross tuck 1 lies 3 3/4 in below the top, and tuck 1 is not stitched there, or its stitching ends less",
        ),
    ],
)
def test_what_is_refused(tmp_path: Path, changes: list[tuple[str, str]], says: str) -> None:
    assert says in "".join(faults(tmp_path, put(BLOUSE, *changes), "child"))


def test_a_cross_tuck_on_the_stitching_is_sewn(tmp_path: Path) -> None:
    # At 2 in, two inches inside the end of the stitching; it takes 1/2 in above the stop: marked 1/2 + 4 + 1/2.
    crossed = put(BLOUSE, ("      pressed: outward\n", CROSS.format(2)))
    released = panel_of(sheet(tmp_path, crossed, "child")).released
    assert released is not None
    assert released.stops[0] == tuple(inches("5"))


ROWS = (
    "      pressed: outward\n",
    "    rows:\n      plan: ripples\n      spacing: 2 in\n      first: 3/4 in to 2 in\n      start: right\n",
)


def test_rows_lie_on_the_stitched_part_alone(tmp_path: Path) -> None:
    # Stitched to 8: rows 2 apart with at least 3/4 at both ends: at 1, 3, 5 and 7, an inch inside the stitching.
    turned = put(BLOUSE, ROWS, ("stitched to: 4 in or 10 cm", "stitched to: 8 in"))
    panel = panel_of(sheet(tmp_path, turned, "child"))
    assert panel.rows is not None
    assert panel.released is not None
    assert len(panel.rows.rows) == 4
    assert panel.rows.bottom == ()
    last = panel.rows.rows[-1]
    assert last.most <= 7
    # Below the last row nothing draws in: the stop is marked as far below it as it lies finished.
    assert panel.released.stops[0][0] - last.ruled == 8 - (last.least + last.most) / 2


def test_a_shape_ends_them_and_its_free_edge_is_longer(tmp_path: Path) -> None:
    # The neck is a quarter oval of 4 by 3: at 1 in from the middle it is 3 x root of (1 - 1/16) = 2.905 down.
    shape = (
        "    finished across: wide\n    finished along: 16 in or 40 cm\n",
        "    outline:\n      mirror: yes\n      start: 0, 3 in\n      edges:\n"
        "        - neck: quarter oval across to 4 in, 0\n        - shoulder: line to 6 in, 1/2 in\n"
        "        - side: line to 6 in, 16 in\n        - bottom: line to 0, 16 in\n",
    )
    edges = BLOUSE[BLOUSE.index("    edges:\n      left") : BLOUSE.index("  yoke:")]
    shaped = put(
        BLOUSE[: BLOUSE.index("  yoke:")],
        shape,
        (
            edges,
            "    edges:\n      neck: bound 1/4 in\n      all: seam\n      bottom: hem 1/4 in then 1 in\n",
        ),
        ("number: 11", "number: 3"),
        ("spacing: 1 1/2 in or 3.5 cm", "spacing: 1 1/2 in or 3 cm"),
        ("margin: 1/2 in to 3 in or 1 cm to 8 cm", "margin: 2 in to 6 in or 5 cm to 16 cm"),
        ("stitched to: 4 in or 10 cm", "stitched to: 8 in or 20 cm"),
    )
    front = sheet(tmp_path, shaped, "child").pieces["front"]
    assert front.panel is not None
    assert front.panel.released is not None
    assert front.panel.released.free == {"bottom": Fraction(3, 2)}
    assert front.edges["bottom"].finished == Fraction(27, 2) == front.measures["bottom"]
    ends = {one.tuck: one for one in front.panel.shaped_ends}
    assert abs(float(ends[1].top) - 3 * (1 - 1 / 16) ** 0.5) < 0.01
    # Stitched to 3 1/2, the middle one has 1/2 in left below the neck, less than 1 in.
    with_less = put(shaped, ("stitched to: 8 in or 20 cm", "stitched to: 3 1/2 in or 20 cm"))
    assert "tuck 2 is stitched over only 1/2 in when the panel is cut to its shape, too short to hold" in "".join(
        faults(tmp_path, with_less, "child")
    )
    # A hem that slants comes out in teeth.
    slanted = put(shaped, ("side: line to 6 in, 16 in", "side: line to 6 in, 12 in"))
    told = [one for one in warnings(sheet(tmp_path, slanted, "child")) if "slants there" in one]
    # 4 in of 6 in down over a depth of 1/4 in: 1/6 in.
    assert "comes out in teeth of 3/16 in" in told[0]


def test_a_ring_of_tucks_falls_full_below_them(tmp_path: Path) -> None:
    # A skirt round a waist of 24 in: 24 tucks of 1/4 in, 1 in apart when sewn. Below: 24 + 24 x 1/2 = 36.
    ring = put(
        BLOUSE[: BLOUSE.index("  yoke:")],
        ("wide: 12 in or 30 cm", "wide: 24 in or 60 cm"),
        ("number: 11\n      margin: 1/2 in to 3 in or 1 cm to 8 cm", "number: 24\n      ring: yes"),
        ("spacing: 1 1/2 in or 3.5 cm", "spacing: 1 1/2 in or 3.5 cm"),
        ("pressed: outward", "pressed: right"),
    )
    front = sheet(tmp_path, ring, "child").pieces["front"]
    assert [front.edges["top"].finished, front.edges["bottom"].finished] == inches("24, 36")


@pytest.mark.parametrize(
    ("keys", "measured"),
    [
        ("stitched to: 4 in", "at the top edge and just above the line."),
        ("stitched from: 10 in", "just below the line and at the bottom edge."),
        ("stitched from: 3 in\n      stitched to: 9 in", "just below the upper line and just above the lower line."),
        ("released from: 4 in\n      released to: 12 in", "at the top edge and at the bottom edge."),
    ],
)
def test_the_check_is_measured_where_tucks_are_stitched(tmp_path: Path, keys: str, measured: str) -> None:
    alone = put(BLOUSE[: BLOUSE.index("  yoke:")], ("stitched to: 4 in or 10 cm", keys))
    drawn = draw_sized(sheet(tmp_path, alone, "child"), "checking front", Style(), DrawnSize(93, 40))
    assert drawn.alt.endswith(measured)


def test_the_picture_of_them_has_both_widths_and_where_they_stop(tmp_path: Path) -> None:
    worked = sheet(tmp_path, BLOUSE, "child")
    plan = plan_released(panel_of(worked), Fraction(16))
    # 12 of 17 1/2 above a quarter of the height, all of it below.
    assert plan.widths == ((0, Fraction(24, 35)), (Fraction(1, 4), Fraction(24, 35)), (Fraction(1, 4), 1), (1, 1))
    assert all(stretches == ((0, Fraction(1, 4)),) for _, stretches in plan.tucks)
    told = draw_sized(worked, "released front", Style(), DrawnSize(93, 60)).alt
    assert "4 in below the top. There it is 12 in wide; where the folds fall open, 17 1/2 in." in told


def test_a_fold_has_run_out_six_depths_below_its_stitching(tmp_path: Path) -> None:
    surface = surface_of(sheet(tmp_path, BLOUSE, "child").pieces["front"])
    # Stitched to 4 in; 6 x 1/4 = 1 1/2 further nothing is left of it, half of it half way.
    shares = held_share(surface, 0, np.array([0.0, 4.0, 4.75, 5.5, 16.0]))
    assert shares.tolist() == [1, 1, 0.5, 0, 0]


def test_the_close_view_shows_where_tucks_are_let_go(tmp_path: Path) -> None:
    surface = surface_of(sheet(tmp_path, BLOUSE, "child").pieces["front"])
    window = near_window(surface, 0.75)
    assert window.top < 4 < window.bottom
    part, _ = cut_out(surface, window)
    # Told from the corner of the window, the stitching stops as far down as 4 in lie below its top.
    assert [float(own[0][1]) for own in part.stitched] == pytest.approx([4 - window.top] * len(part.feet))


def test_figures_tell_where_they_are_stitched(tmp_path: Path) -> None:
    told = figures(sheet(tmp_path, BLOUSE, "child"))["pieces"]["front"]["released"]
    assert told["stitched"] == [["0", "4"]]
    assert told["free"] == {"bottom": "5 1/2"}
