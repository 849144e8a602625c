"""Forms and cards to print before a class: worksheets of a project or of a room come in, PDFs of one page go out."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import Any

from markupsafe import Markup

from generator.calculation.making.needles import NEEDLES, needle_words, stitch_words
from generator.calculation.worked import TuckSet
from generator.calculation.worked_project import ClothUse, Worksheet
from generator.rendering.one_page import columns_across, edition_values, sheet_html, sheet_paper, written_sheet
from generator.rendering.pdf import page_of, write_fitting_pdf
from generator.rendering.setter import Document
from generator.rendering.setting import Setting
from generator.rendering.tables import finished_size, in_order
from generator.rendering.typeset import said

_MOST_SEATS = 24


@dataclass(frozen=True, slots=True)
class GuideLine:
    """One distance of the guide: the depth, and where it is used."""

    depth: Markup
    where: str


@dataclass(frozen=True, slots=True)
class MarkTest:
    """The marks of one panel in one size, to test a ruler by."""

    size: str
    panel: str
    cut: Markup
    first: Markup
    last: Markup
    number: int


def render_sample_form(projects: Mapping[str, Sequence[Worksheet]], setting: Setting, paper: str) -> bytes:
    """Return the form for a sewn sample: how to sew one, and boxes for what it measures, in one edition."""
    worksheets = [worksheet for sizes in projects.values() for worksheet in sizes]
    return written_sheet("sample_form", setting, paper, edition_values(worksheets))


def render_measuring_guide(worksheets: Sequence[Worksheet], setting: Setting, paper: str) -> bytes:
    """Return what to measure for this kind of thing, with boxes, and the sizes to choose from, in one edition."""
    sizes = [(worksheet.size_label, _own(worksheet), finished_size([worksheet])) for worksheet in worksheets]
    names = _own_lengths(worksheets[0])
    values = {**edition_values(worksheets), "sizes": sizes, "names": names}
    return written_sheet("measuring_guide", setting, paper, values)


def _own_lengths(worksheet: Worksheet) -> tuple[str, ...]:
    """The lengths that a size gives itself, by name: those that a person can measure."""
    return tuple(name for name in worksheet.own if name in worksheet.measures)


def _own(worksheet: Worksheet) -> tuple[Markup, ...]:
    return tuple(said(worksheet.measures[name], worksheet.edition) for name in _own_lengths(worksheet))


def render_machine_card(worksheets: Sequence[Worksheet], setting: Setting, paper: str) -> bytes:
    """Return the card beside the machine: guide distances, needle, stitch, squaring the cloth, testing the marks."""
    values = {
        **edition_values(worksheets),
        "guides": guide_lines(worksheets),
        "tests": mark_tests(worksheets),
        "cloths": _cloths(worksheets),
        "needles": {choice.weight: (needle_words(choice), stitch_words(choice)) for choice in NEEDLES},
        "rows": any(panel.rows for worksheet in worksheets for panel in worksheet.panels.values()),
    }
    return written_sheet("machine_card", setting, paper, values)


def guide_lines(worksheets: Sequence[Worksheet]) -> tuple[GuideLine, ...]:
    """Return every depth of a project once, the shallowest first, with the panels and sizes that use it."""
    places: dict[Any, dict[str, list[str]]] = {}
    for worksheet in worksheets:
        for name, panel in worksheet.panels.items():
            for tucks in (panel.across, *([panel.cross] if panel.cross else [])):
                label = worksheet.pieces[name].label + ("" if tucks is panel.across else ", cross tucks")
                for depth in dict.fromkeys(tucks.depths):
                    places.setdefault(depth, {}).setdefault(label, []).append(worksheet.size_label)
    return tuple(
        GuideLine(
            said(depth, worksheets[0].edition), "; ".join(_where(used, len(worksheets)) for used in panels.items())
        )
        for depth, panels in sorted(places.items())
    )


def _where(used: tuple[str, list[str]], every: int) -> str:
    label, sizes = used
    return f"{label}, {'every size' if len(sizes) == every else ', '.join(sizes)}"


def mark_tests(worksheets: Sequence[Worksheet]) -> tuple[MarkTest, ...]:
    """Return what the marks of each panel and size must come out at."""
    return tuple(
        _mark_test(worksheet, worksheet.pieces[name].label, panel.across)
        for worksheet in worksheets
        for name, panel in worksheet.panels.items()
        if panel.across.count
    )


def _mark_test(worksheet: Worksheet, label: str, tucks: TuckSet) -> MarkTest:
    edition = worksheet.edition
    return MarkTest(
        size=worksheet.size_label,
        panel=label,
        cut=said(tucks.cut, edition),
        first=said(tucks.marks[0], edition),
        last=said(tucks.marks[-1], edition),
        number=tucks.count,
    )


def _cloths(worksheets: Sequence[Worksheet]) -> tuple[ClothUse, ...]:
    found = {use.name: use for worksheet in worksheets for use in worksheet.cloths.values()}
    return tuple(found[name] for name in in_order(found))


def render_sign_up_form(worksheets: Sequence[Worksheet], setting: Setting, paper: str) -> bytes:
    """Return the list to put one's name on: size, own measures, edition, large print; as many lines as fit a page."""
    values = {
        "sheet": worksheets[0],
        "editions": in_order(worksheet.edition.name for worksheet in worksheets),
        "sizes": _sizes_in_all_editions(worksheets),
        "names": _own_lengths(worksheets[0]),
        "narrow": columns_across(setting, paper, 10) < 8,
    }

    set_so_far: list[Document] = []

    def keeps_to_one_page(document: Document) -> bool:
        set_so_far.append(document)
        return len(document.pages) == 1

    def versions() -> Iterator[str]:
        seats = _MOST_SEATS
        while seats:
            yield sheet_html("sign_up_form", setting, {**values, "seats": seats})
            seats = sum(page_of(set_so_far[-1], f"seat-{seat}") == 1 for seat in range(1, seats))

    return write_fitting_pdf(versions(), keeps_to_one_page, sheet_paper(setting, paper))


def _sizes_in_all_editions(worksheets: Sequence[Worksheet]) -> dict[str, str]:
    """Each size by its label, with what it finishes at in every edition."""
    sizes: dict[str, list[Worksheet]] = {}
    for worksheet in worksheets:
        sizes.setdefault(worksheet.size_label, []).append(worksheet)
    return {label: finished_size(of_size) for label, of_size in sizes.items()}


def render_care_sheet(worksheets: Sequence[Worksheet], setting: Setting, paper: str) -> bytes:
    """Return what goes with the finished thing: how to wash, press and keep it."""
    first = worksheets[0]
    values = {
        "sheet": first,
        "cloths": _cloths(worksheets),
        "closures": in_order(closure.kind for closure in first.closures),
        "rows": any(panel.rows for panel in first.panels.values()),
        "shrinks": any(use.shrinkage_along or use.shrinkage_across for use in first.cloths.values()),
    }
    return written_sheet("care_sheet", setting, paper, values)
