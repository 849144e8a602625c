"""A class worked out whole: cloth over all kits, shopping, money and paper, by hand."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
from class_on_disk import BANDED, CLASS, PRICES, the_class
from rooms_on_disk import CUSHION, WRAP, inches, put

from generator.calculation.cutting.cloth import Buying
from generator.calculation.cutting.layout import cutting_layout
from generator.calculation.laid import CutItem, Layout
from generator.calculation.making.classes import Kit
from generator.calculation.worksheet.class_cloth import one_after_the_other
from generator.calculation.worksheet.class_figures import class_figures
from generator.errors import FaultyFileError
from generator.lengths import INCH


def is_sound(layout: Layout) -> bool:
    """Every piece lies on the cloth and within one strip, and no two lie on each other."""
    on_cloth = all(
        piece.left >= 0
        and piece.left + piece.across <= layout.width
        and any(
            strip.top <= piece.top and piece.top + piece.along <= strip.bottom <= layout.length
            for strip in layout.strips
        )
        for piece in layout.placed
    )
    apart = all(
        one.left + one.across <= other.left
        or other.left + other.across <= one.left
        or one.top + one.along <= other.top
        or other.top + other.along <= one.top
        for number, one in enumerate(layout.placed)
        for other in layout.placed[:number]
    )
    return on_cloth and apart


def test_the_kits_of_a_class_are_its_sizes_and_editions(tmp_path: Path) -> None:
    found = the_class(tmp_path, CLASS + "spare kits:\n  small: 2\n")
    assert [(work.kit, work.count.packed, work.count.cut) for work in found.kits] == [
        (Kit("medium", "inch"), 3, 3),
        (Kit("small", "inch"), 3, 2),
    ]
    assert (found.name, found.note, found.project_title) == ("mornings", "Doors at nine.", "Jetty cushion")


def test_the_cloth_of_a_class_is_one_layout_over_all_kits(tmp_path: Path) -> None:
    # Three medium kits: fronts 32 x 18 1/4, six halves 12 1/2 x 17, on 44.  Beside a front are 12 in, too little for a
    # half, so three strips of 18 1/4; three halves side by side are 37 1/2, so two strips of 17: 54 3/4 + 34 = 88 3/4.
    # One by one 3 x 35 1/4 = 105 3/4.  Bought up to 4 1/2 in: 90 in, 2 1/2 yd.  The small place brings its own cloth.
    cloth = the_class(tmp_path).cloths["face"]
    assert [cloth.use.layout.length, cloth.apart, cloth.use.buy] == inches("88 3/4, 105 3/4, 90")
    assert (cloth.use.buy_text, cloth.kits) == ("2 1/2 yd", 3)
    assert len(cloth.use.layout.placed) == 9
    assert is_sound(cloth.use.layout)
    assert {piece.label for piece in cloth.use.layout.placed} == {"front, medium", "back, medium"}


def test_a_spare_kit_of_a_place_with_its_own_cloth_is_cut(tmp_path: Path) -> None:
    cloth = the_class(tmp_path, CLASS + "spare kits:\n  small: 1\n").cloths["face"]
    # One small kit more: front 23 1/2 x 13 3/4, halves 10 x 13.  A half fits beside a medium front (32 + 10 = 42), so
    # the two halves lie there; the small front lies in a strip of its own: 88 3/4 + 13 3/4 = 102 1/2.
    assert (cloth.use.layout.length, cloth.kits) == (Fraction(205, 2), 4)


def test_a_class_of_which_everyone_brings_cloth_buys_none(tmp_path: Path) -> None:
    text = put(CLASS, ("    student: Ines, Ode\n", "    own cloth: yes\n"))
    found = the_class(tmp_path, text)
    assert found.cloths == {}
    assert found.thread.spools > 0
    assert the_class(tmp_path, CLASS + "bring: face\n").cloths == {}


@pytest.mark.parametrize("numbers", [(1, 1), (3, 2)])
def test_one_layout_is_never_longer_than_the_kits_one_by_one(tmp_path: Path, numbers: tuple[int, int]) -> None:
    text = put(
        CLASS,
        ("number: 3\n    student: Ines, Ode\n", f"number: {numbers[0]}\n"),
        ("own cloth: yes", f"number: {numbers[1]}\n    edition: metric"),
    )
    cloth = the_class(tmp_path, text, BANDED).cloths["face"]
    assert cloth.use.layout.length <= cloth.apart
    assert cloth.use.layout.length >= cloth.use.layout.lower_bound
    assert is_sound(cloth.use.layout)


def test_layouts_one_after_the_other_keep_every_piece() -> None:
    items = [CutItem("a", "A", Fraction(20), Fraction(9), 2), CutItem("b", "B", Fraction(12), Fraction(5), 2)]
    one, other, both = (cutting_layout(some, Fraction(30)) for some in (items[:1], items[1:], items))
    # Two strips of 9, twice, and one strip of 5: 41, 10 steps of 4 1/2; the layout in its place, of 23, takes 6.
    found = one_after_the_other([(one, 2), (other, 1)], both, Buying(INCH.buy_step))
    assert (found.length, found.proven, found.steps_above) == (41, "open", 4)
    assert [(piece.piece, piece.copy) for piece in found.placed] == [
        ("a", 1),
        ("a", 2),
        ("a", 3),
        ("a", 4),
        ("b", 1),
        ("b", 2),
    ]
    assert is_sound(found)
    assert not is_sound(replace(found, strips=(replace(found.strips[0], along=Fraction(8)), *found.strips[1:])))


def test_supplies_are_added_up_and_told_apart_by_size(tmp_path: Path) -> None:
    found = the_class(tmp_path)
    assert [(line.item, line.amount) for line in found.supplies] == [
        ("Square cushion pad, 16 in each way", "3"),
        ("Square cushion pad, 12 in each way", "1"),
    ]


def test_what_students_bring_or_the_room_lends_is_not_bought(tmp_path: Path) -> None:
    more = put(CUSHION, ("supplies:\n", "supplies:\n  - item: Awls, for the rows\n  - item: Pins\n"))
    found = the_class(tmp_path, CLASS + "bring: square cushion pads\n", more, site="lends: awl\n")
    assert [(line.item, line.amount) for line in found.supplies] == [("Pins", "4")]
    assert [line.item for line in found.packed(found.kits[0])] == ["Pins"]
    assert (found.bring, found.lent) == (("square cushion pads",), ("awl",))


def test_buttons_are_counted_for_the_class(tmp_path: Path) -> None:
    text = put(CLASS, ("size: medium", "size: neck"), ("  - size: small\n    own cloth: yes\n", ""))
    # Three wraps with three buttons each.
    assert [(line.item, line.amount) for line in the_class(tmp_path, text, WRAP).supplies] == [
        ("buttons, 7/8 in across", "9")
    ]


def test_thread_is_added_up_and_its_spools_counted_once(tmp_path: Path) -> None:
    found = the_class(tmp_path, site="thread:\n  spool: 100 yd or 90 m\n  waste: 20 %\n")
    medium, small = (work.worksheet.thread.length for work in found.kits)
    assert found.thread.length == 3 * medium + small
    # Spools of 3600 in; whole ones are counted once.
    assert found.thread.spools == max(4, math.ceil(found.thread.length / 3600))


def test_who_sews_at_once_has_a_spool_of_her_own(tmp_path: Path) -> None:
    # Four places on spools that would last the whole class, and a spare kit at which nobody sews.
    site = "thread:\n  spool: 9000 yd or 9000 m\n"
    assert the_class(tmp_path, CLASS + "spare kits:\n  small: 1\n", site=site).thread.spools == 4


@pytest.mark.parametrize(("shared", "amount"), [("4 students", "2"), ("2", "3"), ("the class", "1"), ("1", "5")])
def test_what_students_share_is_bought_once_for_so_many(tmp_path: Path, shared: str, amount: str) -> None:
    # Four places and a spare kit: five. One for four is two, one for two is three.
    glue = put(CUSHION, ("supplies:\n", f"supplies:\n  - item: Glue, one bottle\n    shared by: {shared}\n"))
    found = the_class(tmp_path, CLASS + "spare kits:\n  small: 1\n", glue)
    assert [line.amount for line in found.supplies if line.item.startswith("Glue")] == [amount]
    in_bags = [line.item for work in found.kits for line in found.packed(work)]
    assert ("Glue, one bottle" in in_bags) is (shared == "1")


def test_a_number_of_students_is_asked_for(tmp_path: Path) -> None:
    glue = put(CUSHION, ("supplies:\n", "supplies:\n  - item: Glue\n    shared by: some\n"))
    with pytest.raises(FaultyFileError, match="'some' is no number of students; write for example 'shared by: 4 stu"):
        the_class(tmp_path, CLASS, glue)


def test_a_class_costs_what_it_buys(tmp_path: Path) -> None:
    found = the_class(tmp_path, site=PRICES)
    # Cloth 2 1/2 yd at 12: 30.00.  Pads 3 and 1 at 6.50: 19.50 and 6.50.  Thread as many spools as counted, at 2.
    spools = found.thread.spools
    assert [str(line.cost) for line in found.bill.lines] == ["£30.00", f"£{2 * spools}.00", "£19.50", "£6.50"]
    assert str(found.bill.whole) == f"£{56 + 2 * spools}.00"
    assert found.bill.unpriced == ()
    assert found.kits[0].worksheet.cost.startswith("£22.00: face (1 1/8 yd) £13.50")


def test_every_bag_has_a_slip(tmp_path: Path) -> None:
    found = the_class(tmp_path, CLASS + "spare kits:\n  small: 1\n")
    assert [(slip.number, slip.kit.size, slip.student, slip.own_cloth, slip.spare) for slip in found.slips] == [
        (1, "medium", "Ines", False, False),
        (2, "medium", "Ode", False, False),
        (3, "medium", "", False, False),
        (4, "small", "", True, False),
        (5, "small", "", False, True),
    ]


def test_mixed_editions_are_said(tmp_path: Path) -> None:
    text = put(CLASS, ("    own cloth: yes\n", "    edition: metric\n"))
    found = the_class(tmp_path, text)
    assert [finding.text for finding in found.findings if "editions" in finding.text] == [
        "this class mixes editions: 3 kits inch, 1 kit metric; their numbers differ, so keep the sheets apart"
    ]
    # Small, metric: 13 tucks 2 cm apart with margins of 3 are 30 cm, cut 30 + 26 + 3; a half (30 + 8) / 2 + 1.5 + 5.
    assert {piece.label for piece in found.cloths["face"].use.layout.placed} == {
        "front, medium inch",
        "back, medium inch",
        "front, small metric, trimmed to 59 × 35.5 cm",
        "back, small metric, trimmed to 25.5 × 33 cm",
    }


def test_a_layout_over_two_editions_has_one_ruler(tmp_path: Path) -> None:
    # 59 cm are 23.23 in and 35.5 cm 13.98 in: cut out at 23 1/4 and 14. No length lies between two marks.
    text = put(CLASS, ("    own cloth: yes\n", "    edition: metric\n"))
    layout = the_class(tmp_path, text).cloths["face"].use.layout
    lengths = [length for piece in layout.placed for length in (piece.left, piece.top, piece.across, piece.along)]
    lengths += [length for strip in layout.strips for length in (strip.top, strip.along)]
    assert [length for length in lengths if (length * 16).denominator != 1] == []
    front = next(piece for piece in layout.placed if piece.label.startswith("front, small"))
    assert sorted((front.across, front.along)) == [Fraction(14), Fraction(93, 4)]
    assert is_sound(layout)


def test_what_waits_for_the_panel_is_called_later_in_the_layout(tmp_path: Path) -> None:
    waiting = put(CUSHION, ("    kind: envelope back\n", "    kind: envelope back\n    cut: after the panel\n"))
    cloth = the_class(tmp_path, CLASS, waiting).cloths["face"]
    assert {piece.label for piece in cloth.use.layout.placed} == {"front, medium", "back, medium, later"}
    assert cloth.later
    assert not the_class(tmp_path, CLASS).cloths["face"].later


def test_the_figures_of_a_class_are_exact_text_under_fixed_keys(tmp_path: Path) -> None:
    text = CLASS + "cut beforehand: front\n"
    told = class_figures(the_class(tmp_path, text, site=PRICES), {Kit("medium", "inch"): 7})
    found: dict[str, Any] = json.loads(json.dumps(told))
    assert {"class", "title", "project", "edition", "unit", "paper", "kits", "cloth", "thread", "supplies"} <= set(
        found
    )
    assert {"cost", "slips", "timetable", "print_run", "bring", "lent", "findings"} <= set(found)
    cloth = found["cloth"]["face"]
    assert {key: cloth[key] for key in ("label", "kits", "width", "length", "lower_bound", "apart", "buy")} == {
        "label": "cotton",
        "kits": 3,
        "width": "44",
        "length": "88 3/4",
        # Nothing lies beside a front: 3 x 18 1/4 + 6 x 12 1/2 x 17 / 44 = 54 3/4 + 28 43/44, up to quarters
        "lower_bound": "83 3/4",
        "apart": "105 3/4",
        # 88 3/4 and 1 to straighten are 89 3/4: twenty steps of 4 1/2 are 90, 1/4 is left over.
        "buy": "2 1/2 yd",
    }
    assert (cloth["proven"], cloth["straighten"], cloth["left_over"]) == ("shortest", "1", "1/4")
    # Three fronts below each other and two strips of three halves.
    assert [(strip["from"], strip["height"], strip["times"]) for strip in cloth["strips"]] == [
        ("0", "18 1/4", 3),
        ("54 3/4", "17", 2),
    ]
    assert [[piece["piece"] for piece in stack["pieces"]] for stack in cloth["strips"][1]["stacks"]] == [["back"]] * 3
    assert found["kits"][0]["pieces"][0] == {
        "piece": "front",
        "label": "front",
        "quantity": 1,
        "across": "32",
        "along": "18 1/4",
        "cut_beforehand": True,
        "after_panel": False,
    }
    # 3 copies of 7 pages: 4 sheets each on both sides; how many pages the other handout has is not known.
    assert [list(line.values()) for line in found["print_run"]] == [
        ["medium", "inch", "A4", 3, 7, 12, 21],
        ["small", "inch", "A4", 1, None, None, None],
    ]
    assert found["timetable"]["sessions"][0]["steps"][0]["at"] == "9:30"
    assert found["cost"]["lines"][0] == {"item": "face", "amount": "2 1/2 yd", "cost": "£30.00"}


def test_the_layout_of_a_class_keeps_a_whole_repeat_beside_each_striped_panel(tmp_path: Path) -> None:
    """A sheet lays two panels from one stripe and says from where to measure; over all kits each finds its own."""
    stripes = "label: cotton\n    stripes: navy 3/4 in, white 3/4 in\n    fold on: navy\n    width: 66 1/2 in"
    text = put(
        CUSHION,
        ("label: cotton\n    width: 44 in", stripes),
        ("  front:\n", "  front:\n    quantity: 2\n"),
        ("pieces:\n", "  plain:\n    label: plain cotton\n    width: 44 in or 112 cm\npieces:\n"),
        ("kind: envelope back\n", "kind: envelope back\n    cloth: plain\n"),
    )
    [work, _] = the_class(tmp_path, of=text).kits
    assert work.worksheet.cloths["face"].lead == Fraction(3, 2)
    cloth = the_class(tmp_path, of=text).cloths["face"]
    assert cloth.use.lead == 0
    # 32 and a repeat are 33 1/2, so a front lies alone on 66 1/2.
    assert {stack.across for strip in cloth.use.layout.strips for stack in strip.stacks} == {Fraction(67, 2)}
