"""What a process must have around it: the room's folder comes in, environment variables are set.

They must be set before the drawing and setting libraries are loaded, and make these give the same bytes everywhere.
"""

from __future__ import annotations

import atexit
import os
import shutil
import tempfile
from pathlib import Path


def prepare_surroundings(folder: Path) -> None:
    """Set what the libraries read from the environment, for this process and those that it starts.

    Fonts that are cut down are stamped with the hour unless they are told one. The drawing library keeps a list of
    the machine's fonts and looks for settings of a person's own in the same folder; it gets one of the room.
    """
    os.environ["SOURCE_DATE_EPOCH"] = "0"
    os.environ["MPLCONFIGDIR"] = str(_kept_folder(folder))


def _kept_folder(folder: Path) -> Path:
    kept = folder / ".tuckwright" / "matplotlib"
    try:
        kept.mkdir(parents=True, exist_ok=True)
        if os.access(kept, os.W_OK):
            return kept
    except OSError:
        pass
    brief = Path(tempfile.mkdtemp(prefix="tuckwright-"))
    atexit.register(shutil.rmtree, brief, ignore_errors=True)
    return brief
