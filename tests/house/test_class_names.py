"""One word, one idea: no two classes share a name, and the words of sewing name only what is sewn."""

from __future__ import annotations

import ast
import re
from collections import defaultdict
from pathlib import Path

from source import FILES, ROOT, name_of, parsed
from test_imports import imports, module_of, stage

GLOSSARY = (ROOT / "site" / "pages" / "glossary.md").read_text(encoding="utf-8")
# A file that works with one of these is about files, pages and screens. Templates may be about sewing.
LIBRARIES = {"yaml", "matplotlib", "markdown_it", "pydyf", "watchfiles", "click", "rich"}
# Trade words that the glossary need not explain; an edition is a word of printing as well.
SEWING = {*re.findall(r"^\*\*(.+?)\*\*:", GLOSSARY, re.M), "bench", "cloth", "needle", "piece", "strip"} - {"edition"}


def classes(path: Path) -> list[str]:
    return [node.name for node in ast.walk(parsed(path)) if isinstance(node, ast.ClassDef)]


def is_software(path: Path) -> bool:
    """Whether a file is about files, programs and libraries, and not about what is sewn."""
    about = {"publishing", "commands", "cli", "errors"}
    libraries = {module.split(".")[0] for _, module in imports(path)} & LIBRARIES
    return stage(module_of(path)) in about or bool(libraries)


def sewing_words(name: str) -> set[str]:
    """The words of sewing in the name of a class: ``FoldMarks`` has 'fold mark'."""
    words = " ".join(re.findall(r"[A-Z][a-z]*", name)).lower()
    return {word for word in SEWING if re.search(rf"\b{word}(s|es)?\b", words)}


def test_no_two_classes_share_a_name() -> None:
    homes: dict[str, list[str]] = defaultdict(list)
    for path in FILES:
        for name in classes(path):
            homes[name].append(name_of(path))
    assert {name: paths for name, paths in homes.items() if len(paths) > 1} == {}


def test_words_of_sewing_are_found_in_a_name() -> None:
    names = ("FoldMarks", "CutCloth", "Pages")
    assert [sewing_words(name) for name in names] == [{"fold mark"}, {"cut", "cloth"}, set()]


def test_the_words_of_sewing_name_no_part_of_the_software() -> None:
    wrong = {
        f"{name_of(path)}: {name} uses {', '.join(sorted(words))}"
        for path in FILES
        if is_software(path)
        for name in classes(path)
        if (words := sewing_words(name))
    }
    assert wrong == set()
