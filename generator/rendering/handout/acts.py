"""What the acts of a handout hold: the steps of a worksheet come in, acts in their order go out."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from generator.calculation.worked_project import Caution, SheetStep, Worksheet
from generator.rendering.handout.pictures import Drawer
from generator.rendering.handout.repeats import ShownBefore, paragraphs_of, told_short, with_places

_TABLES = ("marks", "cross marks", "ruled rows", "check points", "cross check points", "own measure", "list for later")
# These were drawn for a page by themselves; what they show stands in the tables and pictures above.
_LEFT_OUT = (
    "flat cloth",
    "cross folds",
    "tuck section",
    "pair section",
    "turn map",
    "check points",
    "cross check points",
    "piece",
    "section",
)


@dataclass(frozen=True, slots=True)
class ToldBefore:
    """Cautions as an act tells them in its heading line: what they are called, and where they stand in full."""

    shorts: tuple[str, ...]
    place: str


@dataclass(frozen=True, slots=True)
class PrintedAct:
    """One act: its heading, the cautions told before it and those told already, its text, pictures and tables.

    ``tools`` are those that no caution of the heading line names. ``text`` is Markdown. ``pictures`` are keys,
    ``tables`` names of lists; ``cutting`` are those before all work.
    """

    number: int
    title: str
    minutes: int
    tools: tuple[str, ...]
    cautions: tuple[Caution, ...]
    told: tuple[ToldBefore, ...]
    text: str
    pieces: tuple[str, ...]
    pictures: tuple[str, ...]
    tables: tuple[str, ...]
    session_ends: bool
    cutting: bool


def acts_of(worksheet: Worksheet, drawer: Drawer) -> tuple[PrintedAct, ...]:
    """Return the acts of a worksheet, one a step; what one would tell or show as another did is told short."""
    cautioned = dict.fromkeys(worksheet.told_first, "page 1")
    told: dict[str, int] = {}
    shown = ShownBefore(drawer)
    acts: list[PrintedAct] = []
    for step in worksheet.steps:
        text = step.printed or step.text
        keys = drawer.shown(*_keys(step))
        pictures = tuple(key for key in keys if not shown.before(key))
        before = sorted({shown.before(key) for key in keys} - {0})
        layout = any(key.startswith("layout ") for key in pictures)
        repeated = _repeated(worksheet, step, cautioned)
        acts.append(
            PrintedAct(
                number=step.number,
                title=_title(worksheet, step),
                minutes=step.minutes,
                tools=tuple(tool for tool in step.tools if not any(tool in one.shorts for one in repeated)),
                cautions=tuple(worksheet.cautions[name] for name in step.cautions if name not in cautioned),
                told=repeated,
                text=with_places(told_short(text, told), () if pictures else before),
                pieces=step.pieces,
                pictures=pictures,
                tables=(*(name for name in _TABLES if name in step.lists), *(("cut",) if layout else ())),
                session_ends=step.session_ends,
                cutting="cuts" in step.lists and all(act.cutting for act in acts),
            )
        )
        shown.add(pictures, step.number)
        told = dict.fromkeys(paragraphs_of(text), step.number) | told
        cautioned |= {name: f"step {step.number}" for name in step.cautions if name not in cautioned}
    return tuple(acts)


def _repeated(worksheet: Worksheet, step: SheetStep, told: Mapping[str, str]) -> tuple[ToldBefore, ...]:
    """Return the cautions of a step that were told before, those of one place together."""
    places = dict.fromkeys(told[name] for name in step.cautions if name in told)
    return tuple(
        ToldBefore(tuple(worksheet.cautions[name].short for name in step.cautions if told.get(name) == place), place)
        for place in places
    )


def _title(worksheet: Worksheet, step: SheetStep) -> str:
    """Return the title of a step; what it is done to is left out where there is only one such thing to do it to."""
    alone = len(worksheet.panels) == 1 and set(step.pieces) == set(worksheet.panels)
    label = worksheet.pieces[step.pieces[0]].label if alone else ""
    return step.title.removesuffix(f": {label}") if label else step.title


def _keys(step: SheetStep) -> list[str]:
    """Every picture that an act may show; the tall one of all turns comes last."""
    kept = [key for key in step.figures if not key.startswith(tuple(f"{kind} " for kind in _LEFT_OUT))]
    return sorted(kept, key=lambda key: key.startswith("turns "))
