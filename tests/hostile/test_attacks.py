"""Whatever a project file holds, the check says what is wrong and where, at once, and touches nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from .checked_room import Checked, checked, room
from .files import FAMILIES, Attack

# Only a hang or a flood of memory fails here: everything else is a matter of the machine.
TIMES_A_GOOD_FILE = 5
MEGABYTES = 300
NAMED = [(name, place) for place, family in enumerate(FAMILIES) for name in family]


def file_name(attack: str) -> str:
    return attack.replace(" ", "-")


def room_of(folder: Path, family: dict[str, Attack]) -> Path:
    for attack, (content, _) in family.items():
        room(folder, content, f"{file_name(attack)}.yaml")
    return folder


@pytest.fixture(scope="module")
def done(tmp_path_factory: pytest.TempPathFactory) -> list[Checked]:
    """Each family of attacks, checked in a room of its own."""
    return [checked(room_of(tmp_path_factory.mktemp("attacked") / "room", family)) for family in FAMILIES]


@pytest.fixture(scope="module")
def good(tmp_path_factory: pytest.TempPathFactory) -> Checked:
    """The good project that all attacks are made from, checked on the same machine in the same run."""
    return checked(room(tmp_path_factory.mktemp("good") / "room"))


def test_the_good_project_that_all_attacks_are_made_from_is_good(good: Checked) -> None:
    assert good.code == 0
    assert "1 project checked: 0 errors" in good.printed


@pytest.mark.parametrize(("attack", "family"), NAMED, ids=[attack for attack, _ in NAMED])
def test_an_attack_is_told_at_its_place(done: list[Checked], attack: str, family: int) -> None:
    _, says = FAMILIES[family][attack]
    told = done[family].of(file_name(attack))
    assert told, "nothing is told"
    assert told[0].startswith(f"projects/{file_name(attack)}.yaml:{says}")


@pytest.mark.parametrize("family", range(len(FAMILIES)))
def test_attacks_end_as_faults_of_their_files_and_change_nothing(done: list[Checked], family: int) -> None:
    assert done[family].code == 1
    assert f"{len(FAMILIES[family])} projects checked:" in done[family].printed
    assert "Traceback" not in done[family].printed
    assert "fault of its own" not in done[family].printed
    assert done[family].untouched


@pytest.mark.parametrize("family", range(len(FAMILIES)))
def test_attacks_take_neither_the_memory_nor_the_time_of_the_machine(
    done: list[Checked], good: Checked, family: int
) -> None:
    assert done[family].megabytes < MEGABYTES
    assert done[family].seconds < TIMES_A_GOOD_FILE * len(FAMILIES[family]) * good.seconds
