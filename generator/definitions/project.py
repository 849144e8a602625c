"""A project file: its path comes in, a checked and frozen Project goes out, or every fault of the file at once."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import field, replace
from pathlib import Path
from typing import Annotated, ClassVar, Self

from generator.definitions.between import Between, check_between
from generator.definitions.body_table import SizesFrom, with_body_table
from generator.definitions.caution_rule import Asked, AskedCautions, asked_names, own_cautions
from generator.definitions.closures import Closure, Meeting
from generator.definitions.cloths import Cloth, Supply
from generator.definitions.completed import completed
from generator.definitions.cords import check_cords, check_neck
from generator.definitions.embroidery import Embroidery
from generator.definitions.faults import Faults
from generator.definitions.fields import LABEL, Day, FinishedSize, Label, Length, Markdown, length
from generator.definitions.keyed import Items, Keyed, Located, NamedGroups
from generator.definitions.measures import MeasuresOf
from generator.definitions.nodes import Group
from generator.definitions.pieces.kinds import Piece, PiecesOf
from generator.definitions.project_checks import check_cautions, check_project
from generator.definitions.project_names import prepared
from generator.definitions.readers import LeafGroup, choice, choices
from generator.definitions.room import Room
from generator.definitions.series import check_series, with_series
from generator.definitions.sizes import Size, SizesOf
from generator.definitions.steps import Step
from generator.definitions.thread_work import THREAD_WORK
from generator.definitions.values import Formula
from generator.definitions.vocabulary import EDITION_NAMES, KINDS, LEVELS
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError, Finding, Place


class Change(Located):
    """What a correction was about; which numbers changed is worked out."""

    day: Day
    text: Markdown


class MeasuredBy(Located):
    """By which measure a size is chosen: a length, what it is called, and how it is taken."""

    shown: Length
    called: Label = ""
    how: Label = ""


class Project(Keyed):
    """One project as its file says it, in every size and edition.

    ``name`` is the file's name without its ending; ``findings`` are the warnings and notes of the reading.
    """

    completed: ClassVar = ("summary", "sizes")
    title: Label
    kind: Annotated[str, choice(KINDS, "kind of project")]
    level: Annotated[str, choice(LEVELS, "level")] = "some practice"
    summary: Markdown
    editions: Annotated[tuple[str, ...], choices(EDITION_NAMES, "edition")] = ()
    seam: Annotated[Formula, length("seam")] | None = None
    finished_size: FinishedSize = ()
    measured_by: MeasuredBy | None = None
    between: Between | None = None
    cautions: Annotated[tuple[Asked, ...], AskedCautions()] = ()
    sizes_from: SizesFrom | None = None
    sizes: Annotated[Mapping[str, Size], SizesOf()]
    measures: Annotated[Mapping[str, Formula], MeasuresOf()] = field(default_factory=dict)
    cloths: NamedGroups[Cloth]
    pieces: Annotated[dict[str, Piece], PiecesOf()]
    edges_that_meet: Items[Meeting] = ()
    closures: Items[Closure] = ()
    embroidery: Items[Embroidery] = ()
    supplies: Items[Supply] = ()
    thread: Annotated[Mapping[str, str], LeafGroup(LABEL, tuple(THREAD_WORK))] = field(default_factory=dict)
    steps: Items[Step] = ()
    changes: Items[Change] = ()
    name: str = ""
    path: Path = Path()
    findings: tuple[Finding, ...] = ()

    def with_sizes(self, sizes: Iterable[Size]) -> Self:
        """Return the project with more sizes, each under its label."""
        return replace(self, sizes={**self.sizes, **{size.label: size for size in sizes}})


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
    faults = Faults()
    tree, of_bodies = with_body_table(tree, faults, root)
    tree, in_series = with_series(tree, faults)
    tree, completions = completed(tree)
    reading = prepared(tree, room, root, faults)
    for one in completions:
        reading.faults.add(one.place, one.told, "note")
    project = Project.read(tree, reading)
    if project is not None:
        check_project(project.pieces, project.cloths, project.steps, reading)
        if in_series or of_bodies:
            check_series(project.sizes, reading)
        check_between(project.between, project.sizes, reading)
        asked = (project.cautions, *(step.cautions for step in project.steps))
        check_cords(project.pieces, project.supplies, asked_names(project.cautions), reading)
        check_neck(project.closures, asked_names(project.cautions), reading)
        check_cautions([one for each in asked for one in own_cautions(each)], reading)
    reading.faults.stop()
    if project is None:
        raise AssertionError("a file without errors gives a project")
    editions = project.editions or room.editions
    return replace(project, name=path.stem, path=path, findings=reading.faults.findings, editions=editions)
