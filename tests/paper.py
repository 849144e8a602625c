"""Every handout of a room on paper, measured: how many pages, how much white at their feet.

``python -m tests.paper OUT [--theme NAME] [--project NAME ...] [--paper Letter] [--edition inch] [--kind 'wall card']``
writes the sheets of the smallest and the largest size of each project into OUT and prints a line for each, the worst
last.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import click
import numpy
import pypdfium2

from generator.calculation.worked_project import Worksheet
from generator.definitions.room import load_room
from generator.definitions.theme import load_theme
from generator.definitions.vocabulary import SHEETS_OF_SIZE
from generator.publishing.inputs import theme_folder
from generator.publishing.room import room_setting
from generator.rendering.handout.sheet import render_handout
from generator.rendering.setting import Setting
from generator.rendering.sheet_kinds import project_orders, room_orders, size_orders
from tests.room import opened_room

INCH = 72
# Where the acts of a page begin and end, from the edges of the paper [in]: themes/plain/css/handout.css.
TOP, FOOT = 8 / 25.4, 12 / 25.4
INK = 225


@dataclass(frozen=True)
class PageMeasure:
    """One page: how much of it stays white below the last line, and in its widest gap, as parts of its height."""

    foot: float
    gap: float


def page_measures(pdf: bytes) -> list[PageMeasure]:
    """Measure the pages of a sheet."""
    document = pypdfium2.PdfDocument(pdf)
    return [_measured(numpy.asarray(page.render(scale=1, grayscale=True).to_numpy()).squeeze()) for page in document]


def _measured(grey: numpy.ndarray) -> PageMeasure:
    """A row of dots counts as white where nothing in it is darker than paper."""
    inch = INCH
    body = grey[int(TOP * inch) : int(len(grey) - FOOT * inch)]
    inked = numpy.flatnonzero((body < INK).any(axis=1))
    if not inked.size:
        return PageMeasure(1.0, 1.0)
    between = numpy.diff(inked)
    return PageMeasure(
        1 - (int(inked[-1]) + 1) / len(body),
        (int(between.max()) if between.size else 0) / len(body),
    )


def worst(measures: list[PageMeasure]) -> float:
    """The most white at the foot of a page that is not the last, in parts of the page."""
    return max((measure.foot for measure in measures[:-1]), default=0.0)


def smallest_and_largest(folder: Path, names: Iterable[str], editions: Iterable[str]) -> Iterator[Worksheet]:
    """The worksheets of the first and the last size of the projects named, or of all."""
    room = opened_room(folder)
    for path in sorted((folder / "projects").glob("*.yaml")):
        if not names or path.stem in names:
            sizes = list(room.project(path.stem).sizes)
            for edition in editions:
                for size in dict.fromkeys((sizes[0], sizes[-1])):
                    yield room.worksheet(path.stem, size, edition)


def opened_setting(folder: Path, theme: str) -> Setting:
    room = load_room(folder / "site" / "site.yaml", folder)
    return room_setting(room, load_theme(theme_folder(folder, theme)))


def sheets_of(worksheet: Worksheet, setting: Setting, paper: str, kinds: Iterable[str]) -> Iterator[tuple[str, bytes]]:
    """The sheets of a size by kind."""
    if "handout" in kinds:
        yield "handout", render_handout(worksheet, setting, paper)
    for order in size_orders(worksheet, tuple(kinds)):
        yield order.name, order.render(setting, paper)


def further_sheets(folder: Path, setting: Setting, paper: str, args: argparse.Namespace) -> Iterator[tuple[str, bytes]]:
    """The sheets about all sizes and about the room."""
    room = opened_room(folder)
    names = [path.stem for path in sorted((folder / "projects").glob("*.yaml"))]
    projects = {
        name: [room.worksheet(name, size, edition) for edition in args.edition for size in room.project(name).sizes]
        for name in names
    }
    for name, sizes in projects.items():
        if not args.project or name in args.project:
            for order in project_orders(sizes, args.kind):
                yield f"{Path(order.address(paper)).stem}", order.render(setting, paper)
    for order in room_orders(projects, args.kind):
        yield f"{Path(order.address(paper)).stem}", order.render(setting, paper)


def _arguments() -> argparse.Namespace:
    asked = argparse.ArgumentParser(description=__doc__)
    asked.add_argument("out", type=Path)
    asked.add_argument("--room", type=Path, default=Path())
    asked.add_argument("--theme", nargs="*", default=["plain"])
    asked.add_argument("--project", nargs="*", default=[])
    asked.add_argument("--paper", nargs="*", default=["Letter", "A4"])
    asked.add_argument("--edition", nargs="*", default=["inch", "metric"])
    asked.add_argument("--kind", nargs="*", default=["handout"])
    return asked.parse_args()


def _told(name: str, pdf: bytes) -> tuple[float, str]:
    measures = page_measures(pdf)
    feet = " ".join(f"{100 * measure.foot:.0f}" for measure in measures)
    gaps = max(measure.gap for measure in measures)
    return worst(measures), f"{len(measures):3} pages, white at foot % {feet}; gap {100 * gaps:.0f} {name}"


def _written(args: argparse.Namespace, name: str, pdf: bytes) -> tuple[float, str]:
    (args.out / f"{name}.pdf").write_bytes(pdf)
    told = _told(name, pdf)
    click.echo(told[1])
    return told


def main() -> None:
    args = _arguments()
    args.out.mkdir(parents=True, exist_ok=True)
    lines = []
    for theme in args.theme:
        setting = opened_setting(args.room, theme)
        for worksheet in smallest_and_largest(args.room, args.project, args.edition):
            for paper in args.paper:
                for kind, pdf in sheets_of(worksheet, setting, paper, args.kind):
                    name = f"{theme}-{worksheet.project}-{worksheet.size}-{worksheet.edition.name}-{paper}-{kind}"
                    lines.append(_written(args, name.replace(" ", "_"), pdf))
        if set(args.kind) - {"handout", *SHEETS_OF_SIZE}:
            for paper in args.paper:
                for name, pdf in further_sheets(args.room, setting, paper, args):
                    lines.append(_written(args, f"{theme}-{name}", pdf))
    click.echo("\n".join(["", "The worst:", *(line for _, line in sorted(lines)[-10:])]))
    pages = sum(int(line.split()[0]) for _, line in lines)
    click.echo(f"\n{len(lines)} sheets, {pages} pages")


if __name__ == "__main__":
    main()
