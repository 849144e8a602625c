"""How high the elements of a handout are: their HTML comes in, millimetres go out; what was measured once is known.

Most paragraphs are the same in every size of a project, and many in all projects: only what is new is set to be
measured. Elements lie in boxes of their own, so that each is as high alone as among others.
"""

from __future__ import annotations

import hashlib
from collections.abc import Callable, Iterable, Iterator, Mapping
from dataclasses import dataclass, field
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

    @property
    def key(self) -> str:
        """What it is known by."""
        return hashlib.sha256(f"{self.place} {self.html}".encode()).hexdigest()[:32]


Known = dict[str, float]


@dataclass(slots=True)
class KeptHeights:
    """What an earlier run has measured of a handout, by the keys of its elements, and what this one takes [mm]."""

    before: Mapping[str, float] = field(default_factory=dict)
    now: Known = field(default_factory=dict)


def elements_of(part: PrintedPart) -> Iterator[tuple[str, Element]]:
    """Return what is measured of a part, by its name: what runs across, and each paragraph wherever it may stand."""
    tables = (Markup('<div class="across">{}</div>').format(one) for one in part.across)
    yield f"{part.name}-f", Element("across", Markup("").join((part.heading, *tables)))
    for place, words in enumerate(part.words):
        if part.narrow:
            yield f"{part.name}-n{place}", Element("beside", words)
        yield f"{part.name}-w{place}", Element("below", words)


@lru_cache(maxsize=4)
def known_heights(_theme: tuple[Path, ...], _style: str, _page: str) -> Known:
    """Return what is known of elements in a theme and a style on a page: nothing at first, later what was measured."""
    return {}


def measured(
    elements: Iterable[Element], known: Known, kept: KeptHeights, set_new: Callable[[Mapping[str, Element]], Document]
) -> dict[Element, float]:
    """Return the height of each element [mm], with its margins; ``set_new`` sets those that are not known by name."""
    wanted = {one: one.key for one in dict.fromkeys(elements)}
    if len(known) > _MOST:
        known.clear()
    told = {**kept.before, **known}
    new = {f"e{number}": one for number, one in enumerate(one for one, key in wanted.items() if key not in told)}
    if new:
        found = _heights_by_name(set_new(new))
        measured_now = {wanted[one]: found[name] for name, one in new.items()}
        known.update(measured_now)
        told |= measured_now
    kept.now.update({key: told[key] for key in wanted.values()})
    return {one: told[key] for one, key in wanted.items()}


def _heights_by_name(document: Document) -> dict[str, float]:
    found: dict[str, float] = {}
    for page in document.pages:
        for box in page._page_box.descendants():
            name = box.element.get("id") if box.element is not None else None
            if name and isinstance(box, boxes.BlockLevelBox) and name not in found:
                found[name] = box.margin_height() * MILLIMETRES / 96
    return found
