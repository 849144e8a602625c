"""Timetables: laid out by hand, and walked through minute by minute."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.calculation.making.timetable import SessionTimes, TimedStep, Timetable, TimetableLine, clock, timetable
from generator.errors import CalculationError

NINE, HALF_PAST_NINE, NOON = 9 * 60, 9 * 60 + 30, 12 * 60
STEPS = st.lists(
    st.builds(TimedStep, st.just("work"), st.integers(0, 40).map(lambda n: 5 * n), st.booleans()), max_size=8
)
SESSIONS = st.lists(
    st.builds(
        lambda starts, working, pause: SessionTimes("a day", starts, starts + working + pause, pause),
        st.integers(480, 900),
        st.integers(6, 48).map(lambda n: 5 * n),
        st.sampled_from([0, 10, 15]),
    ),
    min_size=1,
    max_size=4,
)


def lines(plan: Timetable) -> list[list[tuple[str, str]]]:
    return [[(clock(entry.starts), entry.title) for entry in session.entries] for session in plan.sessions]


@given(STEPS, SESSIONS)
def test_every_step_gets_its_minutes_or_is_told_as_left_over(
    steps: list[TimedStep], sessions: list[SessionTimes]
) -> None:
    plan = timetable(steps, sessions)
    worked = [0] * (len(steps) + 1)
    order = []
    for session in plan.sessions:
        for entry in session.entries:
            if entry.step:
                worked[entry.step] += entry.minutes
                order.append(entry.step)
    assert order == sorted(order)
    assert sum(worked) + plan.left_over == sum(step.minutes for step in steps)
    done_before_all = [worked[number] == step.minutes for number, step in enumerate(steps, 1) if step.minutes]
    assert sorted(done_before_all, reverse=True) == done_before_all


@given(STEPS, SESSIONS)
def test_a_session_runs_without_gap_and_within_the_clock(steps: list[TimedStep], sessions: list[SessionTimes]) -> None:
    for plan in timetable(steps, sessions).sessions:
        now = plan.session.starts
        for entry in plan.entries:
            assert entry.starts == now
            now += entry.minutes
        assert now <= plan.session.ends
        pauses = [entry for entry in plan.entries if not entry.step]
        assert len(pauses) <= 1
        assert all(entry.minutes == plan.session.breaks for entry in pauses)
        spent = sum(entry.minutes for entry in plan.entries if entry.step)
        assert plan.spare == plan.session.working - spent


@given(STEPS, SESSIONS)
def test_nothing_is_left_over_while_there_is_time(steps: list[TimedStep], sessions: list[SessionTimes]) -> None:
    whole = sum(step.minutes for step in steps)
    assert timetable(steps, sessions).left_over == max(0, whole - sum(session.working for session in sessions))


@given(STEPS, SESSIONS)
def test_a_step_is_broken_off_only_where_it_is_told(steps: list[TimedStep], sessions: list[SessionTimes]) -> None:
    plan = timetable(steps, sessions)
    broken = [day for day in plan.sessions[:-1] if day.entries and day.entries[-1].goes_on]
    assert sum("ends in the middle" in finding for finding in plan.findings) == len(broken)
    assert any("left over" in finding for finding in plan.findings) == (plan.left_over > 0)


def test_a_session_ends_where_a_step_says_that_it_may() -> None:
    # 150 working minutes each: marking 60 and stitching 60 end at the mark after 120, although the 20 of ruling would
    # still fit
    steps = [TimedStep("mark", 60), TimedStep("stitch", 60, True), TimedStep("rule", 20), TimedStep("rows", 100)]
    sessions = [SessionTimes("first", NINE, NINE + 165, 15), SessionTimes("second", NINE, NINE + 165, 15)]
    assert lines(timetable(steps, sessions)) == [
        [("9:00", "mark"), ("10:00", "Break"), ("10:15", "stitch")],
        [("9:00", "rule"), ("9:20", "rows"), ("10:15", "Break"), ("10:30", "rows")],
    ]


def test_a_mark_is_passed_over_when_the_rest_would_not_fit() -> None:
    # After the mark 130 minutes are left and the second session holds 120
    steps = [TimedStep("mark", 100, True), TimedStep("stitch", 20), TimedStep("rows", 110)]
    sessions = [SessionTimes("first", NINE, NINE + 120), SessionTimes("second", NINE, NINE + 120)]
    assert lines(timetable(steps, sessions)) == [[("9:00", "mark"), ("10:40", "stitch")], [("9:00", "rows")]]


def test_a_step_longer_than_a_session_is_broken_off_and_told() -> None:
    plan = timetable(
        [TimedStep("rows", 200)], [SessionTimes("Monday", NINE, NINE + 120), SessionTimes("Tuesday", NINE, NINE + 120)]
    )
    assert [day.entries for day in plan.sessions] == [
        (TimetableLine(NINE, 120, 1, "rows", goes_on=True),),
        (TimetableLine(NINE, 80, 1, "rows", begun=True),),
    ]
    assert plan.findings == ("the session on Monday ends in the middle of 'rows'",)


def test_work_that_does_not_fit_is_told_with_what_to_do() -> None:
    plan = timetable([TimedStep("rows", 200)], [SessionTimes("Monday", NINE, NINE + 120)])
    assert plan.left_over == 80
    assert plan.findings == (
        "the work takes 3:20 h and the sessions hold 2:00 h of it; 80 minutes are left over: cut more beforehand, "
        "or add time",
    )


def test_the_break_stands_between_steps_near_the_middle() -> None:
    # 9:30 to 12:30 less 15: 165 working, the middle at 10:50; the step that ends at 10:40 is nearest
    steps = [TimedStep("cut", 30), TimedStep("mark", 40), TimedStep("stitch", 90)]
    plan = timetable(steps, [SessionTimes("a day", HALF_PAST_NINE, NOON + 30, 15)])
    assert lines(plan) == [[("9:30", "cut"), ("10:00", "mark"), ("10:40", "Break"), ("10:55", "stitch")]]
    assert plan.sessions[0].spare == 5


def test_a_class_that_ends_before_its_middle_has_no_break() -> None:
    plan = timetable([TimedStep("cut", 30)], [SessionTimes("a day", HALF_PAST_NINE, NOON + 30, 15)])
    assert lines(plan) == [[("9:30", "cut")]]


def test_sessions_after_the_work_stay_empty() -> None:
    plan = timetable([TimedStep("cut", 30)], [SessionTimes("one", NINE, NOON), SessionTimes("two", NINE, NOON)])
    assert lines(plan) == [[("9:00", "cut")], []]
    assert plan.findings == ()


def test_a_step_without_minutes_stands_after_the_one_before_it() -> None:
    steps = [TimedStep("read", 0), TimedStep("cut", 30, True), TimedStep("look", 0), TimedStep("mark", 150)]
    plan = timetable(steps, [SessionTimes("one", NINE, NINE + 30), SessionTimes("two", NINE, NOON)])
    assert lines(plan) == [[("9:00", "read"), ("9:00", "cut"), ("9:30", "look")], [("9:00", "mark")]]


def test_steps_without_minutes_stand_once_in_the_first_session() -> None:
    plan = timetable([TimedStep("read", 0)], [SessionTimes("one", NINE, NOON), SessionTimes("two", NINE, NOON)])
    assert lines(plan) == [[("9:00", "read")], []]


@pytest.mark.parametrize(
    ("steps", "sessions", "message"),
    [
        ([], [], "a class has at least one session; give its day, when it starts and when it ends"),
        (
            [],
            [SessionTimes("2031-03-08", HALF_PAST_NINE, HALF_PAST_NINE + 15, 15)],
            "the session on 2031-03-08 has no time to sew: 9:30 to 9:45 with a break of 15 minutes",
        ),
        (
            [TimedStep("cut", -5)],
            [SessionTimes("a day", NINE, NOON)],
            "the step 'cut' takes less than nothing; give it its minutes",
        ),
    ],
)
def test_a_class_without_time_is_refused(steps: list[TimedStep], sessions: list[SessionTimes], message: str) -> None:
    with pytest.raises(CalculationError) as refusal:
        timetable(steps, sessions)
    assert str(refusal.value) == message


@pytest.mark.parametrize(("first", "told"), [(40, "9:40"), (39, "10:20")])
def test_a_break_moves_to_a_step_by_a_quarter_of_the_session_at_most(first: int, told: str) -> None:
    # 9:00 to 11:55 less 15: 160 working, the middle at 10:20, a quarter is 40 minutes.
    steps = [TimedStep("cut", first), TimedStep("stitch", 100)]
    plan = timetable(steps, [SessionTimes("a day", NINE, NINE + 175, 15)])
    assert (told, "Break") in lines(plan)[0]


def test_a_session_does_not_end_after_what_does_not_keep() -> None:
    # Creases come out again: of 40, 30 and 50 minutes in two sessions of 80 the first ends after the marking.
    creases = [TimedStep("mark", 40), TimedStep("crease", 30, keeps=False), TimedStep("stitch", 50)]
    meetings = [SessionTimes("Monday", NINE, NINE + 80), SessionTimes("Tuesday", NINE, NINE + 80)]
    assert [[line for _, line in day] for day in lines(timetable(creases, meetings))] == [
        ["mark"],
        ["crease", "stitch"],
    ]
    kept = [TimedStep(one.title, one.minutes) for one in creases]
    assert [[line for _, line in day] for day in lines(timetable(kept, meetings))] == [["mark", "crease"], ["stitch"]]


def test_a_break_stands_after_what_keeps_and_an_end_that_cannot_is_told() -> None:
    steps = [TimedStep("mark", 40), TimedStep("crease", 50, keeps=False), TimedStep("stitch", 60)]
    (day,) = timetable(steps, [SessionTimes("Monday", NINE, NINE + 160, 10)]).sessions
    # The middle is 75 minutes on; the crease ends at 90, but it does not keep.
    assert [entry.title for entry in day.entries] == ["mark", "Break", "crease", "stitch"]
    lacking = timetable(steps, [SessionTimes("Monday", NINE, NINE + 90), SessionTimes("Tuesday", NINE, NINE + 60)])
    assert lacking.findings[0] == "the session on Monday ends after 'crease', which does not keep"
