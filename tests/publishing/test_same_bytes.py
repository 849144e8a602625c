from __future__ import annotations

from pathlib import Path

from small_room import bytes_of, made_room, ran

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import load_room_context, worked_sheet
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.publishing.make.numbers import keys_of_worksheet

FAR_AWAY = {"TZ": "Pacific/Chatham", "LC_ALL": "C", "PYTHONHASHSEED": "1"}
NEARBY = {"TZ": "America/St_Johns", "LC_ALL": "C.UTF-8", "LANG": "de_DE.UTF-8", "PYTHONHASHSEED": "2"}


def test_a_site_is_the_same_bytes_when_it_is_built_elsewhere_in_two_goes(published_once: Path, tmp_path: Path) -> None:
    # One worker nearby, then two far away, against one in this process.
    room = made_room(tmp_path / "in another place")
    assert ran(room, "publish", "tablet", "--workers", "1", environment=NEARBY)[0] == 0
    assert ran(room, "publish", "--workers", "2", environment=FAR_AWAY)[0] == 0
    assert bytes_of(room) == bytes_of(published_once)


def worksheet_of(room: Path) -> Worksheet:
    settings = load_room(room / "site/site.yaml", room)
    project = load_project(room / "projects/tablet.yaml", settings, room)
    return worked_sheet(project, "only", settings.edition("inch"), load_room_context(settings, room))


def test_two_workings_of_one_project_say_the_same(room: Path) -> None:
    assert keys_of_worksheet(worksheet_of(room)) == keys_of_worksheet(worksheet_of(room))


def test_any_word_on_a_sheet_changes_what_it_says(room: Path) -> None:
    before, _ = keys_of_worksheet(worksheet_of(room))
    path = room / "projects/tablet.yaml"
    text = path.read_text(encoding="utf-8")
    for old, new in (("calico", "silk"), ("6 in", "7 in"), ("Three", "A few"), ("Tucked", "My")):
        path.write_text(text.replace(old, new), encoding="utf-8")
        assert keys_of_worksheet(worksheet_of(room))[0] != before
