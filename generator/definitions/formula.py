"""Formulas, second reading: text comes in, terms go out, with lengths, numbers and areas told apart.

The grammar: sides parted by ``or``, in each side parts parted by a word (``to``, ``then``), each part a sum.
There are no powers, texts, comparisons or conditions, so there is nothing that a file could misuse.
"""

from __future__ import annotations

from fractions import Fraction

from generator.definitions.faults import Fault, meant
from generator.definitions.functions import FUNCTIONS, PI
from generator.definitions.names import Names
from generator.definitions.terms import Call, Constant, Named, Sum, Term
from generator.definitions.tokens import RESERVED, Token, tokens
from generator.lengths import UNITS

DEEPEST = 12
Side = list[tuple[Term, int]]
Between = str | tuple[str, ...]


class FormulaReader:
    """Reads one text; every fault is raised with its offset in that text."""

    def __init__(self, text: str, names: Names, skip: int = 0) -> None:
        self.names = names
        self.tokens = tokens(text, skip)
        self.place = 0
        self.depth = 0

    @property
    def token(self) -> Token:
        """The token to be read next."""
        return self.tokens[self.place]

    def take(self, text: str) -> bool:
        """Read a word or sign if it stands here."""
        if self.token.kind != "number" and self.token.text == text:
            self.place += 1
            return True
        return False

    def sides(self, between: Between = "") -> list[Side]:
        """Return one side, or the inch and the metric side; each has parts with ``between`` between them.

        Of several words the first stands after the first part, the next after the second, and so on in turn.
        """
        between = (between,) if isinstance(between, str) else between
        sides = [self._side(between)]
        if self.take("or"):
            sides.append(self._side(between))
        if self.token.kind != "end":
            raise Fault(self._surplus(), self.token.start)
        return sides

    def _side(self, between: tuple[str, ...]) -> Side:
        parts = [self._part()]
        while (word := between[(len(parts) - 1) % len(between)]) and self.take(word):
            parts.append(self._part())
        return parts

    def _part(self) -> tuple[Term, int]:
        start = self.token.start
        return self._sum(), start

    def _surplus(self) -> str:
        token = self.token
        before = self.tokens[self.place - 1].text if self.place else ""
        if token.text == "or":
            return "more than one 'or'; a value has an inch side and a metric side"
        if token.text == ")":
            return "a closing bracket without its opening one"
        if token.text in ("to", "then", "by"):
            return f"'{token.text}' does not belong here; one value is wanted"
        told = f"a sign is missing between '{before}' and '{token.text}': + - * or /"
        in_units = {other.text for other in self.tokens} & set(UNITS)
        return f"{told}; between the inch and the metric value stands 'or'" if len(in_units) > 1 else told

    def _sum(self) -> Term:
        term = self._product()
        while self.token.text in ("+", "-"):
            sign = self.token
            self.place += 1
            right = self._product()
            term = Sum(sign.text, term, right, _alike(term, right, sign.start, "added"))
        return term

    def _product(self) -> Term:
        term = self._signed()
        while self.token.text in ("*", "/"):
            sign = self.token
            self.place += 1
            right = self._signed()
            if sign.text == "/" and isinstance(right, Constant) and right.value == 0:
                raise Fault("this divides by nothing", sign.start)
            turn = 1 if sign.text == "*" else -1
            term = Sum(sign.text, term, right, (term.dimension or 0) + turn * (right.dimension or 0))
        return term

    def _signed(self) -> Term:
        if self.take("-"):
            term = self._signed()
            return Sum("-", Constant(Fraction(0), None), term, term.dimension)
        return self._signed() if self.take("+") else self._atom()

    def _atom(self) -> Term:
        token = self.token
        if token.kind == "number":
            return self._number()
        if token.text == "(":
            return self._bracket()
        if token.text == "pi":
            self.place += 1
            return Constant(PI, 0, text="pi")
        if token.kind == "word" and token.text not in RESERVED:
            return self._name()
        if token.kind == "end":
            raise Fault("something is missing at the end", token.start)
        if token.text in UNITS:
            raise Fault(f"a number is missing before '{token.text}'", token.start)
        raise Fault(f"a number, a name or a bracket is missing before '{token.text}'", token.start)

    def _bracket(self) -> Term:
        opening = self.token
        self.place += 1
        self.depth += 1
        if self.depth > DEEPEST:
            raise Fault(f"more than {DEEPEST} brackets inside each other", opening.start)
        term = self._sum()
        self.depth -= 1
        if not self.take(")"):
            raise Fault("a bracket is opened and never closed", opening.start)
        return term

    def _number(self) -> Term:
        token = self.token
        self.place += 1
        unit = self.token
        if unit.kind == "word" and unit.text in UNITS:
            self.place += 1
            return Constant(token.value * UNITS[unit.text], 1, unit.text, f"{token.text} {unit.text}")
        if unit.kind == "word" and unit.text not in RESERVED:
            raise Fault(self._no_unit(token, unit), token.start)
        return Constant(token.value, None if token.value == 0 else 0, text=token.text)

    def _no_unit(self, number: Token, word: Token) -> str:
        units = ", ".join(UNITS)
        if word.text in self.names.measures:
            return f"'{number.text} {word.text}': write {number.text} * {word.text} for times, or a unit: {units}"
        return f"'{word.text}' is no unit; after a number stands a sign or a unit: {units}"

    def _name(self) -> Term:
        start = self.token.start
        name = self._words()
        if self.token.text == "(":
            return self._call(name, start)
        if self.take("."):
            if self.token.kind != "word":
                raise Fault(f"a measure of '{name}' is missing after the point", self.token.start)
            full, dimension = self.names.piece_measure(name, self._words(), start)
            return Named(full, dimension)
        return Named(name, self.names.measure(name, start))

    def _words(self) -> str:
        """Return a name of one or more words; digits may follow a word."""
        words = [self.tokens[self.place].text.replace("_", " ")]
        self.place += 1
        while self._goes_on(words[-1]):
            words.append(self.token.text.replace("_", " "))
            self.place += 1
        return " ".join(words)

    def _goes_on(self, before: str) -> bool:
        token, after = self.token, self.tokens[min(self.place + 1, len(self.tokens) - 1)]
        if token.kind == "word":
            return token.text not in RESERVED or (before == "round" and token.text == "to" and after.text == "(")
        return token.kind == "number" and token.text.isdigit() and after.text not in UNITS

    def _call(self, name: str, start: int) -> Term:
        function = FUNCTIONS.get(name)
        if function is None:
            raise Fault(f"there is no function '{name}'{meant(name, FUNCTIONS)}", start)
        opening = self.token
        self.place += 1
        self.depth += 1
        if self.depth > DEEPEST:
            raise Fault(f"more than {DEEPEST} brackets inside each other", opening.start)
        values = [self._sum()]
        while self.take(","):
            values.append(self._sum())
        self.depth -= 1
        if not self.take(")"):
            raise Fault("a bracket is opened and never closed", opening.start)
        if not function.least <= len(values) <= function.most:
            wanted = " to ".join(dict.fromkeys((str(function.least), str(function.most))))
            raise Fault(f"'{name}' takes {wanted} values, here are {len(values)}", start)
        dimension = values[0].dimension
        for value in values[1:]:
            dimension = _alike(Constant(Fraction(1), dimension), value, start, "compared")
        return Call(name, tuple(values), dimension)


def _alike(left: Term, right: Term, offset: int, verb: str) -> int | None:
    """Return the dimension of two terms that must be of one sort."""
    if left.dimension is None or right.dimension is None or left.dimension == right.dimension:
        return right.dimension if left.dimension is None else left.dimension
    if {left.dimension, right.dimension} == {0, 1}:
        told = f"a length and a plain number cannot be {verb}; does a number lack its unit (in, cm)?"
        raise Fault(told, offset)
    raise Fault(f"these two cannot be {verb}: one is an area", offset)
