"""What one stage hands to another has a type of its own: nothing is passed on as anything, or as values by name."""

from __future__ import annotations

import ast

import pytest
from source import FILES, ROOT, name_of, parsed

# Where values have no type before they are looked at: JSON, and what a template or a template's sandbox is given.
UNTYPED = {
    "generator/calculation/worksheet/edition_files.py",
    "generator/calculation/worksheet/edition_numbers.py",
    "generator/publishing/manifest.py",
    "generator/rendering/one_page.py",
    "generator/rendering/sandbox.py",
}
ANYTHING = ("Any", "Mapping[str, Any]", "dict[str, Any]")


def handed_over(tree: ast.Module) -> list[ast.arg | ast.AnnAssign]:
    """The parameters of public functions and the fields of public classes."""
    found: list[ast.arg | ast.AnnAssign] = []
    for node in tree.body:
        functions = [node]
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            found += [field for field in node.body if isinstance(field, ast.AnnAssign)]
            functions = list(node.body)
        for function in functions:
            if isinstance(function, ast.FunctionDef) and (function.name == "__init__" or function.name[0] != "_"):
                found += [*function.args.posonlyargs, *function.args.args, *function.args.kwonlyargs]
                found += [one for one in (function.args.vararg, function.args.kwarg) if one]
    return found


def anything(tree: ast.Module) -> list[str]:
    annotated = [(one.lineno, ast.unparse(one.annotation)) for one in handed_over(tree) if one.annotation]
    return [f"line {line}: {told}" for line, told in annotated if told.split(" | ")[0] in ANYTHING]


def test_nothing_is_handed_over_as_anything() -> None:
    told = {name_of(path): anything(parsed(path)) for path in FILES if name_of(path) not in UNTYPED}
    assert {name: found for name, found in told.items() if found} == {}


@pytest.mark.parametrize("name", sorted(UNTYPED))
def test_what_may_be_anything_is_still_there(name: str) -> None:
    assert anything(parsed(ROOT / name)) != []


@pytest.mark.parametrize(
    ("code", "told"),
    [
        ("def f(model: Any) -> int: ...", ["line 1: Any"]),
        ("def f(*, values: Mapping[str, Any] | None = None) -> int: ...", ["line 1: Mapping[str, Any] | None"]),
        ("class Card:\n    told: dict[str, Any]", ["line 2: dict[str, Any]"]),
        ("class Card:\n    def __init__(self, **more: Any) -> None: ...", ["line 2: Any"]),
        ("def _f(model: Any) -> int: ...", []),
        ("def f(model: Mapping[str, int]) -> Any: ...", []),
    ],
)
def test_the_test_sees_what_it_looks_for(code: str, told: list[str]) -> None:
    assert anything(ast.parse(code)) == told
