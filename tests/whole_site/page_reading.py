"""A page as its HTML says it: the text comes in, its elements, names and links go out.

Names and links are read quickly by the standard library, for links are asked of many pages at once; the tree is built
by a parser that follows the HTML standard and tells every fault.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property, lru_cache
from html.parser import HTMLParser
from pathlib import Path
from xml.etree.ElementTree import Element

from tinyhtml5.parser import HTMLParser as StrictParser

# Attributes that lead to another file; srcset holds several with sizes.
LEADING = ("href", "xlink:href", "src", "data-worker", "poster", "action")


@dataclass(frozen=True)
class Link:
    """Where an element leads, as it is written."""

    tag: str
    target: str
    relation: str = ""


class _Tags(HTMLParser):
    """Gathers ids, links, the title and the descriptions of a page."""

    def __init__(self, text: str) -> None:
        super().__init__()
        self.ids: list[str] = []
        self.links: list[Link] = []
        self.title = ""
        self.descriptions: list[str] = []
        self._within = ""
        self.feed(text)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        told = {name: value or "" for name, value in attrs}
        self._within = tag
        self.ids += [told["id"]] if "id" in told else []
        self.links += [Link(tag, told[name], told.get("rel", "")) for name in LEADING if name in told]
        self.descriptions += [told.get("content", "")] if told.get("name") == "description" else []
        self.links += [Link(tag, one.split()[0]) for one in told.get("srcset", "").split(",") if one.strip()]

    def handle_data(self, data: str) -> None:
        if self._within == "title" and not self.title:
            self.title = data


@lru_cache(maxsize=1000)
def read_tags(path: Path) -> _Tags:
    """Return the ids, the links, the title and the descriptions of a page."""
    return _Tags(path.read_text(encoding="utf-8"))


@dataclass(frozen=True)
class ReadPage:
    """A page by its text."""

    text: str

    @cached_property
    def _parsed(self) -> tuple[Element, list[str]]:
        parser = StrictParser(namespace_html_elements=False)
        root = parser.parse(self.text)
        return root, [f"line {place[0]}: {code}" for place, code, _ in parser.errors]

    @property
    def root(self) -> Element:
        return self._parsed[0]

    @property
    def grumbles(self) -> list[str]:
        """What the standard says against the page."""
        return self._parsed[1]

    @cached_property
    def elements(self) -> list[Element]:
        return [element for element in self.root.iter() if isinstance(element.tag, str)]

    @cached_property
    def ids(self) -> list[str]:
        return [element.attrib["id"] for element in self.elements if "id" in element.attrib]

    def all(self, *tags: str) -> Iterator[Element]:
        return (element for element in self.elements if element.tag in tags)


def words(element: Element) -> str:
    """The text inside an element on one line."""
    return " ".join("".join(element.itertext()).split())
