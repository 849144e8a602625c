"""How much memory checking takes: far less than a small machine has."""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PROJECTS = ("harbour-headboard", "bosun-seat-pad", "customs-tote", "pier-bolster")
MOST_MEGABYTES = 100


def test_checking_large_projects_takes_little_memory(tmp_path: Path) -> None:
    """The kernel counts a child's memory from that of the process it is split from, so a small one measures it."""
    measured = ROOT / "tests" / "hostile" / "measured.py"
    command = [sys.executable, "-m", "generator", "check", *PROJECTS]
    subprocess.run([sys.executable, str(measured), str(tmp_path / "taken"), *command], cwd=ROOT, check=True)
    taken = json.loads((tmp_path / "taken").read_text())
    assert taken["code"] == 0
    assert taken["kilobytes"] / 1024 < MOST_MEGABYTES
