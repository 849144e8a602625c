"""Pages of classes on the site: a class worked out comes in, the HTML text of its page goes out, without its students.

Who comes and which size everybody makes stays in the class pack: a page on the web tells neither.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from generator.calculation.making.timetable import clock
from generator.calculation.worksheet.class_work import ClassSheet
from generator.rendering import addresses
from generator.rendering.cards import ClassCard
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting
from generator.rendering.structured import class_data

_SIGN_UP = "sign up form"


def render_class(sheet: ClassSheet, setting: Setting) -> str:
    """Return the page of a class: when it is, what is sewn, what to bring, and the form to sign up with."""
    worksheet = sheet.slowest.worksheet
    papers = setting.papers if _SIGN_UP in setting.sheets else ()
    forms = {paper: addresses.project_sheet_file(sheet.project, "sign up", "", paper) for paper in papers}
    return framed_page(
        "class.html",
        addresses.class_page(sheet.name),
        setting,
        lesson=sheet,
        calendar=addresses.class_calendar(sheet.name),
        data=class_data(sheet, setting),
        kind=worksheet.kind,
        level=worksheet.level,
        project_page=addresses.project_page(sheet.project),
        forms=forms,
        clock=clock,
        day=day_words,
        up=addresses.CLASSES,
    )


def render_classes(classes: Sequence[ClassCard], setting: Setting) -> str:
    """Return the list of classes."""
    return framed_page("classes.html", addresses.CLASSES, setting, classes=classes, day=day_words)


def day_words(day: str) -> str:
    """Return a day in words.

    Examples
    --------
    >>> day_words("2031-03-08")
    'Saturday, 8 March 2031'
    """
    found = date.fromisoformat(day)
    return f"{_WEEKDAYS[found.weekday()]}, {found.day} {_MONTHS[found.month - 1]} {found.year}"


def day_and_month(day: str) -> tuple[str, str]:
    """Return a day as a sheet of a calendar shows it.

    Examples
    --------
    >>> day_and_month("2031-03-08")
    ('8', 'March')
    """
    found = date.fromisoformat(day)
    return str(found.day), _MONTHS[found.month - 1]


# Written out here, because the names that the system gives follow the language of the machine.
_WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
