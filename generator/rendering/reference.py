"""Pages to look things up in: editions, cautions and a glossary come in, the HTML text of each page goes out."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from generator.definitions.caution_rule import CautionRule
from generator.definitions.values import Text
from generator.lengths import Edition
from generator.rendering import addresses
from generator.rendering.cards import PageLink
from generator.rendering.glossary import read_glossary
from generator.rendering.page_frame import framed_page
from generator.rendering.reference_shop_tables import shop_tables
from generator.rendering.reference_tuck_tables import ReferenceTable, tuck_tables
from generator.rendering.setting import Setting


@dataclass(frozen=True, slots=True)
class SourcedCaution:
    """One caution of the list: name, level, the tools and places it is told for, its text (Markdown), its source."""

    name: str
    level: str
    when: tuple[str, ...]
    text: str
    source: str = ""


def sourced_cautions(rules: Mapping[str, CautionRule], edition: Edition) -> tuple[SourcedCaution, ...]:
    """Return the cautions of a room for the list, its lengths told in one edition."""
    return tuple(
        SourcedCaution(name, rule.level, rule.when, rule.told(lambda text: _told(text, edition)), rule.source)
        for name, rule in rules.items()
    )


def _told(text: Text, edition: Edition) -> str:
    """A text without a project: what only a project knows is left open."""
    if text.names:
        return "".join(part if isinstance(part, str) else "…" for part in text.parts)
    return text.filled(edition, _no_measure)


def _no_measure(name: str) -> Fraction:
    raise KeyError(name)


@dataclass(frozen=True, slots=True)
class _Page:
    """One page of tables: its name in the address, its title, and a sentence on what it is for."""

    name: str
    title: str
    about: str


_TUCKS = _Page("tucks", "Tuck tables", "How much cloth tucks hide, how many fit, and what rows cost in length.")
_SHOP = _Page("shop", "At the shop", "Yards and metres, fullness of frills, buttons and their holes.")
_CAUTIONS = _Page("cautions", "Cautions", "What can hurt, where it is told, and where the advice comes from.")


def reference_links(*, glossary: bool) -> tuple[PageLink, ...]:
    """Return the pages of the reference for lists of links, the glossary included where the room has one."""
    pages = (PageLink(page.title, addresses.reference_page(page.name)) for page in (_TUCKS, _SHOP, _CAUTIONS))
    return (*pages, *([PageLink("Glossary", addresses.words_page("glossary"))] if glossary else []))


def render_reference(
    editions: Sequence[Edition], cautions: Sequence[SourcedCaution], setting: Setting, *, glossary: bool = False
) -> dict[str, str]:
    """Return the pages of the reference by their address, all but the glossary.

    ``editions`` are those of the room, with its own rulers and shops; ``glossary`` tells whether the room has one.
    """
    about = {page.title: page.about for page in (_TUCKS, _SHOP, _CAUTIONS)}
    contents = [
        (link, about.get(link.title, "The words that the sheets use.")) for link in reference_links(glossary=glossary)
    ]
    tucks = [table for edition in editions for table in tuck_tables(edition)]
    return {
        addresses.REFERENCE: framed_page(
            "reference.html", addresses.REFERENCE, setting, contents=contents, gallery=addresses.GALLERY
        ),
        addresses.reference_page(_TUCKS.name): _tables(_TUCKS, tucks, setting),
        addresses.reference_page(_SHOP.name): _tables(_SHOP, shop_tables(tuple(editions)), setting),
        addresses.reference_page(_CAUTIONS.name): _framed("cautions.html", _CAUTIONS, setting, cautions=cautions),
    }


def render_glossary(text: str, setting: Setting) -> str:
    """Return the glossary from its Markdown; every word has an anchor of its own."""
    address = addresses.words_page("glossary")
    introduction, entries = read_glossary(text)
    return framed_page("glossary.html", address, setting, introduction=introduction, entries=entries, up=_UP)


def _tables(page: _Page, tables: Sequence[ReferenceTable], setting: Setting) -> str:
    return _framed("tables.html", page, setting, tables=tables)


def _framed(template: str, page: _Page, setting: Setting, **values: object) -> str:
    return framed_page(template, addresses.reference_page(page.name), setting, page=page, up=_UP, **values)


_UP = addresses.REFERENCE
