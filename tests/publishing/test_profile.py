from __future__ import annotations

import re
import time
from pathlib import Path

import pytest
from small_room import lose_pages, ran

from generator.publishing.worker import sampled


def at_work(seconds: float) -> None:
    end = time.process_time() + seconds
    while time.process_time() < end:
        pass


def test_what_works_longest_is_named_with_its_time() -> None:
    with sampled() as seconds:
        at_work(0.3)
    assert max(seconds, key=lambda name: seconds[name]) == f"{__name__}.at_work"
    assert seconds[f"{__name__}.at_work"] == pytest.approx(0.3, abs=0.1)


def test_nothing_is_looked_at_any_more_afterwards() -> None:
    with sampled() as seconds:
        at_work(0.05)
    told = dict(seconds)
    at_work(0.05)
    assert seconds == told


@pytest.mark.parametrize("workers", ["1", "2"])
def test_a_profile_names_the_five_dearest_functions(room: Path, workers: str) -> None:
    lose_pages(room)
    code, told, _ = ran(room, "publish", "--profile", "--workers", workers)
    assert code == 0
    _, _, functions = told.partition("without what they call:\n")
    lines = re.findall(r"(?m)^ +(\d+\.\d\d) s [\w.<>]+$", functions)
    assert len(lines) == 5
    assert sorted(map(float, lines), reverse=True) == list(map(float, lines))
