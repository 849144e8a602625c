"""YAML files: bytes come in, a tree of plain texts with their places goes out; nothing is guessed.

YAML would read ``1:30`` as 90, ``no`` as False and 0.1 as a float; here every scalar stays the text that was written.
Duplicate keys, anchors, tags, control signs and files that are too large or too deep are refused.
"""

from __future__ import annotations

import re
from pathlib import Path

import yaml

from generator.definitions.faults import Faults
from generator.definitions.nodes import Group, Key, Listing, Node, Scalar, fold
from generator.definitions.text_file import read_text_file
from generator.definitions.yaml_slips import report_slips
from generator.errors import FaultyFileError, Finding, Place, printable
from generator.limits import DEEPEST, MOST_ENTRIES

_UNREADABLE = re.compile(
    r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\u202a-\u202e\u2066-\u2069\ud800-\udfff\ufeff\ufffe\uffff]"
)
_MISFIT = (
    "this line does not fit what stands above it: is it indented like its neighbours, has the line above its colon "
    "and space, and a list its -?"
)

_BROKEN_QUOTES = "a text in quotation marks cannot be read; leave quotation marks out, or write | and a new line"


def read_yaml(path: Path, shown: str | None = None, root: Path | None = None) -> Node:
    """Return the tree of a YAML file.

    Parameters
    ----------
    path : Path
        The file; at most 200 kB of UTF-8 text.
    shown : str, optional
        The name of the file in messages; without it the path as it is.
    root : Path, optional
        The folder of the room: a link that leads out of it is not followed, for a room may come from a stranger.

    Returns
    -------
    Node
        Nearly always a group of keys.

    Raises
    ------
    FaultyFileError
        With all slips that can be told at once; where YAML itself stops, with that one.
    """
    file = shown or str(path)
    if root is not None and path.is_symlink():
        _refuse_link_out(path, root, file)
    text = _text(path, file)
    lines = text.split("\n")
    faults = Faults()
    report_slips(lines, file, faults)
    faults.stop()
    reader = _TreeBuilder(file, lines, faults)
    tree = reader.document(text)
    faults.stop()
    return tree


def _refuse(place: Place, text: str) -> FaultyFileError:
    return FaultyFileError([Finding("error", text, place)])


def _refuse_link_out(path: Path, root: Path, file: str) -> None:
    try:
        inside = path.resolve().is_relative_to(root.resolve())
    except (OSError, RuntimeError) as error:
        raise _refuse(Place(file), "the file is a link that leads to itself; put the file itself here") from error
    if not inside:
        raise _refuse(Place(file), "the file is a link that leads out of the room; put the file itself here")


def _text(path: Path, file: str) -> str:
    """Return the text of a file, or refuse what holds signs that nobody sees."""
    text = read_text_file(path, file)
    found = _UNREADABLE.search(text)
    if found:
        before = text[: found.start()]
        place = Place(file, before.count("\n") + 1, len(before) - before.rfind("\n"))
        told = f"the file holds a character that cannot be read (number {ord(found.group())}); take it out"
        raise _refuse(place, told)
    return text


class _TreeBuilder:
    """Builds the tree from YAML's events."""

    def __init__(self, file: str, lines: list[str], faults: Faults) -> None:
        self.file = file
        self.lines = lines
        self.faults = faults

    def document(self, text: str) -> Node:
        """Return the tree of the whole file."""
        try:
            # Events, not values: YAML's own idea of a number or of yes must not touch a text, and an alias is refused
            # where it stands, before it could be unfolded into a flood.
            self.events = yaml.parse(text, Loader=yaml.CSafeLoader)
            self._next()
            first = self._next()
            if isinstance(first, yaml.StreamEndEvent):
                raise _refuse(Place(self.file), "the file is empty")
            tree = self._node(self._next(), 0)
            self._next()
            if not isinstance(more := self._next(), yaml.StreamEndEvent):
                raise _refuse(self._place(more), "a second document begins here; a file holds one project, without ---")
        except yaml.MarkedYAMLError as error:
            mark = error.problem_mark or error.context_mark
            place = Place(self.file, mark.line + 1, mark.column + 1) if mark else Place(self.file)
            quoted = "quoted scalar" in (error.context or "")
            raise _refuse(place, _BROKEN_QUOTES if quoted else _MISFIT) from error
        except yaml.YAMLError as error:
            raise _refuse(Place(self.file), "the file cannot be read as YAML") from error
        return tree

    def _next(self) -> yaml.Event:
        return next(self.events)

    def _place(self, event: yaml.Event) -> Place:
        mark = event.start_mark
        return Place(self.file, mark.line + 1, mark.column + 1) if mark else Place(self.file)

    def _node(self, event: yaml.Event, depth: int) -> Node:
        place = self._place(event)
        if depth > DEEPEST:
            raise _refuse(place, f"groups and lists inside each other, {DEEPEST} deep at most")
        if isinstance(event, yaml.AliasEvent) or getattr(event, "anchor", None):
            raise _refuse(place, "anchors (&) and aliases (*) are not used in these files")
        if getattr(event, "tag", None):
            raise _refuse(place, "tags (!) are not used in these files")
        if isinstance(event, yaml.ScalarEvent):
            return self._words(event, place)
        if isinstance(event, yaml.SequenceStartEvent):
            return self._listing(place, depth)
        return self._group(place, depth)

    def _listing(self, place: Place, depth: int) -> Listing:
        items: list[Node] = []
        while not isinstance(event := self._next(), yaml.SequenceEndEvent):
            items.append(self._node(event, depth + 1))
            self._refuse_too_many(len(items), items[-1].place)
        return Listing(tuple(items), place)

    def _group(self, place: Place, depth: int) -> Group:
        entries: dict[str, tuple[Key, Node]] = {}
        while not isinstance(event := self._next(), yaml.MappingEndEvent):
            key = self._node(event, depth + 1)
            if not isinstance(key, Scalar) or not key.text.strip():
                raise _refuse(key.place, "a key is a word or a few; nothing else can stand before a colon")
            value = self._node(self._next(), depth + 1)
            folded = fold(key.text)
            if folded in entries:
                first = entries[folded][0]
                told = f"'{key.text}' stands twice; it was first given on line {first.place.line}"
                self.faults.add(key.place, told)
            else:
                entries[folded] = (Key(key.text, key.place), value)
            self._refuse_too_many(len(entries), key.place)
        return Group(entries, place)

    def _refuse_too_many(self, entries: int, place: Place) -> None:
        if entries > MOST_ENTRIES:
            raise _refuse(place, f"more than {MOST_ENTRIES} entries in one group or list; a project has a few of each")

    def _words(self, event: yaml.ScalarEvent, place: Place) -> Scalar:
        """Return a text and where its lines stand, so that a fault inside it can be pointed at."""
        hidden = _UNREADABLE.search(event.value)
        if hidden:
            # Written as an escape between quotation marks, so the file itself does not hold it.
            told = f"the text holds a character that cannot be read (number {ord(hidden.group())}); take it out"
            raise _refuse(place, told)
        if event.style == "|":
            # The mark is that of the |; the text begins at the first line below it that says something.
            below = self.lines[place.line :]
            filled = next((line for line in below if line.strip()), "")
            indent = len(filled) - len(filled.lstrip(" "))
            return Scalar(event.value, Place(self.file, place.line + 1, indent + 1), indent)
        if event.style in ("'", '"'):
            # The mark is that of the quotation mark, and what a fault points at lies behind it.
            place = Place(self.file, place.line, place.column + 1)
        return Scalar(event.value, place)


def shown_path(path: Path, root: Path | None = None) -> str:
    """Return a path as messages show it: relative to the room's folder, or to where the person stands.

    Examples
    --------
    >>> shown_path(Path("/room/projects/neck-roll.yaml"), Path("/room"))
    'projects/neck-roll.yaml'
    """
    whole = path if path.is_absolute() else Path.cwd() / path
    for folder in (root, Path.cwd()):
        if folder is not None and whole.is_relative_to(folder.absolute()):
            return printable(whole.relative_to(folder.absolute()).as_posix())
    return printable(str(path))
