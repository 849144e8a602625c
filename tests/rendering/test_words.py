from __future__ import annotations

import pytest

from generator.rendering.words import printed_words, read_words

TABLE = "| Inch | cm |\n|---|---|\n| 1 | 2.54 |"


def test_markdown_becomes_html_with_set_fractions() -> None:
    assert read_words("Turn **toward** you, 1/2 in.") == (
        '<p>Turn <strong>toward</strong> you, <span class="n"><span class="f">1/2</span> in</span>.</p>\n'
    )


def test_headings_stand_below_those_of_the_page() -> None:
    assert read_words("# Yards", below=1) == "<h2>Yards</h2>\n"
    assert read_words("##### Yards", below=3) == "<h6>Yards</h6>\n"
    assert read_words("## Yards", below=0) == read_words("# Yards", below=0) == "<h2>Yards</h2>\n"


def test_the_heads_of_a_table_say_that_they_are_for_their_columns() -> None:
    assert read_words(TABLE).count('<th scope="col">') == 2


def test_a_table_is_moved_by_itself_on_a_page_and_stands_alone_on_paper() -> None:
    assert read_words(TABLE).startswith('<div class="wide" tabindex="0" role="group" aria-label="Table">\n<table>')
    assert read_words(TABLE).endswith("</table>\n</div>\n")
    assert printed_words(TABLE, "").startswith("<table>")
    assert printed_words(TABLE, "").endswith("</table>\n")


def test_raw_html_stays_text() -> None:
    html = read_words("<script>alert(1)</script>\n\na <img src=x onerror=alert(1)> b")
    assert "<script" not in html
    assert "<img" not in html
    assert "&lt;script&gt;" in html


@pytest.mark.parametrize(
    "target",
    [
        "javascript:alert(1)",
        "JaVaScRiPt:alert(1)",
        "java\tscript:alert(1)",
        "&#106;avascript:alert(1)",
        "data:text/html,x",
        "vbscript:x",
        "file:///etc/passwd",
        "//elsewhere.example/x",
        "ftp://elsewhere.example/",
    ],
)
def test_dangerous_links_stay_dead(target: str) -> None:
    assert "href" not in read_words(f"[press]({target})")
    assert "href" not in read_words(f"[press](<{target}>)")
    assert "href" not in read_words(f"<{target}>")


def test_links_to_the_web_to_letters_and_to_pages_live() -> None:
    for target in ("https://harbour.example/a", "mailto:room@harbour.example", "reference.html", "../index.html#a"):
        assert f'href="{target}"' in read_words(f"[go]({target})")


def test_pictures_are_not_fetched() -> None:
    assert "<img" not in read_words("![a](https://elsewhere.example/a.png)")


def test_links_on_paper_lead_to_the_published_site_or_nowhere() -> None:
    text = "See [yards](reference.html) and [the harbour](https://harbour.example/)."
    assert printed_words(text, "") == '<p>See yards and <a href="https://harbour.example/">the harbour</a>.</p>\n'
    assert 'href="https://room.example/reference.html"' in printed_words(text, "https://room.example/")
