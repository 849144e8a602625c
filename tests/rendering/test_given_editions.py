from __future__ import annotations

import json

from cushion_sheet import cushion
from room_setting import setting
from tinyhtml5.parser import HTMLParser

from generator.calculation.worksheet.edition_numbers import Numbers
from generator.calculation.worksheet.editions import PublishedEdition
from generator.rendering.cards import SheetTold
from generator.rendering.given_editions import newest_list, sheet_editions
from generator.rendering.machine import render_machine

SMALL, LARGE = ("small", "inch"), ("large", "inch")
GIRTH, OTHER = {"band: girth": "20"}, {"band: girth": "20 1/2"}


def edition(mark: str, **sheets: Numbers) -> PublishedEdition:
    return PublishedEdition(
        "neck-roll", mark, "2031-02-01", {(size, "inch"): numbers for size, numbers in sheets.items()}
    )


KEPT = (edition("2031-02", small=GIRTH, large=GIRTH), edition("2031-03 b", small=GIRTH, large=OTHER, wide=GIRTH))
NOW = edition("", small=GIRTH, large=OTHER)


def test_a_sheet_knows_what_is_otherwise_since_each_mark_the_newest_first() -> None:
    found = sheet_editions(KEPT, NOW)
    assert set(found) == {SMALL, LARGE}
    assert [(one.mark, [change.now for change in one.changes]) for one in found[LARGE].given] == [
        ("2031-03 b", []),
        ("2031-02", ["20 1/2"]),
    ]
    assert [one.changes for one in found[SMALL].given] == [(), ()]


def test_sheets_with_the_same_numbers_have_the_same_fingerprint_whatever_their_mark() -> None:
    found = sheet_editions(KEPT, NOW)
    assert {one.numbers for one in found[SMALL].given} == {found[SMALL].numbers}
    newest, former = found[LARGE].given
    assert newest.numbers == found[LARGE].numbers != former.numbers


def test_the_list_of_the_newest_names_sheets_as_their_addresses_do() -> None:
    found = sheet_editions(KEPT, NOW)
    told = [SheetTold(found[LARGE].sheet, "large", "Large", "inch", "2031-03 b", found[LARGE].numbers)]
    assert json.loads(newest_list(told)) == {"neck-roll/large/inch": ["2031-03 b", found[LARGE].numbers]}


def test_what_a_page_tells_its_script_ends_no_script_element() -> None:
    hostile = PublishedEdition("neck-roll", "</script><b>", "2031-02-01", {LARGE: {": </script>": "<!--"}})
    editions = sheet_editions((hostile,), NOW)[LARGE]
    parser = HTMLParser(namespace_html_elements=False)
    page = parser.parse(render_machine(cushion(), setting(), editions))
    assert parser.errors == []
    (data,) = [found for found in page.iter("script") if found.get("id") == "given"]
    ((mark, changes),) = json.loads(data.text or "").values()
    assert (mark, changes[0]) == ("</script><b>", ["", "</script>", "<!--", ""])
