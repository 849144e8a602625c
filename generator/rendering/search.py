"""What can be found by words: cards, sheets, pages and the glossary come in, an index and a page from A to Z go out.

The index is a script itself, because a page that is opened from a folder may load scripts and nothing else.
"""

from __future__ import annotations

import json
import unicodedata
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from generator.calculation.turning.plans import PLANS, turn_plan
from generator.rendering import addresses
from generator.rendering.cards import ClassCard, PageLink, ProjectCard, SheetTold
from generator.rendering.glossary import read_glossary
from generator.rendering.page_frame import framed_page
from generator.rendering.setting import Setting
from generator.rendering.sharing import plain_words

# So many words of what a thing is about are found as well.
_MOST_WORDS = 40
_SHEET = "Sheet"
# What else a thing of a kind is called by those who look for it: common practice, no source.
ALSO_CALLED: Mapping[str, str] = {
    "bag": "tote purse pouch satchel",
    "bolster": "neck roll pillow cushion",
    "curtain": "drape drapery blind shade valance window",
    "cushion": "pillow seat pad cover",
    "garment": "clothes dress smock blouse apron pinafore skirt",
    "headboard": "bed",
    "lampshade": "lamp shade light",
    "mats": "placemat place mat table",
    "runner": "tablecloth table",
    "sample": "swatch trial test piece",
    "sleeve": "case cover tablet laptop book",
}


@dataclass(frozen=True, slots=True)
class Findable:
    """Something that can be found: its title, its path inside the site, what it is, and further words that find it."""

    title: str
    address: str
    kind: str
    words: str = ""


def findables(
    projects: Sequence[ProjectCard],
    sheets: Iterable[SheetTold],
    pages: Mapping[str, str],
    classes: Iterable[ClassCard],
    glossary: str,
) -> tuple[Findable, ...]:
    """Return everything that can be found, projects first; ``pages`` are titles by name, ``glossary`` its Markdown."""
    titles = {addresses.project_slug(card.project): card.title for card in projects}
    return (
        *(
            Findable(
                card.title,
                card.page,
                "Project",
                " ".join(filter(None, (card.kind, card.level, _few(card.summary), ALSO_CALLED.get(card.kind)))),
            )
            for card in projects
        ),
        *_of_sheets(sheets, titles),
        *(Findable(one.title, one.page, "Class", one.project_title) for one in classes),
        *_of_glossary(glossary),
        *(Findable(turn_plan(name).title, addresses.surface(name), "Surface") for name in PLANS),
        *(Findable(title, addresses.words_page(name), "Guide") for name, title in pages.items()),
        *(Findable(link.title, link.address, "Page") for link in _PAGES),
    )


_PAGES = (
    PageLink("Corrections", addresses.CORRECTIONS),
    PageLink("Surfaces", addresses.GALLERY),
    PageLink("Cautions", addresses.CAUTIONS),
    PageLink("Tuck tables", addresses.reference_page("tucks")),
    PageLink("At the shop", addresses.reference_page("shop")),
    PageLink("Classes", addresses.CLASSES),
)


def _of_sheets(sheets: Iterable[SheetTold], titles: Mapping[str, str]) -> Iterator[Findable]:
    for one in sheets:
        title = titles[one.sheet.partition("/")[0]]
        words = "metric centimetres cm" if one.edition == "metric" else "inch inches in"
        yield Findable(
            f"{title}, {one.label}",
            f"projects/{one.sheet}.html",
            f"{_SHEET}, {one.edition} edition",
            f"{one.measure} {words}",
        )


def _of_glossary(text: str) -> Iterator[Findable]:
    _, entries = read_glossary(text)
    for entry in entries:
        yield Findable(entry.word, f"{addresses.words_page('glossary')}#{entry.anchor}", "Word", _few(entry.text))


def _few(text: str) -> str:
    return " ".join(plain_words(text).split()[:_MOST_WORDS])


def search_index(found: Sequence[Findable]) -> bytes:
    """Return the index as a script that sets one value."""
    told = [[one.title, one.address, one.kind, one.words] for one in found]
    lines = ",\n".join(json.dumps(one, ensure_ascii=False, separators=(",", ":")) for one in told)
    return f"window.roomWords = [\n{lines}\n];\n".encode()


def render_all(found: Sequence[Findable], setting: Setting) -> str:
    """Return the page of everything but single sheets, from A to Z; what begins with no letter stands first."""
    letters: dict[str, list[Findable]] = {}
    for one in sorted(found, key=lambda one: (_plain(one.title), one.kind)):
        if not one.kind.startswith(_SHEET):
            first = _plain(one.title)[:1].upper()
            letters.setdefault(first if first.isalpha() else "0 to 9", []).append(one)
    return framed_page("all.html", addresses.ALL, setting, letters=letters)


def _plain(title: str) -> str:
    """A title as it is looked up: without accents, in small letters."""
    return "".join(sign for sign in unicodedata.normalize("NFD", title.casefold()) if not unicodedata.combining(sign))
