"""Which pages of the room there are: keys of inputs and cards come in, tasks go out, each with its key."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from generator.publishing.inputs import Inputs, key_of
from generator.publishing.jobs import Job
from generator.publishing.page_jobs import ClassesJob, ClassJob, CorrectionsJob, GuidesJob, HomeJob, WordsJob
from generator.publishing.plan import (
    CLASSES_ENTRY,
    CORRECTIONS_ENTRY,
    GUIDES_ENTRY,
    SITE_ENTRY,
    class_entry,
    words_entry,
)
from generator.publishing.room_files import class_files, page_files, page_title, project_of_class

Card = Mapping[str, Any]


@dataclass(frozen=True, slots=True)
class Task:
    """A job whose outcome gets an entry of a name in the manifest, with the key of what it says."""

    name: str
    content: str
    job: Job


def words_tasks(room: Path, inputs: Inputs, out: Path) -> list[Task]:
    """Return the pages of words and the list that leads to them, which knows no more of them than their titles."""
    titles = {name: page_title(path) for name, path in page_files(room).items()}
    pages = [Task(words_entry(name), key_of(inputs.inside, inputs.pages[name]), WordsJob(name, out)) for name in titles]
    return [*pages, Task(GUIDES_ENTRY, key_of(inputs.inside, written(titles)), GuidesJob(titles, out))]


def class_tasks(room: Path, inputs: Inputs, out: Path) -> list[Task]:
    """Return the pages of classes, each from its file and that of its project."""
    return [
        Task(class_entry(name), _key_of_class(name, path, inputs), ClassJob(name, out))
        for name, path in class_files(room).items()
    ]


def _key_of_class(name: str, path: Path, inputs: Inputs) -> str:
    """The key of everything that a class is worked from; where its project cannot be told at once, that is any."""
    project = project_of_class(path)
    projects = {project: inputs.projects[project]} if project in inputs.projects else inputs.projects
    return key_of(inputs.inside, inputs.classes[name], written(projects))


def classes_task(inputs: Inputs, cards: Sequence[Card], out: Path) -> Task:
    """Return the list of classes."""
    return Task(CLASSES_ENTRY, key_of(inputs.inside, written(cards)), ClassesJob(tuple(cards), out))


def corrections_task(inputs: Inputs, cards: Sequence[Card], pending: Mapping[str, str], out: Path) -> Task:
    """Return the page of corrections; ``pending`` are the texts of the kept editions that this run will write."""
    kept = inputs.editions
    told = {card["project"]: card for card in cards if card["project"] in kept}
    titles = {project: card["title"] for project, card in told.items()}
    drafts = {project: card["standing"]["numbers"] for project, card in told.items() if card["standing"]["numbers"]}
    about = {project: card["standing"]["about"] for project, card in told.items() if card["standing"]["about"]}
    content = key_of(inputs.inside, *map(written, (kept, titles, drafts, about)))
    return Task(CORRECTIONS_ENTRY, content, CorrectionsJob(tuple(kept), titles, drafts, about, pending, out))


def home_task(inputs: Inputs, cards: Sequence[Card], sheets: Sequence[Card], pages: Sequence[str], out: Path) -> Task:
    """Return the home page with all files that pages share; ``pages`` are the paths of all others."""
    content = key_of(inputs.common, written(cards), written(sheets), *pages)
    return Task(SITE_ENTRY, content, HomeJob(tuple(cards), sheets, tuple(pages), out))


def written(told: object) -> str:
    """Plain values as one text, the same in every run."""
    return json.dumps(told, sort_keys=True, ensure_ascii=False)
