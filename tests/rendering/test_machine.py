from __future__ import annotations

import dataclasses
from itertools import pairwise
from xml.etree import ElementTree

from cushion_sheet import cushion
from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.calculation.worked_project import SheetStep, Worksheet
from generator.rendering.further_files import further_files
from generator.rendering.machine import render_machine, stops


def sewn(rows: int = 5) -> Worksheet:
    """The cushion with three steps: its tucks, its rows, and one of the project's own."""
    worksheet = cushion(rows=rows)
    plain = worksheet.steps[0]

    def step(number: int, title: str, standard: str) -> SheetStep:
        told = tuple(worksheet.cautions)[:1]
        return dataclasses.replace(
            plain, number=number, title=title, standard=standard, pieces=("front",), cautions=told
        )

    steps = (step(1, "Stitch the tucks", "stitch tucks"), step(2, "Sew the rows", "sew rows"), step(3, "Fill it", ""))
    return dataclasses.replace(worksheet, steps=steps)


def tree(worksheet: Worksheet) -> ElementTree.Element:
    parser = HTMLParser(namespace_html_elements=False)
    page: ElementTree.Element = parser.parse(render_machine(worksheet, setting()))
    assert parser.errors == []
    return page


def run_scripts(page: ElementTree.Element) -> list[ElementTree.Element]:
    """The scripts that a browser runs; others hold values."""
    return [script for script in page.iter("script") if script.get("type") != "application/json"]


def words(element: ElementTree.Element) -> str:
    return " ".join(" ".join(element.itertext()).split())


def sections(page: ElementTree.Element) -> dict[str, ElementTree.Element]:
    return {str(found.get("id")): found for found in page.iter("section")}


def test_every_step_is_a_stop_and_every_row_of_the_rows_step_is_one_too() -> None:
    assert [(stop.name, stop.place) for stop in stops(sewn(rows=2))] == [
        ("step-1", "Step 1 of 3"),
        ("step-2", "Step 2 of 3"),
        ("step-2-row-1", "Step 2 of 3, row 1 of 2"),
        ("step-2-row-2", "Step 2 of 3, row 2 of 2"),
        ("step-3", "Step 3 of 3"),
    ]


def test_a_panel_without_rows_has_only_its_steps() -> None:
    worksheet = sewn()
    front = worksheet.pieces["front"]
    assert front.panel is not None
    plain = dataclasses.replace(front, panel=dataclasses.replace(front.panel, rows=None))
    assert len(stops(dataclasses.replace(worksheet, pieces={"front": plain}))) == 3


def test_the_tucks_of_a_row_are_listed_in_the_order_of_sewing() -> None:
    worksheet = sewn()
    panel = worksheet.panels["front"]
    assert panel.rows is not None
    found = sections(tree(worksheet))
    for row in panel.rows.rows:
        told = [words(item) for item in found[f"step-2-row-{row.number}"].iter("li")]
        assert told == list(row.words)
        assert len(told) == 17


def test_a_row_from_the_right_begins_with_the_last_tuck_told_by_the_other_word() -> None:
    # Row 2 of linked cells on 17 tucks lies < > < ... <: tuck 17 lies left. Begun at the right, the side not yet sewn
    # is the left one, so the first tuck that is met is turned toward.
    worksheet = sewn()
    panel = worksheet.panels["front"]
    assert panel.rows is not None
    right = next(row for row in panel.rows.rows if row.start == "right")
    row = sections(tree(worksheet))[f"step-2-row-{right.number}"]
    expected = "toward" if right.turns[-1].value == "<" else "away"
    assert words(next(row.iter("li"))) == expected
    assert "start at the right" in words(row)


def test_a_stop_tells_its_cautions_in_full_each_time() -> None:
    worksheet = sewn()
    page = sections(tree(worksheet))
    for name in ("step-1", "step-2", "step-3"):
        assert words(page[name]).count("Caution.") == 1


def test_the_corrections_stand_at_the_step_that_stitches() -> None:
    page = sections(tree(sewn()))
    assert "When a check is off" in words(page["step-1"])
    assert "When a check is off" not in words(page["step-2"])


def test_the_list_to_go_to_names_every_stop_in_order() -> None:
    worksheet = sewn()
    options = [option.get("value") for option in tree(worksheet).iter("option")]
    assert options == [stop.name for stop in stops(worksheet)]


def test_without_the_script_every_stop_is_shown_and_no_button_is() -> None:
    page = tree(sewn())
    assert all(found.get("hidden") is None for found in page.iter("section") if found.get("class") != "corrected")
    assert all(found.get("hidden") is not None for found in page.iter("div") if found.get("id") in ("moves", "places"))


def test_the_page_runs_no_inline_code_and_leaves_out_no_heading_level() -> None:
    page = tree(sewn())
    assert all(script.get("src") and not script.text for script in run_scripts(page))
    assert all(not name.startswith("on") and name != "style" for found in page.iter() for name in found.attrib)
    levels = [int(found.tag[1]) for found in page.iter() if found.tag in ("h1", "h2", "h3", "h4")]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_the_script_for_times_without_a_network_lies_at_the_root_of_the_site() -> None:
    files = further_files(setting("large-print"))
    assert {"assets/machine.css", "assets/reference.css", "offline.js"} == set(files)
    machine = next(found for found in tree(sewn()).iter("div") if found.get("id") == "machine")
    assert machine.get("data-worker") == "../../../offline.js"


def test_a_hostile_title_is_only_text() -> None:
    hostile = dataclasses.replace(sewn(), title='<script>alert("1")</script>')
    assert all(script.get("src") for script in run_scripts(tree(hostile)))
