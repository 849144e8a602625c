"""The JSON Schema of a project file, for completion and checking in an editor; nothing comes in but the definitions."""

from __future__ import annotations

from typing import Any

from generator.definitions.project import Project
from generator.definitions.readers import Parts

DIALECT = "https://json-schema.org/draft/2020-12/schema"


def project_schema() -> dict[str, Any]:
    """Return the JSON Schema of a project file, draft 2020-12: keys with spaces, lists as text or as lists.

    It says what an editor can help with; that lengths fit each other, only reading the file can tell.
    """
    parts: Parts = {}
    keys = Project.keys_schema(parts)
    return {"$schema": DIALECT, "title": "A project file", **keys, "$defs": dict(sorted(parts.items()))}
