"""A class: its file comes in, who makes which size on which days goes out, checked against the project."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import field, replace
from datetime import time
from pathlib import Path
from typing import Annotated

from generator.definitions.faults import Fault, meant
from generator.definitions.fields import VALUE, Day, Fact, Label, Markdown, Minutes, Whole, WordList, YesNo
from generator.definitions.keyed import Items, Keyed, Located, NamedGroups
from generator.definitions.nodes import Group, Scalar, fold
from generator.definitions.own_size import own_size
from generator.definitions.project import Project
from generator.definitions.readers import Leaf, LeafGroup, choice
from generator.definitions.reading import Reading, filled_words
from generator.definitions.sizes import Size
from generator.definitions.vocabulary import EDITION_NAMES, PAPERS
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError, Finding, Place
from generator.lengths import EDITIONS
from generator.limits import MOST_PLACES

_MEASURED = ("size", "with")
EDITION: Leaf = choice(EDITION_NAMES, "edition")


def _clock(words: Scalar, reading: Reading) -> time:
    found = re.fullmatch(r"\s*(\d{1,2}):(\d{2})\s*", filled_words(words), re.ASCII)
    if found is None or int(found[1]) > 23 or int(found[2]) > 59:
        raise Fault(f"'{words.text.strip()}' is no time of day; write for example 9:30 or 13:00")
    return time(int(found[1]), int(found[2]))


def _whole(words: Scalar, reading: Reading) -> int:
    if not re.fullmatch(r"\s*\d{1,3}\s*", filled_words(words), re.ASCII):
        raise Fault(f"'{words.text.strip()}' is no number of kits")
    return int(words.text)


def _written(words: Scalar, reading: Reading) -> Scalar:
    """Return words that only their project can read."""
    filled_words(words)
    return words


Clock = Annotated[time, Leaf(_clock, {"type": "string"})]


class Session(Located):
    """One meeting of the class; ``breaks`` are minutes."""

    day: Day
    starts: Clock
    ends: Clock
    breaks: Minutes = 0


class Seat(Located):
    """So many students with one size; an empty edition is that of the class.

    ``with_`` are measures of one's own, by name, in place of a size; then ``size`` says them in words.
    """

    size: Label = ""
    with_: Annotated[Mapping[str, Scalar], LeafGroup(Leaf(_written, VALUE))] = field(default_factory=dict)
    number: Whole = 1
    edition: Annotated[str, EDITION] = ""
    student: WordList = ()
    own_cloth: YesNo = False

    @classmethod
    def check_keys(cls, found: Group, reading: Reading) -> None:
        """Hold that a place has a size or measures of its own."""
        given = [key for key in _MEASURED if key in found.entries]
        if not given:
            reading.faults.add(found.place, "'size' is missing here; a place has a 'size', or its own measures 'with'")
        elif len(given) > 1:
            told = "'with' does not go with 'size'; take one of the two out"
            reading.faults.add(found.entries["with"][0].place, told)


class ClassCloth(Located):
    """A cloth that the class has in another width than the project says."""

    width: Fact


class ClassPlan(Keyed):
    """A class of one project; ``name`` is the file's name without its ending.

    ``fee`` is what it costs without the kit; ``changed`` is when its days or hours were last changed.
    ``own_sizes`` are those of places with measures of their own, known where the class was read with its project.
    """

    title: Label
    project: Label
    edition: Annotated[str, EDITION]
    paper: Annotated[str, choice(PAPERS, "paper")]
    note: Markdown | None = None
    sessions: Items[Session]
    places: Items[Seat]
    spare_kits: Annotated[Mapping[str, int], LeafGroup(Leaf(_whole, VALUE))] = field(default_factory=dict)
    cut_beforehand: WordList = ()
    bring: WordList = ()
    fee: Label = ""
    changed: Day | None = None
    cloths: NamedGroups[ClassCloth] = field(default_factory=dict)
    name: str = ""
    path: Path = Path()
    findings: tuple[Finding, ...] = ()
    own_sizes: tuple[Size, ...] = ()


def load_class(path: Path, project: Project | None = None, root: Path | None = None) -> ClassPlan:
    """Return the class of a file.

    Parameters
    ----------
    path : Path
        The class file.
    project : Project, optional
        Its project; with it sizes, pieces and cloths are checked too.
    root : Path, optional
        The folder of the room, for messages.

    Returns
    -------
    ClassPlan
        With the notes of the reading in ``findings``; with its project, places with measures of their own have a size.

    Raises
    ------
    FaultyFileError
        With every fault at once.
    """
    shown = shown_path(path, root)
    tree = read_yaml(path, shown, root)
    if not isinstance(tree, Group):
        told = "a class file is a group of keys: title, project, sessions, places ..."
        raise FaultyFileError([Finding("error", told, Place(shown))])
    reading = Reading()
    plan = ClassPlan.read(tree, reading)
    if plan is not None:
        _check(plan, reading)
        if project is not None:
            plan = _measured(plan, project, reading)
            _check_project(plan, project, tree, reading)
    reading.faults.stop()
    if plan is None:
        raise AssertionError("a file without errors gives a class")
    return replace(plan, name=path.stem, path=path, findings=reading.faults.findings)


def _check(plan: ClassPlan, reading: Reading) -> None:
    places = sum(seat.number for seat in plan.places) + sum(plan.spare_kits.values())
    if places > MOST_PLACES:
        told = f"{places} places and spare kits; a class has {MOST_PLACES} at most, so divide it into several classes"
        reading.faults.add(plan.places[0].place, told)
    for session in plan.sessions:
        if session.ends <= session.starts:
            reading.faults.add(session.place, "this session ends before it starts")
    for seat in plan.places:
        if seat.number == 0:
            reading.faults.add(seat.place, "no places are given here; write 1 or more, or take the entry out")
        elif len(seat.student) > seat.number:
            told = f"{len(seat.student)} students are named for {seat.number} places; raise 'number'"
            reading.faults.add(seat.place, told)
    if any(seat.edition not in ("", plan.edition) for seat in plan.places):
        reading.faults.add(plan.places[0].place, "inch and metric sheets are mixed in this class: say so", "note")


def _measured(plan: ClassPlan, project: Project, reading: Reading) -> ClassPlan:
    """Return the class with a size for every place that has measures of its own."""
    places, own = [], {}
    for seat in plan.places:
        size = _own_size(seat, plan, project, reading) if seat.with_ else None
        if size is not None:
            own[size.label] = size
            seat = replace(seat, size=size.label)
        places.append(seat)
    return replace(plan, places=tuple(places), own_sizes=tuple(own.values()))


def _own_size(seat: Seat, plan: ClassPlan, project: Project, reading: Reading) -> Size | None:
    places = {"": seat.place, **{name: words.place for name, words in seat.with_.items()}}
    values = {name: words.text for name, words in seat.with_.items()}
    try:
        return own_size(project.sizes, values, EDITIONS[seat.edition or plan.edition], places)
    except FaultyFileError as fault:
        reading.faults.extend(fault.findings)
        return None


def _check_project(plan: ClassPlan, project: Project, tree: Group, reading: Reading) -> None:
    """Report sizes, pieces and cloths that the project does not have."""
    for seat in plan.places:
        if not seat.with_:
            _known(seat.size, "size", project.sizes, seat.place, reading)
        edition = seat.edition or plan.edition
        if edition not in project.editions:
            reading.faults.add(seat.place, f"the project '{project.name}' has no {edition} edition")
    for size in plan.spare_kits:
        names = {fold(name): name for name in project.sizes}
        _known(size, "size", names, _place(tree, "spare kits"), reading)
    for piece in plan.cut_beforehand:
        _known(fold(piece), "piece", project.pieces, _place(tree, "cut beforehand"), reading)
    cloths = tree.get("cloths")
    for cloth, (key, _) in cloths.entries.items() if isinstance(cloths, Group) else ():
        _known(cloth, "cloth", project.cloths, key.place, reading)


def _place(tree: Group, key: str) -> Place:
    return tree.entries[key][1].place


def _known(name: str, sort: str, known: Mapping[str, object], place: Place, reading: Reading) -> None:
    if name not in known:
        reading.faults.add(place, f"the project has no {sort} '{name}'{meant(name, known)}")
