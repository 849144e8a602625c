"""The documents say what the tool does: commands, keys and the session that the README shows."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

from generator.cli import COMMANDS
from generator.definitions.vocabulary import KINDS, PLANS

ROOT = Path(__file__).resolve().parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")
STARTER = (ROOT / "generator" / "definitions" / "starter.yaml").read_text(encoding="utf-8")


def test_the_readme_opens_with_the_job_in_one_paragraph() -> None:
    title, paragraph, *_ = README.split("\n\n")
    assert title == "# tuckwright"
    assert "sewing teacher" in paragraph
    assert "\n#" not in paragraph


def test_every_command_is_in_the_readme() -> None:
    assert {name for name in COMMANDS if f"`tuckwright {name}" not in README} == set()


def test_the_session_in_the_readme_is_what_the_command_prints() -> None:
    [(words, shown)] = re.findall(r"```console\n\$ tuckwright ([^\n]*)\n(.*?)```", README, re.DOTALL)
    done = subprocess.run(
        [sys.executable, "-m", "generator", *words.split()], capture_output=True, text=True, cwd=ROOT, check=True
    )
    assert done.stdout.rstrip() == shown.rstrip()


def test_the_picture_of_a_result_is_there() -> None:
    for picture in re.findall(r"!\[.*?\]\((.*?)\)", README):
        assert (ROOT / picture).is_file()


def test_the_starter_names_every_kind_of_project_and_most_plans() -> None:
    assert {kind for kind in KINDS if kind not in STARTER} == set()
    assert {plan for plan in PLANS[:5] if plan not in STARTER} == set()


def test_every_document_that_is_linked_is_there() -> None:
    for name in ("README.md", "DEVELOPERS.md"):
        text = (ROOT / name).read_text(encoding="utf-8")
        for link in re.findall(r"\]\((?!http)([^)#]+)\)", text):
            assert (ROOT / link).exists(), f"{name}: {link}"
