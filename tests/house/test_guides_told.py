"""The pages for whoever writes projects: every example in them works, and every answer is what the tool says."""

from __future__ import annotations

from pathlib import Path

import pytest
from page_room import Block, answered, blocks_of, run_as_shown, with_offer, written

from generator.commands.edition_words import edition_lines
from generator.definitions.class_plan import load_class
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.publishing.editions import against_editions, keep
from generator.publishing.jobs import Order, Published
from tests.room import opened_room

ROOT = Path(__file__).resolve().parents[2]
PAGES = ROOT / "site" / "pages"
FIRST = PAGES / "write-a-project.md"
# A page goes on in the room as the page before it left it.
GUIDES = (
    FIRST,
    *(
        PAGES / f"{name}.md"
        for name in (
            "what-a-project-can-say",
            "cloth-with-a-pattern",
            "your-own-size-and-cloth",
            "write-a-class",
            "set-up-your-room",
            "make-a-theme",
            "correct-a-sheet",
            "sixteen-lines",
        )
    ),
)


OFFERS = [block for page in GUIDES for block in blocks_of(page) if block.is_offer]


def with_files_of(page: Path, room: Path) -> None:
    """Write the files of a page without running anything."""
    begun: set[str] = set()
    for block in blocks_of(page):
        if block.is_file:
            written(room, block, begun)


@pytest.mark.parametrize("page", GUIDES, ids=lambda page: page.stem)
def test_every_command_on_a_page_answers_what_the_page_shows(page: Path, tmp_path: Path) -> None:
    if page != FIRST:
        with_files_of(FIRST, tmp_path)
    begun: set[str] = set()
    for block in blocks_of(page):
        assert block.kind in ("yaml", "console", "sh", "css", "html"), f"{block}: what is this?"
        if block.kind == "console":
            run_as_shown(tmp_path, block)
        elif block.is_file:
            written(tmp_path, block, begun)


@pytest.mark.parametrize("block", OFFERS, ids=str)
def test_every_offer_on_a_page_is_sound_in_its_file(block: Block, tmp_path: Path) -> None:
    with_files_of(FIRST, tmp_path)
    with_files_of(block.page, tmp_path)
    path = tmp_path / block.file
    path.write_text(with_offer(path.read_text(encoding="utf-8"), block), encoding="utf-8")
    if block.file.startswith("projects/"):
        said = answered(tmp_path, ["check", path.stem])
        assert "1 project checked: 0 errors" in said, said
        assert ("0 warnings" not in said) == ("warning" in block.words), said
    elif block.file == "site/site.yaml":
        load_room(path, tmp_path)
    else:
        load_class(path, load_project(next((tmp_path / "projects").glob("*.yaml")), root=tmp_path), tmp_path)


@pytest.mark.parametrize("page", GUIDES, ids=lambda page: page.stem)
def test_what_a_page_shows_of_the_tools_own_files_stands_there(page: Path) -> None:
    for block in blocks_of(page):
        if block.words[2:] == ("shown",):
            assert block.text in (ROOT / block.file).read_text(encoding="utf-8"), str(block)


def test_the_correction_in_the_guide_changes_as_many_numbers_as_it_says(tmp_path: Path) -> None:
    with_files_of(FIRST, tmp_path)
    (tmp_path / "site").mkdir(exist_ok=True)
    (tmp_path / "site" / "site.yaml").write_text("room:\n  name: Ours\n", encoding="utf-8")
    kept = against_editions(tmp_path, opened_room(tmp_path).worksheets("tray-cloth"), "2031-03", "2031-03-01")[1]
    keep(tmp_path, {"tray-cloth": kept})
    page = PAGES / "correct-a-sheet.md"
    mended = next(block for block in blocks_of(page) if block.is_offer)
    path = tmp_path / mended.file
    path.write_text(with_offer(path.read_text(encoding="utf-8"), mended), encoding="utf-8")
    against = against_editions(tmp_path, opened_room(tmp_path).worksheets("tray-cloth"))[0]
    (told,) = edition_lines(Order(tmp_path, "", (), 1, "", ""), Published(drafts={"tray-cloth": against}, current=True))
    assert f"`{told.partition(':')[0]}`" in page.read_text(encoding="utf-8")
