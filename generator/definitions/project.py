"""A project file: its path comes in, a checked and frozen Project goes out, or every fault of the file at once."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Annotated, Any, ClassVar, Self

from pydantic import Field, GetCoreSchemaHandler
from pydantic.json_schema import SkipJsonSchema
from pydantic_core import CoreSchema, core_schema

from generator.definitions.closures import Closure, Meeting
from generator.definitions.cloths import Cloth, Supply
from generator.definitions.fields import Day, Label, Markdown, choice, choices, length, reading_of
from generator.definitions.keyed import Items, Keyed, Located, NamedGroups, named
from generator.definitions.measures import MeasuresOf
from generator.definitions.nodes import Group, Node
from generator.definitions.own_size import own_size
from generator.definitions.pieces.kinds import PIECES, Piece
from generator.definitions.project_checks import check_project
from generator.definitions.project_names import prepared
from generator.definitions.room import Room
from generator.definitions.sizes import Size, SizesOf
from generator.definitions.steps import Step
from generator.definitions.values import Formula
from generator.definitions.vocabulary import CAUTIONS, EDITION_NAMES, KINDS, LEVELS
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError, Finding, Place
from generator.lengths import INCH, Edition


class _PiecesOf:
    """The pieces field: each piece is read as its kind says, so that its faults are about that kind."""

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.with_info_plain_validator_function(self._read, json_schema_input_schema=handler(source))

    def _read(self, found: Node, info: core_schema.ValidationInfo) -> dict[str, Any]:
        reading = reading_of(info)
        read = {
            name: PIECES[kind.word].read(node, reading)
            for name, node in named(found, info).items()
            if (kind := reading.kinds.get(name)) is not None
        }
        return {name: piece for name, piece in read.items() if piece is not None}


class Change(Located):
    """What a correction was about; which numbers changed is worked out."""

    day: Day
    text: Markdown


class Project(Keyed):
    """One project as its file says it, in every size and edition.

    ``name`` is the file's name without its ending; ``findings`` are the warnings and notes of the reading.
    """

    inner: ClassVar[frozenset[str]] = frozenset({"name", "path", "findings"})
    title: Label
    kind: Annotated[str, choice(KINDS, "kind of project")]
    level: Annotated[str, choice(LEVELS, "level")] = "some practice"
    summary: Markdown
    editions: Annotated[tuple[str, ...], choices(EDITION_NAMES, "edition")] = ()
    seam: Annotated[Formula, length("seam")] | None = None
    cautions: Annotated[tuple[str, ...], choices(CAUTIONS, "caution")] = ()
    sizes: Annotated[Mapping[str, Size], SizesOf()]
    measures: Annotated[Mapping[str, Formula], MeasuresOf()] = Field(default_factory=dict)
    cloths: NamedGroups[Cloth]
    pieces: Annotated[dict[str, Piece], _PiecesOf()]
    edges_that_meet: Items[Meeting] = ()
    closures: Items[Closure] = ()
    supplies: Items[Supply] = ()
    steps: Items[Step] = ()
    changes: Items[Change] = ()
    name: SkipJsonSchema[str] = ""
    path: SkipJsonSchema[Path] = Path()
    findings: SkipJsonSchema[tuple[Finding, ...]] = Field(default=())

    def with_size(self, name: str, values: Mapping[str, str], edition: Edition = INCH) -> Self:
        """Return the project with one more size; bare numbers take the unit of the edition.

        Raises
        ------
        FaultyFileError
            If a value cannot be read, or the names are not those of the other sizes.
        """
        return self.model_copy(update={"sizes": {**self.sizes, name: own_size(self.sizes, name, values, edition)}})


def load_project(path: Path, room: Room | None = None, root: Path | None = None) -> Project:
    """Return the project of a file.

    Parameters
    ----------
    path : Path
        The project file.
    room : Room, optional
        What the room sets for all projects; without it the defaults.
    root : Path, optional
        The folder of the room: files are shown relative to it, and its own techniques are standard steps too.

    Returns
    -------
    Project
        With the warnings and notes of the reading in ``findings``.

    Raises
    ------
    FaultyFileError
        With every fault at once, each once: what depends on a broken value stays silent.
    """
    shown = shown_path(path, root)
    if not path.name.isprintable():
        told = "the name of the file holds a character that cannot be shown; use small letters, digits and hyphens"
        raise FaultyFileError([Finding("error", told, Place(shown))])
    tree = read_yaml(path, shown, root)
    if not isinstance(tree, Group):
        told = "a project file is a group of keys: title, kind, sizes ..."
        raise FaultyFileError([Finding("error", told, Place(shown))])
    room = room or Room()
    reading = prepared(tree, room, root)
    project = Project.read(tree, reading)
    if project is not None:
        check_project(project.pieces, project.cloths, project.steps, reading)
    reading.faults.stop()
    if project is None:
        raise AssertionError("a file without errors gives a project")
    update = {
        "name": path.stem,
        "path": path,
        "findings": reading.faults.findings,
        "editions": project.editions or room.editions,
    }
    return project.model_copy(update=update)
