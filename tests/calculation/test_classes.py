"""Classes: counted by hand, and kit by kit from the slips."""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.making.class_paper import PrintLine, kit_slips, print_run
from generator.calculation.making.classes import (
    Booking,
    Kit,
    KitCount,
    class_amounts,
    kit_counts,
    mixed_editions,
)
from generator.errors import CalculationError

SMALL, MEDIUM, LARGE = Kit("small", "inch"), Kit("medium", "inch"), Kit("large", "metric")
KITS = st.sampled_from([SMALL, MEDIUM, LARGE])
BOOKINGS = st.lists(st.builds(Booking, KITS, st.integers(1, 6), own_cloth=st.booleans()), max_size=6)
SPARE = st.dictionaries(KITS, st.integers(0, 3))
CLASS = [Booking(SMALL, 4), Booking(MEDIUM, 3, ("Ines", "Ode")), Booking(LARGE, own_cloth=True)]


@given(BOOKINGS, SPARE)
def test_the_slips_counted_one_by_one_are_the_kits(bookings: list[Booking], spare: dict[Kit, int]) -> None:
    slips = kit_slips(bookings, spare)
    assert [slip.number for slip in slips] == list(range(1, len(slips) + 1))
    assert {slip.among for slip in slips} <= {len(slips)}
    packed = Counter(slip.kit for slip in slips)
    cut = Counter(slip.kit for slip in slips if not slip.own_cloth)
    for count in kit_counts(bookings, spare):
        assert count.packed == packed[count.kit]
        assert count.cut == cut[count.kit]


@given(BOOKINGS, SPARE)
def test_what_a_class_needs_is_the_sum_over_its_slips(bookings: list[Booking], spare: dict[Kit, int]) -> None:
    amounts = {SMALL: {"thread": Fraction(7, 2)}, MEDIUM: {"thread": Fraction(5)}, LARGE: {"thread": Fraction(9, 4)}}
    counts, slips = kit_counts(bookings, spare), kit_slips(bookings, spare)
    everyone = class_amounts(counts, amounts, own_cloth_too=True).get("thread", Fraction(0))
    room = class_amounts(counts, amounts, own_cloth_too=False).get("thread", Fraction(0))
    assert everyone == sum(amounts[slip.kit]["thread"] for slip in slips)
    assert room == sum(amounts[slip.kit]["thread"] for slip in slips if not slip.own_cloth)


def test_a_class_of_eight_with_a_spare_kit() -> None:
    # small 4 + 1 spare = 5; medium 3; large 1 with its own cloth, so nothing is cut for it
    assert kit_counts(CLASS, {SMALL: 1}) == (
        KitCount(SMALL, 4, 0, 1),
        KitCount(MEDIUM, 3, 0, 0),
        KitCount(LARGE, 1, 1, 0),
    )
    assert [count.cut for count in kit_counts(CLASS, {SMALL: 1})] == [5, 3, 0]


def test_places_without_a_name_have_an_empty_slip() -> None:
    assert [slip.student for slip in kit_slips(CLASS, {})] == ["", "", "", "", "Ines", "Ode", "", ""]


def test_the_spare_kits_come_last() -> None:
    assert [(slip.kit, slip.spare) for slip in kit_slips([Booking(MEDIUM)], {SMALL: 2})] == [
        (MEDIUM, False),
        (SMALL, True),
        (SMALL, True),
    ]


def test_the_print_run_begins_every_copy_on_a_new_sheet() -> None:
    # 5 copies of 7 pages on both sides: 4 sheets each; 3 of 8 pages: 4 each; a size that nobody takes is left out
    counts = [KitCount(SMALL, 4, 0, 1), KitCount(MEDIUM, 3, 0, 0), KitCount(LARGE, 0, 0, 0)]
    assert print_run(counts, {SMALL: 7, MEDIUM: 8}) == (PrintLine(SMALL, 5, 7, 20, 35), PrintLine(MEDIUM, 3, 8, 12, 24))


def test_of_a_handout_whose_pages_are_not_known_only_the_copies_are_told() -> None:
    counts = [KitCount(SMALL, 4, 0, 1), KitCount(LARGE, 1, 0, 0)]
    assert print_run(counts, {SMALL: 1})[1] == PrintLine(LARGE, 1, None, None, None)


def test_a_class_of_two_editions_says_so() -> None:
    assert mixed_editions(kit_counts(CLASS, {})) == (
        "this class mixes editions: 7 kits inch, 1 kit metric; their numbers differ, so keep the sheets apart"
    )
    assert mixed_editions(kit_counts(CLASS[:2], {})) == ""
    assert mixed_editions([]) == ""


@pytest.mark.parametrize(
    ("work", "message"),
    [
        (
            lambda: kit_slips([Booking(SMALL, 2, ("No", "Ines", "Ode"))], {}),
            "3 students are named for 2 places of size small; make the number 3 or take names out",
        ),
        (
            lambda: kit_counts([Booking(SMALL, 0)], {}),
            "the number of places of size small must be 1 or more, not 0",
        ),
        (lambda: kit_counts([], {SMALL: -1}), "the number of spare kits must be 0 or more, not -1"),
        (
            lambda: class_amounts([KitCount(SMALL, 1, 0, 0)], {}, own_cloth_too=True),
            "nothing is worked out for size small (inch)",
        ),
    ],
)
def test_a_class_that_cannot_be_is_refused(work: Callable[[], object], message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        work()
    assert str(refusal.value) == message


def test_as_many_names_as_places_leave_no_empty_slip() -> None:
    assert [slip.student for slip in kit_slips([Booking(SMALL, 2, ("Ines", "Ode"))], {})] == ["Ines", "Ode"]


def test_a_size_that_nobody_takes_does_not_end_the_print_run() -> None:
    counts = [KitCount(LARGE, 0, 0, 0), KitCount(SMALL, 1, 0, 0)]
    assert print_run(counts, {LARGE: 4, SMALL: 3}) == (PrintLine(SMALL, 1, 3, 2, 3),)
