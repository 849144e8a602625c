"""Every PDF of the whole built demo site, opened and read."""

from __future__ import annotations

from pathlib import Path

import pytest
from sheet_checks import faults_of

from generator.definitions.vocabulary import SHEETS_OF_SIZE
from tests.built_site import PARTS, BuiltSite
from tests.room import run

ROOT = Path(__file__).resolve().parents[2]


@pytest.mark.parametrize("part", PARTS)
def test_every_sheet_is_whole_tagged_told_in_words_and_leads_nowhere_else(part: str, demo_site: BuiltSite) -> None:
    sheets = demo_site.files_of(part, ".pdf")
    assert sheets
    assert [f"{sheet}: {fault}" for sheet in sheets for fault in faults_of(demo_site.folder / sheet, demo_site)] == []


def test_every_size_has_a_handout_in_each_edition_and_on_each_paper(demo_site: BuiltSite) -> None:
    pages = [page for page in demo_site.pages if page.endswith("-at-the-machine.html")]
    wanted = set()
    for page in pages:
        folder, _, name = page.rpartition("/")
        project, size = folder.split("/")[1:]
        edition = name.removesuffix("-at-the-machine.html")
        wanted |= {f"{folder}/{project}-{size}-{edition}-{paper}.pdf" for paper in ("letter", "a4")}
    assert len(pages) > 80
    assert wanted - set(demo_site.files) == set()


@pytest.mark.parametrize("kind", SHEETS_OF_SIZE)
@pytest.mark.parametrize("theme", ["plain", "harbour", "large-print"])
def test_a_sheet_made_on_demand_is_as_good_as_those_of_the_site(
    kind: str, theme: str, demo_site: BuiltSite, tmp_path: Path
) -> None:
    for project, size, paper in (("quay-cushion", "small", "letter"), ("customs-tote", "parcels", "a4")):
        sheet = tmp_path / f"{project}-{paper}.pdf"
        words = ("sheet", project, size, "--kind", kind, "--theme", theme, "--paper", paper, "-o", str(sheet))
        assert run(ROOT, *words).code == 0
        assert faults_of(sheet, demo_site) == []
