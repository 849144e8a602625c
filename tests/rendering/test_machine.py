from __future__ import annotations

import dataclasses
from itertools import pairwise
from xml.etree import ElementTree

from cushion_sheet import cushion
from markupsafe import Markup
from placeholder_pictures import placeholders
from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.calculation.worked_project import SheetStep, Worksheet
from generator.calculation.worksheet.lists import checkpoint_list, mark_list, row_list
from generator.lengths import say_length
from generator.rendering.further_files import further_files
from generator.rendering.machine import render_machine
from generator.rendering.stop_words import beside_picture
from generator.rendering.stops import stops


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


def told(text: str) -> Worksheet:
    """The cushion with one step of its own words."""
    worksheet = cushion()
    step = dataclasses.replace(worksheet.steps[0], number=1, title="Fill it", text=text, standard="", figures=())
    return dataclasses.replace(worksheet, steps=(step,))


LONG = "Put the filling in, corners first, and plump it by hand until all of the tucks on the front of it lie easy."


def test_a_paragraph_is_a_stop_and_a_short_one_goes_with_the_next() -> None:
    found = stops(told(f"{LONG}\n\nCount the pins.\n\n{LONG}\n\nDone."))
    assert [[str(block.striptags()) for block in stop.words] for stop in found] == [
        [LONG],
        ["Count the pins.", LONG, "Done."],
    ]


def test_a_long_paragraph_is_parted_between_sentences_and_a_long_list_between_its_items() -> None:
    """4 x 22 words are more than the 64 of a screen: two sentences and two. A list keeps its lead with one item."""
    found = stops(told(f"{LONG} {LONG} {LONG} {LONG}"))
    assert [[str(block.striptags()) for block in stop.words] for stop in found] == [[f"{LONG} {LONG}"]] * 2
    assert found[1].name == f"{found[0].name}-2"
    (item,) = [LONG.removesuffix(".")]
    listed = stops(told(f"These are the things that you will need for it:\n\n- {item}\n- {item}\n- {item}"))
    assert [[block.count("<li>") for block in stop.words] for stop in listed] == [[0, 2], [1]]


def test_a_sentence_stays_with_the_one_that_it_speaks_of_and_a_short_paragraph_with_itself() -> None:
    """Sentences of 22, 11 and 11, 22 words: 66 are too many for a screen of 64, and the third speaks of the second."""
    foot = "Lay the tuck toward you, onto the side that is next."
    climbs = "The foot meets it at its stitching and climbs over it."
    found = stops(told(f"{LONG} {foot} {climbs} {LONG}"))
    assert [[str(block.striptags()) for block in stop.words] for stop in found] == [
        [f"{LONG} {foot} {climbs}"],
        [LONG],
    ]
    found = stops(told(f"{LONG} {LONG} {foot} {climbs}"))
    assert [[str(block.striptags()) for block in stop.words] for stop in found] == [
        [f"{LONG} {LONG}"],
        [f"{foot} {climbs}"],
    ]
    # The second paragraph would be parted after its first sentence.
    found = stops(told(f"{foot}\n\n{LONG} {LONG} {foot}"))
    assert [[str(block.striptags()) for block in stop.words] for stop in found] == [[foot], [f"{LONG} {LONG} {foot}"]]


def test_a_paragraph_stays_with_the_one_that_it_speaks_of_as_far_as_a_screen_holds_both() -> None:
    """22 and 12 words stand on a screen of 64; 3 x 22 and 12 do not. One that speaks of nothing before stands alone."""
    other = "Or begin such a row at its other end, from right to left."
    found = stops(told(f"{LONG}\n\n{other}\n\n{LONG}"))
    assert [[str(block.striptags()) for block in stop.words] for stop in found] == [[LONG, other], [LONG]]
    found = stops(told(f"{LONG} {LONG} {LONG}\n\n{other}"))
    assert str(found[0].words[-1].striptags()) != other


def test_a_picture_that_would_part_what_belongs_together_follows_the_words() -> None:
    """330 px less 0.7 x 360 are 78: 11 words of 7 px. The first sentence has 11, and 22 with one that speaks of it."""
    foot = "Lay the tuck toward you, onto the side that is next."
    climbs, sews = (
        Markup("<p>{} {}</p>").format(foot, second)
        for second in (
            "The foot meets it at its stitching and climbs over it.",
            "Sew slowly over all of the tucks to the far edge.",
        )
    )
    assert beside_picture((climbs,), 0.7, begins=False) == [(), (climbs,)]
    first, other = beside_picture((sews,), 0.7, begins=False)
    assert [str(one.striptags()) for one in (*first, *other)] == [
        foot,
        "Sew slowly over all of the tucks to the far edge.",
    ]


def test_no_sentence_is_cut_inside_bold_words_or_after_a_number() -> None:
    text = f"{LONG} **{LONG} {LONG}** Sew 3. 5 in. is too long."
    found = stops(told(text))
    assert [str(block).count("<strong>") for stop in found for block in stop.words] == [0, 1]
    assert str(found[1].words[0].striptags()).endswith("Sew 3. 5 in. is too long.")


def test_words_above_a_picture_are_few_and_the_others_follow_without_it() -> None:
    worksheet = told(f"{LONG} {LONG}")
    drawn = dataclasses.replace(worksheet.steps[0], figures=("stitching front", "only on paper"))
    found = stops(dataclasses.replace(worksheet, steps=(drawn,)), {"stitching front": 0.3})
    assert [(stop.figures, len(stop.words)) for stop in found] == [(("stitching front",), 1), ((), 1)]
    assert [str(stop.words[0].striptags()) for stop in found] == [LONG, LONG]


def test_a_picture_that_leaves_no_room_for_a_sentence_follows_the_words_on_a_screen_of_its_own() -> None:
    """390 px less 0.9 x 360 are 66: 9 words of 7 px, and the shortest sentence that stands above a picture has 10."""
    worksheet = told(LONG)
    drawn = dataclasses.replace(worksheet.steps[0], figures=("stitching front",), tools=())
    found = stops(dataclasses.replace(worksheet, steps=(drawn,)), {"stitching front": 0.9})
    assert [(stop.figures, len(stop.words)) for stop in found] == [((), 1), (("stitching front",), 0)]
    assert found[1].name == f"{found[0].name}-shown"


def test_a_list_and_a_table_stay_with_the_words_before_them() -> None:
    found = stops(told(f"{LONG}\n\n- one\n- two\n\n{LONG}\n\n| a | b |\n|---|---|\n| 1 | 2 |"))
    assert [len(stop.words) for stop in found] == [2, 2]


def test_stops_are_named_by_what_they_are_and_no_two_alike() -> None:
    once, twice = stops(
        told(
            f"{LONG}\n\nPut the filling in, corners first: 3 handfuls and no more for each of the four corners of it "
            "that you sewed."
        )
    )
    assert (once.name, twice.name) == ("fill-it-put-the-filling-in", "fill-it-put-the-filling-in-2")


def with_text(worksheet: Worksheet, place: int, text: str) -> Worksheet:
    steps = list(worksheet.steps)
    steps[place] = dataclasses.replace(steps[place], text=text)
    return dataclasses.replace(worksheet, steps=tuple(steps))


def test_marks_are_ticked_along_the_top_edge_and_then_along_the_bottom_edge() -> None:
    worksheet = cushion()
    front = worksheet.panels["front"]
    marked = with_text(sewn(), 0, f"{LONG}\n\n{mark_list(front.across, worksheet.edition)}\n\n{LONG}")
    kinds = [(stop.name, stop.kind) for stop in stops(marked) if stop.step.number == 1]
    assert [name for name, kind in kinds if kind == "lengths"][:3:2] == ["front-marks-top", "front-marks-bottom"]
    assert [kind for _, kind in kinds] == ["care", "told", *["lengths"] * 4, "told"]
    page = sections(tree(marked))
    for edge in ("top", "bottom"):
        # 17 marks are more than a screen of 14 holds: 8 and 9.
        parts = [list(page[f"front-marks-{edge}{part}"].iter("input")) for part in ("", "-from-9")]
        assert [len(boxes) for boxes in parts] == [8, 9]
        ids = [box.get("id") for boxes in parts for box in boxes]
        assert ids[8] == f"front-marks-{edge}-from-9-9"
        assert len(set(ids)) == front.across.count == 17
        assert "Marks along the " + edge + " edge, 9 to 17" in words(page[f"front-marks-{edge}-from-9"])


def test_stitching_is_cut_at_the_check_points_and_each_tells_what_is_right() -> None:
    worksheet = cushion()
    checks = worksheet.panels["front"].checks
    text = f"Stop and measure here, with the tucks laid flat:\n\n{checkpoint_list(checks, worksheet.edition)}"
    stitched = with_text(sewn(), 0, text)
    found = [stop for stop in stops(stitched) if stop.check]
    assert [stop.name for stop in found] == [f"front-check-{point.after}" for point in checks.points]
    first, second = found[:2]
    assert first.title == f"Sew tucks 1 to {checks.points[0].after}, then measure"
    assert second.title.startswith(f"Sew tucks {checks.points[0].after + 1} to ")
    shown = words(sections(tree(stitched))[first.name])
    point = checks.points[0]
    least, most = (say_length(point.expect + off, worksheet.edition) for off in (-point.within, point.within))
    assert f"{least.removesuffix(' in')} to {most} is right" in shown
    assert "Stop and measure here" in shown
    assert "Too narrow" in shown


def test_the_tucks_of_a_row_are_cells_in_the_order_of_sewing() -> None:
    worksheet = rowed()
    panel = worksheet.panels["front"]
    assert panel.rows is not None
    found = sections(tree(worksheet))
    for row in panel.rows.rows:
        cells = [item.get("aria-label") for item in found[f"front-row-{row.number}"].iter("button")]
        assert cells == [f"{place}: {word}" for place, word in enumerate(row.words, 1)]
        assert len(cells) == 17


def rowed() -> Worksheet:
    """The cushion whose second step tells its rows, with a word before them and one after."""
    worksheet = sewn()
    return with_text(worksheet, 1, f"{LONG}\n\n{row_list(worksheet.panels['front'])}\n\n{LONG}")


def test_a_row_from_the_right_begins_with_the_last_tuck_told_by_the_other_word() -> None:
    # Row 2 of linked cells on 17 tucks lies < > < ... <: tuck 17 lies left. Begun at the right, the side not yet sewn
    # is the left one, so the first tuck that is met is turned toward.
    worksheet = rowed()
    panel = worksheet.panels["front"]
    assert panel.rows is not None
    right = next(row for row in panel.rows.rows if row.start == "right")
    row = sections(tree(worksheet))[f"front-row-{right.number}"]
    expected = "toward" if right.turns[-1].value == "<" else "away"
    assert next(row.iter("button")).get("aria-label") == f"1: {expected}"
    assert "Begin at the right" in words(row)


def test_the_rows_stand_where_the_words_have_them() -> None:
    kinds = [stop.kind for stop in stops(rowed()) if stop.step.number == 2]
    assert kinds == ["told", *["row"] * 5, "told"]


def test_a_caution_has_a_stop_of_its_own_where_it_is_first_told_and_is_at_hand_in_every_later_step() -> None:
    worksheet = rowed()
    told_of = {name: dataclasses.replace(one, short="sharp points") for name, one in worksheet.cautions.items()}
    worksheet = dataclasses.replace(worksheet, cautions=told_of)
    page = sections(tree(worksheet))
    first, *others = (
        [stop for stop in stops(worksheet) if stop.step.number == step.number] for step in worksheet.steps
    )
    assert [stop.kind for stop in first][:2] == ["care", "told"]
    assert first[0].title == "Caution: sharp points"
    text = " ".join(str(first[0].words[0].striptags()).split())
    assert text in words(page[first[0].name])
    for own in others:
        assert "care" not in [stop.kind for stop in own]
        (folded,) = page[own[0].name].iter("details")
        assert "Take care: sharp points" in words(folded)
        assert text in words(folded)


def test_the_pictures_of_rows_and_checks_stand_there_and_are_drawn_once() -> None:
    worksheet = rowed()
    steps = list(worksheet.steps)
    steps[1] = dataclasses.replace(steps[1], figures=("turns front", "pair stitching front"))
    worksheet = dataclasses.replace(worksheet, steps=tuple(steps))
    drawn = {**dict.fromkeys(placeholders(), 0.3), "pair stitching front": 0.3}
    found = [stop for stop in stops(worksheet, drawn) if stop.step.number == 2]
    assert [stop.figures for stop in found] == [
        ("pair stitching front",),
        *[("turns front",)] * 5,
        (),
    ]
    page = render_machine(worksheet, setting(), None, placeholders())
    assert page.count('href="#figure-2"') == 4


def test_the_picture_of_a_check_stands_at_the_check_that_it_shows() -> None:
    worksheet = sewn()
    points = worksheet.panels["front"].checks.points
    text = f"Stop and measure here:\n\n{checkpoint_list(worksheet.panels['front'].checks, worksheet.edition)}"
    step = dataclasses.replace(worksheet.steps[0], text=text, figures=("checking front",))
    found = stops(dataclasses.replace(worksheet, steps=(step,)), {"checking front": 0.3})
    shown = {stop.name: stop.figures for stop in found if stop.check}
    assert len(points) > 1
    assert shown == {
        f"front-check-{point.after}": ("checking front",) if point is points[0] else () for point in points
    }


def test_the_list_to_go_to_names_the_first_stop_of_every_step() -> None:
    worksheet = rowed()
    (places,) = [found for found in tree(worksheet).iter("details") if found.get("id") == "places"]
    assert [link.get("href") for link in places.iter("a")] == [
        f"#{stop.name}" for stop in stops(worksheet) if stop.begins
    ]


def test_without_the_script_every_stop_is_shown_and_no_button_is() -> None:
    page = tree(sewn())
    assert all(found.get("hidden") is None for found in page.iter("section") if found.get("class") != "corrected")
    assert all(found.get("hidden") is not None for found in page.iter("div") if found.get("id") in ("moves",))


def test_the_page_runs_no_inline_code_and_leaves_out_no_heading_level() -> None:
    page = tree(sewn())
    assert all(script.get("src") and not script.text for script in run_scripts(page))
    assert all(not name.startswith("on") and name != "style" for found in page.iter() for name in found.attrib)
    levels = [int(found.tag[1]) for found in page.iter() if found.tag in ("h1", "h2", "h3", "h4")]
    assert levels[0] == 1
    assert all(after <= before + 1 for before, after in pairwise(levels))


def test_the_script_for_times_without_a_network_lies_at_the_root_of_the_site() -> None:
    files = further_files(setting("large-print"))
    assert {"assets/machine.css", "assets/reference.css", "offline.js", "site.webmanifest"} == set(files)
    machine = next(found for found in tree(sewn()).iter("div") if found.get("id") == "machine")
    assert machine.get("data-worker") == "../../../offline.js"


def test_a_hostile_title_is_only_text() -> None:
    hostile = dataclasses.replace(sewn(), title='<script>alert("1")</script>')
    assert all(script.get("src") for script in run_scripts(tree(hostile)))
