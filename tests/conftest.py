"""What all tests share: random examples are the same in every run, and a slow machine fails none of them."""

from __future__ import annotations

from hypothesis import settings

settings.register_profile("steady", deadline=None, derandomize=True, print_blob=True)
settings.load_profile("steady")
