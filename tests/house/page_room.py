"""A page's examples in a room of its own: a page comes in, its files are written and its commands run, in order.

The words after the three backticks say what a block is. ``yaml FILE`` is that file, or its next part. ``yaml FILE
instead`` takes the place of the lines with the same keys. ``yaml FILE offer`` is tried in the file as it stands, and
the file stays as it was; ``with a warning`` may stand after it. ``console`` is a session: what follows a ``$`` is run,
and the answer is what the page shows; a line of three dots stands for any lines. ``sh`` is not run, and ``yaml FILE
shown`` stands in a file of the tool.
"""

from __future__ import annotations

import re
import shlex
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import yaml

from tests.room import run

_BLOCK = re.compile(r"^```([^\n]*)\n(.*?)^```$", re.DOTALL | re.MULTILINE)
# Parts of a project file that are groups of named things: an offer changes one of them and leaves the others.
_NAMED = ("sizes", "measures", "cloths", "pieces")


class _AllText(yaml.SafeLoader):
    """YAML in which every value is text, as the tool reads it."""


_AllText.yaml_implicit_resolvers = {}


class _Written(yaml.SafeDumper):
    """YAML as a person writes it: longer texts below their key."""


_Written.add_representer(
    str,
    lambda dumper, text: dumper.represent_scalar("tag:yaml.org,2002:str", text, style="|" if "\n" in text else None),
)


@dataclass(frozen=True)
class Block:
    """One box of a page: the words after its backticks, and what is in it."""

    page: Path
    line: int
    words: tuple[str, ...]
    text: str

    def __str__(self) -> str:
        return f"{self.page.name}:{self.line}"

    @property
    def kind(self) -> str:
        """The first word: yaml, console, sh ..."""
        return self.words[0] if self.words else ""

    @property
    def is_offer(self) -> bool:
        """Whether the block is tried in a file that stays as it was."""
        return self.words[2:3] == ("offer",)

    @property
    def is_file(self) -> bool:
        """Whether the block is a file of the room, or a part of one."""
        return len(self.words) > 1 and self.words[2:] in ((), ("instead",))

    @property
    def file(self) -> str:
        """The file that a block of YAML belongs to, by its address in the room."""
        return self.words[1] if len(self.words) > 1 else ""


def blocks_of(page: Path) -> list[Block]:
    text = page.read_text(encoding="utf-8")
    return [
        Block(page, text.count("\n", 0, found.start()) + 1, tuple(found[1].split()), found[2])
        for found in _BLOCK.finditer(text)
    ]


def written(room: Path, block: Block, begun: set[str]) -> None:
    """Write the file of a block, or add the block to it, or put its lines in."""
    path = room / block.file
    path.parent.mkdir(parents=True, exist_ok=True)
    if block.words[2:] == ("instead",):
        path.write_text(_with_lines(path.read_text(encoding="utf-8"), block), encoding="utf-8")
    else:
        before = path.read_text(encoding="utf-8") + "\n" if block.file in begun else ""
        path.write_text(before + block.text, encoding="utf-8")
        begun.add(block.file)


def _with_lines(text: str, block: Block) -> str:
    """Return a text with the lines of a block in the place of the first with the same key and indent."""
    lines = text.splitlines()
    for line in block.text.splitlines():
        key = line.split(":")[0] + ":"
        assert any(old.startswith(key) for old in lines), f"{block}: no line begins with '{key}'"
        lines[next(place for place, old in enumerate(lines) if old.startswith(key))] = line
    return "\n".join(lines) + "\n"


def with_offer(text: str, block: Block) -> str:
    """Return a file with an offer in it; a key with nothing after it is taken out."""
    whole, offer = (yaml.load(part, Loader=_AllText) for part in (text, block.text))  # noqa: S506 - safe
    for key, value in offer.items():
        if key in _NAMED and isinstance(whole.get(key), dict):
            for name, inner in value.items():
                whole[key][name] = _changed(whole[key].get(name), inner)
        else:
            whole[key] = value
    return yaml.dump(_without_empty(whole), Dumper=_Written, sort_keys=False, allow_unicode=True, width=1000)


def _changed(before: Any, after: Any) -> Any:
    if not isinstance(before, dict) or not isinstance(after, dict) or "kind" in after:
        return after
    return {**before, **after}


def _without_empty(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: _without_empty(inner) for key, inner in value.items() if inner != ""}
    return value


def sessions(block: Block) -> Iterator[tuple[str, str]]:
    """Yield what is typed and what is answered, one by one."""
    for part in re.split(r"^\$ ", block.text, flags=re.MULTILINE)[1:]:
        typed, _, answer = part.partition("\n")
        yield typed, answer


def run_as_shown(room: Path, block: Block) -> None:
    """Run a session in the room and hold that it answers what the page shows."""
    for typed, shown in sessions(block):
        program, *words = shlex.split(typed)
        assert program == "tuckwright", f"{block}: '{typed}' is not run"
        said = answered(room, words)
        assert re.fullmatch(_pattern(shown), said), f"{block}: '{typed}' answers\n{said}"


def answered(room: Path, words: list[str]) -> str:
    """Return all that the command line says in a room."""
    said = run(room, *words).said
    return "\n".join(line.rstrip() for line in said.strip().splitlines()) + "\n"


def _pattern(shown: str) -> str:
    lines = [line.rstrip() for line in shown.strip().splitlines()]
    return "".join(r"(?:[^\n]*\n)*" if line == "..." else re.escape(line) + r"\n" for line in lines)
