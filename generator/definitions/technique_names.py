"""The standard steps by name: folders come in, the names of the techniques in them go out, unread."""

from __future__ import annotations

from pathlib import Path

from generator.definitions.nodes import fold

TECHNIQUES = Path(__file__).parent / "techniques"


def technique_folders(root: Path | None) -> tuple[Path, ...]:
    """Return the folders of techniques: the tool's own, then the room's, which replaces what it names itself."""
    return (TECHNIQUES, root / "site" / "techniques") if root else (TECHNIQUES,)


def step_names(root: Path | None) -> frozenset[str]:
    """Return the names of all standard steps that a room can use."""
    return frozenset(fold(path.stem) for folder in technique_folders(root) for path in folder.glob("*.yaml"))
