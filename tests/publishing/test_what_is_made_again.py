from __future__ import annotations

import re
import shutil
from pathlib import Path

import pytest
from small_room import FLAG, TABLET, bytes_of, edit, made_room, published, site_of

from generator.errors import PublishError
from generator.publishing.room_files import OWN_THEMES

SMALL = "projects/flag/small/flag-small-inch-a4.pdf"


def after_sheets(project: str) -> tuple[str, ...]:
    """Return what follows the sheets of a project with another title, or of a new one: lists of sheets have it too."""
    return ("sheets of the room", f"{project}/overview", "newest", "search", "site")


def text_of(room: Path, page: str) -> str:
    return (site_of(room) / page).read_text(encoding="utf-8")


def test_a_first_run_makes_a_page_and_sheets_for_every_size(room: Path) -> None:
    files = bytes_of(room)
    for sheet in ("flag/small/flag-small", "flag/large/flag-large", "tablet/only/tablet-only"):
        assert f"projects/{sheet}-inch-a4.pdf" in files
        assert f"projects/{Path(sheet).parent}/inch.html" in files
    assert {"index.html", "projects/flag/index.html", "pages/how-to-measure.html", "assets/theme.css"} <= set(files)


def test_every_link_inside_the_site_leads_to_a_file(room: Path) -> None:
    site = site_of(room)
    wanted = set()
    for page in site.rglob("*.html"):
        targets = re.findall(r'(?:href|src)="([^"#]+)', page.read_text(encoding="utf-8"))
        inside = [target for target in targets if not target.startswith(("https:", "mailto:", "data:"))]
        # The page for what is not there is shown at any address, so its links begin at the root.
        wanted |= {(site / target[1:] if target[0] == "/" else page.parent / target).resolve() for target in inside}
    assert len(wanted) > 15
    assert {path for path in wanted if not path.is_file()} == set()


def test_the_home_page_has_its_pictures_in_files(room: Path) -> None:
    home = (site_of(room) / "index.html").read_text(encoding="utf-8")
    assert 'src="projects/tablet/picture-320.webp"' in home
    assert 'srcset="projects/tablet/picture-320.webp 320w, projects/tablet/picture-480.webp 480w, ' in home
    assert "<svg" not in home


def test_a_run_without_a_change_makes_nothing_and_leaves_the_folder_alone(room: Path) -> None:
    before = site_of(room).stat().st_ino
    done = published(room)
    assert done.current
    assert (done.made, site_of(room).stat().st_ino) == ([], before)


def test_a_change_of_one_project_leaves_the_other_as_it_is(room: Path) -> None:
    other = site_of(room) / "projects/tablet/only/tablet-only-inch-a4.pdf"
    before = other.stat().st_ino
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    done = published(room)
    assert done.made == ["flag/inch/small", "flag/inch/large", "flag/further", *after_sheets("flag")]
    # The title stands on no picture.
    assert sorted(name for name in done.kept if "/" in name) == [
        "flag/pictures",
        "tablet/further",
        "tablet/inch/only",
        "tablet/overview",
        "tablet/pictures",
    ]
    assert other.stat().st_ino == before
    assert "Storm flag" in (site_of(room) / "index.html").read_text(encoding="utf-8")


def test_a_line_that_reaches_one_size_makes_only_that_size_again(room: Path) -> None:
    edit(room / "projects/flag.yaml", "side: 12 in", "side: 14 in")
    # The card and the search tell from which to which size the thing comes.
    assert published(room).made == ["flag/inch/large", "flag/further", *after_sheets("flag")]


def test_a_word_of_a_step_makes_no_sheet_about_all_sizes_or_projects_again(room: Path) -> None:
    other = site_of(room) / "sheets"
    before = {path: path.stat().st_ino for path in other.iterdir()}
    edit(room / "projects/flag.yaml", "Hold it up to the light", "Hold it up to a lamp")
    done = published(room)
    assert done.made == ["flag/inch/small", "flag/inch/large", "flag/overview", "newest"]
    assert {path: path.stat().st_ino for path in other.iterdir()} == before
    assert "to a lamp" in text_of(room, "projects/flag/large/inch.html")


def test_a_remark_makes_no_sheet_again(room: Path) -> None:
    edit(room / "projects/tablet.yaml", "title:", "# Invented.\ntitle:")
    assert published(room).made == []
    assert published(room).current


def test_a_file_that_is_saved_unchanged_counts_as_unchanged(room: Path) -> None:
    path = room / "projects/flag.yaml"
    path.write_bytes(path.read_bytes())
    assert published(room).current


def test_what_belongs_to_a_project_that_is_gone_disappears(room: Path) -> None:
    (room / "projects/tablet.yaml").unlink()
    published(room)
    assert [name for name in bytes_of(room) if "tablet" in name] == []
    assert "Tucked tablet" not in (site_of(room) / "index.html").read_text(encoding="utf-8")


def test_what_belongs_to_a_size_that_is_gone_disappears(room: Path) -> None:
    edit(room / "projects/flag.yaml", "  large:\n    side: 12 in\n", "")
    published(room)
    assert [name for name in bytes_of(room) if "large" in name] == []


def test_a_page_of_words_that_is_gone_disappears_from_the_guides(room: Path) -> None:
    (room / "site/pages/how-to-measure.md").unlink()
    assert published(room).made == ["guides", "search", "site"]
    assert [path.name for path in (site_of(room) / "pages").iterdir()] == ["index.html"]
    assert "There are no guides yet." in text_of(room, "pages/index.html")


def test_another_title_of_a_page_makes_only_that_page_and_the_list_of_guides_again(room: Path) -> None:
    edit(room / "site/pages/how-to-measure.md", "# How to measure", "# Measure twice")
    assert published(room).made == ["page: how-to-measure", "guides", "search"]
    assert "Measure twice" in text_of(room, "pages/index.html")


def test_a_new_page_makes_no_sheet_and_no_other_page_again(room: Path) -> None:
    (room / "site/pages/care.md").write_text("# Care\n\nFold it.\n", encoding="utf-8")
    assert published(room).made == ["page: care", "guides", "search", "site"]
    assert "care.html" in text_of(room, "pages/index.html")


def test_a_glossary_that_comes_is_led_to_from_the_reference(room: Path) -> None:
    (room / "site/pages/glossary.md").write_text("# Glossary\n\n**tuck**: a fold.\n", encoding="utf-8")
    assert published(room).made == ["reference", "page: glossary", "guides", "search", "site"]
    assert "../pages/glossary.html" in text_of(room, "reference/index.html")


def test_words_on_a_page_make_no_sheet_again(room: Path) -> None:
    edit(room / "site/pages/how-to-measure.md", "Lay the tape flat.", "Lay it *flat*.")
    assert published(room).made == ["page: how-to-measure"]
    assert "<em>flat</em>" in (site_of(room) / "pages/how-to-measure.html").read_text(encoding="utf-8")


@pytest.mark.parametrize("damage", ["", "%PDF-1.7 cut off"])
def test_a_file_that_is_missing_or_cut_off_is_made_again(room: Path, damage: str) -> None:
    before = bytes_of(room)
    sheet = site_of(room) / SMALL
    sheet.unlink()
    if damage:
        sheet.write_text(damage, encoding="utf-8")
    assert published(room).made == ["flag/inch/small"]
    assert bytes_of(room) == before


def test_naming_a_project_leaves_the_others_as_they_were_published(room: Path) -> None:
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    edit(room / "projects/tablet.yaml", "Tucked tablet", "Three tucks")
    assert published(room, "tablet").made == ["tablet/inch/only", "tablet/further", *after_sheets("tablet")]
    assert "Signal flag" in (site_of(room) / "index.html").read_text(encoding="utf-8")
    assert [name for name in published(room).made if "tablet" in name] == []
    assert "Storm flag" in (site_of(room) / "index.html").read_text(encoding="utf-8")


def test_a_project_that_was_never_published_stays_out_when_another_is_named(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    published(room, "flag")
    assert not (site_of(room) / "projects/tablet").exists()
    made = ["tablet/inch/only", "tablet/further", "tablet/pictures", *after_sheets("tablet")]
    assert sorted(published(room).made) == sorted([*made, "share"])


def test_a_style_sheet_that_pages_link_to_makes_no_page_again_and_one_of_the_sheets_does(room: Path) -> None:
    shutil.copytree(OWN_THEMES, room / "themes")
    (room / "projects/tablet.yaml").unlink()
    published(room)
    with (room / "themes/plain/css/screen.css").open("a", encoding="utf-8") as file:
        file.write("h1 { letter-spacing: 0; }\n")
    assert published(room).made == ["site"]
    assert "h1{letter-spacing:0}" in (site_of(room) / "assets/screen.css").read_text(encoding="utf-8")
    with (room / "themes/plain/css/handout.css").open("a", encoding="utf-8") as file:
        file.write("h1 { letter-spacing: 0; }\n")
    assert published(room).kept == ["flag/pictures"]


def test_another_theme_makes_every_sheet_again(room: Path) -> None:
    before = bytes_of(room)[SMALL]
    (room / "projects/tablet.yaml").unlink()
    assert published(room, theme="large-print").kept == ["flag/pictures"]
    assert bytes_of(room)[SMALL] != before


def test_a_theme_that_is_not_there_is_told_with_those_that_are(room: Path) -> None:
    with pytest.raises(PublishError, match=r"there is no theme 'fancy'; there are: .*large-print, plain"):
        published(room, theme="fancy")


def test_after_many_changes_the_site_is_the_same_as_one_built_at_once(room: Path, tmp_path: Path) -> None:
    (room / "projects/tablet.yaml").rename(room / "projects/slate.yaml")
    edit(room / "projects/slate.yaml", "Tucked tablet", "Slate")
    edit(room / "projects/flag.yaml", "side: 12 in", "side: 14 in")
    (site_of(room) / SMALL).unlink()
    published(room, "slate")
    published(room)
    at_once = made_room(tmp_path / "fresh", {"flag": FLAG.replace("12 in", "14 in")})
    (at_once / "projects/slate.yaml").write_text(TABLET.replace("Tucked tablet", "Slate"), encoding="utf-8")
    published(at_once)
    assert bytes_of(room) == bytes_of(at_once)


def test_pictures_are_made_again_where_what_they_show_is_otherwise_and_by_the_leading_size_alone(room: Path) -> None:
    def made() -> bool:
        return "flag/pictures" in published(room).made

    edit(room / "projects/flag.yaml", "side: 12 in", "side: 14 in")
    assert not made()
    edit(room / "projects/flag.yaml", "label: bunting", "label: bunting\n    colour: red")
    assert made()
    edit(room / "projects/flag.yaml", "side: 8 in", "side: 9 in")
    assert made()
