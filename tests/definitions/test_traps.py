"""Every slip in traps.txt is told with the message and the place that stand beside it."""

from pathlib import Path

import pytest

from generator.definitions.project import load_project
from generator.errors import FaultyFileError

HERE = Path(__file__).parent
SOUND = (HERE / "trap-cushion.yaml").read_text(encoding="utf-8")


def read_traps() -> list[tuple[str, str, str, list[str]]]:
    traps = []
    for block in (HERE / "traps.txt").read_text(encoding="utf-8").split("\n* ")[1:]:
        name, *lines = block.splitlines()
        parts = {"find": "", "put": ""}
        says = []
        for line in filter(None, lines):
            word, _, rest = line.partition(" ")
            rest = line[6:].replace("\\n", "\n").replace("\\t", "\t")
            if word == "says":
                says.append(rest)
            else:
                parts[word] = rest
        traps.append((name, parts["find"], parts["put"], says))
    return traps


TRAPS = read_traps()


def said(path: Path) -> list[str]:
    """What a reading says, without the name of the file."""
    try:
        findings = load_project(path, root=path.parent).findings
    except FaultyFileError as error:
        findings = error.findings
    return [str(finding).removeprefix("cushion.yaml:") for finding in findings]


def test_the_sound_file_of_the_traps_has_no_findings(tmp_path: Path) -> None:
    path = tmp_path / "cushion.yaml"
    path.write_text(SOUND, encoding="utf-8")
    assert said(path) == []


@pytest.mark.parametrize(("name", "find", "put", "says"), TRAPS, ids=[trap[0] for trap in TRAPS])
def test_a_slip_is_told_at_its_place(tmp_path: Path, name: str, find: str, put: str, says: list[str]) -> None:
    assert SOUND.count(find) >= 1, f"'{find}' is not in the sound file"
    path = tmp_path / "cushion.yaml"
    path.write_text(SOUND.replace(find, put, 1), encoding="utf-8")
    assert said(path) == ([] if says == ["accepted"] else says), name


def test_there_are_as_many_traps_as_slips_to_be_tried() -> None:
    assert len(TRAPS) >= 62
    assert len({name for name, *_ in TRAPS}) == len(TRAPS)


@pytest.mark.parametrize(
    "label", ["1:30", "no", "007", "2031-03-08", "~", "0.1", "cotton:washed", "1e3", "0o7", "null"]
)
def test_a_label_stays_the_text_that_was_written(tmp_path: Path, label: str) -> None:
    path = tmp_path / "cushion.yaml"
    path.write_text(SOUND.replace("label: Sofa", f"label: {label}"), encoding="utf-8")
    assert load_project(path).sizes["medium"].label == label
