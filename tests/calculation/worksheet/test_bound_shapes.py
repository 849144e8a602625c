"""What a panel with an outline says of edges that are bound, and of marks that go with the cloth round it."""

from __future__ import annotations

from tests.room import demo_room


def text_of(project: str, step: str) -> str:
    sheet = demo_room().worksheets(project)[0]
    return next(one.text for one in sheet.steps if one.standard == step)


def test_a_bound_edge_is_basted_inside_of_the_line_on_which_it_is_cut() -> None:
    # The smock is bound at neck and armholes: a second line outside of the seam line would be cut away there.
    inside = "Along an edge that is bound the seam line is the cut line"
    assert inside in text_of("slipway-smock", "cut to shape")
    assert inside not in text_of("pilot-tea-cosy", "cut to shape")


def test_marks_in_the_cloth_round_a_shape_need_not_come_out() -> None:
    for project in ("slipway-smock", "pilot-tea-cosy"):
        text = text_of(project, "mark folds")
        assert "It goes with the cloth round the shape." in text
        assert "No seam hides it" not in text
