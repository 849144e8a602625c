"""The room as a whole: enough variety to learn from, everything invented, nothing warned of without a reason."""

import re
from collections.abc import Callable
from itertools import pairwise
from pathlib import Path

import pytest
from sewable_room import FILES, ROOM, ROOT, every_sheet, sheets_of

from generator.calculation.worked import Panel
from generator.definitions.class_plan import load_class
from generator.definitions.project import Project, load_project

PAGES = sorted((ROOT / "site" / "pages").glob("*.md"))
CLASSES = sorted((ROOT / "site" / "classes").glob("*.yaml"))
# A remark stands so many lines above what it explains, at most.
REMARK = 6
# The trade's words, one for each idea; the glossary explains every one.
TRADE_WORDS = (
    "across, allowance, along, away, band, baste, bias, binding, blind tucks, boxing, caught hem, check point, "
    "crease, cross tucks, cut, depth, draw-in, ease, edition, envelope back, facing, facing pair, fasten the "
    "thread, finished, fold mark, foot, frill, fullness, gather, grade, grain, hem, in the ditch, interval, join, "
    "lap, layers, lining, margin, meeting tucks, nap, neaten, opening, panel, piping, pitch, pleat, ring, row, "
    "sample, seam, selvage, shank, spaced tucks, spacing, stay-stitch, take-up, toward, tuck, turn, turn plan, "
    "upright, usable width, visible space"
)


def all_panels() -> list[Panel]:
    return [panel for path in FILES for sheet in sheets_of(path) for panel in sheet.panels.values()]


def projects_with(test: Callable[[Panel], object]) -> set[str]:
    return {path.stem for path in FILES for sheet in sheets_of(path) if any(map(test, sheet.panels.values()))}


@every_sheet
def test_every_project_has_three_sizes_or_more_in_both_editions(path: Path) -> None:
    project = load_project(path, ROOM, ROOT)
    assert len(project.sizes) >= 3
    assert project.editions == ("inch", "metric")
    assert all(size.label and size.label != name for name, size in project.sizes.items())


@every_sheet
def test_no_two_sizes_of_a_project_are_cut_alike(path: Path) -> None:
    for edition in ("inch", "metric"):
        cuts = [
            tuple((piece.cut_across, piece.cut_along) for piece in sheet.pieces.values())
            for sheet in sheets_of(path)
            if sheet.edition.name == edition
        ]
        assert len(set(cuts)) == len(cuts)
        areas = [sum(across * along for across, along in cut) for cut in cuts]
        assert all(smaller < larger for smaller, larger in pairwise(areas))


@every_sheet
def test_every_project_says_that_it_is_invented(path: Path) -> None:
    assert "# Invented for" in path.read_text(encoding="utf-8")


@every_sheet
def test_a_warning_stands_only_beside_a_remark_that_explains_it(path: Path) -> None:
    lines = path.read_text(encoding="utf-8").splitlines()
    remarks = [number for number, line in enumerate(lines, 1) if "# Known warning:" in line]
    warned = {
        finding.place.line
        for sheet in sheets_of(path)
        for finding in sheet.findings
        if finding.level == "warning" and finding.place is not None
    }
    assert all(any(0 < line - remark <= REMARK for remark in remarks) for line in warned)
    assert all(any(0 < line - remark <= REMARK for line in warned) for remark in remarks)


@every_sheet
def test_reading_a_project_leaves_no_note(path: Path) -> None:
    assert load_project(path, ROOM, ROOT).findings == ()


def test_there_are_twelve_projects_or_more_of_many_kinds() -> None:
    kinds = {load_project(path, ROOM, ROOT).kind for path in FILES}
    assert len(FILES) >= 12
    assert kinds >= {"cushion", "bolster", "runner", "mats", "bag", "sleeve", "lampshade", "garment", "curtain"}
    assert kinds >= {"headboard", "sample"}


def test_there_are_five_turn_plans_or_more_and_one_drawn_by_hand() -> None:
    plans = {panel.rows.plan for panel in all_panels() if panel.rows}
    assert plans >= {"linked cells", "ripples", "bands", "diamonds", "slants", "drawn plan"}


@pytest.mark.parametrize(
    ("what", "test"),
    [
        ("joined wider than its cloth", lambda panel: panel.joins),
        ("graduated", lambda panel: len(set(panel.across.depths)) > 2),
        ("cross tucks", lambda panel: panel.cross),
        ("a ring", lambda panel: panel.across.ring),
        ("worked from a sample", lambda panel: panel.sampled),
        ("tucks that are not turned", lambda panel: panel.rows is None),
        ("sewn back and forth", lambda panel: panel.rows and len({row.start for row in panel.rows.rows}) == 2),
        ("caught hems", lambda panel: panel.across.left.kind == "caught hem"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_one_project_shows_each_way_of_making_a_panel(what: str, test: Callable[[Panel], object]) -> None:
    assert projects_with(test), f"no project shows: {what}"


def test_one_project_has_two_different_panels_and_one_is_cut_to_shape() -> None:
    sheets = [sheet for path in FILES for sheet in sheets_of(path)]
    assert any(len(sheet.panels) == 2 for sheet in sheets)
    assert any(piece.shaped for sheet in sheets for piece in sheet.pieces.values())
    assert any(piece.after_panel for sheet in sheets for piece in sheet.pieces.values())


def test_every_kind_of_closure_and_strip_of_the_trade_is_shown() -> None:
    sheets = [sheet for path in FILES for sheet in sheets_of(path)]
    kinds = {piece.kind for sheet in sheets for piece in sheet.pieces.values()}
    assert kinds >= {
        "envelope back",
        "gathered strip",
        "pleated strip",
        "gathered end",
        "binding",
        "tie",
        "piping",
        "boxing",
    }
    assert {closure.kind for sheet in sheets for closure in sheet.closures} >= {"buttons", "magnet", "ties", "snaps"}


def test_what_stands_near_a_lamp_or_is_worn_by_a_child_carries_its_caution() -> None:
    for path in FILES:
        for sheet in sheets_of(path):
            assert ("lamp" in sheet.cautions) == (sheet.kind == "lampshade")
            assert ("furniture" in sheet.cautions) or sheet.kind != "headboard"
            # The smock is cut by the measures of grown-ups.
            assert ("small children" in sheet.cautions) or sheet.kind != "garment" or path.stem == "slipway-smock"


def test_there_are_classes_of_an_evening_a_day_and_six_weeks_with_mixed_sizes_and_spare_kits() -> None:
    plans = [load_class(path, project_of(path), ROOT) for path in CLASSES]
    single = [plan.sessions[0] for plan in plans if len(plan.sessions) == 1]
    assert any(session.starts.hour >= 17 for session in single)
    assert any(session.ends.hour - session.starts.hour >= 6 for plan in plans for session in plan.sessions)
    assert any(len(plan.sessions) == 6 for plan in plans)
    for plan in plans:
        assert len({seat.size for seat in plan.places}) >= 2
        assert sum(plan.spare_kits.values()) >= 1
        assert all(finding.level == "note" for finding in plan.findings)


def project_of(path: Path) -> Project:
    named = re.search(r"^project: (.+)$", path.read_text(encoding="utf-8"), re.MULTILINE)
    assert named is not None
    return load_project(ROOT / "projects" / f"{named[1].strip()}.yaml", ROOM, ROOT)


@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.stem)
def test_a_page_begins_with_its_title_and_holds_no_raw_html(path: Path) -> None:
    text = path.read_text(encoding="utf-8")
    assert re.match(r"# \S.+\n\n", text)
    plain = re.sub(r"^```.*?^```$|`[^`\n]+`", "", text, flags=re.DOTALL | re.MULTILINE)
    assert len(re.findall(r"^# ", plain, re.MULTILINE)) == 1
    assert not re.search(r"<\w|https?://|\{\{", plain)


def test_the_pages_a_teacher_needs_are_there() -> None:
    assert {path.stem for path in PAGES} >= {
        "how-to-measure",
        "sew-a-sample",
        "when-a-row-goes-wrong",
        "machine-card",
        "care",
        "glossary",
        "write-a-project",
        "what-a-project-can-say",
        "your-own-size-and-cloth",
        "write-a-class",
        "set-up-your-room",
        "make-a-theme",
        "correct-a-sheet",
    }


def test_the_glossary_explains_every_word_of_the_trade_in_order() -> None:
    text = (ROOT / "site" / "pages" / "glossary.md").read_text(encoding="utf-8")
    entries = [entry.lower() for entry in re.findall(r"^\*\*(.+?)\*\*:", text, re.MULTILINE)]
    words = TRADE_WORDS.split(", ")
    assert set(words) - set(entries) == set()
    assert entries == sorted(entries)
