"""What a picture of a theme may hold: the file of a logo comes in, what is wrong with it goes out in words.

A picture may come from a stranger. It is judged by what drawing it would take, before it is drawn.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from pathlib import Path
from xml.etree import ElementTree

from generator.definitions.text_file import read_text_file, size_fault
from generator.errors import FaultyFileError, Finding, Place
from generator.limits import MOST_DOTS, MOST_DRAWN

_PNG = b"\x89PNG\r\n\x1a\n"
_DEEPEST = 50
_NUMBER = re.compile(r"-?(?:\d+\.?\d*|\.\d+)(?:e[+-]?\d+)?", re.IGNORECASE)
_SIZED = ("width", "height", "viewBox")
# What an attribute or a style uses: '#shape', 'url(#pattern)', "fill: url('#pattern')".
_USES = re.compile(r"\A\s*#(.+)|url\(\s*[\"']?#([^\"')]+)")


def logo_findings(file: Path, shown: str) -> list[Finding]:
    """Return what is wrong with a logo."""
    try:
        told = _svg(read_text_file(file, shown)) if file.suffix.lower() == ".svg" else _png(file)
    except FaultyFileError as fault:
        return list(fault.findings)
    except OSError as fault:
        told = f"the file cannot be read: {fault.strerror}"
    return [Finding("error", told, Place(shown))] if told else []


def _png(file: Path) -> str:
    if fault := size_fault(file.stat().st_size, ".png"):
        return fault
    with file.open("rb") as opened:
        head = opened.read(24)
    if not head.startswith(_PNG) or len(head) < 24:
        return "this is no PNG picture; save the mark as PNG, or as SVG"
    wide, high = (int.from_bytes(head[start : start + 4], "big") for start in (16, 20))
    if max(wide, high) > MOST_DOTS:
        return f"a logo has {MOST_DOTS} x {MOST_DOTS} dots at most, this has {wide} x {high}; save it smaller"
    return ""


def _svg(text: str) -> str:
    if "<!" in re.sub(r"<!--.*?-->|<!\[CDATA\[|<!DOCTYPE svg[^\[>]*>", "", text, flags=re.DOTALL):
        return "an SVG logo declares nothing of its own (<!ENTITY); save it as plain SVG"
    try:
        root = ElementTree.fromstring(text)  # noqa: S314 -- entities are refused above
    except ElementTree.ParseError as fault:
        return f"this is no SVG picture: {fault}"
    if not root.tag.endswith("svg"):
        return "this is no SVG picture; its first element is not svg"
    return _too_large(root) or _too_much(root)


def _too_large(root: ElementTree.Element) -> str:
    for name in _SIZED:
        for number in _NUMBER.findall(root.get(name, "")):
            if abs(float(number)) > MOST_DOTS:
                return f"a logo is {MOST_DOTS} x {MOST_DOTS} at most, here '{name}' has {number}; draw it smaller"
    return ""


def _too_much(root: ElementTree.Element) -> str:
    """Return whether a picture draws too much, what it uses twice counted twice."""
    named = {name: element for element in root.iter() if (name := element.get("id"))}
    counted: dict[str, int] = {}
    elements = sum(1 for _ in root.iter())
    try:
        drawn = _drawn(root, named, counted, 0)
        # A style of its own may be that of every element.
        styles = "".join(element.text or "" for element in root.iter() if element.tag.endswith("style"))
        drawn += elements * _used(styles, named, counted, 0)
    except RecursionError:
        return "an SVG logo uses itself, or its groups lie too deep inside each other; save it as plain SVG"
    if drawn > MOST_DRAWN:
        return (
            f"an SVG logo draws {MOST_DRAWN} things at most, this draws {drawn}; use fewer shapes, and 'use' less often"
        )
    return ""


def _drawn(
    element: ElementTree.Element, named: Mapping[str, ElementTree.Element], counted: dict[str, int], depth: int
) -> int:
    if depth > _DEEPEST:
        raise RecursionError
    drawn = 1 + sum(_drawn(inner, named, counted, depth + 1) for inner in element)
    return drawn + sum(_used(value, named, counted, depth) for value in element.attrib.values())


def _used(text: str, named: Mapping[str, ElementTree.Element], counted: dict[str, int], depth: int) -> int:
    """Return how many things are drawn by what an attribute or a style uses."""
    names = [name for found in _USES.finditer(text) if (name := (found[1] or found[2]).strip()) in named]
    for name in names:
        if name not in counted:
            counted[name] = _drawn(named[name], named, counted, depth + 1)
    return sum(counted[name] for name in names)
