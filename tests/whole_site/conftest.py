"""The whole demo site, as it was built."""

from __future__ import annotations

import pytest

from tests.built_site import BuiltSite, built_site


@pytest.fixture(scope="session")
def demo_site() -> BuiltSite:
    return built_site()
