"""The days of a class for a calendar: a class worked out comes in, an iCalendar file (RFC 5545) goes out.

No clock is asked: the stamp of every day is the day on which the class was last changed, so that equal classes give
equal files, and a calendar takes a changed one in the place of the old.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta
from urllib.parse import urlsplit
from zoneinfo import ZoneInfo

from generator.calculation.making.timetable import SessionTimes
from generator.calculation.worksheet.class_work import ClassSheet
from generator.rendering import addresses
from generator.rendering.setting import Setting
from generator.rendering.sharing import absolute

# RFC 5545, 3.1: a line has 75 octets at most, without its end.
_LONGEST = 75
# The stamp of a class that was never changed; revisions are counted in days from here.
_FIRST = date(2000, 1, 1)


def class_calendar(sheet: ClassSheet, setting: Setting) -> bytes:
    """Return the sessions of a class as an iCalendar file.

    Times are in UTC where the room says its time zone. Else they float: they are told without a zone, and every device
    shows them as they stand, wherever it is.
    """
    lines = [
        "BEGIN:VCALENDAR",
        "VERSION:2.0",
        f"PRODID:-//{_text(setting.sign)}//classes//EN",
        "CALSCALE:GREGORIAN",
        *(line for number in range(len(sheet.timetable.sessions)) for line in _event(sheet, number, setting)),
        "END:VCALENDAR",
    ]
    return b"".join(_folded(line) for line in lines)


def _event(sheet: ClassSheet, number: int, setting: Setting) -> Iterator[str]:
    session = sheet.timetable.sessions[number].session
    changed = sheet.changed or _FIRST
    bring = f"Bring: {', '.join(sheet.bring)}." if sheet.bring else ""
    many = len(sheet.timetable.sessions)
    page = absolute(addresses.class_page(sheet.name), setting)
    yield "BEGIN:VEVENT"
    yield f"UID:{addresses.project_slug(sheet.name)}-{number + 1}@{urlsplit(page).hostname or setting.sign}"
    yield f"DTSTAMP:{changed:%Y%m%d}T000000Z"
    yield f"SEQUENCE:{max((changed - _FIRST).days, 0)}"
    yield f"DTSTART:{moment(session, session.starts, setting.time_zone)}"
    yield f"DTEND:{moment(session, session.ends, setting.time_zone)}"
    yield f"SUMMARY:{_text(sheet.title)}{f' ({number + 1} of {many})' if many > 1 else ''}"
    yield f"LOCATION:{_text(', '.join(filter(None, (setting.room, setting.place))))}"
    yield f"DESCRIPTION:{_text(' '.join(filter(None, (f'We sew: {sheet.project_title}.', bring))))}"
    if page:
        yield f"URL:{page}"
    yield "END:VEVENT"


def moment(session: SessionTimes, minutes: int, time_zone: str) -> str:
    """Return a time of a session, in minutes after midnight, as iCalendar writes it: in UTC, or floating.

    Examples
    --------
    British Summer Time began on 30 March 2031: half past nine was half past nine UTC before, half past eight after.

    >>> morning = SessionTimes("2031-03-08", 570, 750)
    >>> moment(morning, 570, "Europe/London"), moment(morning, 570, "")
    ('20310308T093000Z', '20310308T093000')
    """
    day = datetime.combine(date.fromisoformat(session.day), time()) + timedelta(minutes=minutes)
    if not time_zone:
        return f"{day:%Y%m%dT%H%M%S}"
    return f"{day.replace(tzinfo=ZoneInfo(time_zone)).astimezone(UTC):%Y%m%dT%H%M%S}Z"


def _text(words: str) -> str:
    r"""Words as a value of TEXT (RFC 5545, 3.3.11): backslash, semicolon, comma and the end of a line escaped."""
    escaped = words.replace("\\", "\\\\").replace(";", "\\;").replace(",", "\\,")
    return "\\n".join(escaped.splitlines())


def _folded(line: str) -> bytes:
    """A line cut before it grows too long, never within a letter; what follows begins with a space."""
    parts, part = [], b""
    for letter in line:
        octets = letter.encode()
        if len(part) + len(octets) > _LONGEST:
            parts.append(part)
            part = b" "
        part += octets
    return b"\r\n".join([*parts, part]) + b"\r\n"
