"""Sizes worked and judged: a project comes in, each of its sizes goes out as a worksheet, or why it cannot be one.

Named sizes must all be sewn; one between them that cannot be is left out.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from generator.calculation.worked_project import Worksheet
from generator.calculation.worksheet.sheet import RoomContext, refuse_unsewable, worked_sheet
from generator.definitions.between import sizes_between
from generator.definitions.project import Project
from generator.definitions.theme import Theme
from generator.definitions.yaml_text import shown_path
from generator.errors import FaultyFileError, Finding
from generator.lengths import Edition
from generator.publishing.jobs import LeftOut
from generator.rendering.letters import letter_findings


@dataclass(frozen=True, slots=True)
class BetweenSizes:
    """The sizes between the named ones of a project: those that can be sewn, and those that are left out.

    ``findings`` are those of what can be sewn, ``reasons`` why the others cannot.
    """

    worksheets: tuple[Worksheet, ...]
    left_out: tuple[LeftOut, ...]
    findings: tuple[Finding, ...]
    reasons: tuple[Finding, ...]

    def findings_beside(self, named: Iterable[Finding]) -> Iterator[Finding]:
        """Give what is found in these sizes and in no named one; what differs in a number only is told once."""
        yield from self.reasons
        known = {_alike(finding) for finding in named}
        for finding in self.findings:
            if _alike(finding) not in known:
                known.add(_alike(finding))
                yield finding


def _alike(finding: Finding) -> tuple[object, ...]:
    return finding.level, finding.place, finding.piece, re.sub(r"[\d/. ]+", " ", finding.text)


def worked_sizes(
    project: Project, shared: RoomContext, folder: Path, theme: Theme | None
) -> Iterator[tuple[Worksheet | None, tuple[Finding, ...]]]:
    """Give every size in every edition, worked, with its findings; None where it cannot be worked or set in a theme."""
    sources = text_sources(project, folder)
    for name in project.editions:
        for size in project.sizes:
            yield judged(project, size, shared.room.edition(name), shared, theme, sources)


def text_sources(project: Project, folder: Path) -> dict[str, Path]:
    """Return the files that the words of a project come from, by how they are shown."""
    of_room = (*sorted((folder / "site" / "techniques").glob("*.yaml")), folder / "site" / "site.yaml")
    return {shown_path(path, folder): path for path in (project.path, *of_room) if path.exists()}


def judged(
    project: Project, size: str, edition: Edition, shared: RoomContext, theme: Theme | None, sources: Mapping[str, Path]
) -> tuple[Worksheet | None, tuple[Finding, ...]]:
    """Return one size worked, with its findings; None where it cannot be worked, be sewn or be set in a theme."""
    try:
        worksheet = worked_sheet(project, size, edition, shared)
        refuse_unsewable(worksheet)
    except FaultyFileError as fault:
        return None, fault.findings
    # The name of the file stands on no sheet.
    letters = letter_findings(replace(worksheet, project=""), theme, sources) if theme else []
    return None if letters else worksheet, (*worksheet.findings, *letters)


def worked_between(project: Project, shared: RoomContext, folder: Path, theme: Theme | None) -> BetweenSizes:
    """Return the sizes between the named ones, worked as ``sheet --with`` works them."""
    worksheets, left_out, found = list[Worksheet](), list[LeftOut](), list[Finding]()
    why = list[Finding]()
    sources = text_sources(project, folder)
    for name in project.editions:
        edition = shared.room.edition(name)
        for size, own in sizes_between(project.between, project.sizes, edition):
            listed = replace(project, sizes={**project.sizes, size: own})
            worksheet, findings = judged(listed, size, edition, shared, theme, sources)
            if worksheet is None:
                reasons = [finding for finding in findings if finding.level == "error"]
                left_out.append(LeftOut(size, name, reasons[0].text))
                why += [_left_out(reason, size, name) for reason in reasons]
            else:
                worksheets.append(worksheet)
                found += [finding for finding in findings if finding.level != "note"]
    return BetweenSizes(tuple(worksheets), tuple(left_out), tuple(found), tuple(dict.fromkeys(why)))


def _left_out(reason: Finding, size: str, edition: str) -> Finding:
    told = f"left out of the sizes between: {reason.text}"
    return replace(reason, level="warning", text=told, size=size, edition=edition)
