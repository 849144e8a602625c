"""What all tests share: random examples are the same in every run, and a slow machine fails none of them."""

from __future__ import annotations

import gc
from collections.abc import Iterator

import pytest
from hypothesis import settings

from tests import room
from tests.made import Made

settings.register_profile("steady", deadline=None, derandomize=True, print_blob=True)
settings.load_profile("steady")


def pytest_collection_finish() -> None:
    """Keep the garbage collector from what stays to the end: it took a quarter of the time in which sheets are set."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(50_000)


@pytest.fixture(scope="session", autouse=True)
def projects_of_the_demo_room_worked_once(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """A project in all of its sizes is asked for by many tests, in each of the workers."""
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(room, "demo_sizes", Made(tmp_path_factory).once(room.demo_sizes))
        yield
