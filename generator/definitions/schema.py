"""The JSON Schema of a project file, for completion and checking in an editor; nothing comes in but the definitions."""

from __future__ import annotations

from typing import Any

from generator.definitions.pieces.kinds import PIECES
from generator.definitions.project import Project

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def project_schema() -> dict[str, Any]:
    """Return the JSON Schema of a project file: keys with spaces, lists as text or as lists.

    It says what an editor can help with; that lengths fit each other, only reading the file can tell.

    Returns
    -------
    dict
        Draft 2020-12; every piece is checked by the keys of its kind.
    """
    schema = Project.model_json_schema(by_alias=True, mode="validation")
    schema["$schema"] = DIALECT
    schema["title"] = "A project file"
    parts = schema["$defs"]
    for model in PIECES.values():
        parts[model.__name__]["properties"] |= model.schema_keys()
    _tidy(schema)
    schema["properties"]["pieces"] = {
        "type": "object",
        "description": "The pieces, each with a name, a kind and its finished size.",
        "additionalProperties": {"$ref": "#/$defs/AnyPiece"},
    }
    parts["AnyPiece"] = _any_piece()
    return schema


def _any_piece() -> dict[str, Any]:
    """A piece whose kind decides which keys it may have, so that an editor tells the one key that is wrong."""
    cases = [
        {
            "if": {"properties": {"kind": {"const": kind}}},
            "then": {"$ref": f"#/$defs/{model.__name__}"},
        }
        for kind, model in PIECES.items()
    ]
    return {
        "type": "object",
        "required": ["kind"],
        "properties": {"kind": {"enum": list(PIECES)}},
        "allOf": cases,
    }


def _tidy(part: Any) -> None:
    """Take out what tells an editor nothing: titles that repeat the keys, nulls, defaults that are no text."""
    if isinstance(part, list):
        for value in part:
            _tidy(value)
    if not isinstance(part, dict):
        return
    for inner in part.get("properties", {}).values():
        inner.pop("title", None)
        if not isinstance(inner.get("default", ""), str):
            del inner["default"]
        choices = [choice for choice in inner.get("anyOf", []) if choice != {"type": "null"}]
        if len(choices) == 1:
            del inner["anyOf"]
            inner.update(choices[0])
        elif choices:
            inner["anyOf"] = choices
    for value in list(part.values()):
        _tidy(value)
