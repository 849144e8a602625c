"""One sheet has a bound of memory and time: a sheet that passes it is given up and named, and the machine goes on."""

from __future__ import annotations

import pickle
import shutil
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
from small_room import bytes_of, edit, published, ran, version_of

from generator.errors import PublishError
from generator.publishing.jobs import AgainstEditions, Stamp, WorkedProject, WorkedSize
from generator.publishing.memory import MEBIBYTES, SECONDS, TakesTooMuch, bounded
from generator.publishing.pool import Pool
from generator.publishing.room_files import OWN_THEMES
from generator.publishing.tasks import project_job, size_jobs

ENDLESS = "{% for a in range(90000) %}{% for b in range(90000) %}{% endfor %}{% endfor %}"
TIME = "it took a processor more than 1 s. Look for a loop without end in a template"
REMEDY = "on a slow machine set TUCKWRIGHT_SECONDS to a larger number"


def with_an_endless_template(room: Path) -> Path:
    shutil.copytree(OWN_THEMES, room / "themes")
    path = room / "themes/plain/templates/machine.html"
    path.write_text(path.read_text(encoding="utf-8") + ENDLESS, encoding="utf-8")
    edit(path, "{% block main %}", "{% block main %}" + ENDLESS)
    return room


@pytest.mark.parametrize("workers", ["1", "2"])
def test_a_template_without_end_is_given_up_and_every_sheet_that_it_meets_is_named(room: Path, workers: str) -> None:
    (room / "projects/tablet.yaml").unlink()
    before = bytes_of(with_an_endless_template(room))
    code, out, told = ran(room, "publish", "--workers", workers, environment={SECONDS: "1"})
    assert (code, out) == (1, "")
    for sheet in ("flag, size small, inch", "flag, size large, inch"):
        assert f"{sheet}: {TIME}" in told
    assert REMEDY in told
    assert "Nothing was published; what was published before still stands." in told
    assert "Traceback" not in told
    assert bytes_of(room) == before


def hold_mebibytes(held: list[bytes], most: int) -> None:
    while len(held) < most:
        held.append(bytes(range(256)) * 4096)


def go_on_after_faults(caught: list[Exception]) -> None:
    """Work without end, and take every fault for one of one's own, as some libraries do."""
    while True:
        try:
            sum(range(100_000))
        except Exception as fault:
            caught.append(fault)


def test_a_block_that_takes_too_much_memory_is_given_up(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(MEBIBYTES, "60")
    held: list[bytes] = []
    with pytest.raises(PublishError, match="it took more than 60 MiB of memory"), bounded():
        hold_mebibytes(held, 2000)
    assert 60 <= len(held) < 2000


def test_a_block_that_asks_for_more_than_there_is_is_told_the_same_way() -> None:
    with pytest.raises(PublishError, match="it took more than 1024 MiB of memory"), bounded():
        bytearray(2**62)


def test_no_library_takes_it_for_an_ordinary_fault(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(SECONDS, "0")
    caught: list[Exception] = []
    with pytest.raises(PublishError, match="it took a processor more than 0 s"), bounded():
        go_on_after_faults(caught)
    assert caught == []
    assert not issubclass(TakesTooMuch, Exception)


def test_the_time_begins_anew_with_every_file(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(SECONDS, "1")
    start = time.process_time()
    with bounded() as again:
        while time.process_time() < start + 2:
            again()
    assert time.process_time() >= start + 2


def test_afterwards_the_time_is_nobodys_business(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv(SECONDS, "0")
    handler = signal.getsignal(signal.SIGALRM)
    with bounded():
        pass
    start = time.process_time()
    while time.process_time() < start + 0.5:
        pass
    assert signal.getsignal(signal.SIGALRM) is handler
    assert signal.getitimer(signal.ITIMER_REAL) == (0.0, 0.0)


UNHEEDING = """
import hashlib
from generator.publishing import memory
memory._GRACE = 0
memory.end_at_the_bound()
hashlib.pbkdf2_hmac("sha256", b"", b"", 10**9)
"""


def test_work_that_never_looks_up_is_ended_by_the_system() -> None:
    ended = subprocess.run([sys.executable, "-c", UNHEEDING], env={SECONDS: "1"}, check=False, timeout=300)
    assert ended.returncode == -signal.SIGXCPU


class OverItsTime:
    """Ends the process that unpacks it as the system does after its time."""

    def __reduce__(self) -> tuple[object, ...]:
        return signal.raise_signal, (signal.SIGXCPU,)


def test_a_worker_that_the_system_ended_names_its_sheet_and_the_others_go_on(room: Path) -> None:
    endless = WorkedSize("small", "inch", "", "", pickle.dumps(OverItsTime()), b"")
    (job,) = size_jobs("flag", WorkedProject((endless,), AgainstEditions(Stamp())))
    with Pool(version_of(room), room, 2) as pool:
        outcomes = dict(pool.outcomes([job, project_job(room, "tablet")]))
    assert outcomes[0].fault.startswith("flag, size small, inch: it took a processor more than 180 s.")
    assert isinstance(outcomes[1].told, WorkedProject)


def test_a_single_sheet_is_bounded_too(room: Path, tmp_path: Path) -> None:
    with_an_endless_template(room)
    path = room / "themes/plain/templates/handout.html"
    path.write_text(ENDLESS + path.read_text(encoding="utf-8"), encoding="utf-8")
    code, _, told = ran(room, "sheet", "flag", "small", "-o", str(tmp_path / "x.pdf"), environment={SECONDS: "1"})
    assert code == 1
    assert TIME in told
    assert not (tmp_path / "x.pdf").exists()


def test_what_is_within_the_bound_is_published(room: Path) -> None:
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    assert "flag/inch/small" in published(room).made
