from __future__ import annotations

import os
import pickle
from collections import Counter
from pathlib import Path

from generator.publishing.crew import Crew
from generator.publishing.inputs import read_inputs
from generator.publishing.jobs import Job, Sheet, SheetJob, workshop_of


class SignsIn:
    """Writes the number of the process that unpacks it into a file."""

    def __init__(self, file: Path) -> None:
        self.file = file

    def __reduce__(self) -> tuple[object, ...]:
        return os.system, (f"echo $PPID >> '{self.file}'",)


def shifts(room: Path, number: int, file: Path) -> Counter[int]:
    """Return how many jobs each process did, of a number of jobs for one worker."""
    sheet = Sheet("small", "inch", "", leads=False, worksheet=pickle.dumps(SignsIn(file)), links=b"")
    jobs: list[Job] = [SheetJob("flag", sheet, room) for _ in range(number)]
    with Crew(workshop_of(room, "", read_inputs(room, "")), 1) as crew:
        assert len(list(crew.outcomes(jobs))) == number
    return Counter(map(int, file.read_text().split()))


def test_a_little_work_for_one_is_done_without_a_worker(room: Path, tmp_path: Path) -> None:
    assert shifts(room, 2, tmp_path / "signed in") == {os.getpid(): 2}


def test_much_work_for_one_is_done_by_one_worker_after_another(room: Path, tmp_path: Path) -> None:
    done = shifts(room, 18, tmp_path / "signed in")
    assert os.getpid() not in done
    assert sorted(done.values()) == [2, 8, 8]
