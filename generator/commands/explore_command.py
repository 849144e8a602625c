"""``tuckwright explore``: a finished size or cloth comes in, the tuck plans or the sizes that fit are printed."""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction
from typing import TypedDict, Unpack

import click

from generator.calculation.count_rule import CountRule
from generator.calculation.panel.explore import plans_for_cloth, plans_for_size
from generator.calculation.panel.wish import Choice, TuckWish
from generator.calculation.turning.plans import PLANS, turn_plan
from generator.calculation.worked import End
from generator.commands.columns import UNIT_WORDS, in_columns, indented
from generator.commands.edge_words import typed_end, typed_measure, typed_range
from generator.commands.explore_remnants import told_of_remnants
from generator.commands.working import room_here
from generator.lengths import Edition, say_length, say_range, write_length

_MARGIN = {"inch": "1/2 to 2", "metric": "1 to 5"}
_RULES = {"any": CountRule(), "even": CountRule(2), "odd": CountRule(2, 1)}


class Asked(TypedDict):
    """What was typed, each word as it came."""

    depth: str | None
    spacing: str | None
    edges: str | None
    margin: str | None
    number: str
    plan: str | None
    gives: str


@click.command(
    name="explore",
    help="List the tuck plans that fit, best first: for a finished size, or from a piece of cloth. Or which sizes of a "
    "PROJECT can be cut from the pieces of cloth that you have.",
)
@click.argument("project", required=False)
@click.option("--finished", metavar="LENGTH", help="The finished size across the tucks.")
@click.option("--cloth", metavar="LENGTH", help="The width of the cloth at hand: the largest panel from it.")
@click.option("--depth", metavar="LENGTH", help="Fold to stitching; without it the usual depths are tried.")
@click.option(
    "--spacing", metavar="LENGTH", help="Fold to fold on the flat cloth; without it the usual ones are tried."
)
@click.option("--edges", metavar="FINISH", help="Both edges: 'seam 1/2', 'hem 1/2', 'caught hem', 'bound 3/8', 'raw'.")
@click.option("--margin", metavar="LENGTH [to LENGTH]", help="From the finished edge to the nearest tuck's stitching.")
@click.option("--number", default="any", metavar="RULE", help="any, even, odd, or a number of tucks.")
@click.option("--plan", type=click.Choice(list(PLANS)), help="The turn plan, with what it needs.")
@click.option("--gives", type=click.Choice(["margin", "spacing", "depth"]), default="margin", help="What may change.")
@click.option("--have", multiple=True, metavar="ACROSSxALONG", help="A piece of cloth at hand; may be repeated.")
@click.option("--of", metavar="CLOTH", help="The cloth of the project that it is; its first without it.")
@click.option("--edition", type=click.Choice(["inch", "metric"]), help="Ruler and unit of bare numbers.")
@click.option("--most", type=click.IntRange(1, 100), default=8, help="How many plans to list.")
def command(
    project: str | None,
    finished: str | None,
    cloth: str | None,
    *,
    have: tuple[str, ...],
    of: str | None,
    edition: str | None,
    most: int,
    **asked: Unpack[Asked],
) -> None:
    """Print the plans that fit as a table, and the marks of the best; or what can be cut from pieces of cloth."""
    if project is not None or have:
        if project is None or not have or finished is not None or cloth is not None:
            raise click.UsageError(
                "name a project and the pieces of cloth that you have: 'explore PROJECT --have 30x18'"
            )
        click.echo(told_of_remnants(project, have, of, edition))
        return
    if (finished is None) == (cloth is None):
        raise click.UsageError("name a finished size with --finished, or a piece of cloth with --cloth: one of the two")
    room = room_here()
    ruler = room.edition(edition or "inch")
    end = typed_end(asked["edges"], ruler, "--edges") if asked["edges"] else End("seam", room.seam.fixed(ruler))
    wish = _wish(asked, end, _asked(finished, ruler, "--finished"), ruler)
    if cloth is None:
        choices = plans_for_size(wish, ruler, most)
    else:
        choices = plans_for_cloth(typed_measure(cloth, ruler, "--cloth"), wish, ruler, most)
    click.echo("\n".join([_given(wish, ruler), *_table(choices, ruler), *_to_paste(choices[0], end, ruler)]))


def _given(wish: TuckWish, edition: Edition) -> str:
    """What was worked with: the edges, the margins and the ruler, so that nobody takes them for others."""
    end = wish.ends[0]
    widths = [width for width in (end.first, end.second) if width]
    edges = " then ".join(say_length(width, edition) for width in widths)
    margins, finest = say_range(*wish.left_margin, edition), say_length(edition.mark, edition)
    return f"Edges: {end.kind}{' ' if edges else ''}{edges}. Margins: {margins}. The ruler reads to {finest}."


def _wish(asked: Asked, end: End, finished: Fraction, edition: Edition) -> TuckWish:
    margin = typed_range(asked["margin"] or _MARGIN[edition.name], edition, "--margin")
    plan = turn_plan(asked["plan"]) if asked["plan"] else None
    rule = _rule(asked["number"])
    joined = rule.joined(plan.rule) if plan else rule
    if joined is None:
        raise click.BadParameter(f"the plan '{asked['plan']}' needs {plan.rule if plan else ''}", param_hint="--number")
    return TuckWish(
        finished=finished,
        depth=_asked(asked["depth"], edition, "--depth"),
        spacing=_asked(asked["spacing"], edition, "--spacing"),
        ends=(end, end),
        left_margin=margin,
        right_margin=margin,
        gives=asked["gives"],  # type: ignore[arg-type]  # the option's choices are these words
        rule=joined,
        facing=plan is not None and plan.facing,
        lies=plan.lies if plan else None,
    )


def _asked(text: str | None, edition: Edition, option: str) -> Fraction:
    """Return the length that was asked for [in], 0 where none was."""
    return Fraction(0) if text is None else typed_measure(text, edition, option)


def _rule(word: str) -> CountRule:
    if word in _RULES:
        return _RULES[word]
    if word.isascii() and word.isdigit():
        return CountRule(exactly=int(word))
    raise click.BadParameter(f"'{word}': write any, even, odd, or a number", param_hint="--number")


def _table(choices: Sequence[Choice], edition: Edition) -> list[str]:
    head = ("", "tucks", "depth", "spacing", "pitch", "margins", "cut", "finished", "ruler", "cost")
    rows = [head, *(_row(number, choice, edition) for number, choice in enumerate(choices, 1))]
    best = choices[0]
    marks = ", ".join(write_length(mark, edition) for mark in best.tucks.marks)
    counted = f"{len(choices)} plans fit, the best first" if len(choices) > 1 else "One plan fits"
    unit = UNIT_WORDS[edition.unit]
    lines = [f"{counted}. Lengths in {unit}; 'ruler' is the coarsest division that holds every mark."]
    lines += ["", *in_columns(rows), ""]
    for number, choice in enumerate(choices, 1):
        lines += indented(f"  {number}  ", "; ".join(choice.reasons))
    return [*lines, "", *indented("  marks of 1, from the cut edge: ", marks or "none")]


def _to_paste(best: Choice, end: End, edition: Edition) -> list[str]:
    """The best plan as lines of a project file, its margins as lengths, so that no other plan is taken there."""
    tucks = best.tucks

    def say(length: Fraction) -> str:
        return write_length(length, edition, unit=True)

    if tucks.count < 2:
        return []
    margins = {"left margin": tucks.left_margin, "right margin": tucks.right_margin}
    if tucks.left_margin == tucks.right_margin:
        margins = {"margin": tucks.left_margin}
    lengths = {"depth": tucks.depths[0], "spacing": tucks.spacings[0], **margins}
    finish = " ".join((end.kind, " then ".join(say(width) for width in (end.first, end.second) if width))).strip()
    return [
        "",
        "For the project file, plan 1 under a tucked panel:",
        f"    finished across: {say(tucks.finished)}",
        "    tucks:",
        f"      number: {tucks.count}",
        *(f"      {key}: {say(length)}" for key, length in lengths.items()),
        "    edges:",
        *(f"      {side}: {finish}" for side in ("left", "right")),
    ]


def _row(number: int, choice: Choice, edition: Edition) -> tuple[str, ...]:
    tucks = choice.tucks

    def say(length: Fraction) -> str:
        return write_length(length, edition)

    margins = say(tucks.left_margin)
    if tucks.right_margin != tucks.left_margin:
        margins += f" and {say(tucks.right_margin)}"
    spacing = say(tucks.spacings[0]) if tucks.spacings else "-"
    pitch = say(tucks.pitches[0]) if tucks.pitches else "-"
    depth = say(tucks.depths[0]) if tucks.count else "-"
    sizes = (say(tucks.cut), say(tucks.finished), say(tucks.grid), str(choice.cost))
    return (str(number), str(tucks.count), depth, spacing, pitch, margins, *sizes)
