"""The names of a project: its tree comes in, a reading that knows them all goes out.

Formulas may stand above what they name, so sizes, measures and the kinds of pieces are read before everything else.
"""

from __future__ import annotations

import difflib
from pathlib import Path

from generator.definitions.cautions import cautions_of
from generator.definitions.faults import Faults
from generator.definitions.measures import Measures
from generator.definitions.names import Names
from generator.definitions.nodes import Group
from generator.definitions.pieces.kinds import kinds_of
from generator.definitions.reading import Reading
from generator.definitions.room import Room
from generator.definitions.sizes import read_sizes, size_dimensions
from generator.definitions.technique_names import step_names
from generator.definitions.vocabulary import EDITION_NAMES

_SECTIONS = ("sizes", "measures", "cloths", "pieces")


def prepared(tree: Group, room: Room, root: Path | None, faults: Faults) -> Reading:
    """Return a reading that knows all names of a project, so that every formula can be checked where it stands."""
    reading = Reading(faults, samples=room.samples, steps=step_names(root), editions=_editions(tree, room))
    reading.marks = {name: room.edition(name).mark for name in EDITION_NAMES}
    reading.cautions = frozenset(cautions_of(room))
    sizes, measures, cloths, pieces = (_group(tree, section) for section in _SECTIONS)
    reading.broken = frozenset(section for section in _SECTIONS if _is_broken(tree, section))
    reading.cloths = frozenset(cloths.entries) if cloths else frozenset()
    reading.sizes = read_sizes(tree.get("sizes"), reading)
    if pieces:
        reading.kinds = kinds_of(pieces, reading)
    known = {name: kind.dimensions if kind else {} for name, kind in reading.kinds.items()}
    partial = not reading.broken.isdisjoint(("sizes", "measures", "pieces"))
    reading.names = Names({}, known, partial=partial)
    written = tree.get("measures")
    if written is not None and measures is None:
        told = "measures are wanted here, each a name with its formula; write them, or take the line out"
        reading.faults.add(written.place, told)
    found = Measures(size_dimensions(sizes, reading.sizes), measures, reading)
    reading.measures = found.all_formulas()
    reading.names = Names(found, known, partial=partial)
    return reading


def _group(tree: Group, section: str) -> Group | None:
    found = tree.get(section)
    return found if isinstance(found, Group) else None


def _is_broken(tree: Group, section: str) -> bool:
    """Return whether a section is there in another form, left out against the rule, or misspelt."""
    found = _group(tree, section)
    if found and found.entries:
        return False
    others = [key for key in tree.entries if key not in _SECTIONS]
    misspelt = difflib.get_close_matches(section, others, 1, 0.7)
    return section in tree.entries or section != "measures" or bool(misspelt)


def _editions(tree: Group, room: Room) -> tuple[str, ...]:
    """Return the editions of a project before its fields are read: they decide which notes are needed."""
    found = tree.get("editions")
    items = [found, *getattr(found, "items", ())]
    written = " ".join(getattr(item, "text", "") for item in items)
    named = tuple(name for name in EDITION_NAMES if name in written)
    return named or room.editions
