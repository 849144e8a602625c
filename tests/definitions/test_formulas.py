"""Formulas are exact; Python's own parser and Fractions are the second route."""

import ast
import operator
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.definitions.conversion import findable
from generator.definitions.faults import Fault
from generator.definitions.names import Names
from generator.definitions.nodes import Scalar
from generator.definitions.reading import Reading, read_formula, read_number, read_range
from generator.definitions.reading_text import read_text
from generator.errors import CalculationError, FaultyFileError, Place
from generator.lengths import CENTIMETRE, INCH, METRIC, MILLIMETRE

PLACE = Place("made.yaml", 7, 10)
VALUES = {"side": Fraction(12), "lap": Fraction(7, 3), "yoke depth": Fraction(5, 2)}
LENGTHS = Names(dict.fromkeys(VALUES, 1))
NUMBERS = Names(dict.fromkeys(VALUES, 0))
SIGNS = {ast.Add: operator.add, ast.Sub: operator.sub, ast.Mult: operator.mul, ast.Div: operator.truediv}


def worth(text: str, edition: object = INCH, names: Names = LENGTHS, wanted: int = 1) -> Fraction:
    return read_formula(text, PLACE, names, wanted=wanted).value(edition, VALUES.__getitem__)  # type: ignore[arg-type]


def by_python(node: ast.expr) -> Fraction:
    """The value of an expression as Python understands it, with Fractions for its numbers."""
    if isinstance(node, ast.Constant):
        return Fraction(str(node.value))
    if isinstance(node, ast.Name):
        return VALUES[node.id]
    if isinstance(node, ast.UnaryOp):
        return -by_python(node.operand) if isinstance(node.op, ast.USub) else by_python(node.operand)
    assert isinstance(node, ast.BinOp)
    return SIGNS[type(node.op)](by_python(node.left), by_python(node.right))


numbers = st.one_of(
    st.integers(0, 999).map(str),
    st.tuples(st.integers(0, 99), st.integers(0, 999)).map(lambda pair: f"{pair[0]}.{pair[1]:03d}"),
    st.tuples(st.integers(1, 64), st.integers(1, 64)).map(lambda pair: f"({pair[0]}/{pair[1]})"),
    st.sampled_from(["side", "lap"]),
)
expressions = st.recursive(
    numbers,
    lambda inner: st.one_of(
        st.tuples(inner, st.sampled_from("+-*/"), inner).map(lambda parts: f"{parts[0]} {parts[1]} {parts[2]}"),
        inner.map(lambda part: f"({part})"),
        inner.map(lambda part: f"-{part}"),
    ),
    max_leaves=9,
)


@given(expressions)
def test_a_formula_of_numbers_comes_to_what_python_makes_of_it(text: str) -> None:
    try:
        expected = by_python(ast.parse(text, mode="eval").body)
    except ZeroDivisionError:
        with pytest.raises((FaultyFileError, CalculationError)):
            worth(text, names=NUMBERS, wanted=0)
        return
    assert worth(text, names=NUMBERS, wanted=0) == expected


@given(st.text(alphabet="0123456789 /+-*().,incmortside\"'½%^{}=é", max_size=40))
def test_any_text_is_a_formula_or_a_fault_but_never_a_crash(text: str) -> None:
    try:
        formula = read_formula(text, PLACE, LENGTHS)
    except FaultyFileError as error:
        columns = [finding.place.column for finding in error.findings if finding.place is not None]
    else:
        columns = [formula.place.column + len(formula.names) * formula.dimension]
    assert columns
    assert all(column >= PLACE.column for column in columns)


@pytest.mark.parametrize(
    ("text", "inches"),
    [
        ("1 1/2 in", Fraction(3, 2)),
        ("1½ in", Fraction(3, 2)),
        ("½ in", Fraction(1, 2)),
        ("1 1/8 yd", Fraction(81, 2)),  # 9/8 of 36 in
        ("2 ft", Fraction(24)),
        ("0", Fraction(0)),
        ("side - 2 * lap", Fraction(22, 3)),  # 12 - 14/3
        ("side × 2 ÷ 3", Fraction(8)),
        ("(side + 3 in) / 2", Fraction(15, 2)),
        ("yoke depth + 1/2 in", Fraction(3)),
        ("yoke_depth + 1/2 in", Fraction(3)),
        ("larger(side / 4, 3 in)", Fraction(3)),
        ("smaller(side / 5, 3 in)", Fraction(12, 5)),
        ("around(113 in)", Fraction(355)),  # 355/113 of 113
        ("round up(lap)", Fraction(19, 8)),  # 7/3 is 18 2/3 eighths
        ("round down(lap)", Fraction(9, 4)),  # 18 eighths
        ("round to(lap, 1/2 in)", Fraction(5, 2)),  # 4 2/3 halves, nearest 5
        ("-lap + side", Fraction(29, 3)),
        ("side - (lap - 1/3 in) - 0", Fraction(10)),
        ("2.54 cm", Fraction(1)),
    ],
)
def test_a_formula_is_exact(text: str, inches: Fraction) -> None:
    assert worth(text) == inches if "cm" not in text else worth(text, METRIC) == inches


def test_three_thirds_are_one() -> None:
    assert worth("1/3 in + 1/3 in + 1/3 in") == 1


def test_either_edition_has_its_own_side() -> None:
    assert worth("side + 1 in or side + 2 cm") == 13
    assert worth("side + 1 in or side + 2 cm", METRIC) == 12 + 2 * CENTIMETRE


def test_rounding_without_a_step_takes_five_millimetres_in_metric() -> None:
    # 7/3 in is 59.27 mm; the next 5 mm above it is 60 mm.
    assert worth("round up(lap)", METRIC) == 60 * MILLIMETRE


def test_a_formula_knows_the_names_it_uses_once_each() -> None:
    names = Names({"side": 1, "lap": 1}, {"end panel": {"cut across": 1, "across": 1}})
    formula = read_formula("side + lap + side or lap + end panel.cut across", PLACE, names)
    assert formula.names == ("side", "lap", "end panel.cut across")
    assert read_formula("end_panel.finished across", PLACE, names).names == ("end panel.across",)


@pytest.mark.parametrize(
    ("text", "column", "message"),
    [
        ("side + ", 17, "something is missing at the end"),
        ("* side", 10, "a number, a name or a bracket is missing before '*'"),
        ("side + in", 17, "a number is missing before 'in'"),
        ("(side", 10, "a bracket is opened and never closed"),
        ("side)", 14, "a closing bracket without its opening one"),
        ("side 3/8 in", 15, "a sign is missing between 'side' and '3/8': + - * or /"),
        (
            "8 in 20 cm",
            15,
            "a sign is missing between 'in' and '20': + - * or /; between the inch and the metric value stands 'or'",
        ),
        ("1 in to 2 in", 15, "'to' does not belong here; one value is wanted"),
        ("1/0 in", 10, "'1/0' divides by nothing"),
        ("side / side / side", 10, "a length is wanted here, this is neither a length nor a number"),
        ("side / side", 10, "a length is wanted here, this is a plain number; write its unit, as in 1/2 in or 1 cm"),
        ("3/4 / 2 * side", 10, "'3/4 /' can be read two ways; put brackets round what belongs together"),
        ("larger(side)", 10, "'larger' takes 2 to 6 values, here are 1"),
        ("around(side, lap)", 10, "'around' takes 1 values, here are 2"),
        (
            "side <= lap",
            15,
            "formulas have no < or >; for the smaller or larger of two write smaller(a, b) or larger(a, b)",
        ),
        ("= side", 10, "a formula has no =; the key before the colon is its name"),
        ("5 CM", 12, "'CM': write units small, cm"),
        ("6'", 11, "\"'\" has no meaning here; write 'ft' for feet, and no quotation marks"),
        ("Side", 10, "there is no measure 'Side'; did you mean 'side'?"),
        ("side * side - side * lap", 10, "a length is wanted here, this is an area"),
        ("side * side + lap", 22, "these two cannot be added: one is an area"),
        ("1 in or 2", 18, "a length is wanted here, this is a plain number; write its unit, as in 1/2 in or 1 cm"),
        ("(" * 13 + "side" + ")" * 13, 22, "more than 12 brackets inside each other"),
        ("side + " * 40 + "side", 210, "a formula of more than 200 characters; give its parts names under measures"),
        ("9" * 30 + " in", 10, "a number with so many digits is no length that can be cut"),
    ],
)
def test_a_fault_in_a_formula_is_told_at_its_column(text: str, column: int, message: str) -> None:
    with pytest.raises(FaultyFileError) as refused:
        read_formula(text, PLACE, LENGTHS)
    assert str(refused.value) == f"made.yaml:7:{column}: {message}"


def test_a_step_of_nothing_is_refused_when_it_is_worked() -> None:
    with pytest.raises(CalculationError, match="the step of 'round up' must be more than nothing"):
        worth("round up(side, lap - 7/3 in)", names=LENGTHS)


def test_a_division_that_comes_to_nothing_is_refused_when_it_is_worked() -> None:
    with pytest.raises(CalculationError, match="something is divided by a value that comes to nothing"):
        worth("side * side / (side - 12 in)")


@pytest.mark.parametrize(
    ("written", "purpose", "edition", "found"),
    [
        # allowances and spacing as the metric edition is told to take them; the rest by hand
        (Fraction(1, 4), "seam", METRIC, 7 * MILLIMETRE),
        (Fraction(3, 8), "seam", METRIC, CENTIMETRE),
        (Fraction(1, 2), "seam", METRIC, 15 * MILLIMETRE),
        (Fraction(3, 2), "spacing", METRIC, 40 * MILLIMETRE),  # 38.1 mm
        (Fraction(3, 8), "depth", METRIC, 10 * MILLIMETRE),  # 9.5 mm and a little
        (Fraction(1, 4), "depth", METRIC, 6 * MILLIMETRE),  # 6.35 mm
        (Fraction(16), "finished", METRIC, 41 * CENTIMETRE),  # 40.64 cm
        (40 * CENTIMETRE, "finished", INCH, Fraction(31, 2)),  # 15.75 in lies between 15 1/2 and 16: the upper is 16
        (CENTIMETRE, "seam", INCH, Fraction(3, 8)),
        (3 * MILLIMETRE, "depth", INCH, Fraction(1, 8)),  # 0.118 in
        (Fraction(1, 100), "depth", METRIC, MILLIMETRE),  # never nothing
    ],
)
def test_a_length_of_one_edition_goes_to_the_nearest_findable_mark(
    written: Fraction, purpose: str, edition: object, found: Fraction
) -> None:
    assert findable(written, edition, purpose) == found  # type: ignore[arg-type]


def words(text: str) -> Scalar:
    return Scalar(text, PLACE)


def test_a_range_has_two_ends_in_either_edition() -> None:
    span = read_range(words("1 in to 2 in or 2.5 cm to 5 cm"), Reading())
    assert [span.least.fixed(INCH), span.most.fixed(INCH)] == [1, 2]
    assert [span.least.fixed(METRIC), span.most.fixed(METRIC)] == [25 * MILLIMETRE, 50 * MILLIMETRE]


def test_one_length_is_a_range_without_room() -> None:
    span = read_range(words("1 in or 2 cm"), Reading())
    assert span.least == span.most


@pytest.mark.parametrize(
    ("text", "message", "offset"),
    [
        ("1 in to 2 in to 3 in", "a range has two ends: the smaller value, 'to', the larger value", 16),
        ("1 in to 2 in or 3 cm", "the inch side and the metric side of 'or' differ in their number of parts", 16),
        ("", "nothing is written here; give a value, or take the line out", 0),
    ],
)
def test_a_broken_range_is_told(text: str, message: str, offset: int) -> None:
    with pytest.raises(Fault) as refused:
        read_range(words(text), Reading())
    assert (refused.value.text, refused.value.offset) == (message, offset)


def test_numbers_of_tucks_have_rules() -> None:
    found = {text: read_number(words(text), Reading()) for text in ("any", "even", "odd", "multiple of 4", "17")}
    assert [number.rule for number in found.values()] == ["any", "even", "odd", "multiple", "exactly"]
    four, seventeen = found["multiple of 4"].value, found["17"].value
    assert four is not None
    assert seventeen is not None
    assert (four.fixed(INCH), seventeen.fixed(INCH)) == (4, 17)


def test_a_text_is_filled_with_units_for_lengths_and_plain_numbers() -> None:
    names = Names({"lap": 1}, {"front": {"number": 0}})
    text = read_text(words("Lap {{ lap }}, or {{ 1/4 in or 6 mm }}; {{front.number}} tucks.\n"), Reading(names=names))
    values = {"lap": Fraction(3), "front.number": Fraction(17)}
    assert text.filled(INCH, values.__getitem__) == "Lap 3 in, or 1/4 in; 17 tucks."
    assert text.filled(METRIC, values.__getitem__) == "Lap 7.6 cm, or 6 mm; 17 tucks."  # 76.2 mm, to the mark
    assert text.names == ("lap", "front.number")
    assert text.text == "Lap {{ lap }}, or {{ 1/4 in or 6 mm }}; {{front.number}} tucks."


@pytest.mark.parametrize("text", ["a }} alone", "a {{ alone", "{{ }}", "{# no #}", "{{ lap }} }}"])
def test_broken_placeholders_are_refused(text: str) -> None:
    with pytest.raises(Fault):
        read_text(words(text), Reading(names=Names({"lap": 1})))
