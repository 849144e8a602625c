"""The tucks of a panel: keys of the project file come in, the rounded set of tucks goes out."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from generator.calculation.count_rule import CountRule
from generator.calculation.cutting.stripes import spacing_on_repeat
from generator.calculation.panel.choice import TuckWish, choose_tucks
from generator.calculation.panel.findings import tuck_findings
from generator.calculation.panel.runs import RunWish, work_runs
from generator.calculation.panel.sample import carried_take_up, sample_take_up, unlikely_take_up
from generator.calculation.turning.held import edge_tucks_lie
from generator.calculation.turning.plans import TurnPlan, drawn_plan, turn_plan
from generator.calculation.worked import End, TuckSet
from generator.calculation.worksheet.scope import Scope
from generator.definitions.pieces import Rows, Run, TuckedPanel, Tucks
from generator.definitions.values import Number
from generator.errors import CalculationError


def count_rule(scope: Scope, number: Number) -> CountRule:
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
    if rows.drawn_plan is not None:
        return drawn_plan(rows.drawn_plan, rows.lone_edge_tucks)
    return turn_plan(rows.plan or "", rows.group, rows.lone_edge_tucks)


def worked_tucks(scope: Scope, name: str, model: TuckedPanel) -> TuckSet:
    """Return the tucks across a panel."""
    plan = plan_of(model.rows)
    ends = (scope.end(model.finish("left")), scope.end(model.finish("right")))
    wish = _on_stripes(scope, model, _wish(scope, model.tucks, scope.value(model.finished_across), ends, plan))
    if plan is not None and model.rows is not None:
        held = (model.rows.top_held, model.rows.bottom_held)
        wish = replace(wish, lies=lambda count: edge_tucks_lie(plan, count, held))
    tucks = _worked(scope, model, wish)
    thickness = scope.thickness_of(model)
    for text in tuck_findings(tucks, scope.edition, thickness, sampled=model.sample is not None):
        scope.report("warning", text, model.tucks.place, name)
    return tucks


def _on_stripes(scope: Scope, model: TuckedPanel, wish: TuckWish) -> TuckWish:
    """The wish with its spacing on whole repeats of a striped cloth, so that every fold meets the same stripe."""
    repeat = scope.project.cloths[scope.cloth_of(model)].repeat
    if repeat is None or not wish.spacing:
        return wish
    return replace(wish, spacing=spacing_on_repeat(wish.spacing, scope.value(repeat)))


def worked_cross_tucks(scope: Scope, name: str, model: TuckedPanel) -> TuckSet:
    """Return the second set of tucks, which runs from side to side; its left end is the top edge."""
    assert model.cross_tucks is not None
    if model.rows is not None:
        raise CalculationError(
            f"'{name}' has rows and cross tucks; cross tucks hold the first set down by themselves: take one out"
        )
    ends = (scope.end(model.finish("top")), scope.end(model.finish("bottom")))
    wish = _wish(scope, model.cross_tucks, scope.value(model.finished_along), ends, None)
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
    runs = [_run(scope, run) for run in model.tucks.runs]
    return work_runs(runs, wish, scope.edition, mirror=model.tucks.mirror, middle_pitch=middle)


def _run(scope: Scope, run: Run) -> RunWish:
    """What the file asks of one run; only 'any' and a number are told of a run."""
    first, last = scope.bounds(run.depth)
    number = scope.count(run.number.value) if run.number.value is not None else None
    after = scope.value(run.pitch_after) if run.pitch_after else None
    return RunWish((first,) if first == last else (first, last), scope.value(run.pitch), after, number)


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
