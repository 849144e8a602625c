"""The process that workers are split off from, made ready: loading this module loads there what every worker needs.

The environment names the run that the process belongs to, so that its room can be opened too. What cannot be opened is
left alone: the worker that needs it tells what is wrong.
"""

from __future__ import annotations

import gc
import os
from contextlib import suppress

from generator.publishing.jobs import named_workshop
from generator.publishing.later import OPENED, RUN, SHEETS, WORKERS_NEED, later


def make_ready(run: str) -> None:
    """Load everything, and open the room of a run; what is there then stays for good.

    The garbage collector need not look at any of it: not while it comes, and not in the workers.
    """
    gc.disable()
    for name in WORKERS_NEED:
        later(name)
    with suppress(Exception):
        later(SHEETS).read_beforehand(later(OPENED).open_room(named_workshop(run)))
    gc.enable()
    gc.collect()
    gc.freeze()


if RUN in os.environ:
    make_ready(os.environ[RUN])
