"""The fields of definitions, each with its reader: words of a file come in, a checked value goes out."""

from __future__ import annotations

import re
from datetime import date
from fractions import Fraction
from typing import Annotated

from generator.definitions.colours import colour_of, colours
from generator.definitions.conversion import Purpose
from generator.definitions.faults import Fault, meant
from generator.definitions.nodes import Node, Scalar
from generator.definitions.readers import Leaf, LeafList, Schema
from generator.definitions.reading import (
    ANY_SORT,
    Reading,
    constant,
    filled_words,
    fixed,
    read_finish,
    read_number,
    read_range,
    read_value,
)
from generator.definitions.reading_edges import read_edges
from generator.definitions.reading_text import read_text
from generator.definitions.values import CountWish, EdgeRun, Formula, Range, Text
from generator.errors import Place
from generator.limits import LONGEST_LABEL, MOST_SHARE

WORDS: Schema = {"type": ["string", "number", "boolean"]}
VALUE: Schema = {"type": ["string", "number"]}


def length(purpose: Purpose = "general") -> Leaf:
    """Return a field that is a length."""
    return Leaf(lambda words, reading: read_value(words, reading, purpose=purpose), VALUE)


def span(purpose: Purpose = "general", *, falling: bool = False) -> Leaf:
    """Return a field that is a range of lengths."""
    return Leaf(lambda words, reading: read_range(words, reading, falling=falling, purpose=purpose), VALUE)


def standing(text: str) -> Formula:
    """Return the default of a field that is a length or a number."""
    return constant(text, wanted=ANY_SORT)


def standing_span(text: str) -> Range:
    """Return the default of a field that is a range."""
    return read_range(Scalar(text, Place("")), Reading())


def read_label(words: Scalar, reading: Reading) -> str:
    """Return words on one line, the same in every size."""
    text = filled_words(words).strip()
    if "{{" in text:
        raise Fault("a label is the same in every size; {{ }} is filled in summaries, notes, items and steps only")
    if len(text) > LONGEST_LABEL:
        raise Fault(f"{len(text)} letters; what stands on one line has {LONGEST_LABEL} at most, so write it shorter")
    return text


def _yes(words: Scalar, reading: Reading) -> bool:
    text = filled_words(words).strip().lower()
    if text not in ("yes", "no", "true", "false"):
        raise Fault(f"'{words.text.strip()}' is neither yes nor no")
    return text in ("yes", "true")


def _share(words: Scalar, reading: Reading) -> Fraction:
    """Return a per cent value as a share of 1."""
    text = filled_words(words).strip()
    if not text.endswith("%"):
        raise Fault("a share is written in per cent, for example 3 %")
    bare = Scalar(text[:-1].rstrip(), words.place)
    value = read_value(bare, Reading(), wanted=0)
    share = fixed(value) / 100
    if not 0 <= share <= Fraction(MOST_SHARE, 100):
        raise Fault(f"a share lies between 0 % and {MOST_SHARE} %")
    return share


def _day(words: Scalar, reading: Reading) -> date:
    text = filled_words(words).strip()
    try:
        if not re.fullmatch(r"\d{4}-\d{2}-\d{2}", text, re.ASCII):
            raise ValueError
        return date.fromisoformat(text)
    except ValueError:
        raise Fault(f"'{text}' is no day; write year, month and day as in 2031-03-08") from None


def _minutes(words: Scalar, reading: Reading) -> int:
    found = re.fullmatch(r"\s*(\d{1,4})(?:\s*minutes?)?\s*", filled_words(words))
    if found is None:
        raise Fault(f"'{words.text.strip()}' is no time; write whole minutes, for example 45")
    return int(found.group(1))


def _whole(words: Scalar, reading: Reading) -> int:
    text = filled_words(words).strip()
    if not re.fullmatch(r"\d{1,4}", text, re.ASCII):
        raise Fault(f"'{text}' is no whole number")
    return int(text)


def _colour(words: Scalar, reading: Reading) -> str:
    text = filled_words(words).strip().lower()
    if not re.fullmatch(r"[a-z]+( [a-z]+)?|#[0-9a-f]{6}", text):
        raise Fault(f"'{text}' is no colour; write a plain word, or # and six digits in quotation marks")
    if colour_of(text) is None:
        wanted = "write a plain word, such as navy, oatmeal or sea blue, or # and six digits in quotation marks"
        raise Fault(f"the pictures know no colour '{text}'; {wanted}{meant(text, colours())}")
    return text


def _drawing(words: Scalar, reading: Reading) -> str:
    """Return a drawn plan: rows of equal length, of the three signs."""
    rows = [row.replace(" ", "") for row in filled_words(words).splitlines()]
    for number, row in enumerate(rows):
        wrong = re.search(r"[^<>.]", row)
        if wrong:
            told = f"'{wrong.group()}' is no turn; a drawn plan has < (left), > (right) and . (upright), a line a row"
            raise Fault(told, words.text.index(wrong.group()))
        if row and len(row) != len(next(filter(None, rows))):
            offset = sum(len(line) + 1 for line in words.text.splitlines()[:number])
            raise Fault("the rows of a drawn plan have equally many signs; this one differs from the first", offset)
    return words.text.strip()


class _LeafSize(LeafList):
    """A finished size: a list of two lengths, or of three."""

    def value(self, found: Node, reading: Reading) -> tuple[Formula, ...]:
        """Return across, along and, where it stands there, the depth."""
        size = super().value(found, reading)
        if len(size) not in (2, 3):
            told = f"a size is told across and along, and where it has one the depth; this is {len(size)} of them"
            reading.faults.refuse(found.place, told)
        return size


LABEL = Leaf(read_label, WORDS)
DAY = Leaf(_day, {"type": "string", "format": "date"})
Label = Annotated[str, LABEL]
Markdown = Annotated[Text, Leaf(read_text, WORDS)]
YesNo = Annotated[bool, Leaf(_yes, {"enum": ["yes", "no", True, False]})]
Share = Annotated[Fraction, Leaf(_share, {"type": "string", "pattern": "%$"})]
Day = Annotated[date, DAY]
Minutes = Annotated[int, Leaf(_minutes, VALUE)]
Whole = Annotated[int, Leaf(_whole, {"type": ["integer", "string"]})]
Colour = Annotated[str, Leaf(_colour, {"type": "string"})]
Drawing = Annotated[str, Leaf(_drawing, {"type": "string"})]
_WORD_LIST = {"anyOf": [WORDS, {"type": "array", "items": WORDS}]}
_WORD_LIST = {"anyOf": [WORDS, {"type": "array", "items": WORDS}]}
WordList = Annotated[tuple[str, ...], LeafList(read_label, _WORD_LIST, may_be_empty=True)]
Length = Annotated[Formula, length()]
Finished = Annotated[Formula, length("finished")]
FinishedSize = Annotated[
    tuple[Formula, ...],
    _LeafSize(lambda words, reading: read_value(words, reading, purpose="finished"), _WORD_LIST),
]
Fact = Annotated[Formula, length("fact")]
Quantity = Annotated[Formula, Leaf(lambda words, reading: read_value(words, reading, wanted=0), VALUE)]
Span = Annotated[Range, span()]
Graduation = Annotated[Range, span("depth", falling=True)]
Count = Annotated[CountWish, Leaf(read_number, VALUE)]
Edges = Annotated[EdgeRun, Leaf(read_edges, {"type": "string"})]
FINISH = Leaf(read_finish, {"type": "string"})
