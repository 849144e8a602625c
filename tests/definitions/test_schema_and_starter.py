"""What an editor and a beginner get: the JSON Schema, the starter, and a quick start."""

import re
import subprocess
import sys
from pathlib import Path
from typing import Any

import pytest
import yaml

from generator.definitions.project import load_project
from generator.definitions.schema import project_schema
from generator.definitions.starter import starter_text

ROOT = Path(__file__).parents[2]
DRAFTS = sorted((ROOT / "projects").glob("*.yaml"))
SCHEMA = project_schema()


class EditorLoader(yaml.SafeLoader):
    """YAML 1.2 as an editor reads it: numbers are numbers, but 'on', 'no' and days stay text."""


EditorLoader.yaml_implicit_resolvers = {
    first: [(tag, form) for tag, form in forms if tag.rsplit(":", 1)[1] in ("int", "float", "null")]
    for first, forms in yaml.SafeLoader.yaml_implicit_resolvers.items()
}


def as_an_editor(path: Path) -> Any:
    return yaml.load(path.read_text(encoding="utf-8"), Loader=EditorLoader)  # noqa: S506 - a safe loader with less


TYPES: dict[str, Any] = {
    "string": str,
    "number": (int, float),
    "integer": int,
    "boolean": bool,
    "object": dict,
    "array": list,
}


def refusals(value: Any, schema: dict[str, Any], where: str = "") -> list[str]:
    """Where a value does not keep a schema, by the rules of JSON Schema that ours uses."""
    told = _refusals_of_one(value, schema, where)
    if "$ref" in schema:
        told += refusals(value, SCHEMA["$defs"][schema["$ref"].rsplit("/", 1)[1]], where)
    if "anyOf" in schema and all(refusals(value, choice, where) for choice in schema["anyOf"]):
        told.append(f"{where} fits no choice")
    for part in schema.get("allOf", []):
        if not refusals(value, part["if"], where):
            told += refusals(value, part["then"], where)
    if isinstance(value, dict):
        told += _refusals_in_group(value, schema, where)
    if isinstance(value, list):
        for place, item in enumerate(value):
            told += refusals(item, schema.get("items", {}), f"{where}[{place}]")
    return told


def _refusals_of_one(value: Any, schema: dict[str, Any], where: str) -> list[str]:
    told: list[str] = []
    if "type" in schema:
        kinds = schema["type"] if isinstance(schema["type"], list) else [schema["type"]]
        if not isinstance(value, tuple(TYPES[kind] for kind in kinds)):
            told.append(f"{where} is no {kinds}")
    if "enum" in schema and value not in schema["enum"]:
        told.append(f"{where} is none of {schema['enum']}")
    if "const" in schema and value != schema["const"]:
        told.append(f"{where} is not {schema['const']}")
    if "pattern" in schema and isinstance(value, str) and not re.search(schema["pattern"], value):
        told.append(f"{where} does not match")
    return told


def _refusals_in_group(value: dict[str, Any], schema: dict[str, Any], where: str) -> list[str]:
    told = [f"{where} lacks {key}" for key in schema.get("required", []) if key not in value]
    if len(value) < schema.get("minProperties", 0):
        told.append(f"{where} is empty")
    if len(value) > schema.get("maxProperties", len(value)):
        told.append(f"{where} is too long")
    for key, inner in value.items():
        known = schema.get("properties", {})
        other = schema.get("additionalProperties", True)
        if key in known:
            told += refusals(inner, known[key], f"{where}.{key}")
        elif other is False:
            told.append(f"{where} has no {key}")
        elif isinstance(other, dict):
            told += refusals(inner, other, f"{where}.{key}")
    return told


@pytest.mark.parametrize("path", DRAFTS, ids=lambda path: path.stem)
def test_every_project_keeps_the_schema(path: Path) -> None:
    assert refusals(as_an_editor(path), SCHEMA) == []


def test_the_schema_refuses_what_the_reading_refuses() -> None:
    sound = as_an_editor(ROOT / "projects" / "quay-cushion.yaml")
    front = sound["pieces"]["front"]
    broken = {**sound, "pieces": {"front": {**front, "tuks": 1}, "back": {"kind": "envelop back"}}, "kind": "hat"}
    del broken["title"]
    told = refusals(broken, SCHEMA)
    assert ".pieces.front has no tuks" in told
    assert any(line.startswith(".kind is none of") for line in told)
    assert any(line.startswith(".pieces.back.kind is none of") for line in told)
    assert " lacks title" in told
    many = {f"s{number}": size for number in range(41) for size in sound["sizes"].values()}
    assert refusals({**sound, "sizes": many}, SCHEMA) == [".sizes is too long"]


def test_the_schema_has_keys_with_spaces_and_takes_text_or_lists() -> None:
    assert "edges that meet" in SCHEMA["properties"]
    assert "finished across" in SCHEMA["$defs"]["TuckedPanel"]["properties"]
    uses = SCHEMA["$defs"]["Step"]["properties"]["uses"]["anyOf"]
    assert {choice["type"] for choice in uses} == {"string", "array"}
    assert not any("_" in key for part in SCHEMA["$defs"].values() for key in part.get("properties", {}))


def test_the_schema_names_no_inner_attribute() -> None:
    assert {"name", "path", "findings"}.isdisjoint(SCHEMA["properties"])
    assert "place" not in SCHEMA["$defs"]["Cloth"]["properties"]


def test_the_starter_reads_as_it_is(tmp_path: Path) -> None:
    path = tmp_path / "my-panel.yaml"
    path.write_text(starter_text("My panel"), encoding="utf-8")
    project = load_project(path)
    assert project.title == "My panel"
    assert project.findings == ()


@pytest.mark.parametrize("title", ["Sofa: the big one", "#1", "It's mine", "'quoted'", "- dash"])
def test_the_starter_takes_any_title(tmp_path: Path, title: str) -> None:
    path = tmp_path / "my-panel.yaml"
    path.write_text(starter_text(title), encoding="utf-8")
    assert load_project(path).title == title


def test_the_parts_of_the_starter_that_are_remarks_read_too(tmp_path: Path) -> None:
    # A line with # and no space after it is an offer; its # alone is taken away.
    text, offers = re.subn(r"^( *)#(?=[^ \n])", r"\1", starter_text(), flags=re.M)
    assert offers > 50
    path = tmp_path / "my-panel.yaml"
    path.write_text(text, encoding="utf-8")
    assert [finding.text for finding in load_project(path).findings] == []


def test_reading_a_project_starts_without_drawing_and_printing() -> None:
    code = (
        "import sys, generator.definitions.project, generator.definitions.room\n"
        "print([name for name in ('matplotlib', 'weasyprint', 'jinja2', 'numpy') if name in sys.modules])"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True, cwd=ROOT)
    assert told.stdout.strip() == "[]"
