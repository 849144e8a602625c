"""Every PDF of the whole built demo site, opened and read."""

from __future__ import annotations

import re
from pathlib import Path

import pypdfium2
import pytest
from sheet_checks import faults_of

from generator.definitions.vocabulary import SHEETS_OF_SIZE
from generator.rendering.addresses import handout_file
from tests.built_site import PARTS, PROJECTS, BuiltSite
from tests.rendering.shapes_room import PROJECT
from tests.room import demo_room, part_of_demo, run, write_room

ROOT = Path(__file__).resolve().parents[2]
_HANDOUT = re.compile(r"projects/([^/]+)/([^/]+)/\1-\2-(?:inch|metric)-(?:letter|a4)\.pdf")


@pytest.mark.parametrize("part", PARTS)
def test_every_sheet_is_whole_tagged_told_in_words_and_leads_nowhere_else(part: str, demo_site: BuiltSite) -> None:
    sheets = demo_site.files_of(part, ".pdf")
    assert sheets
    assert [f"{sheet}: {fault}" for sheet in sheets for fault in faults_of(demo_site.folder / sheet, demo_site)] == []


def test_every_named_size_has_a_handout_in_each_edition_and_on_each_paper(demo_site: BuiltSite) -> None:
    listed = [(name, demo_room().project(name)) for name in PROJECTS]
    wanted = {
        handout_file(name, size, edition, paper)
        for name, project in listed
        for size in project.sizes
        for edition in project.editions
        for paper in ("Letter", "A4")
    }
    assert len(wanted) > 200
    assert wanted - set(demo_site.files) == set()


def test_a_size_between_has_its_pages_and_no_paper(demo_site: BuiltSite) -> None:
    """Quay cushion: 12 to 20 in by 1/2 in are 17 steps, 14 without the three named ones; 30 to 50 cm are 21, so 18."""
    folders = {page.rpartition("/")[0] for page in demo_site.files if page.startswith("projects/quay-cushion/side-")}
    assert sorted(len([one for one in folders if one.endswith(unit)]) for unit in ("-in", "-cm")) == [14, 18]
    for folder in folders:
        inside = [file for file in demo_site.files if file.startswith(f"{folder}/")]
        edition = "inch" if folder.endswith("-in") else "metric"
        assert inside == [f"{folder}/{edition}-at-the-machine.html", f"{folder}/{edition}.html"]


def test_handouts_take_few_pages_and_as_many_on_both_papers(demo_site: BuiltSite) -> None:
    # One folded sheet for most projects, or that and one leaf more.
    pages = {name: _pages(demo_site.folder / name) for name in demo_site.files if _HANDOUT.fullmatch(name)}
    letter = {name: number for name, number in pages.items() if name.endswith("-letter.pdf")}
    assert len(letter) > 80
    assert {
        name: number for name, number in letter.items() if pages[name.removesuffix("-letter.pdf") + "-a4.pdf"] != number
    } == {}
    assert sum(letter.values()) / len(letter) <= 4.8
    assert max(letter.values()) <= 8
    assert {number for name, number in letter.items() if "/quay-cushion/" in name} == {4}


@pytest.mark.parametrize("name", PROJECTS)
def test_what_the_finished_thing_can_do_is_told_on_page_one(name: str, demo_site: BuiltSite) -> None:
    for worksheet in demo_room().worksheets(name):
        file = handout_file(name, worksheet.size, worksheet.edition.name, "Letter")
        with pypdfium2.PdfDocument(demo_site.folder / file) as read:
            first = " ".join(read[0].get_textpage().get_text_bounded().split())
        for caution in (worksheet.cautions[told] for told in worksheet.told_first):
            hazard = " ".join(caution.text.replace("*", "").split(".")[0].split())
            assert f"{caution.level.upper()} {hazard}." in first, file


def _pages(path: Path) -> int:
    with pypdfium2.PdfDocument(path) as read:
        return len(read)


# A small room with shapes, which are cut from paper, and what is asked of its sheet.
SHAPES = {"site/site.yaml": "room:\n  name: The Ropewalk Sewing Room\n", "projects/shapes.yaml": PROJECT}
ON_DEMAND = [(kind, theme) for kind in SHEETS_OF_SIZE for theme in ("plain", "harbour", "large-print")]


@pytest.mark.parametrize(("kind", "theme"), ON_DEMAND)
def test_a_sheet_made_on_demand_is_as_good_as_those_of_the_site(
    kind: str, theme: str, demo_site: BuiltSite, tmp_path: Path
) -> None:
    asked = [(ROOT, "quay-cushion", "small", "letter"), (ROOT, "customs-tote", "parcels", "a4")]
    if kind == "paper pattern":
        asked = [(write_room(tmp_path, SHAPES), "shapes", "small", paper) for paper in ("letter", "a4")]
        part_of_demo(tmp_path, "themes")
    for room, project, size, paper in asked:
        sheet = tmp_path / f"{project}-{paper}.pdf"
        words = ("sheet", project, size, "--kind", kind, "--theme", theme, "--paper", paper, "-o", str(sheet))
        assert run(room, *words).code == 0
        assert faults_of(sheet, demo_site) == []
