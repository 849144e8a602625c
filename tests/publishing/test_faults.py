from __future__ import annotations

import ctypes
import os
import pickle
import resource
from pathlib import Path

import pytest
from small_room import Speech, bytes_of, edit, left_over, made_room, published, ran, site_of, version_of

from generator.errors import FaultyFileError, PublishError
from generator.publishing.jobs import AgainstEditions, Stamp, WorkedProject, WorkedSize
from generator.publishing.pool import Pool
from generator.publishing.tasks import project_job, size_jobs

STANDS = "Nothing was published; what was published before still stands."


def test_every_fault_of_every_project_is_told_at_once_and_the_site_stays(room: Path, speak: Speech) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "side: 12 in", "side: 12 inn")
    edit(room / "projects/tablet.yaml", "depth: 1/4 in", "dept: 1/4 in")
    code, out, told = speak(room, "publish")
    assert (code, out) == (1, "")
    assert "projects/flag.yaml:8:" in told
    assert "projects/tablet.yaml:17:" in told
    assert STANDS in told
    assert "Traceback" not in told
    assert (bytes_of(room), left_over(room)) == (before, [])


def test_a_panel_that_cannot_be_sewn_is_told_once_with_its_place(room: Path) -> None:
    edit(room / "projects/tablet.yaml", "spacing: 2 in", "spacing: 4 in")
    with pytest.raises(FaultyFileError) as refusal:
        published(room)
    (finding,) = refusal.value.findings
    assert finding.place is not None
    assert finding.place.file == "projects/tablet.yaml"
    assert (finding.size, finding.edition) == ("only", "inch")


def test_a_fault_in_the_rooms_file_is_told_once_for_all_projects(room: Path, speak: Speech) -> None:
    edit(room / "site/site.yaml", "papers: A4", "papers: A7")
    code, _, told = speak(room, "publish")
    assert code == 1
    assert told.count("site/site.yaml:5:") == 1


def test_a_letter_that_no_font_has_is_told_with_its_place_in_every_project(room: Path) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Signal \U0001f6a9")
    edit(room / "projects/tablet.yaml", "Tucked tablet", "Tablet \U0001f9f5")
    with pytest.raises(FaultyFileError) as refusal:
        published(room)
    lines = [line.split(";")[0] for line in str(refusal.value).splitlines()]
    assert lines == [
        "projects/flag.yaml:1:15: no font of the theme 'plain' has the letter '\U0001f6a9' (U+1F6A9)",
        "projects/tablet.yaml:1:15: no font of the theme 'plain' has the letter '\U0001f9f5' (U+1F9F5)",
    ]
    assert bytes_of(room) == before


def test_a_worker_that_dies_names_its_job_and_the_others_go_on(room: Path) -> None:
    deadly = WorkedSize("small", "inch", "", "", pickle.dumps(Deadly()), b"")
    (job,) = size_jobs("flag", WorkedProject((deadly,), AgainstEditions(Stamp())))
    jobs = [job, project_job(room, "flag"), project_job(room, "tablet")]
    with Pool(version_of(room), room, 2) as pool:
        outcomes = dict(pool.outcomes(jobs))
    assert outcomes[0].fault.startswith("flag, size small, inch: the worker died over it")
    worked = [outcomes[number].told for number in (1, 2)]
    assert [len(told.sizes) for told in worked if isinstance(told, WorkedProject)] == [2, 1]


class Deadly:
    """Ends the process that unpacks it, as a crash in a library would."""

    def __reduce__(self) -> tuple[object, ...]:
        return os._exit, (9,)


def without_the_powers_of_root() -> None:
    """Give up what lets root read and write everywhere, so that folders are guarded as they are for anybody else."""
    drop_from_bounding_set, override_permissions, override_reading = 24, 1, 2
    for power in (override_permissions, override_reading):
        ctypes.CDLL(None).prctl(drop_from_bounding_set, power, 0, 0, 0)


def test_a_folder_that_may_not_be_written_is_told(room: Path) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    (room / "site").chmod(0o555)
    code, _, told = ran(room, "publish", preexec_fn=without_the_powers_of_root)
    (room / "site").chmod(0o755)
    assert code == 1
    assert "could not be written: the folder may not be written; check whose it is." in told
    assert bytes_of(room) == before


def test_a_file_that_does_not_fit_is_told_and_the_site_stays(room: Path) -> None:
    before = bytes_of(room)
    edit(room / "projects/flag.yaml", "Signal flag", "Storm flag")
    code, _, told = ran(room, "publish", "--workers", "1", preexec_fn=with_small_files_only)
    assert code == 1
    assert "flag, size small, inch: " in told
    assert "could not be written: a file is larger than the disk or your account allows" in told
    assert STANDS in told
    assert (bytes_of(room), left_over(room)) == (before, [])


def with_small_files_only() -> None:
    """Let no file grow beyond 10 kB, as on a disk that is nearly full."""
    resource.setrlimit(resource.RLIMIT_FSIZE, (10_000, 10_000))


def test_files_that_no_run_has_written_are_never_replaced(tmp_path: Path) -> None:
    room = made_room(tmp_path / "room")
    site_of(room).mkdir()
    (site_of(room) / "thesis.txt").write_text("mine", encoding="utf-8")
    with pytest.raises(PublishError, match=r"holds what was not published from here: thesis\.txt\. What was"):
        published(room)
    assert list(bytes_of(room)) == ["thesis.txt"]


def test_a_project_that_is_not_there_is_told_with_the_nearest(room: Path, speak: Speech) -> None:
    code, _, told = speak(room, "publish", "flagg")
    assert (code, told) == (1, "there is no project 'flagg'; did you mean 'flag'?\n")


def test_a_room_without_projects_is_told_how_to_begin(tmp_path: Path, speak: Speech) -> None:
    (tmp_path / "projects").mkdir()
    code, _, told = speak(tmp_path, "publish")
    assert code == 1
    assert "`tuckwright start my-first-panel` writes one" in told
