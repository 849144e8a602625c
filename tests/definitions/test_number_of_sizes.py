"""A project has forty sizes at most: files come from strangers, and every size is a sheet to work and to print."""

from pathlib import Path

import pytest

from generator.definitions.project import load_project
from generator.errors import FaultyFileError

SOUND = (Path(__file__).parent / "trap-cushion.yaml").read_text(encoding="utf-8")
SIZES = SOUND[SOUND.index("sizes:\n") : SOUND.index("measures:\n")]


def with_sizes(folder: Path, number: int) -> Path:
    """Return a sound project with so many sizes of 12 in."""
    sizes = "".join(f"  s{size}:\n    side: 12 in\n" for size in range(number))
    path = folder / "cushion.yaml"
    path.write_text(SOUND.replace(SIZES, f"sizes:\n{sizes}"), encoding="utf-8")
    return path


def test_forty_sizes_are_read(tmp_path: Path) -> None:
    project = load_project(with_sizes(tmp_path, 40), root=tmp_path)
    assert list(project.sizes) == [f"s{size}" for size in range(40)]


def test_one_more_is_refused_and_nothing_else_is_told_of_it(tmp_path: Path) -> None:
    path = with_sizes(tmp_path, 41)
    with pytest.raises(FaultyFileError) as refused:
        load_project(path, root=tmp_path)
    line = 1 + SOUND[: SOUND.index("sizes:\n")].count("\n") + 1
    told = "41 sizes; a project has 40 at most, so divide it into several projects"
    assert [str(finding) for finding in refused.value.findings] == [f"cushion.yaml:{line}:3: {told}"]
