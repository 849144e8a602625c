"""The process that workers are split off from has opened what they need, as far as it can be opened."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

from small_room import edit

from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import named_workshop, workshop_of
from generator.publishing.later import RUN

LOOKED_AT = """
import gc, json, os, sys
from generator.publishing import made_ready
from generator.publishing.jobs import named_workshop
from generator.publishing.opened import open_room
from generator.rendering import environment, pdf
found = open_room.cache_info().currsize
if found:
    open_room(named_workshop(os.environ["TUCKWRIGHT_RUN"]))
caches = {"room": open_room, "styles": pdf.read_style_sheet, "fonts": pdf._fonts, "templates": environment._environment}
told = {name: function.cache_info().currsize for name, function in caches.items()}
told |= {"hits": open_room.cache_info().hits, "collects": gc.isenabled(), "for good": gc.get_freeze_count() > 100_000}
print(json.dumps(told))
"""


def looked_at(room: Path) -> dict[str, int | bool]:
    """Return what such a process holds for a run in a room."""
    name = workshop_of(room, "", read_inputs(room, "")).name
    environment = {**os.environ, RUN: name}
    ran = subprocess.run(
        [sys.executable, "-c", LOOKED_AT], env=environment, check=True, capture_output=True, text=True, timeout=60
    )
    told: dict[str, int | bool] = json.loads(ran.stdout)
    return told


def test_a_workshop_is_known_by_its_name(room: Path) -> None:
    workshop = workshop_of(room, "harbour", read_inputs(room, "harbour"))
    assert named_workshop(workshop.name) == workshop


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
