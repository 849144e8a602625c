from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest

from generator.errors import PublishError
from generator.publishing.swap import staged


@pytest.fixture
def site(tmp_path: Path) -> Path:
    """A published folder with one file."""
    folder = tmp_path / "public"
    folder.mkdir()
    (folder / "old.html").write_text("old", encoding="utf-8")
    return folder


def names(folder: Path) -> list[str]:
    return sorted(entry.name for entry in folder.iterdir())


def beside(site: Path) -> list[str]:
    return [name for name in names(site.parent) if name not in (site.name, f".{site.name}.lock")]


def test_a_new_folder_takes_the_place_of_the_old_one_as_a_whole(site: Path) -> None:
    with staged(site) as staging:
        (staging / "new.html").write_text("new", encoding="utf-8")
        assert names(site) == ["old.html"]
    assert (names(site), beside(site)) == (["new.html"], [])


def test_the_first_folder_of_all_comes_into_being(tmp_path: Path) -> None:
    with staged(tmp_path / "deep" / "public") as staging:
        (staging / "new.html").touch()
    assert names(tmp_path / "deep" / "public") == ["new.html"]


def test_a_folder_that_could_not_be_filled_leaves_the_old_one(site: Path) -> None:
    with pytest.raises(ZeroDivisionError), staged(site) as staging:
        assert (staging / "half.html").write_text("half", encoding="utf-8") / 0
    assert (names(site), beside(site)) == (["old.html"], [])


def test_a_full_disk_is_told_and_leaves_the_old_folder(site: Path) -> None:
    with pytest.raises(PublishError, match="the disk is full; make room and run the command again"), staged(site):
        # The kernel's own full disk: whatever is written to it does not fit.
        Path("/dev/full").write_text("x", encoding="utf-8")
    assert (names(site), beside(site)) == (["old.html"], [])


def test_a_second_run_is_told_to_wait_and_disturbs_nothing(site: Path) -> None:
    with staged(site) as staging:
        (staging / "new.html").touch()
        with pytest.raises(PublishError, match="is being published by another run; wait until it is done"):
            next(entered(site))
    assert names(site) == ["new.html"]


def entered(site: Path) -> Iterator[Path]:
    with staged(site) as staging:
        yield staging


def test_what_a_killed_run_left_is_cleared_away(site: Path) -> None:
    left = site.parent / ".public-new-12345"
    left.mkdir()
    (left / "half.html").touch()
    with staged(site) as staging:
        (staging / "new.html").touch()
    assert (names(site), beside(site)) == (["new.html"], [])


def test_an_old_folder_caught_between_two_renames_comes_back(site: Path) -> None:
    site.rename(site.parent / ".public-old")
    with pytest.raises(ZeroDivisionError), staged(site):
        assert 1 / 0
    assert (names(site), beside(site)) == (["old.html"], [])


def test_a_file_where_the_folder_should_be_is_refused(tmp_path: Path) -> None:
    (tmp_path / "public").write_text("mine", encoding="utf-8")
    with pytest.raises(PublishError, match="is a file; the site needs a folder there, so move it away"):
        next(entered(tmp_path / "public"))
    assert (tmp_path / "public").read_text(encoding="utf-8") == "mine"


def test_a_link_to_a_folder_elsewhere_is_refused(site: Path, tmp_path: Path) -> None:
    link = tmp_path / "here"
    link.symlink_to(site)
    with pytest.raises(PublishError, match="is a link; remove it, publish, and copy the folder to where it is served"):
        next(entered(link))
    assert names(site) == ["old.html"]


@pytest.mark.parametrize("there", [True, False])
def test_a_link_in_the_place_of_the_lock_is_not_followed(site: Path, tmp_path: Path, there: bool) -> None:
    elsewhere = tmp_path / "elsewhere"
    if there:
        elsewhere.write_text("mine", encoding="utf-8")
    (tmp_path / ".public.lock").symlink_to(elsewhere)
    with pytest.raises(PublishError, match="could not be written"):
        next(entered(site))
    assert elsewhere.exists() == there


def test_a_link_in_the_place_of_an_old_folder_is_not_put_back(tmp_path: Path) -> None:
    (tmp_path / "elsewhere").mkdir()
    (tmp_path / ".public-old").symlink_to(tmp_path / "elsewhere")
    with staged(tmp_path / "public") as staging:
        (staging / "new.html").touch()
    assert not (tmp_path / "public").is_symlink()
    assert names(tmp_path / "elsewhere") == []
