"""One published value: a case file comes in, cases go out that can be asked whether our sums agree."""

from __future__ import annotations

import importlib
from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from pathlib import Path
from typing import Any, get_type_hints

import yaml

from generator.errors import CalculationError
from generator.lengths import round_nearest

from .reading import like, number, value, written

FOLDER = Path(__file__).parent


@dataclass(frozen=True)
class Case:
    """A value that a source prints, and the sum of ours that must give the same.

    ``prints`` is the source's own text. ``gives`` is the value to compare with where the source prints a rule, or where
    it is wrong: then ``slip`` says how. ``part`` names what is compared of a result that has parts. ``close`` is
    "exact", "to" a step, "at least", "at most", "between" two values or "each" of several; of a text it is "says".
    ``refuses`` is what the refusal says of numbers that cannot be sewn.
    """

    subject: str
    check: str
    source: str
    prints: str
    asks: str
    given: Mapping[str, Any] = field(default_factory=dict)
    at: str = ""
    part: str = ""
    gives: str | None = None
    close: str = "exact"
    slip: str = ""
    refuses: str = ""

    @property
    def expected(self) -> str:
        """The text of the value that ours is compared with."""
        return self.prints if self.gives is None else self.gives

    def result(self) -> Any:
        """Return what our sum gives."""
        answer = _asked(self.asks, self.given)
        return _of(answer, self.part) if self.part else answer

    def agrees(self, text: str) -> bool:
        """Return whether our sum gives what a text says, as closely as the case asks."""
        result = self.result()
        how, _, rest = self.close.partition(" ")
        if self.close == "says":
            return text in result
        if self.close == "between":
            least, most = (number(bound) for bound in text.split(" to "))
            return bool(least <= result <= most)
        if self.close == "each":
            return set(result) == {number(text)}
        if self.close in ("at least", "at most"):
            return bool(result >= number(text) if self.close == "at least" else result <= number(text))
        return bool((round_nearest(result, number(rest)) if how == "to" else result) == like(result, text))

    def refusal(self) -> str:
        """Return what our sum says against these numbers; nothing where it takes them."""
        try:
            self.result()
        except CalculationError as refused:
            return str(refused)
        return ""

    def told(self) -> str:
        """Return what our sum gives, in the form of the expected text."""
        if self.refuses:
            return f"refused: {self.refusal()}"
        result = self.result()
        if self.close.startswith("to "):
            result = round_nearest(result, number(self.close.removeprefix("to ")))
        if self.close == "each":
            result = result[0]
        return written(result, self.expected) or "nothing"


def _asked(name: str, given: Mapping[str, Any]) -> Any:
    """Call a function, or look a row up in a table, with texts for its parameters or for the row's fields."""
    module, _, attribute = name.rpartition(".")
    home = "generator" if module == "lengths" else "generator.calculation"
    asked = getattr(importlib.import_module(f"{home}.{module}"), attribute)
    if not callable(asked):
        return next(row for row in asked if all(getattr(row, field) == text for field, text in given.items()))
    hints = get_type_hints(asked)
    return asked(**{parameter: _argument(hints[parameter], one) for parameter, one in given.items()})


def _argument(hint: Any, given: Any) -> Any:
    nested = isinstance(given, dict) and "asks" in given
    return _asked(given["asks"], given["given"]) if nested else value(hint, given)


def _of(answer: Any, part: str) -> Any:
    """Return a part of an answer, by the names of its fields and the places in its lists; several parts as a tuple."""
    if ", " in part:
        return tuple(_of(answer, one) for one in part.split(", "))
    for step in part.split("."):
        answer = answer[int(step)] if isinstance(answer, tuple) else getattr(answer, step)
    return Fraction(answer) if isinstance(answer, int) and not isinstance(answer, bool) else answer


def sources() -> dict[str, dict[str, str]]:
    """Return the sources by their short names: what each is, and whether it was read."""
    return _texts(FOLDER / "sources.yaml")  # type: ignore[no-any-return]


def subjects() -> list[dict[str, Any]]:
    """Return the case files in the order of their names, each with its subject, a few words and its cases."""
    files = [_texts(path) for path in sorted((FOLDER / "cases").glob("*.yaml"))]
    return [{**one, "cases": [Case(subject=one["subject"], **case) for case in one["cases"]]} for one in files]


def _texts(path: Path) -> Any:
    """Return a YAML file in which every value stays the text that was written."""
    return yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)  # noqa: S506 -- makes texts and nothing else
