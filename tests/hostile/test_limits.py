"""What would keep a machine busy is refused before any work, with its place and a remedy; a real room is not."""

from __future__ import annotations

import tracemalloc
from pathlib import Path

import pytest

from generator.definitions.class_plan import load_class
from generator.definitions.project import load_project
from generator.definitions.room import load_room
from generator.definitions.theme import load_theme
from generator.errors import FaultyFileError
from generator.limits import LARGEST_FILES

from .checked_room import GOOD, checked, room, spoilt

CLASS = """\
title: Evening
project: cushion
edition: inch
paper: A4
sessions:
  - day: 2031-03-08
    starts: 9:30
    ends: 12:30
places:
  - size: small
    number: 2
"""


def theme(folder: Path, name: str, content: str | bytes, *, keys: str = "") -> str:
    """What reading a theme with one file of its own says."""
    own = folder / "quay"
    (own / name).parent.mkdir(parents=True, exist_ok=True)
    (own / "theme.yaml").write_text(f"title: Quay\nbased on: plain\n{keys}", encoding="utf-8")
    (own / name).write_bytes(content if isinstance(content, bytes) else content.encode())
    try:
        load_theme(own)
    except FaultyFileError as fault:
        return str(fault)
    return "sound"


@pytest.mark.parametrize(
    ("style", "says"),
    [
        ("ul {\n columns: 1000000000 }", "2:11: 'columns' has 20 columns at most, this is 1000000000"),
        ("ul {\n column-count: 1e9 }", "2:16: 'column-count' has 20 columns at most, this is 1e9"),
        (
            "main { display: grid;\n grid-template-columns: repeat(10000000, 1px) }",
            "2:32: 'repeat' repeats 100 times at most, this is 10000000",
        ),
        ("p {\n grid-row: 1 / span 99999 }", "2:21: a grid has 100 lines at most, this is 99999"),
        ("p {\n width: calc(1px * 10000000) }", "2:20: a style sheet has numbers up to 10000"),
        ("p {\n width: calc(9999px * 9999) }", "2:9: 'calc' may come to 99980001 here, 10000 at most; write what"),
        ("p {\n width: calc(2px + 5px / (0.001 * 0.1)) }", "2:9: 'calc' may come to 100000 here"),
        ("p {\n height: 99999in }", "2:10: a style sheet has numbers up to 10000"),
        ("p {\n --far: 100000 }", "2:9: a style sheet has numbers up to 10000"),
        ("p { width: " + "(" * 5000, "1:1: brackets inside each other, 30 deep at most"),
        ("p { }\n" * 40_000, "1:1: the file is larger than 200 kB; a style sheet says only what differs"),
        (b"p { }\n/* \xe9 */", "2:4: the file is not UTF-8 text from here on; save it as UTF-8"),
    ],
)
def test_a_style_sheet_that_asks_for_a_flood_is_refused(tmp_path: Path, style: str | bytes, says: str) -> None:
    assert theme(tmp_path, "css/handout.css", style).startswith(f"quay/css/handout.css:{says}")


def test_style_sheets_as_people_write_them_are_read(tmp_path: Path) -> None:
    style = (
        "p { columns: 2; margin-left: -9999px; z-index: 9999; color: #999999; width: calc(100% - 2 * 0.6in) }\n"
        "@media (min-width: 1200px) { .a { grid-template-columns: repeat(12, minmax(0, 1fr)) } }\n"
        ".b { background: url(\"a.svg?v=20310308\") } /* 99999999 */ .c::after { content: '99999999' }"
    )
    assert theme(tmp_path, "css/handout.css", style) == "sound"


def png(wide: int, high: int) -> bytes:
    head = b"\x89PNG\r\n\x1a\n" + (13).to_bytes(4, "big") + b"IHDR"
    return head + wide.to_bytes(4, "big") + high.to_bytes(4, "big") + b"\x08\x02\x00\x00\x00"


# A pattern of a hundred dots fills a hundred shapes, once by each of them and once by a style.
DOTS = f'<pattern id="dots">{"<path/>" * 100}</pattern>'
FILLED = DOTS + '<path fill="url(#dots)"/>' * 100
STYLED = f"<style>path {{ fill: url('#dots') }}</style>{DOTS}" + "<path/>" * 100
SVG = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 10 10">{}</svg>'
NESTED = "".join(
    f'<g id="g{level}">{f"""<use href="#g{level + 1}"/>""" * 10}</g>' if level < 9 else '<g id="g9"><rect/></g>'
    for level in range(10)
)


@pytest.mark.parametrize(
    ("name", "content", "says"),
    [
        (
            "mark.png",
            png(12_000, 12_000),
            "a logo has 3000 x 3000 dots at most, this has 12000 x 12000; save it smaller",
        ),
        ("mark.png", b"GIF89a" + b"x" * 40, "this is no PNG picture; save the mark as PNG, or as SVG"),
        ("mark.png", png(10, 10) + b"x" * 3_000_000, "the file is larger than 2000 kB; save the mark with fewer dots"),
        ("mark.svg", SVG.format(NESTED), "an SVG logo draws 5000 things at most, this draws "),
        (
            "mark.svg",
            SVG.format('<g id="a"><use href="#b"/></g><g id="b"><use href="#a"/></g>'),
            "an SVG logo uses itself, or its groups lie too deep inside each other; save it as plain SVG",
        ),
        ("mark.svg", SVG.format(FILLED), "an SVG logo draws 5000 things at most, this draws "),
        ("mark.svg", SVG.format(STYLED), "an SVG logo draws 5000 things at most, this draws "),
        (
            "mark.svg",
            SVG.format('<mask id="a"><g mask="url(#b)"/></mask><mask id="b"><g mask="url(\'#a\')"/></mask>'),
            "an SVG logo uses itself, or its groups lie too deep inside each other; save it as plain SVG",
        ),
        ("mark.svg", SVG.format("<g>" * 3000 + "</g>" * 3000), "an SVG logo uses itself, or its groups lie too deep"),
        (
            "mark.svg",
            SVG.replace("0 0 10 10", "0 0 12000 12000").format(""),
            "a logo is 3000 x 3000 at most, here 'viewBox' has 12000; draw it smaller",
        ),
        (
            "mark.svg",
            '<!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]>' + SVG.format("<text>&b;</text>"),
            "an SVG logo declares nothing of its own (<!ENTITY); save it as plain SVG",
        ),
        ("mark.svg", SVG.format("<g>"), "this is no SVG picture: "),
        ("mark.svg", "<html/>", "this is no SVG picture; its first element is not svg"),
    ],
)
def test_a_logo_that_would_take_long_to_draw_is_refused(
    tmp_path: Path, name: str, content: str | bytes, says: str
) -> None:
    assert theme(tmp_path, name, content, keys=f"logo: {name}\n").startswith(f"quay/{name}:1:1: {says}")


def test_a_logo_that_is_no_text_is_told_where(tmp_path: Path) -> None:
    said = theme(tmp_path, "mark.svg", SVG.format("\n<!-- é -->").encode("latin-1"), keys="logo: mark.svg\n")
    assert said == "quay/mark.svg:2:6: the file is not UTF-8 text from here on; save it as UTF-8"


@pytest.mark.parametrize("name", ["mark.svg", "mark.png"])
def test_ordinary_logos_are_taken(tmp_path: Path, name: str) -> None:
    drawn = '<?xml version="1.0"?>\n<!-- drawn -->' + SVG.format(
        '<defs><path id="a"/><linearGradient id="fade"/></defs><use href="#a"/><use href="#a"/>'
        '<style>.tide { fill: url(#fade) }</style><path style="fill:url(#fade)" href="https://loft.example/#a"/>'
    )
    assert theme(tmp_path, name, drawn if name == "mark.svg" else png(600, 600), keys=f"logo: {name}\n") == "sound"


@pytest.mark.parametrize(
    ("text", "says"), [("0pt", "between 5pt and 72pt, this is 0pt"), ("99pt", "between 5pt and 72pt")]
)
def test_letters_of_no_size_are_refused(tmp_path: Path, text: str, says: str) -> None:
    said = theme(tmp_path, "css/x.css", "", keys=f"measures:\n  text: {text}\n")
    assert said.startswith("quay/theme.yaml:4:9: 'text' lies ")
    assert says in said


def plan(folder: Path, text: str) -> str:
    path = folder / "evening.yaml"
    path.write_text(text, encoding="utf-8")
    project = load_project(room(folder / "room") / "projects" / "cushion.yaml")
    try:
        load_class(path, project, folder)
    except FaultyFileError as fault:
        return str(fault)
    return "sound"


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("number: 2", "number: 9999", "10:5: 9999 places and spare kits; a class has 200 at most, so divide it into"),
        ("number: 2", "number: 0", "10:5: no places are given here; write 1 or more, or take the entry out"),
        (
            "number: 2",
            "number: 2\nspare kits:\n  small: 900",
            "10:5: 902 places and spare kits; a class has 200 at most",
        ),
        ("places:\n  - size: small\n    number: 2", "places: []", "9:9: nothing is listed here; list one at least"),
        ("day: 2031-03-08", "day: 20310308", "6:10: '20310308' is no day; write year, month and day as in 2031-03-08"),
        ("day: 2031-03-08", "day: 2031-W10-6", "6:10: '2031-W10-6' is no day"),
    ],
)
def test_a_class_of_more_than_a_room_holds_is_refused(tmp_path: Path, old: str, new: str, says: str) -> None:
    assert plan(tmp_path, CLASS.replace(old, new)).startswith(f"evening.yaml:{says}")


def test_a_class_as_large_as_a_hall_is_read(tmp_path: Path) -> None:
    assert plan(tmp_path, CLASS.replace("number: 2", "number: 200")) == "sound"


def test_many_parts_of_one_cloth_are_refused_before_they_are_laid_out(tmp_path: Path) -> None:
    many = spoilt("    overlap: lap\n", "    overlap: lap\n    quantity: 2000\n")
    done = checked(room(tmp_path / "room", many))
    assert done.of("cushion")[0].startswith(
        "projects/cushion.yaml:17:5: 4001 parts are cut from this cloth; more than 500 are not laid out. Write what "
        "one student makes, and let a class say how many make it"
    )


def test_a_million_sizes_between_two_are_refused_before_any_is_worked(tmp_path: Path) -> None:
    many = spoilt("measures:\n", "between:\n  every: 1/250000 in or 1 cm\nmeasures:\n")
    done = checked(room(tmp_path / "room", many))
    assert done.code == 1
    assert "1000000 steps of 1/250000 in from 12 in to 16 in; a project has 40 at most" in done.of("cushion")[0]


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ("    overlap: lap\n", "    overlap: lap\n    quantity: 0\n", "a piece is made at least once; write 1 or more"),
        ("title: Good cushion", f"title: {'a' * 1900}", "1900 letters; what stands on one line has 120 at most"),
        ("width: 44 in or 112 cm", "width: 44 in\n    shrinkage: 99.9999 %", "a share lies between 0 % and 50 %"),
        ("side: 12 in or 30 cm", "side: -12 in", "'-12 in' is less than nothing; a size is nothing or more"),
        (
            "label: Sofa",
            'label: "\\e[2JSofa"',
            "the text holds a character that cannot be read (number 27); take it out",
        ),
        ("label: Sofa", 'label: "\\u202eafoS"', "the text holds a character that cannot be read (number 8238)"),
    ],
)
def test_values_that_make_no_sense_are_refused(tmp_path: Path, old: str, new: str, says: str) -> None:
    done = checked(room(tmp_path / "room", spoilt(old, new)))
    assert done.code == 1
    assert says in done.of("cushion")[0]
    assert "\x1b" not in done.printed


@pytest.mark.parametrize(
    ("text", "says"),
    [
        (
            "rulers:\n  inch:\n    marks: 1 in\n    finest: 0 in\n",
            "6:13: '0 in': no ruler and no shop has such a step; ",
        ),
        ("rulers:\n  inch:\n    marks: []\n    finest: 1/8 in\n", "5:12: nothing is listed here; list one at least"),
        ("shop:\n  inch: 0 yd\n", "4:9: '0 yd': no ruler and no shop has such a step; write a length between "),
        ("shop:\n  inch: 1 in / (1 - 1)\n", "4:9: something is divided by a value that comes to nothing"),
        ("thread:\n  stitch: 0 in\n", "4:11: '0 in': this is never nothing; write for example 110 yd or 2.5 mm"),
        (
            "rates:\n  crease: 0 seconds a foot\n",
            "4:11: '0': work takes more than no time; write for example 30 seconds",
        ),
        ("guides: []\n", "3:9: nothing is listed here; list one at least, or take the line out"),
    ],
)
def test_a_room_that_cannot_be_counted_in_is_refused(tmp_path: Path, text: str, says: str) -> None:
    path = tmp_path / "site.yaml"
    path.write_text(f"room:\n  name: A\n{text}", encoding="utf-8")
    with pytest.raises(FaultyFileError) as refused:
        load_room(path, tmp_path)
    assert str(refused.value).startswith(f"site.yaml:{says}")


def test_a_file_that_is_too_large_is_never_read(tmp_path: Path) -> None:
    path = tmp_path / "evening.yaml"
    with path.open("wb") as file:
        file.truncate(600_000_000)
    tracemalloc.start()
    with pytest.raises(FaultyFileError, match="the file is larger than 200 kB"):
        load_class(path)
    assert tracemalloc.get_traced_memory()[1] < LARGEST_FILES[".yaml"]
    tracemalloc.stop()


def test_the_good_project_keeps_to_all_limits() -> None:
    assert len(GOOD) < LARGEST_FILES[".yaml"] / 10
