"""Docstrings of the sums say the same as their signatures."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest
from numpydoc.docscrape import NumpyDocString
from source import CALCULATION, FILES, name_of, parsed

NUMBERS = {"Fraction", "int", "float", "Range"}
FORMULAS = sorted(
    path
    for path in FILES
    if path.name != "__init__.py"
    and path.is_relative_to(CALCULATION)
    and not path.is_relative_to(CALCULATION / "worksheet")
)


def public_functions(path: Path) -> list[ast.FunctionDef]:
    return [node for node in parsed(path).body if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")]


def parameters(function: ast.FunctionDef) -> list[str]:
    names = [*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs]
    return [name.arg for name in names]


FUNCTIONS = [(path, function) for path in FORMULAS for function in public_functions(path)]


def gives_numbers(function: ast.FunctionDef) -> bool:
    """Whether numbers come out: then there is a formula, a unit or a limit to be told of."""
    return bool(NUMBERS & {node.id for node in ast.walk(function.returns or function) if isinstance(node, ast.Name)})


@pytest.mark.parametrize(("path", "function"), FUNCTIONS, ids=[f"{path.stem}.{node.name}" for path, node in FUNCTIONS])
def test_a_calculation_documents_what_it_takes_and_returns(path: Path, function: ast.FunctionDef) -> None:
    text = ast.get_docstring(function)
    assert text, f"{path.name}:{function.lineno} {function.name} has no docstring"
    described = NumpyDocString(text)
    named = [name.strip() for entry in described["Parameters"] for name in entry.name.split(",")]
    if named or described["Returns"] or gives_numbers(function):
        assert named == parameters(function)
        assert described["Returns"], "says nothing of what it returns"
    else:
        assert text.split("\n")[0].endswith((".", ":")), "one sentence on one line says what it does"


@pytest.mark.parametrize(("path", "function"), FUNCTIONS, ids=[f"{path.stem}.{node.name}" for path, node in FUNCTIONS])
def test_a_calculation_that_raises_says_so(path: Path, function: ast.FunctionDef) -> None:
    raised = {
        node.exc.func.id
        for node in ast.walk(function)
        if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call) and isinstance(node.exc.func, ast.Name)
    }
    described = NumpyDocString(ast.get_docstring(function) or "")
    said = " ".join(entry.type for entry in described["Raises"])
    assert {name for name in raised if name not in said} == set()


@pytest.mark.parametrize("path", FILES, ids=name_of)
def test_every_module_says_what_it_is(path: Path) -> None:
    assert ast.get_docstring(parsed(path))
