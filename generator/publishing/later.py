"""Modules that are loaded only when there is work for them: a name comes in, a module goes out.

A run that finds nothing to do must be over before the drawing and setting libraries could even be loaded, and one that
finds a fault in a file before they are needed. All such loading goes through here, so that it can be found.
"""

from __future__ import annotations

import importlib
from types import ModuleType

BUILD = "generator.publishing.build"
HAND = "generator.publishing.hand"
WORKING = "generator.publishing.working"
SHEETS = "generator.publishing.sheets"
OVERVIEWS = "generator.publishing.overviews"
FURTHER = "generator.publishing.further"
LOOKUP = "generator.publishing.lookup"
CLASS_PAGES = "generator.publishing.class_pages"
CORRECTING = "generator.publishing.correcting"
ROOM_PAGES = "generator.publishing.room_pages"
OPENED = "generator.publishing.opened"
WORKERS_NEED = (HAND, WORKING, SHEETS, FURTHER, LOOKUP, OVERVIEWS, ROOM_PAGES, CORRECTING, CLASS_PAGES)
# The module that loads all these in the process that workers are split off from, and what names the run there.
MADE_READY = "generator.publishing.made_ready"
RUN = "TUCKWRIGHT_RUN"


def later(name: str) -> ModuleType:
    """Return a module, loaded now if it was not before."""
    return importlib.import_module(name)
