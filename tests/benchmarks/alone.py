"""The handouts of one project alone: ``python -m tests.benchmarks.alone FOLDER PROJECT`` draws and sets them, no more.

How long the whole process takes is what publishing after a change of one line is compared with.
"""

from __future__ import annotations

import sys
from pathlib import Path

from tests.benchmarks.floor import opened, set_size, worked


def main() -> None:
    """Draw and set every size of a project, with strips and further sheets of each size, and throw them away."""
    folder, project = Path(sys.argv[1]), sys.argv[2]
    room = opened(folder)
    for worksheet in worked(folder / "projects" / f"{project}.yaml", room):
        set_size(worksheet, room)


if __name__ == "__main__":
    main()
