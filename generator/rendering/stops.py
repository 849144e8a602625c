"""The stops of the page beside the machine: a worksheet comes in, one instruction after the other goes out.

A stop is what is on the screen at one time: a paragraph with its list, a list to tick, a check, or a row of turns. Each
is named by what it is, never by a count, so that a place is found again when a step before it comes or goes.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import partial
from itertools import pairwise
from types import MappingProxyType
from typing import Literal

from markupsafe import Markup

from generator.calculation.worked import Panel, Row, TuckSet
from generator.calculation.worked_checks import CheckPoint, Checks, Correction
from generator.calculation.worked_project import Caution, SheetStep, Worksheet
from generator.calculation.worksheet.lists import checkpoint_list, mark_list, row_list, ruled_list
from generator.lengths import Edition
from generator.rendering.stop_words import beside_picture, go_together, leads, screens
from generator.rendering.words import blocks, read_words

StopKind = Literal["told", "care", "lengths", "check", "row"]
_NAMED_BY = 4
# So many lengths to tick, two beside each other, stand on a screen of 360 x 640 px.
_MOST_LENGTHS = 14
_NONE_DRAWN: Mapping[str, float] = MappingProxyType({})
_BELOW = 2
_Lists = Mapping[Markup, Callable[["SheetStep"], Iterable["Stop"]]]


@dataclass(frozen=True, slots=True)
class Check:
    """A check point, the first of the tucks sewn before it, what to do where it is off, and how that is called."""

    point: CheckPoint
    first: int
    narrow: tuple[Correction, ...]
    wide: tuple[Correction, ...]
    words: tuple[str, str]

    @property
    def range(self) -> tuple[Fraction, Fraction]:
        """From what to what it is right [in]."""
        return self.point.expect - self.point.within, self.point.expect + self.point.within


@dataclass(frozen=True, slots=True)
class Stop:
    """One stop: its name on the page, its heading, its step, and what it tells: words, lengths to tick, a check, a row.

    A caution has a stop of its own where it is first told; ``again`` are those of its step that were told before.
    ``about`` says of a list or a row what it belongs to, ``first`` the number of the first of its lengths, ``rows`` how
    many rows there are. ``begins`` and ``ends`` tell whether it is the first and the last of its step, ``figures`` the
    keys of its pictures.
    """

    name: str
    title: str
    step: SheetStep
    kind: StopKind = "told"
    words: tuple[Markup, ...] = ()
    about: str = ""
    lengths: tuple[Fraction, ...] = ()
    first: int = 1
    again: tuple[str, ...] = ()
    check: Check | None = None
    row: Row | None = None
    rows: int = 0
    figures: tuple[str, ...] = ()
    begins: bool = False
    ends: bool = False


def stops(worksheet: Worksheet, drawn: Mapping[str, float] = _NONE_DRAWN) -> tuple[Stop, ...]:
    """Return the stops of a worksheet in the order of the work, with those of its pictures that are ``drawn``.

    How high each is, by its key, is told as a part of the width of a phone.
    """
    lists = {name: _lists(name, panel, worksheet.edition) for name, panel in worksheet.panels.items()}
    found: list[Stop] = []
    taken: set[str] = set()
    warned: set[str] = set()
    for step in worksheet.steps:
        care = [_care(step, worksheet.cautions[name]) for name in step.cautions if name not in warned]
        again = tuple(name for name in step.cautions if name in warned)
        warned |= set(step.cautions)
        figures = [key for key in step.figures if key in drawn]
        shown = _with_figures(list(_stops_of(step, lists)), figures)
        parts = [_read(stop, drawn, begins=not (care or place)) for place, stop in enumerate(shown)]
        of_step = [*care, *_joined(part for read in parts for part in read)]
        of_step[0] = replace(of_step[0], begins=True, again=again)
        of_step[-1] = replace(of_step[-1], ends=True)
        found += [_named_apart(stop, taken) for stop in of_step]
    return tuple(found)


def _care(step: SheetStep, caution: Caution) -> Stop:
    title = ": ".join(filter(None, (caution.level.capitalize(), caution.short)))
    return Stop(_slug(f"{step.title} care {caution.short}"), title, step, "care", (read_words(caution.text, _BELOW),))


def _read(stop: Stop, drawn: Mapping[str, float], *, begins: bool) -> Iterator[Stop]:
    """A stop of words in parts that are read above its picture, which stays with the first or has a stop of its own."""
    if not stop.figures or stop.kind != "told" or not stop.words:
        yield stop
        return
    height = sum(drawn[key] for key in stop.figures)
    first, *others = beside_picture(stop.words, height, begins=begins)
    if first:
        yield replace(stop, words=first)
    for words in others:
        yield _of_words(stop.step, words)
    if not first:
        yield replace(stop, name=f"{stop.name}-shown", words=())


def _joined(of_step: Iterable[Stop]) -> list[Stop]:
    """Stops of words with short neighbours together, as far as neither has a picture."""
    found: list[Stop] = []
    for stop in of_step:
        before = found[-1] if found else None
        plain = before and all(one.kind == "told" and one.words and not one.figures for one in (before, stop))
        if before and plain and go_together(before.words, stop.words):
            found[-1] = replace(before, words=(*before.words, *stop.words))
        else:
            found.append(stop)
    return found


def _named_apart(stop: Stop, taken: set[str]) -> Stop:
    """The stop with a name that no other has: two steps may tell the same."""
    name, number = stop.name, 1
    while name in taken:
        number += 1
        name = f"{stop.name}-{number}"
    taken.add(name)
    return replace(stop, name=name)


def _stops_of(step: SheetStep, lists: Mapping[str, _Lists]) -> Iterator[Stop]:
    special: _Lists = lists.get(step.pieces[0], {}) if step.pieces else {}
    told: list[Markup] = []
    for block in blocks(read_words(step.text, _BELOW)):
        if block not in special:
            told.append(block)
            continue
        # What leads to a list is told with it.
        lead = told.pop() if told and leads(told[-1]) else Markup("")
        yield from _told(step, told)
        told = []
        for stop in special[block](step):
            yield replace(stop, words=(lead,) if lead else ())
    yield from _told(step, told)
    if not step.text.strip():
        yield Stop(_slug(step.title), step.title, step)


def _told(step: SheetStep, told: Sequence[Markup]) -> Iterator[Stop]:
    """Stops of words, each as much as is read at one time."""
    for words in screens(told):
        yield _of_words(step, words)


def _of_words(step: SheetStep, words: Sequence[Markup]) -> Stop:
    named = " ".join(re.findall(r"[a-z]+", str(words[0].striptags()).lower())[:_NAMED_BY])
    return Stop(_slug(f"{step.title} {named}"), step.title, step, words=tuple(words))


def _slug(text: str) -> str:
    return re.sub(r"[^a-z0-9]+", "-", text.lower()).strip("-") or "stop"


def _lists(name: str, panel: Panel, edition: Edition) -> _Lists:
    """The lists of a panel as they stand in the texts of steps, each with what makes its stops of such a step."""
    piece = _slug(name)
    found: dict[str, Callable[[SheetStep], Iterable[Stop]]] = {}
    for tucks, checks, cross in ((panel.across, panel.checks, ""), (panel.cross, panel.cross_checks, "cross ")):
        if tucks is None or not tucks.count:
            continue
        found[mark_list(tucks, edition)] = partial(_marks, tucks=tucks, piece=piece, cross=bool(cross))
        if checks.points:
            found[checkpoint_list(checks, edition)] = partial(
                _checks, checks=checks, name=_slug(f"{piece} {cross}check")
            )
    if panel.rows is not None:
        found[ruled_list(panel, edition)] = partial(_ruled, rows=panel.rows.rows, piece=piece)
        found[row_list(panel)] = partial(_rows, rows=panel.rows.rows, piece=piece)
    return {one: made for text, made in found.items() for one in blocks(read_words(text, _BELOW))[:1]}


def _marks(step: SheetStep, tucks: TuckSet, piece: str, *, cross: bool) -> Iterator[Stop]:
    edges, start = (("left", "right"), "top") if cross else (("top", "bottom"), "left")
    for edge in edges:
        about = f"Every mark from the {start} cut edge. Tick each one that you have made."
        whole = Stop(f"{piece}-marks-{edge}", f"Marks along the {edge} edge", step, "lengths", about=about)
        yield from _in_parts(whole, tucks.marks)


def _ruled(step: SheetStep, rows: Sequence[Row], piece: str) -> Iterator[Stop]:
    about = "Every row from the top cut edge. Tick each one that you have drawn."
    whole = Stop(f"{piece}-ruled", step.title, step, "lengths", about=about)
    return _in_parts(whole, [row.ruled for row in rows])


def _in_parts(whole: Stop, lengths: Sequence[Fraction]) -> Iterator[Stop]:
    """A list to tick on as many screens as it needs, alike in length."""
    parts = -(-len(lengths) // _MOST_LENGTHS)
    bounds = [len(lengths) * part // parts for part in range(parts + 1)] if parts else []
    for start, end in pairwise(bounds):
        part = replace(whole, lengths=tuple(lengths[start:end]), first=start + 1)
        if start:
            part = replace(part, name=f"{whole.name}-from-{start + 1}")
        if parts > 1:
            part = replace(part, title=f"{whole.title}, {start + 1} to {end}")
        yield part


def _checks(step: SheetStep, checks: Checks, name: str) -> Iterator[Stop]:
    first = 1
    for point in checks.points:
        off = [one for one in checks.corrections if one.after == point.after]
        narrow, wide = (tuple(one for one in off if (one.off < 0) is less) for less in (True, False))
        check = Check(point, first, narrow, wide, (checks.leeway.narrow, checks.leeway.wide))
        yield Stop(
            f"{name}-{point.after}", f"Sew tucks {first} to {point.after}, then measure", step, "check", check=check
        )
        first = point.after + 1


def _rows(step: SheetStep, rows: Sequence[Row], piece: str) -> Iterator[Stop]:
    for row in rows:
        title = f"Row {row.number} of {len(rows)}"
        yield Stop(f"{piece}-row-{row.number}", title, step, "row", row=row, rows=len(rows))


# Which stops show a picture that belongs to no paragraph: by how its key begins.
_SHOWN_AT: Mapping[str, StopKind] = {
    **dict.fromkeys(("checking ", "cross checking "), "check"),
    "turns ": "row",
    "ruled rows ": "lengths",
}


def _with_figures(of_step: list[Stop], figures: Iterable[str]) -> list[Stop]:
    """The stops with the pictures of their step: of rows at each, of checks at the first, the others one by one."""
    told = [place for place, stop in enumerate(of_step) if stop.kind == "told"] or [0]
    for key in figures:
        kind = next((kind for start, kind in _SHOWN_AT.items() if key.startswith(start)), None)
        places = [place for place, stop in enumerate(of_step) if stop.kind == kind]
        if kind == "check":  # it shows what is measured at the first
            cross, _, piece = key.partition("checking ")
            places = [place for place in places if of_step[place].name.startswith(_slug(f"{piece} {cross}check"))][:1]
        if not places:
            places = [next((place for place in told if not of_step[place].figures), told[-1])]
        for place in places:
            of_step[place] = replace(of_step[place], figures=(*of_step[place].figures, key))
    return of_step
