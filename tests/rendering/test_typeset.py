from __future__ import annotations

from html.parser import HTMLParser

import pytest
from hypothesis import given
from hypothesis import strategies as st

from generator.rendering.typeset import time_words, typeset


def read_aloud(html: str) -> str:
    """The text of a piece of HTML, as a search or a screen reader finds it."""
    parts: list[str] = []
    parser = HTMLParser()
    parser.handle_data = parts.append  # type: ignore[method-assign]
    parser.feed(html)
    parser.close()
    return "".join(parts)


@pytest.mark.parametrize(
    ("text", "html"),
    [
        ("1 3/8 in", '<span class="n">1 <span class="f">3/8</span> in</span>'),
        ("3/8", '<span class="n"><span class="f">3/8</span></span>'),
        ("15 15/16 deep", '<span class="n">15 <span class="f">15/16</span></span> deep'),
        ("4.5 cm", '<span class="n">4.5 cm</span>'),
        ("-1/8 in", "-1/8 in"),
        ("on 3/8/2031", "on 3/8/2031"),
        ("and/or 24/7", "and/or 24/7"),
        ("12 tucks", "12 tucks"),
        ("27 1/4 × 15 1/2 in", '<span class="n">27 <span class="f">1/4</span></span> × '
         '<span class="n">15 <span class="f">1/2</span> in</span>'),
    ],
)  # fmt: skip
def test_fractions_and_numbers_with_units_are_marked_for_setting(text: str, html: str) -> None:
    assert typeset(text) == html


@given(st.text(alphabet=st.sampled_from("0123456789/ .-<>&\"'inchm×a"), max_size=40))
def test_set_text_reads_as_the_plain_text(text: str) -> None:
    assert read_aloud(str(typeset(text))) == text


def test_signs_of_html_are_escaped() -> None:
    assert typeset("<b>\"&'") == "&lt;b&gt;&#34;&amp;&#39;"
    assert "<script" not in typeset("<script>1 1/2 in</script>")


def test_times_are_told_in_hours_and_minutes() -> None:
    assert [time_words(minutes) for minutes in (0, 5, 60, 95)] == ["0 min", "5 min", "1 h", "1 h 35 min"]
