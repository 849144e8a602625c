"""Docstrings of the sums say the same as their signatures."""

from __future__ import annotations

import ast

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


def public_functions_of(tree: ast.Module) -> list[ast.FunctionDef]:
    return [node for node in tree.body if isinstance(node, ast.FunctionDef) and not node.name.startswith("_")]


def parameters(function: ast.FunctionDef) -> list[str]:
    names = [*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs]
    return [name.arg for name in names]


FUNCTIONS = [(path, function) for path in FORMULAS for function in public_functions_of(parsed(path))]


def gives_numbers(function: ast.FunctionDef) -> bool:
    """Whether numbers come out: then there is a formula, a unit or a limit to be told of."""
    return bool(NUMBERS & {node.id for node in ast.walk(function.returns or function) if isinstance(node, ast.Name)})


def lacking(function: ast.FunctionDef) -> str:
    """What the docstring of a calculation lacks."""
    text = ast.get_docstring(function) or ""
    described = NumpyDocString(text)
    named = [name.strip() for entry in described["Parameters"] for name in entry.name.split(",")]
    if named or described["Returns"] or gives_numbers(function):
        if named != parameters(function):
            return f"describes {named}, but takes {parameters(function)}"
        return "" if described["Returns"] else "says nothing of what it returns"
    return "" if text.split("\n")[0].endswith((".", ":")) else "has no sentence on its first line"


def test_a_calculation_documents_what_it_takes_and_returns() -> None:
    assert len(FUNCTIONS) > 200
    told = {f"{name_of(path)}:{function.lineno}": lacking(function) for path, function in FUNCTIONS}
    assert {place: fault for place, fault in told.items() if fault} == {}


@pytest.mark.parametrize(
    ("code", "told"),
    [
        ('def f(x: int) -> bool:\n    """Return whether x."""', ""),
        ("def f(x: int) -> bool: ...", "has no sentence on its first line"),
        ('def f(x: int) -> Fraction:\n    """Return x."""', "describes [], but takes ['x']"),
        (
            'def f(x: int) -> str:\n    """Return x.\n\n    Parameters\n    ----------\n    y : int\n    """',
            "describes ['y']",
        ),
        ('def f() -> int:\n    """Return x."""', "says nothing of what it returns"),
    ],
)
def test_what_a_docstring_lacks_is_found(code: str, told: str) -> None:
    [function] = public_functions_of(ast.parse(code))
    assert lacking(function).startswith(told)
    assert bool(lacking(function)) == bool(told)


def test_a_calculation_that_raises_says_so() -> None:
    silent = []
    for path, function in FUNCTIONS:
        raised = {
            node.exc.func.id
            for node in ast.walk(function)
            if isinstance(node, ast.Raise) and isinstance(node.exc, ast.Call) and isinstance(node.exc.func, ast.Name)
        }
        described = NumpyDocString(ast.get_docstring(function) or "")
        said = " ".join(entry.type for entry in described["Raises"])
        silent += [f"{name_of(path)}, {function.name}: {name}" for name in raised if name not in said]
    assert silent == []


def test_every_module_says_what_it_is() -> None:
    assert [name_of(path) for path in FILES if not ast.get_docstring(parsed(path))] == []
