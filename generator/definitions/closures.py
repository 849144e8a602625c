"""What holds pieces together: groups of keys of a project file come in, frozen definitions go out."""

from __future__ import annotations

from typing import Annotated

from generator.definitions.fields import Edges, Fact, Length, Markdown, Quantity, standing
from generator.definitions.keyed import Located
from generator.definitions.readers import choice
from generator.definitions.vocabulary import CLOSURES


class Meeting(Located):
    """Two edges, or runs of edges, that are sewn to each other; the first may be longer by the ease."""

    join: Edges
    to: Edges
    ease: Length = standing("0 in")
    note: Markdown | None = None


class Closure(Located):
    """Buttons or the like on one edge, closing onto another; without ``from_ends`` the ends get half an interval."""

    kind: Annotated[str, choice(CLOSURES, "kind of closure")]
    number: Quantity = standing("1")
    on: Edges
    onto: Edges
    overlap: Length | None = None
    diameter: Fact | None = None
    thickness: Fact = standing("1/8 in or 3 mm")
    from_ends: Length | None = None
    note: Markdown | None = None
