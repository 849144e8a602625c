"""Spoil the files of a room at random and read and work them, until the time is up: no traceback may appear.

``python -m tests.hostile.fuzz [MINUTES] [SEED]`` prints every spoilt file that ends in anything but findings, and
whatever takes long. It is run by hand; what it finds becomes a case in the tests beside it.
"""

from __future__ import annotations

import random
import sys
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from generator.calculation.worksheet.sheet import load_room_context
from generator.definitions.room import Room, load_room
from generator.definitions.theme import load_theme
from generator.errors import FaultyFileError, Finding, TuckwrightError
from generator.publishing.checking import findings_of_project, opened_theme, read_page, worked_class
from generator.rendering.pages import render_words
from generator.rendering.setting import Setting
from tests.room import part_of_demo, write_room

ROOM = Path(__file__).resolve().parents[2]
SMALL = "pincushion-sample"
SLOW = 5.0
VALUES = (
    *("0", "1", "2", "1/2", "1/0", "-1", "0 in", "1/8 in", "1/64 in", "3/8 in or 1 cm", "1000 in", "999999 in"),
    *("1 in to 2 in", "2 in to 1 in", "0 in to 0 in", "1/1000 in", "50 %", "100 %", "99.9 %", "even", "odd", "any"),
    *("multiple of 3", "multiple of 0", "exactly 1", "yes", "no", "seam", "hem 1 in", "caught hem", "bound", "raw"),
    *("fold", "selvage", "turnover 3 in", "side", "side / 2", "larger(side, 0 in)", "left", "right", "free", "both"),
    *("linked cells", "ripples", "bands", "diamonds", "slants", "margin", "spacing", "depth", "across", "bias"),
    *("front.number", "front.cut across", "round up(side)", "around(side)", "{{ side }}", "<b>", "|", "'", "🧵"),
    *(
        "[]",
        "[piece]",
        "[",
        "2031-03-08",
        "9:30",
        "25:00",
        "0 seconds",
        "2 times",
        "1 an inch",
        "A4",
        "metric",
        "plain",
    ),
    *("#ffffff", "#1", "0pt", "99pt", "400", "bold", "../x", "FiraSans-Regular.ttf", "mark.svg", "9999", "1e9"),
    *("{{ piece.number }}", "{% for a in b %}", "{% endif %}", "{{ setting.x }}", "{{ ''.__class__ }}", "|int", "*/"),
    *("french seam", "felled seam 5/8 in or 1.5 cm", "rolled hem", "casing 1/4 in then 1 in", "pinked", "overlock"),
    *("up", "down", "inward", "seam line", "fused", "quilted", "every second", "front", "front, 3 in from the top"),
    *("copy", "grid", "zip tab", "zip", "elastic", "bought with all its safety parts", "navy", "1 in to 3 in or 2 cm"),
    *("repeat(9, 1fr)", "}", "{", "url(x)", "@media", "](x)", "# x", "| a |", "\\", "\u202e", "1⁄4", "rows, not rows"),
)


def spoilt(text: str, luck: random.Random) -> str:
    """Return a file with one to four slips: a value exchanged, a line moved, doubled, taken out or indented anew."""
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


@dataclass(frozen=True)
class Sort:
    """One sort of file: where it lies, the sound texts, and how it is read and worked."""

    place: str
    texts: tuple[str, ...]
    read: Callable[[Path, Path], Iterable[Finding]]


def _project(path: Path, folder: Path) -> Iterable[Finding]:
    return findings_of_project(path, _room(folder), folder)


def _room(folder: Path) -> Room:
    return load_room(folder / "site/site.yaml", root=folder)


def _site(path: Path, folder: Path) -> Iterable[Finding]:
    return findings_of_project(folder / f"projects/{SMALL}.yaml", load_room(path, root=folder), folder)


def _class(path: Path, folder: Path) -> Iterable[Finding]:
    return worked_class(path.stem, folder, load_room_context(_room(folder), folder), None).findings


def _theme(path: Path, folder: Path) -> Iterable[Finding]:
    theme = opened_theme(folder, Room(theme="quay"))
    render_words("page", "Title", "One *word*.", Setting(room="Loft", theme=theme))
    return ()


def _page(path: Path, folder: Path) -> Iterable[Finding]:
    theme = load_theme(ROOM / "themes/plain")
    render_words("page", "Title", read_page(path, folder), Setting(room="Loft", theme=theme))
    return ()


def _technique(path: Path, folder: Path) -> Iterable[Finding]:
    return findings_of_project(folder / f"projects/{SMALL}.yaml", Room(), folder)


def sorts() -> Mapping[str, Sort]:
    """Return every sort of file with the sound texts of the room and the tool."""
    plain = ROOM / "themes/plain"
    theme = (plain / "theme.yaml").read_text(encoding="utf-8").replace("title: Plain", "title: Quay\nbased on: plain")
    return {
        "project": Sort(
            "projects/spoilt.yaml", (*_texts(ROOM / "projects", "*.yaml"), _cautioned(), *_short()), _project
        ),
        "site": Sort("site/site.yaml", (*_texts(ROOM / "site", "site.yaml"), WHOLE_ROOM), _site),
        "class": Sort("site/classes/spoilt.yaml", (*_texts(ROOM / "site/classes", "*.yaml"), OWN_MEASURES), _class),
        "theme": Sort("themes/quay/theme.yaml", (theme, *_texts(ROOM / "themes/harbour", "theme.yaml")), _theme),
        "style sheet": Sort("themes/quay/css/handout.css", _texts(plain / "css", "*.css"), _theme),
        "template": Sort("themes/quay/templates/words.html", _texts(plain / "templates", "*.html"), _theme),
        "page": Sort("site/pages/spoilt.md", _texts(ROOM / "site/pages", "*.md"), _page),
        "technique": Sort(
            "site/techniques/cut.yaml", _texts(ROOM / "generator/definitions/techniques", "*.yaml"), _technique
        ),
    }


def _short() -> tuple[str, ...]:
    """The short project of a beginner, and it with a panel drawn by its points and with sizes between."""
    text = (ROOM / "generator/definitions/starter-short.yaml").read_text(encoding="utf-8")
    large = "sizes:\n  large:\n    side: 16 in or 40 cm\n"
    drawn = text.replace("    kind: envelope back\n", DRAWN).replace("sizes:\n", large)
    return text, f"{drawn.rstrip()}\nbetween:\n  every: 1 in or 2 cm\nsummary: A cover.\n"


def _cautioned() -> str:
    """A project that names cautions and brings some of its own, for the whole of it and for a step."""
    text = (ROOM / f"projects/{SMALL}.yaml").read_text(encoding="utf-8")
    own = (
        "- iron\n- level: warning\n  hazard: Sharp shell\n  consequence: It cuts.\n  avoid: File it.\n  short: shell\n"
    )
    cautions = "".join(f"  {line}\n" for line in own.splitlines())
    of_step = "".join(f"    {line}\n" for line in cautions.replace("shell", "rim").splitlines())
    step = f"  - title: Look\n    on: front\n    text: Hold it up to the light.\n    cautions:\n{of_step}"
    return f"{text.rstrip()}\n{step}cautions:\n{cautions}"


# Keys that no demo project has.
DRAWN = """\
    kind: facing
    outline:
      mirror: yes
      start: 0, 0
      edges:
        - top: quarter oval across to 5 in, 2 in or 13 cm, 5 cm
        - side:
            - line to 6 in, 6 in or 15 cm, 15 cm
            - curve leaving down through 6 in, 8 in then 5 in, 10 in or 15 cm, 20 cm then 13 cm, 25 cm
        - bottom: line to 0, 10 in or 0, 25 cm
"""
# Places with measures of their own, as a number, a length, and in the other edition.
OWN_MEASURES = f"""\
title: Own sizes
project: {SMALL}
edition: inch
paper: Letter
sessions:
  - day: 2031-03-08
    starts: 9:30
    ends: 17:30
places:
  - size: thimble
    student: Ines
  - student: Bram
    with:
      side: 5
  - student: Ode
    edition: metric
    with:
      side: 12 cm
  - number: 3
    own cloth: yes
    with:
      side: 7 in
"""
WHOLE_ROOM = """\
room:
  name: Loft
  line: Cloth with a tide in it
  time zone: Europe/London
  web address: https://sewing.example
papers: A4
sheets: wall card, marking strip
rulers:
  inch:
    marks: 1 in, 1/2 in
    finest: 1/16 in
shop:
  inch: 1/4 yd
thread:
  spool: 220 yd or 200 m
  waste: 20 %
layers:
  warn over: 5
rates:
  cut a piece: 5 minutes
  crease: 40 seconds a foot
  beginners take: 2 times as long
prices:
  face: 11.00 a yard
samples:
  cotton:
    tucks: 8
    depth: 1/4 in
    flat: 10 in
    finished: 6 in
lends: iron, awl
cautions:
  jetty:
    when: iron
    hazard: Cable
    consequence: You trip.
    avoid: Mind the cable.
"""


def _texts(folder: Path, pattern: str) -> tuple[str, ...]:
    return tuple(path.read_text(encoding="utf-8") for path in sorted(folder.glob(pattern)))


def told(sort: Sort, path: Path, folder: Path) -> str:
    """Read and work a file and return how it ended: the levels found, or a traceback."""
    try:
        found = list(sort.read(path, folder))
    except FaultyFileError as fault:
        found = list(fault.findings)
    except TuckwrightError:
        return "faults"
    except Exception:
        return traceback.format_exc()
    lost = [str(finding) for finding in found if finding.level == "error" and finding.place is None]
    if lost:
        return f"an error without a place: {lost[0]}"
    return "faults" if any(finding.level == "error" for finding in found) else "sound"


def new_room(folder: Path) -> None:
    """Write a sound room: the projects, one theme of its own."""
    write_room(
        part_of_demo(folder, "projects", "site/body"), {"themes/quay/theme.yaml": "title: Quay\nbased on: plain\n"}
    )


def main(minutes: float, seed: int) -> None:
    """Try spoilt files until the time is up, and print what went wrong and how many ended how."""
    known = sorts()
    luck, ends, counted = random.Random(seed), time.monotonic() + 60 * minutes, Counter[str]()  # noqa: S311 -- no secret
    with tempfile.TemporaryDirectory() as outer:
        folder = Path(outer) / "room"
        new_room(folder)
        while time.monotonic() < ends:
            name = luck.choice(list(known))
            sort = known[name]
            path = folder / sort.place
            before = path.read_bytes() if path.exists() else None
            path.parent.mkdir(parents=True, exist_ok=True)
            text = spoilt(luck.choice(sort.texts), luck)
            path.write_text(text, encoding="utf-8")
            started = time.process_time()
            end = told(sort, path, folder)
            taken = time.process_time() - started
            word = end if end in ("faults", "sound") else "broken"
            if word == "broken" or taken > SLOW:
                last = end.strip().splitlines()[-1]
                kept = Path(tempfile.gettempdir()) / f"spoilt-{seed}-{sum(counted.values())}{path.suffix}"
                kept.write_text(text, encoding="utf-8")
                print(f"{name}: {last} ({taken:.1f} s), kept in {kept}", flush=True)  # noqa: T201 -- run by hand
            counted[f"{name}, {word}"] += 1
            path.unlink() if before is None else path.write_bytes(before)
    print(dict(sorted(counted.items())))  # noqa: T201 -- run by hand


if __name__ == "__main__":
    main(
        *(
            cast(word)
            for cast, word in zip((float, int), [*sys.argv[1:], *["5", "1"][len(sys.argv) - 1 :]], strict=True)
        )
    )
