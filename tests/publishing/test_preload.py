"""The process that workers are split off from has opened what they need, as far as it can be opened."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from small_room import edit, version_of

from generator.publishing.jobs import named_version
from generator.publishing.preload import ROOM

LOOKED_AT = """
import gc, json, os, sys
from generator.publishing import preload
from generator.publishing.jobs import named_version
from generator.publishing.room import open_room
from generator.rendering import environment, pdf
found = open_room.cache_info().currsize
if found:
    open_room(named_version(os.environ[preload.ROOM]))
caches = {"room": open_room, "styles": pdf.read_style_sheet, "fonts": pdf._fonts, "templates": environment._environment}
told = {name: function.cache_info().currsize for name, function in caches.items()}
told |= {"hits": open_room.cache_info().hits, "collects": gc.isenabled(), "for good": gc.get_freeze_count() > 100_000}
print(json.dumps(told))
"""


def looked_at(room: Path) -> dict[str, int | bool]:
    """Return what such a process holds for a run in a room."""
    environment = {**os.environ, ROOM: version_of(room).name}
    ran = subprocess.run(
        [sys.executable, "-c", LOOKED_AT], env=environment, check=True, capture_output=True, text=True, timeout=60
    )
    told: dict[str, int | bool] = json.loads(ran.stdout)
    return told


def test_a_version_of_a_room_is_known_by_its_name(room: Path) -> None:
    version = version_of(room, "harbour")
    assert named_version(version.name) == version


def test_workers_find_the_room_its_templates_and_its_style_sheets_read_but_no_fonts(room: Path) -> None:
    told = looked_at(room)
    assert (told["room"], told["hits"]) == (1, 1)
    assert told["templates"] == 1
    assert told["styles"] == 3
    assert told["fonts"] == 0
    assert told["collects"]
    assert told["for good"]


def test_what_cannot_be_opened_is_left_to_the_worker_that_needs_it(room: Path) -> None:
    edit(room / "site/site.yaml", "papers:", "papersizes:")
    told = looked_at(room)
    assert (told["room"], told["styles"]) == (0, 0)
    assert told["for good"]
