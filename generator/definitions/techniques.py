"""Techniques, the texts of the standard steps: folders come in, checked and frozen techniques by name go out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path
from typing import Annotated, Literal

from generator.definitions.faults import Faults
from generator.definitions.fields import Label, Markdown, YesNo
from generator.definitions.keyed import Items, Keyed
from generator.definitions.making_words import FOR, NEEDS, NOTHING, SORTS
from generator.definitions.names import Names
from generator.definitions.nodes import Group, fold
from generator.definitions.pieces.kinds import PIECES
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.readers import choice, choices
from generator.definitions.reading import Reading
from generator.definitions.states import states
from generator.definitions.technique_names import TECHNIQUES
from generator.definitions.technique_words import ASSEMBLIES, FIGURES, WORK, report_brackets
from generator.definitions.values import Text
from generator.definitions.vocabulary import CONDITIONS, MEDIA, TOOLS
from generator.definitions.yaml_text import read_yaml, shown_path
from generator.errors import FaultyFileError, Finding, Place

About = Literal["panel", "piece", "project"]
_ABOUT: tuple[About, ...] = ("panel", "piece", "project")
_FIGURES = (*FIGURES, *(f"assembly {way}" for way in ASSEMBLIES))
_CONDITIONS = (*MEDIA, *CONDITIONS, *(f"not {condition}" for condition in CONDITIONS))


@dataclass(frozen=True, slots=True)
class TechniquePart:
    """A text that is told where all its conditions hold, and the tools that it needs beside those of its technique."""

    when: tuple[str, ...]
    say: Text
    tools: tuple[str, ...] = ()

    @property
    def conditions(self) -> tuple[str, ...]:
        """What must hold for the pieces."""
        return tuple(condition for condition in self.when if condition not in MEDIA)

    def told_on(self, medium: str) -> bool:
        """Return whether it is told on a medium; one that names none is told everywhere."""
        named = [condition for condition in self.when if condition in MEDIA]
        return not named or medium in named


@dataclass(frozen=True, slots=True)
class Head:
    """What a technique does to the thing: it gives states to what it is ``kinds`` of piece for, or sews sorts of seam.

    ``needs`` are states or needs beyond the natural order, ``before`` states that must not have been given yet.
    ``keeps`` tells whether the work can be laid aside after it.
    """

    kinds: tuple[str, ...] = ()
    sews: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    gives: tuple[str, ...] = ()
    before: tuple[str, ...] = ()
    keeps: bool = True


@dataclass(frozen=True, slots=True)
class Technique:
    """A standard step: what it is done to, with which tools, what it shows, which rates of work it counts.

    A technique whose ``head`` gives nothing may do anything to its pieces.
    """

    name: str
    title: str
    tools: tuple[str, ...]
    figures: tuple[str, ...]
    work: tuple[str, ...]
    about: About
    parts: tuple[TechniquePart, ...]
    head: Head = Head()


class _Part(Keyed):
    when: Annotated[tuple[str, ...], choices(_CONDITIONS, "condition")] = ()
    uses: Annotated[tuple[str, ...], choices(TOOLS, "tool")] = ()
    say: Markdown


class _TechniqueFile(Keyed):
    title: Label
    about: Annotated[About, choice(_ABOUT, "thing that a technique is about")]
    for_: Annotated[tuple[str, ...], choices((*PIECES, *FOR), "thing that a technique is for")] = ()
    sews: Annotated[tuple[str, ...], choices(SORTS, "sort of seam")] = ()
    needs: Annotated[tuple[str, ...], choices((*NEEDS, *states()), "need")] = ()
    gives: Annotated[tuple[str, ...], choices((NOTHING, *states()), "state")] = ()
    before: Annotated[tuple[str, ...], choices(states(), "state")] = ()
    keeps: YesNo = True
    uses: Annotated[tuple[str, ...], choices(TOOLS, "tool")] = ()
    figures: Annotated[tuple[str, ...], choices(_FIGURES, "picture", may_be_empty=True)] = ()
    work: Annotated[tuple[str, ...], choices(WORK, "work that is counted", may_be_empty=True)] = ()
    text: Items[_Part]


def load_techniques(folders: Sequence[Path], root: Path | None = None) -> dict[str, Technique]:
    """Return the techniques of all folders by name; a later folder replaces what an earlier one has.

    One that says nothing of what it gives does what the technique does whose place it takes.

    Parameters
    ----------
    folders : sequence of Path
        Folders of ``NAME.yaml`` files, the tool's own first; one that is not there holds nothing.
    root : Path, optional
        The folder that files are shown relative to in messages.

    Returns
    -------
    dict of str to Technique
        By name, with spaces.

    Raises
    ------
    FaultyFileError
        With the faults of all files at once.
    """
    findings: list[Finding] = []
    techniques: dict[str, Technique] = {}
    for folder in folders:
        for path in sorted(folder.glob("*.yaml")):
            try:
                technique = _own(path) if folder == TECHNIQUES else _technique(path, shown_path(path, root), own=False)
                own = techniques.get(technique.name)
                if own is not None and not technique.head.gives:
                    technique = replace(technique, head=own.head)
                techniques[technique.name] = technique
            except FaultyFileError as error:
                findings += error.findings
    if findings:
        raise FaultyFileError(findings)
    return techniques


@cache
def _own(path: Path) -> Technique:
    """Return one of the tool's own techniques, which are read once: they change with the tool only."""
    return _technique(path, path.name, own=True)


def _technique(path: Path, shown: str, *, own: bool) -> Technique:
    """Return the technique of a file; a test holds the words in brackets of the tool's ``own``."""
    tree = read_yaml(path, shown)
    if not isinstance(tree, Group):
        told = "a technique is a group of keys: title, about, text ..."
        raise FaultyFileError([Finding("error", told, Place(shown))])
    reading = Reading(faults=Faults(), names=_names(tree))
    found = _TechniqueFile.read(tree, reading)
    if not own:
        report_brackets(tree, reading)
    reading.faults.stop()
    if found is None:
        raise AssertionError("a file without errors gives a technique")
    parts = tuple(TechniquePart(part.when, part.say, part.uses) for part in found.text)
    head = Head(found.for_, found.sews, found.needs, found.gives, found.before, found.keeps)
    return Technique(fold(path.stem), found.title, found.uses, found.figures, found.work, found.about, parts, head)


def _names(tree: Group) -> Names:
    """Return what placeholders may name: the measures of the piece that the step is on, of whatever kind."""
    about = getattr(tree.get("about"), "text", "")
    if about == "project":
        return Names(none="a technique about the whole project has no piece to be asked")
    models = [TuckedPanel] if about == "panel" else list(PIECES.values())
    known = {name: sort for model in models for name, sort in model.of_kind.dimensions.items()}
    return Names(
        none="a technique knows the measures of its piece only, for example piece.across", pieces={"piece": known}
    )
