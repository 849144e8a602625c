from __future__ import annotations

from functools import cache

from mooring_room import two_mornings
from opened_pdf import texts, whole_text
from room_setting import setting

from generator.rendering.class_pack import cutting_pictures, render_class_pack, render_class_slips, slips


@cache
def pages() -> list[str]:
    """The pack, then the slips."""
    sheets = (render(two_mornings(), setting(), "A4") for render in (render_class_pack, render_class_slips))
    return [page for sheet in sheets for page in texts(sheet)]


def whole() -> str:
    return " ".join(pages())


def test_the_pack_counts_places_kits_and_copies() -> None:
    # Three places and a spare kit are small; the large one brings its own cloth, so that only four are cut.
    assert "Stool inch 3 – 1 4 4" in whole()
    assert "Bench metric 1 1 – 1 –" in whole()
    assert "mooring-small-inch-a4.pdf Stool inch 4" in whole()
    assert "mooring-large-metric-a4.pdf Bench metric 1" in whole()


def test_mixed_editions_are_told() -> None:
    assert "Please note. This class mixes editions: 4 kits inch, 1 kit metric" in whole()


def test_the_pack_tells_what_to_buy_for_all_kits_together() -> None:
    cloth = two_mornings().cloths["face"].use
    assert f"Face {cloth.buy_text}" in whole()
    assert "4 Pad, 12 in each way" in whole()
    assert "Students bring: scissors." in whole()
    assert "The room lends: iron." in whole()
    assert "In all 20.00" in whole()


def test_the_cutting_layout_shows_every_piece_that_the_room_cuts() -> None:
    # Four kits of one front and two halves of a back.
    (pictures,) = cutting_pictures(two_mornings(), setting()).values()
    assert "12 pieces" in pictures[0].alt
    assert "Cutting out, all kits together" in whole()


def test_every_kit_has_a_slip() -> None:
    told = slips(two_mornings())
    assert len(told) == 5
    for number in range(1, 6):
        assert whole().count(f"Two mornings, kit {number} of 5") == 1
    assert "Ines" in whole()
    assert "Ode" in whole()
    assert "Spare" in pages()[-1]


def test_a_slip_names_pieces_with_their_size_and_when_they_are_cut() -> None:
    lines = [(str(line.thing), line.when) for line in slips(two_mornings())[0].lines]
    things = [thing for thing, _ in lines]
    assert "23" in things[0]
    assert [when for _, when in lines[:2]] == ["cut beforehand", "cut in the class"]
    assert "1 × front, 23 1/2 × 13 3/4 in (cut beforehand)" in whole()
    assert not any("Scissors" in thing for thing in things)


def test_a_slip_for_own_cloth_says_how_much_to_bring() -> None:
    told = slips(two_mornings())[3]
    assert told.slip.own_cloth
    assert "brings own cloth: face 1.2 m" in whole()
    assert {line.when for line in told.lines if line.when} == {"from own cloth"}


def test_the_timetable_has_both_mornings_and_every_step() -> None:
    days = whole()[whole().index("Timetable") : whole().index("Cutting out, all kits")]
    for words in ("2031-03-08, 9:30 to 12:30", "2031-03-15, 9:30 to 13:00", "Break"):
        assert words in days
    for step in two_mornings().slowest.worksheet.steps:
        assert f"{step.number}. " in days


def test_large_print_has_all_slips_too() -> None:
    text = whole_text(render_class_slips(two_mornings(), setting("large-print"), "Letter"))
    assert all(f"kit {number} of 5" in text for number in range(1, 6))
