from __future__ import annotations

import os
import pickle
from collections import Counter
from pathlib import Path

from small_room import version_of

from generator.publishing.jobs import Job, WorkedSize
from generator.publishing.pool import Pool


class SignsIn:
    """Writes the number of the process that unpacks it into a file."""

    def __init__(self, file: Path) -> None:
        self.file = file

    def __reduce__(self) -> tuple[object, ...]:
        return os.system, (f"echo $PPID >> '{self.file}'",)


def jobs_done(room: Path, number: int, file: Path) -> Counter[int]:
    """Return how many jobs each process did, of a number of jobs for one worker."""
    size = WorkedSize("small", "inch", "", pictures="", worksheet=pickle.dumps(SignsIn(file)), links=b"")
    job = Job("flag/inch/small", "flag", "generator.publishing.make.sheets:make_size", (size,), quick=False)
    with Pool(version_of(room), room, 1) as pool:
        assert len(list(pool.outcomes([job] * number))) == number
    return Counter(map(int, file.read_text().split()))


def test_a_little_work_for_one_is_done_without_a_worker(room: Path, tmp_path: Path) -> None:
    assert jobs_done(room, 2, tmp_path / "signed in") == {os.getpid(): 2}


def test_much_work_for_one_is_done_by_one_worker_after_another(room: Path, tmp_path: Path) -> None:
    done = jobs_done(room, 18, tmp_path / "signed in")
    assert os.getpid() not in done
    assert sorted(done.values()) == [2, 8, 8]
