from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from cushion_sheet import cushion
from placeholder_pictures import placeholder, placeholders

from generator.calculation.worked_project import Worksheet
from generator.drawing.picture import Picture
from generator.rendering.figures import Figure, arranged, sheet_image
from generator.rendering.page_svg import inline_svg


def test_figures_are_numbered_in_reading_order() -> None:
    shown = arranged(cushion(), placeholders()).shown
    assert [figure.number for figure in shown] == list(range(1, len(shown) + 1))
    assert [figure.picture.key for figure in shown] == [
        "piece back",
        "layout face",
        "fold marks front",
        "stitching front",
        "turns front",
        "checking front",
    ]


def test_a_second_step_only_refers_to_a_figure() -> None:
    steps = arranged(cushion(), placeholders()).steps
    assert [(figure.number, figure.first) for figure in steps[2]] == [(3, True)]
    assert [(figure.number, figure.first) for figure in steps[5]] == [(3, False)]


def test_a_panel_that_is_drawn_flat_is_not_drawn_as_a_piece_too() -> None:
    pictures = {**placeholders(), "piece front": (placeholder("piece front", 4, 3),)}
    assert "piece front" not in [figure.picture.key for figure in arranged(cushion(), pictures).shown]


def made_up(*kinds: str) -> dict[str, tuple[Picture, ...]]:
    """Placeholders of a cushion whose back is made up in several ways."""
    drawings = (placeholder(f"assembly {kind} back", 4, 2) for kind in kinds)
    return {**placeholders(), **{drawing.key: (drawing,) for drawing in drawings}}


def with_last_step(*keys: str, standard: str) -> Worksheet:
    """A cushion whose last step is done on the back and names some pictures."""
    worksheet = cushion()
    last = dataclasses.replace(worksheet.steps[-1], pieces=("back",), standard=standard, figures=keys)
    return dataclasses.replace(worksheet, steps=(*worksheet.steps[:-1], last))


def keys_of(figures: Iterable[Figure]) -> list[str]:
    return [figure.picture.key for figure in figures]


def test_a_step_may_name_one_way_of_making_up_or_all() -> None:
    pictures = made_up("breadths", "board")
    one = arranged(with_last_step("assembly breadths back", standard="join breadths"), pictures)
    assert keys_of(one.steps[max(one.steps)]) == ["assembly breadths back"]
    assert keys_of(one.after) == ["assembly board back"]
    every = arranged(with_last_step("assembly back", standard="join breadths"), pictures)
    assert keys_of(every.steps[max(every.steps)]) == ["assembly breadths back", "assembly board back"]
    assert every.after == ()


def test_making_up_that_no_step_names_stands_at_a_last_step_of_the_projects_own() -> None:
    own = arranged(with_last_step(standard=""), made_up("board"))
    assert keys_of(own.steps[max(own.steps)]) == ["assembly board back"]
    assert own.after == ()
    standard = arranged(with_last_step(standard="fill"), made_up("board"))
    assert standard.steps[max(standard.steps)] == ()
    assert keys_of(standard.after) == ["assembly board back"]


def test_marks_that_no_step_names_stand_before_all_steps_and_those_of_cross_tucks_after() -> None:
    steps = tuple(dataclasses.replace(step, figures=(), standard="fill") for step in cushion().steps)
    bare = dataclasses.replace(cushion(), steps=steps)
    arrangement = arranged(
        bare, {**placeholders(), "cross fold marks front": (placeholder("cross fold marks front", 4, 3),)}
    )
    assert keys_of(arrangement.before) == ["layout face", "fold marks front", "piece back"]
    assert keys_of(arrangement.after) == ["cross fold marks front"]


def test_the_finished_thing_stands_on_the_page_of_a_size_from_both_sides() -> None:
    front, back = (placeholder(f"thing {side}", 3, 3) for side in ("front", "back"))
    both = arranged(cushion(), {"thing front": (front,), "thing back": (back,), **placeholders()})
    assert both.things == (front, back)


def test_a_step_without_its_picture_is_still_told() -> None:
    without = arranged(cushion(), {})
    assert without.shown == ()
    assert set(without.steps) == {step.number for step in cushion().steps}


def test_ids_of_two_pictures_on_a_page_never_meet() -> None:
    picture = placeholder("layout face", 6, 4)
    first, second = inline_svg(picture, "p1-"), inline_svg(picture, "p2-")
    assert 'id="p1-frame"' in first
    assert "url(#p1-frame)" in first
    assert 'id="p2-frame"' in second
    assert 'id="frame"' not in first + second


def test_what_a_picture_tells_is_escaped() -> None:
    picture = dataclasses.replace(placeholder("layout face", 6, 4), alt='"><script>')
    assert "<script>" not in inline_svg(picture, "p1-")
    assert "<script>" not in sheet_image({}, (7.0, 9.0), 1.0)(picture)


def test_a_picture_fills_no_more_than_its_room() -> None:
    memory: dict[str, str] = {}
    image = sheet_image(memory, (7.0, 5.0), 1.5)
    # 8 x 4 in: as wide as the room, 7 x 3.5. 3 x 5 in: as high as the room, 3 x 5. 2 x 1 in: one and a half times.
    for size, said in (
        ((8, 4), "7.0000in;height:3.5000in"),
        ((3, 5), "3.0000in;height:5.0000in"),
        ((2, 1), "3.0000in;height:1.5000in"),
    ):
        assert f"width:{said}" in image(placeholder("layout face", *size))
    assert list(memory) == ["1.svg", "2.svg", "3.svg"]
