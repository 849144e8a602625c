"""The days of a class: kits and sessions come in, the timetable of the slowest kit goes out."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import time
from fractions import Fraction

from generator.calculation.making.timetable import SessionTimes, TimedStep, Timetable, timetable
from generator.calculation.making.timing import printed_minutes
from generator.calculation.worked_project import SheetStep
from generator.calculation.worksheet.class_kits import KitWork, cutting_minutes
from generator.definitions.class_plan import ClassPlan
from generator.definitions.room import Room
from generator.errors import CalculationError, FaultyFileError, Finding


def slowest_kit(kits: Sequence[KitWork], room: Room) -> KitWork:
    """Return the kit that takes longest: the whole class waits for it."""
    return max(kits, key=lambda work: sum(step.minutes for step in timed_steps(work, room)))


def timed_steps(work: KitWork, room: Room) -> tuple[TimedStep, ...]:
    """Return the steps of a kit at the beginners' pace, without what is cut before the class.

    A step keeps its number: one that is wholly done before the class stays, and takes no time.
    """
    return tuple(
        TimedStep(_title(step, work), _minutes(step, work, room), step.session_ends, step.keeps)
        for step in work.worksheet.steps
    )


def _title(step: SheetStep, work: KitWork) -> str:
    named = [piece.label for piece, _ in work.pieces if piece.name in step.pieces and piece.name in _done(work)]
    if step.standard != "cut" or not named:
        return step.title
    return f"{step.title} ({', '.join(named)} cut beforehand)"


def _done(work: KitWork) -> tuple[str, ...]:
    """The pieces that everyone with this kit finds cut; who brings cloth cuts it in the class."""
    return () if work.count.own_cloth else work.beforehand


def _minutes(step: SheetStep, work: KitWork, room: Room) -> int:
    minutes = step.minutes * room.beginners
    if step.standard == "cut":
        left = tuple(name for name in step.pieces if name not in _done(work))
        whole = cutting_minutes(work, step.pieces, room)
        minutes *= cutting_minutes(work, left, room) / whole if whole else Fraction(1)
    return printed_minutes(minutes)


def class_timetable(plan: ClassPlan, work: KitWork, room: Room) -> Timetable:
    """Return when each step of a kit is done.

    Raises
    ------
    FaultyFileError
        If a session has no time to sew.
    """
    sessions = [
        SessionTimes(session.day.isoformat(), _minute(session.starts), _minute(session.ends), session.breaks)
        for session in plan.sessions
    ]
    try:
        return timetable(timed_steps(work, room), sessions)
    except CalculationError as fault:
        places = (named.place for named, timed in zip(plan.sessions, sessions, strict=True) if timed.working <= 0)
        raise FaultyFileError([Finding("error", str(fault), next(places, None))]) from fault


def _minute(moment: time) -> int:
    return moment.hour * 60 + moment.minute
