"""A room that has been published once, to be copied by every test that changes something in it."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from small_room import Speech, made_room, published

from generator.calculation.worked_project import Worksheet
from generator.publishing import printing
from generator.publishing.make import pictures, sheets
from generator.rendering.handout.measuring import KeptHeights
from generator.rendering.handout.pictures import Drawer
from generator.rendering.setting import Setting
from generator.rendering.sheet_kinds import SheetOrder
from tests.made import Made, state_of
from tests.room import run


def of_handout(worksheet: Worksheet, setting: Setting, *how: object) -> tuple[object, ...]:
    """What decides about a handout; a drawer only keeps what it has drawn, and heights are what was measured."""
    others = (one.style if isinstance(one, Drawer) else one for one in how if not isinstance(one, KeptHeights | None))
    return worksheet, setting, state_of(setting.theme), *others


def of_sheet(order: SheetOrder, setting: Setting, paper: str) -> tuple[object, ...]:
    """What decides about another sheet."""
    return order.name, order.subject, setting, state_of(setting.theme), paper


@pytest.fixture(scope="session", autouse=True)
def sheets_set_and_pictures_drawn_once(tmp_path_factory: pytest.TempPathFactory) -> Iterator[None]:
    """What is the same in many rooms is drawn and set once; it was most of what it takes to publish a small one."""
    made = Made(tmp_path_factory)
    with pytest.MonkeyPatch.context() as patch:
        for module, name in ((pictures, "thing_files"), (pictures, "near_file"), (pictures, "plan_file")):
            patch.setattr(module, name, made.once(getattr(module, name)))
        for module, name in ((sheets, "handouts"), (printing, "render_handout")):
            patch.setattr(module, name, made.once(getattr(module, name), of_handout))
        patch.setattr(SheetOrder, "render", made.once(SheetOrder.render, of_sheet))
        yield


@pytest.fixture(scope="session")
def published_once(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A room of two projects with its site, which no test may change."""
    room = made_room(tmp_path_factory.mktemp("once") / "room")
    published(room)
    return room


@pytest.fixture
def room(published_once: Path, tmp_path: Path) -> Path:
    """A copy of that room, to be changed."""
    return Path(shutil.copytree(published_once, tmp_path / "room"))


@pytest.fixture
def speak() -> Speech:
    """Give the command line in this process: a folder and words in, the exit code and both outputs out."""

    def spoken(folder: Path, *words: str) -> tuple[int, str, str]:
        answer = run(folder, *words)
        return answer.code, answer.out, answer.err

    return spoken
