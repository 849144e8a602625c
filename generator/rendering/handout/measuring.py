"""How high the elements of a handout are: their HTML comes in, millimetres go out; what was measured once is known.

Most paragraphs are the same in every size of a project, and many in all projects: only what is new is set to be
measured. Elements lie in boxes of their own, so that each is as high alone as among others.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping
from functools import lru_cache
from pathlib import Path
from typing import NamedTuple

from markupsafe import Markup

from generator.drawing.sizes import MILLIMETRES
from generator.rendering.handout.parts import PrintedPart
from generator.rendering.setter import Document, boxes

_MOST = 4000
"""After so many a process begins to remember heights anew; they are some megabytes."""


class Element(NamedTuple):
    """What is measured: ``across`` the page, or a paragraph ``beside`` the pictures or ``below`` them."""

    place: str
    html: Markup


Known = dict[Element, float]


def elements_of(part: PrintedPart) -> Iterator[tuple[str, Element]]:
    """Return what is measured of a part, by its name: what runs across, and each paragraph in both its places."""
    tables = (Markup('<div class="across">{}</div>').format(one) for one in part.across)
    yield f"{part.name}-f", Element("across", Markup("").join((part.heading, *tables)))
    for place, words in enumerate(part.words):
        yield f"{part.name}-n{place}", Element("beside", words)
        yield f"{part.name}-w{place}", Element("below", words)


@lru_cache(maxsize=4)
def known_heights(_theme: tuple[Path, ...], _style: str, _page: str) -> Known:
    """Return what is known of elements in a theme and a style on a page: nothing at first, later what was measured."""
    return {}


def measured(elements: Iterable[Element], known: Known, set_new: Callable[[Mapping[str, Element]], Document]) -> Known:
    """Return the height of each element [mm], with its margins; ``set_new`` sets those that are not known by name."""
    wanted = dict.fromkeys(elements)
    if len(known) > _MOST:
        known.clear()
    new = {f"e{number}": one for number, one in enumerate(one for one in wanted if one not in known)}
    if new:
        found = _heights_by_name(set_new(new))
        known.update({one: found[name] for name, one in new.items()})
    return {one: known[one] for one in wanted}


def _heights_by_name(document: Document) -> dict[str, float]:
    found: dict[str, float] = {}
    for page in document.pages:
        for box in page._page_box.descendants():
            name = box.element.get("id") if box.element is not None else None
            if name and isinstance(box, boxes.BlockLevelBox) and name not in found:
                found[name] = box.margin_height() * MILLIMETRES / 96
    return found
