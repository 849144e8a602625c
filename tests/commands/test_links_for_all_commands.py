"""The same links are refused by every command, and none of them goes through what lies behind such a link."""

from __future__ import annotations

from pathlib import Path

import pytest
from room_here import CUSHION, room

from tests.room import run

COMMANDS = (
    ("check",),
    ("figures", "slip", "small"),
    ("sheet", "slip", "small", "-o", "x.pdf"),
    ("class", "evening"),
    ("publish",),
    ("start", "another"),
)
OUT = "the file is a link that leads out of the room; put the file itself here"
OWN = "the tool writes here, so this may be no link; remove it, and the tool makes it anew"
PUBLIC = (
    "the published site may be no link, for every run puts a new folder in its place; remove the link, publish, and "
)
PLACES = {
    "projects/secret.yaml": OUT,
    "site/classes": OUT,
    "site/pages": OUT,
    "site/techniques": OUT,
    "themes/fancy": OUT,
    ".tuckwright": OWN,
    ".tuckwright/published.json": OWN,
    "site/.public.lock": OWN,
    "site/public": f"{PUBLIC}copy site/public to where it is served",
}


@pytest.fixture
def elsewhere(tmp_path: Path) -> Path:
    """A folder that is no business of the room; a link in it leads on."""
    folder = tmp_path / "elsewhere"
    folder.mkdir()
    (folder / "further").symlink_to("/etc")
    return folder


@pytest.mark.parametrize("words", COMMANDS, ids=lambda words: words[0])
@pytest.mark.parametrize("place", PLACES)
def test_a_link_that_leads_astray_is_refused(
    tmp_path: Path, elsewhere: Path, words: tuple[str, ...], place: str
) -> None:
    (tmp_path / "room").mkdir()
    folder = room(tmp_path / "room", slip=CUSHION)
    (folder / place).parent.mkdir(parents=True, exist_ok=True)
    (folder / place).symlink_to(elsewhere)
    told = run(folder, *words)
    assert told.code == 1
    assert told.err.splitlines()[0] == f"{place}:1:1: {PLACES[place]}"
    # Nothing behind the link is told of.
    assert "further" not in told.err
    assert [path.name for path in elsewhere.iterdir()] == ["further"]
    assert sorted(path.name for path in (folder / "projects").glob("*.yaml") if not path.is_symlink()) == ["slip.yaml"]


def test_folders_that_lead_to_each_other_are_gone_through_once(tmp_path: Path) -> None:
    folder = room(tmp_path, slip=CUSHION)
    themes = folder / "themes"
    for name in (f"theme-{number}" for number in range(12)):
        (themes / name).mkdir(parents=True)
        for other in range(12):
            (themes / name / f"to-{other}").symlink_to(themes / f"theme-{other}")
    assert run(folder, "figures", "slip", "small").code == 0
