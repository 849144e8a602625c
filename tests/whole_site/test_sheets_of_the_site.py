"""Every PDF of the whole built demo site, opened and read."""

from __future__ import annotations

import pytest
from sheet_checks import faults_of

from tests.built_site import PARTS, BuiltSite


@pytest.mark.parametrize("part", PARTS)
def test_every_sheet_is_whole_tagged_told_in_words_and_leads_nowhere_else(part: str, demo_site: BuiltSite) -> None:
    sheets = demo_site.files_of(part, ".pdf")
    assert sheets
    assert [f"{sheet}: {fault}" for sheet in sheets for fault in faults_of(demo_site.folder / sheet, demo_site)] == []


def test_every_size_has_a_handout_and_strips_in_each_edition_and_on_each_paper(demo_site: BuiltSite) -> None:
    pages = [page for page in demo_site.pages if page.endswith("-at-the-machine.html")]
    wanted = set()
    for page in pages:
        folder, _, name = page.rpartition("/")
        project, size = folder.split("/")[1:]
        edition = name.removesuffix("-at-the-machine.html")
        for paper in ("letter", "a4"):
            wanted |= {f"{folder}/{project}-{size}-{edition}-{paper}{kind}.pdf" for kind in ("", "-strip", "-rescue")}
    assert len(pages) > 80
    assert wanted - set(demo_site.files) == set()
