"""Jobs name what makes them, so that it is loaded only when it is needed: every such name leads to a function."""

from __future__ import annotations

import pickle
import re
import shutil
from pathlib import Path
from pkgutil import resolve_name

import pytest
from small_room import edit, made_room, published, site_of, version_of

from generator.publishing import tasks
from generator.publishing.jobs import Job
from generator.publishing.pool import Pool
from generator.publishing.room_files import OWN_THEMES
from generator.publishing.tasks import PAGES, Page, Told, project_job

GENERATOR = Path(tasks.__file__).resolve().parents[1]
WRITTEN = re.compile(r'resolve_name\(\s*"(generator[\w.:]+)"')
MADE = re.compile(r'f"\{_MAKE\}\.([\w.]+:\w+)"')


def names() -> set[str]:
    """Every name that is looked up when it is needed."""
    texts = [path.read_text(encoding="utf-8") for path in GENERATOR.rglob("*.py")]
    makers = {name for text in texts for name in MADE.findall(text)} | {page.made_by for row in PAGES for page in row}
    written = {name for text in texts for name in WRITTEN.findall(text)}
    return written | {f"generator.publishing.make.{name}" for name in makers}


def test_there_are_names_of_makers_and_of_other_things_that_are_loaded_late() -> None:
    assert len(names()) > 15


@pytest.mark.parametrize("name", sorted(names()))
def test_a_name_leads_to_something_that_can_be_called(name: str) -> None:
    found = resolve_name(name)
    assert callable(found) or ":" not in name


def test_a_job_can_be_sent_to_another_process(room: Path) -> None:
    job = project_job(room, "flag", "2031-03", "2031-03-14")
    assert pickle.loads(pickle.dumps(job)) == job  # noqa: S301 -- packed in this line


def test_a_name_that_leads_nowhere_is_a_fault_of_its_job_alone(room: Path) -> None:
    jobs = [Job("x", "the page x", "generator.publishing.make.nowhere:make_x"), project_job(room, "flag")]
    with Pool(version_of(room), room, 1) as pool:
        outcomes = dict(pool.outcomes(jobs))
    assert outcomes[0].fault.startswith("the page x: a fault of the tool itself (ModuleNotFoundError")
    assert outcomes[1].told is not None


MAKER = '''\
"""A page that is not there yet."""

from generator.rendering.page_frame import framed_page


def make_board(room, output, titles):
    output.add("board.html", framed_page("board.html", "board.html", room.setting, titles=titles).encode())
'''
TEMPLATE = """\
{% extends "page.html" %}
{% block title %}Board{% endblock %}
{% block main %}{{ titles|join(", ") }}{% endblock %}
"""


def test_a_page_of_the_room_is_a_maker_a_template_and_a_line_in_the_table(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    room = made_room(tmp_path / "room")
    shutil.copytree(OWN_THEMES / "plain", room / "themes" / "plain")
    (room / "themes/plain/templates/board.html").write_text(TEMPLATE, encoding="utf-8")
    (tmp_path / "code").mkdir()
    (tmp_path / "code" / "board.py").write_text(MAKER, encoding="utf-8")
    make = resolve_name("generator.publishing.make")
    monkeypatch.setattr(make, "__path__", [*make.__path__, str(tmp_path / "code")])
    line = Page(
        "board:make_board", lambda known: {"board": Told((tuple(told.card.title for told in known.pages_of_projects),))}
    )
    monkeypatch.setattr(tasks, "PAGES", (*PAGES[:1], (*PAGES[1], line), *PAGES[2:]))
    monkeypatch.setattr("generator.publishing.build.PAGES", tasks.PAGES)
    assert "board" in published(room).made
    assert "Signal flag, Tucked tablet" in (site_of(room) / "board.html").read_text(encoding="utf-8")
    assert published(room).current
    edit(room / "site/pages/how-to-measure.md", "Lay", "Put")
    assert "board" in published(room).kept
