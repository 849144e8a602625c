"""Kinds of piece are known where they are read and worked; what draws, sets and counts asks a piece for facts."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from dataclasses import fields
from pathlib import Path

import pytest
from source import FILES, ROOT, name_of, parsed

from generator.calculation.worked import End, TuckSet
from generator.calculation.worked_piece import EdgeWork, Lengths, Made, Part, Piece
from generator.definitions.making_words import SORTS
from generator.definitions.piece_kind import NATURES
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.vocabulary import CLOSURES, KINDS, OF_CLOSINGS, OF_THINGS

GENERATOR = ROOT / "generator"
ASKING = (
    *sorted((GENERATOR / "drawing").rglob("*.py")),
    *sorted((GENERATOR / "rendering").rglob("*.py")),
    *sorted((GENERATOR / "commands").rglob("*.py")),
    GENERATOR / "calculation" / "worksheet" / "threads.py",
    GENERATOR / "calculation" / "worksheet" / "times.py",
    GENERATOR / "calculation" / "worksheet" / "lists.py",
    GENERATOR / "calculation" / "worksheet" / "cloths.py",
    GENERATOR / "calculation" / "worksheet" / "closures.py",
    GENERATOR / "calculation" / "worksheet" / "panel_checks.py",
)
# In rendering a strip is a sheet of paper, and to strip is to take off; nothing there is asked of a piece by that word.
OTHER_WORDS = {"rendering": {"strip"}}
# A kind's word may be written on paper, and name a picture that a technique shows.
WRITES = {"note", "text"}
PLACES = {"left", "right", "name", "first", "second", "across", "along", "number"}
NAMES_OF_PICTURES = {"ASSEMBLIES"}
# Lengths of pieces and tucks. Scaling is * and /, so only sums and differences of them are asked about; what is told by
# a name that places on paper have as well (left, width ...) cannot be told apart here.
PIECE_VALUES = (TuckSet, End, EdgeWork, Part, Lengths, Made, Piece)
LENGTHS = {one.name for value in PIECE_VALUES for one in fields(value) if one.type == "Fraction"} - PLACES


def words_asked(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Every word of a kind that is not only written, and every look at what a piece is called."""
    written = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and getattr(node.func, "attr", getattr(node.func, "id", "")) in WRITES:
            written |= {id(argument) for argument in node.args}
        if isinstance(node, ast.AnnAssign | ast.Assign) and isinstance(node.value, ast.Dict):
            targets = node.targets if isinstance(node, ast.Assign) else [node.target]
            if {getattr(target, "id", "") for target in targets} & NAMES_OF_PICTURES:
                written |= {id(key) for key in node.value.keys}
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and node.value in PIECES and id(node) not in written:
            yield node.lineno, node.value
        if isinstance(node, ast.Attribute) and node.attr == "kind" and ast.unparse(node.value).endswith("piece"):
            yield node.lineno, ast.unparse(node)


def sums_of_lengths(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Every sum or difference of which a part is a length of the worksheet, looked up then and there."""
    for node in ast.walk(tree):
        if isinstance(node, ast.BinOp) and isinstance(node.op, ast.Add | ast.Sub):
            for side in (node.left, node.right):
                if isinstance(side, ast.Attribute) and side.attr in LENGTHS:
                    yield node.lineno, ast.unparse(node)


def kinds_asked(tree: ast.AST) -> Iterator[tuple[int, str]]:
    """Every word of a kind that is no sort of seam, and every look at a piece's kind.

    A message may say the kind, and a technique's file names the kinds that it is for, so it may be compared with those.
    """
    may = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "_a":
            may |= {id(argument) for argument in node.args}
        if isinstance(node, ast.Compare) and all(isinstance(other, ast.Name) for other in node.comparators):
            may.add(id(node.left))
    for node in ast.walk(tree):
        if isinstance(node, ast.Constant) and node.value in PIECES and node.value not in SORTS:
            yield node.lineno, node.value
        if isinstance(node, ast.Attribute) and node.attr == "kind" and id(node) not in may:
            of = ast.unparse(node.value)
            if of.endswith("]") or of.rpartition(".")[2] not in ("closing", "thing", "seam"):
                yield node.lineno, ast.unparse(node)


MAKING_UP = [path for path in FILES if path.is_relative_to(GENERATOR / "calculation" / "making_up")]


def test_the_making_up_asks_no_piece_for_its_kind() -> None:
    assert MAKING_UP
    asked = [
        f"{name_of(path)}:{line} asks for {word}" for path in MAKING_UP for line, word in kinds_asked(parsed(path))
    ]
    assert asked == []


@pytest.mark.parametrize(
    ("code", "found"),
    [
        ("if part.kind in ('tie', 'boxing'): pass", ["tie", "boxing", "part.kind"]),
        ("{thing.parts[name].kind for name in names}", ["thing.parts[name].kind"]),
        ("part.kind == 'bought'", ["part.kind", "bought"]),
        ("part.kind == kind", []),
        ("f'it is {_a(part.kind)}'", []),
        ("seam.sort == 'binding'", []),
    ],
)
def test_a_question_of_the_making_up_for_a_kind_is_found(code: str, found: list[str]) -> None:
    assert sorted(word for _, word in kinds_asked(ast.parse(code))) == sorted(found)


def test_every_kind_of_piece_says_what_its_making_up_depends_on() -> None:
    # One that says nothing would pass for something that is neither laid, sewn round nor caught without a word.
    natures = [set(model.of_kind.nature) for model in PIECES.values()]
    assert all(natures)
    assert set().union(*natures) == set(NATURES)


def test_every_nature_of_a_piece_is_asked_for() -> None:
    paths = [*MAKING_UP, GENERATOR / "calculation" / "worksheet" / "moments.py"]
    strings = {node.value for path in paths for node in ast.walk(parsed(path)) if isinstance(node, ast.Constant)}
    assert set(NATURES) - strings == set()


def test_nothing_asks_a_piece_for_the_name_of_its_kind() -> None:
    asked = [
        f"{name_of(path)}:{line} asks for {word}"
        for path in ASKING
        for line, word in words_asked(parsed(path))
        if word not in OTHER_WORDS.get(path.relative_to(GENERATOR).parts[0], set())
    ]
    assert asked == []


@pytest.mark.parametrize(
    ("code", "found"),
    [
        ("if piece.kind == word: pass", [(1, "piece.kind")]),
        ("subject.piece.kind", [(1, "subject.piece.kind")]),
        ("edge.end.kind", []),
        ("if name in ('binding', 'pocket'): pass", [(1, "binding")]),
        ("FOLDED = {'tie': 2}", [(1, "tie")]),
        ("ASSEMBLIES = {'boxing': draw}", []),
        ("note(canvas, 'boxing', at)", []),
        ("canvas.text('boxing', 1, 2)", []),
    ],
)
def test_a_question_for_a_kind_is_found_and_a_word_on_paper_is_not(code: str, found: list[tuple[int, str]]) -> None:
    assert list(words_asked(ast.parse(code))) == found


def test_drawing_scales_lengths_and_works_none_out() -> None:
    files = [path for path in FILES if path.is_relative_to(GENERATOR / "drawing")]
    sums = [f"{name_of(path)}:{line} {told}" for path in files for line, told in sums_of_lengths(parsed(path))]
    assert files
    assert sums == []


@pytest.mark.parametrize(
    ("code", "found"),
    [
        ("(piece.cut_across - piece.finished_across) / 2", True),
        ("edge.allowance + 1", True),
        ("part.cut_across * scale", False),
        ("left + float(part.cut_across * scale)", False),
    ],
)
def test_a_length_worked_out_is_found_and_a_scaled_one_is_not(code: str, found: bool) -> None:
    assert bool(list(sums_of_lengths(ast.parse(code)))) is found


def kinds_compared(tree: ast.AST) -> Iterator[int]:
    """Every line that compares what a project or a closing is called with a word, or with some words."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Compare):
            sides = [node.left, *node.comparators]
            named = [side for side in sides if isinstance(side, ast.Attribute) and side.attr == "kind"]
            words = [side for side in sides if isinstance(side, ast.Constant | ast.Tuple | ast.Set | ast.Name)]
            owners = {ast.unparse(side.value) for side in named}
            if words and any(owner.endswith(("thing", "closing", "project")) for owner in owners):
                yield node.lineno


@pytest.mark.parametrize("line", ['thing.kind == "bag"', "closing.kind in SET", 'x = self.thing.kind != "mats"'])
def test_a_kind_that_is_asked_by_its_word_is_found(line: str) -> None:
    assert list(kinds_compared(ast.parse(line)))


@pytest.mark.parametrize("path", sorted((GENERATOR / "calculation" / "making_up").glob("*.py")), ids=name_of)
def test_the_making_up_asks_projects_and_closings_for_facts(path: Path) -> None:
    assert list(kinds_compared(parsed(path))) == []


def test_every_kind_of_project_and_of_closing_has_facts_that_are_told() -> None:
    assert {fact for facts in KINDS.values() for fact in facts} == set(OF_THINGS)
    assert {fact for facts in CLOSURES.values() for fact in facts} == set(OF_CLOSINGS)
