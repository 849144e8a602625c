"""What a sum gives back cannot be changed afterwards, and has no room for a misspelt attribute."""

from __future__ import annotations

import dataclasses
import importlib
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
MODULES = sorted(
    ".".join(path.relative_to(ROOT).with_suffix("").parts)
    for path in (ROOT / "generator" / "calculation").rglob("*.py")
    if "@dataclass" in path.read_text(encoding="utf-8")
)


@pytest.mark.parametrize("name", MODULES)
def test_every_result_is_frozen_and_holds_what_it_names(name: str) -> None:
    module = importlib.import_module(name)
    results = [
        thing
        for thing in vars(module).values()
        if isinstance(thing, type) and dataclasses.is_dataclass(thing) and thing.__module__ == name
    ]
    assert results
    assert [one.__name__ for one in results if not one.__dataclass_params__.frozen] == []
    assert [one.__name__ for one in results if "__slots__" not in vars(one)] == []
