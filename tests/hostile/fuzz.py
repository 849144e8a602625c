"""Spoil the room's own projects at random and work them, until the time is up: no traceback may appear.

``python -m tests.hostile.fuzz [MINUTES] [SEED]`` prints every spoilt project that ends in anything but findings with
places, and whatever takes long. It is run by hand; what it finds becomes a case in ``files.py``.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
import traceback
from collections import Counter
from pathlib import Path

from generator.definitions.room import Room, load_room
from generator.publishing.checking import findings_of_project

ROOM = Path(__file__).resolve().parents[2]
SLOW = 5.0
VALUES = (
    *("0", "1", "2", "1/2", "1/0", "-1", "0 in", "1/8 in", "1/64 in", "3/8 in or 1 cm", "1000 in", "999999 in"),
    *("1 in to 2 in", "2 in to 1 in", "0 in to 0 in", "1/1000 in", "50 %", "100 %", "99.9 %", "even", "odd", "any"),
    *("multiple of 3", "multiple of 0", "exactly 1", "yes", "no", "seam", "hem 1 in", "caught hem", "bound", "raw"),
    *("fold", "selvage", "turnover 3 in", "side", "side / 2", "larger(side, 0 in)", "left", "right", "free", "both"),
    *("linked cells", "ripples", "bands", "diamonds", "slants", "margin", "spacing", "depth", "across", "bias"),
    *("front.number", "front.cut across", "round up(side)", "around(side)", "{{ side }}", "<b>", "|", "'", "🧵"),
)


def spoilt(text: str, luck: random.Random) -> str:
    """Return a project with one to four slips: a value exchanged, a line moved, doubled, taken out or indented anew."""
    lines = text.splitlines()
    for _ in range(luck.randint(1, 4)):
        place = luck.randrange(len(lines))
        line = lines[place]
        kind = luck.random()
        if kind < 0.55 and ": " in line:
            lines[place] = f"{line.split(': ')[0]}: {luck.choice(VALUES)}"
        elif kind < 0.7 and ": " in line:
            other = luck.choice([other for other in lines if ": " in other])
            lines[place] = f"{line.split(': ')[0]}: {other.split(': ', 1)[1]}"
        elif kind < 0.78:
            lines.insert(luck.randrange(len(lines)), line)
        elif kind < 0.86 and len(lines) > 2:
            del lines[place]
        elif kind < 0.9:
            lines[place] = luck.choice(("  ", " ", "    ")) + line
        else:
            at = luck.randrange(len(line) + 1)
            lines[place] = line[:at] + luck.choice(VALUES) + line[at + luck.randint(0, 3) :]
    return "\n".join(lines) + "\n"


def told(path: Path, room: Room, folder: Path) -> str:
    """Work a project as ``tuckwright check`` does and return how it ended: the levels found, or a traceback."""
    try:
        found = findings_of_project(path, room, folder)
    except Exception:
        return traceback.format_exc()
    lost = [str(finding) for finding in found if finding.level == "error" and finding.place is None]
    if lost:
        return f"an error without a place: {lost[0]}"
    return "faults" if any(finding.level == "error" for finding in found) else "sound"


def main(minutes: float, seed: int) -> None:
    """Try spoilt projects until the time is up, and print what went wrong."""
    projects = [path.read_text(encoding="utf-8") for path in sorted((ROOM / "projects").glob("*.yaml"))]
    room = load_room(ROOM / "site" / "site.yaml", root=ROOM)
    luck, ends, counted = random.Random(seed), time.monotonic() + 60 * minutes, Counter[str]()  # noqa: S311 -- no secret
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "projects" / "spoilt.yaml"
        path.parent.mkdir()
        while time.monotonic() < ends:
            text = spoilt(luck.choice(projects), luck)
            path.write_text(text, encoding="utf-8")
            started = time.monotonic()
            end = told(path, room, Path(folder))
            taken = time.monotonic() - started
            word = end if end in ("faults", "sound") else "broken"
            if word == "broken" or taken > SLOW:
                last = end.strip().splitlines()[-1]
                kept = Path(tempfile.gettempdir()) / f"spoilt-{seed}-{sum(counted.values())}.yaml"
                kept.write_text(text, encoding="utf-8")
                print(f"{last} ({taken:.1f} s), kept in {kept}", flush=True)  # noqa: T201 -- run by hand
            counted[word] += 1
    print(dict(counted))  # noqa: T201 -- run by hand


if __name__ == "__main__":
    main(
        *(
            cast(word)
            for cast, word in zip((float, int), [*sys.argv[1:], *["5", "1"][len(sys.argv) - 1 :]], strict=True)
        )
    )
