"""The gallery of surfaces: pictures of the turn plans and the projects that use them come in, HTML text goes out."""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from generator.calculation.reference_rows import PlanDrawIn, plan_rows
from generator.calculation.turning.plans import PLANS, turn_plan
from generator.calculation.turning.repeat import TurnPlan
from generator.calculation.turning.turns import row_words, spoken_row
from generator.calculation.worked import Turn
from generator.calculation.worked_project import Worksheet
from generator.rendering import addresses
from generator.rendering.cards import PageLink, SitePicture
from generator.rendering.page_frame import framed_page
from generator.rendering.reference_tuck_tables import percent_range
from generator.rendering.setting import Setting

_ARROWS: Mapping[Turn, str] = {Turn.LEFT: "←", Turn.RIGHT: "→", Turn.UPRIGHT: "•"}
_LIES: Mapping[Turn, str] = {Turn.LEFT: "left", Turn.RIGHT: "right", Turn.UPRIGHT: "upright"}
_DRAWN_GROUP, _OTHER_GROUP = 2, 3


@dataclass(frozen=True, slots=True)
class ChartRow:
    """One row of a plan's repeat: arrows as it lies, the same in words, and in the words of sewing from the left."""

    arrows: tuple[str, ...]
    lies: str
    sewn: str


@dataclass(frozen=True, slots=True)
class ShownPlan:
    """One plan of the gallery."""

    plan: TurnPlan
    picture: SitePicture
    chart: tuple[ChartRow, ...]
    rules: tuple[str, ...]
    draw_in: tuple[tuple[str, str], ...]
    uneven: bool
    used_in: tuple[PageLink, ...]


def plans_used(worksheets: Iterable[Worksheet]) -> tuple[str, ...]:
    """Return the names of the turn plans that worksheets use, each once."""
    rows = (panel.rows for worksheet in worksheets for panel in worksheet.panels.values())
    return tuple(dict.fromkeys(found.plan for found in rows if found is not None))


def render_gallery(
    pictures: Mapping[str, SitePicture], used_in: Mapping[str, Sequence[PageLink]], setting: Setting
) -> str:
    """Return the page of all turn plans, each with a sample and the pages of the projects that use it."""
    plans = [turn_plan(name, _DRAWN_GROUP) for name in PLANS]
    shown = [_shown(plan, pictures[plan.name], tuple(used_in.get(plan.name, ()))) for plan in plans]
    return framed_page("gallery.html", addresses.GALLERY, setting, plans=shown)


def _shown(plan: TurnPlan, picture: SitePicture, used_in: tuple[PageLink, ...]) -> ShownPlan:
    chart = tuple(_chart_row(row) for row in plan.cell)
    lost = plan_rows(plan)
    uneven = any(one.uneven for one in lost)
    return ShownPlan(plan, picture, chart, tuple(_rules(plan)), _draw_in(lost), uneven, used_in)


def _chart_row(row: tuple[Turn, ...]) -> ChartRow:
    arrows = tuple(_ARROWS[turn] for turn in row)
    return ChartRow(arrows, spoken_row([_LIES[turn] for turn in row]), spoken_row(row_words(row, "left")))


def _rules(plan: TurnPlan) -> list[str]:
    repeat = f"It repeats after {_counted(plan.columns, 'tuck')} and {_counted(len(plan.cell), 'row')}."
    rules = [f"Number of tucks: {plan.rule}; closed to a ring, {plan.ring_rule}.", repeat]
    if plan.facing:
        rules.append(
            "Facing pairs: pitch at least the depth of a tuck; at twice the depth the folds meet, below it they "
            "overlap in five layers."
        )
    if PLANS[plan.name](_OTHER_GROUP).cell != plan.cell:
        rules.append(f"The group can have any number of tucks; it is drawn here with {_DRAWN_GROUP}.")
    return rules


def _counted(number: int, thing: str) -> str:
    return f"{number} {thing}" + ("" if number == 1 else "s")


def _draw_in(lost: Sequence[PlanDrawIn]) -> tuple[tuple[str, str], ...]:
    """Return row spacings in words with what a plan then loses of its length; nothing where it loses nothing."""
    if not any(one.most for one in lost):
        return ()
    return tuple((f"{one.spacing} depths", percent_range(one.least, one.most)) for one in lost)
