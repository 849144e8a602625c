"""The stages import one way, and each outside library lives in its own stage."""

from __future__ import annotations

import ast
from graphlib import TopologicalSorter
from pathlib import Path

import pytest
from source import CALCULATION, FILES, ROOT, name_of, parsed

STAGES = (
    "errors",
    "lengths",
    "limits",
    "listed",
    "definitions",
    "calculation",
    "drawing",
    "rendering",
    "publishing",
    "viewing",
    "commands",
    "cli",
    "__main__",
)
HOME_OF_LIBRARY = {
    "yaml": {"definitions"},
    "tinycss2": {"definitions"},
    "fontTools": {"rendering"},
    "matplotlib": {"drawing"},
    "numpy": {"drawing"},
    "PIL": {"drawing"},
    "jinja2": {"rendering"},
    "markupsafe": {"rendering"},
    "markdown_it": {"rendering"},
    "weasyprint": {"rendering"},
    "pydyf": {"rendering"},
    "pypdf": {"rendering"},
    "segno": {"rendering"},
    "watchfiles": {"publishing", "commands"},
    "click": {"commands", "cli"},
    "rich": {"commands", "cli"},
}
# Libraries that look at the machine when they are loaded are loaded in one place, away from it.
ONLY_IN = {"matplotlib": "generator/drawing/plotting.py", "weasyprint": "generator/rendering/setter.py"}
# The command line loads a command's module when it is called, so that --help stays quick.
MAY_IMPORT_BY_NAME = {"generator/cli.py"}


def stage(module: str) -> str:
    parts = module.split(".")
    return parts[1] if len(parts) > 1 else parts[0]


def module_of(path: Path) -> str:
    return ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")


def part(module: str) -> str:
    """The folder inside a stage in which a module lies, or the module itself where it lies in none."""
    return ".".join(module.split(".")[:3])


def imports(path: Path) -> list[tuple[int, str]]:
    """Every imported module with its line, also inside functions."""
    found = []
    for node in ast.walk(parsed(path)):
        if isinstance(node, ast.Import):
            found += [(node.lineno, name.name) for name in node.names]
        elif isinstance(node, ast.ImportFrom):
            assert node.level == 0, f"{path}:{node.lineno}: write the whole module name"
            found.append((node.lineno, node.module or ""))
    return found


def test_imports_run_from_left_to_right() -> None:
    wrong = [
        f"{name_of(path)}:{line} imports {module}"
        for path in FILES
        if module_of(path) != "generator"
        for line, module in imports(path)
        if module.startswith("generator.") and STAGES.index(stage(module)) > STAGES.index(stage(module_of(path)))
    ]
    assert wrong == []


def test_libraries_stay_in_their_stage() -> None:
    wrong = [
        f"{name_of(path)}:{line} imports {module}"
        for path in FILES
        for line, module in imports(path)
        if stage(module_of(path)) not in HOME_OF_LIBRARY.get(module.split(".")[0], {stage(module_of(path))})
    ]
    assert wrong == []


@pytest.mark.parametrize("library", ONLY_IN)
def test_a_library_that_looks_at_the_machine_is_loaded_in_one_place(library: str) -> None:
    found = {
        str(path.relative_to(ROOT)) for path in FILES for _, module in imports(path) if module.split(".")[0] == library
    }
    assert found == {ONLY_IN[library]}


def test_formula_files_know_nothing_of_project_files() -> None:
    wrong = [
        f"{name_of(path)}:{line} imports {module}"
        for path in FILES
        if path.is_relative_to(CALCULATION) and not path.is_relative_to(CALCULATION / "worksheet")
        for line, module in imports(path)
        if module.startswith(("generator.definitions", "generator.calculation.worksheet"))
    ]
    assert wrong == []


def test_no_import_hides_inside_a_function() -> None:
    hidden = []
    for path in FILES:
        if name_of(path) in MAY_IMPORT_BY_NAME:
            continue
        for node in ast.walk(parsed(path)):
            if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
                hidden += [
                    f"{name_of(path)}:{inner.lineno}"
                    for inner in ast.walk(node)
                    if isinstance(inner, ast.Import | ast.ImportFrom)
                ]
    assert hidden == []


def test_the_parts_of_a_stage_form_no_circle() -> None:
    # A file that lies beside the folders of its stage is a part by itself.
    below: dict[str, set[str]] = {}
    for path in FILES:
        own = part(module_of(path))
        ours = {part(module) for _, module in imports(path) if module.startswith("generator.")}
        below.setdefault(own, set()).update(ours - {own})
    order = list(TopologicalSorter(below).static_order())  # stops at a circle, and names it
    assert order.index("generator.lengths") < order.index("generator.definitions.project")
