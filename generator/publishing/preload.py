"""The process that workers are split off from, made ready: loading this module loads there what every worker needs.

The environment names the room that the process works in, so that it can be opened too. What cannot be opened is left
alone: the worker that needs it tells what is wrong.
"""

from __future__ import annotations

import gc
import os
from contextlib import suppress
from pkgutil import iter_modules, resolve_name

from generator.publishing import make
from generator.publishing.jobs import named_version

# What names the room in the environment, and the name of this module.
ROOM = "TUCKWRIGHT_ROOM"
MODULE = "generator.publishing.preload"


def preload(version: str) -> None:
    """Load everything, and open a room by the name of its version; what is there then stays for good.

    The garbage collector need not look at any of it: not while it comes, and not in the workers.
    """
    gc.disable()
    for module in iter_modules(make.__path__, f"{make.__name__}."):
        resolve_name(module.name)
    with suppress(Exception):
        room = resolve_name("generator.publishing.room:open_room")(named_version(version))
        resolve_name("generator.publishing.make.sheets:read_beforehand")(room)
    gc.enable()
    gc.collect()
    gc.freeze()


if ROOM in os.environ:
    preload(os.environ[ROOM])
