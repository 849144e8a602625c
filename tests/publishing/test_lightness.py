from __future__ import annotations

import subprocess
import sys
from pathlib import Path

from small_room import lose_pages

HEAVY = ("matplotlib", "numpy", "weasyprint", "yaml", "jinja2", "rich", "multiprocessing", "watchfiles")
LISTED = """
import sys
from generator.cli import main
sys.argv = ["tuckwright", "publish"]
try:
    main()
except SystemExit as end:
    print(end.code)
print(*sys.modules)
"""


def test_a_run_that_finds_nothing_to_do_loads_no_heavy_library(room: Path) -> None:
    ran = subprocess.run([sys.executable, "-c", LISTED], cwd=room, capture_output=True, text=True, check=True)
    said, code, modules = ran.stdout.splitlines()
    assert said.startswith("Nothing has changed; the site stands as it was: ")
    assert code == "0"
    assert [name for name in HEAVY if name in modules.split()] == []
    assert "generator.publishing.publish" in modules.split()


def test_a_run_that_has_work_for_several_leaves_drawing_and_setting_to_its_workers(room: Path) -> None:
    lose_pages(room)
    ran = subprocess.run([sys.executable, "-c", LISTED], cwd=room, capture_output=True, text=True, check=True)
    said, _, modules = ran.stdout.splitlines()
    assert said.startswith("2 projects published, 2 sheets made, 1 kept: ")
    assert [name for name in HEAVY[:3] if name in modules.split()] == []
