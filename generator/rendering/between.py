"""Sizes between the named ones, to choose from: worksheets of one edition come in, a list of them goes out."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from markupsafe import Markup

from generator.calculation.worked_project import Worksheet
from generator.lengths import say_length, write_length, write_number
from generator.rendering.comparison import Comparison, compared
from generator.rendering.typeset import bare


@dataclass(frozen=True, slots=True)
class SizeStep:
    """One size to choose: the page it leads to, its measure as it is printed and as a script reads it."""

    page: str
    measure: Markup
    number: str
    named: bool


@dataclass(frozen=True, slots=True)
class SizeSteps:
    """All sizes of one edition in the order of the measure that decides, and the same side by side in a table.

    ``left_out`` are the sizes that cannot be sewn, each with the reason.
    """

    called: str
    steps: tuple[SizeStep, ...]
    table: Comparison
    left_out: tuple[tuple[str, str], ...] = ()


@dataclass(frozen=True, slots=True)
class SizesBetween:
    """The sizes between the named ones of one edition, and what cannot be sewn with the reason."""

    worksheets: tuple[Worksheet, ...]
    left_out: tuple[tuple[str, str], ...] = ()


def deciding(worksheet: Worksheet) -> Fraction:
    """Return the measure by which a size is chosen [in]; nothing where it has none."""
    return worksheet.deciding.length if worksheet.deciding else Fraction(0)


def by_measure(worksheet: Worksheet) -> Worksheet:
    """Return a worksheet whose size is called by the measure that decides, as its page calls it: '13 1/2 in pad'."""
    told = worksheet.deciding
    return (
        replace(worksheet, size_label=f"{say_length(told.length, worksheet.edition)} {told.name}")
        if told
        else worksheet
    )


def steps(named: Sequence[Worksheet], between: SizesBetween) -> SizeSteps:
    """Return all sizes of one edition in the order of their measure."""
    ordered = sorted((*named, *map(by_measure, between.worksheets)), key=deciding)
    known = {worksheet.size for worksheet in named}
    table = _of_all(compared(ordered))
    return SizeSteps(
        next(choice.called for choice in table.choices),
        tuple(
            SizeStep(
                choice.link.page,
                bare(deciding(one), one.edition),
                f"{float(deciding(one) / one.edition.unit_length):.6g}",
                one.size in known,
            )
            for choice, one in zip(table.choices, ordered, strict=True)
        ),
        table,
        between.left_out,
    )


def _of_all(table: Comparison) -> Comparison:
    """A table without what only some of the sizes buy: a pad that is named by its size would fill a column for each."""
    return replace(table, supplies=tuple((item, cells) for item, cells in table.supplies if all(cells)))


def typed(worksheet: Worksheet) -> str:
    """Return what a teacher types for the handout of a size of one's own; its numbers are those of the page."""
    edition = worksheet.edition
    said = {name: write_length(value, edition, unit=True) for name, value in worksheet.measures.items()}
    said |= {name: write_number(value) for name, value in worksheet.numbers.items()}
    own = " ".join(f'--with "{name}={said[name]}"' for name in worksheet.own)
    return f"tuckwright sheet {worksheet.project} {own} --edition {edition.name} -o sheet.pdf"
