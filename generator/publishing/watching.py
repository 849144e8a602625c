"""Changes of a room's files as they are saved: a folder comes in, and each batch of changes goes out."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from watchfiles import Change, DefaultFilter, watch

from generator.publishing.room_files import OWN_THEMES

_BEAT = 300  # How often [ms] it looks up from waiting.


class _Inputs(DefaultFilter):
    """Passes over what is published and what editors and other tools leave beside their files."""

    def __init__(self, folder: Path) -> None:
        super().__init__()
        self._site = folder / "site"

    def __call__(self, change: Change, path: str) -> bool:
        """Return whether a path is one that the site is built from."""
        below = Path(path).relative_to(self._site).parts if Path(path).is_relative_to(self._site) else ()
        hidden = Path(path).name.startswith(".") or any(part.startswith(".") or part == "public" for part in below[:1])
        return not hidden and super().__call__(change, path)


def changes(folder: Path) -> Iterator[set[str]]:
    """Give the paths that changed, each time that something was saved; ends by Ctrl-C only.

    The first batch is empty: it comes as soon as nothing that is saved can be missed any more.
    """
    folders = [folder / "projects", folder / "site", folder / "themes", OWN_THEMES]
    watched = dict.fromkeys(path.resolve() for path in folders if path.is_dir())
    ready = False
    for batch in watch(*watched, watch_filter=_Inputs(folder.resolve()), rust_timeout=_BEAT, yield_on_timeout=True):
        if batch or not ready:
            ready = True
            yield {path for _, path in batch}
