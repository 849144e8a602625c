"""The thickest place of every demo panel, worked by hand: rows, joins in a tuck, and all that meets at an edge."""

from __future__ import annotations

from pathlib import Path

import pytest
from rooms_on_disk import AS_USUAL, CUSHION, faults, inches, put, sheet

from generator.calculation.making_up.layers import lap_layers
from tests.room import ROOT, demo_room

# Tucks that lie flat beside each other are three layers: the panel, and two of the tuck over it.
BY_HAND = {
    "awning-cushion": {"front": (7, "at the top: front 3 + back 4")},
    "bosun-seat-pad": {"top": (6, "at the top: top 3 + piping 2 + boxing 1")},
    "breakwater-runner": {"top": (4, "at the top: runner 3 + lining 1")},
    # Tucks both ways: three at each edge, the lining, and the binding's two layers on either side.
    "chandlery-flap": {"flap": (8, "at the left: flap 3 + flap lining 1 + binding 4")},
    # Three of a tuck, basted flat at the rim, and the skirt; the padding ends at the seam line.
    "capstan-stool": {"top": (4, "at the rim: top 3 + skirt 1")},
    # Pleats 1 1/2 in deep every 3 in lie closed: 1 + 2 (2 x 1 1/2) / 3 = 3.
    "galley-valance": {"band": (7, "at the bottom: tucked band 3 + pleated strip 3 + band lining 1")},
    # The back or the lining, one as thick as the other; what the file joins first is told. The pocket has no rows, and
    # a step of its own sews it on.
    "customs-tote": {"front": (4, "at the bottom: front 3 + back 1")},
    # Each tuck is stitched through the hems at its ends: two plies of three.
    "fairway-blind": {"blind": (6, "at the right (top on the table)")},
    # Two halves alike, tuck on tuck below; at the mouth, where the facing ends in the seam, no tuck lies.
    "cockle-bag": {"panel": (6, "at the round: bag 3 + bag 3")},
    "skiff-mat": {"mat": (4, "at the side: mat 3 + lining 1")},
    "ferry-runner": {"end panel": (4, "at the top: end panel 3 + lining 1")},
    # No seam; the deepest tucks, 1 in every 2 in, just touch when they face: three. Both allowances of a join, 3/8 in,
    # lie in a tuck at least 1/2 in deep: two more. Every double and wide bed is joined.
    "harbour-headboard": {"panel": (5, "in the rows: panel 3 + the join of its breadths 2")},
    "lantern-sleeve": {"sleeve": (7, "at the top: sleeve 3 + binding 4")},
    "logbook-sleeve": {"front": (4, "at the top: front 3 + front lining 1")},
    # A skirt twice as long as the yoke's edge: 1 + 2 ceil((2 - 1) / 2) = 3.
    "net-loft-pinafore": {"yoke": (6, "at the bottom: yoke 3 + skirt 3")},
    # Three of a tuck, and one of the band that its block is sewn to.
    "nine-moorings": {"mooring": (4, "at the top")},
    # A frill half as long again: 3 in its gathers, 3 at its hemmed ends.
    "pier-bolster": {"wrap": (6, "at the top: wrap 3 + frill 3")},
    # Two panels alike are sewn to each other, tuck on tuck.
    "pilot-tea-cosy": {"panel": (6, "at the crown: panel 3 + panel 3")},
    "pincushion-sample": {"front": (4, "at the top: front 3 + back 1")},
    # Three of a tuck pressed down, and the back; the stiffening ends at the seam line, the linings have their own seam.
    "purser-pouch": {"front": (4, "at the right (top on the table): front 3 + back 1")},
    # A hem turned twice, 3, on the single cloth of the other half.
    "quay-cushion": {"front": (7, "at the top: front 3 + back 4")},
    # Three of a tuck that ends in the neck, and a binding round it; no tuck reaches the shoulder or the hem.
    "slipway-smock": {"front": (7, "at the neck: front 3 + neck binding 4")},
    "tide-table-mats": {"mat": (8, "at the top: mat 3 + backing 1 + binding 4")},
    # Neither rows nor seams: the tucks fall as they like.
    "gull-window-curtain": {},
}

TEN = "layers:\n  warn over: 9\n  refuse over: 10\n"


@pytest.mark.parametrize("path", sorted((ROOT / "projects").glob("*.yaml")), ids=lambda path: path.stem)
@pytest.mark.parametrize("edition", ["inch", "metric"])
def test_the_thickest_place_of_a_demo_is_as_worked_by_hand(path: Path, edition: str) -> None:
    made = [sheet for sheet in demo_room().worksheets(path.stem) if sheet.edition.name == edition][-1]
    assert {name: (one.layers, one.where) for name, one in made.thickest.items()} == BY_HAND[path.stem]


def test_hems_that_lie_on_each_other_in_a_narrow_lap_are_six() -> None:
    # Two hems of 1 in need 2 in to lie beside each other.
    assert [lap_layers(inches(lap)[0], inches("1")[0]) for lap in ("1 15/16", "2", "4")] == [6, 4, 4]


def test_the_warning_names_the_place_and_stands_at_the_seam(tmp_path: Path) -> None:
    # The front's tucks in the seam, 3, and the back's lap, 3 + 1.
    made = sheet(tmp_path, CUSHION, "medium", site=AS_USUAL)
    (told,) = [finding for finding in made.findings if "layers of cloth" in finding.text]
    assert told.level == "warning"
    assert told.text == (
        "there are up to 7 layers of cloth under the needle at the top: front 3 + back 4; use a longer stitch and a "
        "stronger needle, and turn the wheel by hand over the thickest place"
    )
    assert told.place is not None
    assert CUSHION.splitlines()[told.place.line - 1].strip() == "- join: front.all"


@pytest.mark.parametrize(("limit", "warned"), [(6, True), (7, False)])
def test_the_room_says_from_how_many_layers_a_seam_is_warned_of(tmp_path: Path, limit: int, warned: bool) -> None:
    made = sheet(tmp_path, CUSHION, "medium", site=f"layers:\n  warn over: {limit}\n  refuse over: 9\n")
    assert any("layers of cloth" in finding.text for finding in made.findings) is warned


def test_a_seam_that_no_machine_sews_is_refused(tmp_path: Path) -> None:
    # Tucks 3/8 in deep every 1 in stitch 1/4 in apart: two lie over each point, five layers. With a back whose hems lie
    # on each other in a lap of 1 1/2 in, 6: eleven.
    text = put(
        CUSHION,
        ("spacing: 1 1/2 in or 4 cm", "spacing: 1 in or 2.6 cm"),
        ("plan: linked cells", "plan: ripples"),
        ("overlap: lap", "overlap: 1 1/2 in or 4 cm"),
    )
    told = faults(tmp_path, text, "medium")
    assert any("'front' at the top goes through 11 layers of cloth and the most is 9; give the" in one for one in told)


def test_copies_and_pieces_in_a_row_lie_beside_each_other(tmp_path: Path) -> None:
    # Two frills, each on its own edge of the front: 3 + 3 at either, and not 3 + 3 + 3.
    frill = (
        "  frill:\n    kind: gathered strip\n    quantity: 2\n    edge: front.across\n    fullness: 2\n"
        "    drop: 2 in or 5 cm\nedges that meet:\n  - join: front.top\n    to: frill.top\n"
        "  - join: front.bottom\n    to: frill.top\n"
    )
    made = sheet(tmp_path, put(CUSHION, ("edges that meet:\n", frill)), "medium", site=TEN)
    # With the back's lap over them: 3 + 3 + 4.
    assert made.thickest["front"].layers == 10
    assert made.thickest["front"].where == "at the top: front 3 + frill 3 + back 4"


@pytest.mark.parametrize(
    ("weight", "warned"),
    # The seven layers of the cushion are like 3 1/2, 4 2/3, 7 and 10 1/2 of a medium cloth; over seven are too many.
    [("sheer", False), ("light", False), ("medium", False), ("heavy", True)],
)
def test_a_light_layer_counts_less_than_a_heavy_one(tmp_path: Path, weight: str, warned: bool) -> None:
    text = put(CUSHION, ("    width: 44 in or 112 cm\n", f"    width: 44 in or 112 cm\n    weight: {weight}\n"))
    made = sheet(tmp_path, text, "medium", site="layers:\n  refuse over: 9\n")
    assert any("layers of cloth" in finding.text for finding in made.findings) is warned


@pytest.mark.parametrize(("weight", "told"), [("light", False), ("medium", True)])
def test_a_thick_seam_is_told_at_its_step(tmp_path: Path, weight: str, told: bool) -> None:
    text = put(
        CUSHION,
        ("    width: 44 in or 112 cm\n", f"    width: 44 in or 112 cm\n    weight: {weight}\n"),
        (
            "  - title: Close the cover\n"
            "    does: sew front to back, neaten front, turn out front, put the pad in front\n"
            "    minutes: 20\n    text: |\n      The backs lie {{ lap }} one over the other.\n",
            "  - use: join pieces\n    on: front, back\n",
        ),
    )
    last = sheet(tmp_path, text, "medium").steps[-1].text
    assert ("Thick: up to 7 layers of cloth, at the top: front 3 + back 4." in last) is told
    assert ("thick" in last) is told
