"""Copies of other pieces on a worksheet, worked by hand: interfacing, wadding, linings; what their keys refuse."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from rooms_on_disk import CUSHION, faults, inches, put, sheet, warnings
from shapely.geometry import Polygon
from test_plain_pieces_by_hand import sizes, with_piece
from test_shaped_pieces import YOKE

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.figures import piece_figures
from generator.lengths import INCH

WADDING = "  wadding:\n    label: cotton wadding\n    width: 44 in or 112 cm\n"
BACK = "kind: rectangle\nfinished across: 9 in or 23 cm\nfinished along: 6 in or 16 cm\nedges:\n  all: seam\n"
PADDING = "kind: copy\ncloth: wadding\n"


def copied(folder: Path, keys: str, of: str = BACK, size: str = "medium", edition: str = "inch") -> Worksheet:
    """The cushion with a piece 'extra' and a copy 'padding' of it, made as usual."""
    text = text_of(keys, of)
    return sheet(folder, text[: text.index("steps:")], size, edition)


def text_of(keys: str, of: str = BACK) -> str:
    text = with_piece(of).replace("pieces:\n", f"{WADDING}pieces:\n", 1)
    copy = "".join(f"    {line}\n" for line in f"{PADDING}of: extra\n{keys}".strip().splitlines())
    return text.replace("edges that meet:\n", f"  padding:\n{copy}edges that meet:\n", 1)


def errors(found: Worksheet) -> list[str]:
    return [str(finding) for finding in found.findings if finding.level == "error"]


def of_front(keys: str, *changes: tuple[str, str]) -> str:
    """The cushion with a copy 'padding' of its front."""
    copy = "".join(f"    {line}\n" for line in f"{PADDING}of: front\n{keys}".splitlines())
    edges = ("edges that meet:\n", f"  padding:\n{copy}edges that meet:\n")
    return put(CUSHION, ("pieces:\n", f"{WADDING}pieces:\n"), edges, *changes)


@pytest.mark.parametrize(
    ("keys", "cut"),
    [
        # 9 by 6, seams of 1/2 all round.
        ("", "10, 7"),
        ("reaches: edge\nfixed: sewn in", "10, 7"),
        ("reaches: seam line\nfixed: fused", "9, 6"),
        # 1/8 beyond the seam line at both sides: 9 1/4 by 6 1/4.
        ("reaches: 1/8 in or 3 mm\nfixed: fused", "9 1/4, 6 1/4"),
    ],
)
def test_a_copy_reaches_to_the_edge_to_the_seam_line_or_a_little_beyond_it(tmp_path: Path, keys: str, cut: str) -> None:
    assert sizes(copied(tmp_path, keys).pieces["padding"]) == inches(f"{cut}, 9, 6")


def test_a_copy_follows_each_edge_and_a_lining_keeps_its_finish(tmp_path: Path) -> None:
    # A hem of 1 in twice at the top, a binding at the bottom, seams of 1/2 at the sides: 10 by 6 + 2 = 8.
    of = BACK.replace("  all: seam\n", "  all: seam\n  top: hem 1 in or 2.5 cm\n  bottom: bound 1/4 in or 6 mm\n")
    lining = copied(tmp_path, "", of).pieces["padding"]
    assert sizes(lining) == inches("10, 8, 9, 6")
    assert {side: edge.end.kind for side, edge in lining.edges.items()} == {
        "left": "seam",
        "right": "seam",
        "top": "hem",
        "bottom": "bound",
    }
    fixed = copied(tmp_path, "fixed: sewn in", of).pieces["padding"]
    assert sizes(fixed) == inches("10, 8, 9, 6")
    # It is turned in with its piece and has no hem of its own.
    assert {edge.end.kind for edge in fixed.edges.values()} == {"seam", "raw"}


def test_a_copy_of_a_panel_is_as_large_as_the_panel_was_sewn(tmp_path: Path) -> None:
    text = of_front("reaches: seam line\nfixed: sewn in\ncut: after the panel")
    assert sizes(sheet(tmp_path, text, "medium").pieces["padding"]) == inches("16, 16, 16, 16")
    # 15 5/8 across as sewn, 16 along as planned.
    sewn = sheet(tmp_path, text, "medium", across="15 5/8")
    assert sizes(sewn.pieces["padding"]) == inches("15 5/8, 16, 15 5/8, 16")
    cuts = {(cut.side, cut.words) for cut in sheet(tmp_path, text, "medium").new_cuts if cut.piece == "padding"}
    assert cuts == {("across", "mine"), ("along", "mine")}


def test_a_copy_of_a_circle_has_its_rim(tmp_path: Path) -> None:
    round_one = "kind: circle\ndiameter: 9 in or 23 cm\nedges: seam 1/2 in or 1.5 cm"
    found = copied(tmp_path, "reaches: seam line\nfixed: sewn in", round_one).pieces["padding"]
    # pi x 9 = 28.27, to 1/8: 28 1/4.
    assert sizes(found) == inches("9, 9, 9, 9")
    assert found.measures["rim"] == Fraction(113, 4)
    assert sizes(copied(tmp_path, "", round_one).pieces["padding"]) == inches("10, 10, 9, 9")


@pytest.mark.parametrize(("reach", "keys"), [(0, "reaches: seam line"), (0.125, "reaches: 1/8 in or 3 mm")])
def test_a_copy_of_a_drawn_outline_is_as_far_from_it_everywhere_as_a_general_library_says(
    tmp_path: Path, reach: float, keys: str
) -> None:
    found = copied(tmp_path, f"{keys}\nfixed: sewn in", YOKE).pieces
    yoke, copy = found["extra"].shape, found["padding"].shape
    assert yoke is not None
    assert copy is not None
    seam = Polygon([(float(x), float(y)) for line in yoke.lines for x, y in line.spots])
    cut = Polygon([(float(x), float(y)) for x, y in copy.cut])
    theirs = seam.buffer(reach, join_style="mitre", mitre_limit=2)
    assert cut.symmetric_difference(theirs).area < 0.01
    assert [line.name for line in copy.lines] == [line.name for line in yoke.lines]
    assert found["padding"].edges["left shoulder"].finished == found["extra"].edges["left shoulder"].finished


def test_a_copy_that_is_fixed_is_due_before_the_seams_of_its_piece(tmp_path: Path) -> None:
    text = of_front("fixed: quilted")
    usual = text[: text.index("steps:")]
    steps = [(step.standard, step.pieces) for step in sheet(tmp_path, usual, "medium").steps]
    place = steps.index(("quilt", ("padding",)))
    assert ("trim", ("front",)) in steps[:place]
    assert ("join pieces", ("front", "back")) in steps[place:]
    (late,) = errors(sheet(tmp_path, text, "medium"))
    assert "no step fixes 'padding' in its place" in late
    assert "- use: quilt\n    on: padding" in late


def test_interfacing_is_never_fused_before_the_tucks_are_stitched(tmp_path: Path) -> None:
    text = of_front(
        "fixed: fused",
        ("  - use: cut\n", "  - use: cut\n  - use: fuse\n    on: padding\n"),
    )
    line = text.splitlines().index("  - use: fuse") + 1
    found = errors(sheet(tmp_path, text, "medium"))
    moved = line + 2
    assert found == [
        f"projects/jetty.yaml:{line}:5: 'fuse' needs 'mark folds', 'crease' and 'stitch tucks' before it: marks the "
        "folds of 'front', creases the folds of 'front' and stitches the tucks of 'front'. Move line "
        f"{moved} up here (size medium, inch)",
        f"projects/jetty.yaml:{line}:5: 'fuse' needs 'rule rows', 'sew rows' and 'trim' before it: rules the rows of "
        "'front', turns the tucks of 'front' and trims 'front'. Move line "
        f"{moved + 2} up here (size medium, inch)",
    ]


def test_a_copy_in_the_seam_is_a_layer_there_and_one_at_the_seam_line_is_none(tmp_path: Path) -> None:
    layers = {}
    for reach in ("edge", "seam line"):
        text = of_front(
            f"fixed: sewn in\nreaches: {reach}",
            ("  - use: envelope back\n", "  - use: underline\n    on: padding\n  - use: envelope back\n"),
        )
        layers[reach] = sheet(tmp_path, text, "medium").thickest["front"].layers
    plain = sheet(tmp_path, CUSHION, "medium").thickest["front"].layers
    assert layers == {"edge": plain + 1, "seam line": plain}


def test_the_list_of_what_to_cut_and_the_figures_say_what_a_copy_lies_on(tmp_path: Path) -> None:
    piece = copied(tmp_path, "reaches: seam line\nfixed: fused\nnote: Glue side down.").pieces["padding"]
    assert piece.note == "fused to the wrong side of the extra. Glue side down."
    figures = piece_figures(piece, INCH)
    assert (figures["kind"], figures["fixed"], figures["lies_on"]) == ("copy", "fused", "extra")


def test_a_step_that_fixes_copies_says_where_each_lies(tmp_path: Path) -> None:
    step = next(
        one for one in copied(tmp_path, "reaches: 1/8 in or 3 mm\nfixed: fused").steps if one.standard == "fuse"
    )
    assert "- padding, on the extra: its edges 1/8 in beyond the seam lines" in step.text
    assert "towel" not in step.text
    assert step.tools == ("iron", "scissors")
    under = next(one for one in copied(tmp_path, "fixed: sewn in").steps if one.standard == "underline")
    assert "its edges level with the cut edges" in under.text
    assert "The basting stays in the seam." in under.text
    inside = next(
        one for one in copied(tmp_path, "fixed: sewn in\nreaches: seam line").steps if one.standard == "underline"
    )
    assert "just outside the seam line" in inside.text


def test_thread_is_counted_for_what_is_basted_and_quilted_and_none_for_glue(tmp_path: Path) -> None:
    lengths = {way: copied(tmp_path, f"fixed: {way}").thread.length for way in ("fused", "sewn in", "quilted")}
    # Basted once round, 2 x (9 + 6) = 30; quilted in lines 4 in apart, 3 of 6 = 18. Times 2 1/2, and a fifth for ends.
    assert lengths["sewn in"] - lengths["fused"] == 30 * Fraction(5, 2) * Fraction(6, 5)
    assert lengths["quilted"] - lengths["fused"] == 18 * Fraction(5, 2) * Fraction(6, 5)


@pytest.mark.parametrize(
    ("keys", "told"),
    [
        ("reaches: -1/8 in", "'reaches' comes to -1/8 in; write how far the copy reaches beyond the seam line"),
        ("on: front", "'on' says what a copy is fixed to; write how under 'fixed' (fused, sewn in, quilted), or"),
        ("fixed: glued", "'glued' is no way to fix a copy"),
        ("reaches: hem", "'hem'"),
        ("fixed: fused\nedges: raw", "how far this copy reaches is said by 'reaches'; take 'edges' out"),
    ],
)
def test_what_a_copy_cannot_say_is_refused_where_it_stands(tmp_path: Path, keys: str, told: str) -> None:
    (found,) = faults(tmp_path, text_of(keys), "medium")
    assert told in found
    assert found.startswith("projects/jetty.yaml:")


@pytest.mark.parametrize(
    ("of", "told"),
    [
        ("nothing", "there is no piece 'nothing'"),
        ("back", "'back' is an envelope back, and a copy is of a rectangle, a facing, a circle or a tucked panel"),
        ("padding", "'padding' is a copy, and a copy is of a rectangle"),
    ],
)
def test_what_cannot_be_copied_is_refused(tmp_path: Path, of: str, told: str) -> None:
    (found,) = faults(tmp_path, text_of("").replace("of: extra", f"of: {of}"), "medium")
    assert told in found


def test_a_fixed_copy_meets_no_edge_of_its_own(tmp_path: Path) -> None:
    text = text_of("fixed: fused").replace(
        "edges that meet:\n", "edges that meet:\n  - join: padding.all\n    to: extra.all\n"
    )
    (found,) = faults(tmp_path, text, "medium")
    assert "'padding' is fused to 'extra' and goes into its seams with it; take this line out" in found


def test_as_many_copies_are_fixed_as_there_are_pieces(tmp_path: Path) -> None:
    found = [one for one in warnings(copied(tmp_path, "fixed: fused\nquantity: 3")) if "times" in one]
    assert len(found) == 1
    assert "'padding' is cut 3 times and 'extra', on which it lies, 1 times; write quantity: 1" in found[0]
    assert not [one for one in warnings(copied(tmp_path, "fixed: fused")) if "times" in one]


@pytest.mark.parametrize(
    ("edges", "told"),
    [
        ("  all: seam\n", "its edges on the seam lines, 1/2 in inside the cut edges"),
        (
            "  all: seam\n  left: seam 5/8 in or 1.6 cm\n",
            "its edges on the seam lines, 5/8 in inside the left and 1/2 in inside the other cut edges",
        ),
        (
            "  all: seam\n  left: seam 5/8 in or 1.6 cm\n  top: hem 1 in or 2.5 cm\n",
            "its edges on the seam lines, 5/8 in inside the left, 2 in inside the top and 1/2 in inside the other cut "
            "edges",
        ),
    ],
)
def test_a_copy_to_the_seam_line_is_told_by_what_a_ruler_finds(tmp_path: Path, edges: str, told: str) -> None:
    """No line is drawn there, so it is measured from the cut edge: 1/2 in is the room's seam, a hem of 1 in turns 2."""
    of = BACK.replace("  all: seam\n", edges)
    text = next(
        one.text for one in copied(tmp_path, "reaches: seam line\nfixed: fused", of).steps if one.standard == "fuse"
    )
    assert f"- padding, on the extra: {told}\n" in text


def test_what_is_fused_never_reaches_beyond_the_cloth_below_it(tmp_path: Path) -> None:
    # Seams of 1/2 in all round.
    told = (
        "'padding' is fused and reaches 5/8 in beyond the seam line, and 'extra' is cut only 1/2 in beyond it (left, "
        "right, top, bottom): its glue would melt on to the ironing board; write 1/2 in or less"
    )
    found = faults(tmp_path, text_of("reaches: 5/8 in or 1.8 cm\nfixed: fused"), "medium")
    assert any(told in one for one in found), found
    assert errors(copied(tmp_path / "level", "reaches: 1/2 in or 1.5 cm\nfixed: fused")) == []
