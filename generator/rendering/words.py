"""Words: Markdown comes in, safe HTML goes out.

Raw HTML and pictures stay text. Links lead only to the web, to an address for letters, or to another page of the site.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from functools import lru_cache
from urllib.parse import urljoin, urlsplit

from markdown_it import MarkdownIt
from markdown_it.renderer import RendererHTML
from markdown_it.token import Token
from markdown_it.utils import EnvType, OptionsDict
from markupsafe import Markup

from generator.rendering.typeset import typeset

_ALONE = frozenset({"br", "hr", "img"})
_SCHEMES = frozenset({"http", "https", "mailto"})
# Most texts of a project are the same in all its sizes, and stand on several pages.
_REMEMBERED = 500
# A text without a sign of a heading, at the beginning of a line or below one, is read alike wherever it stands.
_HEADED = re.compile(r"#|^[\s>]*(?:=+|-+)\s*$", re.MULTILINE)


class _SafeMarkdown(MarkdownIt):
    """Markdown without raw HTML, whose links are only of the kinds that are wanted."""

    def validateLink(self, url: str) -> bool:  # noqa: N802 -- the name that the parser calls
        return _leads_somewhere_safe(url)


def _leads_somewhere_safe(url: str) -> bool:
    if any(ord(letter) <= 32 or letter == "\\" for letter in url):
        return False
    try:
        parts = urlsplit(url)
    except ValueError:
        return False
    if parts.scheme:
        return parts.scheme.lower() in _SCHEMES
    return not parts.netloc and not url.startswith("//") and ":" not in parts.path.split("/")[0]


def read_words(text: str, below: int = 1) -> Markup:
    """Return Markdown as HTML for a page; a heading comes ``below`` levels further down, and never beside the title."""
    return _read(text, below if _HEADED.search(text) else 1)


@lru_cache(maxsize=_REMEMBERED)
def _read(text: str, below: int) -> Markup:
    return Markup(_READER.render(text, {"below": below}))  # noqa: S704 -- the reader escapes all text


@lru_cache(maxsize=_REMEMBERED)
def printed_words(text: str, site_address: str, below: int = 1) -> Markup:
    """Return Markdown as HTML for a sheet: links inside the site lead to its address, or are left out without one."""
    return Markup(_READER.render(text, {"below": below, "site": site_address}))  # noqa: S704 -- as above


def blocks(html: Markup) -> list[Markup]:
    r"""Return what stands side by side at the outermost level of read words: paragraphs, lists, headings.

    Examples
    --------
    >>> blocks(Markup("<p>one<br>two</p>\n<ul>\n<li><p>three</p></li>\n</ul>\n"))
    [Markup('<p>one<br>two</p>'), Markup('<ul>\n<li><p>three</p></li>\n</ul>')]
    """
    found: list[Markup] = []
    depth = start = 0
    for tag in re.finditer(r"<(/?)(\w+)[^>]*>", html):
        if tag[2] in _ALONE:
            continue
        depth += -1 if tag[1] else 1
        if depth == 0:
            found.append(Markup(html[start : tag.end()].strip()))  # noqa: S704 -- part of what was escaped
            start = tag.end()
    return found


def _text(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, environment: EnvType
) -> str:
    return str(typeset(tokens[index].content))


def _heading(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, environment: EnvType
) -> str:
    token = tokens[index]
    level = max(2, min(6, int(token.tag[1]) + environment["below"]))
    return f"</h{level}>\n" if token.nesting < 0 else f"<h{level}>"


def _table(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, environment: EnvType
) -> str:
    """On a page a table that is wider than the window is moved by itself, by keyboard too; on paper it stands alone."""
    starts, alone = tokens[index].nesting > 0, "site" in environment
    if starts:
        return "<table>\n" if alone else '<div class="wide" tabindex="0" role="group" aria-label="Table">\n<table>\n'
    return "</table>\n" if alone else "</table>\n</div>\n"


def _table_head(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, environment: EnvType
) -> str:
    tokens[index].attrSet("scope", "col")
    return renderer.renderToken(tokens, index, options, environment)


def _link_start(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, environment: EnvType
) -> str:
    token = tokens[index]
    target = str(token.attrGet("href") or "")
    if "site" in environment and not urlsplit(target).scheme:
        environment["dropped"] = not environment["site"]
        if environment["dropped"]:
            return ""
        token.attrSet("href", urljoin(environment["site"], target))
    return renderer.renderToken(tokens, index, options, environment)


def _link_end(
    renderer: RendererHTML, tokens: Sequence[Token], index: int, options: OptionsDict, environment: EnvType
) -> str:
    return "" if environment.pop("dropped", False) else "</a>"


def _made_reader() -> MarkdownIt:
    reader = (
        _SafeMarkdown("commonmark", {"html": False}).enable("table").disable(["image", "html_block", "html_inline"])
    )
    reader.add_render_rule("text", _text)
    reader.add_render_rule("heading_open", _heading)
    reader.add_render_rule("heading_close", _heading)
    reader.add_render_rule("table_open", _table)
    reader.add_render_rule("table_close", _table)
    reader.add_render_rule("th_open", _table_head)
    reader.add_render_rule("link_open", _link_start)
    reader.add_render_rule("link_close", _link_end)
    return reader


_READER = _made_reader()
