from __future__ import annotations

import json
from pathlib import Path

import pdfplumber
import pytest
from small_room import Silent, Speech, edit, made_room, published, site_of

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.edition_files import read_editions
from generator.calculation.worksheet.editions import ChangedNumber
from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.errors import CalculationError, FaultyFileError, PublishError
from generator.publishing.editions import against_editions, keep, kept_editions
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import AgainstEditions, Order, Published, Stamp
from generator.publishing.manifest import read_manifest
from generator.publishing.printing import stamp_of_sheet
from generator.publishing.publish import publish

ADDRESS = "  web address: https://loft.example\n"
DAY = "2031-03-14"


@pytest.fixture
def bare(tmp_path: Path) -> Path:
    """A room that has published nothing."""
    return made_room(tmp_path / "bare")


def worksheets(room: Path, project: str = "flag") -> list[Worksheet]:
    settings = load_room(room / "site/site.yaml", room)
    found, shared = (
        load_project(room / f"projects/{project}.yaml", settings, room),
        load_room_context(settings, room),
    )
    return [worked_sheet(found, size, settings.edition("inch"), shared) for size in found.sizes]


def now(room: Path) -> AgainstEditions:
    """Return how the flag stands to its kept editions."""
    return against_editions(room, worksheets(room))[0]


def kept_under(room: Path, mark: str, project: str = "flag") -> None:
    keep(room, {project: against_editions(room, worksheets(room, project), mark, DAY)[1]})


def marked(room: Path, mark: str, *projects: str) -> Published:
    return publish(Order(room, "", projects, 1, mark, DAY), Silent())


def footer(room: Path, sheet: str) -> str:
    with pdfplumber.open(site_of(room) / sheet) as pdf:
        return str(pdf.pages[0].extract_text()).splitlines()[-1]


def page(room: Path, address: str) -> str:
    return (site_of(room) / address).read_text(encoding="utf-8")


def test_numbers_without_a_kept_edition_are_a_draft_and_nothing_is_kept_unasked(bare: Path) -> None:
    assert against_editions(bare, worksheets(bare)) == (AgainstEditions(Stamp("", "draft")), "")


def test_numbers_that_are_kept_stand_until_one_changes(bare: Path) -> None:
    kept_under(bare, "2031-03")
    assert now(bare) == AgainstEditions(Stamp("2031-03", "kept"))
    edit(bare / "projects/flag.yaml", "side: 12 in", "side: 13 in")
    told = now(bare)
    # A hem of 1/4 in is turned twice at each edge: 12 + 4 x 1/4 = 13 in to cut, and 14 in for a side of 13 in.
    assert told.stamp == Stamp("2031-03", "draft")
    assert ChangedNumber("flag", "large", "inch", "field", "cut across", "13", "14") in told.changed
    assert {change.size for change in told.changed} == {"large"}


def test_a_sentence_that_reads_otherwise_is_a_draft_and_is_told_by_its_step(bare: Path) -> None:
    kept_under(bare, "2031-03")
    assert now(bare).stamp.standing == "kept"
    edit(bare / "projects/flag.yaml", "Hold it up to the light.", "Hold it against the sky.")
    told = now(bare)
    assert told.stamp == Stamp("2031-03", "draft")
    assert [(change.size, change.piece, change.what) for change in told.changed] == [
        ("small", "", "words of Look at it"),
        ("large", "", "words of Look at it"),
    ]
    assert all(change.of_words for change in told.changed)
    assert {(change.was, change.now) for change in told.changed} == {("as printed then", "reworded")}


@pytest.mark.parametrize(
    ("old", "new", "what"),
    [
        ("Signal flag", "Storm flag", "words of the first page"),
        ("label: bunting", "label: sailcloth", "words of the first page"),
        ("    side: 8 in\n", "    side: 8 in\n    label: Pocket\n", "words of the first page"),
        ("use: cut, hem", "use: cut, hem\n    cautions: hammer", "words of the caution hammer"),
        ("title: Look at it", "title: Hold it up", "words of the order of steps"),
        ("steps:", "supplies:\n  - item: Toggle\nsteps:", "words of what to buy"),
    ],
)
def test_every_text_of_a_sheet_counts(bare: Path, old: str, new: str, what: str) -> None:
    kept_under(bare, "2031-03")
    edit(bare / "projects/flag.yaml", old, new)
    assert what in {change.what for change in now(bare).changed}


def test_a_text_that_prints_a_changed_number_is_not_told_again(bare: Path) -> None:
    edit(bare / "projects/flag.yaml", "Hold it up to the light.", "Hold the {{ side }} up. Count to 10.")
    kept_under(bare, "2031-03")
    edit(bare / "projects/flag.yaml", "side: 12 in", "side: 13 in")
    assert [change for change in now(bare).changed if change.of_words] == []
    edit(bare / "projects/flag.yaml", "up. Count", "up. Then count")
    assert {change.what for change in now(bare).changed if change.of_words} == {"words of Look at it"}


def test_a_number_that_stands_in_a_text_alone_counts(bare: Path) -> None:
    edit(bare / "projects/flag.yaml", "Hold it up to the light.", "Press for 10 seconds.")
    kept_under(bare, "2031-03")
    edit(bare / "projects/flag.yaml", "for 10 seconds", "for 20 seconds")
    assert {change.what for change in now(bare).changed} == {"words of Look at it"}


def test_times_are_no_part_of_what_is_kept(bare: Path) -> None:
    kept_under(bare, "2031-03")
    edit(bare / "projects/flag.yaml", "    text: Hold", "    minutes: 9\n    text: Hold")
    assert now(bare).stamp.standing == "kept"


def test_what_was_corrected_is_enough_for_a_new_mark_and_makes_no_draft(bare: Path) -> None:
    kept_under(bare, "2031-03")
    about = (("2031-04-01", "The picture of the hem is clearer."),)
    told, text = against_editions(bare, worksheets(bare), about=about)
    assert (told.stamp.standing, text) == ("kept", "")
    told, text = against_editions(bare, worksheets(bare), "2031-04", DAY, about)
    assert told.stamp == Stamp("2031-04", "kept")
    keep(bare, {"flag": text})
    assert against_editions(bare, worksheets(bare), "2031-05", DAY, about)[1] == ""


def without_words(room: Path) -> None:
    """Turn a file of editions into one of an earlier version."""
    path = room / "site/editions/flag.json"
    kept = json.loads(path.read_text(encoding="utf-8"))
    for sheets in (editions for one in kept for editions in one["sheets"].values()):
        for numbers in sheets.values():
            for name in [name for name in numbers if name.startswith(": words of ")]:
                del numbers[name]
    path.write_text(json.dumps(kept), encoding="utf-8")


def test_an_edition_that_kept_no_words_is_good_for_its_numbers_and_the_next_mark_keeps_them(bare: Path) -> None:
    kept_under(bare, "2031-03")
    without_words(bare)
    edit(bare / "projects/flag.yaml", "Hold it up to the light.", "Hold it against the sky.")
    assert now(bare).stamp == Stamp("2031-03", "kept")
    kept_under(bare, "2031-04")
    assert [one.with_words for one in kept_editions(bare, "flag")] == [False, True]
    edit(bare / "projects/flag.yaml", "side: 12 in", "side: 13 in")
    assert "cut across" in {change.what for change in now(bare).changed}


def test_two_printed_sheets_with_another_sentence_are_told_apart_and_the_correction_is_told(room: Path) -> None:
    sheet = "projects/flag/small/flag-small-inch-a4.pdf"
    (room / "projects/tablet.yaml").unlink()
    assert marked(room, "2031-03").marked == ["flag"]
    first = (site_of(room) / sheet).read_bytes()
    assert "Edition mark 2031-03" in footer(room, sheet)
    edit(room / "projects/flag.yaml", "Hold it up to the light.", "Hold it against the sky.")
    with (room / "projects/flag.yaml").open("a", encoding="utf-8") as file:
        file.write("changes:\n  - day: 2031-04-01\n    text: Light from behind shows more.\n")
    assert published(room).marked == []
    assert "Draft, after edition mark 2031-03" in footer(room, sheet)
    assert marked(room, "2031-04").marked == ["flag"]
    assert "Edition mark 2031-04" in footer(room, sheet)
    assert (site_of(room) / sheet).read_bytes() != first
    told = " ".join(page(room, "corrections.html").split())
    assert "Your sheet says 2031-03" in told
    assert "words of Look at it" in told
    assert "<b>reworded</b>" in told
    assert "Light from behind shows more." in told


def test_a_size_that_comes_or_goes_is_told(bare: Path) -> None:
    kept_under(bare, "2031-03")
    path = bare / "projects/flag.yaml"
    edit(path, "  large:\n", "  huge:\n    side: 20 in\n  large:\n")
    assert now(bare).added == (("huge", "inch"),)
    edit(path, "  large:\n    side: 12 in\n", "")
    gone = ChangedNumber("flag", "large", "inch", "", "this sheet", "published", "no longer published")
    assert now(bare).changed == (gone,)


def test_the_same_numbers_are_not_kept_twice_and_a_used_mark_is_refused(bare: Path) -> None:
    kept_under(bare, "2031-03")
    assert against_editions(bare, worksheets(bare), "2031-04", DAY)[1] == ""
    edit(bare / "projects/flag.yaml", "side: 12 in", "side: 13 in")
    with pytest.raises(CalculationError, match="were published under the mark '2031-03'; choose a new mark"):
        against_editions(bare, worksheets(bare), "2031-03", DAY)
    kept_under(bare, "2031-04")
    assert [one.mark for one in kept_editions(bare, "flag")] == ["2031-03", "2031-04"]


@pytest.mark.parametrize(
    ("content", "told"),
    [
        (b'[\n {"mark": }\n]', "site/editions/flag.json:2:11: the published editions of 'flag' cannot be read"),
        (b"", "site/editions/flag.json:1:1: the published editions of 'flag' cannot be read"),
        (b"[{}]", "site/editions/flag.json:1:1: the published editions of 'flag' cannot be read ('mark' is missing)"),
        (b"\xff\xfe", "site/editions/flag.json:1:1: the file is no text in UTF-8"),
    ],
)
def test_a_spoilt_file_of_editions_is_told_with_its_place(bare: Path, content: bytes, told: str) -> None:
    (bare / "site/editions").mkdir()
    (bare / "site/editions/flag.json").write_bytes(content)
    with pytest.raises(FaultyFileError) as refusal:
        now(bare)
    assert str(refusal.value).startswith(told)
    with pytest.raises(FaultyFileError) as refusal:
        published(bare)
    assert str(refusal.value).startswith(told)
    assert not site_of(bare).exists()


def test_what_cannot_be_kept_is_told_and_nothing_is_left_beside_it(bare: Path) -> None:
    (bare / "site/editions").write_text("in the way", encoding="utf-8")
    with pytest.raises(
        PublishError, match="The site is published, but its numbers are not kept; run the command again"
    ):
        keep(bare, {"flag": "[]\n"})
    assert not list((bare / "site").glob(".flag*"))


def test_kept_editions_belong_to_their_project_and_those_of_none_to_the_rest(bare: Path) -> None:
    before = read_inputs(bare, "")
    kept_under(bare, "a")
    after = read_inputs(bare, "")
    assert after.of_project("flag") != before.of_project("flag")
    assert (after.of_project("tablet"), after.rest) == (before.of_project("tablet"), before.rest)
    (bare / "projects/flag.yaml").rename(bare / "projects/banner.yaml")
    assert read_inputs(bare, "").strays == ["flag"]
    assert read_inputs(bare, "").rest != before.rest


def test_a_sheet_made_alone_bears_the_mark_as_on_the_site_and_an_own_size_does_not(bare: Path) -> None:
    settings = load_room(bare / "site/site.yaml", bare)
    flag, shared = load_project(bare / "projects/flag.yaml", settings, bare), load_room_context(settings, bare)
    assert stamp_of_sheet(flag, shared, bare, own=False).standing == "draft"
    kept_under(bare, "2031-03")
    assert (
        stamp_of_sheet(flag, shared, bare, own=False).mark,
        stamp_of_sheet(flag, shared, bare, own=True).mark,
    ) == (
        "2031-03",
        "2031-03",
    )
    assert stamp_of_sheet(flag, shared, bare, own=False).standing == "kept"
    assert stamp_of_sheet(flag, shared, bare, own=True).standing == "own"


def test_a_correction_goes_from_the_mark_over_the_draft_to_the_next_mark(room: Path) -> None:
    sheet = "projects/flag/small/flag-small-inch-a4.pdf"
    edit(room / "site/site.yaml", "  name: The Test Loft\n", f"  name: The Test Loft\n{ADDRESS}")
    (room / "projects/tablet.yaml").unlink()
    assert marked(room, "2031-03").marked == ["flag"]
    assert "Edition mark 2031-03" in footer(room, sheet)
    assert published(room).current
    edit(room / "projects/flag.yaml", "side: 8 in", "side: 9 in")
    done = published(room)
    assert (done.marked, list(done.drafts)) == ([], ["flag"])
    assert "Draft, after edition mark 2031-03" in footer(room, sheet)
    assert "they say draft, after edition mark 2031-03" in page(room, "corrections.html")
    assert published(room).drafts["flag"].stamp.mark == "2031-03"
    assert "is now" not in page(room, "corrections.xml")
    assert marked(room, "2031-04").marked == ["flag"]
    assert "Edition mark 2031-04" in footer(room, sheet)
    # A hem of 1/4 in is turned twice at each edge: 8 + 1 = 9 in to cut before, 9 + 1 = 10 in now.
    assert "small, inch edition: field, cut across: 9 is now 10" in page(room, "corrections.xml")
    editions = read_editions((room / "site/editions/flag.json").read_text(encoding="utf-8"), "flag")
    assert [(one.mark, one.day) for one in editions] == [("2031-03", DAY), ("2031-04", DAY)]
    assert published(room).current


def test_a_mark_that_cannot_be_used_leaves_site_and_editions_alone(room: Path, speak: Speech) -> None:
    (room / "projects/tablet.yaml").unlink()
    kept_under(room, "2031-03")
    edit(room / "projects/flag.yaml", "side: 8 in", "side: 9 in")
    before = (room / "site/editions/flag.json").read_bytes()
    code, out, told = speak(room, "publish", "--mark", "2031-03")
    assert (code, out) == (1, "")
    assert "flag: other sheets of 'flag' were published under the mark '2031-03'; choose a new mark" in told
    assert (room / "site/editions/flag.json").read_bytes() == before
    assert "tablet/overview" in read_manifest(room).entries


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("--mark", " "), "a published edition needs a mark"),
        (("--mark", "x" * 41), "an edition mark is one line of 40 letters at most"),
        (("--mark", "draft 2"), "cannot be an edition mark: sheets without one say draft"),
        (("--mark", "a", "--watch"), "--mark keeps what is published once, so it does not go with --watch"),
        (("--mark", "a", "--why", "flag", "small"), "it does not go with --why"),
    ],
)
def test_a_mark_that_is_none_is_a_wrong_command(bare: Path, speak: Speech, words: tuple[str, ...], told: str) -> None:
    code, _, complaint = speak(bare, "publish", *words)
    assert code == 2
    assert told in " ".join(complaint.replace("│", " ").split())
    assert not site_of(bare).exists()


def test_a_hostile_mark_is_only_text_on_every_page(room: Path, monkeypatch: pytest.MonkeyPatch, speak: Speech) -> None:
    mark = '<script>alert("1")</script> & ../..'
    (room / "projects/tablet.yaml").unlink()
    monkeypatch.setenv("SOURCE_DATE_EPOCH", "1930000000")
    code, out, _ = speak(room, "publish", "--workers", "1", "--mark", mark)
    assert code == 0
    assert f"Kept the sheets of 1 project under edition mark {mark}, in site/editions: flag" in out
    (kept,) = json.loads((room / "site/editions/flag.json").read_text(encoding="utf-8"))
    # 61 years with 15 leap days from 1970 on are 22280 days or 1924992000 s; 5008000 s more are 57 days and some hours,
    # and the 58th day of 2031 is 27 February.
    assert (kept["mark"], kept["day"]) == (mark, "2031-02-27")
    for path in site_of(room).rglob("*.html"):
        assert "<script>alert" not in path.read_text(encoding="utf-8")
    assert "&lt;script&gt;alert" in page(room, "corrections.html")


def test_a_project_that_has_another_name_is_asked_about_and_its_old_sheets_are_told(room: Path, speak: Speech) -> None:
    (room / "projects/tablet.yaml").unlink()
    kept_under(room, "2031-03")
    (room / "projects/flag.yaml").rename(room / "projects/banner.yaml")
    _, out, _ = speak(room, "publish", "--workers", "1")
    told = "site/editions/flag.json keeps editions of a project that is not there; if it has another name now"
    assert told in out
    text = page(room, "corrections.html")
    assert "This project is no longer on this site, or has another name now." in text
    assert 'href="projects/flag' not in text


def test_what_a_correction_was_about_is_told_without_making_a_sheet_again(room: Path) -> None:
    marked(room, "2031-03")
    with (room / "projects/flag.yaml").open("a", encoding="utf-8") as file:
        file.write("changes:\n  - day: 2031-04-01\n    text: The hem is wider.\n")
    made = published(room).made
    assert [name for name in made if name.startswith(("flag/inch", "flag/metric"))] == []
    assert "corrections" in made
    page = (room / "site/public/corrections.html").read_text(encoding="utf-8")
    assert "<dt>2031-04-01</dt>" in page
    assert "The hem is wider." in page
