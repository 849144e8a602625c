"""Pieces with an outline of their own on a worksheet, worked by hand; what their keys refuse."""

from __future__ import annotations

from pathlib import Path
from textwrap import indent

import pytest
from rooms_on_disk import faults, inches, put, scope_of, sheet, warnings
from test_plain_pieces_by_hand import extra, sizes, with_piece

from generator.calculation.worked_piece import Piece, Round, Shaped
from generator.calculation.worksheet.conditions import holds

SIZE = "finished across: 10 in or 25 cm\nfinished along: 8 in or 20 cm"
STRIP = "  strip:\n    kind: binding\n    length: extra.rim\n    width: 1/4 in or 6 mm\n"
RECTANGLE = "kind: rectangle\noutline:"
YOKE = """\
kind: rectangle
outline:
  mirror: yes
  start: 0, 4 in or 0, 10 cm
  edges:
    - neck: quarter oval across to 5 in, 0 or 12.5 cm, 0
    - shoulder: line to 7 1/2 in, 1 in or 19 cm, 2.5 cm
    - armhole: curve arriving across through 7 1/4 in, 6 in then 11 in, 10 in or 18.4 cm, 15 cm then 28 cm, 25 cm
    - side: line to 11 in, 20 in or 28 cm, 50 cm
    - bottom: line to 0, 20 in or 0, 50 cm
edges:
  neck: bound 1/4 in or 6 mm
  armhole: bound 1/4 in or 6 mm
  shoulder: seam 5/8 in or 1.5 cm
  side: seam 5/8 in or 1.5 cm
  bottom: hem 1/4 in then 1 in or 6 mm then 2.5 cm"""


def drawn(start: str, *points: str) -> str:
    """A rectangle drawn by straight lines from point to point."""
    edges = "".join(f"\n    - {name}: line to {point}" for name, point in zip("abcdefgh", points, strict=False))
    return f"kind: rectangle\noutline:\n  start: {start}\n  edges:{edges}"


def word(folder: Path, outline: str, more: str = "") -> Piece:
    return extra(folder, f"{RECTANGLE} {outline}\n{SIZE}{more}")


@pytest.mark.parametrize(
    ("outline", "cut", "edges"),
    [
        # Seams of 1/2 all round. An oval of half axes 5 and 4 is 28.36 round (elliptic integral), to 1/8: 28 3/8.
        ("oval", "11, 9", {"rim": "28 3/8"}),
        # Corners of 2: 2 x 6 + 2 x 4 + 4 pi = 32.566, to 1/8: 32 5/8 (its tangents are 32.571: 32.5703 / .125 = 260.6).
        ("rounded 2 in or 5 cm", "11, 9", {"rim": "32 5/8"}),
        # 10 - 4 + 2 x 6 + 2 pi = 24.283, to 1/8: 24 1/4.
        ("rounded top 2 in or 5 cm", "11, 9", {"rim": "24 1/4", "bottom": "10"}),
        ("rounded bottom 2 in or 5 cm", "11, 9", {"top": "10", "rim": "24 1/4"}),
    ],
)
def test_an_outline_by_one_word(tmp_path: Path, outline: str, cut: str, edges: dict[str, str]) -> None:
    piece = word(tmp_path, outline)
    assert sizes(piece) == inches(f"{cut}, 10, 8")
    assert {name: [edge.finished] for name, edge in piece.edges.items()} == {
        n: inches(long) for n, long in edges.items()
    }
    assert isinstance(piece.parts[0].outline, Shaped)
    assert piece.parts[0].outline.sides == tuple(edges)
    assert piece.measures["edge"] == sum(edge.finished for edge in piece.edges.values())


def test_a_half_circle_needs_one_measure_and_stands_on_its_straight_edge(tmp_path: Path) -> None:
    # 12 across: 6 high; rim 6 pi = 18.850, to 1/8: 18 7/8. Seam 1/2 at the rim, nothing at the bottom.
    piece = extra(
        tmp_path, "kind: facing\noutline: half circle\nfinished across: 12 in or 30 cm\nedges:\n  bottom: fold"
    )
    assert sizes(piece) == inches("13, 6 1/2, 12, 6")
    assert [piece.edges[name].finished for name in ("rim", "bottom")] == inches("18 7/8, 12")


def test_a_circle_by_its_word_is_what_a_circle_is(tmp_path: Path) -> None:
    piece = extra(tmp_path, "kind: rectangle\noutline: circle\nfinished across: 14 in or 35 cm\nedges: seam")
    # pi x 14 = 43.98, to 1/8: 44.
    assert sizes(piece) == inches("15, 15, 14, 14")
    assert (piece.parts[0].outline, [piece.edges["rim"].finished]) == (Round(), inches("44"))
    assert piece.measures["rim"] == piece.measures["edge"] == 44


def test_a_drawn_and_mirrored_outline_has_its_edges_on_both_sides(tmp_path: Path) -> None:
    piece = extra(tmp_path, YOKE)
    # 22 across with seams of 5/8: 23 1/4. 20 long, a hem of 1 1/4, and the shoulder's seam reaches
    # 5/8 x root of (1 + 4/25) = 0.673 up: 21.923, up to 1/16: 21 15/16.
    assert sizes(piece) == inches("23 1/4, 21 15/16, 22, 20")
    assert list(piece.edges) == [
        *("neck", "right shoulder", "right armhole", "right side", "bottom", "left side", "left armhole"),
        "left shoulder",
    ]
    # Quarter oval 5 by 4 is 7.09, twice 14.18: 14 1/4 (14.183 / .125 = 113.5). Shoulder root of 7.25 = 2.693: 2 3/4.
    asked = [piece.measures[name] for name in ("shoulder", "right shoulder", "left side", "bottom")]
    assert asked == inches("2 3/4, 2 3/4, 10, 22")
    assert [piece.measures[name] for name in ("side allowance", "left side allowance")] == inches("5/8, 5/8")
    assert [piece.edges[name].end.kind for name in ("left armhole", "right side", "bottom")] == ["bound", "seam", "hem"]


def test_a_lower_edge_that_slants_to_the_middle_keeps_its_point(tmp_path: Path) -> None:
    # Down from 18 at the side to 20 in the middle, 11 out: twice the root of (121 + 4) = 22.361, to 1/8: 22 3/8.
    pointed = put(YOKE, ("line to 11 in, 20 in", "line to 11 in, 18 in"))
    assert extra(tmp_path, pointed).measures["bottom"] == inches("22 3/8")[0]


def test_a_name_without_left_or_right_stands_for_both_where_edges_meet(tmp_path: Path) -> None:
    two = with_piece(
        YOKE,
        ("edges that meet:", f"  other:\n{indent(YOKE, '    ')}\nedges that meet:"),
        ("edges that meet:\n", "edges that meet:\n  - join: extra.shoulder\n    to: other.shoulder\n"),
    )
    [meeting] = [one for one in sheet(tmp_path, two, "medium").meetings if one.join == "extra.shoulder"]
    assert [meeting.join_length, meeting.to_length] == inches("5 1/2, 5 1/2")


def test_an_edge_may_be_a_list_of_lines_and_an_outline_need_not_be_mirrored(tmp_path: Path) -> None:
    flag = """\
kind: rectangle
outline:
  start: 0, 0 or 0, 0
  edges:
    - top: line to 9 in, 0 or 22 cm, 0
    - fly:
        - line to 6 in, 4 in or 15 cm, 10 cm
        - line to 9 in, 8 in or 22 cm, 20 cm
    - bottom: line to 0, 8 in or 0, 20 cm
    - left: line to 0, 0 or 0, 0
edges: raw"""
    piece = extra(tmp_path, flag)
    assert sizes(piece) == inches("9, 8, 9, 8")
    # Twice a line of 3 across and 4 down.
    assert [piece.edges[name].finished for name in piece.edges] == inches("9, 10, 9, 8")


@pytest.mark.parametrize(
    ("keys", "says"),
    [
        (f"{RECTANGLE} ovel\n{SIZE}", "'ovel' is no outline; did you mean 'oval'?"),
        (
            f"{RECTANGLE} rounded\n{SIZE}",
            "'rounded' needs the radius",
        ),
        (f"{RECTANGLE} oval 2 in\n{SIZE}", "nothing stands after 'oval'; how large it is say finished"),
        (f"{RECTANGLE} oval\nfinished across: 4 in", "'finished along' is missing here"),
        (f"{RECTANGLE} circle\n{SIZE}", "a circle is as long as it is wide, and this is 10 in by 8 in"),
        (
            f"{RECTANGLE} rounded 5 in or 12 cm\n{SIZE}",
            "round corners of 5 in have no room",
        ),
        (
            f"{RECTANGLE} oval\n{SIZE}\nedges:\n  top: raw",
            "a rectangle has no edge 'top'",
        ),
        (
            f"{YOKE}\nfinished across: 4 in",
            "a drawn outline says by its points how large it is",
        ),
        (YOKE.replace("- side:", "- across:"), "'across' is a measure of every piece"),
        (YOKE.replace("- side:", "- shoulder:"), "there are two edges 'shoulder'; give each a name of its own"),
        (YOKE.replace("- side:", "- left side:"), "write 'left side' without left and right"),
        (
            YOKE.replace("start: 0, 4", "start: 1 in, 4"),
            "one side of a mirrored outline begins",
        ),
        (
            YOKE.replace("line to 11 in, 20 in or 28 cm, 50 cm", "straight to 1 in, 2 in"),
            "an edge is 'line to'",
        ),
        (YOKE.replace("11 in, 20 in or", "11 in or"), "a point is as far across, a comma and a space, as far down"),
        (YOKE.replace("mirror: yes", "mirror: perhaps"), "'perhaps' is neither yes nor no"),
        (YOKE.replace("mirror: yes", "mirrored: yes"), "unknown key 'mirrored'; did you mean 'mirror'?"),
        (
            YOKE.replace("  mirror: yes\n", ""),
            "the outline is not closed",
        ),
        (YOKE.replace("line to 11 in, 20", "line to 0.25 in, 20"), "the cut line, outside the seams, crosses itself"),
        (YOKE.replace("line to 11 in, 20", "line to -1 in, 20"), "the outline crosses itself, about"),
        (
            YOKE.replace("mirror: yes", "mirror:\n    - yes"),
            "'what stands here' is neither yes nor no; write mirror: yes",
        ),
        (YOKE.replace("start: ", "start:\n    - "), "'start' is one point in one line: start: 0, 4 in or 0, 10 cm"),
        (
            YOKE.replace("line to 11 in, 20 in or 28 cm, 50 cm", "[]"),
            "the edge 'side' has no line; an edge is 'line to'",
        ),
        (
            YOKE.replace("line to 11 in, 20 in or", "line to 11 in, 10 in or"),
            "a line ends where it begins; take it out",
        ),
        (YOKE.replace("across to 5 in, 0", "across to 5 in, 4 in"), "a quarter oval goes as well across as down"),
        (drawn("0, 0", "0, 5 in", "5 in, 5 in", "5 in, 0", "0, 0"), "the outline goes round anticlockwise; list"),
        (drawn("0, 0", "5 in, 5 in", "0, 0"), "the outline holds no cloth, for all its points lie on one line"),
    ],
)
def test_what_an_outline_refuses(tmp_path: Path, keys: str, says: str) -> None:
    assert says in "".join(faults(tmp_path, with_piece(keys), "medium"))


def test_a_binding_along_a_rim_that_ends_does_not_come_round(tmp_path: Path) -> None:
    for outline, comes in (("rounded bottom 2 in or 5 cm", False), ("oval", True)):
        text = with_piece(
            f"{RECTANGLE} {outline}\n{SIZE}\nedges: bound 1/4 in or 6 mm",
            (
                "edges that meet:",
                "  strip:\n    kind: binding\n    length: extra.rim\n    width: 1/4 in or 6 mm\nedges that meet:",
            ),
            ("edges that meet:\n", "edges that meet:\n  - join: extra.rim\n    to: strip.edge\n"),
        )
        scope = scope_of(tmp_path, text)
        assert holds("round", [scope.piece("strip")], scope) is comes
        assert not holds("straight", [scope.piece("strip")], scope)


def test_the_step_that_cuts_names_what_is_cut_to_a_paper(tmp_path: Path) -> None:
    worksheet = sheet(tmp_path, with_piece(f"{RECTANGLE} oval\n{SIZE}\nlabel: base"), "medium")
    assert "No rectangle: base. Cut out the rectangle first." in worksheet.steps[0].text.replace("*", "")
    plain = sheet(tmp_path, with_piece(f"kind: rectangle\n{SIZE}\nlabel: base"), "medium")
    assert "No rectangle" not in plain.steps[0].text


def test_a_neck_that_makes_a_point_at_the_shoulder_seam_is_told(tmp_path: Path) -> None:
    # A quarter oval arrives straight up at the shoulder, which falls 1 in 2 1/2: the cloth has 68 degrees there, and
    # twice 68 is 136.
    two = with_piece(
        YOKE,
        ("edges that meet:", f"  other:\n{indent(YOKE, '    ')}\nedges that meet:"),
        ("edges that meet:\n", "edges that meet:\n  - join: extra.shoulder\n    to: other.shoulder\n"),
    )
    told = [one for one in warnings(sheet(tmp_path, two, "medium")) if "does not run on" in one]
    assert {one.split("the edge ")[1].split(" does")[0] for one in told} >= {"'neck'"}
    assert "where 'extra.right shoulder' meets 'other.right shoulder'" in told[0]
    # At a level shoulder both are square, and the neck runs on.
    square = two.replace("line to 7 1/2 in, 1 in or 19 cm, 2.5 cm", "line to 7 1/2 in, 0 or 19 cm, 0")
    assert not [one for one in warnings(sheet(tmp_path, square, "medium")) if "the edge 'neck' does not run on" in one]


def test_an_outline_of_very_many_points_is_refused(tmp_path: Path) -> None:
    edges = "".join(f"\n    - e{k}: line to {k} in, {k * k} in or {k} cm, {k * k} cm" for k in range(1, 62))
    keys = f"kind: rectangle\noutline:\n  start: 0, 0 or 0, 0\n  edges:{edges}"
    assert "an outline has 60 points at most" in "".join(faults(tmp_path, with_piece(keys), "medium"))
