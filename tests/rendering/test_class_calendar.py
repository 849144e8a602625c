"""The days of a class as a calendar file, read by a library for RFC 5545, and what the class costs."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime
from typing import Any

import pytest
from icalendar import Calendar
from mooring_room import mooring, two_mornings
from room_setting import setting

from generator.calculation.worksheet.class_prices import class_prices
from generator.calculation.worksheet.class_work import ClassSheet
from generator.errors import CalculationError
from generator.rendering.class_calendar import class_calendar
from generator.rendering.setting import Setting

LONG = "Två förmiddagar; tucks, turned \\ and tacked – with tea, " * 3


def events(sheet: ClassSheet, room: Setting) -> list[Any]:
    calendar = Calendar.from_ical(class_calendar(sheet, room))
    assert not calendar.errors
    return list(calendar.walk("VEVENT"))


def test_every_session_is_read_back_with_its_hours() -> None:
    first, second = events(two_mornings(), setting())
    assert (first.decoded("dtstart"), first.decoded("dtend")) == (
        datetime(2031, 3, 8, 9, 30),
        datetime(2031, 3, 8, 12, 30),
    )
    assert second.decoded("dtend") == datetime(2031, 3, 15, 13, 0)
    assert str(second["summary"]) == "Two mornings (2 of 2)"
    assert "scissors" in str(first["description"])


def test_a_room_that_says_its_time_zone_tells_hours_in_utc() -> None:
    # The summer time of the European Union begins on the last Sunday of March (Directive 2000/84/EC, article 2), so
    # Lisbon is at UTC on 8 March and an hour before it on 5 April.
    sheet = two_mornings()
    days = [
        replace(plan, session=replace(plan.session, day=day))
        for plan, day in zip(sheet.timetable.sessions, ("2031-03-08", "2031-04-05"), strict=True)
    ]
    moved = replace(sheet, timetable=replace(sheet.timetable, sessions=tuple(days)))
    found = [event.decoded("dtstart") for event in events(moved, replace(setting(), time_zone="Europe/Lisbon"))]
    assert found == [datetime(2031, 3, 8, 9, 30, tzinfo=UTC), datetime(2031, 4, 5, 8, 30, tzinfo=UTC)]


def test_lines_end_and_are_folded_as_the_standard_asks_and_words_come_back_whole() -> None:
    # RFC 5545, 3.1: lines end in CR and LF and have 75 octets at most, without these; no letter is cut.
    sheet = replace(two_mornings(), title=LONG.strip())
    written = class_calendar(sheet, setting())
    assert written.endswith(b"\r\n")
    lines = written.removesuffix(b"\r\n").split(b"\r\n")
    assert max(map(len, lines)) == 75
    assert [line for line in lines if b"\n" in line or b"\r" in line] == []
    assert [line.decode() for line in lines]
    assert str(events(sheet, setting())[0]["summary"]) == f"{LONG.strip()} (1 of 2)"


def test_a_day_keeps_its_name_when_it_is_moved_and_the_file_says_that_it_is_newer() -> None:
    sheet = two_mornings()
    moved = replace(sheet, changed=date(2031, 2, 1))
    before, after = events(sheet, setting()), events(moved, setting())
    assert [str(event["uid"]) for event in before] == [str(event["uid"]) for event in after]
    assert len({str(event["uid"]) for event in before}) == 2
    assert after[0].decoded("dtstamp") == datetime(2031, 2, 1, tzinfo=UTC)
    assert after[0]["sequence"] > before[0]["sequence"]


def test_a_file_is_the_same_bytes_twice() -> None:
    assert class_calendar(two_mornings(), setting()) == class_calendar(two_mornings(), setting())


def test_a_class_costs_its_fee_and_the_kit() -> None:
    sheet = two_mornings()
    prices = class_prices("20.00", sheet.kits, (*sheet.bring, *sheet.lent), mooring().shared.room)
    for price, work in zip(prices, sheet.kits, strict=True):
        # The face is the only thing with a price: ten for each yard of it that is bought.
        pence = round(work.worksheet.cloths["face"].buy / 36 * 1000)
        assert price.kit is not None
        assert (price.kit.minor, price.whole.minor) == (pence, 2000 + pence)


def test_a_class_without_a_fee_tells_no_price_and_a_fee_must_be_money() -> None:
    sheet, room = two_mornings(), mooring().shared.room
    assert class_prices("", sheet.kits, (), room) == ()
    with pytest.raises(CalculationError):
        class_prices("much", sheet.kits, (), room)


def test_own_measures_are_told_to_nobody_else() -> None:
    sheet = two_mornings()
    kits = [replace(sheet.kits[0], own=True), *sheet.kits[1:]]
    prices = class_prices("20.00", kits, (), mooring().shared.room)
    assert len(prices) == len(sheet.kits) - 1
