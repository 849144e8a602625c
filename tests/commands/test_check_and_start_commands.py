"""``tuckwright check``, ``start`` and ``schema``."""

from __future__ import annotations

import json
from pathlib import Path

from room_here import CUSHION, room

from tests.room import run

# Five slips of the pen, each on a line of its own.
FIVE_FAULTS = (
    CUSHION.replace("kind: cushion", "kind: cushon")
    .replace("side: 12 in or 30 cm", "side: 12,5 in or 30 cm")
    .replace("spacing: 1 1/2 in or 4 cm", "spacing: 1 1/2 or 4 cm")
    .replace("finished along: side\n    tucks", "finished along: sde\n    tucks")
    .replace("    overlap: 4 in", "    overlapp: 1 in\n    overlap: 4 in")
)


def test_five_faults_are_five_messages_with_their_lines(tmp_path: Path) -> None:
    told = run(room(tmp_path, slip_cushion=FIVE_FAULTS), "check", "slip-cushion")
    assert told.code == 1
    assert told.lines == [
        "projects/slip-cushion.yaml:2:7: 'cushon' is no kind of project; did you mean 'cushion'?",
        "projects/slip-cushion.yaml:7:11: write a decimal with a point: 12.5",
        "projects/slip-cushion.yaml:18:21: there is no measure 'sde'; did you mean 'side'?",
        "projects/slip-cushion.yaml:21:16: a length is wanted here, this is a plain number; write its unit, as in 1/2 "
        "in or 1 cm",
        "projects/slip-cushion.yaml:29:5: unknown key 'overlapp'; did you mean 'overlap'?",
        "1 project checked: 5 errors, 0 warnings, 0 notes",
    ]


def test_a_sound_project_passes(tmp_path: Path) -> None:
    told = run(room(tmp_path, slip_cushion=CUSHION), "check")
    assert (told.code, told.out) == (0, "1 project checked: 0 errors, 0 warnings, 0 notes\n")


def test_what_cannot_be_sewn_is_told_once_with_its_sizes(tmp_path: Path) -> None:
    narrow = CUSHION.replace("margin: 3/4 in to 1 1/2 in or 2 cm to 3 cm", "margin: 3/4 in or 2 cm")
    told = run(room(tmp_path, slip_cushion=narrow), "check", "slip-cushion")
    # Inch: (12 - 1 1/2) / (3/4) = 14 intervals fit, (16 - 1 1/2) / (3/4) = 19 1/3 do not; metric: (30 - 4) / 2 = 13 and
    # (40 - 4) / 2 = 18 do.
    assert told.code == 1
    [fault] = told.lines[:-1]
    assert fault.startswith("projects/slip-cushion.yaml:22:15: no number of tucks fits 16 in: nearest are ")
    assert fault.endswith("(medium, inch)")


def test_every_project_is_checked_though_one_is_broken(tmp_path: Path) -> None:
    told = run(room(tmp_path, broken="title: [\n", slip_cushion=FIVE_FAULTS, sound=CUSHION), "check")
    assert told.code == 1
    assert told.lines[-1].startswith("3 projects checked: 6 errors")


def test_notes_are_told_when_asked_for(tmp_path: Path) -> None:
    lone = CUSHION.replace("spacing: 1 1/2 in or 4 cm", "spacing: 1 1/2 in")
    here = room(tmp_path, slip_cushion=lone)
    assert run(here, "check").lines == ["1 project checked: 0 errors, 0 warnings, 1 note"]
    assert run(here, "check", "--notes").lines[0] == (
        "projects/slip-cushion.yaml:21:16: note: 1 1/2 in has no metric value; 4 cm is used"
    )


def test_start_writes_a_project_that_passes_its_check(tmp_path: Path) -> None:
    told = run(tmp_path, "start", "first-panel")
    assert told.code == 0
    assert (tmp_path / "projects" / "first-panel.yaml").read_text(encoding="utf-8").count("title: First panel") == 1
    checked = run(tmp_path, "check", "first-panel")
    assert (checked.code, checked.lines[-1]) == (0, "1 project checked: 0 errors, 0 warnings, 0 notes")
    assert run(tmp_path, "figures", "first-panel", "small").code == 0


def test_start_writes_a_cushion_of_sixteen_lines_that_can_be_printed(tmp_path: Path) -> None:
    told = run(tmp_path, "start", "first-cushion", "--short")
    assert told.lines[0] == "Wrote projects/first-cushion.yaml"
    text = (tmp_path / "projects" / "first-cushion.yaml").read_text(encoding="utf-8")
    assert len(text.splitlines()) == 16
    assert run(tmp_path, "check").lines[-1] == "1 project checked: 0 errors, 0 warnings, 3 notes"
    steps = run(tmp_path, "steps", "first-cushion").lines
    assert [line.strip() for line in steps[-3:]] == [
        "- use: join pieces, neaten, turn out",
        "on: front, back",
        "- use: fill",
    ]


def test_start_makes_a_room_in_an_empty_folder(tmp_path: Path) -> None:
    run(tmp_path, "start", "first-panel")
    assert sorted(str(file.relative_to(tmp_path)) for file in tmp_path.rglob("*.yaml")) == [
        "projects/first-panel.yaml",
        "site/site.yaml",
    ]


def test_start_never_overwrites(tmp_path: Path) -> None:
    here = room(tmp_path, slip_cushion=CUSHION)
    (here / "site" / "site.yaml").write_text("room:\n  name: Mine\n", encoding="utf-8")
    told = run(here, "start", "slip-cushion")
    assert told.code == 1
    assert told.err == (
        f"{here / 'projects' / 'slip-cushion.yaml'} is there already and stays as it is; choose another name\n"
    )
    assert (here / "projects" / "slip-cushion.yaml").read_text(encoding="utf-8") == CUSHION
    run(here, "start", "another")
    assert (here / "site" / "site.yaml").read_text(encoding="utf-8") == "room:\n  name: Mine\n"


def test_start_finds_the_room_from_a_folder_inside_it(tmp_path: Path) -> None:
    inside = room(tmp_path) / "notes"
    inside.mkdir()
    run(inside, "start", "first-panel")
    assert (tmp_path / "projects" / "first-panel.yaml").is_file()
    assert list(inside.iterdir()) == []


def test_a_name_that_is_no_file_name_is_refused_with_one_that_is(tmp_path: Path) -> None:
    for name, instead in (("My Panel", "my-panel"), ("../evil", "evil"), ("ä", "my-panel")):
        told = run(tmp_path, "start", name)
        assert told.code == 2
        assert told.err.endswith(
            f"'{name}': a project's name is small letters, digits and hyphens, for example '{instead}'\n"
        )
    assert list(tmp_path.iterdir()) == []


def test_the_schema_is_json_that_names_the_keys(tmp_path: Path) -> None:
    told = run(tmp_path, "schema")
    schema = json.loads(told.out)
    assert told.code == 0
    assert schema["$schema"].startswith("https://json-schema.org/")
    assert {"title", "kind", "cloths", "pieces"} <= set(schema["required"])
