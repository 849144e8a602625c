"""``tuckwright sample``: the measures of a sewn sample come in, the true take-up of a tuck is printed."""

from __future__ import annotations

from fractions import Fraction
from typing import TypedDict, Unpack

import click

from generator.calculation.panel.sample import sample_draw_in, sample_shrinkage, sample_take_up
from generator.commands.edge_words import typed_measure
from generator.lengths import EDITIONS, Edition, write_length, write_number


class Further(TypedDict):
    """What else may have been measured on a sample, each as it was typed."""

    rows_before: str | None
    rows_after: str | None
    washed: str | None


@click.command(name="sample", help="Work out the true take-up of a tuck from a sewn sample.")
@click.option("--tucks", type=click.IntRange(1, 1000), required=True, help="How many tucks the sample has.")
@click.option("--depth", required=True, metavar="LENGTH", help="Fold to stitching of the sample's tucks.")
@click.option("--flat", required=True, metavar="LENGTH", help="Its width before the tucks were stitched.")
@click.option("--finished", required=True, metavar="LENGTH", help="Its width after.")
@click.option("--rows-before", metavar="LENGTH", help="Two neighbouring rows apart, before the tucks were turned.")
@click.option("--rows-after", metavar="LENGTH", help="The same two rows apart, after.")
@click.option("--washed", metavar="LENGTH", help="The flat width again after washing, for the shrinkage.")
@click.option("--edition", type=click.Choice(["inch", "metric"]), default="inch", help="Unit of bare numbers.")
def command(tucks: int, depth: str, flat: str, finished: str, edition: str, **others: Unpack[Further]) -> None:
    """Print what the sample says, and the lines to put under the panel in the project file."""
    ruler = EDITIONS[edition]
    deep, before, after = (
        typed_measure(text, ruler, option)
        for text, option in ((depth, "--depth"), (flat, "--flat"), (finished, "--finished"))
    )
    take_up = sample_take_up(tucks, before, after)
    unit = ruler.unit
    measured = {"depth": deep, "flat": before, "finished": after, **_rows(ruler, others)}
    twice = write_length(2 * deep, ruler)
    lines = [
        f"Each tuck takes up {write_length(take_up, ruler)} {unit}; twice its depth is {twice} {unit}.",
        _against(tucks, take_up - 2 * deep, ruler),
        *_told_of_rows(measured, ruler),
        *_told_of_washing(before, ruler, others["washed"]),
        "",
        "For the project file, under the panel:",
        "    sample:",
        f"      tucks: {tucks}",
        *(f"      {key}: {write_length(length, ruler)} {unit}" for key, length in measured.items()),
    ]
    click.echo("\n".join(lines))


def _against(tucks: int, more: Fraction, edition: Edition) -> str:
    if not more:
        return "The cloth does exactly what the ruler says."
    word = "more" if more > 0 else "less"
    each, whole = write_length(abs(more), edition), write_length(tucks * abs(more), edition)
    unit = edition.unit
    return (
        f"That is {each} {unit} {word} a tuck, {whole} {unit} {word} on these {tucks}; it carries over to other depths."
    )


def _rows(edition: Edition, others: Further) -> dict[str, Fraction]:
    """Return the distance of two rows before and after, by the keys of a sample; nothing where none was measured."""
    before, after = others["rows_before"], others["rows_after"]
    if (before is None) != (after is None):
        raise click.UsageError("--rows-before and --rows-after belong together; give both")
    if before is None or after is None:
        return {}
    return {
        "rows before": typed_measure(before, edition, "--rows-before"),
        "rows after": typed_measure(after, edition, "--rows-after"),
    }


def _told_of_rows(measured: dict[str, Fraction], edition: Edition) -> list[str]:
    if "rows before" not in measured:
        return []
    lost = sample_draw_in(measured["rows before"], measured["rows after"])
    return [f"From row to row the turned tucks draw in by {write_length(lost, edition)} {edition.unit}."]


def _told_of_washing(flat: Fraction, edition: Edition, washed: str | None) -> list[str]:
    if washed is None:
        return []
    share = write_number(100 * sample_shrinkage(flat, typed_measure(washed, edition, "--washed")))
    return [f"The cloth shrinks by {share} %; write 'shrinkage: {share} %' under the cloth."]
