"""The whole demo site, as it was built."""

from __future__ import annotations

from collections.abc import Iterator

import pytest

from generator.publishing import printing
from tests.built_site import BuiltSite, built_site
from tests.made import Made


@pytest.fixture(scope="session")
def demo_site() -> BuiltSite:
    return built_site()


@pytest.fixture(scope="session", autouse=True)
def editions_asked_once(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """What a sheet says of its edition takes all sizes of its project to be worked, and is the same for its themes."""
    with pytest.MonkeyPatch.context() as patch:
        asked = Made(tmp_path_factory).once(
            printing.stamp_of_sheet, lambda project, _shared, folder, own: (project.name, str(folder), own)
        )
        patch.setattr(printing, "stamp_of_sheet", asked)
        yield
