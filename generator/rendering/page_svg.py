"""Pictures in a page: the SVG of a picture comes in, SVG for the page goes out, a name for screen readers on it.

A page may hold twenty drawings, so they are written as light as nobody sees: places in tenths of a point from one to
the next, no point that a straight line passes anyway, and no colour where a class tells it.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from markupsafe import Markup

from generator.drawing.picture import Picture

_TENTHS = 10
_Place = tuple[int, int]
# What the page says itself, or what is so without a word.
_NEEDLESS = re.compile(r' (?:stroke-dashoffset="0"|text-anchor="start"|xmlns(?::xlink)?="[^"]*"|version="1.1")')
_FAMILY = re.compile(r' font-family="[^"]*"')


def light(picture: Picture) -> Picture:
    """Return a picture whose SVG is written for a page, as often as it may stand there."""
    start = picture.svg.index("<svg")
    head, body = picture.svg[start:].split(">", 1)
    head = re.sub(r'\s(?:width|height|role|aria-label|preserveAspectRatio)="[^"]*"', "", head)
    families = set(_FAMILY.findall(body))
    if len(families) == 1:
        head, body = head + families.pop(), _FAMILY.sub("", body)
    return replace(picture, svg=f"{_light_tag(head)}>{_light(body.lstrip())}")


def inline_svg(picture: Picture, prefix: str) -> Markup:
    """Return a light picture as SVG for a page: it has a name for screen readers, and ids that are its own there."""
    head, body = picture.svg.split(">", 1)
    named = Markup('{} role="img" aria-label="{}" width="{:.0f}" height="{:.0f}">').format(
        Markup(head),  # noqa: S704 -- the drawing stage wrote it
        picture.alt,
        picture.width * 96,
        picture.height * 96,
    )
    return named + Markup(_own_ids(body, prefix))  # noqa: S704 -- as above


def reusable_svg(picture: Picture, name: str) -> Markup:
    """Return a light picture as SVG for a page, as a whole with a name, for :func:`reused_svg` to show it again."""
    head, body = inline_svg(picture, f"{name}-").split(">", 1)
    return Markup(f'{head}><g id="{name}">{body.rsplit("</svg>", 1)[0]}</g></svg>')  # noqa: S704 -- written above


def reused_svg(picture: Picture, name: str) -> Markup:
    """Return a picture that stands on the page already, under a name."""
    head = inline_svg(picture, "").split(">", 1)[0]
    return Markup(f'{head}><use href="#{name}"/></svg>')  # noqa: S704 -- as above


def _own_ids(svg: str, prefix: str) -> str:
    svg = re.sub(r'(\sid=")([^"]+")', rf"\g<1>{prefix}\g<2>", svg)
    svg = re.sub(r'((?:xlink:)?href="#)([^"]+")', rf"\g<1>{prefix}\g<2>", svg)
    return re.sub(r"(url\(#)([^)]+\))", rf"\g<1>{prefix}\g<2>", svg)


def _light(svg: str) -> str:
    # Pixels are stretched by numbers that would not bear it.
    return re.sub(r"<(?!/|image)[^>]*>", lambda tag: _light_tag(tag[0]), re.sub(r">\s+<", "><", svg))


def _light_tag(tag: str) -> str:
    """Return a tag without what the page's styles say, its numbers in tenths."""
    names = re.search(r' class="([^"]*)"', tag)
    if names and "fill-" in names[1]:
        tag = re.sub(r' fill="[^"]*"', "", tag)
    if names and "line-" in names[1]:
        tag = re.sub(r' (?:stroke="[^"]*"|fill="none")', "", tag)
    path = re.search(r' d="([^"]*)"', tag)
    rest = re.sub(r"(\d\.\d)\d+", r"\1", _NEEDLESS.sub("", tag.replace(path[0], "") if path else tag))
    return re.sub(r"(?=/?>$)", f' d="{light_path(path[1])}"', rest, count=1) if path else rest


def light_path(path: str) -> str:
    """Return an outline of straight lines as steps from one place to the next, in tenths.

    What is not made of straight lines alone stays as it is.

    Examples
    --------
    >>> light_path("M10.04 20L30 20L30 25L30 25L30 40.5L10 20z")
    'm10 20h20v20.5z'
    """
    found = re.findall(r"[A-Za-z]|-?[\d.]+(?:e-?\d+)?", path)
    if {word for word in found if word.isalpha()} - {"M", "L", "z"}:
        return path
    written: list[str] = []
    before: _Place = (0, 0)
    for places, closed in _outlines(found):
        kept = _bends(places)
        if closed and len(kept) > 1 and kept[0] == kept[-1]:
            kept.pop()
        written += ["m", _pair(before, kept[0]), *_steps(kept), "z" if closed else ""]
        before = kept[0] if closed else kept[-1]
    return "".join(written)


def _outlines(words: list[str]) -> Iterator[tuple[list[_Place], bool]]:
    """Yield the places of each outline, and whether it is closed."""
    places: list[_Place] = []
    for place, word in enumerate(words):
        if word == "M" and places:
            yield places, words[place - 1] == "z"
            places = []
        if word in ("M", "L"):
            along, down = (round(float(number) * _TENTHS) for number in words[place + 1 : place + 3])
            places.append((along, down))
    if places:
        yield places, words[-1] == "z"


def _bends(places: list[_Place]) -> list[_Place]:
    """Return places without those that lie on the straight way between their neighbours."""
    kept = places[:1]
    for place in places[1:]:
        if place == kept[-1]:
            continue
        if len(kept) > 1:
            (along, down), (next_along, next_down) = _way(kept[-2], kept[-1]), _way(kept[-1], place)
            if along * next_down == down * next_along and along * next_along + down * next_down > 0:
                kept.pop()
        kept.append(place)
    return kept


def _way(start: _Place, end: _Place) -> _Place:
    return end[0] - start[0], end[1] - start[1]


def _steps(places: list[_Place]) -> Iterator[str]:
    if len(places) == 1:
        yield "h0"
    for start, end in pairwise(places):
        along, down = _way(start, end)
        yield f"v{_number(down)}" if not along else f"h{_number(along)}" if not down else f"l{_pair(start, end)}"


def _pair(start: _Place, end: _Place) -> str:
    along, down = map(_number, _way(start, end))
    return along + down if down.startswith("-") else f"{along} {down}"


def _number(tenths: int) -> str:
    return re.sub(r"\b0\.", ".", f"{tenths / _TENTHS:g}")
