"""What programs are told of a page in the words of schema.org: cards and classes come in, JSON-LD goes out.

It stands in script elements that are not run. Addresses are whole, so it is told only where the room knows its own.
"""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, datetime, time, timedelta
from zoneinfo import ZoneInfo

from markupsafe import Markup

from generator.calculation.making.timetable import SessionTimes
from generator.calculation.worksheet.class_work import ClassSheet
from generator.rendering import addresses
from generator.rendering.cards import ProjectCard
from generator.rendering.setting import Setting
from generator.rendering.sharing import absolute, as_data

_CONTEXT = "https://schema.org"


def room_data(projects: Sequence[ProjectCard], setting: Setting) -> Markup:
    """Return the site and the list of its projects; nothing where the site has no address."""
    home = absolute(addresses.HOME, setting)
    if not home:
        return Markup("")
    listed = [
        {"@type": "ListItem", "position": number, "name": card.title, "url": absolute(card.page, setting)}
        for number, card in enumerate(projects, 1)
    ]
    site = {"@type": "WebSite", "name": setting.room, "url": home, "inLanguage": setting.language}
    return as_data({"@context": _CONTEXT, "@graph": [site, {"@type": "ItemList", "itemListElement": listed}]})


def trail_data(steps: Sequence[tuple[str, str]], setting: Setting) -> Markup:
    """Return the way to a page, each step its title and path, the page itself last."""
    if not setting.site_address:
        return Markup("")
    listed = [
        {"@type": "ListItem", "position": number, "name": title, "item": absolute(address, setting)}
        for number, (title, address) in enumerate(steps, 1)
    ]
    return as_data({"@context": _CONTEXT, "@type": "BreadcrumbList", "itemListElement": listed})


def class_data(sheet: ClassSheet, setting: Setting) -> Markup:
    """Return the sessions of a class, each an event with its place and what it costs."""
    page = absolute(addresses.class_page(sheet.name), setting)
    if not page:
        return Markup("")
    sessions = [plan.session for plan in sheet.timetable.sessions]
    common: dict[str, object] = {
        "@type": "EducationEvent",
        "name": sheet.title,
        "about": sheet.project_title,
        "url": page,
        "location": {"@type": "Place", "name": setting.room, "address": setting.place or setting.room},
        "organizer": {"@type": "Organization", "name": setting.room, "url": absolute(addresses.HOME, setting)},
    }
    offers = _offers(sheet, page, setting)
    if offers:
        common["offers"] = offers
    events = [
        {
            **common,
            "startDate": _moment(session, session.starts, setting),
            "endDate": _moment(session, session.ends, setting),
        }
        for session in sessions
    ]
    return as_data({"@context": _CONTEXT, "@graph": events})


def _offers(sheet: ClassSheet, page: str, setting: Setting) -> list[dict[str, str]]:
    """The price of each size, as a number and the code of its money: a mark alone, such as kr, is of several."""
    if not setting.currency_code:
        return []
    several = len({price.edition for price in sheet.prices}) > 1
    return [
        {
            "@type": "Offer",
            "name": f"{price.size_label}, {price.edition} edition" if several else price.size_label,
            "price": price.whole.number,
            "priceCurrency": setting.currency_code,
            "url": page,
        }
        for price in sheet.prices
    ]


def _moment(session: SessionTimes, minutes: int, setting: Setting) -> str:
    """A time of a session as ISO 8601 writes it, with the distance to UTC where the room says its time zone."""
    day = datetime.combine(date.fromisoformat(session.day), time()) + timedelta(minutes=minutes)
    zone = ZoneInfo(setting.time_zone) if setting.time_zone else None
    return day.replace(tzinfo=zone).isoformat()
