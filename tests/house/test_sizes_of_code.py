"""Files and functions stay small enough to read, and tests are all run."""

from __future__ import annotations

import ast
import re

from source import FILES, ROOT, name_of, parsed


def code_lines(function: ast.FunctionDef | ast.AsyncFunctionDef) -> int:
    first = function.body[0]
    documented = isinstance(first, ast.Expr) and isinstance(first.value, ast.Constant)
    doc = (first.end_lineno or 0) - first.lineno + 1 if documented else 0
    return (function.end_lineno or 0) - function.lineno + 1 - doc


def test_a_file_has_300_lines_at_most() -> None:
    lines = {name_of(path): len(path.read_text(encoding="utf-8").splitlines()) for path in FILES}
    assert {name: number for name, number in lines.items() if number > 300} == {}


def test_a_function_has_40_lines_of_code_at_most() -> None:
    functions = [
        (path, node)
        for path in FILES
        for node in ast.walk(parsed(path))
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef)
    ]
    assert len(functions) > 2000
    long = [f"{name_of(path)}, {node.name}: {code_lines(node)}" for path, node in functions if code_lines(node) > 40]
    assert long == []


def test_no_test_can_be_left_out() -> None:
    marks = re.compile(r"mark\.(skip|skipif|xfail)\b|importor" + "skip")
    found = [
        f"{path.relative_to(ROOT)}:{number}"
        for path in (ROOT / "tests").rglob("*.py")
        for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), 1)
        if marks.search(line)
    ]
    assert found == []
