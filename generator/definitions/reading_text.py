"""Texts with placeholders: the words of a file come in, a Text with its placeholders read goes out, or a fault."""

from __future__ import annotations

import re

from generator.definitions.conversion import findable
from generator.definitions.faults import Fault, SilentFault
from generator.definitions.nodes import Scalar
from generator.definitions.reading import ANY_SORT, Reading, filled_words, formulas, read_terms
from generator.definitions.values import Formula, Text
from generator.lengths import EDITIONS, read_length, say_length

_PLACEHOLDER = re.compile(r"\{\{([^{}]*)\}\}")
_SINGLE = re.compile(r"(?<!\{)\{ *([a-z][a-z0-9 .]*?) *\}(?!\})")
_SIGNS = re.compile(r"\{\{|\{%|\{#|\}\}")
_BARE_LENGTH = re.compile(r"(?<![\w.{/])(\d+(?:[ ./]\d+)*\s?(?:cm|mm)|(?:\d+ )?\d+/\d+\s?(?:in|yd))\b(?!\w)")


def read_text(words: Scalar, reading: Reading) -> Text:
    """Return a text with its placeholders read; a fault in one of them stands where it is."""
    text = filled_words(words).rstrip("\n")
    for sign in _SIGNS.finditer(text):
        _check_sign(text, sign)
    _check_single_braces(text, reading)
    parts: list[str | Formula] = []
    done = 0
    for found in _PLACEHOLDER.finditer(text):
        parts.append(text[done : found.start()])
        parts.append(_placeholder(words, found, reading))
        done = found.end()
    parts.append(text[done:])
    _note_bare_lengths(words, text, reading)
    return Text(text, words.at(0), tuple(part for part in parts if part != ""))


def _check_sign(text: str, sign: re.Match[str]) -> None:
    if sign.group() in ("{%", "{#"):
        raise Fault("only {{ }} is used in texts", sign.start())
    if sign.group() == "{{" and not _PLACEHOLDER.match(text, sign.start()):
        raise Fault("a {{ without its }}", sign.start())
    if sign.group() == "}}" and "{{" not in text[max(text.rfind("}}", 0, sign.start()), 0) : sign.start()]:
        raise Fault("a }} without its {{", sign.start())


def _check_single_braces(text: str, reading: Reading) -> None:
    """Refuse a measure in single brackets: it would be printed as it stands."""
    for found in _SINGLE.finditer(text):
        name = " ".join(found[1].split())
        if name in reading.names.measures or name.partition(".")[0] in reading.names.pieces:
            told = f"'{found[0]}' would be printed as it stands; write {{{{ {name} }}}} to put the measure in"
            raise Fault(told, found.start())


def _placeholder(words: Scalar, found: re.Match[str], reading: Reading) -> Formula:
    """Return the formula of a placeholder; the columns are those of the file."""
    inside = Scalar(words.text[: found.end(1)], words.place, words.indent)
    if not found.group(1).strip():
        raise Fault("an empty placeholder; name a measure in it, or take it out", found.start())
    try:
        sides = read_terms(inside, reading, skip=found.start(1))
        formula = formulas(inside, sides, reading, ANY_SORT)[0]
    except SilentFault:
        raise
    except Fault as fault:
        raise Fault(f"{fault.text} (in a placeholder)", fault.offset) from fault
    return Formula(found.group(1).strip(), formula.place, formula.dimension, formula.inch, formula.metric)


def _note_bare_lengths(words: Scalar, text: str, reading: Reading) -> None:
    if len(reading.editions) < 2:
        return
    without = _PLACEHOLDER.sub(lambda found: "\x00" * len(found.group()), text)
    for found in _BARE_LENGTH.finditer(without):
        told = f"'{found.group(1)}' is the same in both editions; write {_both(found.group(1))} to give each its own"
        reading.faults.add(words.at(found.start(1)), told, "note")


def _both(text: str) -> str:
    """Return a placeholder with a length and its like on the other ruler."""
    length = read_length(text)
    inch, metric = (say_length(findable(length, edition, "general"), edition) for edition in EDITIONS.values())
    metric, inch = (text, inch) if text[-1] == "m" else (metric, text)
    return f"{{{{ {inch} or {metric} }}}}"
