"""Styles and scripts with fewer bytes mean what they meant."""

from __future__ import annotations

import pytest
import tinycss2

from generator.definitions.theme import OWN_THEMES, load_theme
from generator.rendering.lighter import lighter_script, lighter_style
from generator.rendering.styles import SCREEN_SHEETS, style_sheet


@pytest.mark.parametrize(
    ("style", "short"),
    [
        ("a { color: red; }\n", "a{color:red}"),
        (
            "/* why */ a b , c > d { margin : 0 1px; width: calc(1px + 2px) }",
            "a b,c > d{margin :0 1px;width:calc(1px + 2px)}",
        ),
        ('a::before { content: "a;  b: /* c */ {"; }', 'a::before{content:"a;  b: /* c */ {"}'),
        ("a::after { content: '\\' ; '; }", "a::after{content:'\\' ; '}"),
        ("@media (min-width: 40rem) { :root { --a: 1; } }", "@media (min-width:40rem){:root{--a:1}}"),
        ('b { background: url("x.svg") } a:not(.b) :hover { }', 'b{background:url("x.svg")}a:not(.b) :hover{}'),
        ('a { content: "never ended; }\n  b {  }', 'a { content: "never ended; }\n  b {  }'),
    ],
)
def test_remarks_and_white_space_go_and_what_is_quoted_stays(style: str, short: str) -> None:
    assert lighter_style(style) == short


@pytest.mark.parametrize("theme", ["plain", "harbour", "large-print"])
@pytest.mark.parametrize("name", [*SCREEN_SHEETS, "machine", "reference"])
def test_the_styles_of_every_theme_say_the_same(theme: str, name: str) -> None:
    whole = style_sheet(load_theme(OWN_THEMES / theme), name)
    short = lighter_style(whole)
    told = [tinycss2.parse_stylesheet(text, skip_comments=True, skip_whitespace=True) for text in (whole, short)]
    assert len(short) < 0.95 * len(whole)
    assert sum(len(_declared(rule)) for rule in told[0]) > 10
    for before, after in zip(*told, strict=True):
        assert _declared(before) == _declared(after)


def _declared(rule: tinycss2.ast.Node) -> list[tuple[str, str]]:
    """What a rule declares for which selectors, white space aside where it parts nothing."""
    if rule.type == "at-rule" and rule.at_keyword in ("media", "supports"):
        inner = tinycss2.parse_rule_list(rule.content, skip_comments=True, skip_whitespace=True)
        return [(_plain(rule.prelude), ""), *(one for part in inner for one in _declared(part))]
    lines = tinycss2.parse_declaration_list(rule.content or [], skip_comments=True, skip_whitespace=True)
    return [
        (_plain(rule.prelude) + " " + line.name, _plain(line.value)) for line in lines if line.type == "declaration"
    ]


def _plain(nodes: list[tinycss2.ast.Node]) -> str:
    words = " ".join(tinycss2.serialize(nodes).split())
    return words.replace(", ", ",").replace(": ", ":").strip()


def test_a_script_keeps_its_lines_but_for_remarks_and_indents() -> None:
    assert lighter_script('f();\n  // why\n  g("// no"); // as it is\n') == 'f();\ng("// no"); // as it is\n'
    assert lighter_script("a = `\n  // kept\n`;\n") == "a = `\n  // kept\n`;\n"
