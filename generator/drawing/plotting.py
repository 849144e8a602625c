"""The drawing library as it was made: it is loaded away from all settings of others, and its names go out.

When it is loaded, matplotlib looks for settings in the working folder, then where the environment says, then in a
person's own folder. A room may come from a stranger, and a drawing at true size comes out the same on every machine.
"""

from __future__ import annotations

import atexit
import logging
import os
import shutil
import tempfile
from collections.abc import Iterator
from contextlib import chdir, contextmanager
from functools import lru_cache
from pathlib import Path
from pkgutil import resolve_name
from typing import Any

_NO_SETTINGS = Path(__file__).with_name("settings")


@contextmanager
def _away_from_settings() -> Iterator[None]:
    """Load the library where it finds the file of this folder first, whatever the environment says."""
    before = {name: os.environ.pop(name, None) for name in ("MPLCONFIGDIR", "MPLBACKEND")}
    os.environ["MPLCONFIGDIR"] = _folder_for_lists()
    logging.getLogger("matplotlib").setLevel(logging.ERROR)
    try:
        with chdir(_NO_SETTINGS):
            yield
    finally:
        del os.environ["MPLCONFIGDIR"]
        os.environ.update({name: value for name, value in before.items() if value is not None})


def _folder_for_lists() -> str:
    """Return where the library may keep a list of fonts: in the person's own cache, or in a folder that goes again."""
    try:
        kept = Path(os.environ.get("XDG_CACHE_HOME") or Path("~/.cache").expanduser()) / "tuckwright"
        kept.mkdir(parents=True, exist_ok=True)
        if os.access(kept, os.W_OK):
            return str(kept)
    except (OSError, RuntimeError):
        pass
    brief = tempfile.mkdtemp(prefix="tuckwright-")
    atexit.register(shutil.rmtree, brief, ignore_errors=True)
    return brief


with _away_from_settings():
    import matplotlib as mpl
    from matplotlib._path import convert_to_string  # type: ignore[attr-defined]  # written in C
    from matplotlib.colors import to_hex
    from matplotlib.ft2font import FT2Font, LoadFlags
    from matplotlib.path import Path as Outline
    from matplotlib.transforms import Affine2D

__all__ = [
    "Affine2D",
    "FT2Font",
    "LoadFlags",
    "Outline",
    "convert_to_string",
    "mpl",
    "svg_renderer",
    "to_hex",
]


@lru_cache(maxsize=1)
def svg_renderer() -> Any:
    """Return what writes images; it is loaded with the first, for most of the library comes with it."""
    with _away_from_settings():
        return resolve_name("matplotlib.backends.backend_svg:RendererSVG")
