from __future__ import annotations

import math
from fractions import Fraction
from functools import cache
from pathlib import Path

from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.definitions.cautions import cautions_of
from generator.definitions.room import load_room
from generator.lengths import INCH, METRIC, read_length
from generator.rendering.glossary import read_glossary
from generator.rendering.reference import reference_links, render_glossary, render_reference, sourced_cautions
from generator.rendering.reference_tuck_tables import percent_range

ROOT = Path(__file__).resolve().parents[2]
CAUTIONS = sourced_cautions(cautions_of(load_room(ROOT / "site" / "site.yaml", ROOT)), INCH)


@cache
def pages() -> dict[str, str]:
    return render_reference((INCH, METRIC), CAUTIONS, setting())


@cache
def lines(address: str) -> dict[str, list[list[str]]]:
    """The rows of every table of a page, by the name of its section."""
    parser = HTMLParser(namespace_html_elements=False)
    page = parser.parse(pages()[address])
    assert parser.errors == []
    return {
        str(section.get("aria-labelledby")): [
            [" ".join("".join(cell.itertext()).split()) for cell in row] for row in section.iter("tr")
        ]
        for section in page.iter("section")
    }


def tucks() -> dict[str, list[list[str]]]:
    return lines("reference/tucks.html")


def shop() -> dict[str, list[list[str]]]:
    return lines("reference/shop.html")


def test_the_first_page_leads_to_every_other_page() -> None:
    first = render_reference((INCH, METRIC), CAUTIONS, setting(), glossary=True)["reference/index.html"]
    first = first.replace("../", "")
    links = reference_links(glossary=True)
    assert links[-1].title == "Glossary"
    for link in links:
        assert f'href="{link.address.removeprefix("reference/")}"' in first


def test_a_room_without_a_glossary_is_led_to_none() -> None:
    assert "pages/glossary.html" not in pages()["reference/index.html"]


def test_five_tucks_of_three_eighths_hide_three_and_three_quarters() -> None:
    # 5 x 2 x 3/8 = 3 3/4.
    heads, *rows = tucks()["hidden-inch"]
    line = next(row for row in rows if row[0] == "5")
    assert line[heads.index("3/8 in deep")] == "3 3/4 in"


def test_twelve_centimetres_of_cloth_are_hidden_by_six_tucks_of_a_centimetre() -> None:
    heads, *rows = tucks()["hidden-metric"]
    assert next(row for row in rows if row[0] == "6")[heads.index("1 cm deep")] == "12 cm"


def test_the_table_of_fits_tells_number_margins_and_cloth() -> None:
    # 12 in, 3/8 deep, 1 1/2 apart: pitch 3/4, margins at least 1/2; (12 - 1) / (3/4) = 14 2/3, so 15 tucks; 14 x 3/4 =
    # 10 1/2 leaves 3/4 at each side; 12 + 15 x 3/4 = 23 1/4 in of cloth.
    heads, *rows = tucks()["fitting-inch"]
    line = next(row for row in rows if row[0] == "12 in")
    assert line[heads.index("3/8 in deep, 1 1/2 in apart")] == "15, margins 3/4 in, cloth 23 1/4 in"


def test_rows_four_inches_apart_lose_what_the_triangles_say() -> None:
    # d 1/2, S 4: 4 - sqrt(16 - 1) = 0.127, 1/8 on the ruler and never less than told; 4 - sqrt(16 - 2.4674) = 0.3213,
    # between 5/16 and 3/8, and never more than told: 3/8.
    heads, *rows = tucks()["draw-in-inch"]
    column = heads.index("1/2 in deep")
    assert next(row for row in rows if row[0] == "4 in")[column] == "1/8 to 3/8 in"
    # 2 in lies between pi / 2 and six depths: 2 - sqrt(4 - 1) = 0.268, 2 - sqrt(4 - 2.4674) = 0.762, up to 13/16.
    assert next(row for row in rows if row[0] == "2 in")[column] == "1/4 to 13/16 in; sew a sample"


def test_errors_of_a_fine_step_add_up_twice_for_every_tuck() -> None:
    # After 24 tucks: 2 x 24 / 16 = 3 in; by chance 2 / 16 x sqrt 24 = 0.612, 5/8 to the nearest 1/16.
    line = next(row for row in tucks()["checks-inch"][1:] if row[0] == "24")
    assert line == ["24", "1/4 in", "3 in", "5/8 in"]


def test_yards_in_metres_are_exact_and_asked_for_without_ever_being_short() -> None:
    # 1 yd = 0.9144 m exactly (NBS Circular 572); shops sell by 10 cm here.
    assert ["1 yd", "36 in", "0.9144 m", "1 m"] in shop()["yards"]
    assert ["5/8 yd", "22 1/2 in", "0.5715 m", "0.6 m"] in shop()["yards"]
    for row in shop()["yards"][1:]:
        exact, asked = (Fraction(cell.removesuffix(" m")) for cell in row[2:])
        assert exact <= asked < exact + Fraction(1, 10)


def test_a_metre_is_asked_for_as_a_yard_and_an_eighth() -> None:
    # 1 m = 39.370 in = 39 3/8; 1.0936 yd, up to 1 1/8 yd.
    assert ["1 m", "39 3/8 in", "1 1/8 yd"] in shop()["metres"]


def test_a_flounce_on_a_yard_takes_a_yard_and_a_half() -> None:
    line = next(row for row in shop()["fullness"] if row[0] == "flounce on a band")
    assert line[1:4] == ["1 1/2", "1 1/2 yd", "1.5 m"]


def test_a_buttonhole_is_the_diameter_and_the_thickness() -> None:
    heads, *rows = shop()["buttonholes-inch"]
    assert next(row for row in rows if row[0] == "7/8 in")[heads.index("1/8 in thick")] == "1 in"
    heads, *rows = shop()["buttonholes-metric"]
    assert next(row for row in rows if row[0] == "2 cm")[heads.index("3 mm thick")] == "2.3 cm"


def test_forty_lignes_are_an_inch() -> None:
    # Dictionary of Dry Goods: 40 lignes = 1 in, 20 lignes = 1/2 in = 12.7 mm.
    assert ["40", "1 in", "25.4 mm"] in shop()["lignes"]
    assert ["20", "1/2 in", "12.7 mm"] in shop()["lignes"]


def test_every_caution_of_the_tool_and_the_room_is_listed_with_its_source() -> None:
    page = pages()["reference/cautions.html"]
    assert "Told with: rotary cutter. Source: 4-H sewing safety guide." in page
    assert "Carry them down the outside stair" in page
    assert page.count('class="told-caution"') == len(CAUTIONS)


def test_a_share_is_told_to_a_tenth_of_a_percent() -> None:
    assert percent_range(Fraction(57191, 10**6), Fraction(148035, 10**6)) == "5.7 to 14.8 %"
    assert percent_range(Fraction(1, 50), Fraction(1, 50)) == "2 %"


def test_every_word_of_the_glossary_has_an_anchor_of_its_own() -> None:
    introduction, entries = read_glossary((ROOT / "site" / "pages" / "glossary.md").read_text(encoding="utf-8"))
    anchors = [entry.anchor for entry in entries]
    assert len(anchors) == len(set(anchors)) > 20
    assert {"tuck", "fold-mark"} <= set(anchors)
    assert introduction
    page = render_glossary("# Words\n\nFirst.\n\n**fold mark**: where it is *creased*.\n\nMore.", setting())
    assert '<div id="fold-mark">' in page
    assert "where it is <em>creased</em>." in page
    assert page.index("First.") < page.index("fold mark") < page.index("More.")


def test_a_length_lost_is_bounded_by_what_the_tables_say() -> None:
    # Second route: floats. The bounds of the triangles lie inside what is told, by less than one mark.
    for name, mark in (("inch", 1 / 16), ("metric", 0.1 / 2.54)):
        heads, *rows = tucks()[f"draw-in-{name}"]
        for apart, *cells in rows:
            for head, cell in zip(heads[1:], cells, strict=True):
                if cell == "too close":
                    continue
                spacing = float(read_length(apart, "in"))
                depth = float(read_length(head.removesuffix(" deep"), "in"))
                least = spacing - math.sqrt(spacing**2 - 4 * depth**2)
                most = spacing - math.sqrt(spacing**2 - (math.pi * depth) ** 2)
                low, high = said_range(cell.removesuffix("; sew a sample"))
                assert low <= least + 1e-9 < low + mark + 1e-9
                assert high - mark < most <= high + 1e-9


def said_range(cell: str) -> tuple[float, float]:
    """Both ends of a range [in] that names its unit once."""
    ends, unit = cell.rsplit(" ", 1)
    low, _, high = ends.partition(" to ")
    return float(read_length(f"{low} {unit}")), float(read_length(f"{high or low} {unit}"))
