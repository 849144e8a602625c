"""The tucks of a panel: keys of the project file come in, the rounded set of tucks goes out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.choice import TuckWish, choose_tucks
from generator.calculation.panel.findings import tuck_findings
from generator.calculation.panel.run_steps import RunWish
from generator.calculation.panel.runs import work_runs
from generator.calculation.panel.sample import carried_take_up, sample_take_up, unlikely_take_up
from generator.calculation.panel_ends import least_margin
from generator.calculation.turning.held import Held, edge_tucks_lie
from generator.calculation.turning.plans import TurnPlan, drawn_plan, turn_plan
from generator.calculation.turning.pressed import STANDING, pressed_turns, spaces_shown
from generator.calculation.turning.repeat import edge_lie
from generator.calculation.worked import End, TuckSet, Turn
from generator.calculation.worksheet.panel_shape import PanelBox
from generator.calculation.worksheet.panel_stripes import on_stripes
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces.panel import TuckedPanel
from generator.definitions.tucks import Rows, Run, Tucks
from generator.definitions.values import CountWish
from generator.errors import CalculationError


def count_rule(scope: Scope, number: CountWish) -> CountRule:
    """Return the rule that the word or number after ``number:`` sets."""
    if number.rule == "any" or number.value is None:
        return {"any": CountRule(), "even": CountRule(2), "odd": CountRule(2, 1)}[number.rule]
    count = scope.count(number.value)
    if number.rule == "multiple" and count < 1:
        raise CalculationError(f"the number of tucks is to be a multiple of {count}; write 1 or more")
    return CountRule(count) if number.rule == "multiple" else CountRule(exactly=count)


def plan_of(rows: Rows | None) -> TurnPlan | None:
    """Return the turn plan that a panel's rows name or draw."""
    if rows is None:
        return None
    lone = rows.lone_edge_tucks or "out"
    if rows.drawn_plan is not None:
        return drawn_plan(rows.drawn_plan, lone)
    return turn_plan(rows.plan or "", rows.group, lone)


def settled_plan(scope: Scope, model: TuckedPanel, tucks: TuckSet) -> TurnPlan | None:
    """Return the turn plan with its lone edge tucks as the panel has room for them: out, else upright."""
    plan = plan_of(model.rows)
    if plan is None or model.rows is None or not _may_settle(plan, model.rows) or tucks.ring or not tucks.count:
        return plan
    out = edge_tucks_lie(plan, tucks.count, _held(model.rows))
    least = (
        least_margin(tucks.left, tucks.depths[0], out[0], scope.edition),
        least_margin(tucks.right, tucks.depths[-1], out[1], scope.edition),
    )
    fits = tucks.left_margin >= least[0] and tucks.right_margin >= least[1]
    return plan if fits else replace(plan, lone="upright")


def _may_settle(plan: TurnPlan, rows: Rows) -> bool:
    return plan.facing and rows.lone_edge_tucks is None


def _held(rows: Rows) -> tuple[Held, Held]:
    return rows.top_held, rows.bottom_held


def worked_tucks(scope: Scope, name: str, model: TuckedPanel, box: PanelBox) -> TuckSet:
    """Return the tucks across a panel."""
    plan = plan_of(model.rows)
    ends = (box.ends["left"], box.ends["right"])
    wish = on_stripes(scope, model, _wish(scope, model.tucks, box.across, ends, plan))
    tucks = _pressed(scope, model, wish) if plan is None else _turned(scope, name, model, wish, plan)
    thickness, sampled = scope.thickness_of(model), model.sample is not None
    turns = pressed_of(model, tucks.count)
    with scope.reporting(model.tucks.place, name):
        shown = spaces_shown(tucks, turns) if turns else None
    for text in tuck_findings(tucks, scope.edition, thickness, sampled=sampled, shown=shown):
        scope.report("warning", text, model.tucks.place, name)
    return tucks


def pressed_of(model: TuckedPanel, count: int) -> tuple[Turn, ...]:
    """Return how the tucks of a panel lie when they are pressed; empty where they stand or rows turn them."""
    return pressed_turns(model.tucks.pressed or STANDING, count, model.hangs_by)


def _pressed(scope: Scope, model: TuckedPanel, wish: TuckWish) -> TuckSet:
    """The tucks with room at the edges for how they are pressed."""

    def lies(count: int) -> tuple[str, str]:
        turns = (pressed_of(model, count),)
        return edge_lie(turns, at_left=True), edge_lie(turns, at_left=False)

    return _worked(scope, model, replace(wish, lies=lies))


def _turned(scope: Scope, name: str, model: TuckedPanel, wish: TuckWish, plan: TurnPlan) -> TuckSet:
    """The tucks with room at the edges for how they lie there; lone ones stand where there is no room to turn out."""
    assert model.rows is not None
    held = _held(model.rows)
    outward = replace(wish, lies=lambda count: edge_tucks_lie(plan, count, held))
    if not _may_settle(plan, model.rows):
        return _worked(scope, model, outward)
    try:
        return _worked(scope, model, outward)
    except CalculationError as no_room:
        standing = replace(plan, lone="upright")
        try:
            tucks = _worked(scope, model, replace(wish, lies=lambda count: edge_tucks_lie(standing, count, held)))
        except CalculationError:
            raise no_room from None
    needed = least_margin(tucks.left, max(tucks.depths), "out", scope.edition)
    text = (
        "the margins leave no room to turn the lone tucks at the edges outward, so they are left upright; for that "
        f"the margins need {scope.say(needed)}, or write 'lone edge tucks: upright' to keep it so"
    )
    scope.report("warning", text, model.rows.place, name)
    return tucks


def worked_cross_tucks(scope: Scope, name: str, model: TuckedPanel, box: PanelBox) -> TuckSet:
    """Return the second set of tucks, which runs from side to side; its left end is the top edge."""
    assert model.cross_tucks is not None
    if model.rows is not None:
        raise CalculationError(
            f"'{name}' has rows and cross tucks; cross tucks hold the first set down by themselves: take one out"
        )
    ends = (box.ends["top"], box.ends["bottom"])
    wish = _wish(scope, model.cross_tucks, box.along, ends, None)
    return choose_tucks(replace(wish, take_up=_sampled(scope, model, wish.depth)), scope.edition)


def _wish(scope: Scope, tucks: Tucks, finished: Fraction, ends: tuple[End, End], plan: TurnPlan | None) -> TuckWish:
    """What the file asks of a set of equal tucks; a set told in runs has no depth or spacing of its own."""
    rule = count_rule(scope, tucks.number)
    if plan is not None:
        needed = plan.ring_rule if tucks.ring else plan.rule
        joined = rule.joined(needed)
        if joined is None:
            raise CalculationError(
                f"the number of tucks for the plan '{plan.title}' must be {needed}; the file asks for {rule}"
            )
        rule = joined
    return TuckWish(
        finished=finished,
        depth=scope.value(tucks.depth) if tucks.depth else Fraction(0),
        spacing=scope.value(tucks.spacing) if tucks.spacing else Fraction(0),
        ends=ends,
        left_margin=scope.bounds(tucks.left_margin or tucks.margin),
        right_margin=scope.bounds(tucks.right_margin or tucks.margin),
        gives=tucks.gives,
        rule=rule,
        facing=plan is not None and plan.facing,
        ring=tucks.ring,
    )


def _worked(scope: Scope, model: TuckedPanel, wish: TuckWish) -> TuckSet:
    if not model.tucks.runs:
        return choose_tucks(replace(wish, take_up=_sampled(scope, model, wish.depth)), scope.edition)
    if model.sample is not None:
        deep = scope.value(model.sample.depth)
        wish = replace(wish, depth=deep, take_up=_sampled(scope, model, deep))
    middle = scope.value(model.tucks.middle_pitch) if model.tucks.middle_pitch else None
    turned = pressed_of(model, 1)
    runs = [_run(scope, run, turned) for run in model.tucks.runs]
    return work_runs(runs, wish, scope.edition, mirror=model.tucks.mirror, middle_pitch=middle)


def _run(scope: Scope, run: Run, turned: tuple[Turn, ...]) -> RunWish:
    """What the file asks of one run; only 'any' and a number are told of a run."""
    first, last = scope.bounds(run.depth)
    number = scope.count(run.number.value) if run.number.value is not None else None
    after = scope.value(run.pitch_after) if run.pitch_after else None
    depths = (first,) if first == last else (first, last)
    if run.visible_space is not None:
        shown = RunWish(depths, scope.value(run.visible_space), after, number)
        return replace(shown, covers="left" if turned == (Turn.RIGHT,) else "right")
    assert run.pitch is not None
    pitch, last_pitch = scope.bounds(run.pitch)
    return RunWish(depths, pitch, after, number, last_pitch)


def _sampled(scope: Scope, model: TuckedPanel, depth: Fraction) -> Fraction | None:
    """The take-up of one tuck as the panel's sample says, carried over to the panel's depth; None without a sample."""
    sample = model.sample
    if sample is None:
        return None
    measured = sample_take_up(scope.count(sample.tucks), scope.value(sample.flat), scope.value(sample.finished))
    deep = scope.value(sample.depth)
    unlikely = unlikely_take_up(measured, deep, scope.edition)
    if unlikely:
        scope.report("warning", unlikely, sample.flat.place)
    return carried_take_up(measured, deep, depth)
