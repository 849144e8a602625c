"""Whatever is changed, published and killed in whatever order: a site is what a first run would make of its room."""

from __future__ import annotations

import multiprocessing
import shutil
import tempfile
import time
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, settings
from hypothesis import strategies as some
from hypothesis.stateful import RuleBasedStateMachine, initialize, precondition, rule, run_state_machine_as_test
from small_room import FLAG, ROOM, Silent, bytes_of, left_over, site_of

from generator.errors import FaultyFileError
from generator.publishing.jobs import Order
from generator.publishing.publish import publish
from generator.publishing.room_files import OWN_THEMES

LONGEST = 1.5  # Seconds after which a run of this room is surely over, or nearly so.
DAY = "2031-03-14"
THEME = "title: Ours\nbased on: plain\n"
CLASS = """\
title: Flags {}
project: mast
edition: inch
paper: A4
sessions:
  - day: 2031-03-08
    starts: 18:00
    ends: 20:30
places:
  - size: small
"""
NAMES = some.sampled_from(["mast", "stay"])
VERSIONS = some.integers(1, 2)
Files = tuple[tuple[str, str], ...]


def flag(version: int) -> str:
    """The first or the second version of a project with one size."""
    return FLAG.replace("  large:\n    side: 12 in\n", "").replace("side: 8 in", f"side: {8 + version} in")


def laid_out(files: Files, room: Path) -> Path:
    for name, text in files:
        (room / name).parent.mkdir(parents=True, exist_ok=True)
        (room / name).write_text(text, encoding="utf-8")
    (room / "themes").mkdir(exist_ok=True)
    (room / "themes/plain").symlink_to(OWN_THEMES / "plain")
    return room


@cache
def made_at_once(files: Files) -> dict[str, str]:
    """Every file of the site that a first run makes of a room."""
    with tempfile.TemporaryDirectory() as folder:
        room = laid_out(files, Path(folder) / "room")
        publish(Order(room, workers=1), Silent())
        return bytes_of(room)


class AnyOrder(RuleBasedStateMachine):
    """A room that somebody works in, and the files that it should hold."""

    def __init__(self) -> None:
        super().__init__()
        self.room = Path(tempfile.mkdtemp()) / "room"
        self.marks = 0

    @initialize()
    def begin(self) -> None:
        laid_out(
            (
                ("projects/mast.yaml", flag(1)),
                ("site/site.yaml", f"{ROOM}theme: ours\n"),
                ("themes/ours/theme.yaml", THEME),
            ),
            self.room,
        )
        self.publishes()

    @rule(name=NAMES, version=VERSIONS)
    def writes_a_project(self, name: str, version: int) -> None:
        self.write(f"projects/{name}.yaml", flag(version))

    @rule(name=NAMES)
    def takes_a_project_out(self, name: str) -> None:
        if len(list((self.room / "projects").iterdir())) > 1:
            (self.room / f"projects/{name}.yaml").unlink(missing_ok=True)

    @rule(version=VERSIONS)
    def names_the_room(self, version: int) -> None:
        self.write("site/site.yaml", f"{ROOM}theme: ours\n".replace("Test Loft", f"Test Loft {version}"))

    @rule(name=some.sampled_from(["care", "glossary"]), version=VERSIONS)
    def writes_a_page(self, name: str, version: int) -> None:
        self.write(f"site/pages/{name}.md", f"# Page {version}\n\n**tuck**: a fold.\n")

    @rule(version=VERSIONS)
    def writes_a_class(self, version: int) -> None:
        self.write("site/classes/evening.yaml", CLASS.format(version))

    @rule(version=VERSIONS, file=some.sampled_from(["screen.css", "handout.css"]))
    def writes_into_the_theme(self, version: int, file: str) -> None:
        self.write(f"themes/ours/css/{file}", f"h1 {{ letter-spacing: {version}pt; }}\n")

    @rule(name=some.sampled_from(["site/pages/care.md", "site/classes/evening.yaml", "themes/ours/css/screen.css"]))
    def takes_something_away(self, name: str) -> None:
        (self.room / name).unlink(missing_ok=True)

    @rule(data=some.data())
    def loses_a_published_file(self, data: some.DataObject) -> None:
        name = data.draw(some.sampled_from(sorted(bytes_of(self.room))))
        (site_of(self.room) / name).unlink()

    def is_whole(self) -> bool:
        """Whether the class has a project to sew."""
        return (self.room / "projects/mast.yaml").exists() or not (self.room / "site/classes/evening.yaml").exists()

    @precondition(is_whole)
    @rule()
    def publishes(self) -> None:
        publish(Order(self.room, workers=1), Silent())
        self.is_as_made_at_once()

    @precondition(is_whole)
    @rule()
    def keeps_an_edition(self) -> None:
        self.marks += 1
        publish(Order(self.room, workers=1, mark=f"mark {self.marks}", day=DAY), Silent())
        self.is_as_made_at_once()

    @precondition(is_whole)
    @rule(name=NAMES)
    def publishes_one_project(self, name: str) -> None:
        if (self.room / f"projects/{name}.yaml").exists():
            publish(Order(self.room, projects=(name,), workers=1), Silent())
            self.publishes()

    @precondition(lambda machine: not machine.is_whole())
    @rule()
    def is_told_of_a_class_without_a_project(self) -> None:
        before = bytes_of(self.room)
        with pytest.raises(FaultyFileError, match="there is no project 'mast'"):
            publish(Order(self.room, workers=1), Silent())
        assert (bytes_of(self.room), left_over(self.room)) == (before, [])

    @precondition(is_whole)
    @rule(after=some.floats(0, LONGEST))
    def is_killed_and_publishes_again(self, after: float) -> None:
        before = bytes_of(self.room)
        run = multiprocessing.get_context("fork").Process(target=publish, args=(Order(self.room, workers=1), Silent()))
        run.start()
        time.sleep(after)
        run.kill()
        run.join()
        assert bytes_of(self.room) in (before, made_at_once(self.files()))
        self.publishes()

    def write(self, name: str, text: str) -> None:
        (self.room / name).parent.mkdir(parents=True, exist_ok=True)
        (self.room / name).write_text(text, encoding="utf-8")

    def files(self) -> Files:
        """What the room holds, without what is published."""
        places = [self.room / "projects", self.room / "site", self.room / "themes/ours"]
        found = sorted(path for place in places for path in place.rglob("*") if path.is_file())
        inputs = [path for path in found if not path.is_relative_to(site_of(self.room)) and path.name[0] != "."]
        return tuple((str(path.relative_to(self.room)), path.read_text(encoding="utf-8")) for path in inputs)

    def is_as_made_at_once(self) -> None:
        assert bytes_of(self.room) == made_at_once(self.files())
        assert left_over(self.room) == []

    def teardown(self) -> None:
        shutil.rmtree(self.room.parent)


def test_after_any_changes_in_any_order_a_site_is_as_a_first_run_would_make_it() -> None:
    run_state_machine_as_test(
        AnyOrder,
        settings=settings(max_examples=3, stateful_step_count=12, suppress_health_check=list(HealthCheck)),
    )
    assert made_at_once.cache_info().misses >= 3
