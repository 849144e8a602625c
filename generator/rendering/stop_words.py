"""Words for one screen of a phone each: paragraphs and lists of a step come in, what is read at one time goes out."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from itertools import groupby

from markupsafe import Markup

from generator.rendering.words import blocks

# A paragraph of fewer words is no instruction of its own: it goes with the next one, the last with the one before it.
_FEW_WORDS = 20
# So many words at most stand together: as many as a screen of 360 x 640 px shows.
_MOST_WORDS = 64
# What such a screen has for words and a picture [px], what a word takes of it, and the tools of a step, in words.
_WORDS_HIGH, _SCREEN_WIDE, _PIXELS_A_WORD, _HEAD_WORDS, _LEAST_BY_PICTURE = 330, 360, 7, 12, 10
_SENTENCE_END = re.compile(r"(?<=[.!?:])\s+(?=(?:<\w+>)*[A-Z(])")
# A sentence that speaks of what another has named: by how it begins, or by a word in its first clause.
_LEANS = re.compile(r"^(?:Then|Or|Only then|If not|There|That|This)\b|^[^,;:.?!]*\b(?:it|its|them|they|It|They|such)\b")

Words = tuple[Markup, ...]


def screens(told: Sequence[Markup]) -> list[Words]:
    """Return what stands on each screen: whole sentences, a list with the words before it, short ones together."""
    groups: list[list[Markup]] = []
    for block in told:
        if groups and (not _is_paragraph(block) or _goes_on(groups[-1], block)):
            groups[-1].append(block)
        else:
            groups.append([block])
    if len(groups) > 1 and _length(groups[-1]) < _FEW_WORDS and _length(groups[-2] + groups[-1]) <= _MOST_WORDS:
        groups[-2:] = [[*groups[-2], *groups[-1]]]
    return [part for group in groups for part in parted(group, _MOST_WORDS)]


def beside_picture(words: Words, height: float, *, begins: bool) -> list[Words]:
    """Return the words of a screen in parts, the first of them short enough to be read above a picture.

    ``height`` is that of the picture as a part of the screen's width; where it leaves no room for a sentence, the first
    part is empty. What a step ``begins`` with, its tools and cautions, takes room as well.
    """
    room = round((_WORDS_HIGH - height * _SCREEN_WIDE) / _PIXELS_A_WORD) - (_HEAD_WORDS if begins else 0)
    if room < _LEAST_BY_PICTURE:
        return [(), words]
    first, *others = parted(words, room)
    # A sentence that is too long stands above it all the same; two that belong together go before it.
    if _length(first) > room and sum(1 for block in first for _ in _sentences(block)) > 1:
        return [(), words]
    return [first, *([tuple(_rejoined([block for part in others for block in part]))] if others else [])]


def go_together(words: Words, others: Words) -> bool:
    """Return whether two screens without a picture are so short, one of them at least, that they make one."""
    short = min(_length(words), _length(others)) < _FEW_WORDS
    return short and _length([*words, *others]) <= _MOST_WORDS and all(map(_is_paragraph, words))


def leads(words: Markup) -> bool:
    """Return whether words lead to a list and are so few that they stand on each screen with a part of it."""
    return str(words.striptags()).endswith(":") and _length([words]) < _FEW_WORDS


def _goes_on(group: Sequence[Markup], block: Markup) -> bool:
    """Whether a paragraph stands with what is before it: that is short, or is what the paragraph speaks of."""
    leans = _is_paragraph(group[-1]) and _LEANS.search(str(next(_sentences(block)).striptags()))
    return bool(leans or _length(group) < _FEW_WORDS) and _length([*group, block]) <= _MOST_WORDS


def parted(group: Sequence[Markup], most: int) -> list[Words]:
    """Return words in parts of ``most`` words at most; a list stays with what leads to it.

    A paragraph is parted only where it is longer than that, and a sentence stays with the one that it speaks of.
    """
    if _length(group) <= most:
        return [tuple(group)]
    parts: list[list[Markup]] = []
    for block in group:
        if parts and _stands_apart(block, parts[-1], most):
            parts.append([])
        for unit in _units(block):
            goes_on = parts and (not parts[-1] or _led(parts[-1]) or unit[0].startswith("<table"))
            if goes_on or (parts and _length([*parts[-1], *unit]) <= most):
                parts[-1] += unit
            else:
                parts.append(unit)
    if len(parts) > 1 and _length(parts[-1]) < _FEW_WORDS // 2:
        parts[-2:] = [[*parts[-2], *parts[-1]]]
    return [tuple(_rejoined(part)) for part in parts]


def _stands_apart(block: Markup, before: Sequence[Markup], most: int) -> bool:
    """Whether a block begins a part, since it would be parted after what stands before it and needs not be."""
    whole = _length([block]) <= most < _length([*before, block])
    return whole and _length(before) >= _LEAST_BY_PICTURE and not _led(before)


def _led(part: Sequence[Markup]) -> bool:
    return bool(part) and str(part[-1].striptags()).endswith(":")


def _units(block: Markup) -> list[list[Markup]]:
    """The sentences of a block, each with those that speak of it as far as a screen holds them."""
    units: list[list[Markup]] = []
    for sentence in _sentences(block):
        if units and _LEANS.search(str(sentence.striptags())) and _length([*units[-1], sentence]) <= _MOST_WORDS:
            units[-1].append(sentence)
        else:
            units.append([sentence])
    return units


def _is_paragraph(block: Markup) -> bool:
    return block.startswith("<p>")


def _length(group: Sequence[Markup]) -> int:
    return sum(len(block.striptags().split()) for block in group)


def _sentences(block: Markup) -> Iterator[Markup]:
    """The sentences of a paragraph and the items of a list, each by itself; anything else stays whole."""
    inside = str(block).removeprefix("<p>").removesuffix("</p>")
    if not _is_paragraph(block):
        yield from _items(block)
        return
    start = 0
    for found in _SENTENCE_END.finditer(inside):
        before = inside[start : found.start()]
        if len(re.findall(r"<(?!/|br)\w", before)) == len(re.findall(r"</", before)):
            yield Markup(f"<p>{before}</p>")  # noqa: S704 -- part of what was escaped
            start = found.end()
    yield Markup(f"<p>{inside[start:]}</p>")  # noqa: S704 -- as above


def _items(block: Markup) -> Iterator[Markup]:
    if not block.startswith("<ul>"):
        yield block
        return
    for item in blocks(Markup(str(block).removeprefix("<ul>").removesuffix("</ul>"))):  # noqa: S704 -- as below
        yield Markup(f"<ul>{item}</ul>")  # noqa: S704 -- part of what was escaped


def _rejoined(part: Sequence[Markup]) -> Iterator[Markup]:
    """Sentences and items that follow each other, as one paragraph and one list again."""
    for tag, run in groupby(part, lambda block: next((tag for tag in ("p", "ul") if block.startswith(f"<{tag}>")), "")):
        inside = [str(block).removeprefix(f"<{tag}>").removesuffix(f"</{tag}>") for block in run]
        if tag:
            yield Markup(f"<{tag}>{' '.join(inside)}</{tag}>")  # noqa: S704 -- as above
        else:
            yield from map(Markup, inside)
