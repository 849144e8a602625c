"""Slips of the pen in YAML: lines come in, a fault for each slip goes out, in a teacher's words and at its place.

YAML itself stops at the first slip, often on a later line and in words about its own grammar; some slips it accepts
and loses text. Project files use a small part of YAML (keys, lists with ``-``, ``|`` for longer text), so a slip can be
told line by line before YAML sees the file.
"""

from __future__ import annotations

import re

from generator.definitions.faults import Faults
from generator.errors import Place
from generator.limits import LONGEST_LINE

NEW_LINE = "write | after the key and put the text on the next line"
_LINE = re.compile(r"(?P<indent> *)(?P<dashes>(?:-(?: +|$))*)(?P<rest>.*)")
# A colon ends a key only before a space or the end of the line, as in YAML: 1:30 and https://x are no keys.
_KEY = re.compile(r"(?P<key>'[^']*'|\"[^\"]*\"|[^\s#\[\]{}&*!|>%@`'\",?][^:]*?(?::(?=\S)[^:]*?)*) *:(?P<gap> +|$)")
_BLOCK = re.compile(r"\|[+-]? *(?: #.*)?$")
_FLAT_LIST = re.compile(r"\[[^\[\]{}:]*\] *(?: #.*)?$")
_ANCHORS = (
    "anchors (&) and aliases (*) are not used in these files; a text that begins with & or * needs | and a new line"
)
_OPENERS = {
    "[": "a text that begins with [ needs | and a new line; a list is written with commas, or one line each with a -",
    "{": "a text that begins with { needs | and a new line; in a formula a name stands without brackets",
    ">": "a text that begins with > needs | and a new line (a drawn plan always does)",
    "*": _ANCHORS,
    "&": _ANCHORS,
    "!": "tags (!) are not used in these files; a text that begins with ! needs | and a new line",
}


def report_slips(lines: list[str], file: str, faults: Faults) -> None:
    """Add a fault for every slip in the lines of a file."""
    scan = _Scan(file, faults)
    for number, line in enumerate(lines, 1):
        scan.line(number, line.rstrip())


class _Scan:
    """Reads the lines of a file one after the other and remembers what is open."""

    def __init__(self, file: str, faults: Faults) -> None:
        self.file = file
        self.faults = faults
        self.levels: list[tuple[int, str]] = []
        self.block: int | None = None
        self.open = True  # the line before waits for a value below it
        self.stray: tuple[int, int, str] | None = None
        self.misfit = False

    def add(self, line: int, column: int, text: str) -> None:
        self.faults.add(Place(self.file, line, column), text)

    def line(self, number: int, line: str) -> None:
        found = _LINE.match(line)
        if found is None or not line.strip():
            return
        if len(line) > LONGEST_LINE:
            self.add(number, LONGEST_LINE + 1, f"a line of more than {LONGEST_LINE} characters; break it up")
            return
        indent = len(found["indent"])
        # Everything further in than the owner of a | is its text, whatever it looks like.
        if self.block is not None and indent > self.block:
            return
        self.block = None
        if "\t" in line:
            self.add(number, line.index("\t") + 1, "a tab; indent with spaces")
            return
        if found["rest"].startswith("#") or line == "---":
            return
        self._structure(number, found)

    def _structure(self, number: int, found: re.Match[str]) -> None:
        """Check how a line is indented, then its value."""
        indent, dashes, rest = len(found["indent"]), found["dashes"], found["rest"]
        key = _KEY.match(rest)
        if not dashes and re.match(r"-[^\s\d-]", rest):
            self._misfit(number, indent + 2, "a space is missing after the -")
            return
        if not dashes and not key:
            self._loose_text(number, indent, rest)
            return
        fits = self._level(number, indent, "list" if dashes else "group")
        if not fits:
            return
        column = indent
        # "- - key: value" opens three levels on one line; the columns of the inner ones are those of what follows.
        for dash in re.finditer(r"- *", dashes):
            column += len(dash.group())
            if key or dash.end() < len(dashes):
                self.levels.append((column, "group" if dash.end() == len(dashes) else "list"))
        start = column + (key.end() if key else 0)
        value = rest[key.end() :] if key else rest
        owner = column if key else indent
        self.open = not value or value.startswith("# ") or value == "#"
        self.stray = None
        if not self.open:
            self._value(number, start + 1, value, owner)

    def _level(self, number: int, indent: int, kind: str) -> bool:
        """Close the levels that end before this line; tell whether the line fits what is open."""
        # A text of its own under a key is good YAML, but with a sibling below it was a key without its colon.
        if self.stray and indent == self.stray[1]:
            line, column, text = self.stray
            self._misfit(line, column + 1, f"'{text}' has no value: is its colon missing, or the space after it?")
            self.levels.append((indent, kind))
        deeper = not self.levels or indent > self.levels[-1][0]
        while self.levels and self.levels[-1][0] > indent:
            self.levels.pop()
        level = self.levels[-1] if self.levels else (-1, "")
        if (deeper and self.open) or (level == (indent, "group") and kind == "list" and self.open):
            self.levels.append((indent, kind))
        # YAML lets the dashes of a list stand as far left as its key; the next key there ends the list.
        elif level == (indent, "list") and kind == "group" and (indent, "group") in self.levels:
            self.levels.pop()
        elif level != (indent, kind):
            self._misfit(number, indent + 1, self._misfit_text(indent, level, kind))
            return False
        return True

    def _misfit_text(self, indent: int, level: tuple[int, str], kind: str) -> str:
        if level[0] == indent and kind == "group":
            return "this line does not fit what stands above it: a list is open here, and its lines begin with -"
        if level[0] == indent:
            return "this line does not fit what stands above it: a line with - does not belong among keys"
        return "this line does not fit what stands above it: is it indented like its neighbours, and has a list its -?"

    def _misfit(self, line: int, column: int, text: str) -> None:
        """Tell the first line that does not fit; later ones follow from it."""
        if not self.misfit:
            self.add(line, column, text)
        self.misfit = True

    def _loose_text(self, number: int, indent: int, rest: str) -> None:
        """Take a line without a key: the value of the key above, or its second line, or a key without its colon."""
        level = self.levels[-1][0] if self.levels else -1
        if indent > level:
            if self.open:
                self.stray = (number, indent, rest)
                self._value(number, indent + 1, rest, level)
                self.open = False
            return
        self._misfit(number, indent + 1, f"'{rest[:40]}' has no value: is its colon missing, or the space after it?")

    def _value(self, number: int, column: int, value: str, owner: int) -> None:
        """Check what stands after a key or a dash."""
        first = value[0]
        if first == "|":
            self.block = owner
            if not _BLOCK.match(value):
                self.add(number, column + 1, "nothing stands after a |; its text begins on the next line")
        elif first in "'\"":
            self._quoted(number, column, value)
        elif first == "[" and _FLAT_LIST.match(value):
            return
        elif first in _OPENERS:
            self.add(number, column, _OPENERS[first])
        elif first in "%@`,]}" or value[:2] in ("? ", "- ") or value in "?-":
            self.add(number, column, f"a text cannot begin with {first}; {NEW_LINE}")
        else:
            self._plain(number, column, value)

    def _quoted(self, number: int, column: int, value: str) -> None:
        mark = value[0]
        skipped = r"(?:[^']|'')*" if mark == "'" else r'(?:[^"\\]|\\.)*'
        found = re.match(f"{mark}{skipped}{mark}", value)
        if found is None:
            told = "a quotation mark is opened and never closed on this line; leave quotation marks out"
            self.add(number, column, f"{told}, or write | and a new line")
            return
        after = value[found.end() :]
        if after.strip() and not re.match(r" +#", after):
            start = column + found.end() + len(after) - len(after.lstrip())
            both = f"; for a length of two rulers leave the quotation marks out: {found[0][1:-1]}{after}"
            remedy = both if after.lstrip().startswith("or ") else f"; {NEW_LINE}"
            self.add(number, start, f"text goes on after a closing quotation mark{remedy}")

    def _plain(self, number: int, column: int, value: str) -> None:
        remark = re.search(r" #(?= |$)", value)
        text = value[: remark.start()] if remark else value
        sign = text.find(" #")
        if sign >= 0:
            told = f"is this # part of the text? Then {NEW_LINE}. A remark has a space after its #"
            self.add(number, column + sign + 1, told)
            text = text[:sign]
        colon = re.search(r":(?= |$)", text)
        if colon:
            self.add(number, column + colon.start(), f"a colon inside the text; {NEW_LINE}")
