"""Files that are broken on purpose, or by another program, are refused at once and in plain words."""

from pathlib import Path

import pytest

from generator.definitions.project import load_project
from generator.errors import FaultyFileError

BOMB = b"a: &a [x,x]\n" + b"".join(b"b%d: &b%d [*a,*a,*a,*a,*a,*a,*a,*a,*a]\n" % (i, i) for i in range(60))
DEEP_DASHES = b"- " * 40_000 + b"x"
DEEP_GROUPS = b"".join(b" " * depth + b"a:\n" for depth in range(500))
ANCHOR = (
    "cushion.yaml:1:4: anchors (&) and aliases (*) are not used in these files; "
    "a text that begins with & or * needs | and a new line"
)
FILES = {
    "an empty file": (b"", "cushion.yaml:1:1: the file is empty"),
    "a file of remarks only": (b"# nothing yet\n", "cushion.yaml:1:1: the file is empty"),
    "a list for a file": (
        b"- one\n- two\n",
        "cushion.yaml:1:1: a project file is a group of keys: title, kind, sizes ...",
    ),
    "a word for a file": (
        b"cushion\n",
        "cushion.yaml:1:1: a project file is a group of keys: title, kind, sizes ...",
    ),
    "an alias bomb": (BOMB, ANCHOR),
    "brackets without end": (
        b"a: " + b"[" * 90_000,
        "cushion.yaml:1:2001: a line of more than 2000 characters; break it up",
    ),
    "brackets inside brackets": (
        b"a: " + b"[" * 300 + b"]" * 300,
        "cushion.yaml:1:4: a text that begins with [ needs | and a new line; a list is written with commas, "
        "or one line each with a -",
    ),
    "dashes without end": (DEEP_DASHES, "cushion.yaml:1:2001: a line of more than 2000 characters; break it up"),
    "groups without end": (DEEP_GROUPS, "cushion.yaml:13:13: groups and lists inside each other, 12 deep at most"),
    "ten megabytes": (
        b"title: x\n" * 1_200_000,
        "cushion.yaml:1:1: the file is larger than 200 kB; a project file is a few pages of text",
    ),
    "a character nought": (
        b"title: x\nkind: cush\x00ion\n",
        "cushion.yaml:2:11: the file holds a character that cannot be read (number 0); take it out",
    ),
    "a bell": (
        b"title: a\x07b\n",
        "cushion.yaml:1:9: the file holds a character that cannot be read (number 7); take it out",
    ),
    "a hidden line break": (
        "title: a\u2028b\n".encode(),
        "cushion.yaml:1:9: the file holds a character that cannot be read (number 8232); take it out",
    ),
    "another encoding": (
        "title: x\nsummary: Käte näht\n".encode("latin-1"),
        "cushion.yaml:2:11: the file is not UTF-8 text from here on; save it as UTF-8",
    ),
    "sixteen bits": ("title: x\n".encode("utf-16"), "cushion.yaml:1:1: the file is saved as UTF-16; save it as UTF-8"),
    "two documents": (
        b"title: x\n---\ntitle: y\n",
        "cushion.yaml:2:1: a second document begins here; a file holds one project, without ---",
    ),
    "a list as a key": (
        b"? - a\n: b\n",
        "cushion.yaml:1:1: a text cannot begin with ?; write | after the key and put the text on the next line",
    ),
    "a bad escape": (
        b'title: "a\\qb"\n',
        "cushion.yaml:1:10: a text in quotation marks cannot be read; leave quotation marks out, "
        "or write | and a new line",
    ),
}


@pytest.mark.parametrize("name", FILES)
def test_a_hostile_file_is_refused(tmp_path: Path, name: str) -> None:
    content, says = FILES[name]
    path = tmp_path / "cushion.yaml"
    path.write_bytes(content)
    with pytest.raises(FaultyFileError) as refused:
        load_project(path, root=tmp_path)
    assert str(refused.value.findings[0]) == says


def test_a_file_that_is_not_there_is_told(tmp_path: Path) -> None:
    with pytest.raises(FaultyFileError) as refused:
        load_project(tmp_path / "none.yaml", root=tmp_path)
    assert str(refused.value) == "none.yaml:1:1: the file cannot be read: No such file or directory"


@pytest.mark.parametrize("change", ["byte order mark", "carriage returns", "old line ends"])
def test_a_file_of_another_system_reads_the_same(tmp_path: Path, change: str) -> None:
    text = (Path(__file__).parent / "trap-cushion.yaml").read_text(encoding="utf-8")
    path = tmp_path / "cushion.yaml"
    path.write_bytes(
        {
            "byte order mark": b"\xef\xbb\xbf" + text.encode(),
            "carriage returns": text.replace("\n", "\r\n").encode(),
            "old line ends": text.replace("\n", "\r").encode(),
        }[change]
    )
    project = load_project(path)
    assert project.title == "Trap cushion"
    assert project.summary.text == "A square cushion to try slips of the pen on."
