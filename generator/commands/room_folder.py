"""Where the work stands: words from the command line come in, the room's folder and its project files go out."""

from __future__ import annotations

import difflib
from pathlib import Path

from generator.errors import TuckwrightError
from generator.publishing.room_files import refuse_links_out


def room_folder() -> Path:
    """Return the nearest folder, from here upwards, that holds ``projects``.

    Raises
    ------
    FaultyFileError
        If links in it lead astray.
    TuckwrightError
        If there is none; the message says how to make one.
    """
    here = Path.cwd()
    for folder in (here, *here.parents):
        if (folder / "projects").is_dir():
            refuse_links_out(folder)
            return folder
    raise TuckwrightError(
        f"there is no folder 'projects' in {here} or above it; `tuckwright start my-first-panel` makes one here"
    )


def project_files(folder: Path, wanted: tuple[str, ...] = ()) -> list[Path]:
    """Return the files of the projects named, or of all; a name is a file's name without .yaml, or a path.

    Raises
    ------
    TuckwrightError
        If a project is not there; the message names the nearest.
    """
    # What is no ordinary file is told by whoever reads it; a dot begins what a system or an editor has left.
    every = sorted(path for path in (folder / "projects").glob("*.yaml") if not path.name.startswith("."))
    if not wanted:
        if not every:
            raise TuckwrightError(
                f"{folder / 'projects'} holds no project; `tuckwright start my-first-panel` writes one"
            )
        return every
    return [_project_file(every, name) for name in wanted]


def _project_file(every: list[Path], name: str) -> Path:
    path = Path(name)
    if path.suffix == ".yaml" and path.is_file():
        return path
    by_name = {file.stem: file for file in every}
    if path.name.removesuffix(".yaml") in by_name:
        return by_name[path.name.removesuffix(".yaml")]
    near = difflib.get_close_matches(name, by_name, n=1)
    hint = f"did you mean '{near[0]}'?" if near else f"there are: {', '.join(by_name) or 'none'}"
    raise TuckwrightError(f"there is no project '{name}'; {hint}")
