"""The timetable of a class: steps with their minutes and the sessions come in, what happens when goes out.

The work is a line of minutes with the ends of steps marked on it. Each session takes a stretch of it; the stretches are
chosen so that sessions end where a step says that a session may end, else at the end of some step, and a step is broken
off only where nothing else fits. All times are whole minutes, those of the clock are counted from midnight.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache
from itertools import accumulate, pairwise

from generator.errors import CalculationError

_UNMARKED, _BROKEN_OFF, _IDLE_PARTS = 2, 5, 4
Ends = tuple[int, ...]


@dataclass(frozen=True, slots=True)
class TimedStep:
    """A step of the sheet: its title, how long it takes [min], and whether a session may well end after it.

    What does not ``keep``, such as creases or gathers on their pins, is not laid aside: that is like breaking it off.
    """

    title: str
    minutes: int
    session_ends: bool = False
    keeps: bool = True


@dataclass(frozen=True, slots=True)
class SessionTimes:
    """One meeting of the class: its day (as written), start and end by the clock, and its break [min]."""

    day: str
    starts: int
    ends: int
    breaks: int = 0

    @property
    def working(self) -> int:
        """Minutes left for sewing."""
        return self.ends - self.starts - self.breaks


@dataclass(frozen=True, slots=True)
class TimetableLine:
    """One line of a session's timetable: a step, or the break (``step`` 0).

    ``begun`` means that the step began before this line, ``goes_on`` that it goes on after it.
    """

    starts: int
    minutes: int
    step: int
    title: str
    begun: bool = False
    goes_on: bool = False


@dataclass(frozen=True, slots=True)
class SessionPlan:
    """A session with its lines; ``spare`` minutes are left at its end."""

    session: SessionTimes
    entries: tuple[TimetableLine, ...]
    spare: int


@dataclass(frozen=True, slots=True)
class Timetable:
    """The sessions of a class, the minutes of work for which there is no time, and what a teacher should know."""

    sessions: tuple[SessionPlan, ...]
    left_over: int
    findings: tuple[str, ...]


def clock(minutes: int) -> str:
    """Return a time of day as the class file writes it.

    Examples
    --------
    >>> clock(9 * 60 + 5), clock(0)
    ('9:05', '0:00')
    """
    return f"{minutes // 60}:{minutes % 60:02d}"


def timetable(steps: Sequence[TimedStep], sessions: Sequence[SessionTimes]) -> Timetable:
    """Return when each step of a class is done.

    All ways of ending the sessions at the end of a step, or when the time is up, are compared: first by the work that
    is left over, then by cost. A session that ends after an unmarked step costs 2, one that breaks a step off 5, and
    every whole quarter of a session left idle while there is work costs 1. Of equal ones, the one that does most early
    wins. The break stands at the end of the step nearest the middle of the session.

    Parameters
    ----------
    steps : sequence of TimedStep
        The steps in their order.
    sessions : sequence of SessionTimes
        The meetings in their order.

    Returns
    -------
    Timetable
        The lines of each session; minutes left over; findings.

    Raises
    ------
    CalculationError
        If a session has no time to sew, or there is none, or a step takes less than nothing.

    Examples
    --------
    An hour of marking, then two of stitching, in two sessions of two hours: the first ends after the marking.

    >>> meetings = [SessionTimes("Monday", 540, 660), SessionTimes("Tuesday", 540, 660)]
    >>> plan = timetable([TimedStep("mark", 60, True), TimedStep("stitch", 120)], meetings)
    >>> [[(clock(line.starts), line.title) for line in day.entries] for day in plan.sessions]
    [[('9:00', 'mark')], [('9:00', 'stitch')]]
    >>> plan.left_over
    0

    References
    ----------
    Common practice, no source.
    """
    _refuse(steps, sessions)
    ends = _session_ends(steps, tuple(session.working for session in sessions))
    starts = (0, *ends)
    plans = tuple(
        _session_plan(session, steps, starts[place], ends[place], first=place == 0)
        for place, session in enumerate(sessions)
    )
    whole = sum(step.minutes for step in steps)
    left_over = whole - ends[-1]
    return Timetable(plans, left_over, _findings(steps, plans, left_over))


def _refuse(steps: Sequence[TimedStep], sessions: Sequence[SessionTimes]) -> None:
    if not sessions:
        raise CalculationError("a class has at least one session; give its day, when it starts and when it ends")
    for session in sessions:
        if session.working <= 0:
            raise CalculationError(
                f"the session on {session.day} has no time to sew: {clock(session.starts)} to {clock(session.ends)} "
                f"with a break of {session.breaks} minutes"
            )
    for step in steps:
        if step.minutes < 0:
            raise CalculationError(f"the step '{step.title}' takes less than nothing; give it its minutes")


def _session_ends(steps: Sequence[TimedStep], working: tuple[int, ...]) -> Ends:
    """Where on the line of work each session ends: the best of all ways."""
    places = list(accumulate(step.minutes for step in steps))
    whole = places[-1] if places else 0
    marked = {place for place, step in zip(places, steps, strict=True) if step.session_ends}
    kept = {place for place, keeps in zip(places, (step.keeps for step in steps), strict=True) if keeps}

    def cost_of_ending(begins: int, end: int, time: int) -> int:
        if end == whole:
            return 0
        kind = 0 if end in marked else _UNMARKED if end in kept else _BROKEN_OFF
        return kind + _IDLE_PARTS * (time - (end - begins)) // time

    @cache
    def best(number: int, begins: int) -> tuple[int, int, int, Ends]:
        """Left over, cost, work not yet done summed over the sessions, and the ends, from a session on."""
        if number == len(working):
            return whole - begins, 0, 0, ()
        full = min(begins + working[number], whole)
        candidates = {full, *(place for place in places if begins < place < full)}
        ways = []
        for end in candidates:
            left_over, cost, undone, later = best(number + 1, end)
            cost += cost_of_ending(begins, end, working[number])
            ways.append((left_over, cost, undone + whole - end, (end, *later)))
        # Compared in this order: as little as possible left over, then where to stop, then work done early.
        return min(ways)

    return best(0, 0)[3]


def _session_plan(
    session: SessionTimes, steps: Sequence[TimedStep], begins: int, end: int, *, first: bool
) -> SessionPlan:
    entries = _work_entries(session, steps, begins, end, first=first)
    if session.breaks and end - begins > session.working // 2:
        entries = _with_break(entries, session, steps)
    return SessionPlan(session, tuple(entries), session.working - (end - begins))


def _work_entries(
    session: SessionTimes, steps: Sequence[TimedStep], begins: int, end: int, *, first: bool
) -> list[TimetableLine]:
    entries, place = [], 0
    for number, step in enumerate(steps, 1):
        near, far = max(place, begins), min(place + step.minutes, end)
        at_once = step.minutes == 0 and (begins < place <= end or (first and place == 0))
        if near < far or at_once:
            starts = session.starts + near - begins
            begun, goes_on = near > place, far < place + step.minutes
            entries.append(TimetableLine(starts, far - near, number, step.title, begun, goes_on))
        place += step.minutes
    return entries


def _with_break(entries: list[TimetableLine], session: SessionTimes, steps: Sequence[TimedStep]) -> list[TimetableLine]:
    """The entries with the break after the step nearest the middle that keeps, or within a long step in the middle."""
    middle = session.starts + session.working // 10 * 5
    pauses = [after.starts for entry, after in pairwise(entries) if steps[entry.step - 1].keeps]
    pause = min(pauses, key=lambda place: abs(place - middle), default=middle)
    if abs(pause - middle) * _IDLE_PARTS > session.working:
        pause = middle
    lines = []
    for entry in entries:
        ends = entry.starts + entry.minutes
        if entry.starts < pause < ends:
            lines.append(TimetableLine(entry.starts, pause - entry.starts, entry.step, entry.title, entry.begun, True))
            lines.append(TimetableLine(pause, ends - pause, entry.step, entry.title, True, entry.goes_on))
        else:
            lines.append(entry)
    before = [line for line in lines if line.starts < pause]
    after = [
        TimetableLine(line.starts + session.breaks, line.minutes, line.step, line.title, line.begun, line.goes_on)
        for line in lines
        if line.starts >= pause
    ]
    return [*before, TimetableLine(pause, session.breaks, 0, "Break"), *after]


def _findings(steps: Sequence[TimedStep], plans: Sequence[SessionPlan], left_over: int) -> tuple[str, ...]:
    findings = []
    for plan in plans[:-1]:
        last = plan.entries[-1] if plan.entries else None
        if last is not None and last.goes_on:
            findings.append(f"the session on {plan.session.day} ends in the middle of '{last.title}'")
        elif last is not None and not steps[last.step - 1].keeps:
            findings.append(f"the session on {plan.session.day} ends after '{last.title}', which does not keep")
    if left_over:
        whole = sum(step.minutes for step in steps)
        findings.append(
            f"the work takes {clock(whole)} h and the sessions hold {clock(whole - left_over)} h of it; {left_over} "
            "minutes are left over: cut more beforehand, or add time"
        )
    return tuple(findings)
