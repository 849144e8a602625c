from __future__ import annotations

import re
import unicodedata

from hypothesis import example, given
from hypothesis import strategies as st

from generator.rendering.addresses import (
    handout_file,
    project_page,
    project_slug,
    relative,
    size_page,
    slug,
    words_page,
)

NAMES = st.text(max_size=80) | st.from_regex(r"[a-zA-Z0-9 \-_.]{0,70}", fullmatch=True)
LOOK_ALIKES = [
    *("a", "A", "\N{CYRILLIC SMALL LETTER A}", "\N{FULLWIDTH LATIN SMALL LETTER A}", "\u00e1", "a\u0301", "a\u200b"),
    *("a ", " a", "a-", "a b", "a-b", "a_b", "a  b", "a\u00a0b", "a\u2011b", "", " ", ".", "..", "a/b", "a\\b"),
]


def test_ordinary_names_stay_readable() -> None:
    assert slug("2 to 3") == "2-to-3"
    assert slug("007") == "007"
    assert project_slug("neck-roll") == "neck-roll"


def test_a_size_named_by_its_measures_stays_readable_and_has_an_address_of_its_own() -> None:
    names = (
        *("side 12 1/2 in", "side 12 1 2 in", "side 12, 1 2 in", "side 12 1_2 in", "side 1/2 in", "side 1 2 in"),
        *("form 12.5 cm", "form 12 5 cm", "form 12. 5 cm", "form 12_5 cm", "form 12,5 cm"),
    )
    assert slug(names[0]) == "side-12-1_2-in"
    assert slug("form 12.5 cm") == "form-12.5-cm"
    assert len({slug(name) for name in names}) == len(names)


def test_names_that_look_alike_have_addresses_of_their_own() -> None:
    assert len({slug(name) for name in LOOK_ALIKES}) == len(LOOK_ALIKES)
    assert len({project_slug(name) for name in LOOK_ALIKES}) == len(LOOK_ALIKES)


def test_words_that_computers_keep_for_themselves_are_not_used() -> None:
    for name in ("con", "nul", "aux", "com1", "lpt9", "index"):
        assert slug(name) != name
        assert slug(name).startswith(f"{name}--")


@given(NAMES, NAMES)
@example("a b", "a-b")
@example("Bed", "bed")
def test_two_names_never_share_an_address(name: str, other: str) -> None:
    assert (slug(name) == slug(other)) == (name == other)
    assert (project_slug(name) == project_slug(other)) == (name == other)


@given(NAMES)
def test_an_address_is_plain_on_every_computer(name: str) -> None:
    part = slug(name)
    assert re.fullmatch(r"[a-z0-9]+((-{1,2}|[._])[a-z0-9]+)*", part)
    assert len(part) <= 60
    assert unicodedata.normalize("NFKC", part) == part


def test_every_page_and_sheet_of_a_size_has_its_own_path() -> None:
    paths = [
        project_page("neck-roll"),
        size_page("neck-roll", "bed", "inch"),
        size_page("neck-roll", "bed", "metric"),
        words_page("reference"),
        *(
            handout_file("neck-roll", "bed", edition, paper)
            for edition in ("inch", "metric")
            for paper in ("A4", "Letter")
        ),
    ]
    assert len(set(paths)) == len(paths)
    assert handout_file("neck-roll", "bed", "inch", "Letter") == "projects/neck-roll/bed/neck-roll-bed-inch-letter.pdf"


def test_links_lead_from_page_to_page_in_any_folder() -> None:
    start = "projects/neck-roll/bed/inch.html"
    assert relative(start, "index.html") == "../../../index.html"
    assert relative(start, "projects/neck-roll/index.html") == "../index.html"
    assert relative("index.html", "assets/screen.css") == "assets/screen.css"
