"""What all tests share: random examples are the same in every run, and a slow machine fails none of them."""

from __future__ import annotations

import gc

from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True, print_blob=True)
settings.load_profile("steady")


def pytest_collection_finish() -> None:
    """Keep the garbage collector from what stays to the end: it took a quarter of the time in which sheets are set."""
    gc.collect()
    gc.freeze()
    gc.set_threshold(50_000)
